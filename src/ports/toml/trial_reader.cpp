#include "ports/toml/trial_reader.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "snow/grip_trials.h"
#include "units/rounding.h"

namespace rimehaul::ports::toml {

namespace {

using snow::Pulled;
using units::ForceRatio;
using units::Slope;
using units::Spread;

constexpr std::array<Word<Pulled>, 6> kPulled{{{"drawbar", Pulled::drawbar},
                                               {"carrier_rolling", Pulled::carrier_rolling},
                                               {"trailer_rolling", Pulled::trailer_rolling},
                                               {"trailer_start", Pulled::trailer_start},
                                               {"carrier_side", Pulled::carrier_side},
                                               {"trailer_side", Pulled::trailer_side}}};
constexpr Range kShare{.above = 0, .to = 1};
constexpr Range kGrade{.from = -20, .to = 20};
constexpr Range kError{.from = 0, .to = 5};
constexpr Range kHeld{.from = 0, .to = 45};
constexpr double kGradeError_deg = 0.5;  // estimate: a hand-held inclinometer

Slope error_in(TableReader& in) {
  return Slope::from_degrees(in.may<double>("grade_error_deg", kError).value_or(kGradeError_deg));
}

snow::TrialGround ground_in(TableReader& in) {
  const double grade_deg = in.must<double>("grade_deg", kGrade);
  return {Slope::from_degrees(grade_deg), error_in(in)};
}

std::vector<Slope> slopes_of(const std::vector<double>& degrees) {
  std::vector<Slope> slopes;
  slopes.reserve(degrees.size());
  std::ranges::transform(degrees, std::back_inserter(slopes), Slope::from_degrees);
  return slopes;
}

/// Notes what trials come to in a grip entry.
class TrialNotes {
 public:
  explicit TrialNotes(snow::MeasuredGrip& entry) : entry_{&entry} {}

  // Of several trials of one number the most cautious counts.
  /// The low side, for what a rig holds on by.
  void holds_by(TableReader& in, std::optional<ForceRatio> snow::MeasuredGrip::*number,
                double low) {
    if (possible(in, low)) {
      std::optional<ForceRatio>& ratio = entry_->*number;
      ratio = ForceRatio{ratio ? std::min(ratio->value(), low) : low};
    }
  }

  void resists(TableReader& in, std::optional<snow::ForceRange> snow::MeasuredGrip::*number,
               const Spread& spread) {
    if (possible(in, spread.low) && possible(in, spread.high)) {
      const auto& before = entry_->*number;
      entry_->*number = snow::ForceRange{
          ForceRatio{before ? std::min(before->low.value(), spread.low) : spread.low},
          ForceRatio{before ? std::max(before->high.value(), spread.high) : spread.high}};
    }
  }

  void starts(TableReader& in, double high) {
    if (possible(in, high)) {
      const auto& before = entry_->trailer_start;
      entry_->trailer_start = ForceRatio{before ? std::max(before->value(), high) : high};
    }
  }

  void tell(const std::string& words) { entry_->source += "; " + words; }

 private:
  static bool possible(TableReader& in, double ratio) {
    if (ratio > 0.0 && ratio <= 1.0) {
      return true;
    }
    in.fault({"comes to " + units::text_of(ratio, 3, units::Round::nearest) +
                  " of the weight at its bad side, which no grip is",
              "look at masses, grade and spread, and try again"});
    return false;
  }

  snow::MeasuredGrip* entry_;
};

void note_pulls(TableReader& in, Pulled what, const Spread& spread, TrialNotes& notes) {
  switch (what) {
    case Pulled::drawbar:
      return notes.holds_by(in, &snow::MeasuredGrip::traction, spread.low);
    case Pulled::carrier_rolling:
      return notes.resists(in, &snow::MeasuredGrip::carrier_resistance, spread);
    case Pulled::trailer_rolling:
      return notes.resists(in, &snow::MeasuredGrip::trailer_resistance, spread);
    case Pulled::trailer_start:
      return notes.starts(in, spread.high);
    case Pulled::carrier_side:
      return notes.holds_by(in, &snow::MeasuredGrip::lateral, spread.low);
    case Pulled::trailer_side:
      return notes.holds_by(in, &snow::MeasuredGrip::trailer_lateral, spread.low);
  }
}

Complaint too_few() {
  return {"has fewer than 5 numbers, which say nothing of the next", "try more often"};
}

void read_pulls(TableReader& in, TrialNotes& notes) {
  const std::size_t faults = in.faults();
  const auto what = in.word("of", kPulled);
  snow::Pulls pulls;
  pulls.what = what.value_or(Pulled::drawbar);
  pulls.mass = in.must<units::Kilograms>("mass_kg", {.above = 0, .to = 20'000});
  if (what == Pulled::drawbar) {
    pulls.track_share = in.must<double>("track_share", kShare);
  }
  pulls.ground = ground_in(in);
  for (const double newton : in.list("pull_n", {.above = 0, .to = 200'000})) {
    pulls.read.emplace_back(newton);
  }
  in.refuse_rest();
  if (in.faults() != faults || !what) {
    return;
  }
  const auto spread = snow::ratio_of(pulls);
  if (!spread) {
    return in.fault("pull_n", too_few());
  }
  note_pulls(in, *what, *spread, notes);
  const auto word = std::ranges::find(kPulled, *what, &Word<Pulled>::meaning);
  notes.tell(std::string{word->word} + " by " + snow::words_for(*spread, "pulls"));
}

void read_stops(TableReader& in, TrialNotes& notes) {
  const std::size_t faults = in.faults();
  constexpr std::array<Range, 2> kStop{{{.above = 0, .to = 100}, {.above = 0, .to = 1'000}}};
  constexpr double kKmhPerMps = 3.6;
  snow::Stops stops;
  stops.track_share = in.must<double>("track_share", kShare);
  stops.ground = ground_in(in);
  for (const std::vector<double>& row : in.rows("kmh_and_m", kStop)) {
    stops.stops.push_back(
        {units::MetresPerSecond{row.front() / kKmhPerMps}, units::Metres{row.back()}});
  }
  in.refuse_rest();
  if (in.faults() != faults) {
    return;
  }
  const auto spread = snow::ratio_of(stops);
  if (!spread) {
    return in.fault("kmh_and_m", too_few());
  }
  notes.holds_by(in, &snow::MeasuredGrip::brake, spread->low);
  notes.tell("brake by " + snow::words_for(*spread, "stops"));
}

void read_holds(TableReader& in, TrialNotes& notes) {
  const std::size_t faults = in.faults();
  snow::Holds holds;
  holds.track_share = in.must<double>("track_share", kShare);
  holds.error = error_in(in);
  holds.held = slopes_of(in.list("held_deg", kHeld));
  holds.slid = slopes_of(in.list("slid_deg", kHeld, Presence::may));
  in.refuse_rest();
  if (in.faults() != faults) {
    return;
  }
  const auto ratio = snow::ratio_of(holds);
  if (!ratio) {
    return in.fault("held_deg", {"proves nothing: fewer than 3, or none gentler than where it slid",
                                 "try gentler slopes"});
  }
  notes.holds_by(in, &snow::MeasuredGrip::brake, ratio->value());
  notes.tell("brake by " + std::to_string(holds.held.size()) + " slopes held, at least " +
             units::text_of(ratio->value(), 3, units::Round::down));
}

}  // namespace

void read_trials(TableReader& in, snow::MeasuredGrip& entry) {
  snow::MeasuredGrip tried;
  TrialNotes notes{tried};
  for (TableReader& pulls : in.tables("pulls")) {
    read_pulls(pulls, notes);
  }
  for (TableReader& stops : in.tables("stops")) {
    read_stops(stops, notes);
  }
  for (TableReader& holds : in.tables("holds")) {
    read_holds(holds, notes);
  }
  const auto take = [&in](auto& said, const auto& found, const char* key) {
    if (said && found) {
      in.fault(key, {"is given as a number and by a trial", "keep one of them"});
    } else if (found) {
      said = found;
    }
  };
  take(entry.traction, tried.traction, "traction");
  take(entry.brake, tried.brake, "brake");
  take(entry.lateral, tried.lateral, "lateral");
  take(entry.trailer_lateral, tried.trailer_lateral, "trailer_lateral");
  take(entry.carrier_resistance, tried.carrier_resistance, "carrier_resistance");
  take(entry.trailer_resistance, tried.trailer_resistance, "trailer_resistance");
  take(entry.trailer_start, tried.trailer_start, "trailer_start");
  entry.source += tried.source;
}

}  // namespace rimehaul::ports::toml
