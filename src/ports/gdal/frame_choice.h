// Chooses the one metric map frame of a site and says what keeps a raster from lying in it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/fault.h"
#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

/// Where heights lie: their reference system, and some places in its units, the middle one in the
/// middle.
struct HeightsLie {
  const Reference& reference;
  std::vector<PlainPoint> places;
};

/// The frame of a site's own words: known, projected, in metres. Whether its metres are metres
/// where the heights lie, only chosen_frame can tell.
[[nodiscard]] base::Reading<Reference> reference_declared(const std::string& map_frame);

/// The declared frame; or the heights' own where it is projected, counted in metres; or the UTM
/// zone of their middle. A frame whose metres are not metres there is a fault.
[[nodiscard]] base::Reading<Reference> chosen_frame(const HeightsLie& heights,
                                                    const std::optional<std::string>& declared);

/// The factor that turns coordinates of `from` into those of `to` when that is all there is between
/// them (1, or feet to metres), tried at the places to a millimetre; nothing when they must be
/// transformed.
[[nodiscard]] std::optional<double> scale_between(const TwoReferences& two,
                                                  const std::vector<PlainPoint>& places);

}  // namespace rimehaul::ports::gdal
