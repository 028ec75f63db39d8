// Trials in a grip entry: what they come to, and each way to spoil them.
#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include "ports/toml/examples.h"
#include "ports/toml/rules_file.h"

namespace rimehaul::ports::toml {
namespace {

using testing::TestFolder;

const std::string kEntry =
    "schema = 1\n"
    "[[grip]]\n"
    "wetness = \"moist\"\n"
    "surface = \"groomed\"\n"
    "standing = \"site_measured\"\n"
    "source = \"spring scale, by the lift\"\n"
    "by = \"A. Example\"\n"
    "date = 2026-01-12\n";
const std::string kPulls =
    "[[grip.pulls]]\n"
    "of = \"carrier_rolling\"\n"
    "mass_kg = 100\n"
    "grade_deg = 0\n"
    "grade_error_deg = 0\n"
    "pull_n = [98.0665, 98.0665, 98.0665, 98.0665, 98.0665]\n";
const std::string kStops =
    "[[grip.stops]]\n"
    "track_share = 1\n"
    "grade_deg = 0\n"
    "grade_error_deg = 0\n"
    "kmh_and_m = [[18, 4], [18, 4], [18, 4], [18, 4], [18, 4]]\n";
const std::string kHolds =
    "[[grip.holds]]\n"
    "track_share = 1\n"
    "grade_error_deg = 0\n"
    "held_deg = [10, 12, 14]\n";

snow::MeasuredGrip entry_of(const std::string& text) {
  const TestFolder folder;
  const auto [rules, faults] = read_rules(folder.with("rules.toml", text));
  for (const base::Fault& fault : faults) {
    FAIL_CHECK(base::line_of(fault));
  }
  REQUIRE(rules.grip.measured().size() == 1);
  return rules.grip.measured().front();
}

std::string fault_of(const std::string& text) {
  const TestFolder folder;
  const auto [rules, faults] = read_rules(folder.with("rules.toml", text));
  REQUIRE(faults.size() == 1);
  return base::line_of(faults.front());
}

std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("the strength of a site's own snow is read as it was measured") {
  const auto entry = entry_of(kEntry + "[grip.strength]\nn = 1.6\nk_c = 4.37\nk_phi = 196.72\n");
  REQUIRE(entry.strength.has_value());
  CHECK(entry.strength->n == 1.6);
  CHECK(entry.strength->k_c == 4.37);
  CHECK(entry.strength->k_phi == 196.72);
}

TEST_CASE("trials fill in a grip entry, and its source tells by how many and with what spread") {
  const snow::MeasuredGrip entry = entry_of(kEntry + kPulls + kStops);
  REQUIRE(entry.carrier_resistance.has_value());
  CHECK(entry.carrier_resistance->low.value() == doctest::Approx(0.1));
  CHECK(entry.carrier_resistance->high.value() == doctest::Approx(0.1));
  // 5 m/s to nothing in 4 m: 25 / 8 = 3.125 m/s2.
  CHECK(entry.brake->value() == doctest::Approx(3.125 / 9.80665));
  CHECK(
      entry.source ==
      "spring scale, by the lift, A. Example, 2026-01-12; carrier_rolling by 5 pulls, 0.100 +- "
      "0.000, the next between 0.100 and 0.100; brake by 5 stops, 0.319 +- 0.000, the next between "
      "0.318 and 0.319");
}

TEST_CASE("the trials in the safety officer's page are read, and their spread is told") {
  std::ifstream stream{RIMEHAUL_ROOT "/docs/safety-officer.md"};
  const std::string page{std::istreambuf_iterator<char>{stream}, {}};
  const std::size_t from = page.find("```toml\n") + 8;
  const snow::MeasuredGrip entry =
      entry_of("schema = 1\n" + page.substr(from, page.find("```", from) - from));
  REQUIRE(entry.trailer_resistance.has_value());
  CHECK(entry.trailer_resistance->low < entry.trailer_resistance->high);
  // 160 N on 180 kg up 0.5 degrees: 160 / (180 g) - tan 0.5.
  CHECK(entry.source.find("trailer_rolling by 5 pulls, 0.082 +- 0.004") != std::string::npos);
  REQUIRE(entry.brake.has_value());
  CHECK(entry.brake->value() <= std::tan(13.5 * 0.0174532925199433) / 0.85);
}

TEST_CASE("of stops and holds the more cautious counts for the brake") {
  const snow::MeasuredGrip entry = entry_of(kEntry + kStops + kHolds);
  CHECK(entry.brake->value() == doctest::Approx(std::tan(14 * 0.0174532925199433)));
}

TEST_CASE("each way to spoil a trial is told with its place and what to do") {
  const std::string all = kEntry + kPulls;
  CHECK(fault_of(with(all, ", 98.0665]", "]")) ==
        "rules.toml: line 14 (grip.pulls.pull_n): has fewer than 5 numbers, which say nothing of "
        "the next; try more often");
  CHECK(fault_of(with(all, "mass_kg = 100", "mass_kg = 9")) ==
        "rules.toml: line 9 (grip.pulls): comes to 1.111 of the weight at its bad side, which no "
        "grip is; look at masses, grade and spread, and try again");
  CHECK(fault_of(with(all, "date = 2026-01-12\n",
                      "date = 2026-01-12\ncarrier_resistance = [0.1, 0.2]\n")) ==
        "rules.toml: line 9 (grip.carrier_resistance): is given as a number and by a trial; keep "
        "one of them");
  CHECK(fault_of(with(all, "site_measured", "estimate")) ==
        "rules.toml: line 5 (grip.standing): is not site_measured, but there are trials; write "
        "site_measured");
  CHECK(
      fault_of(with(all, "carrier_rolling", "drawbar")) ==
      "rules.toml: line 9 (grip.pulls.track_share): is missing; add it: a number above 0, up to 1");
  CHECK(fault_of(with(kEntry + kHolds, "10, 12, 14", "10, 12")) ==
        "rules.toml: line 12 (grip.holds.held_deg): proves nothing: fewer than 3, or none gentler "
        "than where it slid; try gentler slopes");
  CHECK(fault_of(with(kEntry + kStops, "[18, 4]]", "[18, 4, 1]]")).find("list of 3") !=
        std::string::npos);
}

}  // namespace rimehaul::ports::toml
