// Who gives an order, signs, drives or tells: a person of the site's list whose role lets them.
#pragma once

#include <string>

#include "app/load_site.h"
#include "app/outside.h"
#include "day/records.h"

namespace rimehaul::app {

/// Done now by a person whose role lets them decide. Throws WrongUsage where the site lists nobody,
/// has no such person, or their roles do not let them.
[[nodiscard]] day::Done decided_by(const LoadedSite& site, const std::string& person,
                                   const Outside& outside);

/// Done now by a person of the site's list in the role of a driver; the same otherwise.
[[nodiscard]] day::Done driven_by(const LoadedSite& site, const std::string& person,
                                  const Outside& outside);

/// Seen or measured now by anybody of the site's list, whatever their role; the same otherwise.
[[nodiscard]] day::Done told_by(const LoadedSite& site, const std::string& person,
                                const Outside& outside);

}  // namespace rimehaul::app
