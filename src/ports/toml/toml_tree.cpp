// The one place that meets the TOML library: its nodes become ours.
#include "ports/toml/toml_tree.h"

#include <toml++/toml.h>

#include <array>
#include <cstdio>
#include <string_view>
#include <utility>

#include "base/fault.h"
#include "ports/toml/plain_toml.h"

namespace rimehaul::ports::toml {

namespace {

// Outside this file `toml` is our own folder's name.
namespace lib = ::toml;

/// Deeper than any file of ours nests.
constexpr int kMostDepth = 32;

std::string text_of(const lib::date& day) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%04u-%02u-%02u", static_cast<unsigned>(day.year),
                static_cast<unsigned>(day.month), static_cast<unsigned>(day.day));
  return text.data();
}

/// Fractions of a second are left out.
std::string text_of(const lib::date_time& moment) {
  const int offset = moment.offset->minutes;
  const int size = offset < 0 ? -offset : offset;
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "T%02u:%02u:%02u%c%02d:%02d",
                static_cast<unsigned>(moment.time.hour), static_cast<unsigned>(moment.time.minute),
                static_cast<unsigned>(moment.time.second), offset < 0 ? '-' : '+', size / 60,
                size % 60);
  return text_of(moment.date) + text.data();
}

Node node_of(const lib::node& node, int depth);

Table table_of(const lib::table& table, int depth) {
  Table members;
  for (const auto& [key, node] : table) {
    members.push_back({.key = std::string{key.str()}, .node = node_of(node, depth + 1)});
  }
  return members;
}

List list_of(const lib::array& array, int depth) {
  List list;
  for (const lib::node& node : array) {
    list.push_back(node_of(node, depth + 1));
  }
  return list;
}

Node moment_of(const lib::date_time& moment) {
  Node made{.line = 1, .value = Unused{}};
  if (moment.offset) {
    if (const auto instant = units::parse_instant(text_of(moment))) {
      made.value = *instant;
    }
  }
  return made;
}

Node leaf_of(const lib::node& node) {
  if (const auto* text = node.as_string()) {
    return {.line = 1, .value = text->get()};
  }
  if (const auto* whole = node.as_integer()) {
    return {.line = 1, .value = whole->get()};
  }
  if (const auto* number = node.as_floating_point()) {
    return {.line = 1, .value = number->get()};
  }
  if (const auto* yes_no = node.as_boolean()) {
    return {.line = 1, .value = yes_no->get()};
  }
  if (const auto* moment = node.as_date_time()) {
    return moment_of(moment->get());
  }
  if (const auto* day = node.as_date()) {
    return {.line = 1, .value = Day{text_of(day->get())}};
  }
  return {.line = 1, .value = Unused{}};
}

Node node_of(const lib::node& node, int depth) {
  Node made{.line = 1, .value = Unused{}};
  if (depth <= kMostDepth) {
    if (const auto* table = node.as_table()) {
      made.value = table_of(*table, depth);
    } else if (const auto* array = node.as_array()) {
      made.value = list_of(*array, depth);
    } else {
      made = leaf_of(node);
    }
  }
  made.line = static_cast<int>(node.source().begin.line);
  return made;
}

std::string place_of(const lib::parse_error& error) {
  const auto& begin = error.source().begin;
  return "line " + std::to_string(begin.line) + ", column " + std::to_string(begin.column);
}

}  // namespace

const char* kind_of(const Node& node) {
  constexpr std::array<const char*, std::variant_size_v<decltype(Node::value)>> kKinds{
      "a table",       "a list",   "text",  "a whole number", "a number",
      "true or false", "a moment", "a day", "of another kind"};
  return kKinds.at(node.value.index());
}

Node parse_file(const TextFile& file) {
  return parse_text(guarded_text(file), file);
}

Node parse_text(std::string_view text, const TextFile& file) {
  expect_plain_toml(text, file);
  try {
    const lib::table table = lib::parse(text, std::string_view{file.shown});
    return {.line = 1, .value = table_of(table, 0)};
  } catch (const lib::parse_error& error) {
    throw base::BadInput{
        {.file = file.shown,
         .place = place_of(error),
         .problem = std::string{error.description()},
         .remedy = "correct the TOML there: one key = value to a line, text in quotes"}};
  }
}

}  // namespace rimehaul::ports::toml
