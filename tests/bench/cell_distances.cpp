// Our side of mcp_bench.py: least costs over eight neighbours from one cell of a raster of costs.
//
//   cell_distances COSTS COLUMNS ROWS COLUMN ROW OUT
//
// COSTS holds one 32-bit float a cell, row by row; OUT gets one 64-bit float a cell, infinite where
// there is no way. Prints the seconds of processor time that the search took, and the process's
// peak memory in MB before it read a cost and after the search.
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iostream>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "crossing/cell_costs.h"

using namespace rimehaul::crossing;

namespace {

CellCosts read_costs(const std::string& path, Extent extent) {
  CellCosts costs{extent};
  std::ifstream file{path, std::ios::binary};
  for (std::int32_t row = 0; row < extent.rows; ++row) {
    const auto cells = costs.row(row);
    file.read(reinterpret_cast<char*>(cells.data()),
              static_cast<std::streamsize>(cells.size_bytes()));
  }
  if (!file) {
    std::cerr << path << " does not hold so many costs\n";
    std::exit(2);
  }
  return costs;
}

/// The most memory that was ever resident, since this program was started.
double peak_mb() {
  std::ifstream status{"/proc/self/status"};
  std::string word;
  while (status >> word && word != "VmHWM:") {
  }
  double kilobytes = 0.0;
  status >> kilobytes;
  return kilobytes / 1024.0;
}

void write_distances(const std::string& path, const CellDistances& distances, Extent extent) {
  std::ofstream file{path, std::ios::binary};
  std::vector<double> line(static_cast<std::size_t>(extent.columns));
  for (std::int32_t row = 0; row < extent.rows; ++row) {
    for (std::int32_t column = 0; column < extent.columns; ++column) {
      line[static_cast<std::size_t>(column)] =
          distances.to({column, row}).value_or(std::numeric_limits<double>::infinity());
    }
    file.write(reinterpret_cast<const char*>(line.data()),
               static_cast<std::streamsize>(line.size() * sizeof(double)));
  }
}

}  // namespace

int main(int count, char** words) {
  if (count != 7) {
    std::cerr << "cell_distances COSTS COLUMNS ROWS COLUMN ROW OUT\n";
    return 2;
  }
  const Extent extent{.columns = std::atoi(words[2]), .rows = std::atoi(words[3])};
  const double before_mb = peak_mb();
  const CellCosts costs = read_costs(words[1], extent);
  const std::vector<Cell> starts{{std::atoi(words[4]), std::atoi(words[5])}};
  const std::clock_t from = std::clock();
  const CellDistances distances{costs, starts};
  const auto ticks = static_cast<double>(std::clock() - from);
  std::cout << ticks / CLOCKS_PER_SEC << " " << before_mb << " " << peak_mb() << "\n";
  write_distances(words[6], distances, extent);
  return 0;
}
