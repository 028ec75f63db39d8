// Everything that the steps of noding work on together: the lines, the bridges, what was found.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "ports/geos/draft_line.h"
#include "ports/geos/geos_handles.h"
#include "trails/features.h"
#include "trails/trail.h"

namespace rimehaul::ports::geos {

/// A place on a trail, by chainage along its line as drawn.
struct OnTrail {
  std::size_t trail = 0;
  units::Metres was;
};

/// What is wrong with a trail, without a closing full stop, and what to do, an imperative.
struct Complaint {
  std::string problem;
  std::string remedy;
};

class Draft {
 public:
  Draft(const std::vector<trails::Trail>& trails, const std::vector<trails::Mark>& marks,
        units::Metres snap);

  Context context;
  std::vector<DraftLine> lines;      ///< one per trail
  std::vector<base::Fault> faults;   ///< doubts, and faults that refuse a trail
  std::vector<std::size_t> refused;  ///< trails that cannot be noded, in any order
  trails::TrailList trail_list = trails::TrailList::whole;
  [[nodiscard]] units::Metres snap() const { return snap_; }
  [[nodiscard]] const std::string& name(std::size_t trail) const { return labels_[trail].name; }

  /// Whether a crossing there is under or over a bridge: within it, or within reach of its ends.
  [[nodiscard]] bool crosses_at_bridge(OnTrail place) const;
  /// Whether the end of another trail there would hang on the bridge: within it, ends apart.
  [[nodiscard]] bool is_on_bridge(OnTrail place) const;

  void doubt(std::size_t trail, Complaint complaint);
  void refuse(std::size_t trail, Complaint complaint);
  /// Refuses a trail for what has been told of another.
  void refuse(std::size_t trail) { refused.push_back(trail); }

 private:
  [[nodiscard]] base::Fault fault(std::size_t trail, Complaint complaint) const;

  struct Label {
    std::string name;
    std::string file;
  };
  std::vector<Label> labels_;  ///< of the trails, for faults
  std::vector<std::vector<geo::Span>> bridges_;
  units::Metres snap_;
};

/// Moves the ends of trails that nearly meet, or nearly reach another trail, to one place, and
/// makes that place a node of the trail reached.
void snap_ends(Draft& draft);

/// Makes every place where two trails, or a trail and itself, meet a node of both; refuses trails
/// that run over each other.
void node_meetings(Draft& draft);

/// A station and the place on a trail that stands for it.
struct Joined {
  std::size_t station = 0;
  geo::MapPoint place;
};

/// Finds each station's place on the trail nearest to it and makes it a node.
[[nodiscard]] std::vector<Joined> join_stations(Draft& draft,
                                                const std::vector<trails::Station>& stations);

/// "12.3 m", rounded up.
[[nodiscard]] std::string words_of(units::Metres length);

}  // namespace rimehaul::ports::geos
