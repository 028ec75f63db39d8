// Shares, stands and what binds.
#include <doctest/doctest.h>

#include "base/require.h"
#include "near.h"
#include "passage/finding.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::near;
using units::amount;
using units::count_of;
using units::Metres;

constexpr double kInfinite = std::numeric_limits<double>::infinity();

Finding of_share(double share) {
  return compare(Check::stopping, count_of(share), count_of(1.0));
}

}  // namespace

TEST_CASE("a share is what is asked over what there is") {
  const Finding finding = compare(Check::stopping, amount(Metres{15}), amount(Metres{60}));
  REQUIRE(finding.share);
  CHECK(near(*finding.share, 0.25, 1e-15));
  CHECK(finding.check == Check::stopping);
  CHECK(finding.demand == amount(Metres{15}));
  CHECK(finding.capacity == amount(Metres{60}));
}

TEST_CASE("nothing asked is a share of 0, but only of something") {
  CHECK(compare(Check::stopping, count_of(0.0), count_of(1.0)).share == 0.0);
  CHECK(compare(Check::stopping, count_of(-5.0), count_of(1.0)).share == 0.0);
  CHECK_FALSE(compare(Check::stopping, count_of(0.0), count_of(0.0)).share);
  CHECK_FALSE(compare(Check::stopping, count_of(-5.0), count_of(-1.0)).share);
}

TEST_CASE("what is no finite number closes, on either side") {
  for (const double bad : {kNoNumber, kInfinite, -kInfinite}) {
    for (const Finding& finding : {compare(Check::stopping, count_of(bad), count_of(1.0)),
                                   compare(Check::stopping, count_of(1.0), count_of(bad)),
                                   compare(Check::stopping, count_of(bad), count_of(-1.0))}) {
      CHECK_FALSE(finding.share);
      CHECK_FALSE(finding.missing.empty());
      CHECK(stand_of(finding, 1.0) == Stand::missing);
    }
  }
}

TEST_CASE("a capacity so small that the share overflows closes") {
  const Finding finding = compare(Check::stopping, count_of(1e300), count_of(1e-300));
  CHECK_FALSE(finding.share);
  CHECK(stand_of(finding, 1.0) == Stand::refused);
}

TEST_CASE("the allowed share itself passes, a hair above does not, and NaN never does") {
  CHECK(stand_of(of_share(0.7), 0.7) == Stand::passes);
  CHECK(stand_of(of_share(std::nextafter(0.7, 1.0)), 0.7) == Stand::exceeds);
  CHECK(stand_of(of_share(0.1), kNoNumber) == Stand::exceeds);
  Finding finding = of_share(0.5);
  finding.share = kNoNumber;
  CHECK(stand_of(finding, 0.7) == Stand::missing);
  finding.share = -0.5;
  CHECK(stand_of(finding, 0.7) == Stand::exceeds);
}

TEST_CASE("a decision is asked for only where all else passes") {
  Finding finding = kept(Check::avalanche);
  finding.asks = "to drive near steep ground";
  CHECK(stand_of(finding, 0.7) == Stand::asks);
  finding.share = 0.8;
  CHECK(stand_of(finding, 0.7) == Stand::exceeds);
}

TEST_CASE("a fresh finding, of which nothing is known, passes nothing") {
  CHECK(stand_of(Finding{}, 1.0) == Stand::missing);
}

TEST_CASE("unknown and refused close even when nobody says why") {
  CHECK(stand_of(unknown(Check::zone, ""), 1.0) == Stand::missing);
  CHECK(stand_of(refusal(Check::zone, ""), 1.0) == Stand::refused);
  CHECK(stand_of(kept(Check::zone), 0.0) == Stand::passes);
}

TEST_CASE("missing binds before refused, refused before no share, then the larger share") {
  const Finding missing = unknown(Check::zone, "what");
  const Finding refused = refusal(Check::zone, "who");
  Finding no_share = kept(Check::zone);
  no_share.share.reset();
  const Finding large = of_share(0.9);
  const Finding small = of_share(0.2);
  const Finding* order[] = {&missing, &refused, &no_share, &large, &small};
  for (std::size_t i = 0; i < std::size(order); ++i) {
    for (std::size_t j = 0; j < std::size(order); ++j) {
      CHECK(binds_before(*order[i], *order[j]) == (i < j));
    }
  }
}

TEST_CASE("of equal shares a decision asked for binds, then the earlier place") {
  Finding asks = kept(Check::avalanche);
  asks.asks = "somebody";
  asks.at = Metres{50};
  Finding early = kept(Check::zone);
  early.at = Metres{10};
  Finding late = kept(Check::zone);
  late.at = Metres{20};
  CHECK(binds_before(asks, early));
  CHECK(binds_before(early, late));
  CHECK_FALSE(binds_before(late, early));
  CHECK_FALSE(binds_before(early, early));
}

TEST_CASE(
    "inputs stand in the order in which they were added, and no more than there is room for") {
  Inputs inputs;
  inputs.add("a", count_of(1.0), Origin::grip).add("b", count_of(2.0), Origin::rules);
  REQUIRE(inputs.all().size() == 2);
  CHECK(inputs.all()[0].name == "a");
  CHECK(inputs.all()[1].name == "b");
  CHECK(inputs.all()[1].origin == Origin::rules);
  while (inputs.all().size() < Inputs::kMost) {
    inputs.add("c", count_of(3.0), Origin::rules);
  }
  CHECK_THROWS_AS(inputs.add("d", count_of(4.0), Origin::rules), base::OurFault);
}

TEST_CASE("numbers tell more than none where neither binds, wherever the two are") {
  Finding numbers = held_to(Check::alone, amount(Metres{80}), amount(Metres{100}), "too long");
  numbers.at = Metres{90};
  const Finding none = kept(Check::alone);
  CHECK(tells_more(numbers, none));
  CHECK_FALSE(tells_more(none, numbers));
  CHECK_FALSE(tells_more(numbers, numbers));
  CHECK_FALSE(tells_more(none, none));
}

TEST_CASE("numbers do not tell more than what binds before them, or after them") {
  const Finding large = of_share(0.9);
  const Finding small = of_share(0.2);
  Finding without_numbers = kept(Check::stopping);
  without_numbers.share = 0.5;
  CHECK_FALSE(tells_more(large, without_numbers));
  CHECK_FALSE(tells_more(small, without_numbers));
  without_numbers.share = 0.2;
  CHECK(tells_more(small, without_numbers));
  CHECK_FALSE(tells_more(small, unknown(Check::stopping, "what")));
  CHECK_FALSE(tells_more(small, refusal(Check::stopping, "who")));
}

}  // namespace rimehaul::passage
