#include "app/refusal_answer.h"

#include "app/progress.h"
#include "app/versions.h"
#include "card/refusal.h"
#include "ports/json/answers.h"
#include "search/obstacles.h"

namespace rimehaul::app {

Answer refusal_of(const search::NoRoute& none, const AskedOfJudge& asked, const Outside& outside) {
  const passage::Judge& judge = asked.judge;
  const search::NoRoute explained = [&] {
    Progress progress{outside, "no open way; trying loads and snow"};
    return search::explain_obstacles(none, judge, asked.question, &progress);
  }();
  const card::Refusal refusal =
      card::make_refusal(explained, {judge.scene(), judge.rig(), judge.snow(), asked.question,
                                     made_from(asked.inputs, outside), asked.departures});
  return {.text = card::text_of(refusal, kColumns), .json = ports::json::refusal_json(refusal)};
}

}  // namespace rimehaul::app
