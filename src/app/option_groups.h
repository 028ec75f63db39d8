// Groups of options that several verbs share, and the numbers they take.
#pragma once

#include <optional>
#include <string>

#include "app/options.h"

namespace CLI {
class App;
class Validator;
}  // namespace CLI

namespace rimehaul::app {

struct Bounds {
  double least;
  double most;
};

/// A finite number within bounds, which CLI's own range leaves open for NaN.
[[nodiscard]] CLI::Validator number_within(Bounds bounds);

/// --json and --now.
void add_answer(CLI::App& verb, CommonOptions& common);
/// SITE, --json and --now.
void add_common(CLI::App& verb, CommonOptions& common);
/// The snow and the weather.
void add_snow(CLI::App& verb, SnowOptions& snow);
/// The weather alone.
void add_weather(CLI::App& verb, SnowOptions& snow);
/// What the rig carries, alone.
void add_load(CLI::App& verb, RigOptions& rig);
/// The rig and what it carries.
void add_rig(CLI::App& verb, RigOptions& rig);
void add_depart(CLI::App& verb, std::optional<std::string>& depart);

}  // namespace rimehaul::app
