// The grade of a route from its start to its end, and how steep this rig may go there.
#pragma once

#include <optional>
#include <vector>

#include "passage/judge.h"
#include "search/route.h"

namespace rimehaul::card {

/// A piece of the route by chainage along it. Grades climb where above 0; both have the error of
/// the heights counted, so the ground lies between them. Nothing: not known.
struct GradePiece {
  geo::Span span{};
  std::optional<geo::Height> height;
  std::optional<units::Slope> lowest;
  std::optional<units::Slope> highest;
};

/// The steepest even slope that the rig may climb and come down in the snow of a part of a leg.
/// Nothing: none at all.
struct GradeBounds {
  geo::Span span{};  ///< by chainage along the route
  std::optional<units::Slope> climb;
  std::optional<units::Slope> descent;  ///< its size
};

struct GradeProfile {
  std::vector<GradePiece> pieces;
  std::vector<geo::Span> legs;      ///< by chainage along the route, in order
  std::vector<GradeBounds> limits;  ///< wherever the snow is known, in order
};

/// What is judged on the way.
struct ProfileContext {
  const passage::Scene& scene;
  const rig::Rig& rig;
};

[[nodiscard]] GradeProfile grade_profile_of(const search::Route& route,
                                            const ProfileContext& context);

}  // namespace rimehaul::card
