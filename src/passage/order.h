// What a named person has ordered on top of the site's files: trails closed or shut earlier, rigs
// forbidden, leave that runs out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trails/trail.h"
#include "units/clock.h"

namespace rimehaul::passage {

/// A trail that may not be driven, or in these hours alone, besides its own.
struct TrailOrder {
  std::string trail;                       ///< by its name
  std::optional<trails::OpenHours> hours;  ///< nothing: not at all
  std::string by;                          ///< "P. Example: wet slides seen"; for people

  friend bool operator==(const TrailOrder&, const TrailOrder&) = default;
};

/// A rig that may not be driven anywhere.
struct RigOrder {
  std::string rig;  ///< by its name
  std::string by;

  friend bool operator==(const RigOrder&, const RigOrder&) = default;
};

/// Site rules were loosened, and until when (included): what is driven later is not judged by them.
struct Leave {
  units::Instant until;
  std::string by;

  friend bool operator==(const Leave&, const Leave&) = default;
};

/// In force at the hour for which the rules were put together.
struct Orders {
  std::vector<TrailOrder> trails{};
  std::vector<RigOrder> rigs{};
  std::vector<Leave> leaves{};

  friend bool operator==(const Orders&, const Orders&) = default;
};

}  // namespace rimehaul::passage
