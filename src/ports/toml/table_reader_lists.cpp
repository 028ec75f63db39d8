// How a table reader reads what holds more than one value: lists, and tables within the table.
#include <utility>

#include "base/one_line.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

const Node& empty_table() {
  static const Node node{.line = 1, .value = Table{}};
  return node;
}

std::string wanted_of(std::span<const Range> ranges) {
  return std::to_string(ranges.size()) + " numbers";
}

}  // namespace

std::optional<std::vector<double>> TableReader::numbers_in(const Node& node, const Spot& spot,
                                                           std::span<const Range> ranges) {
  const auto* list = std::get_if<List>(&node.value);
  const std::string wanted = "a list of " + wanted_of(ranges);
  if (list == nullptr) {
    wrong_kind(spot, node, wanted);
    return std::nullopt;
  }
  if (list->size() != ranges.size()) {
    log_->fault(spot, {"is a list of " + std::to_string(list->size()), "write " + wanted});
    return std::nullopt;
  }
  std::vector<double> numbers;
  for (std::size_t index = 0; index < ranges.size(); ++index) {
    if (const auto number = number_in((*list)[index], spot, ranges[index])) {
      numbers.push_back(*number);
    }
  }
  return numbers.size() == ranges.size() ? std::optional{numbers} : std::nullopt;
}

std::optional<std::vector<double>> TableReader::numbers(std::string_view key,
                                                        std::span<const Range> ranges,
                                                        Presence presence) {
  const Node* node = ask(key, presence, "a list of " + wanted_of(ranges));
  return node != nullptr ? numbers_in(*node, spot_of(key), ranges) : std::nullopt;
}

std::vector<double> TableReader::list(std::string_view key, Range range, Presence presence) {
  std::vector<double> numbers;
  if (const auto* list = ask_for<List>(key, presence, "a list of numbers")) {
    for (const Node& node : *list) {
      const Spot spot{.line = node.line, .path = spot_of(key).path};
      if (const auto number = number_in(node, spot, range)) {
        numbers.push_back(*number);
      }
    }
  }
  return numbers;
}

std::vector<std::vector<double>> TableReader::rows(std::string_view key,
                                                   std::span<const Range> ranges,
                                                   Presence presence) {
  std::vector<std::vector<double>> rows;
  const std::string wanted = "a list of lists of " + wanted_of(ranges);
  if (const auto* list = ask_for<List>(key, presence, wanted)) {
    for (const Node& node : *list) {
      const Spot spot{.line = node.line, .path = spot_of(key).path};
      if (auto row = numbers_in(node, spot, ranges)) {
        rows.push_back(std::move(*row));
      }
    }
  }
  return rows;
}

std::vector<std::string> TableReader::texts(std::string_view key, Presence presence) {
  std::vector<std::string> texts;
  if (const auto* list = ask_for<List>(key, presence, "a list of texts")) {
    for (const Node& node : *list) {
      if (auto text = text_in(node, {.line = node.line, .path = spot_of(key).path})) {
        texts.push_back(std::move(*text));
      }
    }
    if (list->empty() && presence == Presence::must) {
      log_->fault(spot_of(key), {"is an empty list", "name at least one"});
    }
  }
  return texts;
}

std::optional<TableReader> TableReader::table_if_there(std::string_view key) {
  if (ask_for<Table>(key, Presence::may, "a table") == nullptr) {
    return std::nullopt;
  }
  return TableReader{*find(key), spot_of(key).path, *log_};
}

TableReader TableReader::table(std::string_view key) {
  if (auto reader = table_if_there(key)) {
    return *reader;
  }
  const Spot spot = spot_of(key);
  TableReader reader{empty_table(), spot.path, *log_};
  reader.line_ = spot.line;
  return reader;
}

std::vector<TableReader> TableReader::tables(std::string_view key) {
  std::vector<TableReader> readers;
  const std::string wanted = "tables under [[" + spot_of(key).path + "]]";
  if (const auto* list = ask_for<List>(key, Presence::may, wanted)) {
    for (const Node& node : *list) {
      const Spot spot{.line = node.line, .path = spot_of(key).path};
      if (std::holds_alternative<Table>(node.value)) {
        readers.emplace_back(node, spot.path, *log_);
      } else {
        wrong_kind(spot, node, wanted);
      }
    }
  }
  return readers;
}

std::vector<NamedReader> TableReader::named_tables() {
  std::vector<NamedReader> readers;
  for (const Member& member : std::get<Table>(node_->value)) {
    asked_.push_back(member.key);
    const Spot spot = spot_of(member.key);
    if (!base::is_one_line(member.key)) {
      log_->fault(spot, {"its name is empty, longer than 200 bytes, or holds control characters",
                         "give it a short name"});
    } else if (std::holds_alternative<Table>(member.node.value)) {
      readers.push_back({member.key, {member.node, spot.path, *log_}});
    } else {
      wrong_kind(spot, member.node, "a table");
    }
  }
  return readers;
}

}  // namespace rimehaul::ports::toml
