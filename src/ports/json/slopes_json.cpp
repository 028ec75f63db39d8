#include "ports/json/slopes_json.h"

#include "ports/json/parts.h"

namespace rimehaul::ports::json {

namespace {

std::optional<double> ratio_of(const std::optional<units::Slope>& slope) {
  return slope ? std::optional{slope->ratio()} : std::nullopt;
}

Object rig_json(const card::SlopesReport& report) {
  const card::SlopeRig& rig = *report.rig;
  Object object;
  object.text("rig", rig.name).text("trailer", rig.towing).object("load", load_json(rig.load));
  object.text("wetness", snow::key_of(rig.snow.wetness));
  object.text("surface", snow::key_of(rig.snow.surface));
  object.number("allowed_share", rig.allowed_share);
  object.number("tolerance_ratio", ratio_of(rig.tolerance));
  object.whole("open_cells", report.open).texts("ratings", rig.ratings);
  if (rig.closed) {
    object.object("closed",
                  finding_json(*rig.closed, passage::stand_of(*rig.closed, rig.allowed_share)));
  }
  return object;
}

Object raster_json(const card::SlopeRaster& raster) {
  return Object{}
      .text("layer", raster.layer)
      .text("file", raster.file)
      .text("meaning", raster.meaning)
      .text("unit", raster.unit);
}

}  // namespace

std::string slopes_json(const card::SlopesReport& report) {
  std::vector<Object> rasters;
  for (const card::SlopeRaster& raster : report.rasters) {
    rasters.push_back(raster_json(raster));
  }
  Object object;
  object.whole("schema", report.schema).text("kind", "slopes").text("site", report.site);
  object.text("map_frame", report.map_frame).number("cell_m", report.cell.value());
  object.whole("columns", report.size.column).whole("rows", report.size.row);
  object.whole("known_cells", report.known);
  object.number("steepest_deg",
                report.steepest ? std::optional{report.steepest->degrees()} : std::nullopt);
  object.number("sigma_ratio", ratio_of(report.sigma));
  object.list("rasters", rasters).texts("estimates", report.estimates);
  object.text("caution", card::slopes_caution());
  if (report.rig) {
    object.object("judged", rig_json(report));
  }
  add_made_from(object, report.made_from);
  return object.bytes();
}

}  // namespace rimehaul::ports::json
