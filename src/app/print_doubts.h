// Names of a site that cannot be printed.
#pragma once

#include <optional>

#include "app/answer.h"
#include "app/load_site.h"

namespace rimehaul::app {

/// One doubt about all names with letters that no font at hand has: on paper they are boxes.
[[nodiscard]] std::optional<base::Fault> doubt_about_letters(const LoadedSite& site);

/// Adds that doubt, if there is one, to an answer that goes on paper.
void doubt_letters_on_paper(const LoadedSite& site, Answer& answer);

}  // namespace rimehaul::app
