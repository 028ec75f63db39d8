// Orders of a named person: what they close, and until when leave lasts.
#include "passage/order_rules.h"

#include <doctest/doctest.h>

#include "passage/rules.h"

namespace rimehaul::passage {

namespace {

using units::Seconds;

Stay stay_at(const char* entry, double lasting_s) {
  return {*units::parse_instant(entry), Seconds{lasting_s}};
}

Stand stand(const std::vector<Finding>& findings) {
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().check == Check::order);
  return stand_of(findings.front(), 0.7);
}

}  // namespace

TEST_CASE("where nothing was ordered there is nothing to find") {
  CHECK(judge_orders("Low Way", "Tern", stay_at("2026-02-01T08:00:00Z", 60), default_rules())
            .empty());
}

TEST_CASE("an order closes the trail it names, in words, and no other") {
  Rules rules = default_rules();
  rules.orders.trails.push_back({.trail = "Low Way", .hours = {}, .by = "P. Example: slides"});
  const Stay stay = stay_at("2026-02-01T08:00:00Z", 60);
  const std::vector<Finding> found = judge_orders("Low Way", "Tern", stay, rules);
  CHECK(stand(found) == Stand::refused);
  CHECK(found.front().refused == "Low Way is closed by order of P. Example: slides");
  CHECK(judge_orders("High Way", "Tern", stay, rules).empty());
}

TEST_CASE("hours that were ordered hold at both ends, beside the trail's own") {
  Rules rules = default_rules();
  rules.orders.trails.push_back(
      {.trail = "Low Way", .hours = trails::OpenHours{{480}, {600}}, .by = "P. Example"});
  const auto at = [&](const char* entry, double lasting_s) {
    return stand(judge_orders("Low Way", "Tern", stay_at(entry, lasting_s), rules));
  };
  CHECK(at("2026-02-01T08:00:00Z", 60) == Stand::passes);
  CHECK(at("2026-02-01T07:59:59Z", 60) == Stand::refused);
  CHECK(at("2026-02-01T09:59:00Z", 60) == Stand::passes);
  CHECK(at("2026-02-01T09:59:01Z", 60) == Stand::refused);
}

TEST_CASE("a forbidden rig goes nowhere, another does") {
  Rules rules = default_rules();
  rules.orders.rigs.push_back({.rig = "Tern", .by = "P. Example: brake"});
  const Stay stay = stay_at("2026-02-01T08:00:00Z", 60);
  CHECK(stand(judge_orders("Low Way", "Tern", stay, rules)) == Stand::refused);
  CHECK(judge_orders("Low Way", "Teal", stay, rules).empty());
}

TEST_CASE("leave holds to its very second, and what lasts longer is refused with its giver") {
  Rules rules = default_rules();
  rules.orders.leaves.push_back(
      {.until = *units::parse_instant("2026-02-01T09:00:00Z"), .by = "P. Example"});
  const auto at = [&](const char* entry, double lasting_s) {
    return judge_orders("Low Way", "Tern", stay_at(entry, lasting_s), rules);
  };
  CHECK(stand(at("2026-02-01T08:59:00Z", 60)) == Stand::passes);
  CHECK(stand(at("2026-02-01T08:59:00Z", 60.5)) == Stand::refused);
  CHECK(at("2026-02-01T09:00:01Z", 0).front().refused.find("P. Example") != std::string::npos);
  // Where something else closes the leg, its entry counts.
  const Stay entered{*units::parse_instant("2026-02-01T09:00:00Z"), std::nullopt};
  CHECK(stand(judge_orders("Low Way", "Tern", entered, rules)) == Stand::passes);
}

TEST_CASE("a lowered share is that of the site and of every level, never a raised one") {
  Rules rules = default_rules();
  lower_allowed_share(rules, 0.6);
  CHECK(allowed_share_for(rules, "seasoned") == 0.6);
  CHECK(allowed_share_for(rules, "new") == 0.5);
  lower_allowed_share(rules, 0.9);
  CHECK(allowed_share_for(rules, "seasoned") == 0.6);
}

}  // namespace rimehaul::passage
