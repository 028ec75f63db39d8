#include "search/snow_at_start.h"

namespace rimehaul::search {

std::optional<snow::SnowState> snow_at_start(const passage::Scene& scene, const snow::SnowAt& snow,
                                             const RouteQuestion& question) {
  const trails::Station& start = scene.network.stations[question.stations.front()];
  const std::optional<geo::Height> height = scene.heights.at(start.place);
  return height.has_value() ? snow.at({*height, std::nullopt, question.depart}) : std::nullopt;
}

}  // namespace rimehaul::search
