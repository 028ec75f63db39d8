#include "app/value_kinds.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "app/names.h"
#include "app/slope_layers.h"
#include "day/log_entry.h"
#include "snow/snow.h"

namespace rimehaul::app {

namespace {

struct Kind {
  Value value;
  const char* shown;  ///< in help; each once
  const char* named;  ///< in "no ... is called"
};

constexpr std::array kKinds{
    Kind{Value::folder, "FOLDER", "folder"},
    Kind{Value::file, "FILE", "file"},
    Kind{Value::name, "NAME", "name"},
    Kind{Value::time, "TIME", "time"},
    Kind{Value::rig, "RIG", "rig"},
    Kind{Value::station, "STATION", "station"},
    Kind{Value::trail, "TRAIL", "trail"},
    Kind{Value::snow_class, "CLASS", "snow class"},
    Kind{Value::surface, "SURFACE", "surface"},
    Kind{Value::surface_or_all, "SURFACE|all", "surface"},
    Kind{Value::preference, "WHAT", "preference"},
    Kind{Value::way, "WAY", "way"},
    Kind{Value::yes_or_no, "yes|no", "answer"},
    Kind{Value::layer, "LAYER", "layer"},
    Kind{Value::person, "PERSON", "person"},
    Kind{Value::named_route, "ROUTE", "route"},
    Kind{Value::board_rows, "ROWS", "kind of row"},
    Kind{Value::paper, "PAPER", "paper"},
    Kind{Value::board_by, "COLUMNS", "kind of column"},
    Kind{Value::log_head, "NUMBER:HEX", "head"},
};

const Kind& kind_of(Value value) {
  return *std::ranges::find(kKinds, value, &Kind::value);
}

template <class Key>
std::vector<std::string> keys_up_to(int count) {
  std::vector<std::string> keys;
  keys.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    keys.emplace_back(snow::key_of(static_cast<Key>(i)));
  }
  return keys;
}

template <class Number>
CLI::Option* takes_number_of(CLI::Option* option, const std::string& unit, Bounds bounds) {
  const auto check = [bounds](const std::string& text) -> std::string {
    Number value{};
    const bool read = CLI::detail::lexical_cast(text, value);
    const auto number = static_cast<double>(value);
    if (read && number >= bounds.least && number <= bounds.most) {
      return {};
    }
    const bool is_whole = std::is_integral_v<Number>;
    return "'" + text + "' is not a " + (is_whole ? "whole " : "") + "number from " +
           CLI::detail::to_string(bounds.least) + " to " + CLI::detail::to_string(bounds.most);
  };
  return option->type_name(unit)->check(CLI::Validator{check, ""});
}

/// Blanks alone would sign a decision with nobody's name.
std::string names_somebody(const std::string& name) {
  const bool has_letter = std::ranges::any_of(
      name, [](unsigned char byte) { return byte >= 0x80 || std::isgraph(byte) != 0; });
  return has_letter ? std::string{} : "a name of blanks alone is nobody's";
}

std::string is_a_head(const std::string& text) {
  return day::parse_head(text) ? std::string{}
                               : "'" + text +
                                     "' is no head of a log: write its number, a colon and its 16 "
                                     "or more digits";
}

}  // namespace

std::vector<std::string> words_of(Value value) {
  switch (value) {
    case Value::snow_class:
      return keys_up_to<snow::Wetness>(snow::kWetnessCount);
    case Value::surface:
      return keys_up_to<snow::Surface>(snow::kSurfaceCount);
    case Value::surface_or_all: {
      std::vector<std::string> words = words_of(Value::surface);
      words.emplace_back("all");
      return words;
    }
    case Value::preference:
      return {"safest", "quickest", "least-fuel"};
    case Value::way:
      return {"forward", "backward", "both"};
    case Value::yes_or_no:
      return {"yes", "no"};
    case Value::layer:
      return slope_layer_words();
    case Value::board_rows:
      return {kRowsOfPairs, kRowsOfRoutes, kRowsOfTrails};
    case Value::board_by:
      return {"snow", kByHour};
    case Value::paper:
      return {"a4", "a3"};
    default:
      return {};
  }
}

std::string words_listed(Value value) {
  return listed(words_of(value), " or ");
}

CLI::Option* takes(CLI::Option* option, Value value) {
  option->type_name(kind_of(value).shown);
  if (value == Value::name || value == Value::person) {
    return option->check(CLI::Validator{names_somebody, ""});
  }
  if (value == Value::log_head) {
    return option->check(CLI::Validator{is_a_head, ""});
  }
  const std::vector<std::string> words = words_of(value);
  if (words.empty()) {
    return option;
  }
  const auto check = [named = Named{kind_of(value).named, words}](const std::string& text) {
    const bool known = std::ranges::find(named.known, text) != named.known.end();
    return known ? std::string{} : no_such(named, text);
  };
  return option->check(CLI::Validator{check, ""});
}

CLI::Option* takes_number(CLI::Option* option, const std::string& unit, Bounds bounds) {
  return takes_number_of<double>(option, unit, bounds);
}

CLI::Option* takes_whole_number(CLI::Option* option, const std::string& unit, Bounds bounds) {
  return takes_number_of<int>(option, unit, bounds);
}

std::optional<Value> value_of(const CLI::Option& option) {
  const auto* found = std::ranges::find_if(
      kKinds, [&](const Kind& kind) { return option.get_type_name() == kind.shown; });
  return found == kKinds.end() ? std::nullopt : std::optional{found->value};
}

}  // namespace rimehaul::app
