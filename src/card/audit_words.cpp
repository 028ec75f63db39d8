#include "card/audit_words.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

using audit::AuditedPlace;
using audit::Band;

namespace {

std::string whole_metres(units::Metres metres) {
  return units::text_of(metres.value(), 0, units::Round::nearest) + " m";
}

std::string confidence_words(const AuditReport& report, const AuditedRig& rig) {
  if (!rig.tolerance) {
    return "error of the heights not declared, so every slope is unknown";
  }
  return "every slope is taken " + units::text_of(*rig.tolerance, units::Round::up) +
         " steeper, either way, for the heights' error (" + confidence_text(report.confidence_k) +
         " sure)";
}

std::string rig_words(const AuditedRig& rig) {
  std::string words = rig.name + ": " + rig.carrier;
  words += rig.trailer.empty() ? ", solo" : " towing " + rig.trailer;
  words += ", driver's level " + rig.driver_level + ", allowed " + allowed_text(rig.allowed_share) +
           " of every limit";
  return words;
}

std::string snow_words(const AuditReport& report) {
  std::string words;
  std::set<snow::SnowState> told;
  for (const AuditedCase& one : report.cases) {
    if (told.insert(one.snow).second) {
      words += words.empty() ? "" : ", ";
      words += snow::words_for(one.snow.wetness);
    }
  }
  if (!report.cases.empty()) {
    words += "; " + std::string{snow::words_for(report.cases.front().snow.surface)};
  }
  return words + "; " + told_text(report.snow_told_by, report.local_clock);
}

}  // namespace

std::string case_words(const AuditReport& report, std::size_t audited_case) {
  const AuditedCase& one = report.cases.at(audited_case);
  return report.rigs.at(one.rig).name + ", " + one.load_name + ", " +
         snow::words_for(one.snow.wetness);
}

std::string span_words(const AuditedPlace& place) {
  if (place.on == audit::On::joint) {
    return "joint at " + whole_metres(place.at);
  }
  return whole_metres(place.span.from) + " to " + whole_metres(place.span.to);
}

std::string_view way_words(trails::Way way) {
  return way == trails::Way::as_drawn ? "forward" : "backward";
}

std::string interval_words(const AuditedPlace& place) {
  const passage::Finding& finding = place.finding;
  const bool share_tells = finding.share && finding.missing.empty() && finding.refused.empty();
  if (!share_tells || !place.found_share || *place.found_share == *finding.share) {
    return words::outcome(finding);
  }
  return share_text(*place.found_share) + " found, up to " + words::outcome(finding);
}

std::string numbers_words(const AuditedPlace& place) {
  const passage::Finding& finding = place.finding;
  if (!std::isfinite(finding.demand.value) || !std::isfinite(finding.capacity.value)) {
    return "";
  }
  return amount_text(finding.demand, Side::demand) + " against " +
         amount_text(finding.capacity, Side::capacity);
}

std::string_view band_words(Band band) {
  switch (band) {
    case Band::to_half:
      return "0-50 %";
    case Band::to_allowed:
      return "to allowed";
    case Band::to_whole:
      return "to 100 %";
    case Band::over_whole:
      return "over 100 %";
    case Band::closed:
      break;
  }
  return "closed";
}

std::string_view key_of(Band band) {
  switch (band) {
    case Band::to_half:
      return "to_half";
    case Band::to_allowed:
      return "to_allowed";
    case Band::to_whole:
      return "to_whole";
    case Band::over_whole:
      return "over_whole";
    case Band::closed:
      break;
  }
  return "closed";
}

std::string outcome_words(const AuditReport& report) {
  const std::string all = std::to_string(report.trails.size());
  if (!report.failed()) {
    return "PASSED: no exceedance on any of " + all + " trails";
  }
  std::set<std::size_t> trails;
  for (const AuditRow& row : report.exceedances) {
    trails.insert(row.place.trail);
  }
  const std::size_t count = report.exceedances.size();
  return "FAILED: " + std::to_string(count) + (count == 1 ? " exceedance" : " exceedances") +
         " on " + std::to_string(trails.size()) + " of " + all + " trails";
}

std::string metres_words(units::Metres metres) {
  std::string digits = units::text_of(metres.value(), 0, units::Round::nearest);
  constexpr std::size_t kGroup = 3;
  for (std::size_t at = digits.size(); at > kGroup; at -= kGroup) {
    digits.insert(at - kGroup, 1, ' ');
  }
  return digits;
}

std::string cautions_words() {
  // The first speaks of a card, the last of a driver.
  const std::vector<std::string> all = words::cautions();
  std::string text{words::planning_aid()};
  for (std::size_t i = 1; i + 1 < all.size(); ++i) {
    text += " ";
    text += all[i];
  }
  return text;
}

std::vector<LabelledLine> head_lines(const AuditReport& report) {
  std::vector<LabelledLine> lines{
      {"Made", local_text(report.made_from.made, report.local_clock) + ", for " +
                   (report.for_whom.empty() ? "nobody by name" : report.for_whom)},
      {"Hour", "judged for " + local_and_zone_text(report.when, report.local_clock)},
      {"Snow", snow_words(report)},
      {"Weather", words::weather(report.weather)}};
  for (const AuditedRig& rig : report.rigs) {
    lines.push_back({"Rig", rig_words(rig)});
  }
  for (std::size_t i = 0; i < report.rigs.size(); ++i) {
    if (i == 0 || report.rigs[i].tolerance != report.rigs.front().tolerance) {
      lines.push_back({"Error", (i == 0 ? "" : report.rigs[i].name + ": ") +
                                    confidence_words(report, report.rigs[i])});
    }
  }
  for (const std::string& load : report.loads) {
    lines.push_back({"Load", load});
  }
  return lines;
}

std::vector<ExceedanceGroup> groups_of(const AuditReport& report) {
  using Key = std::tuple<std::size_t, passage::Check, passage::Stand, audit::On, std::string>;
  std::map<Key, ExceedanceGroup> by_key;
  for (const AuditRow& row : report.exceedances) {
    const AuditedPlace& place = row.place;
    ExceedanceGroup& group = by_key[{place.trail, place.finding.check, place.stand, place.on,
                                     place.finding.missing + place.finding.refused}];
    group.trail = place.trail;
    group.rows.push_back(&row);
    const bool worse =
        group.worst == nullptr || passage::binds_before(place.finding, group.worst->place.finding);
    group.worst = worse ? &row : group.worst;
  }
  std::vector<ExceedanceGroup> groups;
  groups.reserve(by_key.size());
  for (auto& [key, group] : by_key) {
    std::set<std::size_t> cases;
    for (const AuditRow* row : group.rows) {
      cases.insert(row->audited_case);
    }
    group.cases = cases.size();
    groups.push_back(std::move(group));
  }
  std::ranges::stable_sort(groups, [](const ExceedanceGroup& one, const ExceedanceGroup& other) {
    if (one.trail != other.trail) {
      return one.trail < other.trail;
    }
    return passage::binds_before(one.worst->place.finding, other.worst->place.finding);
  });
  return groups;
}

std::vector<AlikeGroups> alike_groups(const std::vector<ExceedanceGroup>& groups,
                                      std::size_t trail_count) {
  using Key = std::tuple<passage::Check, audit::On, std::string>;
  std::map<Key, AlikeGroups> by_key;
  for (const ExceedanceGroup& group : groups) {
    const AuditedPlace& place = group.worst->place;
    const std::string reason = place.finding.missing + place.finding.refused;
    if (!reason.empty() || !words::has_place(place.finding.check)) {
      by_key[{place.finding.check, place.on, reason}].groups.push_back(&group);
    }
  }
  constexpr std::size_t kMoreThan = 3;
  std::vector<AlikeGroups> alike;
  for (auto& [key, all] : by_key) {
    if (all.groups.size() > kMoreThan && all.groups.size() * 3 >= trail_count) {
      alike.push_back(std::move(all));
    }
  }
  return alike;
}

}  // namespace rimehaul::card
