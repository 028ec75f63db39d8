// Bends as a driver takes them: rounding a drawn corner as far as the trail's width lets him.
#pragma once

#include <optional>
#include <vector>

#include "passage/turning.h"

namespace rimehaul::passage {

/// The tightest bend of a line as it is driven, judged.
struct DrivenBend {
  Bend bend;
  std::vector<Finding> findings;  ///< turning and off-tracking, at the bend
};

/// The longest window that driven_bend() tries: joints must reach half of it to both sides.
[[nodiscard]] units::Metres widest_window(const rig::Rig& rig);

/// How far a line strays from the mean of itself over a length around each place, at most; looked
/// for at its corners and every half metre between them.
[[nodiscard]] units::Metres strays_from_its_mean(const geo::Polyline& line, units::Metres over);

/// A line is drawn in straight pieces, and no rig turns on the spot: a driver rounds its corners.
/// The rounder way is the running mean of the line over half a window; its tightest bend is what
/// tightest_bend() finds for that window, and it strays from the line by no more than the corner
/// cut that judge_off_tracking() counts, or it is not taken. Windows are tried from the rig's
/// length upwards; the first that passes both checks at the allowed share is driven, else the one
/// whose worse finding is least. `width` nothing: unknown, closed.
[[nodiscard]] DrivenBend driven_bend(const rig::Rig& rig, const geo::Polyline& line,
                                     std::optional<units::Metres> width, double allowed_share);

}  // namespace rimehaul::passage
