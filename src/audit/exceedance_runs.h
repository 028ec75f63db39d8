// Joins pieces that exceed in one way into stretches, in driving order.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "audit/audited_place.h"

namespace rimehaul::audit {

/// What is found at one piece: which of the trail's pieces it is, and its stretch.
struct PieceOfTrail {
  std::size_t number = 0;  ///< from 0, in driving order
  geo::Span span{};        ///< by chainage along the trail as drawn
};

/// A stretch that exceeds, and where it is worst.
struct Run {
  PieceOfTrail worst_piece;
  AuditedPlace told;  ///< all but its found share
};

class ExceedanceRuns {
 public:
  ExceedanceRuns(std::size_t trail, trails::Way way) : trail_{trail}, way_{way} {}

  /// Pieces must be offered in driving order.
  void offer(const PieceOfTrail& piece, const passage::Finding& finding, passage::Stand stand);
  /// In the order in which they begin.
  [[nodiscard]] const std::vector<Run>& runs() const { return runs_; }

 private:
  /// One check exceeding in one way for one reason.
  using Kind = std::tuple<passage::Check, passage::Stand, std::string>;
  struct Last {
    std::size_t run = 0;    ///< index into runs_
    std::size_t piece = 0;  ///< that it reaches to
  };

  std::size_t trail_;
  trails::Way way_;
  std::vector<Run> runs_;
  std::map<Kind, Last> last_;
};

}  // namespace rimehaul::audit
