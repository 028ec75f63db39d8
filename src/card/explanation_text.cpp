// The explanation of a place as text: every finding with all that is needed to work it out by hand.
#include <cmath>

#include "card/explanation.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kLabelWidth = 10;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

void detail(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({4, kLabelWidth, label}, text);
}

struct SlopeRange {
  units::Slope low;
  units::Slope high;
};

std::string text_of(const SlopeRange& range) {
  return units::text_of(range.low, units::Round::nearest) + " to " +
         units::text_of(range.high, units::Round::nearest);
}

std::string position_of(const geo::MapPoint& place) {
  return "east " + units::text_of(place.east.value(), 1, units::Round::nearest) + " m, north " +
         units::text_of(place.north.value(), 1, units::Round::nearest) + " m";
}

void write_finding(const ExplainedFinding& explained, Sheet& sheet) {
  const passage::Finding& finding = explained.finding;
  const passage::CheckFacts& facts = passage::facts_of(finding.check);
  sheet.labelled({0, 4, explained.binds ? ">>>" : " - "},
                 std::string{facts.title} + ": " + std::string{words::stand(explained.stand)} +
                     ", " + words::outcome(finding) + (explained.binds ? " (binds)" : ""));
  const bool has_numbers =
      std::isfinite(finding.demand.value) || std::isfinite(finding.capacity.value);
  if (has_numbers || !finding.inputs.all().empty()) {
    detail(sheet, "demand", exact_text(finding.demand, Side::demand));
    detail(sheet, "capacity", exact_text(finding.capacity, Side::capacity));
  }
  detail(sheet, "formula", std::string{facts.formula});
  std::string_view label = "inputs";
  for (const passage::Input& input : finding.inputs.all()) {
    detail(sheet, label,
           std::string{input.name} + " = " + exact_text(input.value, Side::input) + " (" +
               std::string{words::origin(input.origin)} + ")");
    label = "";
  }
  detail(sheet, "source", std::string{facts.source});
  detail(sheet, "page", std::string{facts.page});
}

/// What opens it, where it is restricted.
void write_openings(const ExplainedVerdict& told, Sheet& sheet) {
  std::vector<std::string> lines = words::opens_with_loads(told.loads);
  if (lines.empty() && !told.decision.empty()) {
    lines.push_back(words::opens_by_decision(told.decision));
  } else if (!told.decision.empty()) {
    for (std::string& line : lines) {
      line += words::with_decision_besides();
    }
  }
  std::string_view label = "Opens by";
  for (const std::string& line : lines) {
    item(sheet, label, line);
    label = "or by";
  }
}

void write_leg(const ExplainedLeg& leg, Sheet& sheet) {
  const passage::Finding& binding = leg.binding;
  const std::string where =
      words::has_place(binding.check) ? " " + where_text({binding.at, binding.at}, leg.length) : "";
  item(sheet, "Leg",
       std::string{passage::words_for(leg.verdict.verdict)} + " over its " +
           distance_text(leg.length) +
           "; binds: " + std::string{passage::facts_of(binding.check).title} + where + ", " +
           words::outcome(binding));
  write_openings(leg.verdict, sheet);
}

void write_way(const ExplainedWay& way, Sheet& sheet) {
  sheet.heading(std::string{way.way == trails::Way::as_drawn ? "FORWARD" : "BACKWARD"} + ", " +
                way.from + " to " + way.to + ", heading " + bearing_text(way.heading) + ": " +
                passage::words_for(way.verdict.verdict));
  write_leg(way.leg, sheet);
  const std::string piece = units::text_of(way.piece.from.value(), 1, units::Round::nearest) +
                            " m to " +
                            units::text_of(way.piece.to.value(), 1, units::Round::nearest) + " m";
  item(sheet, "Piece",
       piece + " of the leg, judged as one: " + passage::words_for(way.verdict.verdict));
  write_openings(way.verdict, sheet);
  if (way.ground) {
    item(sheet, "Grade",
         text_of(SlopeRange{way.ground->grade_low, way.ground->grade_high}) +
             " under the carrier, error not yet added; + climbs");
    item(sheet, "Across",
         text_of(SlopeRange{way.ground->cross_low, way.ground->cross_high}) +
             "; + falls to the right");
  } else {
    item(sheet, "Ground", "unknown: heights are missing here");
  }
  for (const ExplainedFinding& explained : way.findings) {
    write_finding(explained, sheet);
  }
}

}  // namespace

std::string text_of(const Explanation& explanation, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"EXPLAIN", explanation.site});
  sheet.paragraph(explanation.trail + " at " +
                  units::text_of(explanation.at.value(), 1, units::Round::nearest) + " m");
  sheet.rule('=');
  item(sheet, "Place", position_of(explanation.place) + " (" + explanation.map_frame + ")");
  item(sheet, "Height",
       explanation.height
           ? units::text_of(explanation.height->above_datum_m(), 1, units::Round::nearest) + " m"
           : std::string{"unknown"});
  item(sheet, "Rig", explanation.rig);
  item(sheet, "Hour", local_and_zone_text(explanation.when, explanation.utc_offset_minutes));
  item(sheet, "Snow",
       explanation.snow + "; " +
           told_text(explanation.snow_told_by, explanation.utc_offset_minutes));
  item(sheet, "Allowed", allowed_text(explanation.allowed_share) + " of every limit");
  item(sheet, "Error",
       explanation.tolerance
           ? "every slope is taken " + units::text_of(*explanation.tolerance, units::Round::up) +
                 " steeper, either way, for the heights' error"
           : std::string{"not declared, so every slope is unknown"});
  for (const std::string& source : explanation.sources) {
    item(sheet, "Source", source);
  }
  sheet.paragraph(words::planning_aid());
  for (const ExplainedWay& way : explanation.ways) {
    write_way(way, sheet);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
