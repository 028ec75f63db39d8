// One zone of open ground as a rig finds it in one snow and hour: what may be driven, which way.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "crossing/move_prices.h"
#include "passage/judge.h"
#include "passage/share_table.h"
#include "terrain/gradient_box.h"
#include "trails/features.h"

namespace rimehaul::crossing {

/// Ticks for a move one pitch long on ground that asks nothing.
inline constexpr double kTicksPerPitch = 50.0;

/// The least pitch on which the rig's turns, with its trailer, pass within a strip of that width at
/// the allowed share; nothing when none up to 20 m does.
[[nodiscard]] std::optional<units::Metres> pitch_for(const rig::Rig& rig, units::Metres width,
                                                     double allowed_share);

/// The ground of a zone in cells. A cell is open where its strip lies in the zone, touches no
/// forbidden ground, keeps the avalanche policy without anybody's decision, and where heights and
/// snow are known. A heading is open on it where every ground check passes over the whole sector
/// and all ground that the rig may touch there. Looks at cells; the line that is drawn in the end
/// is judged for itself.
class OpenGround {
 public:
  /// Holds references: judge and zone must outlive it. Requires a zone of which nothing is missing
  /// and a pitch above 0 (OurFault otherwise).
  OpenGround(const passage::Judge& judge, const trails::Zone& zone, units::Metres pitch,
             units::Instant when);

  [[nodiscard]] const MovePrices& prices() const { return prices_; }
  [[nodiscard]] const Lattice& lattice() const { return prices_.lattice; }
  /// Largest share on a cell over an arc of headings; infinite where the cell is closed.
  [[nodiscard]] double share_on(Cell cell, const terrain::HeadingArc& headings) const;

 private:
  /// What is known of an open cell.
  struct Ground {
    terrain::GradientBox gradients;
    std::vector<const passage::ShareTable*> tables;  ///< one for every snow that may lie there
  };

  void look_at(Cell cell);
  [[nodiscard]] bool is_inside(geo::MapPoint place) const;
  [[nodiscard]] const passage::ShareTable& table_for(snow::SnowState snow);
  void price_moves();
  [[nodiscard]] std::uint8_t price_of_move(State state, const std::vector<double>& shares) const;

  const passage::Judge* judge_;
  const trails::Zone* zone_;
  units::Instant when_;
  units::Metres beside_;  ///< from a cell's centre to what the rig may touch while it is there
  std::vector<trails::Zone> zones_;
  std::map<snow::SnowState, passage::ShareTable> tables_;
  std::vector<std::optional<Ground>> cells_;
  MovePrices prices_;
};

}  // namespace rimehaul::crossing
