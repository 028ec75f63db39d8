// The loads that a way takes as plain data: from where to where, what binds, what closes beyond.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"
#include "day/payload.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A place of the way, as people find it again.
struct PayloadPlace {
  std::string trail;
  std::string turn_from{};  ///< set: at the turn from that trail
  std::string from{};       ///< junctions at the leg's ends
  std::string to{};
  units::Metres trail_at{};  ///< along the trail as drawn
};

/// A finding and where it holds.
struct PayloadFinding {
  passage::Finding finding{};
  passage::Stand stand = passage::Stand::missing;
  PayloadPlace place{};
  std::string decision{};  ///< that a named person would have to take
};

/// Why a load is not open.
struct PayloadClosed {
  std::optional<PayloadFinding> at{};
  std::string fuel_short{};  ///< in words; where no place closes it
};

struct PayloadEnd {
  units::Kilograms load;
  PayloadFinding binds{};
  std::optional<PayloadClosed> beyond{};  ///< one kilogram further; nothing: there is nothing less
};

struct PayloadRange {
  PayloadEnd from;
  PayloadEnd to;
};

/// One pair of loads: open with its largest share, or the check that closes it.
struct PayloadCell {
  bool open = false;
  double share = 0.0;
  std::string closed_by{};
};

struct PayloadGrid {
  std::vector<units::Kilograms> bed{};
  std::vector<units::Kilograms> towed{};
  std::vector<PayloadCell> cells{};  ///< by bed load, then by towed load
};

struct PayloadReport {
  int schema = 1;
  std::string site;
  std::string title;             ///< "Cable House to Fell Lodge"
  std::vector<std::string> way;  ///< trails in driving order
  units::Metres length;
  std::string rig;
  std::string trailer;  ///< empty: without one
  std::string driver_level;
  rig::Load load;            ///< as asked for
  std::string found_for;     ///< for whom the way was found, where not for the load as asked
  std::string permitted_by;  ///< empty: nobody
  std::vector<snow::SnowState> snow;  ///< met on the way; none: not known
  snow::Told snow_told_by;
  snow::DayWeather weather;
  units::Instant depart;
  units::LocalClock local_clock{};
  double allowed_share = 0.0;
  units::Kilograms step;
  bool open_as_asked = false;
  PayloadFinding binds_as_asked{};  ///< where it is open
  PayloadClosed closed_as_asked{};  ///< where it is not
  std::vector<PayloadRange> bed;
  std::vector<PayloadRange> towed;
  PayloadGrid both{};
  std::size_t places_rewalked = 0;
  std::vector<std::string> estimates;
  MadeFrom made_from;
};

/// What is known beside the answer itself.
struct PayloadContext {
  const passage::Judge& judge;
  const search::RouteQuestion& question;
  const std::vector<trails::LegId>& way;
};

/// All but the way's finder, inputs, versions and the hour it was made, which are left to fill in.
[[nodiscard]] PayloadReport payload_report(const day::Payload& payload,
                                           const PayloadContext& context);

/// Whether some load is open.
[[nodiscard]] bool any_open(const PayloadReport& report);

/// As text, no line longer than `columns` (80 or more).
[[nodiscard]] std::string text_of(const PayloadReport& report, int columns);

}  // namespace rimehaul::card
