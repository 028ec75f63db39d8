#include <doctest/doctest.h>

#include <sstream>

#include "card/card_text.h"
#include "card/sample_card.h"

namespace rimehaul::card {
namespace {

constexpr const char* kGolden = R"CARD(
ROUTE CARD                                                             Test Fell
Cable House to Fell Lodge
================================================================================
RESTRICTED  at most 62 % of a limit (climb traction, leg 1); allowed here: 70 %
Permitted   by N. Example:
            leg 2: drive 40 m from ground that may release
Rig         Hare with sled: Hare with Long Sled (no brake); driver level
            seasoned
Load        bed 60 kg, towed 150 kg, 1 passenger of 90 kg, fuel 29.9 L; in all
            1240 kg
Leave       2026-02-01 07:30, arrive about 07:37 (local time, UTC-10:00)
Way         safest: 1.63 km, climb 239 m, drop 6 m, 8 min, fuel 2.3 L
FUEL        not enough to come back without refuelling
Snow        dry, groomed; moist, groomed; assumed for planning
Weather     visibility 199 m, wind unknown, avalanche bulletin 2 (morning desk)
A planning aid, not permission to drive.

LEGS ("up to" counts the heights' error, 95 % sure)
 1  North Traverse                                                          OPEN
    Cable House to junction 4, set out towards 045 deg from map north
    812 m, climb 120 m, drop 3 m; at most 14 km/h; 3 min 18 s; fuel 1.2 L
    steepest  up 7.3 deg (12.7 %), up to 9.1 deg (15.9 %) at 340 m
              down 1.0 deg (1.8 %), up to 2.5 deg (4.4 %) at 20 m
              across 3.0 deg (5.3 %), up to 5.1 deg (8.9 %) at 412 m
    binds     climb traction, 62 % of the limit at 340 m
    mind      at 120 m: piste crossing Lower Run: stop
              all along: shared with skiers: slow
              from 500 m to 560 m: runout Gully B: do not stop
    ahead     turn-round in 900 m (Fell Lodge); refuge: none ahead on this route
 2  The Long Way Round Behind the Second Hut and Along the Old Snow Fence to the
    Lodge
    RESTRICTED
    Cable House to junction 4, set out towards 045 deg from map north
    812 m, climb 120 m, drop 3 m; at most 14 km/h; 3 min 18 s; fuel 1.2 L
    steepest  up unknown
              down none, up to 1.4 deg (2.5 %) at 700 m
              across 3.0 deg (5.3 %), up to 5.1 deg (8.9 %) at 412 m
    binds     climb traction, 40 % of the limit at 340 m
    ahead     turn-round in 900 m (Fell Lodge); refuge: none ahead on this route

TURN BACK OR STOP IF
- you see less than 100 m
- wind over 60 km/h

RADIO
- call on leaving Cable House
- call on arrival at Fell Lodge

IF IT GOES WRONG
- overdue from 2026-02-01 08:08

PEOPLE
- the driver goes alone

BEFORE STARTING
[ ] fluids at their marks

PARKING
[ ] parking brake on

CAUTIONS
! This card is a planning aid, not permission to drive.

ESTIMATES IN USE (not measured, not published)
- reaction time 2 s

MADE FROM
Made        2026-02-01 06:00; judged again at 1622 places before printing
Map         WGS 84 / UTM zone 5N; heights above Test datum
Heights     invented for the tests, 2026
heights     heights.tif, 2026-01-05, SHA-256
            abababababababababababababababababababababababababababababababab
trails      trails.gpkg, SHA-256
            abababababababababababababababababababababababababababababababab
Program     rimehaul 0.1.0
Program     GDAL 3.6.2
)CARD";

TEST_CASE("the card reads as agreed, letter by letter, and the same twice") {
  const RouteCard card = testing::sample_card();
  CHECK(text_of(card, 80) == std::string{kGolden}.substr(1));
  CHECK(text_of(card, 80) == text_of(card, 80));
}

TEST_CASE("no line of the card is wider than asked for, whatever the names") {
  RouteCard card = testing::sample_card();
  card.title =
      "H\u00FCtte am B\u00E4renjoch und Sankt-Sebastian-im-Schnee-Materialseilbahn-Talstation to "
      "\u96EA\u5C71";
  card.legs[0].trail = std::string(200, 'x');
  for (const int columns : {60, 80, 120}) {
    std::istringstream lines{text_of(card, columns)};
    for (std::string line; std::getline(lines, line);) {
      CAPTURE(line);
      CHECK(width_of(line) <= columns);
    }
  }
}

}  // namespace
}  // namespace rimehaul::card
