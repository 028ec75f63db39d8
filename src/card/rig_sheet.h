// The sheet of a rig as it stands today: masses, balance, ratings, tip angles.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/route_card.h"
#include "passage/finding.h"
#include "passage/rules.h"
#include "units/local_clock.h"

namespace rimehaul::card {

struct NamedMass {
  std::string name;  ///< "carrier", "driver", "bed load", ...
  rig::PlacedMass placed;
};

/// The way a body may go over.
enum class TipWay { over_the_right, over_the_left, over_the_rear, over_the_front };

/// How steep ground that only falls away that way may be, by statics alone.
struct TipAngle {
  TipWay way = TipWay::over_the_right;
  units::Slope as_loaded;  ///< NaN: not known
  units::Slope empty;
  units::Slope usable;  ///< as loaded: what the site's reserve and the sinking low side leave
};

/// One edge of the support polygon, between two of its corners.
struct SheetEdge {
  rig::TipEdge edge;    ///< with the centre of gravity as loaded
  units::Slope usable;  ///< of its static tip
};

/// One body: the carrier or the trailer.
struct SheetBody {
  std::string name;
  std::string provenance;
  std::vector<NamedMass> masses;
  rig::Balance as_loaded;
  rig::Balance empty;
  std::vector<rig::SupportPoint> support;
  std::vector<SheetEdge> edges;
  std::vector<TipAngle> tips;
  units::Metres contact_length;
  units::Metres gauge;
  units::Metres overall_width;
  units::SquareMetres contact_area;
};

/// Maker's ratings of one way of driving.
struct SheetRatings {
  std::string way;  ///< "alone, empty", "alone, loaded", "towing", "trailer's own"
  bool in_force = false;
  rig::SlopeRatings ratings;
};

/// A rating of a mass, or the seats.
struct SheetLoad {
  std::string name;  ///< "bed load"
  passage::Finding finding;
};

struct HitchOnSheet {
  rig::BodyPoint on_carrier;
  units::Metres ahead_of_trailer;  ///< of the rear end of its runners
  units::Kilograms tongue;         ///< on level ground
  units::Kilograms rated;
  units::Metres to_runners;  ///< from the eye to the middle of the runners
  /// Of the tongue load, standing on level ground: about the middle of the runners, where it holds
  /// the trailer level, and about the rear end of the carrier's contact, where it takes load off
  /// the carrier's front; below 0: it presses the front down.
  units::NewtonMetres about_runners;
  units::NewtonMetres off_the_front;
};

struct RigSheet {
  int schema = 1;
  std::string site;
  std::string rig;
  std::string driver_level;
  double allowed_share = 0.0;  ///< 0: the driver's level is not known
  double roll_over_reserve = 0.0;
  rig::CarrierKind kind = rig::CarrierKind::twin_track;
  rig::Load load;
  SheetBody carrier;
  std::optional<SheetBody> trailer;
  std::optional<HitchOnSheet> hitch;
  units::Kilograms total;
  units::Kilopascals pressure;  ///< under the carrier's driven tracks, as loaded
  std::vector<SheetRatings> ratings;
  std::vector<SheetLoad> loads;  ///< every rating of a mass, and the seats
  std::vector<std::string> estimates;
  MadeFrom made_from;
  units::LocalClock local_clock{};

  /// Every rating of a mass and the seats are kept, at the allowed share.
  [[nodiscard]] bool within_ratings() const;
};

/// All but who asks where and when: site, inputs, versions and the hour are left to fill in.
[[nodiscard]] RigSheet rig_sheet(const rig::Rig& rig, const passage::Rules& rules);

/// The sheet as text, no line longer than `columns` (80 or more).
[[nodiscard]] std::string text_of(const RigSheet& sheet, int columns);

}  // namespace rimehaul::card
