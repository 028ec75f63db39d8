// Gives an answer where it was asked for: on the screen, and as JSON.
#pragma once

#include <string>
#include <vector>

#include "app/options.h"
#include "app/write_file.h"
#include "base/fault.h"

namespace rimehaul::app {

/// Columns of all text.
inline constexpr int kColumns = 80;

/// One answer in its two forms, and what else was asked for as files.
struct Answer {
  std::string text;
  std::string json;
  std::vector<FileToWrite> files = {};
  std::vector<base::Fault> doubts = {};               ///< told beside it, as faults are
  std::vector<std::unique_ptr<FreshFile>> made = {};  ///< files that are filled already
};

/// Text on the screen; with --json FILE the JSON in that file too. A file named "-" goes to the
/// screen in place of the text. All others are written together, before anything is said.
void give_answer(Answer answer, const CommonOptions& common, const Outside& outside);

}  // namespace rimehaul::app
