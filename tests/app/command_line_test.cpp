#include <doctest/doctest.h>

#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::route_words;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("help is an answer: it ends with 0, on standard output, with examples") {
  for (const char* verb : {"new", "check", "route", "explain"}) {
    const Ran ran = run_command({verb, "--help"});
    CHECK(ran.status == Status::yes);
    CHECK(says(ran.out, "Examples:"));
    CHECK(says(ran.out, std::string{"rimehaul "} + verb));
    CHECK(ran.err.empty());
  }
  CHECK(run_command({"--help"}).status == Status::yes);
  CHECK(says(run_command({"--version"}).out, "rimehaul "));
}

TEST_CASE("wrong usage ends with 2 and is said on standard error alone") {
  const TinySite site;
  const std::vector<std::vector<std::string>> wrong{
      {},
      {"drive"},
      {"route"},
      {"route", site.folder(), "--rig", "solo"},
      route_words(site, {"--bulletin", "6"}),
      route_words(site, {"--visibility", "nan"}),
      route_words(site, {"--visibility", "-1"}),
      route_words(site, {"--visibility", "far"}),
      route_words(site, {"--prefer", "shortest"}),
      route_words(site, {"--alternatives", "4"}),
      route_words(site, {"--depart", "25:00"}),
      route_words(site, {"--now", "today"}),
      route_words(site, {"--via", "Base"}),
      route_words(site, {"--towed-load", "50"}),
      route_words(site, {"--fuel", "41"}),
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--trail", "Spur"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--trail", "Spur", "--at",
       "9999"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--point", "1,2"},
  };
  for (const auto& words : wrong) {
    CAPTURE(words.size());
    CAPTURE(words.empty() ? "" : words.back());
    const Ran ran = run_command(words);
    CHECK(ran.status == Status::wrong_usage);
    CHECK(ran.out.empty());
    CHECK_FALSE(ran.err.empty());
  }
}

TEST_CASE("a name that is not there is answered with the nearest that is") {
  const TinySite site;
  struct Slip {
    std::vector<std::string> words;
    std::string hint;
  };
  const std::vector<std::string> explain{"explain", site.folder(), "--snow", "dry",
                                         "--at",    "10",          "--rig",  "solo"};
  std::vector<std::string> trail = explain;
  trail.insert(trail.end(), {"--trail", "Low Wai"});
  const std::vector<Slip> slips{
      {{"route", site.folder(), "--rig", "sollo", "--snow", "dry", "--load", "0", "--from", "Base",
        "--to", "Top"},
       "\"solo\""},
      {{"route", site.folder(), "--rig", "solo", "--snow", "dryy", "--load", "0", "--from", "Base",
        "--to", "Top"},
       "\"dry\""},
      {{"route", site.folder(), "--rig", "solo", "--snow", "dry", "--load", "0", "--from", "Base",
        "--to", "Topp"},
       "\"Top\""},
      {trail, "\"Low Way\""},
  };
  for (const Slip& slip : slips) {
    const Ran ran = run_command(slip.words);
    CAPTURE(ran.err);
    CHECK(ran.status == Status::wrong_usage);
    CHECK(says(ran.err, "did you mean"));
    CHECK(says(ran.err, slip.hint));
  }
}

TEST_CASE("a name like no other is answered with all that there are") {
  const TinySite site;
  const Ran ran = run_command({"route", site.folder(), "--rig", "zzzzzzzz", "--snow", "dry",
                               "--load", "0", "--from", "Base", "--to", "Top"});
  CHECK(ran.status == Status::wrong_usage);
  CHECK(says(ran.err, "solo, towing"));
}

TEST_CASE("a rig with a trailer asks what is on it") {
  const TinySite site;
  const Ran ran = run_command({"route", site.folder(), "--rig", "towing", "--snow", "dry", "--load",
                               "0", "--from", "Base", "--to", "Top"});
  CHECK(ran.status == Status::wrong_usage);
  CHECK(says(ran.err, "--towed-load"));
}

}  // namespace
}  // namespace rimehaul::app
