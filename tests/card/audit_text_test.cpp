// The slope audit as text and CSV, held to the letter on a report made by hand.
#include <doctest/doctest.h>

#include "card/audit_csv.h"
#include "card/audit_report.h"

using namespace rimehaul;

namespace {

audit::AuditedPlace steep_place() {
  audit::AuditedPlace place;
  place.span = {units::Metres{140}, units::Metres{310}};
  place.at = units::Metres{232.5};
  place.place = {units::Metres{500'000.25}, units::Metres{5'100'000}};
  place.finding =
      passage::compare(passage::Check::cross_rating, units::amount(units::Slope::from_ratio(0.25)),
                       units::amount(units::Slope::from_ratio(0.3125)));
  place.stand = passage::Stand::exceeds;
  place.found_share = 0.625;
  return place;
}

card::AuditReport sample_report() {
  card::AuditReport report;
  report.site = "Test Fell";
  report.map_frame = "test frame";
  report.vertical_datum = "test datum";
  report.made_from.made = *units::parse_instant("2026-02-01T09:00:00Z");
  report.when = report.made_from.made;
  report.for_whom = "A. Officer";
  report.snow_told_by = {"assumed for planning", {}};
  report.confidence_k = 1.645;
  report.rigs.push_back({.name = "solo",
                         .carrier = "Twin-track",
                         .trailer = "",
                         .driver_level = "seasoned",
                         .allowed_share = 0.7,
                         .tolerance = units::Slope::from_percent(2),
                         .sources = {"climb rating: none given, so closed"}});
  report.loads = {"as given: each rig with the load that was asked for"};
  card::AuditedCase one;
  one.load_name = "as given";
  one.load.bed = units::Kilograms{100};
  one.load.fuel = units::Litres{30};
  one.lengths.by_band = {units::Metres{1200}, units::Metres{30}, units::Metres{170},
                         units::Metres{0}, units::Metres{0}};
  one.exceedances = 1;
  report.cases.push_back(one);
  report.trails.push_back(
      {"Fell \"Top\", east", geo::Polyline{{{units::Metres{0}, units::Metres{0}},
                                            {units::Metres{0}, units::Metres{9}}}}});
  report.exceedances.push_back({0, steep_place()});
  return report;
}

}  // namespace

TEST_CASE("an audit reads: verdict, totals, exceedances with found and up to, sources") {
  const std::string golden =
      R"(SLOPE AUDIT                                                            Test Fell
FAILED: 1 exceedance on 1 of 1 trails
================================================================================
Made      2026-02-01 09:00, for A. Officer
Hour      judged for 2026-02-01 09:00 (local time, UTC+00:00)
Snow      dry; groomed; assumed for planning
Weather   visibility unknown, wind unknown, avalanche bulletin unknown
Rig       solo: Twin-track, solo, driver's level seasoned, allowed 70 % of every
          limit
Error     every slope is taken 1.2 deg (2.0 %) steeper, either way, for the
          heights' error (95 % sure)
Load      as given: each rig with the load that was asked for
A planning aid, not permission to drive. The operator's manual, local rules and
the people on the hill outrank it. Avalanche terrain needs the local forecast
and a qualified person; ground that is not flagged here is not thereby safe.
Conditions worse than assumed mean stop and replan.

METRES OF TRAIL BY SHARE OF THE LIMIT, each way that may be driven counted
                     0-50 % to allowed   to 100 % over 100 %     closed  exceed
solo, as given: bed 100 kg, no passengers, fuel 30.0 L
  dry                 1 200         30        170          0          0       1

EXCEEDANCES: over what is allowed, refused, or not known
Fell "Top", east
  - cross-slope rating: 63 % found, up to 80 % of the limit (14.1 deg (25.0 %)
    against 17.3 deg (31.2 %)), worst at 232 m; forward, 140 m to 310 m

TIGHTEST PLACES of what is open, 50 m and more from each other
None: nothing is open with a share above 0.

GROUND AND SOURCES
Map       test frame; heights above test datum
Rating    solo, climb rating: none given, so closed
)";
  CHECK(card::text_of(sample_report(), 80) == golden);
}

TEST_CASE("a row of the CSV keeps a hostile name in one cell, shares up and capacities down") {
  const std::string table = card::audit_csv(sample_report());
  const std::string row = table.substr(table.find("\r\n") + 2);
  CHECK(row ==
        "solo,as given,100,,dry,groomed,\"Fell \"\"Top\"\", east\",forward,trail,140.0,310.0,232.5,"
        "500000.2,5100000.0,cross_rating,over what is allowed,,0.6250,0.8000,0.7000,0.2500,0.3125,"
        "tangent,14.037,17.354,K <= rated,rating in the rig sheet,"
        "docs/checks/ratings.md\r\n");
}
