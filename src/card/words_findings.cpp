// The words of card/words.h that speak of findings.
#include "card/figures.h"
#include "card/words.h"
#include "passage/avalanche.h"
#include "passage/course.h"

namespace rimehaul::card::words {

namespace {

constexpr const char* kSaySnow =
    "--snow CLASS, or a snow report that speaks of this place and hour";
constexpr const char* kSayHeights = "heights that cover the trail, and their error in site.toml";

}  // namespace

std::string_view stand(passage::Stand stand) {
  switch (stand) {
    case passage::Stand::passes:
      return "passes";
    case passage::Stand::asks:
      return "asks for a decision";
    case passage::Stand::exceeds:
      return "over what is allowed";
    case passage::Stand::refused:
      return "refused";
    case passage::Stand::missing:
      return "not known, so closed";
  }
  return "";
}

std::string_view tank(passage::Tank tank) {
  return tank == passage::Tank::empty ? "with the tank empty" : "with the fuel it starts with";
}

std::string_view origin(passage::Origin origin) {
  switch (origin) {
    case passage::Origin::heights:
      return "heights";
    case passage::Origin::trail:
      return "trail";
    case passage::Origin::rig_sheet:
      return "rig sheet";
    case passage::Origin::load:
      return "load";
    case passage::Origin::grip:
      return "grip";
    case passage::Origin::rules:
      return "site rules";
    case passage::Origin::snow_report:
      return "snow and weather";
    case passage::Origin::mark:
      return "mark";
    case passage::Origin::physics:
      return "physics";
    case passage::Origin::derived:
      return "worked out";
  }
  return "";
}

std::string_view grip_standing(snow::GripStanding standing) {
  switch (standing) {
    case snow::GripStanding::published:
      return "published";
    case snow::GripStanding::site_measured:
      return "measured at the site";
    case snow::GripStanding::estimate:
      return "estimate";
  }
  return "";
}

std::string outcome(const passage::Finding& finding) {
  if (!finding.missing.empty()) {
    return "not known: " + finding.missing;
  }
  if (!finding.refused.empty()) {
    const bool by_the_site = passage::facts_of(finding.check).source == "site rule";
    return (by_the_site ? "refused by the site's rules: " : "refused: ") + finding.refused;
  }
  std::string asks = finding.asks.empty() ? "" : "asks for a decision: " + finding.asks;
  if (!asks.empty() && finding.share == 0.0) {
    return asks;
  }
  if (finding.measure == passage::Measure::rule && finding.share == 0.0) {
    return "a rule that is kept";
  }
  const std::string text = finding.share ? share_text(*finding.share) + " of the limit"
                                         : std::string{"no limit can be met"};
  return asks.empty() ? text : text + "; " + asks;
}

bool has_place(passage::Check check) {
  using enum passage::Check;
  switch (check) {
    case trail_attributes:
    case towed_mass:
    case payload:
    case trailer_payload:
    case seats:
    case visibility:
    case direction:
    case hours:
    case driver_level:
    case passengers:
    case wind:
    case rain:
    case tow_out:
    case order:
      return false;
    default:
      return true;
  }
}

namespace {

std::string where_to_say_of_exposure(const passage::Finding& finding) {
  if (finding.missing == passage::kNoBulletin) {
    return "--bulletin LEVEL, or the bulletin in the snow report";
  }
  if (finding.missing == passage::kNoKeepOff) {
    return "the bulletin policy in rules.toml";
  }
  return "heights that cover the ground around the trail";
}

}  // namespace

std::string where_to_say(const passage::Finding& finding) {
  using enum passage::Check;
  if (finding.missing == passage::kNoHeightsHere) {
    return kSayHeights;
  }
  if (finding.missing == passage::kNoSnowHere) {
    return kSaySnow;
  }
  if (finding.missing == passage::kNoNewSnow) {
    return "--new-snow CM, or new_snow_cm in the snow report";
  }
  switch (finding.check) {
    case heights_known:
      return kSayHeights;
    case snow_known:
      return kSaySnow;
    case trail_attributes:
    case off_tracking:
      return "the trail's attributes in the trails file";
    case climb_rating:
    case descent_rating:
    case cross_rating:
    case trailer_rating:
      return "the ratings in the rig sheet, or a named and dated site limit";
    case avalanche:
      return where_to_say_of_exposure(finding);
    case visibility:
      return "--visibility METRES, or visibility in the snow report; marker_m of the trail";
    case wind:
      return "--wind KMH, or the wind in the snow report";
    case rain:
      return "--rain yes or no, or rain in the snow report";
    case grooming:
      return "[[groomed]] in the snow report: trails and finished";
    case tow_out:
      return "tow_out_ready in the snow report";
    case alone:
      return "the dead zone drawn as a line in the marks file";
    case driver_level:
    case passengers:
      return "the driver's level in rules.toml";
    case mark:
      return "today's [[status]] of the mark in the snow report; its survey in the marks file";
    case zone:
      return "the zone's attributes in the zones file";
    default:
      return "the rig sheet and the site's rules";
  }
}

}  // namespace rimehaul::card::words
