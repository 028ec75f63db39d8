#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "card/sample_card.h"
#include "ports/json/answers.h"
#include "ports/json/card_json.h"

namespace rimehaul::ports::json {
namespace {

using nlohmann::json;

TEST_CASE("canonical JSON has sorted keys, no white space, and no negative zero") {
  Object object;
  object.number("b", 0.1).whole("a", -3).text("c", "x \u00FC").number("d", -0.0);
  CHECK(object.bytes() == "{\"a\":-3,\"b\":0.1,\"c\":\"x \u00FC\",\"d\":0.0}");
}

TEST_CASE("what is not known is null and named among the missing, never NaN or infinity") {
  Object object;
  object.number("height_m", std::nan("")).number("share", std::optional<double>{});
  object.number("far_m", std::numeric_limits<double>::infinity()).number("at_m", 2.0);
  const json read = json::parse(object.bytes());
  CHECK(read["height_m"].is_null());
  CHECK(read["share"].is_null());
  CHECK(read["at_m"] == 2.0);
  CHECK(read["missing"] == json({"height_m", "share", "far_m"}));
}

TEST_CASE("bytes that are no UTF-8 do not break the answer") {
  const json read = json::parse(Object{}.text("name", "H\xFCtte").bytes());
  CHECK(read["name"] == "H\uFFFDtte");
}

TEST_CASE("numbers read back exactly as they were") {
  for (const double value : {0.1, 1.0 / 3.0, 5'100'000.123456789, 1e-300, 4.9e-324}) {
    const json read = json::parse(Object{}.number("x", value).bytes());
    CHECK(read["x"].get<double>() == value);
  }
}

TEST_CASE("the card's JSON carries units in its keys, digests, verdicts and what is missing") {
  const json card = json::parse(canonical_json(testing::sample_card()));
  CHECK(card["schema"] == 1);
  CHECK(card["verdict"] == "restricted");
  CHECK(card["legs"][0]["verdict"] == "open");
  CHECK(card["legs"][0]["length_m"] == 811.2);
  CHECK(card["legs"][0]["binding"]["share"] == 0.6101);
  CHECK(card["legs"][0]["steepest_up"]["up_to_deg"].get<double>() > 9.0);
  CHECK(card["legs"][1]["steepest_up"].is_null());
  CHECK(card["legs"][1]["missing"] == json({"steepest_up"}));
  CHECK(card["inputs"][0]["sha256"].get<std::string>().size() == 64);
  CHECK(card["snow"]["states"][1]["wetness"] == "moist");
  CHECK(card["snow"]["weather"]["wind_m_per_s"].is_null());
  CHECK(card["depart_utc"] == "2026-02-01T17:30:00Z");
  CHECK(card["trace"][1]["height_m"].is_null());
  CHECK(card["cautions"].size() == 1);
}

TEST_CASE("the same card gives the same bytes, and any change to it gives others") {
  card::RouteCard card = testing::sample_card();
  const std::string bytes = canonical_json(card);
  CHECK(bytes == canonical_json(testing::sample_card()));
  CHECK(bytes == json::parse(bytes).dump());
  card.legs[0].speed += units::MetresPerSecond{1e-9};
  CHECK(bytes != canonical_json(card));
}

TEST_CASE("a finding that closes for want of knowledge says closed and what is missing") {
  card::Refusal refusal;
  refusal.why = "not known";
  card::RefusedLeg leg;
  leg.trail = "Spur";
  leg.finding = passage::unknown(passage::Check::wind, "the wind");
  leg.remedy = "--wind KMH";
  refusal.legs = {leg};
  const json read = json::parse(refusal_json(refusal));
  CHECK(read["kind"] == "no_route");
  CHECK(read["verdict"] == "closed");
  const json& obstacle = read["obstacles"][0];
  CHECK(obstacle["verdict"] == "closed");
  CHECK(obstacle["finding"]["share"].is_null());
  const auto missing = obstacle["finding"]["missing"].get<std::vector<std::string>>();
  CHECK(std::ranges::count(missing, "the wind") == 1);
  CHECK(obstacle["say_it_by"] == "--wind KMH");
}

TEST_CASE("amounts name their unit in the key; slopes come as tangent and degrees") {
  passage::Finding finding =
      passage::compare(passage::Check::climb_rating, units::amount(units::Slope::from_degrees(10)),
                       units::amount(units::Slope::from_degrees(20)));
  finding.inputs.add("m", units::amount(units::Kilograms{800}), passage::Origin::rig_sheet);
  card::Refusal refusal;
  card::RefusedLeg leg;
  leg.finding = finding;
  refusal.legs = {leg};
  const json read = json::parse(refusal_json(refusal))["obstacles"][0]["finding"];
  CHECK(std::abs(read["demand_deg"].get<double>() - 10.0) < 1e-12);
  CHECK(std::abs(read["capacity_tangent"].get<double>() - 0.363970234266) < 1e-12);
  CHECK(read["inputs"][0]["value_kg"] == 800.0);
  CHECK(read["inputs"][0]["origin"] == "rig_sheet");
}

TEST_CASE("a site report tells its faults by file, place, problem, remedy and weight") {
  card::SiteReport report;
  report.site = "Test Fell";
  report.faults = {{"a.gpkg", "trail X", "looks odd", "look", base::Weight::doubt}};
  const json read = json::parse(site_report_json(report));
  CHECK(read["usable"] == true);
  CHECK(read["faults"][0]["weight"] == "doubt");
  CHECK(read["faults"][0]["remedy"] == "look");
}

}  // namespace
}  // namespace rimehaul::ports::json
