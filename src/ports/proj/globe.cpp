#include "ports/proj/globe.h"

#include <proj.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "base/fault.h"

namespace rimehaul::ports::proj {

namespace {

struct DestroyContext {
  void operator()(PJ_CONTEXT* context) const { proj_context_destroy(context); }
};
struct DestroyOperation {
  void operator()(PJ* operation) const { proj_destroy(operation); }
};
using Context = std::unique_ptr<PJ_CONTEXT, DestroyContext>;
using Operation = std::unique_ptr<PJ, DestroyOperation>;

void say_nothing(void* /*unused*/, int /*level*/, const char* /*text*/) {}

base::BadInput no_way(const geo::MapFrame& frame, const char* problem) {
  const std::string name = frame.horizontal_name.empty() ? "the map frame" : frame.horizontal_name;
  return base::BadInput{base::Fault{
      .file = "site.toml",
      .place = "map_frame",
      .problem = name + " " + problem,
      .remedy = "declare a projected map frame whose datum can be brought to WGS 84 accurately"}};
}

Operation horizontal_system(PJ_CONTEXT* context, const geo::MapFrame& frame) {
  Operation whole{proj_create(context, frame.horizontal.c_str())};
  if (!whole || proj_is_crs(whole.get()) == 0) {
    throw no_way(frame, "is no reference system");
  }
  // A height part would bring in height operations, which can lose the datum shift.
  if (proj_get_type(whole.get()) == PJ_TYPE_COMPOUND_CRS) {
    whole.reset(proj_crs_get_sub_crs(context, whole.get(), 0));
  }
  const bool is_bound = whole && proj_get_type(whole.get()) == PJ_TYPE_BOUND_CRS;
  const Operation base{is_bound ? proj_get_source_crs(context, whole.get()) : nullptr};
  const PJ* system = is_bound ? base.get() : whole.get();
  if (system == nullptr || proj_get_type(system) != PJ_TYPE_PROJECTED_CRS) {
    throw no_way(frame, "is no projected reference system");
  }
  return whole;
}

}  // namespace

struct Globe::Handles {
  Context context;
  Operation to_globe;
};

Globe::Globe(const geo::MapFrame& frame) : handles_{std::make_unique<Handles>()} {
  Handles& handles = *handles_;
  handles.context.reset(proj_context_create());
  PJ_CONTEXT* context = handles.context.get();
  proj_context_set_enable_network(context, 0);
  proj_log_func(context, nullptr, say_nothing);
  const Operation map = horizontal_system(context, frame);
  const Operation globe{proj_create(context, "EPSG:4326")};
  if (!globe) {
    throw no_way(frame, "cannot be used: the database of reference systems is missing");
  }
  constexpr std::array<const char*, 2> kOptions{"ALLOW_BALLPARK=NO", nullptr};
  const Operation raw{
      proj_create_crs_to_crs_from_pj(context, map.get(), globe.get(), nullptr, kOptions.data())};
  if (!raw) {
    throw no_way(frame, "has no accurate operation to WGS 84");
  }
  handles.to_globe.reset(proj_normalize_for_visualization(context, raw.get()));
  if (!handles.to_globe) {
    throw no_way(frame, "has no accurate operation to WGS 84");
  }
}

Globe::~Globe() = default;

geo::GlobePoint Globe::to_globe(geo::MapPoint place) const {
  const PJ_COORD map = proj_coord(place.east.value(), place.north.value(), 0, HUGE_VAL);
  const PJ_COORD globe = proj_trans(handles_->to_globe.get(), PJ_FWD, map);
  constexpr double kLost = std::numeric_limits<double>::quiet_NaN();
  if (!(std::isfinite(globe.xy.x) && std::isfinite(globe.xy.y))) {
    return {.latitude_deg = kLost, .longitude_deg = kLost};
  }
  return {.latitude_deg = globe.xy.y, .longitude_deg = globe.xy.x};
}

geo::MapPoint Globe::to_map(geo::GlobePoint place) const {
  const PJ_COORD globe = proj_coord(place.longitude_deg, place.latitude_deg, 0, HUGE_VAL);
  const PJ_COORD map = proj_trans(handles_->to_globe.get(), PJ_INV, globe);
  constexpr double kLost = std::numeric_limits<double>::quiet_NaN();
  if (!(std::isfinite(map.xy.x) && std::isfinite(map.xy.y))) {
    return {units::Metres{kLost}, units::Metres{kLost}};
  }
  return {units::Metres{map.xy.x}, units::Metres{map.xy.y}};
}

double Globe::convergence_deg(geo::MapPoint place) const {
  // The bearing of true north on the map, from a step along the meridian to each side: 1e-4 degrees
  // are some 11 m, over which a meridian bends far less than a rounding of the step shows.
  constexpr double kStepDeg = 1e-4;
  const geo::GlobePoint here = to_globe(place);
  const geo::MapPoint south = to_map({here.latitude_deg - kStepDeg, here.longitude_deg});
  const geo::MapPoint north = to_map({here.latitude_deg + kStepDeg, here.longitude_deg});
  const double turned =
      std::atan2((north.east - south.east).value(), (north.north - south.north).value());
  // Grid bearing of true north is -convergence.
  return -turned * 180.0 / std::numbers::pi;
}

}  // namespace rimehaul::ports::proj
