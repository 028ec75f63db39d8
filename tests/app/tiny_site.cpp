#include "app/tiny_site.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "app/run.h"

namespace rimehaul::testing {

namespace {

namespace fs = std::filesystem;

constexpr const char* kSite = R"(schema = 1
name = "Tiny Fell"
map_frame = "EPSG:32605"
utc_offset_minutes = 0

[files]
trails = ["trails.geojson"]
stations = ["stations.geojson"]
snow = "snow.toml"

[heights]
files = ["heights.asc"]
vertical_datum = "Tiny datum"
unit = "metres"
source = "made up for a test"
date = "2026"
sub_cell = { deg = 0.5, standing = "estimate", source = "a plane hides nothing" }

[[heights.error]]
sd_m = 0.05
correlation_m = 20
source = "made up"
)";

constexpr const char* kRigs = R"(schema = 1

[carrier.Hare]
kind = "twin_track"
standing = "maker"
source = "Hare sheet"
mass_kg = 620
centre_m = [0.9, 0.0, 0.5]
driver_kg = 90
driver_at_m = [1.0, 0.0, 0.9]
seats_at_m = [[0.6, 0.0, 0.9]]
bed_at_m = [0.5, 0.0, 0.7]
bed_kg = 250
payload_kg = 340
support_m = [[0.0, -0.7], [1.8, -0.7], [1.8, 0.7], [0.0, 0.7]]
contact_length_m = 1.8
gauge_m = 1.4
length_m = 3.0
width_m = 1.5
contact_area_m2 = 1.4
track_weight_share = 1.0
turning_radius_m = 3
hitch_at_m = [-0.3, 0.0, 0.4]
hitch_vertical_kg = 60
towed_kg = 600
power_kw = 36
driveline_efficiency = 0.65
consumption_g_per_kwh = 400
idle_l_per_h = 1.2
tank_l = 40
tank_at_m = [0.9, 0.0, 0.6]
fuel_kg_per_m3 = 741
brake_force_n = 6000
parking_brake_force_n = 5000
top_speed_kmh = 25
[carrier.Hare.ratings.solo_empty]
climb = { deg = 28, standing = "maker", source = "manual, p. 41" }
descent = { deg = 28, standing = "maker", source = "manual, p. 41" }
cross = { deg = 18, standing = "maker", source = "manual, p. 41" }
[carrier.Hare.ratings.solo_loaded]
climb = { deg = 25, standing = "maker", source = "manual, p. 41" }
descent = { deg = 25, standing = "maker", source = "manual, p. 41" }
cross = { deg = 16, standing = "maker", source = "manual, p. 41" }
[carrier.Hare.ratings.towing]
climb = { deg = 20, standing = "maker", source = "manual, p. 41" }
descent = { deg = 20, standing = "maker", source = "manual, p. 41" }
cross = { deg = 13, standing = "maker", source = "manual, p. 41" }

[trailer.Sled]
running = "runners"
standing = "maker"
source = "Sled sheet"
mass_kg = 110
centre_m = [0.8, 0.0, 0.35]
bed_at_m = [0.8, 0.0, 0.5]
payload_kg = 300
tongue_share = 0.1
gauge_m = 1.2
width_m = 1.3
contact_length_m = 1.6
drawbar_m = 2.2
contact_area_m2 = 0.5
hitch_free_to_roll = false
brake_force_n = 1000

[rig.solo]
carrier = "Hare"
driver_level = "seasoned"

[rig.towing]
carrier = "Hare"
trailer = "Sled"
driver_level = "seasoned"
)";

constexpr const char* kSnow = R"(schema = 1
observer = "A. Example"
observed = 2026-02-01T06:00:00Z
valid_until = 2026-02-01T14:00:00Z
[weather]
visibility_m = 2000
wind_kmh = 15
bulletin_level = 1
bulletin_source = "test desk"
rain = false
new_snow_cm = 0
[[band]]
wetness = "dry"
surface = "groomed"
)";

/// WGS 84 / UTM zone 5N as a Shapefile-style .prj has it.
constexpr const char* kFrame =
    R"(PROJCS["WGS_1984_UTM_Zone_5N",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",)"
    R"(SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],)"
    R"(UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],)"
    R"(PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],)"
    R"(PARAMETER["Central_Meridian",-153.0],PARAMETER["Scale_Factor",0.9996],)"
    R"(PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]])";

constexpr const char* kCrs =
    R"("crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::32605"}})";

/// 2000 m x 2000 m of 10 m cells that rise by 6 % to the north.
std::string heights() {
  std::ostringstream text;
  text << "ncols 200\nnrows 200\nxllcorner 499000\nyllcorner 5099000\ncellsize 10\n"
       << "NODATA_value -9999\n";
  for (int row = 0; row < 200; ++row) {
    const double height = 1000.0 + 0.06 * (1995.0 - 10.0 * row);
    for (int column = 0; column < 200; ++column) {
      text << height << (column < 199 ? ' ' : '\n');
    }
  }
  return text.str();
}

std::string trail(const std::string& name, const std::string& points) {
  return R"({"type":"Feature","properties":{"name":")" + name +
         R"(","direction":"both","width_m":6,"lanes":2,"groomed":"yes","skiers":"no",)"
         R"("open_from":"00:00","open_to":"24:00","error_m":1,"sight_m":60,"marker_m":20},)"
         R"("geometry":{"type":"LineString","coordinates":[)" +
         points + "]}}";
}

std::string station(const std::string& name, const std::string& point) {
  return R"({"type":"Feature","properties":{"name":")" + name +
         R"(","kind":"hut","turning_m":15},"geometry":{"type":"Point","coordinates":)" + point +
         "}}";
}

std::string collection(const std::vector<std::string>& features) {
  std::string text = std::string{R"({"type":"FeatureCollection",)"} + kCrs + R"(,"features":[)";
  for (std::size_t i = 0; i < features.size(); ++i) {
    text += (i == 0 ? "\n" : ",\n") + features[i];
  }
  return text + "\n]}\n";
}

}  // namespace

TinySite::TinySite() {
  static int count = 0;
  const fs::path folder =
      fs::temp_directory_path() /
      ("rimehaul-tiny-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
  fs::create_directories(folder);
  folder_ = folder.string();
  write("site.toml", kSite);
  write("rigs.toml", kRigs);
  write("rules.toml", "schema = 1\nmost_wind_kmh = 60\n");
  write("snow.toml", kSnow);
  write("heights.asc", heights());
  write("heights.prj", kFrame);
  write("trails.geojson",
        collection({trail("Low Way", "[499700,5099800],[500000,5099830],[500300,5099800]"),
                    trail("High Way",
                          "[499700,5099800],[499800,5100000],[500000,5100080],[500200,5100000],"
                          "[500300,5099800]"),
                    trail("Spur", "[500000,5100080],[500000,5100300]")}));
  write("stations.geojson",
        collection({station("Base", "[499700,5099800]"), station("Top", "[500300,5099800]"),
                    station("Hut", "[500000,5100300]")}));
}

TinySite::~TinySite() {
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

std::string TinySite::text(const std::string& name) const {
  std::ifstream file{path(name), std::ios::binary};
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

void TinySite::write(const std::string& name, const std::string& text) const {
  std::ofstream file{path(name), std::ios::binary | std::ios::trunc};
  file << text;
}

void TinySite::change(const std::string& name, const Change& change) const {
  std::string whole = text(name);
  const std::size_t at = whole.find(change.from);
  REQUIRE_MESSAGE(at != std::string::npos, name << " has no " << change.from);
  whole.replace(at, change.from.size(), change.to);
  write(name, whole);
}

void TinySite::remove(const std::string& name) const {
  REQUIRE(fs::remove(path(name)));
}

Ran run_command(const std::vector<std::string>& arguments, audit::WalkAgain rewalk) {
  std::ostringstream out;
  std::ostringstream err;
  const app::Outside outside{.out = out,
                             .err = err,
                             .now = *units::parse_instant("2026-02-01T09:00:00Z"),
                             .rewalk = rewalk};
  Ran ran;
  ran.status = app::run(arguments, outside);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

std::vector<std::string> route_words(const TinySite& site, const std::vector<std::string>& more) {
  std::vector<std::string> words{"route",  site.folder(), "--rig",  "solo", "--snow", "dry",
                                 "--load", "100",         "--from", "Base", "--to",   "Top"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

}  // namespace rimehaul::testing
