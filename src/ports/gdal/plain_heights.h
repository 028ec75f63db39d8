// Heights that need no change: a mosaic that lies in the map frame as it is.
#pragma once

#include <utility>

#include "ports/gdal/height_mosaic.h"

namespace rimehaul::ports::gdal {

/// One mosaic as a source. Belongs to one thread.
class PlainHeights final : public terrain::BlockSource {
 public:
  PlainHeights(HeightMosaic mosaic, terrain::GridFrame frame)
      : mosaic_{std::move(mosaic)}, frame_{frame} {}

  [[nodiscard]] terrain::GridFrame frame() const override { return frame_; }
  [[nodiscard]] terrain::CellIndex size() const override { return mosaic_.size(); }
  [[nodiscard]] terrain::HeightBlock read(terrain::BlockIndex block) override {
    return mosaic_.read(block);
  }
  void read_window(const terrain::CellWindow& window, terrain::HeightRows into) override {
    mosaic_.read_window(window, into);
  }
  [[nodiscard]] terrain::CellIndex kept_together() const override {
    return mosaic_.kept_together();
  }

 private:
  HeightMosaic mosaic_;
  terrain::GridFrame frame_;
};

}  // namespace rimehaul::ports::gdal
