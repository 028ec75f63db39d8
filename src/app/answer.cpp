#include "app/answer.h"

#include <ostream>
#include <utility>

namespace rimehaul::app {

void give_answer(Answer answer, const CommonOptions& common, const Outside& outside) {
  const bool json_alone = common.json == "-";
  answer.json += '\n';
  if (common.json && !json_alone) {
    answer.files.push_back({*common.json, answer.json});
  }
  write_files(answer.files);
  outside.out << (json_alone ? answer.json : answer.text);
}

}  // namespace rimehaul::app
