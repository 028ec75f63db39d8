// Drives a way through the day: every leg judged again at the hour at which it is entered.
#pragma once

#include <map>
#include <span>
#include <variant>

#include "search/route.h"
#include "search/usable.h"

namespace rimehaul::search {

/// The leg that could not be entered at its hour, and what the judge found there.
struct Blocked {
  trails::LegId leg{};
  std::optional<trails::LegId> turn_from;  ///< the turn into the leg blocks, not the leg
  units::Instant entry;
  passage::Finding finding;
  std::string decision;  ///< that would open it; empty: none would
};

/// A leg, and when it is entered.
struct TimedLeg {
  trails::LegId leg{};
  units::Instant entry;
};

/// Times ways that set out at one moment; remembers what it has judged, since ways begin alike.
class Timekeeper {
 public:
  /// Holds a reference: the judge must outlive it.
  Timekeeper(const passage::LegJudge& judge, units::Instant depart);

  /// Every leg is entered as soon as the one before it is driven. Requires at least one leg.
  [[nodiscard]] std::variant<Route, Blocked> drive(std::span<const trails::LegId> legs,
                                                   Permission permission);
  /// Every leg is entered at its hour; what is left until then is waited. Requires at least one
  /// leg, the first entered at the departure, and none before the one before it is driven.
  [[nodiscard]] std::variant<Route, Blocked> drive_at_hours(std::span<const TimedLeg> legs,
                                                            Permission permission);

 private:
  [[nodiscard]] std::optional<Blocked> drive_on(Route& route, const TimedLeg& next,
                                                Permission permission);
  const passage::LegJudgement& judged(trails::LegId leg, units::Instant entry);

  const passage::LegJudge* judge_;
  units::Instant depart_;
  std::map<std::pair<trails::LegId, units::Instant>, passage::LegJudgement> known_;
};

[[nodiscard]] Permission permission_of(const RouteQuestion& question);

}  // namespace rimehaul::search
