#include "ports/gdal/height_mosaic.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "base/require.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();
constexpr std::int64_t kSide = terrain::kBlockSide;

/// The middle of a window, no larger than one block.
terrain::CellWindow middle_of(const terrain::CellWindow& window) {
  const auto cut = [](std::int64_t first, std::int64_t size) {
    const std::int64_t kept = std::min(size, kSide);
    return std::pair{first + (size - kept) / 2, kept};
  };
  const auto [column, columns] = cut(window.first.column, window.size.column);
  const auto [row, rows] = cut(window.first.row, window.size.row);
  return {{column, row}, {columns, rows}};
}

/// Two sets of heights of the same cells.
struct TwoOpinions {
  std::vector<double> one;
  std::vector<double> other;
};

double largest_difference(const TwoOpinions& opinions) {
  double largest = 0.0;
  for (std::size_t index = 0; index < opinions.one.size(); ++index) {
    const double difference = std::abs(opinions.one[index] - opinions.other[index]);
    if (difference > largest) {  // voids, being NaN, say nothing about agreement
      largest = difference;
    }
  }
  return largest;
}

}  // namespace

base::Reading<std::optional<HeightMosaic>> HeightMosaic::of(std::vector<RasterFile> files) {
  base::require(!files.empty(), "a mosaic has at least one file");
  base::Reading<std::optional<HeightMosaic>> reading;
  const Lattice base_lattice = files.front().lattice();
  const std::string first_shown = files.front().shown();
  terrain::CellIndex low{0, 0};
  terrain::CellIndex high = files.front().size();
  HeightMosaic mosaic;
  for (RasterFile& file : files) {
    const std::optional<terrain::CellIndex> at =
        offset_on({base_lattice, file.lattice()}, file.size());
    if (!at.has_value()) {
      reading.faults.push_back(
          {.file = file.shown(),
           .place = "",
           .problem = "its cells do not fall on those of " + first_shown,
           .remedy = "bring all heights to one lattice first (gdalwarp -tr -tap)"});
      continue;
    }
    low = {std::min(low.column, at->column), std::min(low.row, at->row)};
    high = {std::max(high.column, at->column + file.size().column),
            std::max(high.row, at->row + file.size().row)};
    mosaic.files_.push_back({std::move(file), *at});
  }
  if (!reading.faults.empty()) {
    return reading;
  }
  mosaic.lattice_ = base_lattice.shifted(low);
  mosaic.size_ = {high.column - low.column, high.row - low.row};
  for (Placed& placed : mosaic.files_) {
    placed.at = {placed.at.column - low.column, placed.at.row - low.row};
  }
  mosaic.doubt_overlaps(reading.faults);
  reading.data = std::move(mosaic);
  return reading;
}

terrain::HeightBlock HeightMosaic::read(terrain::BlockIndex block) const {
  const terrain::CellWindow whole{{block.column * kSide, block.row * kSide}, {kSide, kSide}};
  terrain::HeightBlock heights(static_cast<std::size_t>(kSide * kSide), kHole);
  const terrain::CellWindow known = whole.shared_with({{0, 0}, size_});
  if (!known.is_empty()) {
    read_window(known, {heights, static_cast<std::size_t>(kSide)});
  }
  return heights;
}

void HeightMosaic::read_window(const terrain::CellWindow& window, terrain::HeightRows into) const {
  const auto covers = [&](const Placed& placed) {
    return window.shared_with({placed.at, placed.file.size()}).size == window.size;
  };
  const auto first = std::ranges::find_if(files_, [&](const Placed& placed) {
    return !window.shared_with({placed.at, placed.file.size()}).is_empty();
  });
  const bool is_whole = first != files_.end() && covers(*first);
  if (is_whole) {
    first->file.read(window.seen_from(first->at), into);
  } else {
    for (std::int64_t row = 0; row < window.size.row; ++row) {
      std::ranges::fill(into.heights_m.subspan(static_cast<std::size_t>(row) * into.stride,
                                               static_cast<std::size_t>(window.size.column)),
                        kHole);
    }
  }
  for (auto placed = is_whole ? first + 1 : first; placed != files_.end(); ++placed) {
    add_known(*placed, window, into);
  }
}

/// What is not known yet, as far as a file knows it.
void HeightMosaic::add_known(const Placed& placed, const terrain::CellWindow& window,
                             terrain::HeightRows into) {
  const terrain::CellWindow part = window.shared_with({placed.at, placed.file.size()});
  if (part.is_empty()) {
    return;
  }
  const std::vector<double> found = placed.file.read(part.seen_from(placed.at));
  const terrain::CellIndex at = part.seen_from(window.first).first;
  for (std::int64_t row = 0; row < part.size.row; ++row) {
    const std::span<double> known = into.heights_m.subspan(
        static_cast<std::size_t>(at.row + row) * into.stride + static_cast<std::size_t>(at.column),
        static_cast<std::size_t>(part.size.column));
    const std::span<const double> more =
        std::span{found}.subspan(static_cast<std::size_t>(row * part.size.column), known.size());
    std::ranges::transform(known, more, known.begin(), [](double height, double other) {
      return std::isnan(height) ? other : height;
    });
  }
}

void HeightMosaic::doubt_overlaps(std::vector<base::Fault>& faults) const {
  constexpr double kMostApart = 0.5;
  for (std::size_t later = 1; later < files_.size(); ++later) {
    for (std::size_t earlier = 0; earlier < later; ++earlier) {
      const Placed& one = files_[earlier];
      const Placed& other = files_[later];
      const terrain::CellWindow shared =
          terrain::CellWindow{one.at, one.file.size()}.shared_with({other.at, other.file.size()});
      if (shared.is_empty()) {
        continue;
      }
      const terrain::CellWindow looked_at = middle_of(shared);
      if (largest_difference({one.file.read(looked_at.seen_from(one.at)),
                              other.file.read(looked_at.seen_from(other.at))}) <= kMostApart) {
        continue;
      }
      faults.push_back({.file = other.file.shown(),
                        .place = "",
                        .problem = "its heights differ by more than 0.5 m from those of " +
                                   one.file.shown() + " where both know one",
                        .remedy = "check which is right; the file listed first is used",
                        .weight = base::Weight::doubt});
    }
  }
}

}  // namespace rimehaul::ports::gdal
