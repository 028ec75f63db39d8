#include "app/route_gpx.h"

#include "card/figures.h"
#include "ports/gdal/gpx.h"
#include "ports/proj/globe.h"

namespace rimehaul::app {

namespace {

std::string description_of(const card::RouteCard& card) {
  std::string text =
      "Heights in metres above " + card.vertical_datum + ", not above the ellipsoid.";
  for (const std::string& caution : card.cautions) {
    text += " " + caution;
  }
  return text;
}

std::string note_of(const card::CardLeg& leg) {
  return "leg " + std::to_string(leg.number) + ", " + leg.trail + ": " +
         card::distance_text(leg.length) + ", at most " + card::speed_limit_text(leg.speed) + ", " +
         leg.binding_check + " " + card::share_text(leg.binding_share) + " of the limit";
}

ports::gdal::GpxPoint point_of(const card::TracePoint& traced, const ports::proj::Globe& globe) {
  return {.place = globe.to_globe(traced.place), .height = traced.height, .name = "", .note = ""};
}

}  // namespace

void write_route_gpx(const std::string& path, const card::RouteCard& card,
                     const geo::MapFrame& frame) {
  const ports::proj::Globe globe{frame};
  ports::gdal::GpxRoute route;
  route.name = card.title;
  route.description = description_of(card);
  int leg = -1;
  for (const card::TracePoint& traced : card.trace) {
    ports::gdal::GpxPoint point = point_of(traced, globe);
    route.track.push_back(point);
    // Where legs join, the shared point is the last of the leg before.
    const bool starts_leg = leg < 0;
    const bool ends_leg = &traced == &card.trace.back() || (&traced + 1)->leg != traced.leg;
    if (starts_leg) {
      leg = traced.leg;
      point.name = card.legs.front().from;
      point.note = note_of(card.legs.front());
      route.waypoints.push_back(point);
    } else if (ends_leg) {
      const auto index = static_cast<std::size_t>(traced.leg);
      point.name = card.legs[index].to;
      point.note = index + 1 < card.legs.size() ? note_of(card.legs[index + 1]) : "arrival";
      route.waypoints.push_back(point);
    }
  }
  ports::gdal::write_gpx(path, route);
}

}  // namespace rimehaul::app
