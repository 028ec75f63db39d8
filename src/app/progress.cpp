#include "app/progress.h"

#include <algorithm>
#include <cmath>
#include <ostream>
#include <utility>

#include "card/figures.h"

namespace rimehaul::app {

namespace {

/// Work that takes less says nothing.
constexpr double kWorthTelling_s = 2.0;
constexpr std::chrono::milliseconds kBetween{200};

}  // namespace

Progress::Progress(const Outside& outside, std::string what)
    : outside_{&outside}, what_{std::move(what)} {}

Progress::~Progress() {
  if (columns_shown_ > 0) {
    outside_->err << '\r' << std::string(columns_shown_, ' ') << '\r' << std::flush;
  }
}

void Progress::parts_to_come(std::size_t parts) {
  const std::scoped_lock one_at_a_time{one_at_a_time_};
  parts_ += parts;
}

double Progress::seconds_gone() const {
  return std::chrono::duration<double>(Clock::now() - start_).count();
}

void Progress::part_done() {
  const std::scoped_lock one_at_a_time{one_at_a_time_};
  ++done_;
  const Clock::time_point now = Clock::now();
  const bool tell = outside_->err_is_terminal && now - shown_ >= kBetween &&
                    (columns_shown_ > 0 || seconds_gone() >= kWorthTelling_s);
  if (!tell) {
    return;
  }
  std::string line = progress_line(what_, {done_, parts_, seconds_gone()});
  const std::size_t columns = line.size();
  line.resize(std::max(columns, columns_shown_), ' ');
  outside_->err << '\r' << line << std::flush;
  columns_shown_ = std::max(columns, columns_shown_);
  shown_ = now;
}

std::string progress_line(const std::string& what, const Passed& passed) {
  const std::size_t done = std::min(passed.done, passed.of);
  std::string line = what + ": " + std::to_string(100 * done / std::max<std::size_t>(passed.of, 1));
  line += " % done";
  if (done > 0) {
    const double left =
        passed.seconds * static_cast<double>(passed.of - done) / static_cast<double>(done);
    line += ", " + card::duration_text(units::Seconds{left}) + " left";
  }
  return line;
}

}  // namespace rimehaul::app
