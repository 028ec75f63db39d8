// Costs of cells, and the least cost over eight neighbours without headings from some of them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "crossing/lattice.h"

namespace rimehaul::crossing {

/// How many cells there are along each side; at least 1, at most 2^30 of all, edge included.
struct Extent {
  std::int32_t columns = 0;
  std::int32_t rows = 0;
};

/// What each cell costs per pitch of way over it. Only a cost that is finite and above 0 is open.
class CellCosts {
 public:
  /// All cells barred. Requires a possible extent (OurFault otherwise).
  explicit CellCosts(Extent extent);

  [[nodiscard]] Extent extent() const { return extent_; }
  /// The costs of one row from the west, to read and to fill in. Requires a row of the extent.
  [[nodiscard]] std::span<float> row(std::int32_t row);
  [[nodiscard]] std::span<const float> row(std::int32_t row) const;

 private:
  friend class CellDistances;
  Extent extent_;
  std::vector<float> costs_;  ///< with a ring of barred cells about them
};

/// Least costs from a set of cells to all others: a move to one of eight neighbours costs the mean
/// of both cells' costs times its length in pitches, as MCP_Geometric of scikit-image has it.
/// Exact but for the rounding of double sums. Takes eight bytes a cell beside the costs.
class CellDistances {
 public:
  /// Requires starts of the extent; a barred one begins nothing.
  CellDistances(const CellCosts& costs, std::span<const Cell> starts);

  /// Cost times pitches; nothing where there is no way. Requires a cell of the extent.
  [[nodiscard]] std::optional<double> to(Cell cell) const;

 private:
  [[nodiscard]] std::size_t index_of(Cell cell) const;

  Extent extent_;
  std::vector<double> distances_;  ///< padded like the costs; below 0 is barred
};

}  // namespace rimehaul::crossing
