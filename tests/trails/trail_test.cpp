// What a trail leaves unsaid, and which marks close their place until someone has looked.
#include "trails/trail.h"

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <vector>

#include "trails/features.h"

using rimehaul::geo::MapPoint;
using rimehaul::geo::Polyline;
using rimehaul::trails::AllowedDirection;
using rimehaul::trails::MarkKind;
using rimehaul::trails::needs_daily_status;
using rimehaul::trails::OpenHours;
using rimehaul::trails::StationKind;
using rimehaul::trails::Trail;
using rimehaul::trails::words_for;
using rimehaul::trails::ZoneKind;
using rimehaul::units::Metres;

namespace {

Polyline some_line() {
  return Polyline{{{Metres{0}, Metres{0}}, {Metres{10}, Metres{0}}}};
}

Trail full_trail() {
  return {.name = "North Bowl",
          .line = some_line(),
          .direction = AllowedDirection::both,
          .width = Metres{5},
          .lanes = 1,
          .groomed = false,
          .shared_with_skiers = false,
          .hours = OpenHours{{0}, {1440}},
          .line_error = Metres{0},
          .sight = std::nullopt,
          .marker_spacing = std::nullopt,
          .file = "trails.geojson"};
}

}  // namespace

TEST_CASE("a trail of which everything was said misses nothing, even where the answer is no") {
  CHECK(full_trail().missing().empty());
}

TEST_CASE("a trail of which nothing was said names each safety column as the files call it") {
  const Trail trail{.name = "Blank",
                    .line = some_line(),
                    .direction = {},
                    .width = {},
                    .lanes = {},
                    .groomed = {},
                    .shared_with_skiers = {},
                    .hours = {},
                    .line_error = {},
                    .sight = {},
                    .marker_spacing = {},
                    .most_wind = {},
                    .file = ""};
  const std::vector<std::string> wanted{"direction", "width_m",   "lanes",   "groomed",
                                        "skiers",    "open_from", "open_to", "error_m"};
  CHECK(trail.missing() == wanted);
}

TEST_CASE("one unsaid width is the one thing missing") {
  Trail trail = full_trail();
  trail.width.reset();
  CHECK(trail.missing() == std::vector<std::string>{"width_m"});
}

TEST_CASE(
    "cables, blasting, gates and snow over creeks need a word today, and no other mark does") {
  for (int kind = 0; kind <= static_cast<int>(MarkKind::check_in); ++kind) {
    const auto mark = static_cast<MarkKind>(kind);
    const bool closes = mark == MarkKind::winch_cable || mark == MarkKind::blasting ||
                        mark == MarkKind::gate || mark == MarkKind::radio_gate ||
                        mark == MarkKind::creek_bridge;
    CHECK(needs_daily_status(mark) == closes);
  }
}

TEST_CASE("every kind of mark, zone and station has words of its own") {
  std::set<std::string> marks;
  for (int kind = 0; kind <= static_cast<int>(MarkKind::check_in); ++kind) {
    marks.insert(words_for(static_cast<MarkKind>(kind)));
  }
  CHECK(marks.size() == 16);
  std::set<std::string> zones;
  for (int kind = 0; kind <= static_cast<int>(ZoneKind::runout); ++kind) {
    zones.insert(words_for(static_cast<ZoneKind>(kind)));
  }
  CHECK(zones.size() == 5);
  std::set<std::string> stations;
  for (int kind = 0; kind <= static_cast<int>(StationKind::refuge); ++kind) {
    stations.insert(words_for(static_cast<StationKind>(kind)));
  }
  CHECK(stations.size() == 6);
  CHECK(std::string{words_for(MarkKind::piste_crossing)} == "piste crossing");
}
