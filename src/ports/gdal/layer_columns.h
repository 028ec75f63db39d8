// What a feature says of itself, column by column, with every misfit told as a fault.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "base/fault.h"
#include "ports/gdal/gdal_guard.h"
#include "units/clock.h"

namespace rimehaul::ports::gdal {

/// Texts by column name in small letters; a column that says nothing is not there.
using Said = std::map<std::string, std::string>;

/// With the letters A to Z made small.
[[nodiscard]] std::string small_letters(std::string text);

/// Which numbers a column may hold, ends included.
struct Allowed {
  double least = 0.0;
  double most = 0.0;
  const char* words = "";  ///< "a number above 0"
};

/// A word of the files and what it stands for.
template <class Value>
struct Word {
  const char* word;
  Value value;
};

/// What a date without an hour is taken for.
enum class DateAlone { counts, misfits };

/// Reads one feature's columns. What cannot be understood is a fault and counts as not said.
class Columns {
 public:
  /// `place` names the feature; faults are added to the list, which must outlive this.
  struct Where {
    std::string file;
    std::string place;
  };
  Columns(Said said, Where where, std::vector<base::Fault>& faults)
      : said_{std::move(said)}, where_{std::move(where)}, faults_{&faults} {}

  [[nodiscard]] std::optional<std::string> text(const std::string& column) const;
  [[nodiscard]] std::optional<double> number(const std::string& column, Allowed allowed) const;
  [[nodiscard]] std::optional<int> whole_number(const std::string& column, Allowed allowed) const;
  [[nodiscard]] std::optional<bool> yes_no(const std::string& column) const;
  [[nodiscard]] std::optional<units::TimeOfDay> time(const std::string& column) const;
  /// A moment; or a date, which stands for its first second in UTC where one may stand alone.
  [[nodiscard]] std::optional<units::Instant> moment(
      const std::string& column, DateAlone date_alone = DateAlone::counts) const;

  template <class Value>
  [[nodiscard]] std::optional<Value> word(const std::string& column,
                                          std::span<const Word<Value>> words) const {
    const auto said = text(column);
    std::vector<std::string> known;
    for (const Word<Value>& entry : words) {
      if (said && small_letters(*said) == entry.word) {
        return entry.value;
      }
      known.emplace_back(entry.word);
    }
    if (said) {
      unknown_word({column, *said}, known);
    }
    return std::nullopt;
  }

  void fault(Complaint complaint) const;
  void doubt(Complaint complaint) const;

 private:
  struct Entry {
    std::string column;
    std::string said;
  };
  void unknown_word(const Entry& entry, const std::vector<std::string>& known) const;
  void misfit(const Entry& entry, const std::string& wanted) const;

  Said said_;
  Where where_;
  std::vector<base::Fault>* faults_;
};

/// Without spaces and line ends at both ends.
[[nodiscard]] std::string trimmed(const std::string& text);
/// "a, b or c".
[[nodiscard]] std::string list_of(const std::vector<std::string>& words);

/// The `key=value` pairs in free text, separated by `;` or line ends; keys in small letters. A key
/// said twice keeps both values, joined by " and ", which no column will take.
[[nodiscard]] Said pairs_in(const std::string& text);

}  // namespace rimehaul::ports::gdal
