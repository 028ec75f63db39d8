#include "ports/gdal/warped_heights.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "ports/gdal/metric_frame.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();
constexpr std::int64_t kSide = terrain::kBlockSide;
constexpr std::size_t kMostBlocksKept = 64;
constexpr double kMostCellsAlong = 4e6;

/// Where the mosaics lie in the map frame, and the steps between their heights there.
struct Reach {
  double west = std::numeric_limits<double>::infinity();
  double south = std::numeric_limits<double>::infinity();
  double east = -std::numeric_limits<double>::infinity();
  double north = -std::numeric_limits<double>::infinity();
  double narrowest = std::numeric_limits<double>::infinity();
  double widest = 0.0;
  bool is_whole = true;  ///< every place could be transformed

  void take_place(PlainPoint place) {
    is_whole = is_whole && std::isfinite(place.x) && std::isfinite(place.y);
    west = std::min(west, place.x);
    south = std::min(south, place.y);
    east = std::max(east, place.x);
    north = std::max(north, place.y);
  }
};

/// Places along the edges close enough together that a curved edge does not bulge past its box by
/// more than a cell or so; and at each, the next cell along columns and rows.
void take_mosaic(const HeightMosaic& mosaic, const Transformation& to_map, Reach& reach) {
  constexpr int kPieces = 32;
  const auto columns = static_cast<double>(mosaic.size().column - 1);
  const auto rows = static_cast<double>(mosaic.size().row - 1);
  std::vector<PlainPoint> places;
  const auto take = [&](terrain::GridPlace place) {
    const double column = std::min(place.column, columns - 1);
    const double row = std::min(place.row, rows - 1);
    places.push_back(mosaic.lattice().at(place));
    places.push_back(mosaic.lattice().at({column, row}));
    places.push_back(mosaic.lattice().at({column + 1, row}));
    places.push_back(mosaic.lattice().at({column, row + 1}));
  };
  for (int piece = 0; piece <= kPieces; ++piece) {
    const double share = static_cast<double>(piece) / kPieces;
    take({share * columns, 0});
    take({share * columns, rows});
    take({0, share * rows});
    take({columns, share * rows});
    take({share * columns, share * rows});
  }
  transform(to_map, places);
  for (std::size_t index = 0; index < places.size(); index += 4) {
    reach.take_place(places[index]);
    const PlainPoint from = places[index + 1];
    for (const PlainPoint to : {places[index + 2], places[index + 3]}) {
      const double step = std::hypot(to.x - from.x, to.y - from.y);
      reach.is_whole = reach.is_whole && std::isfinite(step) && step > 0;
      reach.narrowest = std::min(reach.narrowest, step);
      reach.widest = std::max(reach.widest, step);
    }
  }
}

/// Half the step, rounded down to a whole centimetre where there is one.
double finer(double step) {
  const double half = step / 2.0;
  return half >= 0.1 ? std::floor(half * 100.0) / 100.0 : half;
}

/// How longitudes go round: rasters may run past 180 degrees.
struct Turning {
  double middle = 0.0;     ///< longitude of the raster's middle
  double full_turn = 0.0;  ///< 0: nothing goes round

  /// The same place, at the longitude nearest to the middle.
  [[nodiscard]] PlainPoint turned(PlainPoint point) const {
    if (full_turn == 0.0) {
      return point;
    }
    return {point.x + full_turn * std::round((middle - point.x) / full_turn), point.y};
  }
};

Turning turning_of(const HeightMosaic& mosaic) {
  if (is_projected(mosaic.reference())) {
    return {};
  }
  const auto last_column = static_cast<double>(mosaic.size().column - 1);
  const auto last_row = static_cast<double>(mosaic.size().row - 1);
  return {.middle = mosaic.lattice().at({last_column / 2.0, last_row / 2.0}).x,
          .full_turn = full_turn_of(mosaic.reference())};
}

}  // namespace

const terrain::HeightBlock& BlockShelf::block(terrain::BlockIndex index) {
  const auto found = kept_.find(index);
  if (found != kept_.end()) {
    return found->second;
  }
  if (oldest_first_.size() >= kMostBlocksKept) {
    kept_.erase(oldest_first_.front());
    oldest_first_.pop_front();
  }
  oldest_first_.push_back(index);
  return kept_.emplace(index, mosaic_.read(index)).first->second;
}

double BlockShelf::height_of(terrain::CellIndex cell) {
  const terrain::HeightBlock& heights = block({cell.column / kSide, cell.row / kSide});
  return heights[static_cast<std::size_t>(cell.row % kSide * kSide + cell.column % kSide)];
}

double BlockShelf::height_at(terrain::GridPlace place) {
  const auto last_column = static_cast<double>(mosaic_.size().column - 1);
  const auto last_row = static_cast<double>(mosaic_.size().row - 1);
  const bool is_inside =
      place.column >= 0 && place.column <= last_column && place.row >= 0 && place.row <= last_row;
  if (!is_inside) {  // NaN too
    return kHole;
  }
  const double left = std::min(std::floor(place.column), last_column - 1);
  const double top = std::min(std::floor(place.row), last_row - 1);
  const terrain::CellIndex corner{static_cast<std::int64_t>(left), static_cast<std::int64_t>(top)};
  const double along = place.column - left;
  const double down = place.row - top;
  const double upper =
      height_of(corner) * (1.0 - along) + height_of({corner.column + 1, corner.row}) * along;
  const double lower = height_of({corner.column, corner.row + 1}) * (1.0 - along) +
                       height_of({corner.column + 1, corner.row + 1}) * along;
  return upper * (1.0 - down) + lower * down;
}

std::unique_ptr<WarpedHeights> WarpedHeights::make(std::vector<HeightMosaic> mosaics,
                                                   const Reference& frame) {
  std::unique_ptr<WarpedHeights> warped{new WarpedHeights};
  Reach reach;
  for (HeightMosaic& mosaic : mosaics) {
    const Transformation to_map = transformation_between({mosaic.reference(), frame});
    Transformation from_map = transformation_between({frame, mosaic.reference()});
    if (!to_map || !from_map) {
      return nullptr;
    }
    take_mosaic(mosaic, to_map, reach);
    warped->parts_.push_back({BlockShelf{std::move(mosaic)}, std::move(from_map)});
  }
  const double step = finer(reach.narrowest);
  const double west = std::floor(reach.west / step) * step;
  const double north = std::ceil(reach.north / step) * step;
  const double columns = std::ceil((reach.east - west) / step) + 1;
  const double rows = std::ceil((north - reach.south) / step) + 1;
  if (!(reach.is_whole && columns <= kMostCellsAlong && rows <= kMostCellsAlong)) {
    return nullptr;
  }
  warped->lattice_ = {{west, north}, {step, 0}, {0, -step}};
  warped->size_ = {static_cast<std::int64_t>(columns), static_cast<std::int64_t>(rows)};
  warped->narrowest_step_ = units::Metres{reach.narrowest};
  warped->widest_step_ = units::Metres{reach.widest};
  return warped;
}

terrain::HeightBlock WarpedHeights::read(terrain::BlockIndex block) {
  std::vector<PlainPoint> centres;
  centres.reserve(static_cast<std::size_t>(kSide * kSide));
  for (std::int64_t row = 0; row < kSide; ++row) {
    for (std::int64_t column = 0; column < kSide; ++column) {
      centres.push_back(lattice_.at({static_cast<double>(block.column * kSide + column),
                                     static_cast<double>(block.row * kSide + row)}));
    }
  }
  terrain::HeightBlock heights(centres.size(), kHole);
  for (Part& part : parts_) {
    add_part(part, centres, heights);
  }
  return heights;
}

void WarpedHeights::add_part(Part& part, const std::vector<PlainPoint>& centres,
                             terrain::HeightBlock& heights) {
  std::vector<PlainPoint> places = centres;
  transform(part.from_map, places);
  const HeightMosaic& mosaic = part.shelf.mosaic();
  const Turning turning = turning_of(mosaic);
  for (std::size_t index = 0; index < places.size(); ++index) {
    if (std::isnan(heights[index])) {
      heights[index] = part.shelf.height_at(mosaic.lattice().locate(turning.turned(places[index])));
    }
  }
}

}  // namespace rimehaul::ports::gdal
