// The honest no, told alike by every verb that looks for a way.
#pragma once

#include <vector>

#include "app/answer.h"
#include "card/made_from.h"
#include "day/departure_hours.h"
#include "passage/judge.h"
#include "search/route.h"

namespace rimehaul::app {

/// The judge of the rig as asked, what was asked, and what all that was read from.
struct AskedOfJudge {
  const passage::Judge& judge;
  const search::RouteQuestion& question;
  std::vector<card::InputFile> inputs;
  std::optional<day::Departures> departures{};  ///< nothing: not asked for
};

/// Why there is no way, and what of all that was tried would open one; trying takes a while, which
/// a terminal is told.
[[nodiscard]] Answer refusal_of(const search::NoRoute& none, const AskedOfJudge& asked,
                                const Outside& outside);

}  // namespace rimehaul::app
