// Turns what was typed into what is asked: a rig with its load, stations, an hour, a snow.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/load_site.h"
#include "app/options.h"
#include "rig/rig.h"
#include "search/route.h"
#include "units/local_clock.h"

namespace rimehaul::app {

// Each throws WrongUsage with the nearest known name when there is none of that name, or saying
// which option would tell what is missing.

[[nodiscard]] std::size_t station_named(const trails::Network& network, const std::string& name);
[[nodiscard]] std::size_t trail_named(const trails::Network& network, const std::string& name);
[[nodiscard]] snow::Wetness wetness_typed(const std::string& key);
[[nodiscard]] snow::Surface surface_typed(const std::string& key);
/// Of the words that --prefer takes.
[[nodiscard]] search::Preference preference_typed(const std::string& name);
/// Each of several once, in the order of the classification; none typed: all.
[[nodiscard]] std::vector<snow::Wetness> classes_typed(const std::vector<std::string>& keys);
[[nodiscard]] std::vector<snow::Surface> surfaces_typed(const std::vector<std::string>& keys);
[[nodiscard]] rig::Rig rig_as_loaded(const LoadedSite& site, const RigOptions& options);

/// "HH:MM" in local time on the local day of `now`, or RFC 3339; nothing: now.
struct LocalNow {
  units::Instant now;
  units::LocalClock local_clock{};
};
[[nodiscard]] units::Instant departure(const std::optional<std::string>& text,
                                       const LocalNow& present,
                                       const std::string& option = "--depart");

/// The best way alone is asked for. Throws WrongUsage too where the way would stand still.
[[nodiscard]] search::RouteQuestion question_of(const WayOptions& way,
                                                const trails::Network& network,
                                                units::Instant depart);

/// Whether a report was observed by then and has not run out.
[[nodiscard]] bool holds_at(const snow::SnowReport& report, units::Instant when);

/// The snow to judge by.
struct ChosenSnow {
  std::unique_ptr<snow::SnowAt> snow;
  std::optional<units::Instant> valid_until;
  std::optional<units::Instant> ran_out;  ///< when the site's report did, before the departure
  std::optional<card::InputFile> file;    ///< a report given beside the site
};

/// The report in a file. Throws UnfitInput with all its faults.
[[nodiscard]] snow::SnowReport report_in(const std::string& path, const trails::Network& network);

/// By option, by a report given beside the site, or by the site's own. Weather that the options do
/// not tell is that of the site's report while it holds at the departure; else it stays unknown.
[[nodiscard]] ChosenSnow snow_to_judge_by(const LoadedSite& site, const SnowOptions& options,
                                          units::Instant depart);

/// The files of the site, a report given beside it in place of its own.
[[nodiscard]] std::vector<card::InputFile> inputs_judged_by(const LoadedSite& site,
                                                            const ChosenSnow& snow);

}  // namespace rimehaul::app
