// Groups of options that several verbs share.
#pragma once

#include <optional>
#include <string>

#include "app/options.h"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace rimehaul::app {

// Headings in help; every option stands under one.
inline constexpr const char* kAnswerGroup = "Answer";
inline constexpr const char* kRigGroup = "Rig and load";
inline constexpr const char* kSnowGroup = "Snow and weather";
inline constexpr const char* kWayGroup = "Way and hour";
inline constexpr const char* kHoursGroup = "Hours of departure";
inline constexpr const char* kPlaceGroup = "Place and hour";
inline constexpr const char* kFilesGroup = "Your files";
inline constexpr const char* kRecordsGroup = "Records";

// Names that more than one place must know.
inline constexpr const char* kNewVerb = "new";
inline constexpr const char* kErrandsVerb = "errands";
inline constexpr const char* kCardOption = "--card";
inline constexpr const char* kIntoOption = "--into";

/// --json and --now.
void add_answer(CLI::App& verb, CommonOptions& common);
/// SITE, --json and --now.
void add_common(CLI::App& verb, CommonOptions& common);
/// The snow and the weather.
void add_snow(CLI::App& verb, SnowOptions& snow);
/// Snow classes to judge in, any number of them.
void add_classes(CLI::App& verb, std::vector<std::string>& wetness);
/// The weather alone.
void add_weather(CLI::App& verb, SnowOptions& snow);
/// What the rig carries, alone.
void add_load(CLI::App& verb, RigOptions& rig);
/// The rig and what it carries.
void add_rig(CLI::App& verb, RigOptions& rig);
/// Whether anybody goes along; for the verbs that judge a place.
void add_company(CLI::App& verb, RigOptions& rig);
/// From where to where, when, and by whose leave.
void add_way(CLI::App& verb, WayOptions& way);
/// Which of all ways, when, and by whose leave.
struct ChoiceOptions {
  std::string& prefer;
  std::optional<std::string>& depart;
  std::string& permitted_by;
};
void add_choice(CLI::App& verb, ChoiceOptions choice);
/// The hours of departure that are told beside a way.
void add_hours(CLI::App& verb, HoursOptions& hours);
/// How late one may set out, and the way back, alone.
void add_way_back(CLI::App& verb, HoursOptions& hours);
/// A place on a trail; what `point` means differs.
void add_place(CLI::App& verb, PlaceOptions& place, const std::string& point);
/// Who does what is kept in the records: a person of the site's list.
CLI::Option* add_person(CLI::App& verb, std::string& person, const std::string& means);
CLI::Option* add_depart(CLI::App& verb, std::optional<std::string>& depart);
/// A file to write.
struct FileOption {
  const char* name;
  const char* means;
};
void add_file(CLI::App& verb, std::optional<std::string>& path, FileOption option);

/// Makes an option one that may be given again, one value each time.
CLI::Option* again(CLI::Option* option);

}  // namespace rimehaul::app
