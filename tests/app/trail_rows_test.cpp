// The board of marked trails: on the tiny site and on the demo, each way against its legs.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "app/demo_site.h"
#include "app/tiny_site.h"
#include "card/csv.h"
#include "card/notices.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::vector<std::string> trails_of(const TinySite& site, const std::vector<std::string>& more) {
  std::vector<std::string> words{"board", site.folder(), "--rows", "trails",
                                 "--rig", "solo",        "--load", "50"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

nlohmann::json told_of(const std::vector<std::string>& words) {
  std::vector<std::string> with_json = words;
  with_json.insert(with_json.end(), {"--json", "-"});
  const Ran ran = run_command(with_json);
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  return nlohmann::json::parse(ran.out);
}

const nlohmann::json& row_of(const nlohmann::json& told, const std::string& name) {
  const auto& rows = told["rows"];
  const auto row = std::ranges::find_if(rows, [&](const auto& one) { return one["name"] == name; });
  REQUIRE_MESSAGE(row != rows.end(), "no row " << name);
  return *row;
}

void make_one_way(const TinySite& site, const std::string& trail) {
  site.change("trails.geojson", {"\"" + trail + "\",\"direction\":\"both\"",
                                 "\"" + trail + "\",\"direction\":\"forward\""});
}

}  // namespace

TEST_CASE("every trail has a row each way, a one-way trail one, with all that it leads past") {
  const TinySite site;
  make_one_way(site, "Low Way");
  const nlohmann::json told = told_of(trails_of(site, {"--snow", "dry"}));
  CHECK(told["title"] == "MARKED TRAILS");
  REQUIRE(told["rows"].size() == 5);
  REQUIRE(told["columns"].size() == 2);
  const nlohmann::json& low = row_of(told, "Low Way, from Base to Top (one way)");
  CHECK(low["trail"] == "Low Way");
  CHECK(low["by_way_of"] == nlohmann::json{"Base", "Top"});
  const nlohmann::json& high = row_of(told, "High Way, from Top to Base");
  REQUIRE(high["by_way_of"].size() == 3);
  const std::string meeting = high["by_way_of"][1];
  CHECK(row_of(told, "Spur, from Hut to " + meeting)["trail"] == "Spur");
  for (const nlohmann::json& row : told["rows"]) {
    for (const nlohmann::json& cell : row["cells"]) {
      CHECK(cell["verdict"] == "open");
      CHECK(cell["way"] == nlohmann::json{row["trail"]});
    }
  }
  CHECK(told["places_rewalked"].get<int>() > 0);
}

TEST_CASE("rows of trails are those that begin and end at the stations asked for") {
  const TinySite site;
  CHECK(told_of(trails_of(site, {"--snow", "dry", "--from", "Base"}))["rows"].size() == 2);
  const nlohmann::json to_hut = told_of(trails_of(site, {"--snow", "dry", "--to", "Hut"}));
  REQUIRE(to_hut["rows"].size() == 1);
  CHECK(to_hut["rows"][0]["trail"] == "Spur");
}

TEST_CASE("rows of trails for all rigs stand in one table") {
  const TinySite site;
  const nlohmann::json told = told_of({"board", site.folder(), "--rows", "trails", "--all-rigs",
                                       "--towed-load", "30", "--snow", "dry"});
  CHECK(told["rows"].size() == 12);
  CHECK(told["rows"][11]["rig"] == "towing");
}

TEST_CASE("trails by the hour tell their windows, back along the same trail where that is asked") {
  const TinySite site;
  make_one_way(site, "Low Way");
  const nlohmann::json told =
      told_of(trails_of(site, {"--by", "hour", "--turn-round", "30", "--return-load", "0"}));
  REQUIRE(told["columns"].size() == 24);
  const nlohmann::json& high = row_of(told, "High Way, from Base to Top");
  CHECK(std::ranges::count_if(high["cells"], [](const auto& cell) {
          return cell["verdict"] == "open";
        }) == 8);  // the report holds from 06:00 to 14:00
  CHECK(says(high["departures"].dump(), "2026-02-01T06:00:00Z"));
  const Ran text = run_command(trails_of(site, {"--by", "hour", "--turn-round", "30"}));
  const std::size_t low = text.out.find("Low Way, from Base to Top (one way)");
  const std::size_t next = text.out.find("High Way, from", low);
  REQUIRE(next != std::string::npos);
  // What may be driven but one way is never come back on.
  CHECK(says(text.out.substr(low, next - low), "none is open with its load"));
}

TEST_CASE("the table of trails keeps to 80 columns and speaks of trails, as the spreadsheet does") {
  const TinySite site;
  const std::string csv = site.path("trails.csv");
  const std::string pdf = site.path("trails.pdf");
  const Ran ran =
      run_command(trails_of(site, {"--snow", "dry", "--csv", csv, "--pdf", pdf, "--paper", "a3"}));
  REQUIRE(ran.status == Status::yes);
  CHECK(says(ran.out, "DAY BOARD: MARKED TRAILS"));
  CHECK(says(ran.out, "all along the trail that way"));
  CHECK(says(ran.out, "WHAT BINDS, OR CLOSES A TRAIL"));
  for (std::size_t at = 0; at < ran.out.size();) {
    const std::size_t end = ran.out.find('\n', at);
    CHECK(end - at <= 80);
    at = end + 1;
  }
  const std::string table = site.text("trails.csv");
  CHECK(std::ranges::count(table, '\n') == 1 + 6 * 2);
  CHECK(says(table, "\"High Way, from Base to Top\",solo,50,"));
  CHECK(std::filesystem::file_size(pdf) > 10'000);
}

TEST_CASE("a trail that is worse when walked again withholds the board: 4, no table") {
  const TinySite site;
  const std::string csv = site.path("trails.csv");
  const Ran ran = run_command(
      trails_of(site, {"--snow", "dry", "--csv", csv}),
      [](const passage::Scene&, const rig::Rig&, const snow::SnowAt&,
         const std::vector<audit::PromisedLeg>&) {
        return audit::Rewalk{.discrepancies = {{0, "climb traction comes to 0.8, promised 0.6"}},
                             .worst_share = 0.8,
                             .places_judged = 10};
      });
  CHECK(ran.status == Status::our_fault);
  CHECK(ran.out.empty());
  CHECK_FALSE(std::filesystem::exists(csv));
}

TEST_CASE("what is signed is the named routes and never a row of trails") {
  const TinySite site;
  const Ran ran = run_command({"sign", site.folder(), "--as", "P. Example", "--rows", "trails"});
  CHECK(ran.status == Status::wrong_usage);
  CHECK(says(ran.err, "--rows"));
}

namespace {

/// Of all legs and turns of a trail, each judged by itself when the one before it is driven.
passage::Verdict worst_along(const passage::Judge& judge, const std::vector<trails::LegId>& legs) {
  passage::Verdict worst = passage::Verdict::open;
  units::Seconds gone{0};
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const units::Instant entry = units::after(testing::demo_morning(), gone);
    const passage::LegJudgement leg = judge.judge(legs[i], entry);
    worst = std::max(worst, leg.verdict);
    if (i > 0) {
      worst = std::max(worst, judge.judge_turn(legs[i - 1], legs[i], entry).verdict);
    }
    gone += leg.time;
  }
  return worst;
}

}  // namespace

TEST_CASE("every marked trail of the demo has its rows, as bad as the worst of its legs" *
          doctest::test_suite("whole demo")) {
  const nlohmann::json told = told_of(
      {"board", RIMEHAUL_ROOT "/routes/marrowfell", "--rows", "trails", "--rig", "Broadfoot",
       "--load", "40", "--passengers", "1", "--snow", "moist", "--now", "2026-02-01T17:00:00Z"});
  const trails::Network& network = testing::demo_site().scene->network;
  const rig::Rig rig = testing::demo_rig("Broadfoot");
  const snow::ReportedSnow snow = testing::demo_report("snow.toml");
  const passage::Judge judge{*testing::demo_site().scene, rig, snow};
  std::map<std::string, std::size_t> closed_ways;
  auto row = told["rows"].begin();
  for (std::size_t trail = 0; trail < network.trails.size(); ++trail) {
    const trails::Trail& marked = network.trails[trail];
    const std::size_t first = *marked.direction == trails::AllowedDirection::backward ? 1 : 0;
    const std::size_t last = *marked.direction == trails::AllowedDirection::forward ? 0 : 1;
    for (std::size_t way = first; way <= last; ++way, ++row) {
      REQUIRE(row != told["rows"].end());
      CAPTURE(marked.name);
      CHECK((*row)["trail"] == marked.name);
      const auto legs = trails::legs_along(network, trail,
                                           way == 0 ? trails::Way::as_drawn : trails::Way::against);
      const trails::JunctionId from = network.legs[static_cast<std::size_t>(legs.front())].from;
      CHECK((*row)["by_way_of"][0] == card::name_of(network, from));
      const passage::Verdict worst = worst_along(judge, legs);
      const nlohmann::json& cell = (*row)["cells"][0];
      // A load or a decision may open what is closed as the rig stands.
      CHECK((cell["verdict"] == "open") == (worst == passage::Verdict::open));
      CHECK((worst != passage::Verdict::restricted || cell["verdict"] == "restricted"));
      CHECK((cell["verdict"] == "open" || cell.contains("binding")));
      closed_ways[marked.name] += cell["verdict"] == "closed" ? 1 : 0;
    }
  }
  CHECK(row == told["rows"].end());
  CHECK(closed_ways["Void Cut"] == 2);
  CHECK(std::ranges::any_of(closed_ways, [](const auto& of) { return of.second == 0; }));
  // A pair of one-way trails: each has but the one row, and says so.
  for (const std::string trail : {"Cable Up", "Cable Down"}) {
    CHECK(std::ranges::count_if(told["rows"], [&](const nlohmann::json& one) {
            const std::string name = one["name"];
            return one["trail"] == trail && name.ends_with(" (one way)");
          }) == 1);
  }
}

}  // namespace rimehaul::app
