// Hours as a set: the moments at which something holds, as stretches of time that do not touch.
#pragma once

#include <span>
#include <vector>

#include "units/clock.h"

namespace rimehaul::units {

/// A set of moments in whole seconds, held as periods in order with at least one second that is
/// not in the set between them. Both ends of a period are in it.
class TimeSpans {
 public:
  TimeSpans() = default;
  /// Periods in any order, which may overlap, touch or be empty.
  explicit TimeSpans(std::vector<Period> periods);

  [[nodiscard]] std::span<const Period> periods() const { return periods_; }
  [[nodiscard]] bool empty() const { return periods_.empty(); }
  [[nodiscard]] bool contains(Instant moment) const;
  /// The first moment of the set that is not before this one; nothing when there is none.
  [[nodiscard]] std::optional<Instant> first_from(Instant moment) const;
  /// The period that a moment lies in; nothing when it is not in the set.
  [[nodiscard]] std::optional<Period> around(Instant moment) const;

  [[nodiscard]] TimeSpans united_with(const TimeSpans& other) const;
  [[nodiscard]] TimeSpans shared_with(const TimeSpans& other) const;
  /// The moments of a period that are not in the set.
  [[nodiscard]] TimeSpans gaps_in(Period whole) const;
  /// Every moment so many whole seconds later; earlier where that is below 0.
  [[nodiscard]] TimeSpans later_by(std::int64_t seconds) const;
  /// The moments from which the set is not left for so many whole seconds, 0 or more.
  [[nodiscard]] TimeSpans lasting(std::int64_t seconds) const;

  friend bool operator==(const TimeSpans&, const TimeSpans&) = default;

 private:
  std::vector<Period> periods_;
};

}  // namespace rimehaul::units
