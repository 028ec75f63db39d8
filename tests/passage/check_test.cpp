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

TEST_CASE("a rig without a trailer is shown the formula without one, where there are two") {
  CHECK(formula_of(Check::climb_traction, Towing::no) ==
        "max(0, g m_c along(G_c)) + f_c g m_c n_c <= mu phi g m_c n_c");
  CHECK(formula_of(Check::climb_traction, Towing::yes) == facts_of(Check::climb_traction).formula);
  for (int index = 0; index < kCheckCount; ++index) {
    const auto check = static_cast<Check>(index);
    const CheckFacts& facts = facts_of(check);
    CHECK(formula_of(check, Towing::yes) == facts.formula);
    CHECK(formula_of(check, Towing::no) == (facts.solo.empty() ? facts.formula : facts.solo));
    CHECK_FALSE(formula_of(check, Towing::no).empty());
  }
  CHECK(formula_of(Check::wind, Towing::no) == "wind <= most wind");
}

TEST_CASE("of the day are the checks that a report or an option can still answer, and no others") {
  std::set<std::string_view> of_the_day;
  for (int index = 0; index < kCheckCount; ++index) {
    const auto check = static_cast<Check>(index);
    if (is_of_the_day(check)) {
      of_the_day.insert(facts_of(check).key);
    }
  }
  CHECK(of_the_day == std::set<std::string_view>{"avalanche", "grooming", "mark", "rain",
                                                 "snow_known", "tow_out", "visibility", "wind"});
}

TEST_CASE("a rig tows when it has a trailer, loaded or not") {
  rig::Rig rig;
  CHECK(towing_of(rig) == Towing::no);
  rig.load.towed = units::Kilograms{300};
  CHECK(towing_of(rig) == Towing::no);
  rig.trailer = rig::Trailer{};
  CHECK(towing_of(rig) == Towing::yes);
}

}  // namespace rimehaul::passage
