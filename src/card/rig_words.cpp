// What a rig sheet says, alike on the screen and on paper.
#include "card/rig_words.h"

#include <cmath>

#include "card/figures.h"
#include "card/rating_words.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using units::Round;

std::string length_words(units::Metres length) {
  return units::text_of(length.value(), 2, Round::nearest) + " m";
}

bool is_over_rating(const passage::Finding& finding) {
  return finding.share && *finding.share > 1.0;
}

std::string load_line(const SheetLoad& load, double allowed_share) {
  const passage::Finding& finding = load.finding;
  const passage::Stand stand = passage::stand_of(finding, allowed_share);
  std::string line = load.name;
  const bool is_share =
      finding.measure == passage::Measure::share && std::isfinite(finding.demand.value);
  if (is_share) {
    line += ": " + amount_text(finding.demand, Side::demand) + " on " +
            amount_text(finding.capacity, Side::capacity) + " rated";
  }
  line += ": " + (stand == passage::Stand::passes && !is_share ? std::string{"kept"}
                                                               : words::outcome(finding));
  if (stand == passage::Stand::passes) {
    return line;
  }
  return line + (is_over_rating(finding) ? ". OVERLOADED: over the rating itself"
                                         : ". CLOSED: " + std::string{words::stand(stand)});
}

}  // namespace

std::string_view tip_way_words(TipWay way) {
  switch (way) {
    case TipWay::over_the_right:
      return "right side";
    case TipWay::over_the_left:
      return "left side";
    case TipWay::over_the_rear:
      return "rear, climbing";
    case TipWay::over_the_front:
      return "front, descending";
  }
  return "";
}

std::string tip_words(units::Slope tip) {
  return std::isfinite(tip.ratio()) ? units::text_of(tip, Round::down) : "unknown";
}

std::string place_words(const rig::BodyPoint& place) {
  return "forward " + length_words(place.forward) + ", left " + length_words(place.left) + ", up " +
         length_words(place.up);
}

std::string scale_words(units::Kilograms mass) {
  return units::text_of(mass.value(), 0, Round::up) + " kg";
}

std::string load_headline(const RigSheet& sheet) {
  std::string overloaded;
  std::string closed;
  for (const SheetLoad& load : sheet.loads) {
    if (passage::stand_of(load.finding, sheet.allowed_share) != passage::Stand::passes) {
      std::string& names = is_over_rating(load.finding) ? overloaded : closed;
      names += (names.empty() ? "" : ", ") + load.name;
    }
  }
  if (overloaded.empty()) {
    return closed.empty() ? "" : "CLOSED as loaded: " + closed;
  }
  return "OVERLOADED, not driven: " + overloaded +
         (closed.empty() ? "" : "; CLOSED as loaded: " + closed);
}

std::vector<std::string> load_lines(const RigSheet& sheet) {
  std::vector<std::string> lines;
  for (const SheetLoad& load : sheet.loads) {
    lines.push_back(load_line(load, sheet.allowed_share));
  }
  return lines;
}

std::string ratings_line(const SheetRatings& ratings) {
  if (ratings.way == "trailer's own" && !ratings.ratings.climb && !ratings.ratings.descent &&
      !ratings.ratings.cross) {
    return "none given; the carrier's towing ratings hold";
  }
  return "climb " + rating_words(ratings.ratings.climb) + "; descent " +
         rating_words(ratings.ratings.descent) + "; cross-slope " +
         rating_words(ratings.ratings.cross);
}

std::vector<std::string> hitch_lines(const RigSheet& sheet) {
  if (!sheet.hitch) {
    return {};
  }
  const HitchOnSheet& hitch = *sheet.hitch;
  const auto metres = [](units::Metres length) {
    return units::text_of(length.value(), 2, Round::nearest) + " m";
  };
  const auto moment = [](units::NewtonMetres size) {
    return units::text_of(size.value(), 0, Round::nearest) + " N m";
  };
  const bool lifts = hitch.off_the_front >= units::NewtonMetres{0};
  return {"at " + place_words(hitch.on_carrier) + " from the rear end of the carrier's contact",
          "carries " + units::text_of(hitch.tongue.value(), 1, Round::up) +
              " kg, standing on level ground, " + metres(hitch.to_runners) +
              " ahead of the middle of the runners: " + moment(hitch.about_runners) + " about them",
          "this " + std::string{lifts ? "takes " : "adds "} +
              moment(lifts ? hitch.off_the_front : -hitch.off_the_front) +
              (lifts ? " off" : " to") + " the carrier's front, about the rear end of its contact",
          "each 100 N of pull takes " +
              moment(units::moment_of(units::Newtons{100}, hitch.on_carrier.up)) + " more off it"};
}

std::string tips_note(const RigSheet& sheet) {
  return "Tip angle: where a rigid body on firm ground goes over, hitch forces left out. Usable: "
         "what " +
         units::text_of(sheet.roll_over_reserve * 100.0, 0, Round::nearest) +
         " % of the angle square to each edge leaves (an estimate of the reserve for driving) when "
         "the low side sinks "
         "deeper; of this no more than the allowed share is driven.";
}

std::string pressure_words(units::Kilopascals pressure) {
  return units::text_of(pressure.value(), 1, Round::nearest) + " kPa";
}

}  // namespace rimehaul::card
