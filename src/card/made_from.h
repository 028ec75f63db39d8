// What an answer was made from, by what and when: the end of every report.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/digest.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A file that went into an answer.
struct InputFile {
  std::string name;  ///< relative to the site folder
  std::string what;  ///< "heights", "trails", ...
  std::string date;  ///< as the site states it; or who observed it; empty: not stated
  base::Digest digest;
  std::optional<units::Instant> observed{};  ///< of a snow report
};

struct MadeFrom {
  std::vector<InputFile> inputs;
  std::vector<std::string> versions;  ///< of this program first, then of its libraries
  units::Instant made;
};

/// The file's name and its date, local time: "snow.toml, observed by N. N., 2026-02-01 06:30".
[[nodiscard]] std::string name_and_date(const InputFile& input,
                                        const units::LocalClock& local_clock);

/// The program without its libraries, and the inputs by the first digits of their digests:
/// "rimehaul 0.1.0; rigs rigs.toml, 0123456789ab".
[[nodiscard]] std::string made_from_in_short(const MadeFrom& made_from,
                                             const units::LocalClock& local_clock);

}  // namespace rimehaul::card
