// The ground checks turned round: the steepest ground that a rig may be driven on in one snow
// state.
#pragma once

#include <optional>
#include <vector>

#include "passage/plane_judge.h"

namespace rimehaul::passage {

/// The end of the open ground outward from level, in one direction: a whole tenth of a degree that
/// is itself judged and passes. Nothing is assumed monotone: every tenth on the way there passes
/// too, and what may open again beyond is left out.
struct Limit {
  units::Slope steepest;
  Finding binding;        ///< what refuses the next tenth; at the scan's end, what binds there
  bool scan_end = false;  ///< kScanEnd was reached with everything passing
};

/// Steeper than this is not looked at: 45 degrees.
inline constexpr int kScanEnd_tenths = 450;

/// For exact planes: whoever compares measured ground with these adds its error first.
struct GradeLimits {
  std::optional<Limit> climb;     ///< without cross-slope
  std::optional<Limit> descent;   ///< without cross-slope; its size
  std::optional<Limit> cross;     ///< to either side, on no grade; its size
  std::optional<Finding> closed;  ///< why there is none of them: closed on level ground already
  double allowed_share = 0.0;
};

/// Either all three limits, or `closed`. Some hundred judgements of a plane: a few milliseconds.
[[nodiscard]] GradeLimits grade_limits(const SlopeQuestion& question);

/// The outline of what a rig may be driven on: the steepest cross-slope of every grade.
struct EnvelopePoint {
  terrain::Attitude plane;  ///< whole tenths of a degree; cross-slope 0 or more, to either side
  Finding binding;          ///< what refuses the next tenth of cross-slope
  bool scan_end = false;
};

struct Envelope {
  std::vector<EnvelopePoint> outline;  ///< from the steepest descent up to the steepest climb
  std::optional<Finding> closed;       ///< why there is no outline
};

/// Outline points at every half degree of grade between the steepest descent and the steepest climb
/// and at both of them, with the open cross-slope outward from none. Wherever the straight line
/// between two points, taken at a tenth of a degree of grade and rounded down to a tenth of
/// cross-slope, does not pass, a point is put in: so the drawn outline is on the safe side too.
[[nodiscard]] Envelope envelope_of(const SlopeQuestion& question);

/// A slope of so many tenths of a degree.
[[nodiscard]] units::Slope slope_of_tenths(int tenths);

}  // namespace rimehaul::passage
