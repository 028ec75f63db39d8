// Pieces of hours against the judge asked anew for every second.
#include "search/leg_hours.h"

#include <doctest/doctest.h>

#include "search/timed_case.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::units::Instant;
using rimehaul::units::Period;

namespace {

template <class Piece>
const Piece& piece_at(std::span<const Piece> pieces, Instant when) {
  const auto found = std::ranges::find_if(pieces, [&](const Piece& piece) {
    return piece.entries.from <= when && when <= piece.entries.to;
  });
  REQUIRE(found != pieces.end());
  return *found;
}

template <class Piece>
void check_without_gaps(std::span<const Piece> pieces, Period horizon) {
  REQUIRE_FALSE(pieces.empty());
  CHECK(pieces.front().entries.from == horizon.from);
  CHECK(pieces.back().entries.to == horizon.to);
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    CHECK(pieces[i].entries.from.seconds == pieces[i - 1].entries.to.seconds + 1);
  }
}

}  // namespace

TEST_CASE("a leg that closes for some minutes is closed for who would still be on it then") {
  auto network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0] = {.time_s = 90.5,
                   .spells = {{.when = {minute(10), {20 * 60 - 1}}, .time_s = 90.5}}};
  LegHours hours{judge, {minute(0), minute(60)}};
  const auto pieces = hours.of(leg(0));
  REQUIRE(pieces.size() == 3);
  CHECK(pieces[0].entries == Period{{0}, {600 - 92}});  // leaves at 9:59
  CHECK(pieces[1].entries == Period{{600 - 91}, {20 * 60 - 1}});
  CHECK(pieces[2].entries == Period{{20 * 60}, minute(60)});
  CHECK(pieces[1].facts.verdict == rimehaul::passage::Verdict::closed);
  CHECK(pieces[2].facts.verdict == rimehaul::passage::Verdict::open);
}

TEST_CASE("what closes just after the hours looked at closes the last of them") {
  auto network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0] = {.time_s = 300, .spells = {{.when = {minute(62), minute(99)}}}};
  LegHours hours{judge, {minute(0), minute(60)}};
  const auto pieces = hours.of(leg(0));
  REQUIRE(pieces.size() == 2);
  CHECK(pieces[1].entries == Period{minute(57), minute(60)});
}

TEST_CASE("a leg is judged once for each stretch of time, not for each question") {
  auto network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0].spells = {{.when = {minute(10), minute(20)}}};
  LegHours hours{judge, {minute(0), minute(60)}};
  CHECK(hours.of(leg(0)).size() == 3);
  const std::size_t judged = hours.judged();
  CHECK(judged <= 5);
  CHECK(hours.of(leg(0)).size() == 3);
  CHECK(hours.judged() == judged);
}

TEST_CASE("pieces say what the judge says at every second, on random legs and turns") {
  for (std::uint32_t seed = 0; seed < 40; ++seed) {
    CAPTURE(seed);
    const TimedCase test{seed};
    LegHours hours{test.judge, kHours};
    for (std::uint32_t i = 0; i < test.network.legs.size(); ++i) {
      const auto pieces = hours.of(leg(i));
      check_without_gaps(pieces, kHours);
      for (Instant when = kHours.from; when <= kHours.to; when.seconds += 7) {
        REQUIRE(are_same(piece_at(pieces, when).facts, facts_of(test.judge.judge(leg(i), when))));
      }
    }
    for (const Turn turn : turns_of(test.network)) {
      const auto pieces = hours.of(turn);
      check_without_gaps(pieces, kHours);
      for (Instant when = kHours.from; when <= kHours.to; when.seconds += 59) {
        REQUIRE(piece_at(pieces, when).facts.verdict ==
                facts_of(test.judge.judge_turn(turn.from, turn.to, when)).verdict);
      }
    }
  }
}
