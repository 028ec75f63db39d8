// What is kept of the days: inputs as they were, what was reported, signed, allowed, issued and
// measured, and by whom. Nothing kept is ever changed; what ends something is a thing of its own.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/digest.h"
#include "day/log_entry.h"
#include "geo/point.h"
#include "snow/site_status.h"
#include "units/bearing.h"
#include "units/slope.h"

namespace rimehaul::day {

/// When and by whom; the account stands in the log.
struct Done {
  units::Instant at;
  std::string by;
  std::string role;  ///< may be empty

  friend bool operator==(const Done&, const Done&) = default;
};

/// Whether a file's bytes are kept, or its digest alone.
enum class Frozen { whole, by_digest };

/// Files up to this many bytes are kept whole; larger ones, the heights above all, by digest alone.
inline constexpr std::int64_t kMostFrozenBytes = std::int64_t{8} << 20U;

/// A file that something was made from. One content is kept once.
struct FrozenInput {
  std::int64_t number = 0;
  std::string name;  ///< that it bore when it was first kept, relative to the site
  std::string role;  ///< "trails", "rules", ...
  base::Digest digest;
  std::int64_t bytes = 0;  ///< of the file
  Frozen how = Frozen::whole;

  friend bool operator==(const FrozenInput&, const FrozenInput&) = default;
};

/// A snow report; its text is the frozen input of that digest.
struct KeptReport {
  std::int64_t number = 0;
  base::Digest digest;
  std::string observer;
  units::Instant observed;
  std::optional<units::Instant> until{};
  Done kept;
};

/// What somebody said of a mark.
struct KeptMark {
  std::int64_t number = 0;
  snow::MarkStatus status;
  Done said;
};

/// A file that a board was made from: the frozen input of that digest.
struct BoardInput {
  std::string name;
  std::string role;
  base::Digest digest;

  friend bool operator==(const BoardInput&, const BoardInput&) = default;
};

struct SignedBoard {
  std::int64_t number = 0;
  std::string json;     ///< canonical
  base::Digest digest;  ///< of `json`
  Done signed_off;
  units::Instant valid_until;
  std::vector<BoardInput> inputs;
  LogHead head;  ///< of the log just before it was signed
};

/// A site rule loosened for a while.
struct Override {
  std::int64_t number = 0;
  std::string kind;     ///< which rule
  std::string subject;  ///< trail, station, ...; may be empty
  std::string value;    ///< what holds in its place
  std::string reason;
  units::Instant expires;
  Done allowed;
};

/// An override taken back before it expires.
struct OverrideEnd {
  std::int64_t number = 0;
  std::int64_t override_number = 0;
  std::string reason;
  Done ended;
};

struct IssuedCard {
  std::int64_t number = 0;
  std::int64_t board = 0;
  std::string route;
  std::string json;     ///< canonical
  base::Digest digest;  ///< of `json`
  LogHead head;         ///< of the log just before it was issued
  Done issued;
};

/// A card that is not to be driven by any more.
struct Recall {
  std::int64_t number = 0;
  std::int64_t card = 0;
  std::string reason;
  Done recalled;
};

/// Angles measured by hand at a place.
struct FieldCheck {
  std::int64_t number = 0;
  geo::MapPoint at;
  units::Bearing heading;
  units::Slope grade;        ///< along the heading; kept to a thousandth of a degree
  units::Slope cross_slope;  ///< likewise
  std::string instrument;
  Done measured;
};

// Everything that a thing says, as the bytes whose digest its log entry bears in `about`.

[[nodiscard]] std::string canonical_text(const KeptReport& report);
[[nodiscard]] std::string canonical_text(const KeptMark& mark);
[[nodiscard]] std::string canonical_text(const SignedBoard& board);
[[nodiscard]] std::string canonical_text(const Override& given);
[[nodiscard]] std::string canonical_text(const OverrideEnd& end);
[[nodiscard]] std::string canonical_text(const IssuedCard& card);
[[nodiscard]] std::string canonical_text(const Recall& recall);
[[nodiscard]] std::string canonical_text(const FieldCheck& check);

/// An angle in whole thousandths of a degree, and a length in whole millimetres, as both are kept.
[[nodiscard]] std::int64_t millidegrees(double degrees);
[[nodiscard]] std::int64_t millimetres(units::Metres length);

}  // namespace rimehaul::day
