// Reads a site folder: every file once, every fault in one pass.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/fault.h"
#include "card/site_report.h"
#include "day/named_route.h"
#include "day/people.h"
#include "passage/scene.h"
#include "ports/toml/site_file.h"
#include "ports/toml/text_file.h"
#include "snow/snow.h"
#include "units/local_clock.h"

namespace rimehaul::app {

/// A site as far as it could be read.
struct LoadedSite {
  std::string folder;
  std::string name;
  units::LocalClock local_clock{};
  std::optional<passage::Scene> scene;  ///< nothing when faults forbid the site's use
  std::unique_ptr<terrain::BlockSource> heights_source;  ///< there whenever the scene is
  std::vector<rig::Rig> rigs;
  ports::toml::TextFile rules_file;
  std::vector<std::string> orders;  ///< that were put in force, a line each
  std::vector<day::Person> people;
  std::vector<day::NamedRoute> routes;
  std::optional<ports::toml::SofteningMeasured> softening;
  std::optional<snow::SnowReport> snow;  ///< today's, where site.toml names one
  std::vector<card::InputFile> inputs;
  std::vector<std::string> heights_notes;  ///< source, date, declared error, for cards
  std::vector<std::string> contents;       ///< what there is, for `check`
  std::vector<base::Fault> faults;         ///< faults and doubts
};

/// Reads everything that can be read. Throws BadInput only when site.toml itself cannot be.
[[nodiscard]] LoadedSite load_site(const std::string& folder);

/// The same for a command that needs to judge: throws UnfitInput with all faults when there is one.
[[nodiscard]] LoadedSite load_usable_site(const std::string& folder);

/// The rig that the rules name for towing out, of a usable site; nothing: none.
[[nodiscard]] const rig::Rig* tow_out_rig(const LoadedSite& site);

/// The heights of a usable site opened once more, as its own source has them: for another thread.
[[nodiscard]] std::unique_ptr<terrain::BlockSource> heights_again(const LoadedSite& site);

}  // namespace rimehaul::app
