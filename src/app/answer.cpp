#include "app/answer.h"

#include <algorithm>
#include <ostream>
#include <utility>

#include "app/colour.h"
#include "app/output_places.h"

namespace rimehaul::app {

void give_answer(Answer answer, const CommonOptions& common, const Outside& outside) {
  if (common.json) {
    answer.files.push_back({*common.json, answer.json + '\n'});
  }
  const auto alone = std::ranges::find(answer.files, kOnStandardOutput, &FileToWrite::path);
  std::string on_screen;
  if (alone != answer.files.end()) {
    on_screen = std::move(alone->bytes);
    answer.files.erase(alone);
  } else {
    on_screen = outside.out_takes_colour ? coloured(answer.text) : std::move(answer.text);
  }
  write_files(answer.files, answer.made);
  for (const base::Fault& doubt : answer.doubts) {
    outside.err << base::line_of(doubt) << '\n';
  }
  outside.out << on_screen;
}

}  // namespace rimehaul::app
