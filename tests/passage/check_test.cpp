// Every check has its name, formula, source and page.
#include <doctest/doctest.h>

#include <filesystem>
#include <set>
#include <string>

#include "base/require.h"
#include "passage/check.h"

namespace rimehaul::passage {

TEST_CASE("every check has facts of its own and a page that exists") {
  std::set<std::string_view> keys;
  for (int index = 0; index < kCheckCount; ++index) {
    const CheckFacts& facts = facts_of(static_cast<Check>(index));
    INFO(std::string{facts.key});
    CHECK(keys.insert(facts.key).second);
    CHECK_FALSE(facts.title.empty());
    CHECK_FALSE(facts.formula.empty());
    CHECK_FALSE(facts.source.empty());
    CHECK(std::filesystem::exists(std::string{RIMEHAUL_ROOT} + "/" + std::string{facts.page}));
  }
  CHECK_THROWS_AS(static_cast<void>(facts_of(static_cast<Check>(kCheckCount))), base::OurFault);
}

TEST_CASE("facts stand in the order of the checks") {
  CHECK(facts_of(Check::heights_known).key == "heights_known");
  CHECK(facts_of(Check::trailer_rating).key == "trailer_rating");
  CHECK(facts_of(Check::climb_traction).key == "climb_traction");
  CHECK(facts_of(Check::engine_power).key == "engine_power");
  CHECK(facts_of(Check::parking_hold).key == "parking_hold");
  CHECK(facts_of(Check::stopping).key == "stopping");
  CHECK(facts_of(Check::trailer_side_slip).key == "trailer_side_slip");
  CHECK(facts_of(Check::hitch_vertical).key == "hitch_vertical");
  CHECK(facts_of(Check::seats).key == "seats");
  CHECK(facts_of(Check::off_tracking).key == "off_tracking");
  CHECK(facts_of(Check::visibility).key == "visibility");
  CHECK(facts_of(Check::wind).key == "wind");
  CHECK(facts_of(Check::mark).key == "mark");
  CHECK(static_cast<int>(Check::mark) + 1 == kCheckCount);
}

}  // namespace rimehaul::passage
