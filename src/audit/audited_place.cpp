#include "audit/audited_place.h"

#include <cmath>

namespace rimehaul::audit {

using passage::Stand;

Band band_of(const passage::Finding& finding, double allowed_share) {
  const bool has_numbers = finding.measure == passage::Measure::share &&
                           std::isfinite(finding.demand.value) &&
                           std::isfinite(finding.capacity.value);
  if (finding.missing.empty() && !finding.refused.empty() && has_numbers) {
    return Band::over_whole;  // the numbers are known, and nothing is left to hold
  }
  const Stand stand = passage::stand_of(finding, allowed_share);
  if (stand == Stand::missing || stand == Stand::refused) {
    return Band::closed;
  }
  constexpr double kHalf = 0.5;
  const double share = *finding.share;
  if (stand != Stand::exceeds) {
    return share <= kHalf ? Band::to_half : Band::to_allowed;
  }
  return share <= 1.0 ? Band::to_whole : Band::over_whole;
}

bool exceeds(Stand stand) {
  return stand != Stand::passes && stand != Stand::asks;
}

void BandLengths::add(const GradedPiece& piece) {
  const units::Metres length = piece.span.to - piece.span.from;
  by_band.at(static_cast<std::size_t>(piece.band)) += length;
  waiting += piece.waits ? length : units::Metres{0};
}

void BandLengths::add(const BandLengths& more) {
  for (std::size_t band = 0; band < by_band.size(); ++band) {
    by_band.at(band) += more.by_band.at(band);
  }
  waiting += more.waiting;
}

units::Metres BandLengths::total() const {
  units::Metres all{0};
  for (const units::Metres part : by_band) {
    all += part;
  }
  return all;
}

}  // namespace rimehaul::audit
