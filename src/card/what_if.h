// How the shares at a place move with the ground, the load, the snow and the balance.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "passage/judge.h"

namespace rimehaul::card {

/// One thing changed, all else as it was asked for, and what a share of a limit then comes to.
struct ChangedShare {
  std::string_view change;      ///< "1 deg steeper up"; constant text
  std::optional<double> share;  ///< nothing: closed then
};

/// A check that is a share of a limit, and how it moves.
struct MovingShare {
  passage::Check check = passage::Check::heights_known;
  std::optional<double> now;
  std::vector<ChangedShare> then;  ///< those changes alone that move it by more than 0.0005
};

/// A place on a stretch, as the judge was asked of it.
struct AskedPlace {
  const passage::Stretch& stretch;
  const passage::Footfall& footfall;
  const passage::HoursOnLeg& hours;
};

/// Every share at the place, judged again with: the grade a degree more and less; the ground a
/// degree more across, to the side on which it is steeper; 10 kg more on the bed, and on the
/// trailer; the snow a class wetter; the centres of gravity of carrier and trailer 0.1 m higher.
/// What a survey says of the ground in place of the heights does not move with them.
[[nodiscard]] std::vector<MovingShare> what_if(const passage::Judge& judge,
                                               const AskedPlace& place);

}  // namespace rimehaul::card
