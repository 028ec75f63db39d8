// What may stand behind an option: how help names it, how it is checked, what completion offers.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace CLI {
class Option;
}  // namespace CLI

namespace rimehaul::app {

enum class Value {
  folder,
  file,
  name,  ///< anybody's or anything's: not to be guessed
  time,
  rig,
  station,
  trail,
  snow_class,
  surface,
  surface_or_all,
  preference,
  way,
  yes_or_no,
  layer,
  person,
  named_route,
  board_rows,
  board_by,
  paper,
  log_head,
};

/// Words that more than one place must know.
inline constexpr const char* kRowsOfPairs = "pairs";
inline constexpr const char* kRowsOfRoutes = "routes";
inline constexpr const char* kRowsOfTrails = "trails";
inline constexpr const char* kByHour = "hour";

/// Gives an option its kind of value; one that has a closed set of words takes no other, and the
/// line that says so names the nearest.
CLI::Option* takes(CLI::Option* option, Value value);

/// A number within bounds, NaN never; `unit` is how help names it.
struct Bounds {
  double least;
  double most;
};
CLI::Option* takes_number(CLI::Option* option, const std::string& unit, Bounds bounds);
CLI::Option* takes_whole_number(CLI::Option* option, const std::string& unit, Bounds bounds);

/// Nothing for numbers.
[[nodiscard]] std::optional<Value> value_of(const CLI::Option& option);

/// The words of a closed set; none for what is no such set.
[[nodiscard]] std::vector<std::string> words_of(Value value);

/// "dry, moist, wet, very_wet or slush"
[[nodiscard]] std::string words_listed(Value value);

}  // namespace rimehaul::app
