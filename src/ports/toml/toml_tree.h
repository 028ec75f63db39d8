// A TOML file as plain data with line numbers, so that one .cpp alone meets the TOML library.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "ports/toml/text_file.h"
#include "units/clock.h"

namespace rimehaul::ports::toml {

struct Node;
struct Member;
using List = std::vector<Node>;
using Table = std::vector<Member>;

/// A day of the calendar, "2026-01-12".
struct Day {
  std::string text;
};

/// A kind of value that no file of ours uses: a time without a day or without an offset.
struct Unused {};

/// One value and the line it begins on, counted from 1.
struct Node {
  int line = 1;
  std::variant<Table, List, std::string, std::int64_t, double, bool, units::Instant, Day, Unused>
      value;
};

struct Member {
  std::string key;
  Node node;
};

/// What a value is, for people: "text", "a number", "a list".
[[nodiscard]] const char* kind_of(const Node& node);

/// Reads a file into its table. Throws BadInput when it is not a regular file inside its folder, is
/// larger than 1 MB, or is no TOML 1.0 as plain_toml.h wants it; the fault says line and column.
[[nodiscard]] Node parse_file(const TextFile& file);
/// The same of text that a person typed; `file.shown` names it in faults.
[[nodiscard]] Node parse_text(std::string_view text, const TextFile& file);

}  // namespace rimehaul::ports::toml
