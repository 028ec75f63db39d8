// Made-up ground whose slope is known in closed form, and a block source that holds it in memory.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <limits>
#include <numbers>
#include <utility>

#include "terrain/height_map.h"

namespace rimehaul::testing {

/// Height in metres at map coordinates in metres; NaN is a void.
using Surface = std::function<double(double east, double north)>;

inline constexpr double kVoid = std::numeric_limits<double>::quiet_NaN();

inline geo::MapPoint point(double east, double north) {
  return {units::Metres{east}, units::Metres{north}};
}

/// z = height + p E + q N. Its gradient is (p, q) everywhere, bilinear or not.
inline Surface plane(double p, double q, double height = 1000.0) {
  return [=](double east, double north) { return height + p * east + q * north; };
}

/// A tilted plane that falls towards `downhill_deg` at `slope_deg`.
inline Surface hillside(double slope_deg, double downhill_deg, double height = 1000.0) {
  const double tangent = std::tan(slope_deg * std::numbers::pi / 180.0);
  const double azimuth = downhill_deg * std::numbers::pi / 180.0;
  return plane(-tangent * std::sin(azimuth), -tangent * std::cos(azimuth), height);
}

/// A cone with its top at (0, 0): slope `tangent` in every direction outward from the top.
inline Surface cone(double tangent, double top = 1000.0) {
  return [=](double east, double north) { return top - tangent * std::hypot(east, north); };
}

/// A ridge along E = 0: climbs at `tangent` from the west, falls as steeply to the east.
inline Surface ridge(double tangent, double crest = 1000.0) {
  return [=](double east, double) { return crest - tangent * std::abs(east); };
}

/// The upper half of a sphere around (0, 0, 0); its gradient at (E, N) is (-E, -N) / z.
inline Surface sphere(double radius) {
  return [=](double east, double north) {
    return std::sqrt(radius * radius - east * east - north * north);
  };
}

/// A hillside that climbs to the north-east at `tangent` either way, with independent bumps of up
/// to `bump` metres at every place: the same at the same place for the same seed, to the
/// millimetre.
inline Surface rough(std::uint64_t seed, double bump, double tangent, double height = 1000.0) {
  return [=](double east, double north) {
    std::uint64_t mixed = seed;
    for (const double part : {east, north}) {
      mixed += static_cast<std::uint64_t>(std::llround(part * 1000.0)) + 0x9e3779b97f4a7c15U;
      mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
      mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
      mixed ^= mixed >> 31U;
    }
    const double share = static_cast<double>(mixed >> 11U) * 0x1.0p-52 - 1.0;
    return height + tangent * (east + north) + bump * share;
  };
}

/// The same ground with a hole wherever the predicate says so.
template <class Predicate>
Surface with_void(Surface ground, Predicate is_void) {
  return [ground = std::move(ground), is_void](double east, double north) {
    return is_void(east, north) ? kVoid : ground(east, north);
  };
}

/// Blocks computed from a surface when they are asked for, so a raster of any size costs nothing.
class SurfaceSource : public terrain::BlockSource {
 public:
  SurfaceSource(terrain::GridFrame frame, terrain::CellIndex size, Surface ground)
      : frame_{frame}, size_{size}, ground_{std::move(ground)} {}

  [[nodiscard]] terrain::GridFrame frame() const override { return frame_; }
  [[nodiscard]] terrain::CellIndex size() const override { return size_; }
  [[nodiscard]] std::size_t blocks_read() const { return blocks_read_; }

  [[nodiscard]] terrain::HeightBlock read(terrain::BlockIndex block) override {
    ++blocks_read_;
    terrain::HeightBlock heights;
    heights.reserve(static_cast<std::size_t>(terrain::kBlockSide * terrain::kBlockSide));
    for (std::int64_t row = 0; row < terrain::kBlockSide; ++row) {
      for (std::int64_t column = 0; column < terrain::kBlockSide; ++column) {
        heights.push_back(height_at(
            {block.column * terrain::kBlockSide + column, block.row * terrain::kBlockSide + row}));
      }
    }
    return heights;
  }

 private:
  [[nodiscard]] double height_at(terrain::CellIndex cell) const {
    if (cell.column >= size_.column || cell.row >= size_.row) {
      return kVoid;
    }
    const geo::MapPoint centre = frame_.centre_of(cell);
    return ground_(centre.east.value(), centre.north.value());
  }

  terrain::GridFrame frame_;
  terrain::CellIndex size_;
  Surface ground_;
  std::size_t blocks_read_ = 0;
};

/// A rectangle on the map, in metres.
struct Extent {
  double west = -500.0;
  double south = -500.0;
  double east = 500.0;
  double north = 500.0;
};

/// A north-up source with a cell centre at the extent's north-west corner, and at its south-east
/// corner too when the sides are whole numbers of cells.
inline SurfaceSource source_of(Surface ground, double cell, Extent extent = {}) {
  const terrain::GridFrame frame{
      point(extent.west, extent.north),
      {{units::Metres{cell}, units::Metres{0}}, {units::Metres{0}, units::Metres{-cell}}}};
  const auto cells = [cell](double side) {
    return static_cast<std::int64_t>(std::floor(side / cell + 1e-9)) + 1;
  };
  return {frame,
          {cells(extent.east - extent.west), cells(extent.north - extent.south)},
          std::move(ground)};
}

/// Everything a source holds, as a height map.
inline terrain::HeightMap whole_map(terrain::BlockSource& source) {
  const terrain::GridFrame frame = source.frame();
  const terrain::CellIndex size = source.size();
  const geo::MapPoint first = frame.centre_of({0, 0});
  const geo::MapPoint last = frame.centre_of({size.column - 1, size.row - 1});
  const terrain::Corridor all{geo::Polyline{{first, last}}, geo::distance(first, last)};
  return terrain::HeightMap::load(source, std::span{&all, 1});
}

/// The whole of such ground as a height map: what most tests want.
inline terrain::HeightMap map_of(Surface ground, double cell, Extent extent = {}) {
  SurfaceSource source = source_of(std::move(ground), cell, extent);
  return whole_map(source);
}

}  // namespace rimehaul::testing
