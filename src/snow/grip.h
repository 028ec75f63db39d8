// What a snow state gives a rig to hold on to, and what it takes to move through it.
#pragma once

#include <array>
#include <optional>
#include <string>

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

/// Grip of one snow state for one contact pressure. All ratios are tangential over normal force.
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
};

/// Gross traction stress from normal stress, both kilopascals, Richmond, Shoop and Blaisdell
/// (1995), CRREL Report 95-1: undisturbed 0.851 N^0.823, prepared 0.321 N^0.97, ice 0.127 N^1.06.
/// Coefficients reproduce the report's Table A5. Not a number or not above 0 gives NaN.
[[nodiscard]] units::Kilopascals traction_on_undisturbed_snow(units::Kilopascals normal);
[[nodiscard]] units::Kilopascals traction_on_prepared_snow(units::Kilopascals normal);
[[nodiscard]] units::Kilopascals traction_on_ice(units::Kilopascals normal);

/// A site's own entry for one state, which replaces what the law would give.
struct MeasuredGrip {
  SnowState state;
  GripRow row;
};

/// The grip law: published traction by surface, derated by wetness (estimates), capped so that at a
/// fixed surface wetter never grips more; site measurements override entry by entry.
class GripLaw {
 public:
  /// The built-in entries, every derating of which is an estimate.
  GripLaw();
  /// With site measurements. An entry that would let a wetter state of its surface grip more than a
  /// drier one is refused by the reader; here the lower of the two is taken.
  explicit GripLaw(std::vector<MeasuredGrip> measured);

  /// The row for a state at a contact pressure of the tracks. Nothing when the pressure is not a
  /// positive finite number.
  [[nodiscard]] std::optional<GripRow> row(SnowState state, units::Kilopascals pressure) const;

 private:
  std::vector<MeasuredGrip> measured_;
};

}  // namespace rimehaul::snow
