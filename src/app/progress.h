// Says on a terminal how far a long piece of work is, and how much time is left.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>

#include "app/outside.h"

namespace rimehaul::app {

/// Writes to standard error alone. On a terminal one line that renews itself, five times a second
/// at most, and is wiped at the end; anywhere else one plain line at the end. Nothing at all for
/// work that takes less than two seconds.
class Progress {
 public:
  /// `parts`: into how many parts of about one size the work falls.
  Progress(const Outside& outside, std::string what, std::size_t parts);
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void part_done();

 private:
  using Clock = std::chrono::steady_clock;

  [[nodiscard]] double seconds_gone() const;

  const Outside* outside_;
  std::string what_;
  std::size_t parts_;
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
