// The verb `recall`: a card that was issued is not to be driven by any more.
#pragma once

#include <string>
#include <vector>

#include "app/options.h"
#include "base/fault.h"
#include "day/record_book.h"
#include "units/local_clock.h"

namespace rimehaul::app {

/// Recalls a card, and says which.
[[nodiscard]] Status recall(const RecallOptions& options, const Outside& outside);

/// A doubt for every card that was recalled within the last day: its driver may still hold the
/// paper.
[[nodiscard]] std::vector<base::Fault> doubts_about_recalled(const day::Records& records,
                                                             const units::LocalClock& local_clock,
                                                             units::Instant now);

}  // namespace rimehaul::app
