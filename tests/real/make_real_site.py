#!/usr/bin/python3
"""Writes one site per way of storing the same measured heights, for the tests on real input.

    make_real_site.py OUT [HEIGHTS.npz]

The heights are the sample elevation model that Debian's python-matplotlib-data carries: whole
metres on 3 arc seconds, first row northernmost although its ymin and ymax say otherwise. OUT gets
the folders metric, feet, point, south_up, degrees and grid; each is a whole site with the same
trails, and differs from the others only in its heights.
"""

import pathlib
import sys

import numpy
from osgeo import gdal, osr

gdal.UseExceptions()

HEIGHTS = "/usr/share/matplotlib/mpl-data/sample_data/jacksboro_fault_dem.npz"
FRAME = "EPSG:32616"
CELL_M = 80
VOID = -9999.0
FOOT_M = 0.3048

# Laid along gentle valley floors of the heights; longitude and latitude on WGS 84.
VALLEY_WAY = [
    (-84.214888, 36.615209), (-84.212204, 36.615225), (-84.209500, 36.615804),
    (-84.206797, 36.616371), (-84.204139, 36.615678), (-84.201484, 36.614906),
    (-84.198800, 36.614922), (-84.196083, 36.615883), (-84.193390, 36.616146),
    (-84.190707, 36.616162), (-84.187996, 36.616909), (-84.185296, 36.617386),
    (-84.182612, 36.617424), (-84.179881, 36.618722), (-84.177122, 36.620808),
    (-84.174362, 36.622905), (-84.171615, 36.624665), (-84.168922, 36.624928),
    (-84.166284, 36.624065), (-84.164671, 36.621954), (-84.165043, 36.619800),
    (-84.166393, 36.617669), (-84.166584, 36.615511), (-84.166663, 36.613350),
    (-84.167161, 36.611199),
]
MEADOW_WAY = [
    (-84.167161, 36.611199), (-84.169083, 36.609082), (-84.169161, 36.606932),
    (-84.166949, 36.605517), (-84.164284, 36.605037), (-84.161651, 36.603690),
    (-84.159132, 36.602278), (-84.157796, 36.600252), (-84.155541, 36.599646),
    (-84.152835, 36.600280), (-84.150137, 36.600689),
]
# Straight over the ridge: nobody should drive this.
RIDGE_WAY = [
    (-84.167161, 36.611199), (-84.191000, 36.610700), (-84.215000, 36.610500),
    (-84.239500, 36.611200),
]
STATIONS = {
    "West Hut": VALLEY_WAY[0],
    "Middle": VALLEY_WAY[-1],
    "East Hut": MEADOW_WAY[-1],
    "Ridge Hut": RIDGE_WAY[-1],
}

TRAIL_COLUMNS = (
    "direction=both;width_m=8;lanes=2;groomed=yes;skiers=no;open_from=00:00;open_to=24:00;"
    "error_m=3;sight_m=60;marker_m=20"
)

SITE = """schema = 1
name = "Real heights of the tests"
map_frame = "EPSG:32616"
utc_offset_minutes = 0

[files]
trails = ["trails.gpx"]
stations = ["stations.gpx"]
snow = "snow.toml"

[heights]
files = ["HEIGHTS_FILE"]
vertical_datum = "as the sample has it, not stated"
UNIT_LINEsource = "sample elevation model of python-matplotlib-data"
date = "not stated"
sub_cell = { deg = 0.1, standing = "estimate", source = "made up for the test" }

[[heights.error]]
sd_m = 0.3
correlation_m = 1000
source = "made up for the test"
"""

SNOW = """schema = 1
observer = "A. Example"
observed = 2026-02-01T06:00:00Z
valid_until = 2026-02-01T14:00:00Z

[weather]
visibility_m = 2000
wind_kmh = 15
bulletin_level = 1
bulletin_source = "test desk"
new_snow_cm = 0
rain = false
temperature_c = -5

[[band]]
wetness = "dry"
surface = "groomed"
"""

RULES = """schema = 1
most_wind_kmh = 60
"""

RIGS = """schema = 1

[carrier.Hare]
kind = "twin_track"
standing = "maker"
source = "Hare sheet (invented)"
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
turning_radius_m = 2
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
climb = { deg = 28, standing = "maker", source = "Hare manual (invented), p. 41" }
descent = { deg = 28, standing = "maker", source = "Hare manual (invented), p. 41" }
cross = { deg = 20, standing = "maker", source = "Hare manual (invented), p. 41" }
[carrier.Hare.ratings.solo_loaded]
climb = { deg = 25, standing = "maker", source = "Hare manual (invented), p. 41" }
descent = { deg = 25, standing = "maker", source = "Hare manual (invented), p. 41" }
cross = { deg = 18, standing = "maker", source = "Hare manual (invented), p. 41" }
[carrier.Hare.ratings.towing]
climb = { deg = 20, standing = "maker", source = "Hare manual (invented), p. 41" }
descent = { deg = 20, standing = "maker", source = "Hare manual (invented), p. 41" }
cross = { deg = 13, standing = "maker", source = "Hare manual (invented), p. 41" }

[rig.solo]
carrier = "Hare"
driver_level = "seasoned"
"""


def system(code):
    """A reference system with east or longitude first."""
    reference = osr.SpatialReference()
    reference.SetFromUserInput(code)
    reference.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    return reference


def in_memory(heights, corners, code):
    rows, columns = heights.shape
    dataset = gdal.GetDriverByName("MEM").Create("", columns, rows, 1, gdal.GDT_Float32)
    dataset.SetGeoTransform(corners)
    dataset.SetSpatialRef(system(code))
    dataset.GetRasterBand(1).SetNoDataValue(VOID)
    dataset.GetRasterBand(1).WriteArray(heights)
    return dataset


def measured(path):
    """The sample as it was measured, in degrees, first row northernmost."""
    sample = numpy.load(path)
    heights = sample["elevation"].astype("float32")
    rows, columns = heights.shape
    north = max(float(sample["ymin"]), float(sample["ymax"]))
    south = min(float(sample["ymin"]), float(sample["ymax"]))
    west, east = float(sample["xmin"]), float(sample["xmax"])
    corners = (west, (east - west) / columns, 0, north, 0, -(north - south) / rows)
    return in_memory(heights, corners, "EPSG:4326")


def write_tiff(path, heights, corners, code, unit="m", point=False):
    rows, columns = heights.shape
    dataset = gdal.GetDriverByName("GTiff").Create(
        str(path), columns, rows, 1, gdal.GDT_Float32, ["TILED=YES", "COMPRESS=DEFLATE"])
    dataset.SetGeoTransform(corners)
    dataset.SetSpatialRef(system(code))
    if point:
        dataset.SetMetadataItem("AREA_OR_POINT", "Point")
    band = dataset.GetRasterBand(1)
    band.SetNoDataValue(VOID)
    band.SetUnitType(unit)
    band.WriteArray(heights)


def write_grid(path, heights, corners, code):
    """An ASCII grid, which knows no unit, with its .prj beside it."""
    rows, columns = heights.shape
    head = (f"ncols {columns}\nnrows {rows}\nxllcorner {corners[0]!r}\n"
            f"yllcorner {corners[3] + rows * corners[5]!r}\ncellsize {corners[1]!r}\n"
            f"NODATA_value {VOID!r}\n")
    lines = [" ".join(repr(float(height)) for height in row) for row in heights]
    path.write_text(head + "\n".join(lines) + "\n")
    reference = system(code)
    reference.MorphToESRI()
    path.with_suffix(".prj").write_text(reference.ExportToWkt())


def gpx(body):
    return ('<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="test" '
            f'xmlns="http://www.topografix.com/GPX/1/1">\n{body}</gpx>\n')


def trails_gpx():
    tracks = ""
    for name, line in (("Valley Way", VALLEY_WAY), ("Meadow Way", MEADOW_WAY),
                       ("Ridge Way", RIDGE_WAY)):
        points = "".join(f'<trkpt lat="{lat}" lon="{lon}"/>' for lon, lat in line)
        tracks += (f"<trk><name>{name}</name><desc>{TRAIL_COLUMNS}</desc>"
                   f"<trkseg>{points}</trkseg></trk>\n")
    return gpx(tracks)


def stations_gpx():
    return gpx("".join(
        f'<wpt lat="{lat}" lon="{lon}"><name>{name}</name><desc>kind=hut;turning_m=15</desc></wpt>\n'
        for name, (lon, lat) in STATIONS.items()))


def write_site(folder, file, unit_line=""):
    folder.joinpath("site.toml").write_text(
        SITE.replace("HEIGHTS_FILE", file).replace("UNIT_LINE", unit_line))
    folder.joinpath("rigs.toml").write_text(RIGS)
    folder.joinpath("rules.toml").write_text(RULES)
    folder.joinpath("snow.toml").write_text(SNOW)
    folder.joinpath("trails.gpx").write_text(trails_gpx())
    folder.joinpath("stations.gpx").write_text(stations_gpx())


def main(out, source=HEIGHTS):
    out = pathlib.Path(out)
    sample = measured(source)
    warped = gdal.Warp("", sample, format="MEM", dstSRS=FRAME, xRes=CELL_M, yRes=CELL_M,
                       resampleAlg="bilinear", errorThreshold=0, dstNodata=VOID,
                       targetAlignedPixels=True)
    heights = warped.ReadAsArray()
    corners = warped.GetGeoTransform()
    is_void = heights == VOID
    flipped = (corners[0], corners[1], 0, corners[3] + heights.shape[0] * corners[5], 0,
               -corners[5])
    for name in ("metric", "feet", "point", "south_up", "degrees", "grid"):
        out.joinpath(name).mkdir(parents=True, exist_ok=True)
        unit_line = 'unit = "metres"\n' if name == "grid" else ""
        write_site(out / name, "heights.asc" if name == "grid" else "heights.tif", unit_line)
    write_tiff(out / "metric/heights.tif", heights, corners, FRAME)
    feet = numpy.where(is_void, VOID, heights.astype("float64") / FOOT_M)
    write_tiff(out / "feet/heights.tif", feet, corners, FRAME, unit="ft")
    write_tiff(out / "point/heights.tif", heights, corners, FRAME, point=True)
    write_tiff(out / "south_up/heights.tif", heights[::-1], flipped, FRAME)
    write_tiff(out / "degrees/heights.tif", sample.ReadAsArray(), sample.GetGeoTransform(),
               "EPSG:4326")
    write_grid(out / "grid/heights.asc", heights, corners, FRAME)


if __name__ == "__main__":
    main(*sys.argv[1:])
