// Heights finer than the rigs, against the same heights averaged beforehand by gdalwarp.
#include <doctest/doctest.h>

#include "app/tiny_site.h"
#include "program.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

/// What an audit found, without what tells of its making.
std::string found_in(const std::string& audit) {
  const std::size_t sources = audit.find("GROUND AND SOURCES");
  REQUIRE(sources != std::string::npos);
  return audit.substr(0, sources);
}

/// Half-metre heights around the trails: a valley that climbs by 6 % with bumps of some
/// centimetres.
constexpr const char* kMakeFine = R"(
import sys, numpy
from osgeo import gdal, osr
gdal.UseExceptions()
file = gdal.GetDriverByName("GTiff").Create(sys.argv[1], 2200, 2000, 1, gdal.GDT_Float64)
file.SetGeoTransform([499450, 0.5, 0, 5100550, 0, -0.5])
frame = osr.SpatialReference()
frame.ImportFromEPSG(32605)
file.SetProjection(frame.ExportToWkt())
bumps = numpy.random.default_rng(20261126).normal(0, 0.03, (2000, 2200))
north = numpy.arange(2000)[:, None] * -0.5
file.GetRasterBand(1).WriteArray(1100 + 0.06 * north + bumps)
)";

Ran audit_of(const TinySite& site) {
  return run_command({"audit",  site.folder(), "--rig",        "towing",    "--snow",       "dry",
                      "--load", "50",          "--towed-load", "100",       "--visibility", "2000",
                      "--wind", "10",          "--bulletin",   "1",         "--new-snow",   "0",
                      "--rain", "no",          "--for",        "A. Officer"});
}

void use_heights(const TinySite& site, const std::string& file, const std::string& deviation) {
  site.change("site.toml", {"heights.asc", file});
  site.change("site.toml",
              {"sd_m = 0.05\ncorrelation_m = 20", "sd_m = " + deviation + "\ncorrelation_m = 0"});
}

TEST_CASE("heights finer than the rigs are judged as their means over the narrowest gauge") {
  const TinySite fine;
  fine.write("make.py", kMakeFine);
  REQUIRE(testing::told_by_shell("/usr/bin/python3 '" + fine.path("make.py") + "' '" +
                                 fine.path("fine.tif") + "'")
              .ended == 0);
  const TinySite averaged;
  REQUIRE(testing::told_by_shell("gdalwarp -q -r average -tr 1 1 '" + fine.path("fine.tif") +
                                 "' '" + averaged.path("means.tif") + "'")
              .ended == 0);
  use_heights(fine, "fine.tif", "0.04");
  use_heights(averaged, "means.tif", "0.02");  // four independent errors even out to half

  const Ran of_fine = audit_of(fine);
  const Ran of_means = audit_of(averaged);
  CAPTURE(of_fine.err);
  REQUIRE(of_fine.out.size() > 1000);
  CHECK(of_fine.status == of_means.status);
  CHECK(found_in(of_fine.out) == found_in(of_means.out));

  const Ran checked = run_command({"check", fine.folder()});
  CAPTURE(checked.out);
  CHECK(checked.out.find("means over 2 x 2 cells, 1.00 m wide, as no gauge is narrower") !=
        std::string::npos);
}

}  // namespace
}  // namespace rimehaul::app
