// From the board to the driver's card: signed, kept, stale, issued, recalled.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "app/standing_board.h"
#include "app/tiny_site.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// The tiny site with people and two named routes: one that is open, one that no trailer climbs.
class SignedSite {
 public:
  SignedSite() {
    site_.write("people.toml",
                "schema = 1\n[[person]]\nname = \"P. Example\"\nroles = [\"planner\"]\n"
                "[[person]]\nname = \"D. Example\"\nroles = [\"driver\"]\n");
    site_.write("routes.toml",
                "schema = 1\n[[route]]\nname = \"Up\"\nstations = [\"Base\", \"Top\"]\n"
                "rig = \"solo\"\nload_kg = 50\n"
                "[[route]]\nname = \"Heavy\"\nstations = [\"Base\", \"Top\"]\nrig = \"solo\"\n"
                "load_kg = 5000\n");
    site_.change("site.toml", {"snow = \"snow.toml\"",
                               "snow = \"snow.toml\"\npeople = \"people.toml\"\n"
                               "routes = \"routes.toml\""});
  }

  [[nodiscard]] const TinySite& files() const { return site_; }

  [[nodiscard]] Ran sign(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"sign", site_.folder(), "--as", "P. Example", "--snow", "dry"};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  }
  [[nodiscard]] Ran card(const std::string& route = "Up",
                         const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"card", site_.folder(), "--route",
                                   route,  "--driver",     "D. Example"};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  }
  [[nodiscard]] Ran order(const std::vector<std::string>& what) const {
    std::vector<std::string> words{"override",   site_.folder(), "--as",
                                   "P. Example", "--reason",     "a test"};
    words.insert(words.end(), what.begin(), what.end());
    return run_command(words);
  }

 private:
  TinySite site_;
};

void check_refused(const Ran& ran, std::string_view why) {
  CAPTURE(ran.out);
  CAPTURE(ran.err);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, why));
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 1);
}

}  // namespace

TEST_CASE("a card is issued from the signed board, with its numbers, its driver and the log") {
  const SignedSite site;
  check_refused(site.card(), "no card: no board has been signed yet");
  const Ran board = site.sign();
  REQUIRE(board.status == Status::yes);
  CHECK(says(board.out, "board 1, by P. Example (planner)"));
  const std::string paper = site.files().path("up.pdf");
  const Ran card = site.card("Up", {"--card", paper});
  REQUIRE(card.status == Status::yes);
  CHECK(says(card.out, "1, of Up, to D. Example; from board 1, signed by P. Example"));
  CHECK(std::filesystem::exists(paper));
  CHECK(says(site.files().text("up.pdf.record.json"), "\"issue\":{\"board\":1"));
  const Ran second = site.card();
  CHECK(says(second.out, "2, of Up, to D. Example"));
}

TEST_CASE("what is closed, by its numbers or by hand, gets no card and is told in one line") {
  const SignedSite site;
  const std::string csv = site.files().path("signed.csv");
  const std::string json = site.files().path("signed.json");
  REQUIRE(site.sign({"--close", "Up", "--reason", "the hut is shut", "--csv", csv, "--json", json})
              .status == Status::yes);
  // Whoever reads a verdict from a file reads the one to act on.
  const std::string table = site.files().text("signed.csv");
  CHECK(says(table.substr(table.find("\r\nUp,")), "closed by P. Example: the hut is shut"));
  CHECK_FALSE(says(table.substr(table.find("\r\nUp,"), table.find("\r\nHeavy,")), ",open,"));
  CHECK(says(site.files().text("signed.json"), "\"computed\":\"open\""));
  CHECK_FALSE(says(site.files().text("signed.json"), "\"verdict\":\"open\""));
  check_refused(site.card(), "board 1 closes \"Up\" by hand, by P. Example: the hut is shut");
  REQUIRE(site.sign().status == Status::yes);
  CHECK(site.card().status == Status::yes);
  // Far too much on the bed: restricted to what it may carry, and open with that.
  check_refused(site.card("Heavy"), "has \"Heavy\" restricted");
  CHECK(site.card("Heavy", {"--load", "40"}).status == Status::yes);
  CHECK(site.card("Heavy", {"--load", "4000"}).status == Status::honest_no);
}

TEST_CASE("a changed file, an order or the end of the report makes a board stale") {
  const SignedSite site;
  REQUIRE(site.sign().status == Status::yes);
  REQUIRE(site.card().status == Status::yes);
  check_refused(site.card("Up", {"--depart", "14:01"}), "held until 2026-02-01 14:00; sign a new");
  check_refused(site.card("Up", {"--depart", "10:00", "--now", "2026-02-01T14:01:00Z"}),
                "held until 2026-02-01 14:00; sign a new");
  REQUIRE(site.order({"--share", "0.69"}).status == Status::yes);
  check_refused(site.card(), "an order was given or taken back since it was signed");
  REQUIRE(site.sign().status == Status::yes);
  REQUIRE(site.card().status == Status::yes);
  REQUIRE(site.order({"--end", "1"}).status == Status::yes);
  check_refused(site.card(), "an order was given or taken back since it was signed");
  REQUIRE(site.sign().status == Status::yes);
  site.files().change("rules.toml", {"most_wind_kmh = 60", "most_wind_kmh = 61"});
  check_refused(site.card(), "rules.toml has changed since it was signed");
  REQUIRE(site.sign().status == Status::yes);
  CHECK(site.card().status == Status::yes);
}

TEST_CASE("nothing is signed without a report that holds, or by who may not") {
  const SignedSite site;
  CHECK(says(site.sign({"--depart", "15:00"}).err, "no snow report of this site holds"));
  CHECK(says(run_command({"sign", site.files().folder()}).err, "nobody signs; say --as PERSON"));
  CHECK(says(run_command({"sign", site.files().folder(), "--as", "D. Example"}).err,
             "is neither planner nor officer"));
  CHECK(says(site.sign({"--close", "Up"}).err, "without a reason; say --reason TEXT"));
  CHECK(says(site.sign({"--close", "Upp", "--reason", "x"}).err, "did you mean \"Up\"?"));
  CHECK(says(site.sign({"--permit", "Up", "--reason", "x"}).err, "waits for no decision"));
  CHECK_FALSE(std::filesystem::exists(site.files().path("records.gpkg")));
}

TEST_CASE("a card rests on no decision but those that were taken on the board") {
  card::RouteCard card;
  const std::string taken = "P. Example: looked at it (to drive too near ground that may release)";
  CHECK(undecided("", card).empty());
  card.permitted = {"leg 2: to drive too near ground that may release"};
  CHECK(undecided(taken, card).empty());
  CHECK(undecided("", card) == "to drive too near ground that may release");
  card.permitted.emplace_back("legs 3 and 4: to go where a gate was not looked at");
  CHECK(undecided(taken, card) == "to go where a gate was not looked at");
}

TEST_CASE("a recalled card is told of by every command for a day") {
  const SignedSite site;
  REQUIRE(site.sign().status == Status::yes);
  REQUIRE(site.card().status == Status::yes);
  const auto recall = [&](const std::string& issue) {
    return run_command({"recall", site.files().folder(), "--as", "P. Example", "--issue", issue,
                        "--reason", "slides on High Way"});
  };
  check_refused(recall("2"), "no card has been issued as number 2");
  const Ran recalled = recall("1");
  REQUIRE(recalled.status == Status::yes);
  CHECK(says(recalled.out, "call the driver"));
  check_refused(recall("1"), "is recalled already");
  const Ran next = site.card();
  CHECK(next.status == Status::yes);
  CHECK(says(next.err, "issue 1 (Up, issued to D. Example) was recalled by P. Example"));
  CHECK_FALSE(says(site.order({"--now", "2026-02-02T09:00:01Z", "--rig", "solo"}).err, "recalled"));
}

}  // namespace rimehaul::app
