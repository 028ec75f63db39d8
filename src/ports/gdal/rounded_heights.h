// Finds heights that were rounded to whole metres, feet or the like before they were written.
#pragma once

#include <optional>
#include <span>

#include "ports/gdal/raster_file.h"

namespace rimehaul::ports::gdal {

/// The largest step, in the heights' own unit, of which every value is a whole multiple; nothing
/// when there is none of a tenth or more, or too few values to tell.
[[nodiscard]] std::optional<double> step_of(std::span<const double> values);

/// The step of a file's heights, from nine windows spread over it. Throws BadInput when it cannot
/// be read there.
[[nodiscard]] std::optional<units::Metres> quantum_of(const RasterFile& file);

/// Heights that look rounded, if they do, on cells so narrow.
struct RoundedOn {
  std::optional<units::Metres> quantum;
  units::Metres cell;
};

/// What to say of them; nothing when slopes from cell to cell are off by a degree at most.
[[nodiscard]] std::optional<Complaint> complaint_of_steps(const RoundedOn& heights);

}  // namespace rimehaul::ports::gdal
