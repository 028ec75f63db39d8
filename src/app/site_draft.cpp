#include "app/site_draft.h"

#include <algorithm>
#include <array>

#include "app/own_files.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

using units::Metres;
using units::Round;

constexpr Metres kMostError{50.0};
constexpr Metres kMostAlike{100'000.0};

/// TOML 1.0, basic string.
std::string quoted(const std::string& text) {
  std::string quoted = "\"";
  for (const char letter : text) {
    if (letter == '"' || letter == '\\') {
      quoted += '\\';
    }
    quoted += letter;
  }
  return quoted + "\"";
}

std::string list_of(const std::vector<std::string>& names) {
  std::string list = "[";
  for (const std::string& name : names) {
    list += (list.size() == 1 ? "" : ", ") + quoted(name);
  }
  return list + "]";
}

std::string in_metres(Metres length) {
  return units::text_of(length.value(), 2, Round::up);
}

/// A name that a raster gives, fit for a comment: what is not one line must not become a key.
std::string in_a_comment(const std::string& name) {
  return fits_site_file(name) ? name : "a name that cannot be printed here";
}

std::string level_lines(const OwnFacts& facts) {
  std::string lines;
  if (facts.heights.says_datum) {
    lines += "# The level that heights count from is as the file says: " +
             in_a_comment(facts.heights.frame.vertical_name) + ".\n";
  } else {
    lines += "# The level that heights count from, by name; the file does not say it.\n";
    lines += "# vertical_datum =\n";
  }
  if (facts.heights.says_unit) {
    lines += "# The unit of the heights is as the file says.\n";
  } else {
    lines += "# The file does not say the unit: \"metres\", \"feet\" or \"us_survey_feet\".\n";
    lines += "# unit =\n";
  }
  return lines;
}

std::string trust_lines(Metres cell) {
  const std::string cells = in_metres(cell) + " m cells";
  std::string lines =
      "# How much steeper the ground may be between cell centres than they show. An ESTIMATE from\n"
      "# the width of the cells: replace it by what you measured with an inclinometer.\n";
  lines += "sub_cell = { deg = " + units::text_of(hidden_slope_guess_deg(cell), 0, Round::up) +
           ", standing = \"estimate\", source = \"estimate from " + cells +
           ", not measured\" }\n\n";
  lines +=
      "# How wrong the heights may be. An ESTIMATE, a tenth of a cell: replace it by the standard\n"
      "# deviation and the source that the survey's report gives. Too large closes too much; too\n"
      "# small lets rigs where they must not go.\n"
      "[[heights.error]]\n";
  lines += "sd_m = " + in_metres(height_error_guess(cell)) + "\n";
  lines += "correlation_m = " + in_metres(std::min(cell, kMostAlike)) + "\n";
  lines += "source = \"estimate from " + cells + ", not measured: replace it\"\n\n";
  lines +=
      "# Snow does not lie even on the ground that was measured. An ESTIMATE: replace it by what\n"
      "# your own soundings show.\n"
      "[[heights.error]]\n"
      "sd_m = 0.20\n"
      "correlation_m = 15\n"
      "source = \"estimate of uneven snow on top of the ground, not measured: replace it\"\n";
  return lines;
}

std::string layer_lines(const OwnNames& names) {
  std::string lines = "[files]\ntrails = " + list_of({names.trails}) + "\n";
  lines += names.stations.empty()
               ? "# Lift stations, huts, workshops; a route is asked from one to another.\n"
                 "# stations = [\"stations.geojson\"]\n"
               : "stations = " + list_of({names.stations}) + "\n";
  lines +=
      "# Forbidden ground, speed limits, release areas drawn by an expert.\n"
      "# zones = [\"zones.geojson\"]\n"
      "# Bridges, crossings, winch cables, gates, cornices and drops beside the trail.\n"
      "# marks = [\"marks.geojson\"]\n"
      "# Today's report, once somebody has seen the snow and filled it in.\n"
      "# snow = \"snow.toml\"\n\n";
  return lines;
}

}  // namespace

Metres height_error_guess(Metres cell) {
  constexpr double kOfACell = 0.1;
  constexpr Metres kLeast{0.2};
  return std::clamp(cell * kOfACell, kLeast, kMostError);
}

double hidden_slope_guess_deg(Metres cell) {
  struct Step {
    Metres up_to;
    double deg = 0.0;
  };
  constexpr std::array<Step, 4> kSteps{
      {{Metres{1}, 2.0}, {Metres{2}, 3.0}, {Metres{5}, 4.0}, {Metres{10}, 6.0}}};
  constexpr double kCoarser = 10.0;
  const auto* step = std::ranges::find_if(kSteps, [&](const Step& s) { return cell <= s.up_to; });
  return step == kSteps.end() ? kCoarser : step->deg;
}

std::string site_draft(const std::string& name, const OwnNames& names, const OwnFacts& facts) {
  std::string text =
      "# The site: where its files lie and what its heights may be trusted for. A line with # is "
      "a\n"
      "# comment; take the # off and write the value behind the = sign.\n"
      "schema = 1\n";
  text += "name = " + quoted(name) + "\n";
  text += "# The map is that of the heights, in metres: " +
          in_a_comment(facts.heights.frame.horizontal_name) + ".\n# map_frame =\n";
  text +=
      "# Local time minus UTC, in minutes: 60 is one hour ahead. Where clocks are put forward in\n"
      "# summer, write time_zone in its place: a name of the IANA time zone database, in quotes.\n"
      "# utc_offset_minutes =\n\n";
  text += layer_lines(names);
  text += "[heights]\nfiles = " + list_of(names.heights) + "\n";
  text += level_lines(facts);
  text +=
      "# Who measured the heights and when; stands on every card.\n"
      "# source =\n"
      "# date =\n";
  return text + trust_lines(facts.heights.widest_step);
}

std::vector<card::ToSay> still_to_say(const OwnNames& names, const OwnFacts& facts) {
  std::vector<card::ToSay> say;
  say.push_back({"site.toml", "utc_offset_minutes", "local time minus UTC"});
  if (!facts.heights.says_datum) {
    say.push_back({"site.toml", "heights.vertical_datum", "from what level the heights count"});
  }
  if (!facts.heights.says_unit) {
    say.push_back({"site.toml", "heights.unit", "metres, feet or US survey feet"});
  }
  say.push_back(
      {"site.toml", "heights.source, heights.date", "who measured the heights, and when"});
  say.push_back({"site.toml", "heights.error",
                 "an estimate stands there; write what the survey's report says"});
  say.push_back({"site.toml", "heights.sub_cell",
                 "an estimate stands there; write what an inclinometer shows between the cells"});
  for (const MissingColumn& column : facts.missing) {
    say.push_back({names.trails, column.name,
                   "not said of " + std::to_string(column.trails) + " of " +
                       std::to_string(facts.trails.size()) +
                       " trails; until then they are closed"});
  }
  if (names.stations.empty()) {
    say.push_back({"site.toml", "files.stations", "no station, so no route can be asked for"});
  }
  say.push_back(
      {"site.toml", "files.zones, files.marks",
       "forbidden ground, release areas, bridges, crossings, cables, cornices and drops"});
  say.push_back({"rigs.toml", "carrier, rig",
                 "your machine, from its maker's sheet; until then nothing can be driven"});
  say.push_back({"rigs.toml", "ratings",
                 "slopes from the maker's manual, or a named and dated limit of the site; until "
                 "then what they speak of, towing above all, is closed"});
  say.push_back({"rules.toml", "", "cautious defaults hold; read them, and change what is yours"});
  say.push_back({"rules.toml", "most_wind_kmh", "there is no limit of wind unless you set one"});
  say.push_back({"snow.toml", "",
                 "who saw the snow, when, and the avalanche bulletin; nothing is made up, and "
                 "without a report or --snow nothing is open"});
  return say;
}

}  // namespace rimehaul::app
