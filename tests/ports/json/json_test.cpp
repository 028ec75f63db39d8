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

TEST_CASE("the card's JSON says where a leg is exposed and how much of it") {
  card::RouteCard sample = testing::sample_card();
  sample.legs[1].exposed = {{units::Metres{100}, units::Metres{140}},
                            {units::Metres{300}, units::Metres{310}}};
  const json leg = json::parse(canonical_json(sample))["legs"][1];
  CHECK(leg["exposed"][1]["from_m"] == 300.0);
  CHECK(leg["exposed"][1]["to_m"] == 310.0);
  CHECK(leg["exposed_m"] == 50.0);
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
  CHECK(card["legs"][1]["steepest_down"]["found_deg"] == 0.0);
  CHECK(card["legs"][1]["steepest_down"]["up_to_deg"].get<double>() > 1.3);
  CHECK(card["legs"][0]["exposed"].empty());
  CHECK(card["legs"][0]["exposed_m"] == 0.0);
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

TEST_CASE("a refusal tells every leg, the causes and the loads that open, in kilograms, inwards") {
  card::Refusal refusal;
  card::RefusedLeg leg;
  leg.trail = "Spur";
  leg.finding = passage::compare(passage::Check::payload, units::amount(units::Kilograms{240}),
                                 units::amount(units::Kilograms{250}));
  leg.stand = passage::Stand::exceeds;
  leg.findings = {{leg.finding, leg.stand}};
  leg.verdict = passage::Verdict::restricted;
  leg.opens.loads.bed = {{units::Kilograms{0.2}, units::Kilograms{175.9}}};
  leg.opens.loads.both = {
      {{units::Kilograms{0}, units::Kilograms{50}}, {units::Kilograms{0}, units::Kilograms{100}}}};
  leg.opens.snow = {{snow::Wetness::dry, snow::Surface::groomed}};
  refusal.legs = {leg, leg};
  card::RefusalCause cause;
  cause.finding = leg.finding;
  cause.stand = leg.stand;
  cause.places = {0, 1};
  cause.worst = 1;
  cause.where = "on all 2 legs";
  cause.lifts.without_trailer = true;
  cause.lifted_by = {"no trailer"};
  refusal.causes = {cause};
  refusal.nearest = {{"Spur"}, leg.opens, {"bed load from 1 kg to 175 kg"}};
  refusal.other_ways = {refusal.nearest};
  const json read = json::parse(refusal_json(refusal));
  CHECK(read["verdict"] == "restricted");
  const json& obstacle = read["obstacles"][1];
  CHECK(obstacle["verdict"] == "restricted");
  CHECK(obstacle["load_kg"]["bed"] == json::parse(R"([{"from_kg":1.0,"to_kg":175.0}])"));
  CHECK(obstacle["load_kg"]["both"][0]["towed"]["to_kg"] == 100.0);
  CHECK(obstacle["opens"]["snow"][0]["wetness"] == "dry");
  CHECK(obstacle["findings"][0]["check"] == "payload");
  CHECK(read["load_kg"] == obstacle["load_kg"]);
  CHECK(read["causes"][0]["places"][1]["obstacle"] == 1);
  CHECK(read["causes"][0]["worst_obstacle"] == 1);
  CHECK(read["causes"][0]["lifts"]["without_trailer"] == true);
  CHECK(read["nearest_way"]["trails"] == json({"Spur"}));
  CHECK(read["other_ways"][0]["opens_by"] == json({"bed load from 1 kg to 175 kg"}));
}

TEST_CASE("an explanation tells the verdict of the place and of its leg, with loads and decision") {
  card::Explanation explanation;
  explanation.allowed_share = 0.7;
  card::ExplainedWay way;
  way.verdict.verdict = passage::Verdict::open;
  way.leg.binding = passage::kept(passage::Check::payload);
  way.leg.length = units::Metres{300};
  way.leg.verdict.verdict = passage::Verdict::restricted;
  way.leg.verdict.loads.towed = {{units::Kilograms{10}, units::Kilograms{20}}};
  way.leg.verdict.decision = "to drive too near";
  explanation.ways = {way};
  const json read = json::parse(explanation_json(explanation))["ways"][0];
  CHECK(read["verdict"] == "open");
  CHECK(read["load_kg"]["bed"].empty());
  CHECK(read["leg"]["verdict"] == "restricted");
  CHECK(read["leg"]["load_kg"]["towed"][0]["from_kg"] == 10.0);
  CHECK(read["leg"]["decision"] == "to drive too near");
  CHECK(read["leg"]["length_m"] == 300.0);
  CHECK(read["leg"]["binding"]["stand"] == "passes");
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
