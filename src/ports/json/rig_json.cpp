// The rig sheet as canonical JSON.
#include "ports/json/rig_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

Object place_json(const rig::BodyPoint& place) {
  return Object{}
      .number("forward_m", place.forward.value())
      .number("left_m", place.left.value())
      .number("up_m", place.up.value());
}

Object balance_json(const rig::Balance& balance) {
  return Object{}
      .number("mass_kg", balance.mass.value())
      .object("centre", place_json(balance.centre));
}

std::string_view key_of(card::TipWay way) {
  switch (way) {
    case card::TipWay::over_the_right:
      return "right";
    case card::TipWay::over_the_left:
      return "left";
    case card::TipWay::over_the_rear:
      return "rear";
    case card::TipWay::over_the_front:
      return "front";
  }
  return "";
}

Object tip_json(const card::TipAngle& tip) {
  return Object{}
      .text("over", key_of(tip.way))
      .number("as_loaded_deg", tip.as_loaded.degrees())
      .number("without_load_deg", tip.empty.degrees())
      .number("usable_deg", tip.usable.degrees());
}

Object edge_json(const card::SheetEdge& edge) {
  const auto corner = [](const rig::SupportPoint& point) {
    return Object{}.number("forward_m", point.forward.value()).number("left_m", point.left.value());
  };
  return Object{}
      .object("from", corner(edge.edge.from))
      .object("to", corner(edge.edge.to))
      .number("inside_m", edge.edge.inside.value())
      .number("static_tip_deg", edge.edge.static_tip.degrees())
      .number("usable_deg", edge.usable.degrees());
}

Object body_json(const card::SheetBody& body) {
  std::vector<Object> masses;
  for (const card::NamedMass& mass : body.masses) {
    masses.push_back(Object{}
                         .text("name", mass.name)
                         .number("mass_kg", mass.placed.mass.value())
                         .object("at", place_json(mass.placed.at)));
  }
  std::vector<Object> edges;
  for (const card::SheetEdge& edge : body.edges) {
    edges.push_back(edge_json(edge));
  }
  std::vector<Object> tips;
  for (const card::TipAngle& tip : body.tips) {
    tips.push_back(tip_json(tip));
  }
  return Object{}
      .text("name", body.name)
      .text("provenance", body.provenance)
      .list("masses", masses)
      .object("as_loaded", balance_json(body.as_loaded))
      .object("without_load", balance_json(body.empty))
      .list("edges", edges)
      .list("tips", tips)
      .number("contact_length_m", body.contact_length.value())
      .number("gauge_m", body.gauge.value());
}

/// A rating that is not given is null and told under "missing".
void add_rating(Object& object, const std::string& name, const std::optional<rig::Rating>& rating) {
  object.number(name + "_deg", rating ? std::optional{rating->steepest.degrees()} : std::nullopt);
  if (rating) {
    object.text(name + "_standing", rig::words_for(rating->provenance.standing));
    object.text(name + "_source", rating->provenance.source);
  }
}

Object ratings_json(const card::SheetRatings& ratings) {
  Object object;
  object.text("way", ratings.way);
  object.truth("in_force", ratings.in_force ? Truth::yes : Truth::no);
  add_rating(object, "climb", ratings.ratings.climb);
  add_rating(object, "descent", ratings.ratings.descent);
  add_rating(object, "cross", ratings.ratings.cross);
  return object;
}

}  // namespace

std::string rig_sheet_json(const card::RigSheet& sheet) {
  Object object;
  object.whole("schema", sheet.schema).text("kind", "rig_sheet").text("site", sheet.site);
  object.text("rig", sheet.rig).text("driver_level", sheet.driver_level);
  object.number("allowed_share", sheet.allowed_share);
  object.number("total_kg", sheet.total.value()).number("pressure_kpa", sheet.pressure.value());
  object.truth("within_ratings", sheet.within_ratings() ? Truth::yes : Truth::no);
  object.object("carrier", body_json(sheet.carrier));
  if (sheet.trailer) {
    object.object("trailer", body_json(*sheet.trailer));
  }
  if (sheet.hitch) {
    object.number("tongue_kg", sheet.hitch->tongue.value());
    object.number("tongue_rated_kg", sheet.hitch->rated.value());
    object.number("tongue_about_runners_n_m", sheet.hitch->about_runners.value());
    object.number("tongue_off_the_front_n_m", sheet.hitch->off_the_front.value());
  }
  std::vector<Object> ratings;
  for (const card::SheetRatings& way : sheet.ratings) {
    ratings.push_back(ratings_json(way));
  }
  std::vector<Object> loads;
  for (const card::SheetLoad& load : sheet.loads) {
    loads.push_back(finding_json(load.finding, passage::stand_of(load.finding, sheet.allowed_share))
                        .text("name", load.name));
  }
  object.list("ratings", ratings).list("loads", loads).texts("estimates", sheet.estimates);
  add_made_from(object, sheet.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
