#include "card/grade_profile.h"

#include <algorithm>
#include <map>

#include "card/snow_runs.h"
#include "passage/limits.h"

namespace rimehaul::card {

using units::Metres;
using units::Slope;

namespace {

/// Limits by snow state, each worked out once.
class LimitTable {
 public:
  explicit LimitTable(const ProfileContext& context) : context_{context} {}

  const passage::GradeLimits& in(const snow::SnowState& state) {
    const auto known = limits_.find(state);
    if (known != limits_.end()) {
      return known->second;
    }
    return limits_
        .emplace(state, passage::grade_limits({context_.rig, context_.scene.rules, state}))
        .first->second;
  }

 private:
  const ProfileContext& context_;
  std::map<snow::SnowState, passage::GradeLimits> limits_;
};

/// The gentler of two limits; nothing when either is missing.
std::optional<Slope> gentler(std::optional<Slope> bound,
                             const std::optional<passage::Limit>& limit) {
  if (!bound || !limit) {
    return std::nullopt;
  }
  return std::min(*bound, limit->steepest);
}

GradeBounds bounds_of(const SnowRun& run, Metres before, LimitTable& table) {
  const Slope any = Slope::from_degrees(89);
  GradeBounds bounds{{before + run.span.from, before + run.span.to}, any, any};
  for (const snow::SnowState& state : run.states) {
    const passage::GradeLimits& limits = table.in(state);
    bounds.climb = gentler(bounds.climb, limits.climb);
    bounds.descent = gentler(bounds.descent, limits.descent);
  }
  return bounds;
}

GradePiece piece_of(const passage::PieceDrive& piece, Metres before) {
  GradePiece told{{before + piece.span.from, before + piece.span.to}, piece.height, {}, {}};
  if (piece.lie) {
    told.lowest = piece.lie->up_to.grade_low;
    told.highest = piece.lie->up_to.grade_high;
  }
  return told;
}

}  // namespace

GradeProfile grade_profile_of(const search::Route& route, const ProfileContext& context) {
  GradeProfile profile;
  LimitTable table{context};
  Metres before{0};
  for (const search::RouteLeg& leg : route.legs) {
    for (const passage::PieceDrive& piece : leg.judgement.pieces) {
      profile.pieces.push_back(piece_of(piece, before));
    }
    for (const SnowRun& run : snow_runs_of(leg.judgement)) {
      profile.limits.push_back(bounds_of(run, before, table));
    }
    profile.legs.push_back({before, before + leg.judgement.length});
    before += leg.judgement.length;
  }
  return profile;
}

}  // namespace rimehaul::card
