// Reads one table of a TOML file, key by key: the one way TOML is read here.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "ports/toml/fault_log.h"
#include "ports/toml/range.h"
#include "ports/toml/toml_tree.h"

namespace rimehaul::ports::toml {

/// Whether a key has to be there.
enum class Presence { must, may };

/// One of the words that a key takes, and what it stands for.
template <class Meaning>
struct Word {
  std::string_view word;
  Meaning meaning;
};

struct NamedReader;

/// Reads a table. Whatever is wrong with a key (missing though it must be there, another kind, out
/// of range) goes to the log, and the answer is nothing, or NaN where a number must be there. Every
/// key asked for counts as known; refuse_rest() complains of all others and names the nearest known
/// one. Node and log must outlive the reader.
class TableReader {
 public:
  TableReader(const Node& node, std::string path, FaultLog& log);

  /// Of the top table: complains unless it says `schema = 1`. Throws BadInput for a newer one.
  void expect_schema();

  /// Whether the key is there, whatever its kind.
  [[nodiscard]] bool has(std::string_view key);

  /// A number as a quantity or a plain double. Whole numbers are numbers.
  template <class Quantity>
  [[nodiscard]] Quantity must(std::string_view key, Range range) {
    return Quantity{number(key, range, Presence::must).value_or(std::nan(""))};
  }
  template <class Quantity>
  [[nodiscard]] std::optional<Quantity> may(std::string_view key, Range range) {
    const std::optional<double> found = number(key, range, Presence::may);
    return found ? std::optional{Quantity{*found}} : std::nullopt;
  }
  [[nodiscard]] std::optional<int> whole(std::string_view key, Range range, Presence presence);

  /// One line of text for people.
  [[nodiscard]] std::optional<std::string> text(std::string_view key,
                                                Presence presence = Presence::must);
  [[nodiscard]] std::optional<bool> yes_no(std::string_view key,
                                           Presence presence = Presence::must);
  [[nodiscard]] std::optional<units::Instant> moment(std::string_view key);
  /// "2026-01-12".
  [[nodiscard]] std::optional<std::string> day(std::string_view key,
                                               Presence presence = Presence::must);

  /// One of a few words.
  template <class Meaning, std::size_t kCount>
  [[nodiscard]] std::optional<Meaning> word(std::string_view key,
                                            const std::array<Word<Meaning>, kCount>& words,
                                            Presence presence = Presence::must) {
    std::vector<std::string> known;
    known.reserve(kCount);
    for (const Word<Meaning>& each : words) {
      known.emplace_back(each.word);
    }
    const std::optional<std::size_t> index = word_index(key, known, presence);
    return index ? std::optional{words.at(*index).meaning} : std::nullopt;
  }

  /// A list of numbers, one for each range.
  [[nodiscard]] std::optional<std::vector<double>> numbers(std::string_view key,
                                                           std::span<const Range> ranges,
                                                           Presence presence = Presence::must);
  /// A list of numbers, as many as there are, each in the range; empty when it is not there.
  [[nodiscard]] std::vector<double> list(std::string_view key, Range range,
                                         Presence presence = Presence::must);
  /// A list of such lists.
  [[nodiscard]] std::vector<std::vector<double>> rows(std::string_view key,
                                                      std::span<const Range> ranges,
                                                      Presence presence = Presence::must);
  /// A list of texts.
  [[nodiscard]] std::vector<std::string> texts(std::string_view key, Presence presence);

  /// The table under a key. A missing one reads as empty, so that each `must` in it complains.
  [[nodiscard]] TableReader table(std::string_view key);
  /// The same, but nothing when it is missing or no table.
  [[nodiscard]] std::optional<TableReader> table_if_there(std::string_view key);
  /// The tables of `[[key]]`; none when it is missing.
  [[nodiscard]] std::vector<TableReader> tables(std::string_view key);
  /// All that stands in this table, each a table under a name that a person gave it.
  [[nodiscard]] std::vector<NamedReader> named_tables();

  /// Call last: complains of every key that nobody asked for.
  void refuse_rest();

  void fault(std::string_view key, Complaint complaint);
  /// About this table as a whole.
  void fault(Complaint complaint);
  void doubt(Complaint complaint);
  /// Faults in the whole file so far.
  [[nodiscard]] std::size_t faults() const { return log_->count(); }

 private:
  [[nodiscard]] const Node* find(std::string_view key) const;
  [[nodiscard]] Spot spot_of(std::string_view key) const;
  /// The node under a key, which then counts as known; complains when it must be there and is not.
  [[nodiscard]] const Node* ask(std::string_view key, Presence presence, const std::string& wanted);
  /// The same when it is of the wanted kind; complains when it is not.
  template <class Value>
  [[nodiscard]] const Value* ask_for(std::string_view key, Presence presence,
                                     const std::string& wanted) {
    const Node* node = ask(key, presence, wanted);
    const Value* value = node != nullptr ? std::get_if<Value>(&node->value) : nullptr;
    if (node != nullptr && value == nullptr) {
      wrong_kind(spot_of(key), *node, wanted);
    }
    return value;
  }
  void wrong_kind(const Spot& spot, const Node& found, const std::string& wanted);

  [[nodiscard]] std::optional<double> number(std::string_view key, Range range, Presence presence);
  [[nodiscard]] std::optional<double> number_in(const Node& node, const Spot& spot, Range range);
  [[nodiscard]] std::optional<std::vector<double>> numbers_in(const Node& node, const Spot& spot,
                                                              std::span<const Range> ranges);
  [[nodiscard]] std::optional<std::string> text_in(const Node& node, const Spot& spot);
  [[nodiscard]] std::optional<std::size_t> word_index(std::string_view key,
                                                      const std::vector<std::string>& words,
                                                      Presence presence);

  const Node* node_;
  int line_;  ///< of the table, or of the one that ought to hold it
  std::string path_;
  FaultLog* log_;
  std::vector<std::string> asked_;
};

struct NamedReader {
  std::string name;
  TableReader reader;
};

}  // namespace rimehaul::ports::toml
