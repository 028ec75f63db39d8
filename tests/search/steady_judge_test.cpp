// A judge that judges once for many hours against one that is asked anew at each.
#include "search/steady_judge.h"

#include <doctest/doctest.h>

#include "search/timed_case.h"

namespace rimehaul::search {

namespace {

using units::Instant;

/// Counts how often it is asked.
class Counting final : public passage::LegJudge {
 public:
  explicit Counting(const passage::LegJudge& judge) : judge_{judge} {}

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override {
    return judge_.at_best(leg);
  }
  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg, Instant entry) const override {
    ++asked;
    return judge_.judge(leg, entry);
  }
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  Instant entry) const override {
    ++asked;
    return judge_.judge_turn(from, to, entry);
  }
  [[nodiscard]] std::vector<Instant> turning_moments(trails::LegId leg,
                                                     units::Period during) const override {
    return judge_.turning_moments(leg, during);
  }
  // NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
  [[nodiscard]] std::vector<Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                     units::Period during) const override {
    return judge_.turning_moments(from, to, during);
  }

  mutable std::size_t asked = 0;

 private:
  const passage::LegJudge& judge_;
};

}  // namespace

TEST_CASE("asked at any hour in any order, it says what the judge says, and asks that seldom") {
  std::size_t questions = 0;
  std::size_t asked = 0;
  for (std::uint32_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    testing::TimedCase random{seed};
    const Counting counting{random.judge};
    const SteadyJudge steady{counting, testing::kHours};
    const std::vector<Turn> turns = turns_of(random.network);
    for (int question = 0; question < 600; ++question) {
      // Beyond the hours looked at as well.
      const Instant entry{60 * static_cast<std::int64_t>(random.dice.below(100)) +
                          random.dice.below(60)};
      const trails::LegId leg{
          random.dice.below(static_cast<std::uint32_t>(random.network.legs.size()))};
      CHECK(are_same(facts_of(steady.judge(leg, entry)), facts_of(random.judge.judge(leg, entry))));
      const Turn turn = turns[random.dice.below(static_cast<std::uint32_t>(turns.size()))];
      CHECK(are_same(facts_of(steady.judge_turn(turn.from, turn.to, entry)),
                     facts_of(random.judge.judge_turn(turn.from, turn.to, entry))));
      questions += 2;
    }
    asked += counting.asked;
  }
  CHECK(asked * 3 < questions);
}

TEST_CASE("hours on the leg move with the entry, and all else is passed on") {
  testing::TimedCase random{3};
  const SteadyJudge steady{random.judge, testing::kHours};
  const trails::LegId leg{0};
  const units::Period hours{{0}, {5'400}};
  CHECK(steady.at_best(leg).time == random.judge.at_best(leg).time);
  CHECK(steady.turning_moments(leg, hours) == random.judge.turning_moments(leg, hours));
  const Turn turn = turns_of(random.network).front();
  CHECK(steady.turning_moments(turn.from, turn.to, hours) ==
        random.judge.turning_moments(turn.from, turn.to, hours));
  for (const std::int64_t minute : {1, 2, 40}) {
    const Instant entry = testing::minute(minute);
    CHECK(steady.judge(leg, entry).hours.asked == random.judge.judge(leg, entry).hours.asked);
  }
}

}  // namespace rimehaul::search
