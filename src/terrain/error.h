// How far a slope may be off, given how far the heights may be.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "terrain/grid.h"

namespace rimehaul::terrain {

/// One independent source of height error: standard deviation, and the distance over which errors
/// stay alike, correlation exp(-d / length). A length of 0 means that neighbours are independent.
struct HeightError {
  units::Metres standard_deviation;
  units::Metres correlation_length;
};

/// How far the heights may be trusted.
struct HeightTrust {
  std::vector<HeightError> errors;       ///< independent of each other; none declared: unknown
  std::optional<units::Slope> sub_cell;  ///< steepness that may hide between cell centres
  bool sub_cell_is_estimate = true;
  /// Widest distance between measured heights, where the raster in use is finer because it was
  /// brought from another map; 0: the raster's own cells.
  units::Metres measured_step{0};
  /// Each height is the mean of so many by so many cells, over which independent errors even out.
  std::int64_t mean_over = 1;
  /// The step to which the heights were rounded before they were written; 0: they were not.
  units::Metres rounded_to{0};
};

/// Standard deviation of the steepness in any direction of the bilinear surface between four cell
/// centres, at its worst place and direction. On square cells of width w, with r(d) = exp(-d / L),
/// the worst place is a corner and there
///   var p = var q = 2 s^2 (1 - r(w)) / w^2,
///   cov(p, q) = s^2 (1 - 2 r(w) + r(w sqrt 2)) / w^2 in size;
/// the worst direction has var p + |cov(p, q)|, and errors add as variances. On any other lattice
/// the larger eigenvalue of the gradient's covariance stands for the worst direction. Agreement
/// with Monte Carlo is tested. Where each height is a mean over n x n cells, r is the mean of
/// exp(-d / L) over all pairs of cells of the two. Heights rounded to steps of q bear a further
/// error that is spread evenly over the step, standard deviation q / sqrt 12; as neighbours on a
/// gentle slope round alike, no mean over cells lessens it. No rectangle's least-squares plane has
/// a larger standard deviation, as its gradient is a mean of the surface's. Nothing when no error,
/// or no possible one, is declared.
[[nodiscard]] std::optional<units::Slope> gradient_sigma(const GridFrame& frame,
                                                         const HeightTrust& trust);

/// Which estimate of the gradient over the 3 x 3 cells around one: Horn's (1981), Zevenbergen and
/// Thorne's (1987), or the least-squares plane, whose six weights are Evans's (in Florinsky 1998).
enum class WindowEstimate { horn, zevenbergen_thorne, least_squares_plane };

/// Standard deviation of the steepness by such an estimate, in its worst direction. For independent
/// errors s on square cells of width w: sqrt(12)/8 s/w, sqrt(1/2) s/w, and s / (sqrt(6) w). Errors
/// alike over some distance may make Horn's larger. Nothing as for gradient_sigma. An estimate that
/// is none of the three is our fault.
[[nodiscard]] std::optional<units::Slope> window_sigma(const GridFrame& frame,
                                                       const HeightTrust& trust,
                                                       WindowEstimate estimate);

}  // namespace rimehaul::terrain
