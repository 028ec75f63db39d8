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

/// Times ways that set out at one moment; remembers what it has judged, since ways begin alike.
class Timekeeper {
 public:
  /// Holds a reference: the judge must outlive it.
  Timekeeper(const passage::LegJudge& judge, units::Instant depart);

  /// Requires at least one leg.
  [[nodiscard]] std::variant<Route, Blocked> drive(std::span<const trails::LegId> legs,
                                                   Permission permission);

 private:
  const passage::LegJudgement& judged(trails::LegId leg, units::Instant entry);

  const passage::LegJudge* judge_;
  units::Instant depart_;
  std::map<std::pair<trails::LegId, units::Instant>, passage::LegJudgement> known_;
};

[[nodiscard]] Permission permission_of(const RouteQuestion& question);

}  // namespace rimehaul::search
