// What was observed, and how the forecast softens it for the rest of the day.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "snow/softening.h"
#include "snow/sun_table.h"
#include "terrain/horizon.h"

namespace rimehaul::snow {

/// An hour of some ground as the forecast has it.
struct SoftHour {
  units::Instant start;
  units::WattsPerSquareMetre sun;  ///< mean over the hour, the most that this ground may get
  units::Millimetres water;        ///< most in the hour, before it drains
  std::optional<SnowState> state;  ///< nothing: not known, and why
  Blind blind = Blind::no;
};

/// How far off the hour of a change may be. An estimate that nobody has checked; a site's own
/// record can only widen it.
inline constexpr units::Seconds kHoursOff{7'200};

/// What the model is told of a site.
struct SofteningSite {
  SunSite sun;
  std::shared_ptr<const terrain::Horizons> horizons;  ///< null: nothing casts a shadow
  double melt = 1.0;                                  ///< factor on kMostMelt, above 0
  units::Seconds off = kHoursOff;                     ///< not under kHoursOff
};

/// A report with its forecast. Without one: exactly as ReportedSnow.
/// For an hour from when it was observed, what was observed counts alone. Later the worse of that
/// and of every hour of the forecast that lies within `off` before or after counts, and all of
/// them must be known; what lies before the observation does not count. Ground is put into classes
/// of height, slope and aspect, and each is reckoned at its worst. May be asked by several threads.
class ForecastSnow : public SnowAt {
 public:
  ForecastSnow(SnowReport report, SofteningSite site);

  [[nodiscard]] std::optional<SnowState> at(const PlaceAndHour& where) const override;
  [[nodiscard]] const DayWeather& weather() const override { return reported_.weather(); }
  [[nodiscard]] Told told_by() const override;
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override;

  /// The hours of the forecast at a place, from that in which it was observed; empty where nothing
  /// was observed or no forecast holds then. The hour asked for does not matter.
  [[nodiscard]] std::vector<SoftHour> hours_at(const PlaceAndHour& where) const;

 private:
  struct Steps {
    int least = 0;
    int most = 0;

    friend auto operator<=>(const Steps&, const Steps&) = default;
  };
  /// Ground that is reckoned together.
  struct Ground {
    int height = 0;               ///< step of 50 m that it lies in
    std::optional<int> aspect;    ///< nearest step of 15 degrees
    std::optional<Steps> slopes;  ///< steps of 2.5 degrees around them
    std::optional<std::size_t> pixel;
    SnowState observed;

    friend auto operator<=>(const Ground&, const Ground&) = default;
  };
  struct Spot {
    std::optional<std::size_t> pixel;
    int height = 0;

    friend auto operator<=>(const Spot&, const Spot&) = default;
  };
  using Hours = std::shared_ptr<const std::vector<SoftHour>>;
  using Shades = std::shared_ptr<const std::vector<Shade>>;

  [[nodiscard]] Ground ground_of(const PlaceAndHour& where, SnowState observed) const;
  [[nodiscard]] Hours hours_of(const Ground& ground, const PlaceAndHour& where) const;
  [[nodiscard]] Shades shades_of(const Spot& spot, const PlaceAndHour& where) const;
  [[nodiscard]] std::vector<SoftHour> soften(const Ground& ground, geo::Height height,
                                             const std::vector<Shade>& shades) const;
  [[nodiscard]] SoftHour pass_hour(SnowLayer& layer, const Ground& ground, std::size_t hour,
                                   const std::vector<Shade>& shades, geo::Height height) const;

  SnowReport report_;
  ReportedSnow reported_;
  SofteningSite site_;
  std::vector<std::vector<SunStep>> sun_;  ///< by hour of the forecast
  std::optional<std::size_t> first_;       ///< hour in which the report was observed
  mutable std::mutex guard_;
  mutable std::map<Ground, Hours> hours_;
  mutable std::map<Spot, Shades> shades_;
};

}  // namespace rimehaul::snow
