// Where a number comes from, so that nobody takes an estimate for a rating.
#pragma once

#include <string>

namespace rimehaul::rig {

/// How well a number is founded.
enum class Standing { maker, published, site_measured, site_limit, estimate };

/// Who says so, and when: "operator's manual, page 41", "pull test, A. Example, 2026-01-12".
struct Provenance {
  Standing standing = Standing::estimate;
  std::string source;
};

[[nodiscard]] const char* words_for(Standing standing);

}  // namespace rimehaul::rig
