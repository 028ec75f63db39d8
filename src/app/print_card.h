// A route card on paper, with its record beside it.
#pragma once

#include <string>

#include "app/load_site.h"
#include "card/card_sheet.h"

namespace rimehaul::app {

/// What is printed, and of which site.
struct CardToPrint {
  const card::RouteCard& card;
  card::GradeProfile profile;
  const LoadedSite& site;
};

/// Writes the card as PDF, and its canonical JSON to `path` + ".record.json": the digest on the
/// card is that file's. Throws BadInput when either cannot be written or the heights cannot be
/// read.
void print_card(const std::string& path, CardToPrint printed);

}  // namespace rimehaul::app
