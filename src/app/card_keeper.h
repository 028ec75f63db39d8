// Somebody who keeps the card of a route as issued, from its number to its record.
#pragma once

#include <string>

#include "card/route_card.h"

namespace rimehaul::app {

class CardKeeper {
 public:
  CardKeeper() = default;
  virtual ~CardKeeper() = default;
  CardKeeper(const CardKeeper&) = delete;
  CardKeeper& operator=(const CardKeeper&) = delete;

  /// The number that the card bears, and where it comes from. Nobody else issues one meanwhile.
  [[nodiscard]] virtual card::CardIssue begin() = 0;
  /// Keeps the card by its record; it is issued from then on.
  virtual void keep(const card::RouteCard& card, const std::string& record) = 0;
};

}  // namespace rimehaul::app
