#include "app/slope_layers.h"

#include <bit>
#include <cmath>

namespace rimehaul::app {

namespace {

using passage::Headings;
using ports::gdal::CellKind;
using ports::gdal::Colour;
using ports::gdal::Overview;

constexpr Colour kClosed{103, 0, 13};
constexpr Colour kOver{215, 48, 39};
constexpr Colour kUnknown{200, 200, 200};
constexpr Colour kPale{237, 248, 233};
constexpr Colour kDeep{0, 90, 50};

/// From pale at 0 to deep at 1.
Colour green(double way) {
  const auto mixed = [way](std::uint8_t a, std::uint8_t b) {
    return static_cast<std::uint8_t>(std::lround(a + way * (b - a)));
  };
  return {mixed(kPale.red, kDeep.red), mixed(kPale.green, kDeep.green),
          mixed(kPale.blue, kDeep.blue)};
}

/// Pale where much is left, deep green up to the allowed share, red beyond.
std::vector<Colour> share_colours(double allowed_share) {
  std::vector<Colour> colours;
  colours.reserve(256);
  const double allowed_percent = allowed_share * 100.0;
  for (int percent = 0; percent < Headings::kClosedPercent; ++percent) {
    colours.push_back(percent <= allowed_percent ? green(percent / allowed_percent) : kOver);
  }
  colours.push_back(kClosed);
  colours.push_back(kUnknown);
  return colours;
}

/// By how many directions are open: dark red for none, then from deep to pale green for all.
std::vector<Colour> direction_colours() {
  std::vector<Colour> colours{kClosed};
  colours.reserve(std::size_t{1} << Headings::kSectors);
  for (unsigned mask = 1; mask < 1U << Headings::kSectors; ++mask) {
    colours.push_back(green(1.0 - std::popcount(mask) / double{Headings::kSectors}));
  }
  return colours;
}

}  // namespace

const std::vector<LayerFacts>& slope_layers() {
  constexpr double kNone = terrain::kNoNumber;
  static const std::vector<LayerFacts> layers{
      {SlopeLayer::slope, "slope", "slope of the ground, Horn's estimate over 3 x 3 cells", "deg",
       CellKind::real_32, kNone, Overview::largest},
      {SlopeLayer::aspect, "aspect",
       "downslope direction, clockwise from grid north; none on level ground", "deg",
       CellKind::real_32, kNone, Overview::first},
      {SlopeLayer::slope_error, "slope-error",
       "one standard deviation of the slope, by the declared error of the heights", "deg",
       CellKind::real_32, kNone, Overview::largest},
      {SlopeLayer::share, "share",
       "the smallest share of the rig's limits over all directions, rounded up; 254: closed, or so "
       "much and more; 255: unknown",
       "percent", CellKind::whole_8, double{Headings::kUnknownPercent}, Overview::largest},
      {SlopeLayer::directions, "directions",
       "bit i is set where all headings within 11.25 deg of i x 22.5 deg, clockwise from grid "
       "north, are open to the rig; 0: closed or unknown",
       "", CellKind::whole_16, std::nullopt, Overview::common_bits},
  };
  return layers;
}

std::vector<std::string> slope_layer_words() {
  std::vector<std::string> words;
  for (const LayerFacts& facts : slope_layers()) {
    words.emplace_back(facts.word);
  }
  return words;
}

std::string file_of(const LayerFacts& facts) {
  return std::string{facts.word} + ".tif";
}

bool is_of_a_rig(SlopeLayer layer) {
  return layer == SlopeLayer::share || layer == SlopeLayer::directions;
}

std::vector<Colour> colours_of(SlopeLayer layer, double allowed_share) {
  switch (layer) {
    case SlopeLayer::share:
      return share_colours(allowed_share);
    case SlopeLayer::directions:
      return direction_colours();
    default:
      return {};
  }
}

}  // namespace rimehaul::app
