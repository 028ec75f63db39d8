// What a snow state gives a rig to hold on to, and what it takes to move through it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "snow/sinkage.h"
#include "snow/snow.h"
#include "units/quantities.h"

namespace rimehaul::snow {

/// A number known only to lie between two values; each check takes its bad side.
struct ForceRange {
  units::ForceRatio low;
  units::ForceRatio high;
};

/// How well a grip entry is founded; and by whom and when, for the card and the audit.
enum class GripStanding { published, site_measured, estimate };
[[nodiscard]] const char* words_for(GripStanding standing);

/// Grip of one snow state for one print of the tracks; every number above 0 and finite. All ratios
/// are tangential over normal force.
struct GripRow {
  units::ForceRatio traction;         ///< gross, of driven tracks, low side
  units::ForceRatio brake;            ///< of braked tracks, low side; drag included if so measured
  units::ForceRatio lateral;          ///< across tracks or skis, low side
  units::ForceRatio trailer_lateral;  ///< across runners, low side
  ForceRange carrier_resistance;      ///< motion resistance
  ForceRange trailer_resistance;
  units::ForceRatio trailer_start;  ///< resistance of runners that have stood, high side
  GripStanding standing = GripStanding::estimate;
  std::string source;
  /// How much deeper one side may sink than the other, by measured strength: all the weight on one
  /// side against none on the other. 0: not measured.
  units::Metres side_sinkage{0};
  units::Metres trailer_side_sinkage{0};  ///< the same of a trailer, filled in by who knows it

  /// Number by number the more cautious of this row and another; standing and source stay.
  [[nodiscard]] GripRow limited_by(const GripRow& other) const;
};

/// What a site has for one snow state. What it leaves out stays as built in. Every number given is
/// finite and above 0, and low <= high.
struct MeasuredGrip {
  SnowState state;
  std::optional<units::ForceRatio> traction;
  std::optional<units::ForceRatio> brake;
  std::optional<units::ForceRatio> lateral;
  std::optional<units::ForceRatio> trailer_lateral;
  std::optional<ForceRange> carrier_resistance;
  std::optional<ForceRange> trailer_resistance;
  std::optional<units::ForceRatio> trailer_start;
  /// By the site's own plate tests, of the softest place: tells sinkage, and the carrier's
  /// resistance where that was not measured itself.
  std::optional<SnowStrength> strength{};
  /// What was measured replaces the built-in number; published or estimated, it counts only where
  /// it is the more cautious of the two.
  GripStanding standing = GripStanding::site_measured;
  std::string source;
};

/// Whether the rig tows something on runners.
enum class Runners { none, towed };

/// The grip law: published traction by surface, derated by wetness (estimates), capped so that at a
/// fixed surface wetter never grips more; site measurements override entry by entry.
class GripLaw {
 public:
  /// The built-in entries, every derating of which is an estimate.
  GripLaw();
  /// With site entries, at most one for each state (OurFault otherwise). An entry that would let a
  /// wetter state of its surface grip more than a drier one is refused by the reader; here the more
  /// cautious of the two is taken, number by number.
  explicit GripLaw(std::vector<MeasuredGrip> measured);

  /// The row for a state under the tracks. Nothing when a side or the pressure of the print is not
  /// a positive finite number.
  [[nodiscard]] std::optional<GripRow> row(SnowState state, const TrackPrint& print) const;

  [[nodiscard]] const std::vector<MeasuredGrip>& measured() const { return measured_; }
  /// Whether the site has measured every number of a state that bears on a rig.
  [[nodiscard]] bool all_measured(SnowState state, Runners runners) const;

 private:
  [[nodiscard]] GripRow own_row(SnowState state, const TrackPrint& print) const;

  std::vector<MeasuredGrip> measured_;
};

}  // namespace rimehaul::snow
