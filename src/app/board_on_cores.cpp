#include "app/board_on_cores.h"

#include <algorithm>
#include <future>
#include <optional>
#include <thread>
#include <utility>

#include "app/shared_watcher.h"

namespace rimehaul::app {

day::DayBoard board_on_cores(std::span<const day::BoardSnow> columns,
                             const day::BoardQuestion& question) {
  const std::size_t workers =
      std::min<std::size_t>(columns.size(), std::max(std::thread::hardware_concurrency(), 1U));
  std::optional<SharedWatcher> watcher;
  day::BoardQuestion shared = question;
  if (question.watcher != nullptr) {
    watcher.emplace(*question.watcher, columns.size() * question.rows.size());
    shared.watcher = &*watcher;
  }
  // A worker takes every so many columns, drier and wetter ones, and measures the ground once.
  std::vector<std::vector<day::BoardSnow>> shares(workers);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    shares[i % workers].push_back(columns[i]);
  }
  std::vector<std::future<day::DayBoard>> answers;
  answers.reserve(workers);
  for (const std::vector<day::BoardSnow>& share : shares) {
    answers.push_back(std::async(std::launch::async, [&] { return day::board_of(share, shared); }));
  }
  std::vector<day::DayBoard> judged;
  judged.reserve(workers);
  for (std::future<day::DayBoard>& answer : answers) {
    judged.push_back(answer.get());
  }
  std::vector<day::DayBoard> by_snow(columns.size());
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const std::size_t width = shares[i % workers].size();
    std::vector<day::BoardCell>& cells = judged[i % workers].cells;
    for (std::size_t cell = i / workers; cell < cells.size(); cell += width) {
      by_snow[i].cells.push_back(std::move(cells[cell]));
    }
  }
  return day::side_by_side(std::move(by_snow));
}

}  // namespace rimehaul::app
