// The verb `route`, and the story of the whole program: read, judge, search, distrust, print.
#pragma once

#include "app/card_keeper.h"
#include "app/options.h"

namespace rimehaul::app {

/// `yes` with a card, `honest_no` with the reasons. Throws OurFault when a route that was found
/// does not stand up to being walked again: it is withheld. With a keeper the best route's card is
/// issued and kept; whatever that throws, no card is printed.
[[nodiscard]] Status plan_route(const RouteOptions& options, const Outside& outside,
                                CardKeeper* keeper = nullptr);

}  // namespace rimehaul::app
