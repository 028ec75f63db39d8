"""Writes the seeds that the fuzzers begin from: small pieces of the demo site in every format.

make_seeds.py FOLDER makes one folder per fuzzer in it, and FOLDER/words.dict for those of text.
"""

import json
import pathlib
import random
import re
import struct
import sys

from osgeo import gdal

gdal.UseExceptions()
gdal.SetConfigOption("CPL_LOG", "/dev/null")
gdal.SetConfigOption("OGR_CURRENT_DATE", "2026-01-01T00:00:00Z")
ROOT = pathlib.Path(__file__).resolve().parents[2]
SITE = ROOT / "routes" / "marrowfell"
HEIGHTS = ROOT / "dem-samples" / "marrowfell.tif"
KINDS = ["trails", "stations", "zones", "marks"]
ENDINGS = [".shp", ".shx", ".dbf", ".prj", ".cpg"]
MOST_POINTS = 12


def put(folder, name, data):
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_bytes(data)


def bytes_of(path):
    """Of a file in the library's memory."""
    handle = gdal.VSIFOpenL(path, "rb")
    data = bytes(gdal.VSIFReadL(1, 10_000_000, handle))
    gdal.VSIFCloseL(handle)
    return data


def toml_seeds(out):
    """The demo's files and the examples of the documentation."""
    examples = re.findall(r"```toml\n(.*?)```", (ROOT / "docs" / "site-format.md").read_text(), re.S)
    for name, example in zip(["site", "rigs", "rules", "snow"], examples, strict=True):
        put(out / name, "documented", example.encode())
        for file in SITE.glob(f"{name}*.toml"):
            put(out / name, file.stem, file.read_bytes())
    for name in ["people", "routes", "errands"]:
        put(out / "lists", name, (SITE / f"{name}.toml").read_bytes())


def shortened(feature):
    """Lines of few points, so that an input stays small."""
    geometry = feature["geometry"]
    if geometry["type"] == "LineString":
        geometry["coordinates"] = geometry["coordinates"][:MOST_POINTS]
    return feature


def on_the_fuzzers_trail(mark):
    """A mark on the one trail that look_at_layers.h has for marks to lie on."""
    places = {"Point": [-153.0, 46.0], "LineString": [[-153.0, 45.999], [-153.0, 46.0]]}
    mark["geometry"]["coordinates"] = places[mark["geometry"]["type"]]
    mark["properties"]["trail"] = "T"
    return mark


def layer_of(kind, count):
    whole = json.loads((SITE / f"{kind}.geojson").read_text())
    changed = on_the_fuzzers_trail if kind == "marks" else shortened
    whole["features"] = [changed(feature) for feature in whole["features"][:count]]
    return whole


def converted(kind, layer, driver, name, options=()):
    """The layer in another format, as the bytes of each file made."""
    source = f"/vsimem/{kind}.geojson"
    folder = f"/vsimem/made-{kind}-{driver.replace(' ', '-')}"
    gdal.FileFromMemBuffer(source, json.dumps(layer).encode())
    gdal.Mkdir(folder, 0o755)
    made = gdal.VectorTranslate(f"{folder}/{name}", source, format=driver, options=list(options))
    made = None
    files = {}
    for file in gdal.ReadDir(folder):
        if file in (".", ".."):
            continue
        files[file] = bytes_of(f"{folder}/{file}")
    return files


def layer_seeds(out):
    for number, kind in enumerate(KINDS):
        head = bytes([number])
        layer = layer_of(kind, 2)
        text = json.dumps(layer).encode()
        put(out / "text_layers", f"{kind}-geojson", b"\x00" + head + text)
        lines = "\n".join(json.dumps(feature) for feature in layer["features"]).encode()
        put(out / "text_layers", f"{kind}-geojsonl", b"\x03" + head + lines)
        kml = converted(kind, layer, "KML", "a.kml")["a.kml"]
        put(out / "text_layers", f"{kind}-kml", b"\x02" + head + kml)
        fgb = converted(kind, layer, "FlatGeobuf", "a.fgb")["a.fgb"]
        put(out / "binary_layers", f"{kind}-fgb", b"\x01" + head + fgb)
        put(out / "shapefile", kind, head + shapefile_of(kind, layer))
    for kind, number in (("trails", 0), ("stations", 1)):
        package = converted(kind, layer_of(kind, 1), "GPKG", "a.gpkg")["a.gpkg"]
        put(out / "binary_layers", f"{kind}-gpkg", b"\x00" + bytes([number]) + package)
    put(out / "text_layers", "trails-gpx", b"\x01\x00" + gpx_text())
    put(out / "text_layers", "stations-gpx", b"\x01\x01" + gpx_text())


def shapefile_of(kind, layer):
    """The files of a Shapefile, as shapefile_fuzz.cpp takes them apart. It holds one kind of shape."""
    shape = layer["features"][0]["geometry"]["type"]
    alike = [feature for feature in layer["features"] if feature["geometry"]["type"] == shape]
    parts = converted(kind, {**layer, "features": alike}, "ESRI Shapefile", "a.shp")
    packed = b""
    for name, data in sorted(parts.items()):
        part = ENDINGS.index(pathlib.PurePath(name).suffix)
        packed += struct.pack("<BI", part, len(data)) + data
    return packed


def gpx_text():
    points = "".join(f'<rtept lat="{46 + i / 1000}" lon="-153"/>' for i in range(3))
    track = "".join(f'<trkpt lat="{46 + i / 1000}" lon="-153.01"/>' for i in range(3))
    said = "direction=both; width_m=6; lanes=2; groomed=yes; skiers=no; open_from=00:00"
    return (
        '<gpx version="1.1" creator="h" xmlns="http://www.topografix.com/GPX/1/1">'
        '<wpt lat="46" lon="-153"><name>S</name><desc>kind=hut; turning_m=15</desc></wpt>'
        f"<rte><name>T</name><desc>{said}</desc>{points}</rte>"
        f"<trk><name>U</name><cmt>lanes=1</cmt><trkseg>{track}</trkseg></trk></gpx>"
    ).encode()


def height_seeds(out):
    cut = [400, 300, 20, 16]
    made = {
        "plain": ("GTiff", 0, {}, gdal.GDT_Float32),
        "tiled": ("GTiff", 0, {"TILED": "YES", "BLOCKXSIZE": 16, "BLOCKYSIZE": 16}, gdal.GDT_Int16),
        "packed": ("GTiff", 0, {"COMPRESS": "DEFLATE", "PREDICTOR": 2}, gdal.GDT_Int32),
        "grid": ("AAIGrid", 1, {}, gdal.GDT_Float32),
        "package": ("GPKG", 2, {}, gdal.GDT_Float32),
    }
    for name, (driver, number, options, kind) in made.items():
        path = f"/vsimem/{name}"
        options = [f"{key}={value}" for key, value in options.items()]
        raster = gdal.Translate(path, str(HEIGHTS), format=driver, srcWin=cut, outputType=kind,
                                creationOptions=options)
        raster = None
        put(out / "heights", name, bytes([number]) + bytes_of(path))


def other_maps(out):
    """Heights that have to be brought to another map or unit."""
    degrees = gdal.Warp("/vsimem/degrees", str(HEIGHTS), format="GTiff", dstSRS="EPSG:4326",
                        outputBounds=[-153.001, 45.999, -153.0, 46.0], width=24, height=20)
    feet = gdal.Translate("/vsimem/feet", str(HEIGHTS), format="GTiff", srcWin=[400, 300, 24, 20],
                          outputSRS="EPSG:32605+5773")
    feet.GetRasterBand(1).SetUnitType("m")
    feet.GetRasterBand(1).SetScale(0.5)
    feet.GetRasterBand(1).SetOffset(10)
    far = gdal.Translate("/vsimem/far", str(HEIGHTS), format="GTiff", srcWin=[400, 300, 24, 20],
                         outputSRS="EPSG:2232")
    far.GetRasterBand(1).SetUnitType("US survey foot")
    degrees = feet = far = None
    for name in ("degrees", "feet", "far"):
        put(out / "heights", name, b"\x00" + bytes_of(f"/vsimem/{name}"))


def noding_seeds(out):
    dice = random.Random(5)
    for i in range(40):
        put(out / "noding", f"thrown-{i}", dice.randbytes(20 + 6 * i))


def words(out):
    """Every word of the seeds of text, for the fuzzers to put anywhere."""
    found = set()
    for file in [*SITE.glob("*.toml"), ROOT / "docs" / "site-format.md"]:
        found |= set(re.findall(r"[A-Za-z_]{2,24}", file.read_text()))
    marks = ["[[", "]]", " = ", "1e999", "nan", "inf", "-0", r"\xc2\x9b", r"\xe2\x80\xae"]
    lines = [f'"{word}"' for word in sorted(found) + marks]
    (out / "words.dict").write_text("\n".join(lines) + "\n")


def main():
    out = pathlib.Path(sys.argv[1])
    toml_seeds(out)
    layer_seeds(out)
    height_seeds(out)
    other_maps(out)
    noding_seeds(out)
    words(out)


main()
