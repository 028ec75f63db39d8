// What lies along the legs of a route: marks and zones to mind, and the next way out ahead.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"

namespace rimehaul::card {

/// Marks, zones and the trail's own ways along a leg, in driving order. Refuges and turning rooms
/// are among them.
[[nodiscard]] std::vector<Notice> notices_along(const trails::Network& network,
                                                const trails::Leg& leg);

/// Adds one to a leg in its place in driving order.
void add_notice(CardLeg& leg, Notice notice);

/// The next turn-round and the next refuge ahead of the start of every leg of a route.
struct WaysOut {
  Ahead turn_round;
  Ahead refuge;
};
[[nodiscard]] std::vector<WaysOut> ways_out(const trails::Network& network, const rig::Rig& rig,
                                            const search::Route& route);

/// Whom to call, where, and where no call goes through, in driving order.
[[nodiscard]] std::vector<std::string> radio_lines(const search::Route& route,
                                                   const CardContext& context);

/// Name of a junction for people: its station's, else "junction 7".
[[nodiscard]] std::string name_of(const trails::Network& network, trails::JunctionId junction);

/// The trails of a way in driving order, none twice in a row.
[[nodiscard]] std::vector<std::string> trails_along(const std::vector<trails::LegId>& way,
                                                    const trails::Network& network);

}  // namespace rimehaul::card
