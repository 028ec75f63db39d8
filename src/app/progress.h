// Says on a terminal how far a long piece of work is, and how much time is left.
#pragma once

#include <chrono>
#include <cstddef>
#include <mutex>
#include <string>

#include "app/outside.h"
#include "base/watcher.h"

namespace rimehaul::app {

/// Writes to standard error alone, and only where that is a terminal: one line that renews itself,
/// five times a second at most, and is wiped at the end. Nothing for work that takes less than two
/// seconds. Several workers at once may tell it of their parts.
class Progress : public base::Watcher {
 public:
  /// `what` is being done.
  Progress(const Outside& outside, std::string what);
  ~Progress() override;

  void parts_to_come(std::size_t parts) override;
  void part_done() override;

 private:
  using Clock = std::chrono::steady_clock;

  [[nodiscard]] double seconds_gone() const;

  const Outside* outside_;
  std::string what_;
  std::mutex one_at_a_time_;
  std::size_t parts_ = 0;
  std::size_t done_ = 0;
  Clock::time_point start_ = Clock::now();
  Clock::time_point shown_ = start_;
  std::size_t columns_shown_ = 0;
};

/// "audit: 40 % done, 12 s left"
struct Passed {
  std::size_t done = 0;
  std::size_t of = 1;
  double seconds = 0.0;
};
[[nodiscard]] std::string progress_line(const std::string& what, const Passed& passed);

}  // namespace rimehaul::app
