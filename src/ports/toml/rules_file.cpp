// Reads rules.toml.
#include "ports/toml/rules_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "ports/toml/day_rules_reader.h"
#include "ports/toml/grip_reader.h"
#include "ports/toml/snow_words.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

using passage::BulletinStep;
using passage::DriverLevel;
using passage::Rules;
using units::Kilograms;
using units::Metres;
using units::MetresPerSecond;
using units::Seconds;
using units::Slope;

constexpr double kKilometresPerHour = 3.6;  // of one metre per second
constexpr Range kShare{.above = 0, .to = 1};

std::optional<units::TimeOfDay> read_time(TableReader& in, std::string_view key) {
  const auto said = in.text(key, Presence::may);
  const auto time = said ? units::parse_time_of_day(*said) : std::nullopt;
  if (said && !time) {
    in.fault(key, {"\"" + *said + "\" is no time of day", "write it like \"08:00\""});
  }
  return time;
}

/// Hours in which drivers of a level drive: both ends or none.
std::optional<trails::OpenHours> read_hours(TableReader& in) {
  const std::size_t faults_before = in.faults();
  const auto from = read_time(in, "drives_from");
  const auto to = read_time(in, "drives_to");
  if (in.faults() != faults_before) {
    return std::nullopt;
  }
  if (from.has_value() != to.has_value()) {
    in.fault(from ? "drives_from" : "drives_to",
             {"gives one end of the hours", "give both drives_from and drives_to"});
    return std::nullopt;
  }
  if (from && !(*from < *to)) {
    in.fault("drives_to", {"is not later than drives_from", "correct one of them"});
    return std::nullopt;
  }
  return from ? std::optional{trails::OpenHours{*from, *to}} : std::nullopt;
}

/// Lays what a file says over the defaults.
class RulesReader {
 public:
  explicit RulesReader(TableReader top) : in_{std::move(top)}, rules_{passage::default_rules()} {}

  [[nodiscard]] Rules read();

 private:
  void read_margins();
  void read_distances();
  void read_people_and_fuel();
  void read_bulletin();
  void read_driver_levels();

  [[nodiscard]] Slope slope_or(std::string_view key, Range range, Slope otherwise);
  [[nodiscard]] BulletinStep read_step(TableReader in, const BulletinStep& otherwise);
  [[nodiscard]] DriverLevel read_level(const NamedReader& named) const;

  TableReader in_;
  Rules rules_;
};

Slope RulesReader::slope_or(std::string_view key, Range range, Slope otherwise) {
  const auto deg = in_.may<double>(key, range);
  return deg ? Slope::from_degrees(*deg) : otherwise;
}

void RulesReader::read_margins() {
  rules_.allowed_share = in_.may<double>("allowed_share", kShare).value_or(rules_.allowed_share);
  rules_.confidence_k =
      in_.may<double>("confidence_k", {.from = 1.645, .to = 6}).value_or(rules_.confidence_k);
  rules_.roll_over_reserve = in_.may<double>("roll_over_reserve", {.above = 0, .to = 0.7})
                                 .value_or(rules_.roll_over_reserve);
  rules_.low_side_sinkage = in_.may<Metres>("low_side_sinkage_m", {.from = 0, .to = 0.5})
                                .value_or(rules_.low_side_sinkage);
  rules_.articulation = slope_or("articulation_deg", {.from = 10, .to = 60}, rules_.articulation);
  rules_.start_slope_dry =
      slope_or("start_slope_dry_deg", {.from = 15, .to = 30}, rules_.start_slope_dry);
  rules_.start_slope_wet =
      slope_or("start_slope_wet_deg", {.from = 15, .to = 25}, rules_.start_slope_wet);
}

void RulesReader::read_distances() {
  rules_.sight = in_.may<Metres>("sight_m", {.from = 1, .to = 1'000}).value_or(rules_.sight);
  rules_.setback = in_.may<Metres>("setback_m", {.from = 1, .to = 100}).value_or(rules_.setback);
  rules_.cornice_setback =
      in_.may<Metres>("cornice_setback_m", {.from = 1, .to = 200}).value_or(rules_.cornice_setback);
  if (rules_.cornice_setback < rules_.setback) {
    in_.fault("cornice_setback_m",
              {"is less than the setback from drops", "give at least setback_m"});
  }
  rules_.markers_in_sight =
      in_.may<double>("markers_in_sight", {.from = 1, .to = 10}).value_or(rules_.markers_in_sight);
  rules_.piece_length =
      in_.may<Metres>("piece_m", {.from = 1, .to = 10}).value_or(rules_.piece_length);
}

void RulesReader::read_people_and_fuel() {
  rules_.reaction = in_.may<Seconds>("reaction_s", {.from = 1, .to = 10}).value_or(rules_.reaction);
  if (const auto pace = in_.may<MetresPerSecond>("walking_pace_kmh", {.from = 1, .to = 6})) {
    rules_.walking_pace = *pace / kKilometresPerHour;
  }
  rules_.passenger_mass =
      in_.may<Kilograms>("passenger_kg", {.from = 50, .to = 200}).value_or(rules_.passenger_mass);
  rules_.fuel_reserve =
      in_.may<double>("fuel_reserve", {.from = 0.1, .to = 0.9}).value_or(rules_.fuel_reserve);
  rules_.wettest_towing =
      in_.word("wettest_towing", wetness_words(), Presence::may).value_or(rules_.wettest_towing);
}

BulletinStep RulesReader::read_step(TableReader in, const BulletinStep& otherwise) {
  const BulletinStep step{
      .keep_off =
          in.may<Metres>("keep_off_m", {.from = 0, .to = 2'000}).value_or(otherwise.keep_off),
      .decision_may_permit =
          in.yes_no("decision_may_permit", Presence::may).value_or(otherwise.decision_may_permit),
      .all_closed = in.yes_no("all_closed", Presence::may).value_or(otherwise.all_closed)};
  in.refuse_rest();
  return step;
}

/// Whether a level keeps off at least as far as the one below it, and permits no more.
bool is_as_strict(const std::array<BulletinStep, 5>& bulletin, std::size_t index) {
  const BulletinStep& step = bulletin.at(index);
  const BulletinStep& below = bulletin.at(index - 1);
  return step.all_closed || (!below.all_closed && step.keep_off >= below.keep_off &&
                             (below.decision_may_permit || !step.decision_may_permit));
}

void RulesReader::read_bulletin() {
  TableReader in = in_.table("bulletin");
  for (std::size_t index = 0; index < rules_.bulletin.size(); ++index) {
    const std::string key = "level_" + std::to_string(index + 1);
    BulletinStep& step = rules_.bulletin.at(index);
    step = read_step(in.table(key), step);
    if (index > 0 && !is_as_strict(rules_.bulletin, index)) {
      in.fault(key, {"is less strict than the level below it",
                     "keep off at least as far, and permit no more"});
    }
  }
  in.refuse_rest();
}

DriverLevel RulesReader::read_level(const NamedReader& named) const {
  TableReader in = named.reader;
  DriverLevel level{
      .name = named.name,
      .allowed_share = in.must<double>("allowed_share", kShare),
      .may_tow = in.yes_no("may_tow").value_or(false),
      .may_carry_passengers = in.yes_no("may_carry_passengers", Presence::may).value_or(false),
      .wettest_towing = in.word("wettest_towing", wetness_words()).value_or(snow::Wetness::dry)};
  if (level.allowed_share > rules_.allowed_share) {
    in.fault("allowed_share",
             {"is above the site's " + shortest(rules_.allowed_share), "lower it to that at most"});
  }
  level.hours = read_hours(in);
  in.refuse_rest();
  return level;
}

void RulesReader::read_driver_levels() {
  std::vector<DriverLevel> levels;
  TableReader drivers = in_.table("driver");
  for (const NamedReader& named : drivers.named_tables()) {
    levels.push_back(read_level(named));
  }
  if (!levels.empty()) {
    rules_.driver_levels = std::move(levels);
  }
}

Rules RulesReader::read() {
  read_margins();
  read_distances();
  read_people_and_fuel();
  read_bulletin();
  read_driver_levels();
  read_day_rules(in_, rules_);
  rules_.grip = snow::GripLaw{read_grip(in_)};
  in_.refuse_rest();
  if (in_.faults() > 0) {
    rules_.allowed_share = std::nan("");
  }
  return rules_;
}

/// Every key, in order; those of tables behind the table's name.
std::vector<std::string> keys_in(const Node& node, const std::string& before) {
  std::vector<std::string> keys;
  if (const auto* table = std::get_if<Table>(&node.value)) {
    for (const Member& member : *table) {
      keys.push_back(before + member.key);
      std::ranges::move(keys_in(member.node, keys.back() + "."), std::back_inserter(keys));
    }
  }
  return keys;
}

/// Keys that hold values, no tables.
std::vector<std::string> leaves_in(const Node& node, const std::string& before) {
  const auto* table = std::get_if<Table>(&node.value);
  if (table == nullptr) {
    return {before};
  }
  std::vector<std::string> leaves;
  for (const Member& member : *table) {
    const std::string path = before.empty() ? member.key : before + "." + member.key;
    std::ranges::move(leaves_in(member.node, path), std::back_inserter(leaves));
  }
  return leaves;
}

Node change_tree(const std::string& text) {
  return parse_text(text, {.path = "", .shown = text});
}

/// Lays one tree of tables over another.
void lay_over(Node& under, const Node& over) {
  auto* below = std::get_if<Table>(&under.value);
  const auto* above = std::get_if<Table>(&over.value);
  if (below == nullptr || above == nullptr) {
    under = over;
    return;
  }
  for (const Member& member : *above) {
    const auto same = std::ranges::find(*below, member.key, &Member::key);
    if (same == below->end()) {
      below->push_back(member);
    } else {
      lay_over(same->node, member.node);
    }
  }
}

base::Reading<Rules> rules_in(const Node& root, FaultLog log) {
  TableReader top{root, "", log};
  top.expect_schema();
  Rules rules = RulesReader{top}.read();
  rules.said = keys_in(root, "");
  std::ranges::sort(rules.said);
  return {.data = std::move(rules), .faults = log.in_order()};
}

}  // namespace

base::Reading<Rules> read_rules(const TextFile& file) {
  return rules_in(parse_file(file), FaultLog{file.shown});
}

RuleChange rule_change(const std::string& text) {
  const std::vector<std::string> leaves = leaves_in(change_tree(text), "");
  if (leaves.size() != 1 || leaves.front().empty()) {
    throw base::BadInput{{.file = text,
                          .place = "",
                          .problem = "is no single rule",
                          .remedy = "write one key and its value, as 'most_wind_kmh = 50'"}};
  }
  return {.key = leaves.front(), .text = text};
}

base::Reading<Rules> read_rules_with(const TextFile& file, const std::vector<RuleChange>& changes) {
  Node root = parse_file(file);
  for (const RuleChange& change : changes) {
    lay_over(root, change_tree(change.text));
  }
  return rules_in(root, FaultLog{changes.empty() ? file.shown : changes.back().text});
}

}  // namespace rimehaul::ports::toml
