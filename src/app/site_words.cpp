#include "app/site_words.h"

#include <string_view>

#include "app/names.h"
#include "base/nearest_name.h"
#include "card/figures.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

using base::Fault;
using base::Weight;

std::string metres_text(units::Metres metres) {
  return units::text_of(metres.value(), 2, units::Round::up) + " m";
}

struct Noun {
  std::string_view one;
  std::string_view many;
};

std::string counted(std::size_t count, const Noun& noun) {
  return std::to_string(count) + " " + std::string{count == 1 ? noun.one : noun.many};
}

units::Metres length_of(const std::vector<trails::Trail>& trails) {
  units::Metres length{0};
  for (const trails::Trail& trail : trails) {
    length += trail.line.length();
  }
  return length;
}

/// Length of a trail, in steps of a metre, under which no height is known.
units::Metres without_heights(const trails::Trail& trail, const terrain::HeightMap& heights) {
  units::Metres unknown{0};
  for (units::Metres at{0}; at < trail.line.length(); at += units::Metres{1}) {
    if (!heights.at(trail.line.at(at))) {
      unknown += units::Metres{1};
    }
  }
  return unknown;
}

void doubt_rigs(const LoadedSite& site, std::vector<Fault>& doubts) {
  for (const rig::Rig& rig : site.rigs) {
    const std::string place = "rig " + rig.name;
    if (!passage::allowed_share_for(site.scene->rules, rig.driver_level)) {
      const auto meant =
          base::nearest_name(rig.driver_level, names_of(site.scene->rules.driver_levels));
      doubts.push_back({"rigs", place, "driver level " + rig.driver_level + " is not in the rules",
                        (meant ? "did you mean " + *meant + "? Else n" : "n") +
                            "ame it in rules.toml; until then the rig goes nowhere",
                        Weight::doubt});
    }
    const rig::SlopeRatings& ratings = rig.trailer ? rig.carrier.towing : rig.carrier.solo_loaded;
    if (!ratings.climb || !ratings.descent || !ratings.cross) {
      doubts.push_back({"rigs", place,
                        std::string{"no rating is given for some way of driving "} +
                            (rig.trailer ? "with a trailer" : "with a load"),
                        "write the maker's rating or a named and dated site limit; until then "
                        "the rig goes nowhere so",
                        Weight::doubt});
    }
  }
}

void doubt_heights(const LoadedSite& site, std::vector<Fault>& doubts) {
  for (const trails::Trail& trail : site.scene->network.trails) {
    const units::Metres unknown = without_heights(trail, site.scene->heights);
    if (unknown > units::Metres{0}) {
      doubts.push_back({trail.file, "trail " + trail.name,
                        "heights are missing under " + card::distance_text(unknown) + " of it",
                        "give heights that cover it; until then it is closed there",
                        Weight::doubt});
    }
  }
}

}  // namespace

std::vector<std::string> heights_notes(const ports::toml::SiteFile& site,
                                       const terrain::HeightTrust& trust,
                                       const ports::gdal::HeightRasterFacts& facts) {
  std::vector<std::string> notes;
  std::string measured = site.heights.source;
  if (!site.heights.date.empty()) {
    measured += (measured.empty() ? "" : ", ") + site.heights.date;
  }
  notes.push_back(measured.empty() ? "nobody says who measured them, and when" : measured);
  for (std::size_t i = 0; i < trust.errors.size(); ++i) {
    const terrain::HeightError& error = trust.errors[i];
    std::string note = "error declared: standard deviation " +
                       metres_text(error.standard_deviation) + ", alike over " +
                       metres_text(error.correlation_length);
    if (i < site.heights.error_sources.size()) {
      note += " (" + site.heights.error_sources[i] + ")";
    }
    notes.push_back(note);
  }
  if (trust.errors.empty()) {
    notes.emplace_back("error not declared, so every slope is unknown");
  }
  if (const auto& hidden = trust.sub_cell) {
    notes.push_back(
        "between cells may hide " + units::text_of(*hidden, units::Round::up) +
        (trust.sub_cell_is_estimate ? ", an estimate" : "") +
        (site.heights.sub_cell_source.empty() ? "" : " (" + site.heights.sub_cell_source + ")"));
  }
  if (facts.quantum) {
    notes.push_back("rounded to " + metres_text(*facts.quantum) +
                    ", which counts as a further error");
  }
  if (trust.mean_over > 1) {
    const std::string cells = std::to_string(trust.mean_over);
    notes.push_back("means over " + cells + " x " + cells + " cells, " +
                    metres_text(static_cast<double>(trust.mean_over) * trust.measured_step) +
                    " wide, as no gauge is narrower; what is narrower is not seen");
  }
  notes.insert(notes.end(), facts.notes.begin(), facts.notes.end());
  return notes;
}

std::vector<std::string> contents_of(const LoadedSite& site) {
  std::vector<std::string> contents;
  if (site.scene) {
    const trails::Network& network = site.scene->network;
    contents.push_back("map: " + site.scene->frame.horizontal_name + ", heights above " +
                       site.scene->frame.vertical_name);
    contents.push_back(counted(network.trails.size(), {"trail", "trails"}) + ", " +
                       card::distance_text(length_of(network.trails)) + ", in " +
                       counted(network.legs.size() / 2, {"leg", "legs"}) + " each way");
    contents.push_back(counted(network.stations.size(), {"station", "stations"}) + ", " +
                       counted(network.marks.size(), {"mark", "marks"}) + ", " +
                       counted(network.zones.size(), {"zone", "zones"}));
  }
  std::string rigs = counted(site.rigs.size(), {"rig", "rigs"});
  std::string_view between = ": ";
  for (const rig::Rig& rig : site.rigs) {
    rigs += std::string{between} + rig.name;
    between = ", ";
  }
  contents.push_back(rigs);
  for (const std::string& note : site.heights_notes) {
    contents.push_back("heights: " + note);
  }
  if (site.snow) {
    contents.push_back("snow report by " + site.snow->observer);
  }
  return contents;
}

std::vector<Fault> doubts_about(const LoadedSite& site, units::Instant now) {
  std::vector<Fault> doubts;
  if (site.scene) {
    doubt_rigs(site, doubts);
    doubt_heights(site, doubts);
  }
  if (site.snow && site.snow->valid_until && *site.snow->valid_until < now) {
    doubts.push_back(
        {"snow report", "",
         "it ran out at " + card::local_and_zone_text(*site.snow->valid_until, site.local_clock),
         "write today's; until then nothing is open by it", Weight::doubt});
  }
  return doubts;
}

}  // namespace rimehaul::app
