#include "app/board_on_cores.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "app/crew_on_cores.h"
#include "base/watcher.h"

namespace rimehaul::app {

namespace {

/// Hands on what is done of shares whose parts have been told together.
class PartsDone final : public base::Watcher {
 public:
  explicit PartsDone(base::Watcher& watcher) : watcher_{watcher} {}
  void parts_to_come(std::size_t /*parts*/) override {}
  void part_done() override { watcher_.part_done(); }

 private:
  base::Watcher& watcher_;
};

/// Shares of a board, each judged by itself.
class Shares final : public base::Work {
 public:
  Shares(std::span<const day::BoardSnow> columns, const day::BoardQuestion& question,
         std::size_t count)
      : question_{question}, columns_(count), boards_(count) {
    // Each takes every so many columns, drier and wetter ones, and measures the ground once.
    for (std::size_t i = 0; i < columns.size(); ++i) {
      columns_[i % count].push_back(columns[i]);
    }
  }

  void do_part(std::size_t share) override {
    boards_[share] = day::board_of(columns_[share], question_);
  }

  /// The column of the whole board with its cells; asked for once each.
  [[nodiscard]] day::DayBoard column(std::size_t number) {
    const std::size_t width = columns_[number % columns_.size()].size();
    std::vector<day::BoardCell>& cells = boards_[number % columns_.size()].cells;
    day::DayBoard column;
    for (std::size_t cell = number / columns_.size(); cell < cells.size(); cell += width) {
      column.cells.push_back(std::move(cells[cell]));
    }
    return column;
  }

 private:
  const day::BoardQuestion& question_;
  std::vector<std::vector<day::BoardSnow>> columns_;
  std::vector<day::DayBoard> boards_;
};

}  // namespace

day::DayBoard board_on_cores(std::span<const day::BoardSnow> columns,
                             const day::BoardQuestion& question) {
  const std::size_t count = std::min(columns.size(), hands());
  std::optional<PartsDone> watcher;
  day::BoardQuestion shared = question;
  if (question.watcher != nullptr) {
    question.watcher->parts_to_come(columns.size() * question.rows.size());
    shared.watcher = &watcher.emplace(*question.watcher);
  }
  Shares shares{columns, shared, count};
  CrewOnCores{}.do_all(shares, count);
  std::vector<day::DayBoard> by_snow;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    by_snow.push_back(shares.column(i));
  }
  return day::side_by_side(std::move(by_snow));
}

}  // namespace rimehaul::app
