#include "app/slope_sweep.h"

#include <algorithm>
#include <atomic>
#include <utility>

#include "app/crew_on_cores.h"
#include "app/edge_shelf.h"
#include "base/require.h"

namespace rimehaul::app {

namespace {

using terrain::CellWindow;

/// Cells told of at once: few enough to stay near the processor.
constexpr std::int64_t kCellsTogether = 65'536;

/// What all workers of one sweep share.
struct Common {
  const terrain::Sweep& blocks;
  const SlopeSweep& slopes;
  EdgeShelf& shelf;
  base::Watcher& watcher;
  std::atomic<std::size_t> next{0};
};

/// One worker's way through the blocks that fall to it.
class Worker {
 public:
  Worker(Common& common, terrain::BlockSource& source) : common_{&common}, source_{&source} {}

  SweepTally run() {
    try {
      for (;;) {
        const std::size_t block = common_->next++;
        if (block >= common_->blocks.count() || !do_block(block)) {
          return tally_;
        }
        common_->watcher.part_done();
      }
    } catch (...) {
      common_->shelf.stop();
      throw;
    }
  }

 private:
  bool do_block(std::size_t block) {
    heights_.read(*source_, common_->blocks.read_at(block));
    common_->shelf.put(block, heights_.edges());
    const auto before = common_->shelf.before(block);
    if (!before) {
      return false;
    }
    heights_.join(*before);
    const CellWindow told = common_->blocks.told_at(block);
    const std::int64_t rows = std::max<std::int64_t>(kCellsTogether / told.size.column, 1);
    for (std::int64_t row = 0; row < told.size.row; row += rows) {
      tell({{told.first.column, told.first.row + row},
            {told.size.column, std::min(rows, told.size.row - row)}});
    }
    return true;
  }

  void tell(const CellWindow& cells) {
    const auto count = static_cast<std::size_t>(cells.size.column * cells.size.row);
    terrain::SlopeSheets sheets;
    for (const auto& [layer, raster] : common_->slopes.layers) {
      switch (layer) {
        case SlopeLayer::slope:
          sheets.slope_deg = room_in(slope_deg_, count);
          break;
        case SlopeLayer::aspect:
          sheets.aspect_deg = room_in(aspect_deg_, count);
          break;
        case SlopeLayer::slope_error:
          sheets.error_deg = room_in(error_deg_, count);
          break;
        case SlopeLayer::share:
        case SlopeLayer::directions:
          sheets.east = room_in(east_, count);
          sheets.north = room_in(north_, count);
          break;
      }
    }
    const terrain::SlopeTally found = terrain::fill_slopes(
        heights_.around(cells), common_->slopes.terms, sheets, common_->slopes.path);
    tally_.slopes.known += found.known;
    tally_.slopes.steepest_deg = std::max(tally_.slopes.steepest_deg, found.steepest_deg);
    if (!sheets.east.empty()) {
      judge(sheets);
    }
    for (const auto& [layer, raster] : common_->slopes.layers) {
      raster->write(cells, bytes_of(layer, count));
    }
  }

  static std::span<float> room_in(std::vector<float>& numbers, std::size_t count) {
    numbers.resize(std::max(numbers.size(), count));
    return std::span{numbers}.first(count);
  }

  void judge(const terrain::SlopeSheets& sheets) {
    share_.resize(sheets.east.size());
    directions_.resize(sheets.east.size());
    for (std::size_t i = 0; i < sheets.east.size(); ++i) {
      const passage::Headings headings =
          common_->slopes.headings->on({sheets.east[i], sheets.north[i]});
      share_[i] = headings.share_percent;
      directions_[i] = headings.open;
      tally_.open += headings.open != 0 ? 1 : 0;
    }
  }

  [[nodiscard]] std::span<const std::byte> bytes_of(SlopeLayer layer, std::size_t count) const {
    const auto first = [count](const auto& numbers) {
      return std::as_bytes(std::span{numbers}.first(count));
    };
    switch (layer) {
      case SlopeLayer::slope:
        return first(slope_deg_);
      case SlopeLayer::aspect:
        return first(aspect_deg_);
      case SlopeLayer::slope_error:
        return first(error_deg_);
      case SlopeLayer::share:
        return first(share_);
      case SlopeLayer::directions:
        return first(directions_);
    }
    return {};
  }

  Common* common_;
  terrain::BlockSource* source_;
  terrain::SweptBlock heights_;
  std::vector<float> slope_deg_;
  std::vector<float> aspect_deg_;
  std::vector<float> error_deg_;
  std::vector<float> east_;
  std::vector<float> north_;
  std::vector<std::uint8_t> share_;
  std::vector<std::uint16_t> directions_;
  SweepTally tally_;
};

/// One worker for each source.
class Workers final : public base::Work {
 public:
  Workers(Common& common, const std::vector<terrain::BlockSource*>& sources)
      : common_{common}, sources_{sources}, tallies_(sources.size()) {}

  void do_part(std::size_t worker) override {
    tallies_[worker] = Worker{common_, *sources_[worker]}.run();
  }

  [[nodiscard]] SweepTally sum() const {
    SweepTally sum;
    for (const SweepTally& part : tallies_) {
      sum.slopes.known += part.slopes.known;
      sum.slopes.steepest_deg = std::max(sum.slopes.steepest_deg, part.slopes.steepest_deg);
      sum.open += part.open;
    }
    return sum;
  }

 private:
  Common& common_;
  const std::vector<terrain::BlockSource*>& sources_;
  std::vector<SweepTally> tallies_;
};

}  // namespace

SweepTally sweep_slopes(const std::vector<terrain::BlockSource*>& sources,
                        const terrain::Sweep& blocks, const SlopeSweep& slopes,
                        base::Watcher& watcher) {
  base::require(!sources.empty(), "a sweep has heights to read");
  EdgeShelf shelf{blocks};
  Common common{blocks, slopes, shelf, watcher};
  Workers workers{common, sources};
  CrewOnCores{}.do_all(workers, sources.size());
  return workers.sum();
}

}  // namespace rimehaul::app
