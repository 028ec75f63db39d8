// Which loads one way takes: driven again with each of them, nothing assumed monotone.
#pragma once

#include "audit/rewalk.h"
#include "base/watcher.h"
#include "day/asked_way.h"
#include "passage/open_loads.h"
#include "search/timing.h"

namespace rimehaul::day {

/// What closes a way with one load: the first place, in driving order, that may not be driven; or
/// the fuel.
struct ClosedWith {
  std::optional<search::Blocked> at{};           ///< nothing: every place may be driven
  std::optional<units::Litres> fuel_to_spare{};  ///< set: less than the way needs
  units::Litres fuel{};                          ///< that the way needs, where every place is open
};

/// The check with the largest share on a way that is open, and where.
struct BindsAt {
  passage::Finding finding{};
  trails::LegId leg{};
  std::optional<trails::LegId> turn_from{};  ///< set: at the turn from there into the leg
};

/// A way with one load: open and timed, or closed.
struct LoadedWay {
  std::optional<search::Route> route{};
  ClosedWith closed{};  ///< where there is no route

  /// Of an open way.
  [[nodiscard]] BindsAt binds() const;
};

/// One end of an interval of load. With `load` the way is open and was walked again.
struct LoadEnd {
  units::Kilograms load;
  BindsAt binds{};
  std::optional<ClosedWith> beyond{};  ///< one kilogram further; nothing: no load is less than none
};

struct LoadRange {
  LoadEnd from;
  LoadEnd to;
};

/// Every judged pair of a bed load and a towed load; no cells without a trailer.
struct LoadGrid {
  std::vector<units::Kilograms> bed{};
  std::vector<units::Kilograms> towed{};
  std::vector<LoadedWay> cells{};  ///< by bed load, then by towed load
};

struct PayloadQuestion {
  std::vector<trails::LegId> way;  ///< one leg or more
  units::Instant depart;
  search::Permission permission = search::Permission::nobody;
  units::Kilograms step{5};  ///< above 0
  audit::WalkAgain rewalk = audit::rewalk;
  base::Watcher* watcher = nullptr;  ///< told of each third of the work; nothing: nobody
};

struct Payload {
  LoadedWay as_asked{};  ///< with the load that the rig has
  units::Kilograms step{};
  std::vector<LoadRange> bed{};    ///< the towed load as asked
  std::vector<LoadRange> towed{};  ///< the bed load as asked; none without a trailer
  LoadGrid both{};
  std::size_t places_rewalked = 0;
};

/// The loads on the bed, and on the trailer, with which the way is open from leg to leg at the
/// hours at which a rig so loaded comes there, with fuel for it and the reserve aboard. Judged are
/// every step up to the rating and to the whole kilogram around every end (open_loads.h); the way
/// is walked again at each end, and with the load asked for where that is open. Throws OurFault
/// where it is found worse than judged. The grid has at most 9 loads each way.
[[nodiscard]] Payload payload_of(const passage::Judge& judge, const PayloadQuestion& question);

}  // namespace rimehaul::day
