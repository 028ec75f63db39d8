// The verb `override`: who may order what, and that every command drives by it.
#include <doctest/doctest.h>

#include "app/tiny_site.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// The tiny site with people who decide and one who does not.
void add_people(const TinySite& site) {
  site.write("people.toml",
             "schema = 1\n[[person]]\nname = \"P. Example\"\nroles = [\"planner\"]\n"
             "[[person]]\nname = \"O. Example\"\nroles = [\"officer\"]\n"
             "[[person]]\nname = \"D. Example\"\nroles = [\"driver\"]\n");
  site.change("site.toml",
              {"snow = \"snow.toml\"", "snow = \"snow.toml\"\npeople = \"people.toml\""});
}

Ran ordered(const TinySite& site, std::vector<std::string> what,
            const std::string& by = "P. Example") {
  std::vector<std::string> words{"override", site.folder(), "--as", by, "--reason", "wet slides"};
  words.insert(words.end(), what.begin(), what.end());
  return run_command(words);
}

/// A route in the snow of the site's own report.
Ran route(const TinySite& site, const std::string& rig = "solo",
          const std::vector<std::string>& more = {}) {
  std::vector<std::string> words{"route", site.folder(), "--rig", rig,    "--load",
                                 "50",    "--from",      "Base",  "--to", "Top"};
  words.insert(words.end(), more.begin(), more.end());
  return run_command(words);
}

}  // namespace

TEST_CASE("a trail closed by order is driven by nobody until the order is taken back") {
  const TinySite site;
  add_people(site);
  const Ran before = route(site);
  REQUIRE(before.status == Status::yes);
  CHECK(ordered(site, {"--trail", "Low Way"}).status == Status::yes);
  CHECK(ordered(site, {"--trail", "High Way", "--until", "13:00"}).status == Status::yes);
  const Ran closed = route(site);
  CHECK(closed.status == Status::honest_no);
  CHECK(says(closed.out, "by order of P. Example: wet slides"));
  const Ran explained =
      run_command({"explain", site.folder(), "--rig", "solo", "--trail", "Low Way", "--at", "20"});
  CHECK(says(explained.out, "order of a named person"));
  CHECK(ordered(site, {"--end", "1"}).status == Status::yes);
  const Ran again = route(site);
  CHECK(again.status == Status::yes);
  CHECK(says(again.out, "Low Way"));
  // The other ran out by itself; what was said of the snow lasts until 14:00.
  CHECK(ordered(site, {"--trail", "Low Way"}).status == Status::yes);
  CHECK(route(site, "solo", {"--depart", "13:00"}).status == Status::honest_no);
  const Ran later = route(site, "solo", {"--depart", "13:01"});
  CHECK(later.status == Status::yes);
  CHECK(says(later.out, "High Way"));
}

TEST_CASE("hours that were ordered shut a trail outside them") {
  const TinySite site;
  add_people(site);
  REQUIRE(ordered(site, {"--trail", "Low Way", "--hours", "10:00 to 11:00"}).status == Status::yes);
  REQUIRE(ordered(site, {"--trail", "High Way"}).status == Status::yes);
  CHECK(route(site, "solo", {"--depart", "09:59"}).status == Status::honest_no);
  CHECK(route(site, "solo", {"--depart", "10:00"}).status == Status::yes);
  CHECK(route(site, "solo", {"--depart", "11:00"}).status == Status::honest_no);
}

TEST_CASE("a rig forbidden by order stays, another one drives") {
  const TinySite site;
  add_people(site);
  REQUIRE(ordered(site, {"--rig", "solo"}).status == Status::yes);
  CHECK(ordered(site, {"--rig", "towing"}).status == Status::yes);  // asks for no load
  CHECK(ordered(site, {"--end", "2"}).status == Status::yes);
  CHECK(route(site).status == Status::honest_no);
  CHECK_FALSE(says(route(site, "towing").out, "forbidden by order"));
}

TEST_CASE("a lower share is the one that is allowed") {
  const TinySite site;
  add_people(site);
  REQUIRE(says(route(site).out, "70 %"));
  REQUIRE(ordered(site, {"--share", "0.65"}).status == Status::yes);
  const Ran lowered = route(site);
  CHECK(says(lowered.out, "65 %"));
  REQUIRE(ordered(site, {"--share", "0.9"}).status == Status::yes);
  CHECK(says(route(site).out, "65 %"));
}

TEST_CASE("a rule is tightened at will, and loosened only until a time") {
  const TinySite site;
  add_people(site);
  site.change("rules.toml", {"most_wind_kmh = 60", "most_wind_kmh = 20"});
  REQUIRE(route(site).status == Status::yes);
  REQUIRE(ordered(site, {"--rule", "most_wind_kmh = 10"}).status == Status::yes);
  CHECK(route(site).status == Status::honest_no);
  const Ran endless = ordered(site, {"--rule", "most_wind_kmh = 30"});
  CHECK(endless.status == Status::wrong_usage);
  CHECK(says(endless.err, "loosens the site's rules; say with --until when that runs out"));
  REQUIRE(ordered(site, {"--rule", "most_wind_kmh = 30", "--until", "10:00"}).status ==
          Status::yes);
  const Ran loosened = route(site);
  CHECK(loosened.status == Status::yes);
  // Whoever would still be under way by then does not set out by that leave.
  CHECK(route(site, "solo", {"--depart", "10:00"}).status == Status::honest_no);
  CHECK(route(site, "solo", {"--depart", "10:01"}).status == Status::honest_no);
}

TEST_CASE("a rule between a looser and a tighter order needs an end: it would outlast the looser") {
  const TinySite site;
  add_people(site);
  REQUIRE(ordered(site, {"--rule", "most_wind_kmh = 10"}).status == Status::yes);
  REQUIRE(ordered(site, {"--rule", "most_wind_kmh = 50", "--until", "10:00"}).status ==
          Status::yes);
  CHECK(says(ordered(site, {"--rule", "most_wind_kmh = 30"}).err, "say with --until"));
  CHECK(ordered(site, {"--rule", "most_wind_kmh = 10"}).status == Status::yes);
}

TEST_CASE("a rule looser than the file's needs an end, whatever looser one is in force") {
  const TinySite site;
  add_people(site);
  REQUIRE(ordered(site, {"--rule", "most_wind_kmh = 90", "--until", "10:00"}).status ==
          Status::yes);
  CHECK(says(ordered(site, {"--rule", "most_wind_kmh = 70"}).err, "say with --until"));
}

TEST_CASE("no order lifts what belongs to physics, to a rating or to a measurement") {
  const TinySite site;
  add_people(site);
  for (const char* rule :
       {"confidence_k = 2", "roll_over_reserve = 0.7", "reaction_s = 1", "allowed_share = 0.9",
        "driver.new.allowed_share = 0.7", "bulletin.level_3.keep_off_m = 0"}) {
    CAPTURE(rule);
    const Ran refused = ordered(site, {"--rule", rule, "--until", "10:00"});
    CHECK(refused.status == Status::bad_input);
  }
  CHECK(says(run_command({"override", site.folder()}).out, "NO ORDER IS IN FORCE"));
}

TEST_CASE("only who may decide gives orders, with a reason, one at a time") {
  const TinySite site;
  const Ran nobody = ordered(site, {"--trail", "Low Way"});
  CHECK(nobody.status == Status::wrong_usage);
  CHECK(says(nobody.err, "this site lists nobody"));
  add_people(site);
  CHECK(says(ordered(site, {"--trail", "Low Way"}, "D. Example").err,
             "D. Example is neither planner nor officer"));
  CHECK(says(ordered(site, {"--trail", "Low Way"}, "P. Exampel").err, "did you mean"));
  CHECK(ordered(site, {"--trail", "Low Way"}, "O. Example").status == Status::yes);
  CHECK(says(ordered(site, {"--trail", "Low Way", "--rig", "solo"}).err, "give them one by one"));
  CHECK(says(ordered(site, {}).err, "nothing is ordered; say --trail"));
  CHECK(says(ordered(site, {"--trail", "No Way"}).err, "no trail is called"));
  CHECK(says(ordered(site, {"--end", "7"}).err, "no order 7 is in force"));
  CHECK(says(ordered(site, {"--rig", "solo", "--until", "08:00"}).err, "is over already"));
  CHECK(says(run_command({"override", site.folder(), "--rig", "solo"}).err,
             "nobody orders it; say --as PERSON"));
  CHECK(says(run_command({"override", site.folder(), "--as", "P. Example", "--rig", "solo"}).err,
             "no reason is given"));
}

TEST_CASE("an order for a trail that the site has no more stops every command, with its number") {
  const TinySite site;
  add_people(site);
  REQUIRE(ordered(site, {"--trail", "Spur"}).status == Status::yes);
  site.change("trails.geojson", {"\"name\":\"Spur\"", "\"name\":\"Spoor\""});
  const Ran lost = route(site);
  CHECK(lost.status == Status::bad_input);
  CHECK(says(lost.err, "override 1: this site has no trail 'Spur'; take it back"));
}

}  // namespace rimehaul::app
