#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "app/command_line.h"
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
  for (const std::string& verb : CommandLine{}.verb_names()) {
    const Ran ran = run_command({verb, "--help"});
    CHECK(ran.status == Status::yes);
    CHECK(says(ran.out, "Examples:"));
    CHECK(says(ran.out, "rimehaul " + verb));
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
      route_words(site, {"--arrive-by", "25:00"}),
      route_words(site, {"--arrive-by", "11:00", "--depart", "10:00"}),
      route_words(site, {"--late", "-1"}),
      route_words(site, {"--return-load", "50"}),
      route_words(site, {"--now", "today"}),
      route_words(site, {"--via", "Base"}),
      route_words(site, {"--towed-load", "50"}),
      route_words(site, {"--fuel", "41"}),
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--trail", "Spur"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--trail", "Spur", "--at",
       "9999"},
      {"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--point", "1,2"},
      {"snow", site.folder()},
      {"snow", site.folder(), "--trail", "Spur", "--at", "9999"},
      {"snow", site.folder(), "--point", "1,2"},
      {"snow", site.folder(), "--trail", "Spur", "--at", "10", "--keep"},
      {"snow", site.folder(), "--trail", "Spur", "--at", "10", "--as", "N. Example"},
      {"field-check", site.folder(), "--grade", "2"},
      {"field-check", site.folder(), "--heading", "361"},
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

/// What is said of a command line that is wrong, in one line.
std::string line_about(const std::vector<std::string>& words) {
  const Ran ran = run_command(words);
  CHECK(ran.status == Status::wrong_usage);
  CHECK(ran.out.empty());
  CHECK(std::ranges::count(ran.err, '\n') == 1);
  return ran.err;
}

TEST_CASE(
    "commands, options and words of a closed set are answered with the nearest, in one line") {
  struct Slip {
    std::vector<std::string> words;
    std::string hint;
  };
  const TinySite site;
  const std::string s = site.folder();
  for (const Slip& slip : std::vector<Slip>{
           {{"rout", s}, "no command is called \"rout\"; did you mean \"route\"?"},
           {{"route", s, "--lod", "5"},
            "no option of route is called \"--lod\"; did you mean \"--load\"?"},
           {{"route", s, "--visiblity=5"}, "did you mean \"--visibility\"?"},
           {{"check", s, "-json", "-"}, "did you mean \"--json\"?"},
           {{"--hlep"}, "did you mean \"--help\"?"},
           {route_words(site, {"--surface", "gromed"}), "did you mean \"groomed\"?"},
           {route_words(site, {"--prefer", "safe"}), "did you mean \"safest\"?"},
           {route_words(site, {"--rain", "yess"}), "did you mean \"yes\"?"},
           {route_words(site, {"--via", "Huta"}), "did you mean \"Hut\"?"},
           {{"audit", s, "--snow", "mosit"}, "did you mean \"moist\"?"},
           {{"audit", s, "--rig", "towin"}, "did you mean \"towing\"?"},
           {{"board", s, "--rig", "solo", "--surface", "al"}, "did you mean \"all\"?"},
           {{"board", s, "--rig", "solo", "--rows", "trials"}, "did you mean \"trails\"?"},
           {{"limits", s, "--rig", "sol"}, "did you mean \"solo\"?"},
           {{"slopes", s, "--into", s, "--layer", "aspct"}, "did you mean \"aspect\"?"},
           {{"rig", s, "--rig", "olo"}, "did you mean \"solo\"?"},
           {{"explain", s, "--rig", "solo", "--trail", "Spur", "--at", "1", "--direction",
             "foward"},
            "did you mean \"forward\"?"}}) {
    const std::string line = line_about(slip.words);
    CAPTURE(line);
    CHECK(says(line, slip.hint));
  }
}

TEST_CASE("help may stand as a word before the command") {
  const Ran all = run_command({"help"});
  CHECK(all.status == Status::yes);
  CHECK(all.out == run_command({"--help"}).out);
  const Ran board = run_command({"help", "board"});
  CHECK(board.status == Status::yes);
  CHECK(board.out == run_command({"board", "--help"}).out);
  CHECK(says(line_about({"help", "bord"}), "did you mean \"board\"?"));
}

TEST_CASE("what is missing is told all at once, and how to write it") {
  CHECK(says(line_about({}), "There is new, check, route"));
  CHECK(says(line_about({"helpp", "x"}), "; see rimehaul --help"));
  CHECK(says(line_about({"route", "x", "--rig", "solo"}),
             "route needs --from STATION, --to STATION and --load KG"));
  CHECK(says(line_about({"route", "x", "--load"}), "write --load KG, once"));
  CHECK(says(line_about({"route", "x", "--load", "1", "--load", "2"}), "write --load KG, once"));
  CHECK(
      says(line_about({"route", "x", "--rig", "Two", "Words"}), "\"Words\" belongs to no option"));
  CHECK(says(line_about({"explain", "x", "--rig", "a", "--point", "1,b"}), "'b' is not a number"));
}

TEST_CASE("a folder that is not there is bad input, told with the one beside it that was meant") {
  const TinySite site;
  std::string slip = site.folder();
  slip.back() = 'x';
  const Ran ran = run_command({"check", slip});
  CHECK(ran.status == Status::bad_input);
  CHECK(says(ran.err, slip + ": there is no such folder; did you mean \"" + site.folder() + "\"?"));
  CHECK(says(run_command({"check", "/no/such/place"}).err, "name the folder"));
}

TEST_CASE("a driver level that the rules do not know is told with the nearest they do") {
  const TinySite site;
  site.change("rigs.toml", {"driver_level = \"seasoned\"", "driver_level = \"seasond\""});
  CHECK(says(run_command({"check", site.folder()}).out, "did you mean seasoned?"));
}

TEST_CASE(
    "--json - gives every command's answer as canonical JSON and nothing else; a file the same") {
  const TinySite site;
  const std::string s = site.folder();
  site.write("people.toml",
             "schema = 1\n[[person]]\nname = \"P. Example\"\nroles = [\"planner\"]\n"
             "[[person]]\nname = \"D. Example\"\nroles = [\"driver\"]\n");
  site.write("routes.toml",
             "schema = 1\n[[route]]\nname = \"Up\"\nstations = [\"Base\", \"Top\"]\n"
             "rig = \"solo\"\n");
  site.change("site.toml", {"snow = \"snow.toml\"",
                            "snow = \"snow.toml\"\npeople = \"people.toml\"\n"
                            "routes = \"routes.toml\""});
  site.write("errands.toml",
             "schema = 1\nstart = \"Base\"\n[[errand]]\nwhat = \"wood\"\nfrom = \"Base\"\n"
             "to = \"Top\"\nload_kg = 50\n");
  const std::vector<std::vector<std::string>> all{
      {"new", site.path("made"), "--heights", site.path("heights.asc"), "--trails",
       site.path("trails.geojson")},
      {"check", s},
      route_words(site),
      {"route", s, "--rig", "solo", "--load", "9999", "--snow", "dry", "--from", "Base", "--to",
       "Top"},
      {"errands", s, "--list", site.path("errands.toml"), "--rig", "solo", "--snow", "dry"},
      {"explain", s, "--rig", "solo", "--snow", "dry", "--trail", "Spur", "--at", "10"},
      {"snow", s, "--trail", "Spur", "--at", "10"},
      {"audit", s, "--rig", "solo", "--snow", "dry", "--load", "50"},
      {"field-check", s, "--as", "D. Example", "--trail", "Spur", "--at", "10", "--grade", "3",
       "--cross-slope", "0", "--instrument", "a board"},
      {"field-check", s},
      {"limits", s, "--rig", "solo", "--snow", "dry", "--surface", "groomed"},
      {"board", s, "--rig", "solo", "--snow", "dry"},
      {"override", s},
      {"sign", s, "--as", "P. Example", "--snow", "dry"},
      {"card", s, "--route", "Up", "--driver", "D. Example"},
      {"recall", s, "--as", "P. Example", "--issue", "1", "--reason", "a test of all commands"},
      {"slopes", s, "--into", site.path("slopes"), "--rig", "solo", "--snow", "dry"},
      {"payload", s, "--rig", "solo", "--snow", "dry", "--from", "Base", "--to", "Top"},
      {"rig", s, "--rig", "solo"},
      {"log", s},
      {"backup", s, "--into", site.path("copy.gpkg")}};
  std::set<std::string> verbs;
  for (std::vector<std::string> words : all) {
    verbs.insert(words.front());
    CAPTURE(words.front());
    words.insert(words.end(), {"--now", "2026-02-01T10:00:00Z", "--json"});
    words.emplace_back("-");
    const Ran ran = run_command(words);
    CAPTURE(ran.err);
    CHECK(static_cast<int>(ran.status) <= 1);
    const nlohmann::json answer = nlohmann::json::parse(ran.out);
    CHECK(answer.contains("kind"));
    CHECK(answer.dump() + "\n" == ran.out);  // keys sorted, no white space
    const bool once =
        words.front() == "new" || words.front() == "recall" || words.front() == "backup";
    if (!once) {
      words.back() = site.path("answer");
      CHECK(run_command(words).out.size() > 20);
      // What is kept has other numbers the second time.
      const bool kept =
          words.front() == "sign" || words.front() == "card" || words.front() == "field-check";
      CHECK((kept || site.text("answer") == ran.out));
    }
  }
  const auto names = CommandLine{}.verb_names();
  CHECK(verbs == std::set<std::string>{names.begin(), names.end()});
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
