// The grade and cross-slope against what the makers, or the site, allow on paper.
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "passage/footing.h"
#include "passage/tilt.h"
#include "passage/worksheet.h"

namespace rimehaul::passage {

namespace {

using units::amount;

/// A rating and what is asked of it, both tangents.
struct Asked {
  Check check;
  std::string_view symbol;  ///< of the slope on the page
  units::Slope slope;
  std::string_view rated = "rated";  ///< symbol of the rating on the page
};

/// NaN where the box is no ground, so that it closes.
double known_ground(const terrain::AttitudeBox& box, units::Slope slope) {
  const bool is_ground = std::isfinite(tilt_of(box).steepest_grade);
  return is_ground ? slope.ratio() : std::numeric_limits<double>::quiet_NaN();
}

Finding rated(const Asked& asked, const terrain::AttitudeBox& box,
              const std::optional<rig::Rating>& rating) {
  Worksheet sheet{asked.check};
  const double found = sheet.any(
      asked.symbol, {known_ground(box, asked.slope), units::Unit::tangent}, Origin::heights);
  const units::Amount steepest = amount(rating->steepest);
  sheet.any(asked.rated, steepest, Origin::rig_sheet);
  return sheet.compared({found, units::Unit::tangent}, steepest);
}

/// How the rig is driven, as its sheet calls it.
std::string way_of(const rig::Rig& rig) {
  const rig::SlopeRatings& ratings = rig::ratings_in_force(rig);
  if (&ratings == &rig.carrier.towing) {
    return "towing";
  }
  return &ratings == &rig.carrier.solo_empty ? "empty" : "loaded";
}

Finding rated_or_missing(const Asked& asked, const Footing& footing,
                         const std::optional<rig::Rating>& rating) {
  if (!rating) {
    return unknown(asked.check, "rating of " + footing.rig.carrier.name + " " +
                                    way_of(footing.rig) + ": " +
                                    std::string{facts_of(asked.check).title});
  }
  return rated(asked, footing.carrier, rating);
}

}  // namespace

Finding judge_climb_rating(const Footing& footing) {
  return rated_or_missing({Check::climb_rating, "G", footing.carrier.grade_high}, footing,
                          rig::ratings_in_force(footing.rig).climb);
}

Finding judge_descent_rating(const Footing& footing) {
  return rated_or_missing({Check::descent_rating, "G", footing.carrier.grade_low.reversed()},
                          footing, rig::ratings_in_force(footing.rig).descent);
}

Finding judge_cross_rating(const Footing& footing) {
  const double across = tilt_of(footing.carrier).steepest_across;
  return rated_or_missing({Check::cross_rating, "K", units::Slope::from_ratio(across)}, footing,
                          rig::ratings_in_force(footing.rig).cross);
}

Finding judge_trailer_rating(const Footing& footing) {
  Finding worst = kept(Check::trailer_rating, "the trailer's sheet gives no rating of its own");
  if (!footing.rig.trailer) {
    return worst;
  }
  const rig::Trailer& trailer = *footing.rig.trailer;
  const auto add = [&](const Asked& asked, const std::optional<rig::Rating>& rating) {
    if (!rating) {
      return;
    }
    Finding found = rated(asked, footing.trailer, rating);
    const bool first = worst.inputs.all().empty();
    if (first || binds_before(found, worst)) {
      worst = std::move(found);
    }
  };
  const double across = tilt_of(footing.trailer).steepest_across;
  add({Check::trailer_rating, "G", footing.trailer.grade_high, "rated_climb"}, trailer.climb);
  add({Check::trailer_rating, "G", footing.trailer.grade_low.reversed(), "rated_descent"},
      trailer.descent);
  add({Check::trailer_rating, "K", units::Slope::from_ratio(across), "rated_cross"}, trailer.cross);
  return worst;
}

}  // namespace rimehaul::passage
