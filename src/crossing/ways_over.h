// The ways over a site's open ground that a rig may take, to be joined to its trails.
#pragma once

#include <span>
#include <vector>

#include "passage/judge.h"
#include "trails/open_ways.h"

namespace rimehaul::crossing {

/// Along a trail in open ground, ways may leave it and reach it so far apart.
inline constexpr units::Metres kGatesApart{100.0};

/// For each pair of gates of each zone of open ground that says how it is crossed: the cheapest
/// lines between them for this judge's rig and snow at an hour, one for each way of arriving at a
/// gate and of driving on from it, drawn and judged as a trail of the zone's words would be, and
/// kept unless closed. What the lattice cannot see or a finer look would open is left out: no way
/// is told here that the judge has not looked at from end to end.
[[nodiscard]] std::vector<trails::OpenWay> ways_over_open_ground(const passage::Judge& judge,
                                                                 units::Instant when);

/// The ways that any of these judges, all of one scene, finds; each line once, each with its own
/// name.
[[nodiscard]] std::vector<trails::OpenWay> ways_for_any(
    std::span<const passage::Judge* const> judges, units::Instant when);

}  // namespace rimehaul::crossing
