#include "base/nearest_name.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

namespace rimehaul::base {

namespace {

std::size_t letter_changes(std::string_view lhs, std::string_view rhs) {
  std::vector<std::size_t> row(rhs.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < lhs.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < rhs.size(); ++j) {
      const std::size_t replaced = diagonal + (lhs[i] == rhs[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, diagonal + 1, row[j] + 1});
    }
  }
  return row.back();
}

}  // namespace

std::optional<std::string> nearest_name(std::string_view typed,
                                        std::span<const std::string> known) {
  std::optional<std::string> best;
  std::size_t best_changes = 0;
  for (const std::string& name : known) {
    const std::size_t changes = letter_changes(typed, name);
    const bool close_enough = changes <= (name.size() + 2) / 3;
    if (close_enough && (!best || changes < best_changes)) {
      best = name;
      best_changes = changes;
    }
  }
  return best;
}

}  // namespace rimehaul::base
