// The best order of stops against trying every order, and against tours known in closed form.
#include "search/stop_order.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>
#include <random>
#include <set>
#include <tuple>

#include "base/require.h"

namespace rimehaul::search {

namespace {

using units::Instant;
using units::Litres;
using units::Seconds;

constexpr std::int64_t kNever = 1'000'000'000;

/// How a hop is driven.
struct Drawn {
  std::int64_t lasts_s = 60;
  double share = 0.0;
  bool asks = false;
  double fuel_l = 0.0;
  std::int64_t opens_s = 0;  ///< open from one second on, until another
  std::int64_t closes_s = kNever;
  std::int64_t turns_s = kNever;  ///< from then on as follows, better or worse
  std::int64_t lasts_then_s = 60;
  double share_then = 0.0;
};

/// Hops told by a table; what is not in it is not to be driven.
class DrawnHops final : public Hops {
 public:
  using Key = std::tuple<StopSet, std::size_t, std::size_t>;
  static constexpr std::size_t kEnd = 99;

  void expect(std::span<const HopAsked> next) override { expected = {next.begin(), next.end()}; }

  std::optional<HopDriven> driven(const Hop& hop, Instant ready) override {
    ++asked;
    unexpected += expected.contains({hop, ready}) ? 0U : 1U;
    const auto found = table.find({hop.called, hop.from.value_or(kEnd), hop.to.value_or(kEnd)});
    if (found == table.end()) {
      return std::nullopt;
    }
    const Drawn& drawn = found->second;
    const Instant departs{std::max(ready.seconds, drawn.opens_s)};
    if (departs.seconds > drawn.closes_s) {
      return std::nullopt;
    }
    const bool has_turned = departs.seconds >= drawn.turns_s;
    return HopDriven{
        .departs = departs,
        .arrives = {departs.seconds + (has_turned ? drawn.lasts_then_s : drawn.lasts_s)},
        .worst_share = has_turned ? drawn.share_then : drawn.share,
        .needs_permission = drawn.asks,
        .fuel = Litres{drawn.fuel_l}};
  }

  std::optional<Instant> last_turn() const override { return last; }

  std::optional<HopAtBest> at_best(const Hop& hop) override {
    const auto found = table.find({hop.called, hop.from.value_or(kEnd), hop.to.value_or(kEnd)});
    if (found == table.end()) {
      return std::nullopt;
    }
    const Drawn& drawn = found->second;
    return knows_least ? HopAtBest{.worst_share = std::min(drawn.share, drawn.share_then),
                                   .needs_permission = drawn.asks,
                                   .lasts_s = std::min(drawn.lasts_s, drawn.lasts_then_s),
                                   .fuel = Litres{drawn.fuel_l}}
                       : HopAtBest{};
  }

  std::map<Key, Drawn> table;
  std::set<HopAsked> expected;
  std::optional<Instant> last;  ///< turn of all hops
  bool knows_least = true;      ///< else every hop may come to nothing, as far as it knows
  std::size_t asked = 0;
  std::size_t unexpected = 0;
};

struct Result {
  bool asks = false;
  double share = 0.0;
  std::int64_t end = 0;
  double fuel = 0.0;

  [[nodiscard]] auto key(Preference prefer) const {
    const auto hour = static_cast<double>(end);
    switch (prefer) {
      case Preference::quickest:
        return std::tuple{asks, hour, share};
      case Preference::least_fuel:
        return std::tuple{asks, fuel, hour};
      case Preference::safest:
        break;
    }
    return std::tuple{asks, share, hour};
  }
};

/// One order driven from start to end; nothing where it does not hold.
std::optional<Result> drive(Hops& hops, const OrderQuestion& question,
                            const std::vector<std::size_t>& order) {
  Result result{.end = question.depart.seconds};
  Hop hop;
  Instant ready = question.depart;
  const std::size_t hop_count = order.size() + (question.comes_to_an_end ? 1 : 0);
  for (std::size_t i = 0; i < hop_count; ++i) {
    hop.to = i < order.size() ? std::optional{order[i]} : std::nullopt;
    if (hop.to.has_value() && (question.after[*hop.to] & ~hop.called) != 0) {
      return std::nullopt;
    }
    const auto driven = hops.driven(hop, ready);
    if (!driven.has_value()) {
      return std::nullopt;
    }
    result.asks = result.asks || driven->needs_permission;
    result.share = std::max(result.share, driven->worst_share);
    result.fuel += driven->fuel.value();
    result.end = driven->arrives.seconds;
    ready = units::after(driven->arrives, question.halt);
    hop.from = hop.to;
    hop.called |= hop.to.has_value() ? StopSet{1} << *hop.to : 0;
  }
  return result.fuel <= question.fuel.value() ? std::optional{result} : std::nullopt;
}

std::optional<Result> best_of_all(Hops& hops, const OrderQuestion& question) {
  std::vector<std::size_t> order(question.after.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::optional<Result> best;
  do {
    const auto result = drive(hops, question, order);
    if (result.has_value() &&
        (!best.has_value() || result->key(question.prefer) < best->key(question.prefer))) {
      best = result;
    }
  } while (std::ranges::next_permutation(order).found);
  return best;
}

enum class Hours { all_alike, with_openings, that_turn };

struct Drawing {
  std::mt19937 engine;
  std::size_t stops;
  std::optional<Instant> last{};  ///< turn of what was drawn

  [[nodiscard]] std::uint32_t below(std::uint32_t end) {
    return static_cast<std::uint32_t>(engine() % end);
  }

  /// What is aboard follows from the stops called at, so hops differ with them.
  [[nodiscard]] DrawnHops hops(Hours hours) {
    DrawnHops hops;
    last.reset();
    hops.knows_least = below(2) == 0;
    for (StopSet called = 0; called < (StopSet{1} << stops); ++called) {
      for (std::size_t from = 0; from <= stops; ++from) {
        for (std::size_t to = 0; to <= stops; ++to) {
          if (from != to && below(8) != 0) {
            hops.table[{called, from == stops ? DrawnHops::kEnd : from,
                        to == stops ? DrawnHops::kEnd : to}] = drawn(hours);
          }
        }
      }
    }
    hops.last = last;
    return hops;
  }

  [[nodiscard]] Drawn drawn(Hours hours) {
    Drawn drawn{.lasts_s = 60 * (1 + below(9)),
                .share = 0.1 * below(8),
                .asks = below(12) == 0,
                .fuel_l = 0.25 * below(5)};
    if (hours == Hours::with_openings && below(3) == 0) {
      drawn.opens_s = 60 * below(25);
      drawn.closes_s = drawn.opens_s + 60 * below(40);
    }
    if (hours == Hours::that_turn && below(3) == 0) {
      drawn.turns_s = 60 * below(30);
      last = std::max(last, std::optional{Instant{drawn.turns_s}});
      drawn.lasts_then_s = 60 * (1 + below(9));
      drawn.share_then = 0.1 * below(8);
      drawn.opens_s = 60 * below(12);
    }
    return drawn;
  }
};

OrderQuestion question_of(Drawing& drawing) {
  OrderQuestion question{.after = std::vector<StopSet>(drawing.stops, 0),
                         .comes_to_an_end = drawing.below(2) == 0,
                         .depart = {30},
                         .halt = Seconds{60.0 * drawing.below(4)},
                         .prefer = static_cast<Preference>(drawing.below(3)),
                         .fuel = Litres{drawing.below(3) == 0 ? 2.5 : 50.0}};
  for (std::size_t stop = 1; stop < drawing.stops; ++stop) {
    if (drawing.below(4) == 0) {
      question.after[stop] = StopSet{1} << drawing.below(static_cast<std::uint32_t>(stop));
    }
  }
  return question;
}

/// How often there was an order at all; each answer checked against all orders.
std::size_t orders_found(Hours hours) {
  std::size_t found = 0;
  for (std::uint32_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Drawing drawing{std::mt19937{seed}, 1 + seed % 6};
    DrawnHops hops = drawing.hops(hours);
    const OrderQuestion question = question_of(drawing);
    const auto best = best_of_all(hops, question);
    hops.unexpected = 0;
    const auto answer = best_order(hops, question);
    CHECK(hops.unexpected == 0);
    const auto* order = std::get_if<StopOrder>(&answer);
    REQUIRE((order != nullptr) == best.has_value());
    if (order == nullptr) {
      CHECK_FALSE(std::get<NoOrder>(answer).farthest.not_ruled_out.has_value());
      continue;
    }
    ++found;
    const auto driven = drive(hops, question, order->stops);
    REQUIRE(driven.has_value());
    CHECK(driven->key(question.prefer) == best->key(question.prefer));
    CHECK(order->hops.back().arrives.seconds == best->end);
    CHECK_FALSE(order->not_ruled_out.has_value());
  }
  return found;
}

/// Seconds between places of a plane, metre by metre.
DrawnHops hops_between(const std::vector<std::pair<double, double>>& stops,
                       std::pair<double, double> start) {
  DrawnHops hops;
  const auto place = [&](std::size_t stop) {
    return stop == DrawnHops::kEnd ? start : stops.at(stop);
  };
  std::vector<std::size_t> all(stops.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  all.push_back(DrawnHops::kEnd);
  for (StopSet called = 0; called < (StopSet{1} << stops.size()); ++called) {
    for (const std::size_t from : all) {
      for (const std::size_t to : all) {
        const double metres =
            std::hypot(place(from).first - place(to).first, place(from).second - place(to).second);
        hops.table[{called, from, to}] = {.lasts_s = std::llround(1000.0 * metres)};
      }
    }
  }
  return hops;
}

}  // namespace

TEST_CASE("the best order is the best of all orders, whatever is preferred") {
  CHECK(orders_found(Hours::all_alike) > 100);
}

TEST_CASE("so it is where hops open and close, as coming earlier is never worse then") {
  CHECK(orders_found(Hours::with_openings) > 60);
}

TEST_CASE("so it is where hops turn for better or worse on the way") {
  CHECK(orders_found(Hours::that_turn) > 100);
}

TEST_CASE("an order that profits from coming later is found") {
  // By stop 0 first the rig comes to stop 2 at 180 s, the other way round at 170 s.
  DrawnHops hops;
  hops.table[{0, DrawnHops::kEnd, 0}] = {.lasts_s = 60, .share = 0.1};
  hops.table[{0, DrawnHops::kEnd, 1}] = {.lasts_s = 50, .share = 0.1};
  hops.table[{1, 0, 1}] = {.lasts_s = 60, .share = 0.1};
  hops.table[{2, 1, 0}] = {.lasts_s = 60, .share = 0.1};
  hops.table[{3, 0, 2}] = {.lasts_s = 60, .share = 0.1};
  hops.table[{3, 1, 2}] = {.lasts_s = 60, .share = 0.1};
  hops.table[{7, 2, 3}] = {.lasts_s = 60, .share = 0.6, .turns_s = 171, .share_then = 0.1};
  const OrderQuestion question{.after = {0, 0, 3, 7}, .depart = {0}, .fuel = Litres{1}};
  hops.last = Instant{kNever};
  const auto later = best_order(hops, question);
  CHECK(std::get<StopOrder>(later).stops == std::vector<std::size_t>{0, 1, 2, 3});
  CHECK(std::get<StopOrder>(later).hops.back().worst_share == 0.1);
}

TEST_CASE("where too many orders are left, what they may come to is told") {
  constexpr std::size_t kStops = 8;
  DrawnHops hops;
  hops.last = Instant{kNever};
  hops.knows_least = false;
  std::mt19937 engine{11};
  for (StopSet called = 0; called < (StopSet{1} << kStops); ++called) {
    for (std::size_t from = 0; from <= kStops; ++from) {
      for (std::size_t to = 0; to < kStops; ++to) {
        hops.table[{called, from == kStops ? DrawnHops::kEnd : from, to}] = {
            .lasts_s = 500 + static_cast<std::int64_t>(engine() % 97), .share = 0.1};
      }
    }
  }
  const OrderQuestion question{.after = std::vector<StopSet>(kStops, 0),
                               .depart = {0},
                               .prefer = Preference::quickest,
                               .fuel = Litres{1}};
  const auto answer = best_order(hops, question);
  const auto best = best_of_all(hops, question);
  const auto& order = std::get<StopOrder>(answer);
  REQUIRE(order.not_ruled_out.has_value());
  CHECK(order.not_ruled_out->arrives.seconds > 0);
  CHECK(order.not_ruled_out->arrives.seconds <= best->end);
  CHECK(order.not_ruled_out->worst_share <= best->share);
}

TEST_CASE("what the rest takes at least leaves few orders to follow") {
  constexpr std::size_t kStops = 8;
  DrawnHops hops;
  hops.last = Instant{kNever};
  std::mt19937 engine{12};
  for (StopSet called = 0; called < (StopSet{1} << kStops); ++called) {
    for (std::size_t from = 0; from <= kStops; ++from) {
      for (std::size_t to = 0; to < kStops; ++to) {
        hops.table[{called, from == kStops ? DrawnHops::kEnd : from, to}] = {
            .lasts_s = 60 + static_cast<std::int64_t>(engine() % 997), .share = 0.1};
      }
    }
  }
  OrderQuestion question{.after = std::vector<StopSet>(kStops, 0),
                         .depart = {0},
                         .prefer = Preference::quickest,
                         .fuel = Litres{1}};
  std::size_t asked = 0;
  for (const bool knows_least : {false, true}) {
    hops.knows_least = knows_least;
    hops.asked = 0;
    const auto answer = best_order(hops, question);
    CHECK_FALSE(std::get<StopOrder>(answer).not_ruled_out.has_value());
    CHECK((asked == 0 || hops.asked < asked));
    asked = hops.asked;
  }
  question.comes_to_an_end = true;  // nowhere that the rig can drive to
  hops.asked = 0;
  const auto none = best_order(hops, question);
  CHECK_FALSE(std::get<NoOrder>(none).farthest.not_ruled_out.has_value());
  CHECK(std::get<NoOrder>(none).farthest.stops.size() == kStops);
}

TEST_CASE("ten stops round a circle are called at in their order round it") {
  // The shortest closed tour of points in convex position is their hull (Flood 1956, Operations
  // Research 4:61-75: an optimal tour of the plane never crosses itself).
  constexpr std::size_t kAll = 11;
  std::vector<std::pair<double, double>> places;
  for (std::size_t i = 0; i < kAll; ++i) {
    const double angle = 2.0 * std::numbers::pi * static_cast<double>(i) / kAll;
    places.emplace_back(100.0 * std::cos(angle), 100.0 * std::sin(angle));
  }
  const auto start = places.front();
  std::vector<std::pair<double, double>> stops(places.begin() + 1, places.end());
  std::mt19937 engine{7};
  std::vector<std::size_t> shuffled(stops.size());
  std::iota(shuffled.begin(), shuffled.end(), std::size_t{0});
  std::ranges::shuffle(shuffled, engine);
  std::vector<std::pair<double, double>> mixed;
  for (const std::size_t place : shuffled) {
    mixed.push_back(stops[place]);
  }
  DrawnHops hops = hops_between(mixed, start);
  const auto answer = best_order(hops, {.after = std::vector<StopSet>(mixed.size(), 0),
                                        .comes_to_an_end = true,
                                        .depart = {0},
                                        .prefer = Preference::quickest,
                                        .fuel = Litres{1}});
  const auto& order = std::get<StopOrder>(answer);
  const double side = 200.0 * std::sin(std::numbers::pi / kAll);
  CHECK(static_cast<double>(order.hops.back().arrives.seconds) ==
        doctest::Approx(1000.0 * kAll * side).epsilon(1e-5));
  std::vector<std::size_t> round;
  for (const std::size_t stop : order.stops) {
    round.push_back(shuffled[stop]);
  }
  const bool one_way = std::ranges::is_sorted(round);
  std::ranges::reverse(round);
  CHECK((one_way || std::ranges::is_sorted(round)));
  // Every subset of the stops with every last one, and no more: 10 2^9 labels go on to what is
  // left.
  CHECK(hops.asked <= 10 * 512 * 10);
}

TEST_CASE("where no order holds, what is told gets to as many stops as can be") {
  DrawnHops hops;
  for (const StopSet called : {0U, 1U, 2U, 3U}) {
    hops.table[{called, DrawnHops::kEnd, 0}] = {.lasts_s = 60};
    hops.table[{called, 0, 1}] = {.lasts_s = 90};
    hops.table[{called, DrawnHops::kEnd, 1}] = {.lasts_s = 30};
  }
  const auto answer =
      best_order(hops, {.after = {0, 0, 0}, .depart = {0}, .halt = Seconds{10}, .fuel = Litres{1}});
  const auto& none = std::get<NoOrder>(answer);
  CHECK(none.farthest.stops == std::vector<std::size_t>{0, 1});
  CHECK(none.farthest.hops.back().arrives.seconds == 160);
}

TEST_CASE("nothing to call at is driven straight to the end, or not at all") {
  DrawnHops hops;
  hops.table[{0, DrawnHops::kEnd, DrawnHops::kEnd}] = {.lasts_s = 60};
  const auto straight =
      best_order(hops, {.after = {}, .comes_to_an_end = true, .depart = {0}, .fuel = Litres{1}});
  CHECK(std::get<StopOrder>(straight).hops.size() == 1);
  const auto nowhere = best_order(hops, {.after = {}, .depart = {0}, .fuel = Litres{1}});
  CHECK(std::get<StopOrder>(nowhere).hops.empty());
}

TEST_CASE("more stops than can be ordered are a fault of ours") {
  DrawnHops hops;
  CHECK_THROWS_AS(
      (void)best_order(hops,
                       {.after = std::vector<StopSet>(11, 0), .depart = {0}, .fuel = Litres{1}}),
      base::OurFault);
}

}  // namespace rimehaul::search
