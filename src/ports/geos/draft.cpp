#include "ports/geos/draft.h"

#include <algorithm>
#include <utility>

#include "units/rounding.h"

namespace rimehaul::ports::geos {

using units::Metres;

Draft::Draft(const std::vector<trails::Trail>& trails, const std::vector<trails::Mark>& marks,
             Metres snap)
    : bridges_(trails.size()), snap_{snap} {
  lines.reserve(trails.size());
  for (std::size_t i = 0; i < trails.size(); ++i) {
    lines.emplace_back(trails[i].line);
    labels_.push_back({trails[i].name, trails[i].file});
    for (const trails::Mark& mark : marks) {
      if (mark.kind == trails::MarkKind::bridge && mark.trail == trails[i].name) {
        bridges_[i].push_back(mark.span);
      }
    }
  }
}

bool Draft::crosses_at_bridge(OnTrail place) const {
  return std::ranges::any_of(bridges_[place.trail], [&](geo::Span bridge) {
    // A bridge marked as a point says nothing of its length, so it reaches farther.
    const Metres reach = bridge.from == bridge.to ? 3 * snap_ : snap_;
    return bridge.from - reach <= place.was && place.was <= bridge.to + reach;
  });
}

bool Draft::is_on_bridge(OnTrail place) const {
  return std::ranges::any_of(bridges_[place.trail], [&](geo::Span bridge) {
    return bridge.from + snap_ < place.was && place.was < bridge.to - snap_;
  });
}

base::Fault Draft::fault(std::size_t trail, Complaint complaint) const {
  return {.file = labels_[trail].file,
          .place = "trail " + name(trail),
          .problem = std::move(complaint.problem),
          .remedy = std::move(complaint.remedy)};
}

void Draft::doubt(std::size_t trail, Complaint complaint) {
  faults.push_back(fault(trail, std::move(complaint)));
  faults.back().weight = base::Weight::doubt;
}

void Draft::refuse(std::size_t trail, Complaint complaint) {
  faults.push_back(fault(trail, std::move(complaint)));
  refused.push_back(trail);
}

std::string words_of(Metres length) {
  return units::text_of(length.value(), 1, units::Round::up) + " m";
}

}  // namespace rimehaul::ports::geos
