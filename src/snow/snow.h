// Snow as the trade classes it, and who saw it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geo/point.h"
#include "snow/forecast.h"
#include "snow/site_status.h"
#include "units/clock.h"
#include "units/slope.h"

namespace rimehaul::snow {

/// Liquid water classes of the International Classification for Seasonal Snow on the Ground (Fierz
/// et al. 2009): dry 0 %, moist < 3 %, wet 3-8 %, very wet 8-15 %, slush > 15 % by volume.
enum class Wetness { dry, moist, wet, very_wet, slush };
inline constexpr int kWetnessCount = 5;

enum class Surface { groomed, fresh, refrozen, ice };
inline constexpr int kSurfaceCount = 4;

[[nodiscard]] const char* words_for(Wetness wetness);  ///< "very wet"
[[nodiscard]] const char* words_for(Surface surface);
[[nodiscard]] const char* key_of(Wetness wetness);  ///< "very_wet", as in files and options
[[nodiscard]] const char* key_of(Surface surface);
[[nodiscard]] std::optional<Wetness> wetness_named(std::string_view key);
[[nodiscard]] std::optional<Surface> surface_named(std::string_view key);

/// The state of the snow at one place and hour.
struct SnowState {
  Wetness wetness = Wetness::dry;
  Surface surface = Surface::groomed;

  /// The wetter class of both on the slipperier surface of both, in the order groomed, fresh,
  /// refrozen, ice: grips no better than either.
  [[nodiscard]] SnowState worst_with(SnowState other) const;

  friend auto operator<=>(const SnowState&, const SnowState&) = default;
};

/// Weather, warnings and the state of the site today. What nobody said is unknown.
struct DayWeather {
  std::optional<units::Metres> visibility;
  std::optional<units::MetresPerSecond> wind;
  std::optional<int> bulletin_level;  ///< 1 to 5, of the avalanche service
  std::string bulletin_source;
  std::optional<units::Metres> new_snow;  ///< depth since the last grooming
  std::optional<bool> rain;
  std::optional<units::Celsius> temperature;
  std::optional<units::KilogramsPerCubicMetre> new_snow_density{};
  SiteStatus site{};
  std::optional<units::Oktas> cloud{};
};

/// What an observer wrote for a band of heights and a sector of aspects.
struct SnowBand {
  std::optional<geo::Height> above;           ///< included; none: from the bottom
  std::optional<geo::Height> below;           ///< included; none: to the top
  std::optional<units::Bearing> aspect_from;  ///< clockwise sector of downslope directions, ends
  std::optional<units::Bearing> aspect_to;    ///< included; neither: all; only one: speaks nowhere
  SnowState state;
};

struct SnowReport {
  std::vector<SnowBand> bands;
  DayWeather weather;
  std::string observer;
  std::optional<units::Instant> observed;
  std::optional<units::Instant> valid_until;
  std::optional<Forecast> forecast{};  ///< by which the snow softens; none: as observed, all day
};

/// Steepness of the ground, between two that are not below 0.
struct SlopeRange {
  units::Slope least;
  units::Slope most;

  friend auto operator<=>(const SlopeRange&, const SlopeRange&) = default;
};

/// Where and when the snow is asked for. What is not told may be anything.
struct PlaceAndHour {
  geo::Height height;
  std::optional<units::Bearing> aspect;  ///< downslope direction; none: level or unknown
  units::Instant when;
  std::optional<SlopeRange> slope{};     ///< of the ground; none: any
  std::optional<geo::MapPoint> place{};  ///< where shadows fall; none: nothing shades it
};

/// Who says what the snow is like, and when it was seen: apart, since people read local times and
/// files read UTC.
struct Told {
  std::string words;                       ///< "assumed for planning", "observed by N. N."
  std::optional<units::Instant> observed;  ///< nothing: nobody has seen it, or nobody said when
};

/// "observed by N. N.", and when.
[[nodiscard]] Told observed_by(const SnowReport& report);

/// The one question the judges ask of the snow. Nothing: unknown, so closed.
class SnowAt {
 public:
  virtual ~SnowAt() = default;
  [[nodiscard]] virtual std::optional<SnowState> at(const PlaceAndHour& where) const = 0;
  [[nodiscard]] virtual const DayWeather& weather() const = 0;
  [[nodiscard]] virtual Told told_by() const = 0;
  /// Every moment of the period but its first at which any answer, of any place or of the weather's
  /// site status, may differ from the answer one second earlier; in order, each once. Between one
  /// of them and the last second before the next all answers stay. May name too many, never too
  /// few.
  [[nodiscard]] virtual std::vector<units::Instant> turning_moments(units::Period during) const = 0;
};

/// The same class everywhere: a planner's "what if". Always, or until the report runs out whose
/// weather goes with it; nothing is known after that.
class ConstantSnow : public SnowAt {
 public:
  ConstantSnow(SnowState state, DayWeather weather, Told told_by,
               std::optional<units::Instant> until = {});
  ConstantSnow(SnowState state, DayWeather weather, std::string told_by);  ///< seen by nobody
  [[nodiscard]] std::optional<SnowState> at(const PlaceAndHour& where) const override;
  [[nodiscard]] const DayWeather& weather() const override { return weather_; }
  [[nodiscard]] Told told_by() const override { return told_by_; }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override;

 private:
  SnowState state_;
  DayWeather weather_;
  Told told_by_;
  std::optional<units::Instant> until_;
};

/// One class wherever and whenever another answer tells any: what is unknown stays unknown. Refers
/// to the other, which must outlive it.
class OtherSnow : public SnowAt {
 public:
  OtherSnow(const SnowAt& told, SnowState state) : told_{&told}, state_{state} {}
  [[nodiscard]] std::optional<SnowState> at(const PlaceAndHour& where) const override;
  [[nodiscard]] const DayWeather& weather() const override { return told_->weather(); }
  [[nodiscard]] Told told_by() const override { return {"assumed for comparison", {}}; }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override {
    return told_->turning_moments(during);
  }

 private:
  const SnowAt* told_;
  SnowState state_;
};

/// An observer's report. Nothing before it was observed, after it expires, or where no band speaks.
/// Where several bands speak, the worst of them counts (worst_with). Where the aspect is unknown
/// any band of that height may apply, so all of them count, and together they must cover all
/// aspects.
class ReportedSnow : public SnowAt {
 public:
  explicit ReportedSnow(SnowReport report);
  [[nodiscard]] std::optional<SnowState> at(const PlaceAndHour& where) const override;
  [[nodiscard]] const DayWeather& weather() const override { return report_.weather; }
  [[nodiscard]] Told told_by() const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override;

 private:
  SnowReport report_;
};

}  // namespace rimehaul::snow
