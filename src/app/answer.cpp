#include "app/answer.h"

#include <ostream>
#include <utility>

#include "app/colour.h"

namespace rimehaul::app {

void give_answer(Answer answer, const CommonOptions& common, const Outside& outside) {
  const bool json_alone = common.json == "-";
  answer.json += '\n';
  if (common.json && !json_alone) {
    answer.files.push_back({*common.json, answer.json});
  }
  write_files(answer.files);
  if (json_alone) {
    outside.out << answer.json;
  } else {
    outside.out << (outside.out_takes_colour ? coloured(answer.text) : answer.text);
  }
}

}  // namespace rimehaul::app
