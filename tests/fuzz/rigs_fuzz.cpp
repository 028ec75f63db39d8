// rigs.toml of any bytes: every rig that passes can be weighed, and stands within its ranges.
#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/toml/rig_sheets.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_finite;
using fuzz::expect_within;

void look_at_rating(const std::optional<rig::Rating>& rating) {
  if (rating) {
    expect(rating->steepest > units::Slope::from_ratio(0), "a rating is above 0");
    expect(rating->steepest <= units::Slope::from_degrees(60), "a rating is at most 60 degrees");
    fuzz::expect_name(rating->provenance.source);
  }
}

void look_at_ratings(const rig::SlopeRatings& ratings) {
  look_at_rating(ratings.climb);
  look_at_rating(ratings.descent);
  look_at_rating(ratings.cross);
}

void look_at_balance(const rig::Balance& balance) {
  expect_finite(balance.mass.value(), "a mass");
  expect_finite(balance.centre.forward.value(), "a centre of gravity, forward");
  expect_finite(balance.centre.left.value(), "a centre of gravity, left");
  expect_within(balance.centre.up.value(), 0, 5, "a centre of gravity, up");
}

void look_at_carrier(const rig::Carrier& carrier) {
  fuzz::expect_name(carrier.name);
  expect(carrier.empty.mass > units::Kilograms{0}, "a carrier has a mass");
  expect(carrier.support.size() >= 3 && carrier.support.size() <= 12, "3 to 12 corners");
  expect(carrier.gauge <= carrier.overall_width, "a gauge within the width");
  expect(carrier.track_weight_share > 0, "some weight on the tracks");
  expect_within(carrier.track_weight_share, 0, 1, "the share of weight on the tracks");
  expect(carrier.tank > units::Litres{0}, "a tank");
  expect_within(carrier.brake_force.value(), 0, 1e6, "the brakes");
  look_at_ratings(carrier.solo_empty);
  look_at_ratings(carrier.solo_loaded);
  look_at_ratings(carrier.towing);
}

void look_at(const std::vector<rig::Rig>& rigs, bool /*has_fault*/) {
  for (const rig::Rig& rig : rigs) {
    fuzz::expect_name(rig.name);
    fuzz::expect_name(rig.driver_level);
    look_at_carrier(rig.carrier);
    const rig::Weighed weighed = rig::weigh(rig);
    look_at_balance(weighed.carrier);
    if (rig.trailer) {
      look_at_balance(weighed.trailer);
      expect_within(rig.trailer->tongue_share, 0, 0.5, "the share on the hitch");
    }
    for (const rig::TipEdge& edge : rig::tip_edges(rig.carrier.support, weighed.carrier.centre)) {
      expect_finite(edge.outward.left, "an edge of the ground contact has a direction");
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  folder.write("rigs.toml", fuzz::text_of(bytes, size));
  fuzz::try_to_read(
      [] {
        return ports::toml::read_rigs({folder.file("rigs.toml"), "rigs.toml"});
      },
      look_at);
  return 0;
}
