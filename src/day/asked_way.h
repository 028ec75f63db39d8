// One question of the day board, answered as a single route is: found or driven as it is given,
// fuelled, walked again.
#pragma once

#include <map>
#include <memory>

#include "audit/rewalk.h"
#include "day/trip.h"
#include "passage/remembering_judge.h"
#include "search/route_finder.h"

namespace rimehaul::day {

/// What is asked of every row, and the ways that all rigs, loads and snows share. Holds a
/// reference.
struct AskedOfAll {
  units::Instant depart;
  audit::WalkAgain rewalk;
  const search::JunctionWays& ways;
};

/// The answer for one row.
struct AskedWay {
  std::optional<search::Route> route{};          ///< the safest or the given one, if it holds
  search::NoRoute none{};                        ///< why there is none
  std::optional<units::Litres> fuel_to_spare{};  ///< set: less than the route needs
  std::size_t places_rewalked = 0;               ///< of a route with fuel enough

  [[nodiscard]] bool holds() const { return route.has_value() && !fuel_to_spare; }
};

/// Asks for one rig, load and snow; remembers what it has judged from question to question.
class WayAsker {
 public:
  /// Holds references: judge, ground and the ways that are shared must outlive it.
  WayAsker(const passage::Judge& judge, passage::GroundMemory& ground, const AskedOfAll& asked);
  WayAsker(const WayAsker&) = delete;  // a part of it holds on to another
  WayAsker& operator=(const WayAsker&) = delete;

  /// With a named person's permission every decision that the rules ask for counts as taken. Throws
  /// OurFault where walking the way again finds it worse.
  [[nodiscard]] AskedWay ask(const Trip& trip, search::Permission permission);

 private:
  [[nodiscard]] AskedWay driven(const Trip& trip, search::Permission permission);
  [[nodiscard]] std::size_t walk_again(const search::Route& route) const;

  const passage::Judge* judge_;
  passage::RememberingJudge remembering_;
  AskedOfAll asked_;
  search::RouteFinder finder_;
};

/// What is on bed and trailer.
struct Cargo {
  units::Kilograms bed;
  units::Kilograms towed;

  friend auto operator<=>(const Cargo&, const Cargo&) = default;
};

/// Askers for a rig with other loads, each made once.
class OtherLoadAskers {
 public:
  /// Holds references: judge and ground must outlive it.
  OtherLoadAskers(const passage::Judge& judge, passage::GroundMemory& ground,
                  const AskedOfAll& asked);

  [[nodiscard]] WayAsker& with(const Cargo& cargo);

 private:
  /// Its rig and judge stay where they are, as the asker holds on to them.
  struct Loaded;

  const passage::Judge* judge_;
  passage::GroundMemory* ground_;
  AskedOfAll asked_;
  std::map<Cargo, std::shared_ptr<Loaded>> loaded_;
};

}  // namespace rimehaul::day
