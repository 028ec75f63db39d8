// Gives an answer where it was asked for: on the screen, and as JSON.
#pragma once

#include <string>

#include "app/options.h"

namespace rimehaul::app {

/// Columns of all text.
inline constexpr int kColumns = 80;

/// One answer in its two forms.
struct Answer {
  std::string text;
  std::string json;
};

/// Text on the screen; with --json FILE the JSON in that file too; with --json - the JSON in place
/// of the text.
void give_answer(const Answer& answer, const CommonOptions& common, const Outside& outside);

}  // namespace rimehaul::app
