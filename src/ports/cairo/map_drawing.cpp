#include "ports/cairo/map_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "ports/cairo/map_key.h"
#include "ports/cairo/map_labels.h"
#include "ports/cairo/way_line.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kPointsPerMetre = 72.0 / 0.0254;

/// From the map to the page.
class OnPaper {
 public:
  OnPaper(const card::MapView& map, const Box& box)
      : upper_left_{map.frame.upper_left}, box_{box}, per_metre_{kPointsPerMetre / map.scale} {}

  [[nodiscard]] Spot spot(geo::MapPoint place) const {
    return {box_.left_pt + (place.east - upper_left_.east).value() * per_metre_,
            box_.top_pt + (upper_left_.north - place.north).value() * per_metre_};
  }
  [[nodiscard]] std::vector<Spot> spots(const std::vector<geo::MapPoint>& places) const {
    std::vector<Spot> spots;
    spots.reserve(places.size());
    std::ranges::transform(places, std::back_inserter(spots),
                           [&](geo::MapPoint place) { return spot(place); });
    return spots;
  }
  [[nodiscard]] double length_pt(double metres) const { return metres * per_metre_; }

 private:
  geo::MapPoint upper_left_;
  Box box_;
  double per_metre_;
};

/// Pale: level ground is almost white, and no shade is darker than a light grey. What nobody knows
/// is chequered.
unsigned char grey_of(double light, terrain::PixelIndex pixel) {
  if (!(light >= 0.0)) {
    return (pixel.row + pixel.column) % 2 != 0 ? 190 : 225;
  }
  const double level = std::numbers::sqrt2 / 2.0;
  return static_cast<unsigned char>(std::lround(std::min(145.0 + 105.0 * light / level, 255.0)));
}

void draw_light(Canvas& canvas, const OnPaper& paper, const card::MapView& map) {
  if (map.light.empty()) {
    return;
  }
  const terrain::ReliefFrame& frame = map.light_frame;
  GreyPicture picture{static_cast<int>(frame.columns), static_cast<int>(frame.rows), {}};
  picture.greys.reserve(map.light.size());
  for (std::size_t i = 0; i < map.light.size(); ++i) {
    const auto index = static_cast<std::int64_t>(i);
    picture.greys.push_back(grey_of(map.light[i], {index % frame.columns, index / frame.columns}));
  }
  const Spot corner = paper.spot(frame.upper_left);
  const double pixel_pt = paper.length_pt(frame.pixel.value());
  canvas.picture(picture, {corner.x_pt, corner.y_pt, pixel_pt * static_cast<double>(frame.columns),
                           pixel_pt * static_cast<double>(frame.rows)});
}

/// The place at a part of a line's length on paper.
Spot spot_along(const std::vector<Spot>& spots, double part) {
  double whole = 0.0;
  for (std::size_t i = 1; i < spots.size(); ++i) {
    whole += std::hypot(spots[i].x_pt - spots[i - 1].x_pt, spots[i].y_pt - spots[i - 1].y_pt);
  }
  double left = whole * part;
  for (std::size_t i = 1; i < spots.size(); ++i) {
    const double x = spots[i].x_pt - spots[i - 1].x_pt;
    const double y = spots[i].y_pt - spots[i - 1].y_pt;
    const double length = std::hypot(x, y);
    if (left <= length && length > 0.0) {
      return {spots[i - 1].x_pt + x * left / length, spots[i - 1].y_pt + y * left / length};
    }
    left -= length;
  }
  return spots.back();
}

void draw_number(Canvas& canvas, Spot middle, int number) {
  constexpr double kRadius_pt = 6.6;
  canvas.disc(middle, kRadius_pt, kPaper, {.width_pt = 1.1, .colour = kInk});
  const Lettering lettering{.size_pt = 8, .weight = Weight::bold, .align = Align::centre};
  const std::string text = std::to_string(number);
  const double height = canvas.height_of({text, lettering, 2 * kRadius_pt});
  canvas.write({middle.x_pt - kRadius_pt, middle.y_pt - height / 2},
               {text, lettering, 2 * kRadius_pt});
}

void draw_ways(Canvas& canvas, const OnPaper& paper, const card::MapView& map) {
  for (const card::MapWay& way : map.ways) {
    const auto spots = paper.spots(way.points);
    if (way.band) {
      draw_share(canvas, spots, {*way.band, way.share, {map.allowed_share.value_or(0.0)}});
      continue;
    }
    if (!way.verdict) {
      canvas.line(spots, {.width_pt = 0.9, .colour = kQuiet});
      continue;
    }
    draw_way(canvas, spots, way.verdict);
  }
}

/// Each number on its way, as near to the middle as there is room; else beside it, tied to it by a
/// thin line.
void draw_numbers(Canvas& canvas, const OnPaper& paper, const card::MapView& map, LabelRoom& room) {
  constexpr LabelSize kNumber{15.0, 15.0};
  constexpr double kFarthest_pt = 90.0;
  for (const card::MapWay& way : map.ways) {
    if (way.number == 0) {
      continue;
    }
    const auto spots = paper.spots(way.points);
    const Spot middle = spot_along(spots, 0.5);
    std::optional<Spot> at;
    for (const double part : {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82}) {
      const Spot here = spot_along(spots, part);
      if (!at && room.take_if_free(box_around(here, kNumber))) {
        at = here;
      }
    }
    if (!at) {
      const auto beside = room.place_beside(middle, kNumber, kFarthest_pt);
      at = beside ? middle_of(*beside) : middle;
      canvas.line({middle, *at}, {.width_pt = 0.8});
    }
    draw_number(canvas, *at, way.number);
  }
}

void write_name(Canvas& canvas, LabelRoom& room, Spot beside, const std::string& name) {
  const Lettering lettering{.size_pt = kSmallest_pt};
  const LabelSize size{canvas.width_of(name, lettering) + 2,
                       canvas.height_of({name, lettering, 1000}) - 1};
  if (const auto box = room.place_beside(beside, size)) {
    canvas.label({box->left_pt + box->width_pt / 2, box->top_pt + box->height_pt / 2}, name,
                 lettering);
  }
}

void draw_symbols(Canvas& canvas, const OnPaper& paper, const card::MapView& map, LabelRoom& room) {
  for (const card::MapPlace& place : map.places) {
    const Spot at = paper.spot(place.place);
    draw_place(canvas, at, place.kind);
    room.take({at.x_pt - 4, at.y_pt - 4, 8, 8});
  }
}

void draw_names(Canvas& canvas, const OnPaper& paper, const card::MapView& map, LabelRoom& room) {
  for (const card::MapPlace& place : map.places) {
    if (place.kind == card::PlaceKind::station || place.kind == card::PlaceKind::refuge) {
      write_name(canvas, room, paper.spot(place.place), place.name);
    }
  }
}

/// Names of trails beside their middles, where a map tells shares and there is room.
void draw_trail_names(Canvas& canvas, const OnPaper& paper, const card::MapView& map,
                      LabelRoom& room) {
  for (const card::MapWay& way : map.ways) {
    if (map.allowed_share && !way.verdict && !way.band) {
      write_name(canvas, room, spot_along(paper.spots(way.points), 0.5), way.name);
    }
  }
}

/// A round length whose bar is no longer than a quarter of the map.
double bar_metres(double most_metres) {
  double length = std::pow(10.0, std::floor(std::log10(most_metres)));
  for (const double times : {5.0, 2.0}) {
    if (length * times <= most_metres) {
      return length * times;
    }
  }
  return length;
}

std::string scale_words(double scale) {
  std::string digits = std::to_string(std::llround(scale));
  for (auto place = static_cast<std::ptrdiff_t>(digits.size()) - 3; place > 0; place -= 3) {
    digits.insert(static_cast<std::size_t>(place), " ");
  }
  return "1 : " + digits;
}

std::string bar_words(double metres) {
  return metres >= 1000.0 ? std::to_string(std::llround(metres / 1000.0)) + " km"
                          : std::to_string(std::llround(metres)) + " m";
}

void draw_scale_bar(Canvas& canvas, const Box& plate, const OnPaper& paper,
                    const card::MapView& map) {
  const double metres = bar_metres(plate.width_pt * 0.55 / paper.length_pt(1.0));
  const double length_pt = paper.length_pt(metres);
  const Spot left{plate.left_pt + 5, plate.top_pt + 8};
  canvas.box({left.x_pt, left.y_pt - 2, length_pt / 2, 4}, kInk, {.width_pt = 0.6});
  canvas.box({left.x_pt + length_pt / 2, left.y_pt - 2, length_pt / 2, 4}, kPaper,
             {.width_pt = 0.6});
  const Lettering small{.size_pt = kSmallest_pt};
  canvas.write({left.x_pt + length_pt + 4, left.y_pt - 6}, {bar_words(metres), small, 60});
  canvas.write({left.x_pt, left.y_pt + 4}, {scale_words(map.scale), small, plate.width_pt - 10});
}

/// An arrow to true north where it is known, else to the map's.
void draw_north(Canvas& canvas, Spot middle, const card::MapView& map) {
  const double turn = map.north_off_deg.value_or(0.0) * std::numbers::pi / 180.0;
  const auto turned = [&](double right, double up) {
    return Spot{middle.x_pt + right * std::cos(turn) + up * std::sin(turn),
                middle.y_pt + right * std::sin(turn) - up * std::cos(turn)};
  };
  canvas.disc(middle, 13, kPaper, {.width_pt = 0.5, .colour = kHair});
  canvas.area({turned(0, 11), turned(4, -6), turned(0, -2)}, kInk, {.width_pt = 0.6});
  canvas.area({turned(0, 11), turned(-4, -6), turned(0, -2)}, kPaper, {.width_pt = 0.6});
  canvas.label({middle.x_pt, middle.y_pt + 20}, map.north_off_deg ? "true N" : "map N",
               {.size_pt = kSmallest_pt, .weight = Weight::bold});
}

}  // namespace

void draw_map(Canvas& canvas, const Box& box, const card::MapView& map) {
  const OnPaper paper{map, box};
  {
    const Canvas::Clip clip{canvas, box};
    draw_light(canvas, paper, map);
    LabelRoom room{box.inset(2)};
    const Box plate{box.left_pt + 6, box.bottom_pt() - 30, box.width_pt * 0.25, 24};
    room.take(plate);
    const Spot north{box.right_pt() - 20, box.top_pt + 20};
    room.take({north.x_pt - 18, north.y_pt - 14, 36, 42});
    draw_ways(canvas, paper, map);
    draw_symbols(canvas, paper, map, room);
    draw_numbers(canvas, paper, map, room);
    draw_names(canvas, paper, map, room);
    draw_trail_names(canvas, paper, map, room);
    canvas.box(plate, kPaper, {.width_pt = 0.5, .colour = kHair});
    draw_scale_bar(canvas, plate, paper, map);
    draw_north(canvas, north, map);
  }
  canvas.line({{box.left_pt, box.top_pt},
               {box.right_pt(), box.top_pt},
               {box.right_pt(), box.bottom_pt()},
               {box.left_pt, box.bottom_pt()},
               {box.left_pt, box.top_pt}},
              {.width_pt = 0.8, .colour = kInk});
}

}  // namespace rimehaul::ports::cairo
