#include "app/print_doubts.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "app/names.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::app {

namespace {

/// Every name that may stand on a card, a board or a map.
std::vector<std::string> printed_names(const LoadedSite& site) {
  std::vector<std::string> names{site.name};
  const auto add = [&names](const std::vector<std::string>& more) {
    std::ranges::copy(more, std::back_inserter(names));
  };
  if (site.scene) {
    const trails::Network& network = site.scene->network;
    add(names_of(network.trails));
    add(names_of(network.stations));
    add(names_of(network.marks));
    add(names_of(network.zones));
    names.push_back(site.scene->rules.control);
  }
  add(names_of(site.rigs));
  for (const rig::Rig& rig : site.rigs) {
    names.push_back(rig.trailer ? rig.trailer->name : "");
  }
  names.push_back(site.snow ? site.snow->observer : "");
  return names;
}

}  // namespace

std::optional<base::Fault> doubt_about_letters(const LoadedSite& site) {
  constexpr std::size_t kMostNamed = 5;
  const ports::cairo::Canvas canvas{ports::cairo::Form::svg, {}, {}};
  std::vector<std::string> lacking;
  for (const std::string& name : printed_names(site)) {
    if (!canvas.has_letters(name) && std::ranges::find(lacking, name) == lacking.end()) {
      lacking.push_back(name);
    }
  }
  if (lacking.empty()) {
    return std::nullopt;
  }
  std::string named;
  for (std::size_t i = 0; i < std::min(lacking.size(), kMostNamed); ++i) {
    named += (i == 0 ? "\"" : ", \"") + lacking[i] + "\"";
  }
  if (lacking.size() > kMostNamed) {
    named += " and " + std::to_string(lacking.size() - kMostNamed) + " more";
  }
  return base::Fault{"printing", "names", "no font here has all letters of " + named,
                     "install one that has them, or they are boxes on paper", base::Weight::doubt};
}

void doubt_letters_on_paper(const LoadedSite& site, Answer& answer) {
  if (auto doubt = doubt_about_letters(site)) {
    answer.doubts.push_back(std::move(*doubt));
  }
}

}  // namespace rimehaul::app
