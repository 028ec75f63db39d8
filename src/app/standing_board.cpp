#include "app/standing_board.h"

#include <algorithm>
#include <utility>

#include "card/figures.h"
#include "ports/gdal/records_file.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

std::string board_words(const day::SignedBoard& board) {
  return "board " + std::to_string(board.number);
}

/// The first file that is not as it was, or is new, or is gone; empty: all are as they were.
std::string changed_file(const LoadedSite& site, const day::SignedBoard& board) {
  for (const card::InputFile& input : site.inputs) {
    const bool as_it_was = std::ranges::any_of(board.inputs, [&](const day::BoardInput& kept) {
      return kept.name == input.name && kept.digest == input.digest;
    });
    if (!as_it_was) {
      return input.name;
    }
  }
  for (const day::BoardInput& kept : board.inputs) {
    const bool still_there = std::ranges::any_of(
        site.inputs, [&](const card::InputFile& input) { return input.name == kept.name; });
    if (!still_there) {
      return kept.name;
    }
  }
  return {};
}

/// Whether an order was given or taken back after an entry of the log.
bool ordered_since(const day::Records& records, std::int64_t entry) {
  const auto later = [entry](const auto& kept) { return kept.entry > entry; };
  const auto orders = records.overrides();
  const auto ends = records.override_ends();
  return std::ranges::any_of(orders, later) || std::ranges::any_of(ends, later);
}

std::string why_stale(const LoadedSite& site, const day::Records& records,
                      const day::Kept<day::SignedBoard>& last, units::Instant depart) {
  const day::SignedBoard& board = last.thing;
  const std::string anew = "; sign a new one";
  if (!(depart <= board.valid_until)) {
    return board_words(board) + " held until " +
           card::local_text(board.valid_until, site.local_clock) + anew;
  }
  if (const std::string file = changed_file(site, board); !file.empty()) {
    return board_words(board) + " is stale: " + file + " has changed since it was signed" + anew;
  }
  if (ordered_since(records, last.entry)) {
    return board_words(board) + " is stale: an order was given or taken back since it was signed" +
           anew;
  }
  return {};
}

}  // namespace

std::variant<StandingBoard, NoCard> standing_board(const LoadedSite& site,
                                                   const day::Records& records,
                                                   units::Instant depart) {
  const auto boards = records.boards();
  if (boards.empty()) {
    return NoCard{"no board has been signed yet; `rimehaul sign` does that"};
  }
  const day::Kept<day::SignedBoard>& last = boards.back();
  auto routes = ports::json::signed_routes(last.thing.json);
  if (ports::openssl::digest_of(last.thing.json) != last.thing.digest || !routes) {
    throw base::BadInput{{.file = ports::gdal::RecordsPlace{}.name,
                          .place = board_words(last.thing),
                          .problem = "is not what was signed",
                          .remedy = "see `rimehaul log --verify`, and sign a new one"}};
  }
  if (std::string why = why_stale(site, records, last, depart); !why.empty()) {
    return NoCard{std::move(why)};
  }
  return StandingBoard{last.thing, std::move(*routes)};
}

const ports::json::SignedRoute* route_on(const StandingBoard& standing, const std::string& route) {
  const auto found = std::ranges::find(standing.routes, route, &ports::json::SignedRoute::name);
  return found == standing.routes.end() ? nullptr : &*found;
}

std::string undecided(const std::string& taken, const card::RouteCard& card) {
  for (const std::string& permitted : card.permitted) {
    // Behind the legs that it is asked for on.
    std::string decision = permitted.substr(permitted.find(": ") + 2);
    if (taken.find(decision) == std::string::npos) {
      return decision;
    }
  }
  return {};
}

std::string why_not_driven(const StandingBoard& standing, const std::string& route,
                           LoadAsked load) {
  const std::string board = board_words(standing.board);
  const ports::json::SignedRoute* on_board = route_on(standing, route);
  if (on_board == nullptr) {
    return board + " has no route \"" + route + "\"";
  }
  if (!on_board->closed_by_hand.empty()) {
    return board + " closes \"" + route + "\" by hand, by " + on_board->closed_by_hand;
  }
  switch (on_board->as_reported) {
    case passage::Verdict::open:
      return {};
    case passage::Verdict::restricted:
      if (!on_board->permitted.empty() || load == LoadAsked::another) {
        return {};
      }
      return board + " has \"" + route + "\" restricted: " + on_board->reason +
             "; ask for a load that opens it, or have its decision taken and signed";
    case passage::Verdict::closed:
      break;
  }
  return board + " has \"" + route + "\" closed: " + on_board->reason;
}

}  // namespace rimehaul::app
