// Edges of blocks that were read, kept until the last block that needs them has them.
#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>
#include <vector>

#include "terrain/sweep.h"

namespace rimehaul::app {

/// Shared by the workers of one sweep. As blocks are begun in order, and told of here before
/// anybody is waited for, nobody waits for ever.
class EdgeShelf {
 public:
  explicit EdgeShelf(const terrain::Sweep& blocks)
      : blocks_{&blocks}, edges_(blocks.count()), wanted_(blocks.count()) {}

  void put(std::size_t block, terrain::BlockEdges edges);
  /// Waits for the edges before a block; nothing when the work was stopped meanwhile.
  [[nodiscard]] std::optional<terrain::EdgesBefore> before(std::size_t block);
  /// Wakes all who wait, for nothing.
  void stop();

 private:
  using Edges = std::shared_ptr<const terrain::BlockEdges>;
  [[nodiscard]] bool is_there(std::optional<std::size_t> block) const {
    return !block || edges_[*block] != nullptr;
  }
  [[nodiscard]] Edges take(std::optional<std::size_t> block);

  const terrain::Sweep* blocks_;
  std::mutex shelf_;
  std::condition_variable told_;
  std::vector<Edges> edges_;
  std::vector<int> wanted_;  ///< by how many blocks still
  bool stopped_ = false;
};

}  // namespace rimehaul::app
