// What the rows of a board are: pairs of stations, named routes, or marked trails.
#pragma once

#include <vector>

#include "app/day_table.h"

namespace rimehaul::app {

/// Every pair of two stations, or those from or to the ones asked for. Throws WrongUsage where
/// there is none.
[[nodiscard]] std::vector<day::Stops> pairs_asked(const BoardOptions& options,
                                                  const trails::Network& network);

/// The site's named routes as rows, each as it is usually loaded. Throws WrongUsage where the site
/// has none.
[[nodiscard]] std::vector<AskedRow> named_routes(const LoadedSite& site,
                                                 const HoursOptions& hours = {});

/// What is usually put on the rig of a named route.
[[nodiscard]] RigOptions usual_rig(const LoadedSite& site, const day::NamedRoute& route);

/// Whether the rows bring their own rigs, so that none is asked for.
[[nodiscard]] bool have_own_rigs(const BoardOptions& options);

/// The named routes with their own rigs; else pairs, or marked trails each way in which they may be
/// driven, for one rig or all of them. Throws WrongUsage where there is none.
[[nodiscard]] std::vector<AskedRow> rows_asked(const BoardOptions& options, const LoadedSite& site);

/// "NAMED ROUTES"
[[nodiscard]] std::string title_of_rows(const BoardOptions& options);

}  // namespace rimehaul::app
