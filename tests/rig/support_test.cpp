// Support polygons: tip angles by closed forms of rigid bodies.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "near.h"
#include "rig/rig.h"

namespace rimehaul::rig {

namespace {

using testing::near;
using testing::near_degrees;
using units::Metres;

std::vector<SupportPoint> corners(const std::vector<std::pair<double, double>>& points_m) {
  std::vector<SupportPoint> polygon;
  for (const auto& [forward_m, left_m] : points_m) {
    polygon.push_back({Metres{forward_m}, Metres{left_m}});
  }
  return polygon;
}

BodyPoint at(double forward_m, double left_m, double up_m) {
  return {Metres{forward_m}, Metres{left_m}, Metres{up_m}};
}

/// Tracks 2 m long, 1 m over their outer edges.
const std::vector<SupportPoint> kTracks = corners({{0, -.5}, {2, -.5}, {2, .5}, {0, .5}});

/// Tip angle when the ground falls away to one side only: over each edge on that side the tangent
/// works along the edge's normal, and the first edge to give way counts.
double side_tip_deg(const std::vector<TipEdge>& edges, double side) {
  double least = std::numeric_limits<double>::infinity();
  for (const TipEdge& edge : edges) {
    const double along_normal = edge.outward.left * side;
    if (along_normal > 0) {
      least = std::min(least, edge.static_tip.ratio() / along_normal);
    }
  }
  return std::atan(least) * 180.0 / std::numbers::pi;
}

}  // namespace

TEST_CASE("a track stance of 1 m under a centre of gravity at 0.7 m tips at 35.538 degrees") {
  // Static stability factor t / (2 h) (NHTSA, rigid body): 1.0 / 1.4 = 0.7143.
  const auto edges = tip_edges(kTracks, at(1, 0, 0.7));
  REQUIRE(edges.size() == 4);
  CHECK(near(edges[0].static_tip.ratio(), 1.0 / 1.4, 1e-12));
  CHECK(near_degrees(edges[0].static_tip, 35.538, 0.0005));
  CHECK(near_degrees(edges[2].static_tip, 35.538, 0.0005));
}

TEST_CASE("a load 5 cm off the centre line brings the near side down to 32.735 degrees") {
  // tan = (t / 2 - e) / h, rigid body.
  const auto edges = tip_edges(kTracks, at(1, 0.05, 0.7));
  CHECK(near_degrees(edges[2].static_tip, 32.735, 0.0005));
  CHECK(edges[0].static_tip > edges[2].static_tip);
}

TEST_CASE("150 kg at 1.1 m on 450 kg at 0.55 m takes the tip angle from 42.274 to 36.027 degrees") {
  CHECK(near_degrees(tip_edges(kTracks, at(1, 0, 0.55))[0].static_tip, 42.274, 0.0005));
  CHECK(near_degrees(tip_edges(kTracks, at(1, 0, 0.6875))[0].static_tip, 36.027, 0.0005));
}

TEST_CASE("skis wider than the track: tips sideways at 26.885 degrees, not at the ski stance's") {
  // Skis at (1.3, +-0.5), rear of the track at (-0.9, +-0.25), centre of gravity (-0.2, 0, 0.65).
  const auto polygon = corners({{-.9, -.25}, {1.3, -.5}, {1.3, .5}, {-.9, .25}});
  const auto edges = tip_edges(polygon, at(-0.2, 0, 0.65));
  // Half-width abreast of the centre of gravity, by the line through both corners:
  // 0.25 + 0.25 * (0.7 / 2.2) = 0.329545.
  const double half_width_m = 0.25 + 0.25 * 0.7 / 2.2;
  CHECK(near(half_width_m, 0.329545, 5e-7));
  // The distance square to the edge is shorter: half-width * cos(edge's angle to the centre line).
  const TipEdge& left = edges[2];
  const double square_m = half_width_m * 2.2 / std::hypot(2.2, 0.25);
  CHECK(near(left.inside, Metres{square_m}, Metres{1e-12}));
  CHECK(left.inside < Metres{half_width_m});
  // Tipping about the edge uses the distance square to it, with the demand resolved along its
  // normal; for ground that falls away sideways only, the two ways of reckoning agree.
  CHECK(near(left.inside.value() / left.outward.left, half_width_m, 1e-12));
  CHECK(near(side_tip_deg(edges, 1.0), 26.885, 0.0005));
  CHECK(near(side_tip_deg(edges, -1.0), 26.885, 0.0005));
  CHECK(side_tip_deg(edges, 1.0) < 37.57);
}

TEST_CASE("fore and aft the ends of the ground contact count") {
  const auto edges = tip_edges(kTracks, at(0.5, 0, 0.5));
  CHECK(near(edges[1].inside, Metres{1.5}, Metres{1e-12}));
  CHECK(near(edges[3].inside, Metres{0.5}, Metres{1e-12}));
  CHECK(near_degrees(edges[3].static_tip, 45.0, 1e-9));
}

TEST_CASE("a centre of gravity outside the polygon stands inside one edge by less than nothing") {
  const auto on_edge = tip_edges(kTracks, at(1, 0.5, 0.7));
  CHECK(near(on_edge[2].inside, Metres{0}, Metres{1e-12}));
  const auto outside = tip_edges(kTracks, at(1, 0.51, 0.7));
  CHECK(outside[2].inside < Metres{0});
  CHECK(outside[2].static_tip.ratio() < 0);
}

TEST_CASE("turning the machine round changes no tip angle") {
  const auto polygon = corners({{-.9, -.25}, {1.3, -.5}, {1.3, .5}, {-.9, .25}});
  const auto turned = corners({{.9, .25}, {-1.3, .5}, {-1.3, -.5}, {.9, -.25}});
  const auto edges = tip_edges(polygon, at(-0.2, 0.03, 0.65));
  const auto turned_edges = tip_edges(turned, at(0.2, -0.03, 0.65));
  for (std::size_t edge = 0; edge < edges.size(); ++edge) {
    CAPTURE(edge);
    CHECK(near(edges[edge].inside, turned_edges[edge].inside, Metres{1e-12}));
  }
}

TEST_CASE("what cannot be reckoned is no number: no height, an edge without length, NaN") {
  CHECK(std::isnan(tip_edges(kTracks, at(1, 0, 0))[0].static_tip.ratio()));
  CHECK(std::isnan(tip_edges(kTracks, at(1, 0, -0.1))[0].static_tip.ratio()));
  CHECK(std::isnan(tip_edges(kTracks, at(1, 0, std::nan("")))[0].static_tip.ratio()));
  CHECK(std::isnan(tip_edges(kTracks, at(1, std::nan(""), 0.7))[0].static_tip.ratio()));
  const auto doubled = corners({{0, -.5}, {0, -.5}, {2, 0}, {0, .5}});
  CHECK(std::isnan(tip_edges(doubled, at(1, 0, 0.7))[0].static_tip.ratio()));
}

TEST_CASE("two corners are no polygon, so there is no edge to stand inside") {
  CHECK(tip_edges(corners({{0, -.5}, {2, -.5}}), at(1, 0, 0.7)).empty());
}

TEST_CASE("a trailer whose hitch rolls freely stands on a triangle, else on its runners") {
  Trailer trailer;
  trailer.gauge = Metres{1.0};
  trailer.contact_length = Metres{1.8};
  trailer.drawbar_length = Metres{2.1};
  trailer.hitch_free_to_roll = true;
  const auto triangle = support_of(trailer);
  REQUIRE(triangle.size() == 3);
  // Hitch eye 0.9 + 2.1 = 3.0 m ahead; abreast of 0.9 m the triangle is 0.5 * (3 - 0.9) / 3 wide.
  const auto edges = tip_edges(triangle, at(0.9, 0, 0.5));
  CHECK(near(edges[1].inside.value() / edges[1].outward.left, 0.35, 1e-12));
  CHECK(near(side_tip_deg(edges, 1.0), std::atan(0.7) * 180.0 / std::numbers::pi, 1e-9));

  trailer.hitch_free_to_roll = false;
  const auto rectangle = support_of(trailer);
  REQUIRE(rectangle.size() == 4);
  const auto wide_edges = tip_edges(rectangle, at(0.9, 0, 0.5));
  CHECK(near(side_tip_deg(wide_edges, 1.0), 45.0, 1e-9));
}

TEST_CASE("both trailer polygons run counter-clockwise, so that inside is above nothing") {
  Trailer trailer;
  trailer.gauge = Metres{1.0};
  trailer.contact_length = Metres{1.8};
  trailer.drawbar_length = Metres{2.1};
  for (const bool rolls : {true, false}) {
    trailer.hitch_free_to_roll = rolls;
    for (const TipEdge& edge : tip_edges(support_of(trailer), at(0.9, 0, 0.5))) {
      CHECK(edge.inside > Metres{0});
    }
  }
}

TEST_CASE("every standing has its own words") {
  CHECK(std::string{words_for(Standing::maker)} == "maker");
  CHECK(std::string{words_for(Standing::published)} == "published");
  CHECK(std::string{words_for(Standing::site_measured)} == "measured by the site");
  CHECK(std::string{words_for(Standing::site_limit)} == "limit set by the site");
  CHECK(std::string{words_for(Standing::estimate)} == "estimate");
}

}  // namespace rimehaul::rig
