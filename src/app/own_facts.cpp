#include "app/own_facts.h"

#include <algorithm>
#include <utility>

#include "app/status.h"
#include "ports/gdal/layers.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

using ports::gdal::HeightRasterFacts;
using ports::gdal::HeightRasterRequest;

/// With a stand-in for what the files do not say, so that everything else comes to light.
HeightRasterFacts heights_facts(const std::string& folder, const std::vector<std::string>& files) {
  auto opened = open_whatever_the_unit({.folder = folder,
                                        .files = files,
                                        .map_frame = {},
                                        .vertical_datum = "not said yet",
                                        .metres_per_unit = {},
                                        .lowest = units::Metres{-500},
                                        .highest = units::Metres{9000}});
  if (!opened.data.source) {
    std::erase_if(opened.faults,
                  [](const base::Fault& fault) { return fault.weight != base::Weight::fault; });
    throw UnfitInput{std::move(opened.faults)};
  }
  return opened.data.facts;
}

void count_missing(const trails::Trail& trail, std::vector<MissingColumn>& missing) {
  for (const std::string& name : trail.missing()) {
    const auto column = std::ranges::find(missing, name, &MissingColumn::name);
    if (column == missing.end()) {
      missing.push_back({name, 1});
    } else {
      ++column->trails;
    }
  }
}

std::string listed(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) {
    text += (text.empty() ? ": " : ", ") + name;
  }
  return std::to_string(names.size()) + text;
}

}  // namespace

base::Reading<ports::gdal::OpenedHeights> open_whatever_the_unit(HeightRasterRequest request) {
  auto opened = ports::gdal::open_heights(request);
  if (!opened.data.source && !opened.data.facts.says_unit) {
    request.metres_per_unit = 1.0;
    opened = ports::gdal::open_heights(request);
  }
  return opened;
}

OwnFacts own_facts(const std::string& folder, const OwnNames& names) {
  OwnFacts facts;
  facts.heights = heights_facts(folder, names.heights);
  const geo::MapFrame& frame = facts.heights.frame;
  for (const trails::Trail& trail : ports::gdal::read_trails({folder, names.trails}, frame).data) {
    facts.trails.push_back(trail.name);
    count_missing(trail, facts.missing);
  }
  if (!names.stations.empty()) {
    for (const trails::Station& station :
         ports::gdal::read_stations({folder, names.stations}, frame).data) {
      facts.stations.push_back(station.name);
    }
  }
  return facts;
}

std::vector<std::string> facts_in_words(const OwnFacts& facts) {
  const HeightRasterFacts& heights = facts.heights;
  const auto metres = [](units::Metres length) {
    return units::text_of(length.value(), 2, units::Round::up) + " m";
  };
  std::vector<std::string> words;
  words.push_back("map: " + heights.frame.horizontal_name);
  words.push_back("heights: measured every " + metres(heights.widest_step));
  words.push_back(heights.says_unit ? "heights: the file says their unit"
                                    : "heights: the file does not say their unit");
  words.push_back(heights.says_datum ? "heights: above " + heights.frame.vertical_name
                                     : "heights: the file does not say from what level they count");
  for (const std::string& note : heights.notes) {
    words.push_back("heights: " + note);
  }
  words.push_back("trails: " + listed(facts.trails));
  words.push_back("stations: " + listed(facts.stations));
  return words;
}

}  // namespace rimehaul::app
