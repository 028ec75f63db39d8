// Lines, stations, zones and marks of any shape that readers let through: the network made of them
// is whole.
#include "fuzz/expect.h"
#include "ports/geos/noding.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using units::Metres;

/// Numbers taken from the input one after the other; 0 when it has ended.
class Numbers {
 public:
  Numbers(const std::uint8_t* bytes, std::size_t size) : bytes_{bytes, size} {}

  std::uint8_t next() {
    if (bytes_.empty()) {
      return 0;
    }
    const std::uint8_t first = bytes_.front();
    bytes_ = bytes_.subspan(1);
    return first;
  }
  std::size_t up_to(std::size_t most) { return next() % (most + 1); }

 private:
  std::span<const std::uint8_t> bytes_;
};

/// How far apart the places are: some inputs lie within the snapping tolerance, others far beyond.
struct Raster {
  Metres step;

  [[nodiscard]] geo::MapPoint place(Numbers& numbers) const {
    const Metres east = step * numbers.next();
    const Metres north = step * numbers.next();
    return {Metres{500'000} + east, Metres{5'100'000} + north};
  }
};

Raster raster_of(std::uint8_t choice) {
  constexpr double kSteps[] = {10.0, 1.0, 0.1, 0.001, 100.0, 7.3};
  return {Metres{kSteps[choice % 6]}};
}

/// Readers refuse lines without two points a millimetre apart.
bool is_a_line(const std::vector<geo::MapPoint>& points) {
  for (const geo::MapPoint point : points) {
    if (geo::distance(point, points.front()) > Metres{0.001}) {
      return true;
    }
  }
  return false;
}

void add_trail(Numbers& numbers, const Raster& raster, ports::geos::NetworkParts& parts) {
  std::vector<geo::MapPoint> points;
  const std::size_t count = 2 + numbers.up_to(6);
  for (std::size_t i = 0; i < count; ++i) {
    points.push_back(raster.place(numbers));
  }
  if (!is_a_line(points)) {
    return;
  }
  const std::string name = "T" + std::to_string(numbers.up_to(3) == 3 ? 0 : parts.trails.size());
  parts.trails.push_back({.name = name,
                          .line = geo::Polyline{points},
                          .direction = {},
                          .width = {},
                          .lanes = {},
                          .groomed = {},
                          .shared_with_skiers = {},
                          .hours = {},
                          .line_error = {},
                          .sight = {},
                          .marker_spacing = {},
                          .file = "trails.geojson"});
}

void add_mark(Numbers& numbers, ports::geos::NetworkParts& parts) {
  if (parts.trails.empty()) {
    return;
  }
  const trails::Trail& trail = parts.trails[numbers.up_to(parts.trails.size() - 1)];
  const double one = numbers.next() / 255.0;
  const double other = numbers.next() / 255.0;
  const Metres length = trail.line.length();
  parts.marks.push_back(
      {.name = "M",
       .kind = numbers.next() % 2 == 0 ? trails::MarkKind::bridge : trails::MarkKind::gate,
       .trail = trail.name,
       .span = {length * std::min(one, other), length * std::max(one, other)},
       .survey = {},
       .most_mass = {},
       .room = {}});
}

void add_zone(Numbers& numbers, const Raster& raster, ports::geos::NetworkParts& parts) {
  std::vector<geo::MapPoint> ring;
  const std::size_t corners = 3 + numbers.up_to(5);
  for (std::size_t i = 0; i < corners; ++i) {
    ring.push_back(raster.place(numbers));
  }
  ring.push_back(ring.front());
  parts.zones.push_back(
      {.name = "Z" + std::to_string(parts.zones.size()),
       .kind = numbers.next() % 2 == 0 ? trails::ZoneKind::forbidden : trails::ZoneKind::runout,
       .region = {{ring}},
       .speed = {}});
}

ports::geos::NetworkParts parts_of(Numbers& numbers) {
  const Raster raster = raster_of(numbers.next());
  ports::geos::NetworkParts parts;
  const std::size_t trail_count = 1 + numbers.up_to(7);
  for (std::size_t i = 0; i < trail_count; ++i) {
    add_trail(numbers, raster, parts);
  }
  const std::size_t station_count = numbers.up_to(4);
  for (std::size_t i = 0; i < station_count; ++i) {
    parts.stations.push_back({.name = "S" + std::to_string(i),
                              .kind = trails::StationKind::hut,
                              .place = raster.place(numbers),
                              .turning_radius = {}});
  }
  const std::size_t mark_count = numbers.up_to(3);
  for (std::size_t i = 0; i < mark_count; ++i) {
    add_mark(numbers, parts);
  }
  const std::size_t zone_count = numbers.up_to(2);
  for (std::size_t i = 0; i < zone_count; ++i) {
    add_zone(numbers, raster, parts);
  }
  return parts;
}

/// A leg and the same stretch the other way.
struct Pair {
  const trails::Leg& drawn;
  const trails::Leg& against;
};

void look_at_pair(const trails::Network& network, const Pair& pair) {
  const auto& [drawn, against] = pair;
  expect(drawn.way == trails::Way::as_drawn && against.way == trails::Way::against,
         "legs come in pairs");
  expect(drawn.trail == against.trail && drawn.span == against.span, "a pair is one stretch");
  expect(drawn.from == against.to && drawn.to == against.from, "a pair joins the same junctions");
  expect(drawn.trail < network.trails.size(), "a leg has its trail");
  expect(drawn.span.from < drawn.span.to, "a leg has a length");
  for (const trails::Leg* leg : {&drawn, &against}) {
    const auto from = static_cast<std::size_t>(leg->from);
    const auto to = static_cast<std::size_t>(leg->to);
    expect(from < network.junctions.size() && to < network.junctions.size(),
           "a leg's ends are there");
    const auto points = leg->line.points();
    constexpr Metres kMillimetre{0.001};
    expect(geo::distance(points.front(), network.junctions[from].place) <= kMillimetre,
           "a leg begins at its junction");
    expect(geo::distance(points.back(), network.junctions[to].place) <= kMillimetre,
           "a leg ends at its junction");
    for (const geo::MapPoint point : points) {
      fuzz::expect_on_map(point);
    }
  }
}

/// Every metre of a trail is driven on one leg each way.
void look_at_trail(const trails::Network& network, std::size_t trail) {
  Metres reached{0};
  for (const trails::Leg& leg : network.legs) {
    if (leg.trail == trail && leg.way == trails::Way::as_drawn) {
      expect(leg.span.from == reached, "a leg begins where the one before ends");
      reached = leg.span.to;
    }
  }
  expect(std::abs((reached - network.trails[trail].line.length()).value()) <= 0.001,
         "legs cover their trail");
}

void look_at(const trails::Network& network, bool /*has_fault*/) {
  expect(network.legs.size() % 2 == 0, "legs come in pairs");
  for (std::size_t i = 0; i < network.legs.size(); i += 2) {
    look_at_pair(network, {network.legs[i], network.legs[i + 1]});
  }
  for (std::size_t i = 0; i < network.trails.size(); ++i) {
    look_at_trail(network, i);
  }
  for (const trails::Mark& mark : network.marks) {
    expect(mark.span.from <= mark.span.to, "a mark ends after it begins");
    fuzz::expect_finite(mark.span.to.value(), "a mark ends");
  }
  for (const trails::Zone& zone : network.zones) {
    expect(!zone.region.rings.empty(), "a zone has an outline");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  Numbers numbers{bytes, size};
  constexpr double kSnaps[] = {2.0, 0.0, 0.001, 20.0};
  const Metres snap{kSnaps[numbers.next() % 4]};
  const ports::geos::NetworkParts parts = parts_of(numbers);
  fuzz::try_to_read([&] { return ports::geos::node_network(parts, snap); }, look_at);
  return 0;
}
