// A route card on paper, with its record beside it.
#pragma once

#include <string>
#include <vector>

#include "app/load_site.h"
#include "app/write_file.h"
#include "card/card_sheet.h"

namespace rimehaul::app {

/// What is printed, and of which site.
struct CardToPrint {
  const card::RouteCard& card;
  card::GradeProfile profile;
  const LoadedSite& site;
};

/// Where the record of a card lies.
[[nodiscard]] std::string record_beside(const std::string& card);

/// The card as PDF at `path`, and its canonical JSON beside it: the digest on the
/// card is that file's. Throws BadInput when the heights cannot be read.
[[nodiscard]] std::vector<FileToWrite> printed_card(const std::string& path, CardToPrint printed);

}  // namespace rimehaul::app
