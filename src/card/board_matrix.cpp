#include "card/board_matrix.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <tuple>

namespace rimehaul::card {

namespace {

/// The rows of a board by stations and snow.
class Rows {
 public:
  explicit Rows(const BoardReport& report) {
    for (const BoardRow& row : report.rows) {
      from_.push_back(number_of(row.from));
      to_.push_back(number_of(row.to));
      rows_[{from_.back(), to_.back(), row.snow}] = &row;
    }
    for (std::vector<std::size_t>* ends : {&from_, &to_}) {
      std::ranges::sort(*ends);
      ends->erase(std::unique(ends->begin(), ends->end()), ends->end());
    }
  }

  [[nodiscard]] const std::vector<std::size_t>& from() const { return from_; }
  [[nodiscard]] const std::vector<std::size_t>& to() const { return to_; }
  [[nodiscard]] const std::vector<std::string>& stations() const { return stations_; }
  /// Null where the board has no such pair.
  // From one end to the other. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
  [[nodiscard]] const BoardRow* find(std::size_t from, std::size_t to,
                                     const snow::SnowState& snow) const {
    const auto found = rows_.find({from, to, snow});
    return found == rows_.end() ? nullptr : found->second;
  }

 private:
  std::size_t number_of(const std::string& station) {
    const auto [known, is_new] = numbers_.emplace(station, stations_.size());
    if (is_new) {
      stations_.push_back(station);
    }
    return known->second;
  }

  std::vector<std::string> stations_;
  std::map<std::string, std::size_t> numbers_;
  std::vector<std::size_t> from_;
  std::vector<std::size_t> to_;
  std::map<std::tuple<std::size_t, std::size_t, snow::SnowState>, const BoardRow*> rows_;
};

/// A list in parts of so many at most.
std::vector<std::vector<std::size_t>> in_parts(const std::vector<std::size_t>& list,
                                               std::size_t most) {
  std::vector<std::vector<std::size_t>> parts;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (i % most == 0) {
      parts.emplace_back();
    }
    parts.back().push_back(list[i]);
  }
  return parts;
}

void fill(BoardMatrix& matrix, const Rows& rows, BoardNotes& notes) {
  for (const std::size_t from : matrix.from) {
    for (const std::size_t to : matrix.to) {
      const BoardRow* row = rows.find(from, to, matrix.snow);
      matrix.cells.emplace_back();
      if (row != nullptr) {
        matrix.cells.back() = MatrixCell{figure_of(*row), notes.number_of(*row), sign_of(*row)};
      }
    }
  }
}

}  // namespace

BoardTables tables_of(const BoardReport& report, const MatrixRoom& room, BoardNotes& notes) {
  const Rows rows{report};
  BoardTables tables{.stations = rows.stations(), .matrices = {}};
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    const auto snows = columns_on(static_cast<snow::Surface>(i), report);
    for (const std::vector<std::size_t>& from : in_parts(rows.from(), room.rows)) {
      for (const std::vector<std::size_t>& to : in_parts(rows.to(), room.columns)) {
        for (const snow::SnowState& snow : snows) {
          tables.matrices.push_back({snow, from, to, {}});
          fill(tables.matrices.back(), rows, notes);
        }
      }
    }
  }
  return tables;
}

std::string letters_of(std::size_t station) {
  constexpr std::size_t kLetters = 26;
  std::string letters(1, static_cast<char>('A' + station % kLetters));
  return station < kLetters ? letters : letters_of(station / kLetters - 1) + letters;
}

std::string figure_of(const BoardRow& row) {
  if (const std::optional<double> share = share_in_cell(row)) {
    return cell_percent(*share);
  }
  if (row.loads.any()) {
    return "kg";
  }
  return row.binding && row.stand == passage::Stand::missing ? "?" : "no";
}

}  // namespace rimehaul::card
