// The records of a site, to read and to write.
#pragma once

#include <memory>

#include "app/load_site.h"
#include "app/outside.h"
#include "day/record_book.h"

namespace rimehaul::app {

/// Nothing where the site has kept none yet. Throws BadInput where they cannot be read.
[[nodiscard]] std::unique_ptr<day::Records> records_of(const LoadedSite& site);

/// Begins to write, under the account that runs the program; waits for another writer. Throws
/// BadInput. Requires a site with a scene.
[[nodiscard]] std::unique_ptr<day::Writing> begin_writing(const LoadedSite& site,
                                                          const Outside& outside);

}  // namespace rimehaul::app
