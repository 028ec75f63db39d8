// Two-way single lanes: the longest run with nowhere to pass.
#include "passage/single_lane.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

using testing::place;
using trails::MarkKind;
using units::Metres;

/// A straight single lane of 1000 m, both ways.
trails::Network lane() {
  trails::Network network;
  network.trails = {testing::plain_trail("Lane", {place(0, 0), place(1000, 0)})};
  network.trails[0].lanes = 1;
  return network;
}

void mark(trails::Network& network, MarkKind kind, double from_m, double to_m) {
  trails::Mark mark;
  mark.name = "M" + std::to_string(network.marks.size());
  mark.kind = kind;
  mark.trail = "Lane";
  mark.span = {Metres{from_m}, Metres{to_m}};
  network.marks.push_back(mark);
}

Stretch part(const trails::Network& network, double from_m, double to_m) {
  const geo::Span span{Metres{from_m}, Metres{to_m}};
  return {.trail = 0,
          .span = span,
          .way = trails::Way::as_drawn,
          .line = network.trails[0].line.part(span)};
}

double longest(const trails::Network& network, double from_m, double to_m) {
  return longest_run_without_passing(network, part(network, from_m, to_m)).value();
}

TEST_CASE("a run lasts from one passing place to the next, the trail's ends counted") {
  trails::Network network = lane();
  CHECK(longest(network, 0, 1000) == 1000);
  mark(network, MarkKind::passing_place, 300, 300);
  CHECK(longest(network, 0, 1000) == 700);
  CHECK(longest(network, 0, 300) == 300);
  CHECK(longest(network, 0, 0.5) == 300);
  mark(network, MarkKind::turning_room, 700, 710);
  CHECK(longest(network, 0, 1000) == 400);
  CHECK(longest(network, 720, 730) == 290);
  CHECK(longest(network, 300, 700) == 400);
}

TEST_CASE("within a radio gate one rig is let in at a time, so its length counts for nothing") {
  trails::Network network = lane();
  mark(network, MarkKind::radio_gate, 100, 900);
  CHECK(longest(network, 0, 1000) == 100);
  CHECK(longest(network, 200, 800) == 0);
  mark(network, MarkKind::passing_place, 500, 500);
  CHECK(longest(network, 0, 1000) == 100);
}

TEST_CASE("the page's lane: runs of 300 m, 300 m and 100 m") {
  trails::Network network = lane();
  mark(network, MarkKind::passing_place, 300, 300);
  mark(network, MarkKind::radio_gate, 600, 900);
  CHECK(longest(network, 0, 500) == 300);
  CHECK(longest(network, 310, 590) == 300);
  CHECK(longest(network, 910, 1000) == 100);
}

TEST_CASE("other marks, other trails' marks and places that are no numbers let nobody pass") {
  trails::Network network = lane();
  mark(network, MarkKind::gate, 500, 500);
  mark(network, MarkKind::passing_place, std::nan(""), std::nan(""));
  mark(network, MarkKind::passing_place, 500, std::nan(""));
  mark(network, MarkKind::passing_place, std::nan(""), 500);
  mark(network, MarkKind::passing_place, 500, std::numeric_limits<double>::infinity());
  mark(network, MarkKind::passing_place, 400, 400);
  network.marks.back().trail = "Other Lane";
  CHECK(longest(network, 0, 1000) == 1000);
}

TEST_CASE("one-way trails and wider ones have no such runs; unknown lanes count as one") {
  trails::Network network = lane();
  network.trails[0].direction = trails::AllowedDirection::forward;
  CHECK(longest(network, 0, 1000) == 0);
  network.trails[0].direction.reset();
  network.trails[0].lanes.reset();
  CHECK(longest(network, 0, 1000) == 1000);
  network.trails[0].lanes = 2;
  CHECK(longest(network, 0, 1000) == 0);
}

TEST_CASE("the longest run that the rules allow passes, a hair more is refused") {
  const trails::Network network = lane();
  Rules rules = default_rules();
  const auto stand = [&] {
    return stand_of(judge_single_lane(network, part(network, 0, 1000), rules), 0.7);
  };
  CHECK(stand() == Stand::passes);
  rules.longest_single_lane = Metres{1000};
  CHECK(stand() == Stand::passes);
  rules.longest_single_lane = Metres{999.999};
  CHECK(stand() == Stand::refused);
  rules.longest_single_lane = Metres{std::nan("")};
  CHECK(stand() == Stand::refused);
}

}  // namespace

}  // namespace rimehaul::passage
