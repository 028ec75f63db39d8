// The grip of every snow state for one rig, looked up once: a leg asks thousands of times.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "passage/rules.h"
#include "rig/rig.h"
#include "snow/grip.h"

namespace rimehaul::passage {

class GripTable {
 public:
  /// Rows at the pressure under the carrier's tracks: the weight on them over their contact area.
  /// All tracks count as one, as wide as their area over their length.
  GripTable(const snow::GripLaw& law, const rig::Rig& rig, const rig::Weighed& weighed);

  /// Nothing where the law gives nothing.
  [[nodiscard]] const std::optional<snow::GripRow>& row(snow::SnowState state) const;

  /// Takes sinkage and resistance over from the table of a heavier load where they are larger.
  void sinks_no_less_than(const GripTable& heavier);

 private:
  static constexpr std::size_t kStates =
      std::size_t{snow::kWetnessCount} * std::size_t{snow::kSurfaceCount};
  std::array<std::optional<snow::GripRow>, kStates> rows_;
};

}  // namespace rimehaul::passage
