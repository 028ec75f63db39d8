// What an observer's report says of a place and hour: the worst that may be true of it.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

#include "snow/snow.h"
#include "snow/turning_moments.h"

namespace rimehaul::snow {

namespace {

/// All directions clockwise from one to another.
struct Sector {
  units::Bearing from;
  units::Bearing to;

  /// Degrees in [0, 360).
  [[nodiscard]] double width_deg() const {
    const double turn = to.degrees() - from.degrees();
    return turn < 0 ? turn + 360.0 : turn;
  }
};

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
  return Sector{*band.aspect_from, aspect}.width_deg() <=
         Sector{*band.aspect_from, *band.aspect_to}.width_deg();
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
      const bool reaches_on =
          covers(band, direction) &&
          Sector{direction, *band.aspect_to}.width_deg() > Sector{direction, farthest}.width_deg();
      farthest = reaches_on ? *band.aspect_to : farthest;
    }
    reached_deg += Sector{direction, farthest}.width_deg();
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
    worst = worst.worst_with(band.state);
  }
  return worst;
}

Told ReportedSnow::told_by() const {
  return observed_by(report_);
}

std::vector<units::Instant> ReportedSnow::turning_moments(units::Period during) const {
  std::vector<units::Instant> moments = report_.weather.site.turning_moments();
  if (report_.observed) {
    moments.push_back(*report_.observed);
  }
  if (report_.valid_until) {
    moments.push_back({report_.valid_until->seconds + 1});
  }
  return in_order_within(std::move(moments), during);
}

Told observed_by(const SnowReport& report) {
  return {.words = "observed by " + report.observer + (report.observed ? "" : ", time not given"),
          .observed = report.observed};
}

}  // namespace rimehaul::snow
