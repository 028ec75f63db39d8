#include "app/place.h"

#include <string>

#include "app/question.h"
#include "app/status.h"
#include "card/figures.h"

namespace rimehaul::app {

namespace {

/// Further than this from every trail, a point is taken to be a slip of the pen.
constexpr units::Metres kFurthest{100};

card::TrailPlace place_at(const trails::Network& network, geo::MapPoint point) {
  std::optional<card::TrailPlace> nearest;
  units::Metres away{0};
  for (std::size_t i = 0; i < network.trails.size(); ++i) {
    const geo::Foot foot = network.trails[i].line.nearest(point);
    if (!nearest || foot.away < away) {
      nearest = card::TrailPlace{i, foot.at};
      away = foot.away;
    }
  }
  if (!nearest || !(away <= kFurthest)) {
    throw WrongUsage{
        "no trail lies within " + card::distance_text(kFurthest) +
        " of that --point; the nearest is " +
        (nearest ? network.trails[nearest->trail].name + ", " + card::distance_text(away) + " away"
                 : std::string{"not there"})};
  }
  return *nearest;
}

geo::MapPoint point_of(const PlaceOptions& options) {
  return {units::Metres{options.point_m[0]}, units::Metres{options.point_m[1]}};
}

}  // namespace

card::TrailPlace place_on_trail(const trails::Network& network, const PlaceOptions& options) {
  if (options.point_m.size() == 2) {
    return place_at(network, point_of(options));
  }
  if (!options.trail || !options.at_m) {
    throw WrongUsage{
        "it is not said which place; say --trail NAME --at METRES, or --point EAST,NORTH"};
  }
  const std::size_t trail = trail_named(network, *options.trail);
  const units::Metres length = network.trails[trail].line.length();
  const units::Metres at{*options.at_m};
  if (!(at <= length)) {
    throw WrongUsage{"the trail " + *options.trail + " is only " + card::distance_text(length) +
                     " long; give an --at on it"};
  }
  return {trail, at};
}

MapPlace place_on_map(const trails::Network& network, const PlaceOptions& options) {
  if (options.point_m.size() == 2) {
    return {point_of(options), std::nullopt};
  }
  const card::TrailPlace place = place_on_trail(network, options);
  return {network.trails[place.trail].line.at(place.at), place};
}

}  // namespace rimehaul::app
