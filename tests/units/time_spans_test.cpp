// Sets of hours against a plain list of seconds.
#include "units/time_spans.h"

#include <doctest/doctest.h>

#include <random>

namespace rimehaul::units {

namespace {

constexpr std::int64_t kLength = 60;

/// Whether each of the first seconds is in a set.
using Seconds60 = std::vector<bool>;

Seconds60 seconds_in(const TimeSpans& spans) {
  Seconds60 seconds;
  for (std::int64_t i = 0; i < kLength; ++i) {
    seconds.push_back(spans.contains({i}));
  }
  return seconds;
}

class Rolls {
 public:
  explicit Rolls(std::uint32_t seed) : engine_{seed} {}
  std::int64_t below(std::int64_t count) { return static_cast<std::int64_t>(engine_()) % count; }
  std::vector<Period> periods() {
    std::vector<Period> periods;
    for (std::int64_t i = below(6); i > 0; --i) {
      const std::int64_t from = below(kLength);
      periods.push_back({{from}, {from + below(14) - 3}});
    }
    return periods;
  }

 private:
  std::mt19937 engine_;
};

Seconds60 seconds_named(const std::vector<Period>& periods) {
  Seconds60 seconds(kLength, false);
  for (const Period& period : periods) {
    for (std::int64_t i = period.from.seconds; i <= period.to.seconds && i < kLength; ++i) {
      seconds[static_cast<std::size_t>(i)] = true;
    }
  }
  return seconds;
}

template <class Of>
Seconds60 each(const Of& of) {
  Seconds60 seconds;
  for (std::int64_t i = 0; i < kLength; ++i) {
    seconds.push_back(of(i));
  }
  return seconds;
}

void check_apart_and_in_order(const TimeSpans& spans) {
  for (std::size_t i = 0; i < spans.periods().size(); ++i) {
    CHECK(spans.periods()[i].from <= spans.periods()[i].to);
    if (i > 0) {
      CHECK(spans.periods()[i].from.seconds > spans.periods()[i - 1].to.seconds + 1);
    }
  }
}

}  // namespace

TEST_CASE("both ends of a period are in the set, the seconds beside them are not") {
  const TimeSpans morning{{{{10}, {20}}}};
  CHECK(morning.contains({10}));
  CHECK(morning.contains({20}));
  CHECK_FALSE(morning.contains({9}));
  CHECK_FALSE(morning.contains({21}));
}

TEST_CASE("periods that touch are one, and one that ends before it begins is none") {
  CHECK(TimeSpans{{{{11}, {20}}, {{1}, {10}}}} == TimeSpans{{{{1}, {20}}}});
  CHECK(TimeSpans{{{{5}, {4}}}}.empty());
  CHECK(TimeSpans{{{{1}, {9}}, {{11}, {20}}}}.periods().size() == 2);
}

TEST_CASE("a window is told whole for each moment in it, and the next for one before it") {
  const TimeSpans windows{{{{10}, {20}}, {{40}, {50}}}};
  CHECK(windows.around({15}) == Period{{10}, {20}});
  CHECK_FALSE(windows.around({30}).has_value());
  CHECK(windows.first_from({15}) == Instant{15});
  CHECK(windows.first_from({21}) == Instant{40});
  CHECK_FALSE(windows.first_from({51}).has_value());
}

TEST_CASE("a rig that may be five seconds late leaves five seconds before the end") {
  const TimeSpans windows{{{{10}, {20}}, {{40}, {44}}}};
  CHECK(windows.lasting(5) == TimeSpans{{{{10}, {15}}}});
  CHECK(windows.lasting(0) == windows);
}

TEST_CASE("sets of hours are what lists of seconds say, whatever is rolled") {
  for (std::uint32_t seed = 0; seed < 400; ++seed) {
    CAPTURE(seed);
    Rolls rolls{seed};
    const std::vector<Period> first = rolls.periods();
    const std::vector<Period> second = rolls.periods();
    const TimeSpans a{first};
    const TimeSpans b{second};
    const Seconds60 in_a = seconds_named(first);
    const Seconds60 in_b = seconds_named(second);
    const auto at = [](const Seconds60& seconds, std::int64_t i) {
      return 0 <= i && i < kLength && seconds[static_cast<std::size_t>(i)];
    };
    check_apart_and_in_order(a);
    CHECK(seconds_in(a) == in_a);

    const TimeSpans both = a.united_with(b);
    check_apart_and_in_order(both);
    CHECK(seconds_in(both) == each([&](std::int64_t i) { return at(in_a, i) || at(in_b, i); }));

    const TimeSpans shared = a.shared_with(b);
    check_apart_and_in_order(shared);
    CHECK(seconds_in(shared) == each([&](std::int64_t i) { return at(in_a, i) && at(in_b, i); }));

    const TimeSpans gaps = a.gaps_in({{5}, {50}});
    check_apart_and_in_order(gaps);
    CHECK(seconds_in(gaps) ==
          each([&](std::int64_t i) { return 5 <= i && i <= 50 && !at(in_a, i); }));

    // What lies beyond the list is not asked for.
    const std::int64_t later = rolls.below(9) - 4;
    const Seconds60 moved =
        seconds_in(TimeSpans{first}.later_by(later).shared_with(TimeSpans{{{{4}, {kLength - 5}}}}));
    CHECK(moved ==
          each([&](std::int64_t i) { return 4 <= i && i <= kLength - 5 && at(in_a, i - later); }));

    const std::int64_t lasting = rolls.below(5);
    CHECK(seconds_in(TimeSpans{first}.lasting(lasting).shared_with(
              TimeSpans{{{{0}, {kLength - 5}}}})) == each([&](std::int64_t i) {
            bool stays = i <= kLength - 5;
            for (std::int64_t late = 0; late <= lasting; ++late) {
              stays = stays && at(in_a, i + late);
            }
            return stays;
          }));
  }
}

}  // namespace rimehaul::units
