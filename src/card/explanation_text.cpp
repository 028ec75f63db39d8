// The explanation of a place as text: every finding with all that is needed to work it out by hand.
#include <algorithm>
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
  return exact_text(units::amount(range.low), Side::input) + " to " +
         exact_text(units::amount(range.high), Side::input);
}

/// "n_c = 1 / sqrt(1 + G^2 + K^2) = 0.99556", or "m_c = 1060.1 kg (load)" where it is given.
std::string words_of(const passage::Working& working) {
  const std::string value = exact_text(working.value, Side::input);
  return working.formula.empty() ? working.symbol + " = " + value + " (" +
                                       std::string{words::origin(working.origin)} + ")"
                                 : working.symbol + " = " + working.formula + " = " + value;
}

std::string position_of(const geo::MapPoint& place) {
  return "east " + units::text_of(place.east.value(), 1, units::Round::nearest) + " m, north " +
         units::text_of(place.north.value(), 1, units::Round::nearest) + " m";
}

/// Everything that an explanation says of one finding, given what stands above it.
class FindingWriter {
 public:
  FindingWriter(const ExplainedWay& way, units::Instant asked_for,
                const units::LocalClock& local_clock)
      : way_{way}, asked_for_{asked_for}, local_clock_{local_clock} {}

  void write(const ExplainedFinding& explained, Sheet& sheet) const {
    const passage::Finding& finding = explained.finding;
    const passage::CheckFacts& facts = passage::facts_of(finding.check);
    sheet.labelled({0, 4, explained.binds ? ">>>" : " - "},
                   std::string{facts.title} + ": " + std::string{words::stand(explained.stand)} +
                       ", " + words::outcome(finding) + (explained.binds ? " (binds)" : ""));
    write_numbers(finding, sheet);
    write_where(explained, sheet);
    if (finding.tank != passage::Tank::as_loaded) {
      detail(sheet, "fuel", "worst " + std::string{words::tank(finding.tank)});
    }
    detail(sheet, "formula", std::string{explained.formula});
    std::string_view label = "inputs";
    for (const passage::Input& input : finding.inputs.all()) {
      detail(sheet, label,
             std::string{input.name} + " = " + exact_text(input.value, Side::input) + " (" +
                 origin_of(input, explained) + ")");
      label = "";
    }
    label = "besides";
    for (const passage::Working& working : explained.besides) {
      detail(sheet, label, words_of(working));
      label = "";
    }
    detail(sheet, "source", explained.source);
    detail(sheet, "page", std::string{facts.page});
  }

 private:
  /// Demand against capacity, or how a rule is kept that compares no numbers.
  static void write_numbers(const passage::Finding& finding, Sheet& sheet) {
    if (std::isfinite(finding.demand.value) || std::isfinite(finding.capacity.value)) {
      detail(sheet, "demand", exact_text(finding.demand, Side::demand));
      detail(sheet, "capacity", exact_text(finding.capacity, Side::capacity));
    } else if (!finding.how.empty()) {
      detail(sheet, "numbers", "none: " + std::string{finding.how});
    }
  }

  /// The snow and the hour, where there is more than one; the place of what the whole leg has once.
  void write_where(const ExplainedFinding& explained, Sheet& sheet) const {
    const bool of_leg =
        words::has_place(explained.finding.check) &&
        (explained.finding.at < way_.piece.from || explained.finding.at > way_.piece.to);
    if (of_leg) {
      detail(sheet, "place",
             where_text({explained.finding.at, explained.finding.at}, way_.leg.length) +
                 " of the leg, which is judged as a whole");
    }
    const bool later = explained.when > asked_for_;
    if ((way_.snow.size() > 1 && explained.snow) || later) {
      detail(sheet, "worst in",
             (explained.snow ? words::snow_state(*explained.snow) : std::string{"what is said"}) +
                 (later ? ", " + local_text(explained.when, local_clock_) : ""));
    }
  }

  [[nodiscard]] std::string origin_of(const passage::Input& input,
                                      const ExplainedFinding& explained) const {
    if (input.origin != passage::Origin::derived) {
      return std::string{words::origin(input.origin)};
    }
    const auto has = [&](const std::vector<passage::Working>& numbers) {
      return std::ranges::any_of(
          numbers, [&](const passage::Working& working) { return working.symbol == input.name; });
    };
    if (has(explained.besides)) {
      return "worked out below";
    }
    const bool is_shared = std::ranges::any_of(way_.shared, [&](const SharedNumbers& shared) {
      return explained.snow == shared.snow && explained.finding.tank == shared.tank &&
             has(shared.numbers);
    });
    return is_shared ? "worked out above" : "worked out from the others";
  }

  const ExplainedWay& way_;
  units::Instant asked_for_;
  units::LocalClock local_clock_;
};

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

void write_lie(std::string_view label, const std::optional<passage::Lie>& lie, Sheet& sheet) {
  if (!lie) {
    item(sheet, label, "ground unknown: heights or their error are missing here");
    return;
  }
  item(sheet, label,
       "grade " + text_of(SlopeRange{lie->found.grade_low, lie->found.grade_high}) +
           " found; + climbs");
  item(sheet, "",
       "across " + text_of(SlopeRange{lie->found.cross_low, lie->found.cross_high}) +
           " found; + falls to the right");
}

void write_ground(const ExplainedWay& way, Sheet& sheet) {
  write_lie("Carrier", way.ground.carrier, sheet);
  // Without a trailer there is but one set of numbers.
  const bool towing = std::ranges::any_of(way.shared, [](const SharedNumbers& shared) {
    return std::ranges::any_of(
        shared.numbers, [](const passage::Working& working) { return working.symbol == "m_t"; });
  });
  if (towing) {
    write_lie("Trailer", way.ground.trailer, sheet);
  }
}

void write_shared(const SharedNumbers& shared, Sheet& sheet) {
  sheet.blank();
  sheet.paragraph("Numbers that several checks share, in " + words::snow_state(shared.snow) +
                  " snow, " + std::string{words::tank(shared.tank)} +
                  ", the error added to every slope:");
  std::string_view page;
  for (const passage::Working& working : shared.numbers) {
    if (working.page != page) {
      page = working.page;
      sheet.labelled({0, 0, ""}, "  " + std::string{page});
    }
    detail(sheet, "", words_of(working));
  }
}

std::string share_words(const std::optional<double>& share, double allowed_share) {
  if (!share) {
    return "closed";
  }
  return units::text_of(*share * 100.0, 1, units::Round::up) + " %" +
         (*share <= allowed_share ? "" : " (over)");
}

void write_what_if(const ExplainedWay& way, double allowed_share, Sheet& sheet) {
  if (way.what_if.empty()) {
    return;
  }
  sheet.blank();
  sheet.paragraph(
      "What if, each alone, all else as asked for; what is not named moves it by less than 0.1 %:");
  for (const MovingShare& moving : way.what_if) {
    std::string text = std::string{passage::facts_of(moving.check).title} + ": now " +
                       share_words(moving.now, allowed_share);
    for (const ChangedShare& changed : moving.then) {
      text += "; " + std::string{changed.change} + " " + share_words(changed.share, allowed_share);
    }
    sheet.labelled({0, 4, " - "}, text);
  }
}

void write_way(const ExplainedWay& way, const Explanation& explanation, Sheet& sheet) {
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
  write_ground(way, sheet);
  for (const SharedNumbers& shared : way.shared) {
    write_shared(shared, sheet);
  }
  sheet.blank();
  const FindingWriter writer{way, explanation.when, explanation.local_clock};
  for (const ExplainedFinding& explained : way.findings) {
    writer.write(explained, sheet);
  }
  write_what_if(way, explanation.allowed_share, sheet);
}

/// How far every slope by the heights may be off, and what that is made of.
std::string error_words(const Explanation& explanation) {
  if (!explanation.tolerance || !explanation.sigma) {
    return "not declared, so every slope is unknown";
  }
  const double sigma = explanation.sigma->ratio();
  const double between_cells = explanation.tolerance->ratio() - explanation.confidence_k * sigma;
  return "every slope by the heights is taken " +
         exact_text(units::amount(*explanation.tolerance), Side::demand) +
         " steeper, either way: " +
         units::text_of(explanation.confidence_k, 3, units::Round::nearest) + " x " +
         exact_text(units::amount(*explanation.sigma), Side::demand) +
         ", the standard deviation of a slope, + " +
         units::text_of(between_cells, 5, units::Round::up) + " between the cells";
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
  item(sheet, "Hour", local_and_zone_text(explanation.when, explanation.local_clock));
  item(sheet, "Snow",
       explanation.snow + "; " + told_text(explanation.snow_told_by, explanation.local_clock));
  item(sheet, "Allowed", allowed_text(explanation.allowed_share) + " of every limit");
  item(sheet, "Error", error_words(explanation));
  for (const std::string& source : explanation.sources) {
    item(sheet, "Source", source);
  }
  sheet.paragraph(words::planning_aid());
  for (const ExplainedWay& way : explanation.ways) {
    write_way(way, explanation, sheet);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
