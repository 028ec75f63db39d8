"""Reads an audit's GeoJSON as another program does, and holds it against the site's own trails.

Prints one fact a line: count, geometry types, fields with their kinds, the farthest that a vertex
lies from the trail it is said to be on, and by how much the length of a line differs most from the
metres it is said to span.
"""

import sys

from osgeo import ogr, osr

ogr.UseExceptions()
exceedances, trails, map_frame = sys.argv[1:]

metric = osr.SpatialReference()
metric.SetFromUserInput(map_frame)
globe = osr.SpatialReference()
globe.ImportFromEPSG(4326)
for system in (metric, globe):
    system.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)


def in_metres(feature, system):
    shape = feature.GetGeometryRef().Clone()
    shape.AssignSpatialReference(system)
    shape.TransformTo(metric)
    return shape


trail_source = ogr.Open(trails)
trail_layer = trail_source.GetLayer(0)
trail_system = trail_layer.GetSpatialRef()
trail_system.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
lines = {f["name"]: in_metres(f, trail_system) for f in trail_layer}

source = ogr.Open(exceedances)
layer = source.GetLayer(0)
kinds = set()
farthest = 0.0
off_length = 0.0
for feature in layer:
    shape = in_metres(feature, globe)
    kinds.add(shape.GetGeometryName())
    for x, y, *_ in shape.GetPoints():
        point = ogr.Geometry(ogr.wkbPoint)
        point.AddPoint_2D(x, y)
        farthest = max(farthest, point.Distance(lines[feature["trail"]]))
    if shape.GetGeometryName() == "LINESTRING":
        said = feature["to_m"] - feature["from_m"]
        off_length = max(off_length, abs(shape.Length() - said))

definition = layer.GetLayerDefn()
fields = [definition.GetFieldDefn(i) for i in range(definition.GetFieldCount())]
print("count", layer.GetFeatureCount())
print("kinds", " ".join(sorted(kinds)))
print("crs", layer.GetSpatialRef().GetAuthorityCode(None))
for field in fields:
    print("field", field.GetName(), field.GetTypeName())
print("farthest_m", farthest)
print("off_length_m", off_length)
