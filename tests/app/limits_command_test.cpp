// The verbs `limits` and `rig` from the command line, on the demo site and on one that is tiny.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>

#include "app/tiny_site.h"
#include "told.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

const std::string kRoot{RIMEHAUL_ROOT};

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::string bytes_of(const std::string& path) {
  std::ifstream stream{path, std::ios::binary};
  REQUIRE(stream.good());
  return {std::istreambuf_iterator<char>{stream}, std::istreambuf_iterator<char>{}};
}

std::size_t longest_line(const std::string& text) {
  std::istringstream lines{text};
  std::size_t longest = 0;
  for (std::string line; std::getline(lines, line);) {
    longest = std::max(longest, line.size());
  }
  return longest;
}

}  // namespace

TEST_CASE("the outline in the docs is the one that the program draws") {
  const TinySite scratch;
  const std::string svg = scratch.path("limits.svg");
  const std::string pdf = scratch.path("limits.pdf");
  const Ran ran = run_command({"limits", kRoot + "/routes/marrowfell", "--rig", "Broadfoot",
                               "--load", "100", "--surface", "groomed", "--now",
                               "2026-02-01T16:00:00Z", "--svg", svg, "--pdf", pdf});
  REQUIRE(ran.status == Status::yes);
  // Compared whole, and not printed: it is long.
  const bool same = bytes_of(svg) == bytes_of(kRoot + "/docs/limits-broadfoot.svg");
  CHECK_MESSAGE(same,
                "draw it anew: rimehaul limits routes/marrowfell --rig Broadfoot --load 100 "
                "--surface groomed --now 2026-02-01T16:00:00Z --svg docs/limits-broadfoot.svg");
  CHECK(std::regex_search(testing::told_of(bytes_of(pdf), "pdfinfo"), std::regex{"Tagged: +yes"}));
}

TEST_CASE("help for limits and rig is an answer with examples") {
  for (const char* verb : {"limits", "rig"}) {
    const Ran ran = run_command({verb, "--help"});
    CHECK(ran.status == Status::yes);
    CHECK(says(ran.out, "Examples:"));
    CHECK(says(ran.out, std::string{"rimehaul "} + verb));
  }
}

TEST_CASE("limits are told by surface, snow and load, with and without the trailer") {
  const TinySite site;
  const Ran ran = run_command({"limits", site.folder(), "--rig", "towing", "--load", "20"});
  REQUIRE(ran.status == Status::yes);
  CHECK(says(ran.out, "towing"));
  CHECK(says(ran.out, "without a trailer, empty"));
  CHECK(says(ran.out, "load as given"));
  CHECK(says(ran.out, "full, as far as the allowed share"));
  CHECK(says(ran.out, "closed: towing in wet snow"));
  CHECK(says(ran.out, "people on the hill outrank it"));
  CHECK(says(ran.out, "ESTIMATES IN USE"));
  CHECK(longest_line(ran.out) <= 80);
}

TEST_CASE("limits as JSON bear units, the binding check and the outline") {
  const TinySite site;
  const Ran ran = run_command({"limits", site.folder(), "--rig", "solo", "--snow", "dry",
                               "--surface", "groomed", "--json", "-"});
  REQUIRE(ran.status == Status::yes);
  for (const char* key : {"\"kind\":\"limits\"", "\"steepest_deg\":", "\"steepest_percent\":",
                          "\"envelope\":", "\"cross_deg\":", "\"binding\":", "\"sha256\":"}) {
    CAPTURE(key);
    CHECK(says(ran.out, key));
  }
  CHECK(!says(ran.out, "\"fresh\""));
}

TEST_CASE("limits end with 1 where the rig is closed in all snow asked for") {
  const TinySite site;
  const Ran ran = run_command({"limits", site.folder(), "--rig", "towing", "--snow", "slush"});
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "closed: towing in wet snow"));
}

TEST_CASE("a snow class or a rig that is not there comes with the nearest one that is") {
  const TinySite site;
  const Ran snow = run_command({"limits", site.folder(), "--rig", "solo", "--snow", "moits"});
  CHECK(snow.status == Status::wrong_usage);
  CHECK(says(snow.err, "did you mean \"moist\"?"));
  const Ran rig = run_command({"rig", site.folder(), "--rig", "sole"});
  CHECK(rig.status == Status::wrong_usage);
  CHECK(says(rig.err, "did you mean \"solo\"?"));
}

TEST_CASE("the rig sheet tells masses, tip angles and ratings, and is drawn") {
  const std::string demo = kRoot + "/routes/marrowfell";
  const TinySite scratch;
  const std::string pdf = scratch.path("rig.pdf");
  const std::string svg = scratch.path("rig.svg");
  const Ran ran = run_command({"rig", demo, "--rig", "Broadfoot with cabin", "--load", "40",
                               "--towed-load", "60", "--pdf", pdf, "--svg", svg});
  REQUIRE(ran.status == Status::yes);
  CHECK(says(ran.out, "TRAILER Cabin Trailer"));
  CHECK(says(ran.out, "Tips over"));
  CHECK(says(ran.out, "in force: climb 15.0 deg (26.7 %), limit set by the site"));
  CHECK(says(ran.out, "tongue load on level ground: 38.4 kg on 120.0 kg rated"));
  CHECK(longest_line(ran.out) <= 80);
  CHECK(std::regex_search(testing::told_of(bytes_of(pdf), "pdfinfo"), std::regex{"Tagged: +yes"}));
  CHECK(says(bytes_of(svg), "<svg"));

  const Ran json = run_command({"rig", demo, "--rig", "Broadfoot", "--json", "-"});
  CHECK(json.status == Status::yes);
  CHECK(says(json.out, "\"kind\":\"rig_sheet\""));
  CHECK(says(json.out, "\"static_tip_deg\":"));
}

TEST_CASE("a rig sheet with a rating overstepped ends with 1 and says so") {
  const Ran ran =
      run_command({"rig", kRoot + "/routes/marrowfell", "--rig", "Broadfoot", "--load", "210"});
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "OVERLOADED"));
}

}  // namespace rimehaul::app
