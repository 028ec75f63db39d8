#include "app/route_gpx.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "card/figures.h"
#include "ports/gdal/gpx.h"
#include "ports/proj/globe.h"

namespace rimehaul::app {

namespace {

std::string description_of(const card::RouteCard& card) {
  std::string text = std::string{"Verdict: "} + passage::words_for(card.verdict);
  if (!card.permitted_by.empty()) {
    text += ", permitted by " + card.permitted_by;
  }
  text += ". Heights in metres above " + card.vertical_datum + ", not above the ellipsoid.";
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

/// The point of the traced route at a chainage; its height is known where both neighbours' are.
card::TracePoint traced_at(const card::RouteCard& card, units::Metres chainage) {
  const auto after = std::ranges::find_if(
      card.trace, [&](const card::TracePoint& traced) { return traced.chainage >= chainage; });
  if (after == card.trace.begin() || after == card.trace.end()) {
    return after == card.trace.end() ? card.trace.back() : card.trace.front();
  }
  const card::TracePoint& to = *after;
  const card::TracePoint& from = *(after - 1);
  const double share = (chainage - from.chainage) / (to.chainage - from.chainage);
  card::TracePoint found{geo::between({from.place, to.place}, share), {}, chainage, to.leg};
  if (from.height && to.height) {
    found.height = *from.height + (*to.height - *from.height) * share;
  }
  return found;
}

/// Turns traced points into those of a file.
class PointWriter {
 public:
  explicit PointWriter(const geo::MapFrame& frame) : globe_{frame} {}

  struct Words {
    std::string name;
    std::string note;
  };
  [[nodiscard]] ports::gdal::GpxPoint written(const card::TracePoint& traced, Words words) const {
    return {.place = globe_.to_globe(traced.place),
            .height = traced.height,
            .name = std::move(words.name),
            .note = std::move(words.note)};
  }

 private:
  ports::proj::Globe globe_;
};

/// Where a leg starts, and what is to be minded at one place or stretch of it.
void add_waypoints(const card::RouteCard& card, const PointWriter& writer,
                   std::vector<ports::gdal::GpxPoint>& waypoints) {
  units::Metres start{0};
  for (const card::CardLeg& leg : card.legs) {
    waypoints.push_back(writer.written(traced_at(card, start), {leg.from, note_of(leg)}));
    const units::Metres whole = leg.span.to - leg.span.from;
    for (const card::Notice& notice : leg.notices) {
      const bool all_along =
          notice.span.from <= units::Metres{0.5} && notice.span.to >= whole - units::Metres{0.5};
      if (!all_along) {
        waypoints.push_back(writer.written(traced_at(card, start + notice.span.from),
                                           {notice.words, card::where_text(notice.span, whole)}));
      }
    }
    start += whole;
  }
  waypoints.push_back(writer.written(card.trace.back(), {card.legs.back().to, "arrival"}));
}

}  // namespace

std::string route_gpx(const card::RouteCard& card, const geo::MapFrame& frame) {
  const PointWriter writer{frame};
  ports::gdal::GpxRoute route;
  route.name = card.title;
  route.description = description_of(card);
  add_waypoints(card, writer, route.waypoints);
  for (const card::TracePoint& traced : card.trace) {
    route.track.push_back(writer.written(traced, {}));
  }
  return ports::gdal::gpx_text(route);
}

}  // namespace rimehaul::app
