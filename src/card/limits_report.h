// The grade limits of a rig by snow and load as plain data, and the outlines of what it may be
// driven on.
#pragma once

#include <string>
#include <vector>

#include "card/route_card.h"
#include "passage/limits.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// How much is on the rig. Fuel is as given in all three.
enum class LoadCase {
  empty,     ///< the driver alone
  as_given,  ///< what the command was told
  full,      ///< passengers as given, and as much load as the allowed share of the ratings lets on
};

struct LimitsRow {
  snow::SnowState snow;
  passage::GradeLimits limits;
};

/// One way of driving with one load.
struct LimitsTable {
  std::string towing;  ///< name of the trailer; empty: without one
  LoadCase load_case = LoadCase::empty;
  rig::Load load;
  std::vector<LimitsRow> rows;  ///< by surface, then from dry to slush
};

struct SnowOutline {
  snow::Wetness wetness = snow::Wetness::dry;
  passage::Envelope envelope;
};

/// The rig as given, on one surface.
struct OutlineSet {
  std::string towing;
  rig::Load load;
  snow::Surface surface = snow::Surface::groomed;
  std::vector<SnowOutline> outlines;  ///< from dry to slush
};

struct LimitsReport {
  int schema = 1;
  std::string site;
  std::string rig;
  std::string driver_level;
  double allowed_share = 0.0;  ///< 0: the driver's level is not known
  units::Metres sight;
  std::vector<LimitsTable> tables;  ///< with the trailer first, then without
  OutlineSet outlines;
  std::vector<std::string> ratings;  ///< in force for the rig as given, with who says so
  std::vector<std::string> estimates;
  MadeFrom made_from;
  units::LocalClock local_clock{};
};

struct LimitsQuestion {
  const rig::Rig& rig;
  const passage::Rules& rules;
  std::vector<snow::Wetness> classes;   ///< one or more
  std::vector<snow::Surface> surfaces;  ///< one or more; the outlines are of the first
};

/// All but who asks where and when: site, inputs, versions and the hour are left to fill in.
[[nodiscard]] LimitsReport limits_report(const LimitsQuestion& question);

/// Whether any ground is open to the rig as given in any snow asked for.
[[nodiscard]] bool any_open(const LimitsReport& report);

/// The most whole kilograms that the allowed share of the bed's, the payload's and the trailer's
/// ratings lets on, passengers aboard; none where even they are too many.
[[nodiscard]] rig::Load full_load(const rig::Rig& rig, double allowed_share);

/// The tables as text, no line longer than `columns` (80 or more).
[[nodiscard]] std::string text_of(const LimitsReport& report, int columns);

}  // namespace rimehaul::card
