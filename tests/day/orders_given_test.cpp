// Orders from the records into the rules: which hold, and what each of them does.
#include "day/orders_given.h"

#include <doctest/doctest.h>

#include "base/require.h"
#include "kept_in_memory.h"

namespace rimehaul::day {

namespace {

units::Instant at(const char* text) {
  return *units::parse_instant(text);
}

Override order(OrderKind kind, std::string subject, std::string value = "") {
  return {.number = 1,
          .kind = key_of(kind),
          .subject = std::move(subject),
          .value = std::move(value),
          .reason = "wet slides",
          .expires = at("2026-02-01T12:00:00Z"),
          .allowed = {at("2026-02-01T06:00:00Z"), "P. Example", "planner"}};
}

}  // namespace

TEST_CASE("an order holds to its very last second, and no longer once it was taken back") {
  testing::KeptInMemory records;
  records.given.push_back({order(OrderKind::close_trail, "Low Way"), 1});
  CHECK(orders_in_force(records, at("2026-02-01T12:00:00Z")).size() == 1);
  CHECK(orders_in_force(records, at("2026-02-01T12:00:01Z")).empty());
  records.ended.push_back({{.number = 1, .override_number = 2, .reason = "", .ended = {}}, 2});
  CHECK(orders_in_force(records, at("2026-02-01T08:00:00Z")).size() == 1);
  records.ended.push_back({{.number = 2, .override_number = 1, .reason = "", .ended = {}}, 3});
  CHECK(orders_in_force(records, at("2026-02-01T08:00:00Z")).empty());
}

TEST_CASE("what holds until it is taken back holds in a thousand years") {
  testing::KeptInMemory records;
  Override lasting = order(OrderKind::close_trail, "Low Way");
  lasting.expires = kUntilTakenBack;
  records.given.push_back({lasting, 1});
  CHECK(orders_in_force(records, at("3026-02-01T12:00:00Z")).size() == 1);
  CHECK(units::text_of(kUntilTakenBack) == "9999-12-31T23:59:59Z");
}

TEST_CASE("each kind of order does to the rules what it says, with its giver and reason") {
  passage::Rules rules = passage::default_rules();
  put_in_force(order(OrderKind::close_trail, "Low Way"), rules);
  put_in_force(order(OrderKind::trail_hours, "High Way", "08:00 to 12:00"), rules);
  put_in_force(order(OrderKind::forbid_rig, "Tern"), rules);
  put_in_force(order(OrderKind::allowed_share, "", "0.6"), rules);
  REQUIRE(rules.orders.trails.size() == 2);
  CHECK(rules.orders.trails[0].trail == "Low Way");
  CHECK_FALSE(rules.orders.trails[0].hours.has_value());
  CHECK(rules.orders.trails[0].by == "P. Example: wet slides");
  CHECK(rules.orders.trails[1].hours == trails::OpenHours{{480}, {720}});
  REQUIRE(rules.orders.rigs.size() == 1);
  CHECK(rules.orders.rigs[0].rig == "Tern");
  CHECK(passage::allowed_share_for(rules, "seasoned") == 0.6);
}

TEST_CASE("an order that says nothing its kind could mean is our fault, never let pass") {
  passage::Rules rules = passage::default_rules();
  CHECK_THROWS_AS(put_in_force(order(OrderKind::trail_hours, "Low Way", "later"), rules),
                  base::OurFault);
  CHECK_THROWS_AS(put_in_force(order(OrderKind::allowed_share, "", "1.5"), rules), base::OurFault);
  CHECK_THROWS_AS(put_in_force(order(OrderKind::rule, "", "setback_m = 2"), rules), base::OurFault);
  Override unknown = order(OrderKind::close_trail, "Low Way");
  unknown.kind = "open_trail";
  CHECK_THROWS_AS(put_in_force(unknown, rules), base::OurFault);
}

TEST_CASE("hours and shares are read as they are written, and nothing else is") {
  const auto hours = parse_hours("08:00 to 12:30");
  REQUIRE(hours.has_value());
  CHECK(text_of(*hours) == "08:00 to 12:30");
  for (const char* none : {"", "08:00", "08:00 - 12:00", "12:00 to 08:00", "08:00 to 08:00",
                           "08:00 to 25:00", "08:00 to 12:00 "}) {
    CAPTURE(none);
    CHECK_FALSE(parse_hours(none).has_value());
  }
  CHECK(parse_share("0.6") == 0.6);
  CHECK(parse_share("1") == 1.0);
  for (const char* none : {"", "0", "-0.1", "1.01", "0.6x", "nan", "60 %", "inf"}) {
    CAPTURE(none);
    CHECK_FALSE(parse_share(none).has_value());
  }
}

TEST_CASE("every kind of order is named by its key") {
  for (const OrderKind kind : {OrderKind::close_trail, OrderKind::trail_hours,
                               OrderKind::forbid_rig, OrderKind::allowed_share, OrderKind::rule}) {
    CHECK(order_kind_named(key_of(kind)) == kind);
  }
  CHECK_FALSE(order_kind_named("close trail").has_value());
}

}  // namespace rimehaul::day
