// How each kind of value is asked for, and what is said when it is not there.
#include "ports/toml/table_reader.h"

#include <algorithm>
#include <utility>

#include "base/joined.h"
#include "base/nearest_name.h"
#include "base/one_line.h"

namespace rimehaul::ports::toml {

namespace {

constexpr std::int64_t kSchema = 1;

std::string nearest_or(std::string_view typed, const std::vector<std::string>& known,
                       const std::string& otherwise) {
  const auto nearest = base::nearest_name(typed, known);
  return nearest ? "did you mean \"" + *nearest + "\"?" : otherwise;
}

std::string wanted_of(const std::vector<std::string>& words) {
  return "one of: " + base::joined(words, ", ");
}

}  // namespace

TableReader::TableReader(const Node& node, std::string path, FaultLog& log)
    : node_{&node}, line_{node.line}, path_{std::move(path)}, log_{&log} {}

const Node* TableReader::find(std::string_view key) const {
  const auto& members = std::get<Table>(node_->value);
  const auto member = std::ranges::find(members, key, &Member::key);
  return member != members.end() ? &member->node : nullptr;
}

Spot TableReader::spot_of(std::string_view key) const {
  const Node* node = find(key);
  const std::string name{key};
  return {.line = node != nullptr ? node->line : line_,
          .path = path_.empty() ? name : path_ + "." + name};
}

const Node* TableReader::ask(std::string_view key, Presence presence, const std::string& wanted) {
  if (std::ranges::find(asked_, key) == asked_.end()) {
    asked_.emplace_back(key);
  }
  const Node* node = find(key);
  if (node == nullptr && presence == Presence::must) {
    log_->fault(spot_of(key), {"is missing", "add it: " + wanted});
  }
  return node;
}

void TableReader::wrong_kind(const Spot& spot, const Node& found, const std::string& wanted) {
  log_->fault(spot, {std::string{"is "} + kind_of(found), "write " + wanted});
}

bool TableReader::has(std::string_view key) {
  return ask(key, Presence::may, "") != nullptr;
}

std::optional<double> TableReader::number_in(const Node& node, const Spot& spot, Range range) {
  const auto* whole = std::get_if<std::int64_t>(&node.value);
  const auto* decimal = std::get_if<double>(&node.value);
  if (whole == nullptr && decimal == nullptr) {
    wrong_kind(spot, node, "a number " + range.words() + ", without quotes");
    return std::nullopt;
  }
  const double number = whole != nullptr ? static_cast<double>(*whole) : *decimal;
  if (range.holds(number)) {
    return number;
  }
  log_->fault(spot, {shortest(number) + " is out of range", "write a number " + range.words()});
  return std::nullopt;
}

std::optional<double> TableReader::number(std::string_view key, Range range, Presence presence) {
  const Node* node = ask(key, presence, "a number " + range.words());
  return node != nullptr ? number_in(*node, spot_of(key), range) : std::nullopt;
}

std::optional<int> TableReader::whole(std::string_view key, Range range, Presence presence) {
  const std::string wanted = "a whole number " + range.words();
  const auto* found = ask_for<std::int64_t>(key, presence, wanted);
  if (found == nullptr) {
    return std::nullopt;
  }
  if (!range.holds(static_cast<double>(*found))) {
    log_->fault(spot_of(key), {std::to_string(*found) + " is out of range", "write " + wanted});
    return std::nullopt;
  }
  return static_cast<int>(*found);
}

std::optional<std::string> TableReader::text_in(const Node& node, const Spot& spot) {
  const auto* text = std::get_if<std::string>(&node.value);
  if (text == nullptr) {
    wrong_kind(spot, node, "text in quotes");
    return std::nullopt;
  }
  if (!base::is_one_line(*text)) {
    log_->fault(spot, {"is empty, longer than 200 bytes, or holds control characters",
                       "write one short line of text"});
    return std::nullopt;
  }
  return *text;
}

std::optional<std::string> TableReader::text(std::string_view key, Presence presence) {
  const Node* node = ask(key, presence, "text in quotes");
  return node != nullptr ? text_in(*node, spot_of(key)) : std::nullopt;
}

std::optional<bool> TableReader::yes_no(std::string_view key, Presence presence) {
  const bool* found = ask_for<bool>(key, presence, "true or false, without quotes");
  return found != nullptr ? std::optional{*found} : std::nullopt;
}

std::optional<units::Instant> TableReader::moment(std::string_view key) {
  const auto* found = ask_for<units::Instant>(
      key, Presence::must, "a moment with its offset and without quotes: 2026-02-01T06:30:00Z");
  return found != nullptr ? std::optional{*found} : std::nullopt;
}

std::optional<std::string> TableReader::day(std::string_view key, Presence presence) {
  const auto* found = ask_for<Day>(key, presence, "a day without quotes: 2026-01-12");
  return found != nullptr ? std::optional{found->text} : std::nullopt;
}

std::optional<std::size_t> TableReader::word_index(std::string_view key,
                                                   const std::vector<std::string>& words,
                                                   Presence presence) {
  const auto* found = ask_for<std::string>(key, presence, wanted_of(words));
  if (found == nullptr) {
    return std::nullopt;
  }
  const auto word = std::ranges::find(words, *found);
  if (word == words.end()) {
    log_->fault(spot_of(key), {"\"" + *found + "\" is not known here",
                               nearest_or(*found, words, "write " + wanted_of(words))});
    return std::nullopt;
  }
  return static_cast<std::size_t>(word - words.begin());
}

void TableReader::refuse_rest() {
  for (const Member& member : std::get<Table>(node_->value)) {
    if (std::ranges::find(asked_, member.key) == asked_.end()) {
      log_->fault(
          spot_of(member.key),
          {"is no key of this table",
           nearest_or(member.key, asked_, "remove it; docs/site-format.md names the keys")});
    }
  }
}

void TableReader::fault(std::string_view key, Complaint complaint) {
  log_->fault(spot_of(key), std::move(complaint));
}

void TableReader::fault(Complaint complaint) {
  log_->fault({.line = line_, .path = path_}, std::move(complaint));
}

void TableReader::doubt(Complaint complaint) {
  log_->doubt({.line = line_, .path = path_}, std::move(complaint));
}

void TableReader::expect_schema() {
  const Node* node = ask("schema", Presence::must, "schema = 1");
  if (node == nullptr) {
    return;
  }
  const auto* schema = std::get_if<std::int64_t>(&node->value);
  if (schema != nullptr && *schema > kSchema) {
    throw base::BadInput{{.file = log_->file(),
                          .place = "line " + std::to_string(node->line) + " (schema)",
                          .problem = "schema " + std::to_string(*schema) +
                                     " is newer than this program, which reads schema 1",
                          .remedy = "use a newer program"}};
  }
  if (schema == nullptr || *schema != kSchema) {
    log_->fault(spot_of("schema"), {"is no schema of ours", "write schema = 1"});
  }
}

}  // namespace rimehaul::ports::toml
