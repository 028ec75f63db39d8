// What was said for today, and by whom, counts for today and for somebody.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "app/tiny_site.h"
#include "app/workplace.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::route_words;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// A route or an explanation on the demo site, by the noon report.
std::vector<std::string> by_noon_report(const std::string& verb, const std::string& depart) {
  return {verb,
          "routes/marrowfell",
          "--rig",
          "Broadfoot",
          "--load",
          "100",
          "--now",
          "2026-02-01T21:40:00Z",
          "--depart",
          depart,
          "--snow-report",
          "routes/marrowfell/snow-noon.toml"};
}

}  // namespace

TEST_CASE("blanks alone are nobody's name") {
  const TinySite site;
  const Ran ran = run_command(route_words(site, {"--permitted-by", "  "}));
  CHECK(ran.status == Status::wrong_usage);
  CHECK(says(ran.err, "a name of blanks alone is nobody's"));
  CHECK(run_command(route_words(site, {"--permitted-by", "N. Example"})).status == Status::yes);
}

TEST_CASE("a report that was named says nothing of the weather or the trails once it has run out") {
  const testing::Workplace workplace;
  std::vector<std::string> words = by_noon_report("explain", "16:00");
  words.insert(words.end(), {"--trail", "Shed Lane", "--at", "120", "--direction", "forward"});
  const Ran late = run_command(words);
  for (const char* check :
       {"visibility", "wind", "rain", "tow-out rig", "setting after grooming"}) {
    CAPTURE(check);
    CHECK(says(late.out, std::string{check} + ": not known, so closed"));
  }
  words[9] = "13:00";
  const Ran in_time = run_command(words);
  CHECK(says(in_time.out, "visibility: passes"));
  CHECK(says(in_time.out, "tow-out rig: passes"));
}

TEST_CASE("snow taken for planning with the report's weather does not outlast the report") {
  const testing::Workplace workplace;
  const auto ask = [](const std::string& depart, const std::vector<std::string>& more) {
    std::vector<std::string> words{"route",    "routes/marrowfell",
                                   "--rig",    "Broadfoot",
                                   "--load",   "100",
                                   "--snow",   "dry",
                                   "--now",    "2026-02-01T17:00:00Z",
                                   "--from",   "Cable House",
                                   "--to",     "Fell Lodge",
                                   "--depart", depart};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  };
  CHECK(ask("10:30", {}).status == Status::yes);
  const Ran late = ask("10:50", {});
  CHECK(late.status == Status::honest_no);
  CHECK(says(late.out, "not known: snow at this"));
  CHECK_FALSE(says(late.out, "Opens by  snow"));
  // The report still tells of trails and marks, whatever is said of the weather.
  CHECK(ask("10:50", {"--visibility", "400", "--wind", "18", "--rain", "no", "--bulletin", "2"})
            .status == Status::honest_no);
}

TEST_CASE("a load over a rating is offered as a remedy for nothing") {
  const testing::Workplace workplace;
  const Ran ran = run_command({"route",        "routes/marrowfell",
                               "--rig",        "Broadfoot with cabin",
                               "--load",       "50",
                               "--towed-load", "100",
                               "--passengers", "2",
                               "--snow",       "moist",
                               "--visibility", "400",
                               "--bulletin",   "2",
                               "--wind",       "18",
                               "--now",        "2026-02-01T17:00:00Z",
                               "--from",       "Cable House",
                               "--to",         "Fell Lodge"});
  REQUIRE(ran.status == Status::honest_no);
  CHECK(says(ran.out, "climb traction"));
  CHECK_FALSE(says(ran.out, "to 200 kg"));
}

TEST_CASE("the GPX of a way that somebody permits says so, and that it is restricted") {
  const testing::Workplace workplace;
  const auto gpx_to = [](const std::string& station) {
    const Ran ran =
        run_command({"route", "routes/marrowfell", "--rig", "Broadfoot", "--load", "100", "--snow",
                     "dry", "--now", "2026-02-01T17:00:00Z", "--from", "Midway", "--to", station,
                     "--permitted-by", "N. Example", "--gpx", "way.gpx"});
    REQUIRE(ran.status == Status::yes);
    std::ifstream file{"way.gpx"};
    return std::string{std::istreambuf_iterator<char>{file}, {}};
  };
  CHECK(says(gpx_to("Crow Top"), "Verdict: restricted, permitted by N. Example."));
  CHECK(says(gpx_to("Fell Lodge"), "Verdict: open."));
}

}  // namespace rimehaul::app
