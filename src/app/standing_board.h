// The board that cards are issued from: the last one signed, as long as nothing has changed since.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/load_site.h"
#include "day/record_book.h"
#include "ports/json/day_table_json.h"

namespace rimehaul::app {

struct StandingBoard {
  day::SignedBoard board;
  std::vector<ports::json::SignedRoute> routes;
};

/// Why no card may be issued, in one line.
struct NoCard {
  std::string why;
};

/// The last board that was signed, for who leaves at an hour. None where none was signed, its
/// report does not hold at that hour, a file has changed since, or an order was given or taken
/// back. Throws BadInput where the records hold a board that is not what was signed.
[[nodiscard]] std::variant<StandingBoard, NoCard> standing_board(const LoadedSite& site,
                                                                 const day::Records& records,
                                                                 units::Instant depart);

/// Whether the board lets a route be driven: nothing, or the line that says why not. With another
/// load than usual a route that is restricted is asked for anew.
enum class LoadAsked { usual, another };
[[nodiscard]] std::string why_not_driven(const StandingBoard& standing, const std::string& route,
                                         LoadAsked load);

/// The route on the board; nothing where the board does not have it.
[[nodiscard]] const ports::json::SignedRoute* route_on(const StandingBoard& standing,
                                                       const std::string& route);

/// The first decision that a card rests on and that is not among those taken on the board, in its
/// words; empty: there is none. Another hour or way may ask for another.
[[nodiscard]] std::string undecided(const std::string& taken, const card::RouteCard& card);

}  // namespace rimehaul::app
