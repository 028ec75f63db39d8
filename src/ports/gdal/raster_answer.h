// A raster that is written: as a plain GeoTIFF by many threads at once, and from that as a
// cloud-optimized one with overviews.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "base/watcher.h"
#include "geo/map_frame.h"
#include "terrain/cell_window.h"

namespace rimehaul::ports::gdal {

enum class CellKind { real_32, whole_16, whole_8 };

/// How one cell of an overview stands for the four that it covers. Where one of them holds the
/// nodata value, so does it.
enum class Overview { largest, common_bits, first };

struct Colour {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  std::uint8_t opacity = 255;
};

/// All that a raster says of itself.
struct RasterTerms {
  terrain::CellIndex size;
  terrain::GridFrame grid;
  std::string reference;  ///< as geo::MapFrame::horizontal
  CellKind kind = CellKind::real_32;
  std::optional<double> nodata;
  Overview overview = Overview::largest;
  std::string title;
  std::string unit;  ///< "" for none
  std::vector<std::pair<std::string, std::string>> notes;
  std::vector<Colour> colours;  ///< one for each value from 0 on; empty: none
};

/// A file to write, and its name for people.
struct AnswerFile {
  std::string path;
  std::string shown;
};

/// A tiled GeoTIFF without compression. Its cells are written straight to their place in the file,
/// so that no block of it is kept in memory, and from any thread.
class RasterAnswer {
 public:
  /// Makes the file anew. Throws BadInput when it cannot be written.
  RasterAnswer(AnswerFile file, const RasterTerms& terms);
  ~RasterAnswer();
  RasterAnswer(const RasterAnswer&) = delete;
  RasterAnswer& operator=(const RasterAnswer&) = delete;

  /// Cells of a window, row by row without gaps, as the terms' kind has them. No two threads may
  /// write the same cell. Throws BadInput when the disk is full.
  void write(const terrain::CellWindow& window, std::span<const std::byte> cells) const;

  [[nodiscard]] const std::string& path() const { return file_.path; }
  [[nodiscard]] const std::string& shown() const { return file_.shown; }
  [[nodiscard]] const RasterTerms& terms() const { return terms_; }

 private:
  void make() const;
  void find_tiles();
  void write_at(std::uint64_t offset, std::span<const std::byte> bytes) const;

  AnswerFile file_;
  RasterTerms terms_;
  std::size_t bytes_each_;
  std::int64_t tiles_along_ = 0;
  std::vector<std::uint64_t> tile_at_;  ///< of every tile, row by row, where it lies in the file
  int handle_ = -1;
};

/// Adds overviews to a written raster, halving until one is no wider than a tile, and writes all of
/// it to `path` as a cloud-optimized GeoTIFF (COG), compressed by DEFLATE. The watcher is told of
/// `parts` parts. Throws BadInput when the disk is full.
void write_cog(const RasterAnswer& answer, const std::string& path, base::Watcher& watcher,
               std::size_t parts);

}  // namespace rimehaul::ports::gdal
