// What the slope audit says of one stretch of trail: which check, how much, and where it is worst.
#pragma once

#include <array>
#include <optional>

#include "passage/finding.h"
#include "trails/network.h"

namespace rimehaul::audit {

/// How a piece of trail comes out, by what binds there.
enum class Band {
  to_half,     ///< share from 0 to 50 %
  to_allowed,  ///< over 50 %, up to the allowed share
  to_whole,    ///< over the allowed share, up to 100 %
  over_whole,  ///< over 100 %, or nothing is left to hold at all
  closed,      ///< a rule, a rating or a mark says no, or something is not known
};
inline constexpr int kBandCount = 5;

/// "proven or not": what is not proven to lie in a band lies in the next.
[[nodiscard]] Band band_of(const passage::Finding& finding, double allowed_share);

/// Whether a stand means that the rig may not go: over the allowed share, refused, or not known.
[[nodiscard]] bool exceeds(passage::Stand stand);

/// A place has its pieces of trail, or is the joint of two legs, where a rig stands on both.
enum class On { trail, joint };

/// A stretch of one trail, driven one way, told by the finding that binds at its worst place.
struct AuditedPlace {
  std::size_t trail = 0;  ///< index into Network::trails
  trails::Way way = trails::Way::as_drawn;
  On on = On::trail;
  geo::Span span{};          ///< by chainage along the trail as drawn; a joint: from == to
  units::Metres at;          ///< of the worst place, by chainage as drawn
  geo::MapPoint place{};     ///< the same on the map
  passage::Finding finding;  ///< the upper bound, k sigma and the sub-cell term counted
  passage::Stand stand = passage::Stand::missing;
  /// The same check's share at the worst place with no error of the heights counted; nothing where
  /// it has none.
  std::optional<double> found_share;
};

/// One piece of a trail, driven one way, as what binds there lets it come out.
struct GradedPiece {
  geo::Span span{};  ///< by chainage along the trail as drawn
  Band band = Band::closed;
  std::optional<double> share;  ///< of what binds; nothing: closed
  passage::Check check = passage::Check::heights_known;
  bool waits = false;  ///< open once a named person has taken a decision
};

/// Metres of trail by band, each way counted.
struct BandLengths {
  std::array<units::Metres, std::size_t{kBandCount}> by_band{};
  units::Metres waiting;  ///< of the first two bands: waits for a named person's decision

  void add(const GradedPiece& piece);
  void add(const BandLengths& more);
  [[nodiscard]] units::Metres of(Band band) const {
    return by_band.at(static_cast<std::size_t>(band));
  }
  [[nodiscard]] units::Metres total() const;
};

}  // namespace rimehaul::audit
