#include "app/load_site.h"

#include <algorithm>
#include <filesystem>
#include <future>
#include <system_error>
#include <utility>

#include "app/input_files.h"
#include "app/load_heights.h"
#include "app/names_meant.h"
#include "app/own_files.h"
#include "app/site_clock.h"
#include "app/site_words.h"
#include "app/status.h"
#include "base/nearest_name.h"
#include "base/require.h"
#include "ports/gdal/height_raster.h"
#include "ports/gdal/layers.h"
#include "ports/geos/noding.h"
#include "ports/toml/people_file.h"
#include "ports/toml/rig_sheets.h"
#include "ports/toml/routes_file.h"
#include "ports/toml/rules_file.h"
#include "ports/toml/snow_file.h"

namespace rimehaul::app {

namespace {

using base::Fault;
using ports::toml::SiteFile;

bool usable(const std::vector<Fault>& faults) {
  return std::ranges::count(faults, base::Weight::fault, &Fault::weight) == 0;
}

void take(const std::vector<Fault>& found, std::vector<Fault>& faults) {
  faults.insert(faults.end(), found.begin(), found.end());
}

/// Reads a part of the site: its faults join the others, and what cannot be read at all is one.
template <class Read>
auto read_part(std::vector<Fault>& faults, Read read) {
  using Data = decltype(read().data);
  std::optional<Data> data;
  try {
    auto reading = read();
    take(reading.faults, faults);
    data.emplace(std::move(reading.data));
  } catch (const base::BadInput& error) {
    faults.push_back(error.fault());
  }
  return data;
}

/// All layers of one kind, one file after the other.
template <class Feature, class Read>
std::vector<Feature> read_layers(const std::vector<std::string>& files, std::vector<Fault>& faults,
                                 Read read) {
  std::vector<Feature> all;
  for (const std::string& file : files) {
    if (auto part = read_part(faults, [&] { return read(file); })) {
      std::move(part->begin(), part->end(), std::back_inserter(all));
    }
  }
  return all;
}

ports::geos::NetworkParts read_parts(const SiteFile& site, const geo::MapFrame& frame,
                                     std::vector<Fault>& faults) {
  namespace layers = ports::gdal;
  const auto file = [&](const std::string& shown) { return layers::LayerFile{site.folder, shown}; };
  ports::geos::NetworkParts parts;
  std::vector<Fault> of_trails;
  parts.trails = read_layers<trails::Trail>(site.trails, of_trails, [&](const std::string& shown) {
    return layers::read_trails(file(shown), frame);
  });
  if (!usable(of_trails) || site.trails.empty()) {
    parts.trail_list = trails::TrailList::some_left_out;
  }
  take(of_trails, faults);
  parts.stations = read_layers<trails::Station>(
      site.stations, faults,
      [&](const std::string& shown) { return layers::read_stations(file(shown), frame); });
  parts.zones = read_layers<trails::Zone>(site.zones, faults, [&](const std::string& shown) {
    return layers::read_zones(file(shown), frame);
  });
  parts.marks = read_layers<trails::Mark>(site.marks, faults, [&](const std::string& shown) {
    return layers::read_marks(file(shown), frame, parts.trails, parts.trail_list);
  });
  return parts;
}

std::optional<passage::Rules> read_rules(LoadedSite& loaded) {
  auto rules = read_part(loaded.faults, [&] { return ports::toml::read_rules(loaded.rules_file); });
  if (rules) {
    rules->local_clock = loaded.local_clock;
  }
  return rules;
}

void read_rigs_and_snow(const SiteFile& site, LoadedSite& loaded) {
  if (auto rigs = read_part(loaded.faults, [&] {
        return ports::toml::read_rigs({path_of({site.folder, site.rigs}), site.rigs});
      })) {
    loaded.rigs = std::move(*rigs);
  }
  if (!site.snow.empty()) {
    loaded.snow = read_part(loaded.faults, [&] {
      return ports::toml::read_snow_report({path_of({site.folder, site.snow}), site.snow});
    });
  }
}

void read_people_and_routes(const SiteFile& site, LoadedSite& loaded) {
  if (!site.people.empty()) {
    loaded.people =
        read_part(loaded.faults, [&] {
          return ports::toml::read_people({path_of({site.folder, site.people}), site.people});
        }).value_or(loaded.people);
  }
  if (!site.routes.empty()) {
    loaded.routes =
        read_part(loaded.faults, [&] {
          return ports::toml::read_routes({path_of({site.folder, site.routes}), site.routes});
        }).value_or(loaded.routes);
  }
}

/// Nothing when no file is named; of that, and of a unit that is none, site.toml's reader has told.
std::optional<ports::gdal::OpenedHeights> read_heights(const SiteFile& site,
                                                       std::vector<Fault>& faults) {
  if (site.heights.files.empty()) {
    return std::nullopt;
  }
  return read_part(faults, [&] { return open_heights_of(site); });
}

/// That of the heights; without any, the one that site.toml declares. Nothing where neither is
/// sound.
std::optional<geo::MapFrame> frame_of(const SiteFile& site,
                                      const std::optional<ports::gdal::OpenedHeights>& heights,
                                      std::vector<Fault>& faults) {
  std::optional<geo::MapFrame> frame;
  if (heights) {
    frame = heights->facts.frame;
  } else if (site.map_frame) {
    frame = read_part(faults, [&] { return ports::gdal::declared_frame(*site.map_frame); });
  }
  if (!frame || frame->horizontal.empty()) {
    faults.push_back(
        {site.folder, "trails, stations, zones and marks",
         "not looked at, because neither heights nor map_frame give a map to read them in",
         "mend the heights, or declare map_frame in site.toml", base::Weight::doubt});
    return std::nullopt;
  }
  return frame;
}

void read_ground(const SiteFile& site, const passage::Rules& rules, LoadedSite& loaded) {
  auto heights = read_heights(site, loaded.faults);
  const std::optional<geo::MapFrame> frame = frame_of(site, heights, loaded.faults);
  if (!frame) {
    return;
  }
  terrain::HeightTrust trust;
  if (heights) {
    trust = bring_to_rig_scale(*heights, site.heights.trust, loaded.rigs);
    loaded.heights_notes = heights_notes(site, trust, heights->facts);
  }
  auto network = read_part(loaded.faults, [&] {
    return ports::geos::node_network(read_parts(site, *frame, loaded.faults), site.snap);
  });
  if (!network) {
    return;
  }
  if (loaded.snow) {
    take(unknown_names(*loaded.snow, site.snow, *network), loaded.faults);
  }
  take(unknown_names(loaded.routes, site.routes, {*network, loaded.rigs}), loaded.faults);
  if (!heights || heights->source == nullptr) {
    return;
  }
  auto map = read_part(loaded.faults, [&] {
    return base::Reading<terrain::HeightMap>{load_heights(*heights->source, rules, *network), {}};
  });
  if (map) {
    loaded.scene.emplace(passage::Scene{.site_name = site.name,
                                        .frame = *frame,
                                        .heights = std::move(*map),
                                        .trust = trust,
                                        .network = std::move(*network),
                                        .rules = rules});
    loaded.heights_source = std::move(heights->source);
  }
}

/// A folder that is not there is told with the one beside it that was probably meant.
void expect_folder(const std::string& folder) {
  namespace fs = std::filesystem;
  std::error_code trouble;
  const fs::path path = fs::path{folder}.lexically_normal();
  if (fs::exists(fs::status(path, trouble))) {
    return;
  }
  const fs::path named = path.has_filename() ? path : path.parent_path();
  std::vector<std::string> beside;
  const fs::path parent = named.has_parent_path() ? named.parent_path() : fs::path{"."};
  for (fs::directory_iterator entry{parent, trouble}, end; entry != end && !trouble;
       entry.increment(trouble)) {
    const std::string name = entry->path().filename().string();
    if (entry->is_directory(trouble) && fits_site_file(name)) {
      beside.push_back(name);
    }
  }
  std::ranges::sort(beside);
  const auto nearest = base::nearest_name(named.filename().string(), beside);
  throw base::BadInput{{folder, "", "there is no such folder",
                        nearest
                            ? "did you mean \"" + (named.parent_path() / *nearest).string() + "\"?"
                            : "name the folder that describes the site",
                        base::Weight::fault}};
}

}  // namespace

LoadedSite load_site(const std::string& folder) {
  expect_folder(folder);
  auto [site, faults] = ports::toml::read_site_file(folder);
  LoadedSite loaded;
  loaded.folder = folder;
  loaded.name = site.name;
  loaded.rules_file = {path_of({site.folder, site.rules}), site.rules};
  loaded.local_clock = site_clock(site, faults);
  loaded.faults = std::move(faults);
  loaded.softening = site.softening;
  const std::optional<passage::Rules> rules = read_rules(loaded);
  read_rigs_and_snow(site, loaded);
  read_people_and_routes(site, loaded);
  // Large heights take their time to be digested: meanwhile all is read.
  std::future<std::vector<card::InputFile>> inputs =
      std::async(std::launch::async,
                 [&site = site, report = loaded.snow] { return input_files(site, report); });
  read_ground(site, rules.value_or(passage::default_rules()), loaded);
  if (rules && !loaded.rigs.empty()) {
    take(unknown_names(*rules, site.rules, loaded.rigs), loaded.faults);
  }
  loaded.inputs = inputs.get();
  loaded.contents = contents_of(loaded);
  if (!usable(loaded.faults)) {
    loaded.scene.reset();
  }
  return loaded;
}

const rig::Rig* tow_out_rig(const LoadedSite& site) {
  // Its name was checked when the site was read.
  const auto named = std::ranges::find(site.rigs, site.scene->rules.tow_out.rig, &rig::Rig::name);
  return named == site.rigs.end() ? nullptr : &*named;
}

std::unique_ptr<terrain::BlockSource> heights_again(const LoadedSite& site) {
  const SiteFile file = ports::toml::read_site_file(site.folder).data;
  ports::gdal::OpenedHeights heights = open_heights_of(file).data;
  (void)bring_to_rig_scale(heights, file.heights.trust, site.rigs);
  base::require(heights.source != nullptr, "heights that were opened once can be again");
  return std::move(heights.source);
}

LoadedSite load_usable_site(const std::string& folder) {
  LoadedSite loaded = load_site(folder);
  if (!loaded.scene) {
    std::erase_if(loaded.faults,
                  [](const Fault& fault) { return fault.weight != base::Weight::fault; });
    throw UnfitInput{std::move(loaded.faults)};
  }
  return loaded;
}

}  // namespace rimehaul::app
