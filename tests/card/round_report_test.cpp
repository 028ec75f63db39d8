// A round of errands in words: what is put off and taken on at each stop, and the honest no.
#include "card/round_report.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <iterator>

#include "card/sample_card.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {

namespace {

using day::RoundHop;
using units::Instant;
using units::Kilograms;

const Instant kMorning = testing::mid_morning();

const day::Round kRound{
    .start = "Depot",
    .end = "Depot",
    .errands = {{.what = "gas", .from = "Depot", .to = "Hut", .bed = Kilograms{60.2}},
                {.what = "sacks", .from = "Hut", .to = "Depot", .bed = Kilograms{25}},
                {.what = "guests", .from = "Hut", .to = "Lodge", .passengers = 2}}};

struct Told {
  trails::Network network = testing::network_of(testing::two_ways());
  day::RoundStops stops = std::get<day::RoundStops>(day::stops_of(kRound, network));

  /// Depot, Hut, Lodge, Depot, a quarter of an hour each; only as many as are asked for.
  [[nodiscard]] std::vector<RoundHop> hops(std::size_t count) const {
    std::vector<RoundHop> hops;
    search::Hop hop;
    for (std::size_t i = 0; i < count; ++i) {
      hop.to = i < 2 ? std::optional{i} : std::nullopt;
      const auto late = static_cast<std::int64_t>(i) * 1'500;
      hops.push_back({.hop = hop,
                      .departs = {kMorning.seconds + late},
                      .arrives = {kMorning.seconds + late + 900},
                      .rig = day::rig_with(testing::solo_rig(), kRound, stops, hop.called),
                      .route = {}});
      hop.from = hop.to;
      hop.called |= hop.to.has_value() ? search::StopSet{1} << *hop.to : 0;
    }
    return hops;
  }

  [[nodiscard]] std::vector<RoundCall> calls(std::size_t count) const {
    return calls_of(hops(count), {network, kRound, stops});
  }
};

std::vector<std::string> whats(const std::vector<day::Errand>& errands) {
  std::vector<std::string> names;
  for (const day::Errand& errand : errands) {
    names.push_back(errand.what);
  }
  return names;
}

using Names = std::vector<std::string>;

RoundReport report_of(const Told& told) {
  RoundReport report{.site = "Test Fell",
                     .rig = "solo",
                     .halt = units::Seconds{600},
                     .calls = told.calls(3),
                     .fuel = units::Litres{3.41},
                     .fuel_to_spare = units::Litres{22.0}};
  for (const double share : {0.2, 0.65, 0.4}) {
    report.trips.push_back(testing::sample_card());
    report.trips.back().worst_share = share;
    report.trips.back().verdict = passage::Verdict::open;
  }
  return report;
}

}  // namespace

TEST_CASE("at every stop stands what is put off and taken on there, and then aboard") {
  const std::vector<RoundCall> calls = Told{}.calls(3);
  REQUIRE(calls.size() == 4);
  CHECK(calls[0].station == "Depot");
  CHECK_FALSE(calls[0].arrives.has_value());
  CHECK(calls[0].leaves == kMorning);
  CHECK(whats(calls[0].taken_on) == Names{"gas"});
  CHECK(calls[0].put_off.empty());
  CHECK(calls[1].station == "Hut");
  CHECK(calls[1].arrives == Instant{kMorning.seconds + 900});
  CHECK(whats(calls[1].put_off) == Names{"gas"});
  CHECK(whats(calls[1].taken_on) == Names{"sacks", "guests"});
  CHECK(calls[1].aboard->bed == Kilograms{175});  // 150 stay on it
  CHECK(calls[1].aboard->passengers == 2);
  CHECK(whats(calls[2].put_off) == Names{"guests"});
  CHECK(calls[2].taken_on.empty());
  CHECK(calls[3].station == "Depot");
  CHECK_FALSE(calls[3].leaves.has_value());
  CHECK_FALSE(calls[3].aboard.has_value());
  CHECK(whats(calls[3].put_off) == Names{"sacks"});
}

TEST_CASE("a round that gets nowhere is told at its start, one that stops on its way there") {
  const std::vector<RoundCall> nowhere = Told{}.calls(0);
  REQUIRE(nowhere.size() == 1);
  CHECK(whats(nowhere[0].taken_on) == Names{"gas"});
  const std::vector<RoundCall> halfway = Told{}.calls(1);
  REQUIRE(halfway.size() == 2);
  CHECK(whats(halfway[1].put_off) == Names{"gas"});
  CHECK(whats(halfway[1].taken_on) == Names{"sacks", "guests"});
  CHECK_FALSE(halfway[1].leaves.has_value());
}

TEST_CASE("the round's text tells its tightest trip, its stops in order, and every errand twice") {
  RoundReport report = report_of(Told{});
  CHECK(tightest_trip(report) == 1);
  CHECK(verdict_of(report) == passage::Verdict::open);
  const std::string text = text_of(report, 80);
  const auto says = [&](const std::string& words) { return text.find(words) != std::string::npos; };
  CHECK(says("Depot - Hut - Lodge - Depot"));
  CHECK(says("trip 2 is the tightest: at most 65 % of a limit"));
  CHECK(says("3.5 L of 22.0 L above the reserve"));  // a demand up, what is there down
  CHECK(says("take on   gas, 61 kg on the bed, for Hut"));
  CHECK(says("put off   gas, 61 kg on the bed, from Depot"));
  CHECK(says("guests, 2 passengers, for Lodge"));
  CHECK(says("arrive about 09:15, leave 09:25"));
  CHECK(says("10 min at every stop"));
  CHECK(says("A planning aid, not permission to drive."));
  CHECK(says("EVERY TRIP HAS A CARD"));
  report.trips[2].verdict = passage::Verdict::restricted;
  CHECK(verdict_of(report) == passage::Verdict::restricted);
}

TEST_CASE("where other orders are not ruled out, the text says what they may come to at best") {
  RoundReport report = report_of(Told{});
  const auto says = [&](const std::string& words) {
    std::string text = text_of(report, 80);
    std::ranges::replace(text, '\n', ' ');
    std::string on_one_line;
    std::ranges::unique_copy(text, std::back_inserter(on_one_line),
                             [](char a, char b) { return a == ' ' && b == ' '; });
    return on_one_line.find(words) != std::string::npos;
  };
  CHECK(says("of all orders that hold, the one with the least share of any limit, then"));
  CHECK_FALSE(says("not proven"));
  report.not_ruled_out = search::OrderWorth{
      .worst_share = 0.389, .arrives = {kMorning.seconds + 4'379}, .fuel = units::Litres{2.19}};
  CHECK(says("of the orders that were followed to their end, the one with the least share"));
  CHECK(says("It is not proven the best"));
  // What others come to at least is rounded down.
  CHECK(says("may come to as little as 38 % of a limit, and end at 10:12 at the earliest"));
  report.prefer = search::Preference::quickest;
  CHECK(says("Others may end at 10:12 at the earliest"));
  report.prefer = search::Preference::least_fuel;
  CHECK(says("take as little as 2.1 L, and end at 10:12 at the earliest"));
  report.unreached.push_back({.station = "Lodge", .ready = kMorning, .why = "closed"});
  CHECK(says("No order of the stops was found to hold"));
  CHECK(says("Some may"));
}

TEST_CASE("no round is told with how far it gets, with what aboard, and why no farther") {
  const Told told;
  RoundReport report{
      .site = "Test Fell", .rig = "solo", .halt = units::Seconds{600}, .calls = told.calls(1)};
  const search::Hop hop{.called = 1, .from = 0, .to = 1};
  day::UnreachedStop stop{.hop = hop,
                          .rig = day::rig_with(testing::solo_rig(), kRound, told.stops, 1),
                          .ready = {kMorning.seconds + 1'500},
                          .none = search::NoRoute{.why = "every way is closed", .obstacles = {}}};
  const RoundContext context{told.network, kRound, told.stops};
  report.unreached.push_back(unreached_call(stop, context));
  CHECK_FALSE(report.holds());
  CHECK(verdict_of(report) == passage::Verdict::closed);
  const std::string text = text_of(report, 80);
  CHECK(text.find("NO ROUND") == 0);
  CHECK(text.find("- Lodge, setting out 09:25 with bed 175 kg") != std::string::npos);
  CHECK(text.find("every way is closed") != std::string::npos);
  stop.none.reset();
  CHECK(unreached_call(stop, context).why ==
        "there is a way, but not the fuel or the hours left for it");
}

}  // namespace rimehaul::card
