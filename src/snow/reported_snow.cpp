// What an observer's report says of a place and hour: the worst that may be true of it.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

#include "snow/snow.h"

namespace rimehaul::snow {

namespace {

/// Clockwise from one direction to another, degrees in [0, 360).
double clockwise_deg(units::Bearing from, units::Bearing to) {
  const double turn = to.degrees() - from.degrees();
  return turn < 0 ? turn + 360.0 : turn;
}

bool covers(const SnowBand& band, geo::Height height) {
  return std::isfinite(height.above_datum_m()) && (!band.above || height >= *band.above) &&
         (!band.below || height <= *band.below);
}

bool covers_all_aspects(const SnowBand& band) {
  return !band.aspect_from && !band.aspect_to;
}

bool covers(const SnowBand& band, units::Bearing aspect) {
  if (covers_all_aspects(band)) {
    return true;
  }
  if (!band.aspect_from || !band.aspect_to) {
    return false;
  }
  return clockwise_deg(*band.aspect_from, aspect) <=
         clockwise_deg(*band.aspect_from, *band.aspect_to);
}

/// Whether every direction lies in some band: going clockwise from north, each step ends where the
/// farthest-reaching band that holds the direction ends.
bool cover_every_aspect(const std::vector<SnowBand>& bands) {
  if (std::ranges::any_of(bands, covers_all_aspects)) {
    return true;
  }
  units::Bearing direction;
  double reached_deg = 0;
  for (std::size_t step = 0; step <= bands.size() && reached_deg < 360.0; ++step) {
    units::Bearing farthest = direction;
    for (const SnowBand& band : bands) {
      const bool reaches_on = covers(band, direction) && clockwise_deg(direction, *band.aspect_to) >
                                                             clockwise_deg(direction, farthest);
      farthest = reaches_on ? *band.aspect_to : farthest;
    }
    reached_deg += clockwise_deg(direction, farthest);
    direction = farthest;
  }
  return reached_deg >= 360.0;
}

}  // namespace

ReportedSnow::ReportedSnow(SnowReport report) : report_{std::move(report)} {}

std::optional<SnowState> ReportedSnow::at(const PlaceAndHour& where) const {
  const bool in_force = report_.observed && report_.valid_until &&
                        *report_.observed <= where.when && where.when <= *report_.valid_until;
  if (!in_force) {
    return std::nullopt;
  }
  std::vector<SnowBand> speaking;
  std::ranges::copy_if(report_.bands, std::back_inserter(speaking), [&](const SnowBand& band) {
    return covers(band, where.height) && (!where.aspect || covers(band, *where.aspect));
  });
  if (speaking.empty() || (!where.aspect && !cover_every_aspect(speaking))) {
    return std::nullopt;
  }
  SnowState worst = speaking.front().state;
  for (const SnowBand& band : speaking) {
    worst = worse_of(worst, band.state);
  }
  return worst;
}

std::string ReportedSnow::told_by() const {
  const std::string when =
      report_.observed ? units::text_of(*report_.observed) : std::string{"time not given"};
  return "observed by " + report_.observer + ", " + when;
}

}  // namespace rimehaul::snow
