// One rig in one snow state on plane ground: everything but the place, asked slope by slope.
#pragma once

#include <optional>
#include <vector>

#include "passage/footing.h"
#include "passage/weighing.h"
#include "snow/snow.h"
#include "terrain/attitude.h"

namespace rimehaul::passage {

/// A rig as loaded, the rules that hold for it, and the snow. References must outlive the answers'
/// making, not the answers.
struct SlopeQuestion {
  const rig::Rig& rig;
  const Rules& rules;
  snow::SnowState snow;
  units::Metres in_new_snow{0};  ///< how deep one sinks in the day's new snow
};

/// Judges planes as they are: the slope is exact, so no error is added to it.
class PlaneJudge {
 public:
  explicit PlaneJudge(const SlopeQuestion& question);

  /// The lower of the site's share and the driver's level's; 0 where the level is not known.
  [[nodiscard]] double allowed_share() const { return allowed_share_; }

  /// What closes the rig in this snow on any ground: the load, the driver, towing in wet snow, a
  /// grip that is not known. The one that binds; nothing: none does.
  [[nodiscard]] const std::optional<Finding>& closed() const { return closed_; }

  /// With the tank as loaded and empty: every ground check, and stopping at walking pace within the
  /// site's sight, with the ground falling away to either side: the finding that binds of both.
  /// Requires that nothing closes the rig on any ground.
  [[nodiscard]] Finding binding_on(terrain::Attitude plane) const;
  [[nodiscard]] bool passes(terrain::Attitude plane) const;
  /// The same for carrier and trailer anywhere in a box of planes, each on its own: a share at
  /// least as large as on any of them.
  [[nodiscard]] Finding binding_over(const terrain::AttitudeBox& box) const;

 private:
  [[nodiscard]] std::vector<Finding> findings_over(const terrain::AttitudeBox& box) const;

  SlopeQuestion question_;
  std::vector<WeighedOut> weighings_;
  double allowed_share_;
  std::optional<Finding> closed_;
};

}  // namespace rimehaul::passage
