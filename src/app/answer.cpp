#include "app/answer.h"

#include <ostream>

#include "app/write_file.h"

namespace rimehaul::app {

void give_answer(const Answer& answer, const CommonOptions& common, const Outside& outside) {
  if (common.json == "-") {
    outside.out << answer.json << '\n';
    return;
  }
  if (common.json) {
    write_file(*common.json, answer.json + "\n");
  }
  outside.out << answer.text;
}

}  // namespace rimehaul::app
