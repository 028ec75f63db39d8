// All that stands on the printed card, as plain data.
#pragma once

#include <string>

#include "card/grade_profile.h"
#include "card/map_view.h"
#include "card/printed.h"
#include "card/route_card.h"

namespace rimehaul::card {

struct CardSheet {
  RouteCard card;
  GradeProfile profile;
  MapView map;         ///< made for the paper that the layout leaves it
  std::string number;  ///< "20260201-0830-3f9a1c2b": local day and hour of leaving, digest's start
  std::string digest;  ///< SHA-256 of the card's canonical JSON, hexadecimal
  QrSymbol qr;         ///< of number and digest
};

/// The number of a card that leaves at its hour and whose canonical JSON has that digest.
[[nodiscard]] std::string number_of(const RouteCard& card, const std::string& digest);

/// What tells one printed card from every other.
struct CardImprint {
  std::string number;
  std::string digest;
};

/// What the symbol says: "RIMEHAUL CARD number SHA-256 digest".
[[nodiscard]] std::string symbol_text(const CardImprint& imprint);

/// The ways of a card's map: its legs in order, numbered.
[[nodiscard]] std::vector<MapWay> ways_of(const RouteCard& card);

}  // namespace rimehaul::card
