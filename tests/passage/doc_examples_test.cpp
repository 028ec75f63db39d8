// Runs every worked example on the pages of the checks, so that pages and program cannot part ways.
//
// An example is a fenced block that opens with ```example KEY. Lines above its empty line are
// given, lines below it are found. A found number must agree to half of its last printed digit, and
// every input of the finding must stand on the page.
#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "demo_scene.h"
#include "doc_bench.h"
#include "passage/avalanche.h"
#include "passage/day_rules.h"
#include "passage/turning.h"
#include "passage/visibility.h"

namespace rimehaul::passage {

namespace {

using testing::all_setters;
using testing::Bench;
using testing::Setter;
using units::Metres;
using units::Slope;

struct Line {
  std::string name;
  double value = 0.0;
  double half_digit = 0.0;  ///< of the last digit printed, in the value's own unit
};

struct Example {
  std::string page;
  std::string key;
  std::vector<Line> given;
  std::vector<Line> found;
};

Line line_of(const std::string& text) {
  const std::size_t equals = text.find(" = ");
  REQUIRE(equals != std::string::npos);
  Line line;
  line.name = text.substr(0, equals);
  const std::string right = text.substr(equals + 3);
  std::size_t end = 0;
  line.value = std::stod(right, &end);
  const std::string number = right.substr(0, end);
  const std::size_t point = number.find('.');
  const std::size_t decimals = point == std::string::npos ? 0 : number.size() - point - 1;
  line.half_digit = 0.5 * std::pow(10.0, -static_cast<double>(decimals));
  if (right.substr(end).rfind(" deg", 0) == 0) {  // slopes are held as tangents
    const double tangent = Slope::from_degrees(line.value).ratio();
    line.half_digit *= (1 + tangent * tangent) * 3.14159265358979 / 180.0;
    line.value = tangent;
  }
  return line;
}

std::vector<Example> examples_on(const std::filesystem::path& page) {
  std::vector<Example> examples;
  std::ifstream in{page};
  std::string text;
  bool inside = false;
  bool below = false;
  while (std::getline(in, text)) {
    if (!inside && text.rfind("```example ", 0) == 0) {
      examples.push_back({page.filename().string(), text.substr(11), {}, {}});
      inside = true;
      below = false;
    } else if (inside && text.rfind("```", 0) == 0) {
      inside = false;
    } else if (inside && text.empty()) {
      below = true;
    } else if (inside) {
      (below ? examples.back().found : examples.back().given).push_back(line_of(text));
    }
  }
  REQUIRE_FALSE(inside);
  return examples;
}

std::vector<Example> all_examples() {
  std::vector<Example> examples;
  const std::filesystem::path folder = std::filesystem::path{RIMEHAUL_ROOT} / "docs" / "checks";
  for (const auto& entry : std::filesystem::directory_iterator{folder}) {
    for (Example& example : examples_on(entry.path())) {
      examples.push_back(std::move(example));
    }
  }
  return examples;
}

trails::Trail any_trail() {
  return testing::plain_trail("Example", {testing::place(0, 0), testing::place(100, 0)});
}

using Run = std::function<Finding(const Bench&)>;

Run on_ground(Finding (*judge)(const Footing&)) {
  return [judge](const Bench& b) { return judge(b.rig.footing()); };
}

std::map<std::string, Run> all_runs() {
  return {
      {"climb_rating", on_ground(judge_climb_rating)},
      {"descent_rating", on_ground(judge_descent_rating)},
      {"cross_rating", on_ground(judge_cross_rating)},
      {"trailer_rating", on_ground(judge_trailer_rating)},
      {"climb_traction", on_ground(judge_climb_traction)},
      {"engine_power", on_ground(judge_engine_power)},
      {"descent_hold", on_ground(judge_descent_hold)},
      {"parking_hold", on_ground(judge_parking_hold)},
      {"carrier_roll_over", on_ground(judge_carrier_roll_over)},
      {"trailer_roll_over", on_ground(judge_trailer_roll_over)},
      {"carrier_side_slip", on_ground(judge_carrier_side_slip)},
      {"trailer_side_slip", on_ground(judge_trailer_side_slip)},
      {"jackknife", on_ground(judge_jackknife)},
      {"hitch_vertical", on_ground(judge_hitch_vertical)},
      {"stopping",
       [](const Bench& b) {
         return judge_stopping(b.rig.footing(), {b.sight, b.bend.radius}, 0.7).finding;
       }},
      {"towed_mass", [](const Bench& b) { return judge_towed_mass(b.rig.rig, b.rig.weighed); }},
      {"payload", [](const Bench& b) { return judge_payload(b.rig.rig, b.rig.weighed); }},
      {"trailer_payload", [](const Bench& b) { return judge_trailer_payload(b.rig.rig); }},
      {"seats", [](const Bench& b) { return judge_seats(b.rig.rig); }},
      {"turning", [](const Bench& b) { return judge_turning(b.rig.rig, b.bend); }},
      {"off_tracking",
       [](const Bench& b) { return judge_off_tracking(b.rig.rig, b.bend, b.trail_width); }},
      {"avalanche",
       [](const Bench& b) {
         return judge_avalanche(b.exposure, b.level, snow::Wetness::dry, b.rig.rules);
       }},
      {"visibility",
       [](const Bench& b) {
         trails::Trail trail = any_trail();
         trail.marker_spacing = b.marker_spacing;
         return judge_visibility(b.weather, trail, b.rig.rules);
       }},
      {"wind", [](const Bench& b) { return judge_wind(b.weather, any_trail(), b.rig.rules); }},
  };
}

bool falls_are_positive(const std::string& key) {
  static const std::set<std::string> kFalling{"descent_rating", "descent_hold", "parking_hold",
                                              "stopping", "jackknife"};
  return kFalling.count(key) > 0;
}

Bench bench_of(const Example& example, const std::map<std::string, Setter>& setters) {
  Bench bench;
  bench.sign = falls_are_positive(example.key) ? -1.0 : 1.0;
  for (const Line& line : example.given) {
    INFO(line.name);
    const auto setter = setters.find(line.name);
    REQUIRE(setter != setters.end());
    setter->second(bench, line.value);
  }
  return bench;
}

/// Demand, capacity, share and inputs of a finding by name.
std::map<std::string, double> numbers_of(const Finding& finding) {
  std::map<std::string, double> numbers{{"demand", finding.demand.value},
                                        {"capacity", finding.capacity.value},
                                        {"share", testing::share_of(finding)}};
  for (const Input& input : finding.inputs.all()) {
    numbers[std::string{input.name}] = input.value.value;
  }
  return numbers;
}

}  // namespace

TEST_CASE("every worked example on the pages of the checks comes out as printed") {
  const std::map<std::string, Setter> setters = all_setters();
  const std::map<std::string, Run> runs = all_runs();
  std::set<std::string> seen;
  for (const Example& example : all_examples()) {
    INFO(example.page);
    INFO(example.key);
    const auto run = runs.find(example.key);
    REQUIRE(run != runs.end());
    REQUIRE_FALSE(example.found.empty());
    seen.insert(example.key);
    const Finding finding = run->second(bench_of(example, setters));
    CHECK(finding.missing.empty());
    std::map<std::string, double> numbers = numbers_of(finding);
    for (const Line& line : example.found) {
      INFO(line.name);
      REQUIRE(numbers.count(line.name) == 1);
      INFO(numbers[line.name]);
      CHECK(std::abs(numbers[line.name] - line.value) <= line.half_digit * 1.0001);
    }
  }
  for (const auto& run : runs) {
    INFO(run.first);
    CHECK(seen.count(run.first) == 1);
  }
}

TEST_CASE("every input of a finding stands in its example, given or found") {
  const std::map<std::string, Setter> setters = all_setters();
  const std::map<std::string, Run> runs = all_runs();
  for (const Example& example : all_examples()) {
    INFO(example.page);
    INFO(example.key);
    std::set<std::string> named;
    for (const auto& lines : {example.given, example.found}) {
      for (const Line& line : lines) {
        named.insert(line.name);
      }
    }
    const Finding finding = runs.at(example.key)(bench_of(example, setters));
    for (const Input& input : finding.inputs.all()) {
      INFO(std::string{input.name});
      CHECK(named.count(std::string{input.name}) == 1);
    }
  }
}

TEST_CASE("every page opens with a title and a table of facts") {
  int pages = 0;
  for (const auto& entry : std::filesystem::directory_iterator{
           std::filesystem::path{RIMEHAUL_ROOT} / "docs" / "checks"}) {
    INFO(entry.path().filename().string());
    std::ifstream in{entry.path()};
    std::string title;
    REQUIRE(std::getline(in, title));
    CHECK(title.rfind("# ", 0) == 0);
    std::string text;
    bool table = false;
    for (int line = 0; line < 12 && std::getline(in, text); ++line) {
      table = table || text.rfind("| Input |", 0) == 0;
    }
    CHECK(table);
    ++pages;
  }
  CHECK(pages >= 14);
}

}  // namespace rimehaul::passage
