#!/usr/bin/python3
"""Makes the invented site Marrowfell: its heights, trails, stations, zones and marks.

Marrowfell is a fictional mountain laid on open ocean (EPSG:32605, near 46 N 153 W), so that nobody
takes it for a real hill. Nothing here is measured. The same script gives the same mountain: all
roughness comes from integer hashing, heights are rounded to a centimetre.

Needs Debian's python3-numpy and python3-gdal. Run from anywhere:
    /usr/bin/python3 dem-samples/make_marrowfell.py [OUTPUT_ROOT]
"""

import heapq
import json
import math
import os
import sys

import numpy as np
from osgeo import gdal, osr

gdal.UseExceptions()

EPSG = 32605
WEST, SOUTH = 497800.0, 5093300.0
WIDTH_M, HEIGHT_M, CELL = 4400, 3400, 5.0
COLUMNS, ROWS = int(WIDTH_M / CELL), int(HEIGHT_M / CELL)
NODATA = -9999.0

# name: (x, y, kind, radius kept clear for turning round, metres); x, y from the south-west corner.
STATIONS = {
    "Cable House": (620, 520, "lift_station", 18),
    "Sledge Shed": (1010, 380, "workshop", 15),
    "Drum Yard": (1330, 640, "fuel", 15),
    "Birk Chalets": (2080, 620, "lodging", 12),
    "Midway": (1560, 1480, "lift_station", 18),
    "Fell Lodge": (2480, 1420, "lodging", 18),
    "Tarn Hut": (3560, 1560, "hut", 12),
    "Crow Top": (2900, 2480, "lift_station", 15),
    "Moss Refuge": (1020, 2260, "refuge", 10),
    "Gill Hut": (3760, 700, "hut", 12),
}

# name, from, bearing out, to, bearing out at the far end, target grade, attributes
BOTH = {"direction": "both", "groomed": "yes", "skiers": "no", "lanes": 1, "width_m": 6.0}
WIDE = dict(BOTH, lanes=2, width_m=9.0)
TRAILS = [
    ("Shed Lane", "Cable House", 140, "Sledge Shed", 280, 0.05, WIDE),
    ("Drum Lane", "Sledge Shed", 60, "Drum Yard", 220, 0.05, WIDE),
    ("Birk Way", "Drum Yard", 100, "Birk Chalets", 270, 0.05, WIDE),
    ("Shed Bypass", "Sledge Shed", 120, "Birk Chalets", 225, 0.05, BOTH),
    ("Gill Way", "Birk Chalets", 100, "Gill Hut", 260, 0.05, BOTH),
    ("Cable Up", "Cable House", 20, "Midway", 240, 0.055, dict(BOTH, direction="forward")),
    ("Cable Down", "Midway", 190, "Cable House", 75, 0.055, dict(BOTH, direction="forward")),
    ("Lodge Traverse", "Midway", 80, "Fell Lodge", 270, 0.045, WIDE),
    ("Birk Climb", "Birk Chalets", 20, "Fell Lodge", 200, 0.055, BOTH),
    ("Piste Link", "Birk Chalets", 60, "Fell Lodge", 150, 0.09, dict(BOTH, skiers="yes")),
    ("Noon Run", "Birk Chalets", 325, "Midway", 130, 0.08, BOTH),
    ("Tarn Traverse", "Fell Lodge", 75, "Tarn Hut", 280, 0.045, BOTH),
    ("Tarn Loop", "Fell Lodge", 110, "Tarn Hut", 230, 0.08, BOTH),
    ("Tarn Drop", "Tarn Hut", 180, "Gill Hut", 350, 0.09, BOTH),
    ("Void Cut", "Tarn Hut", 135, "Gill Hut", 40, 0.12, BOTH),
    ("Top Road", "Fell Lodge", 20, "Crow Top", 200, 0.09, BOTH),
    ("Moss Way", "Midway", 330, "Moss Refuge", 120, 0.06, BOTH),
    ("Moss Low", "Drum Yard", 340, "Moss Refuge", 190, 0.07, dict(BOTH, groomed="no")),
    ("Crag Foot", "Moss Refuge", 60, "Crow Top", 280, 0.11, BOTH),
    ("Ridge Way", "Tarn Hut", 30, "Crow Top", 60, 0.12, BOTH),
    ("Sidehill", "Tarn Hut", 330, "Crow Top", 110, 0.10, dict(BOTH, width_m=4.0, groomed="no")),
    ("Crow Zigzag", "Midway", 30, "Crow Top", 235, 0.085, dict(BOTH, width_m=2.6)),
]
UNBENCHED = {"Sidehill"}
THROUGH = {"Gill Way": [(2880, 640), (3160, 640)], "Crag Foot": [(1640, 2560), (1880, 2880), (2440, 2820)]}


def hashed(ix, iy, seed):
    """A number in [0, 1) for every lattice point, by 32-bit integer mixing."""
    value = (ix.astype(np.uint32) * np.uint32(0x9E3779B1)) ^ (iy.astype(np.uint32) * np.uint32(0x85EBCA77))
    value ^= np.uint32(seed * 0x27D4EB2F & 0xFFFFFFFF)
    for factor in (0x7FEB352D, 0x846CA68B):
        value ^= value >> np.uint32(15)
        value *= np.uint32(factor)
    value ^= value >> np.uint32(16)
    return value.astype(np.float64) / 4294967296.0


def roughness(x, y, wavelength, seed):
    """Gradient noise of about [-1, 1]: hashed directions at lattice points, blended by quintic steps."""
    turn = 0.6 + 0.7 * seed  # every layer's lattice lies another way, so that none shows
    u = (x * math.cos(turn) + y * math.sin(turn)) / wavelength + 17.3 * seed
    v = (y * math.cos(turn) - x * math.sin(turn)) / wavelength - 9.1 * seed
    i, j = np.floor(u).astype(np.int64), np.floor(v).astype(np.int64)
    s, t = u - i, v - j

    def corner(di, dj):
        angle = 2.0 * math.pi * hashed(i + di, j + dj, seed)
        return np.cos(angle) * (s - di) + np.sin(angle) * (t - dj)

    fade_s = s * s * s * (s * (6 * s - 15) + 10)
    fade_t = t * t * t * (t * (6 * t - 15) + 10)
    south = corner(0, 0) * (1 - fade_s) + corner(1, 0) * fade_s
    north = corner(0, 1) * (1 - fade_s) + corner(1, 1) * fade_s
    return 1.5 * (south * (1 - fade_t) + north * fade_t)


def ribbed(x, y, wavelength, seed):
    """Sharp crests and round hollows, in about [0, 1]."""
    return 1.0 - np.sqrt(roughness(x, y, wavelength, seed) ** 2 + 0.004)


def bump(x, y, x0, y0, spread_x, spread_y, turn_deg=0.0):
    c, s = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    a, b = (x - x0) * c + (y - y0) * s, -(x - x0) * s + (y - y0) * c
    return np.exp(-0.5 * ((a / spread_x) ** 2 + (b / spread_y) ** 2))


def step(distance, width):
    return 1.0 / (1.0 + np.exp(-distance / width))


def natural_ground(x, y):
    """The hill before anyone cut a trail into it, and before the gill wore its ravine."""
    height = 790.0 + 0.0024 * x
    height = height + 78.0 * step(y - 1030, 230)                   # from the valley to the shelf
    height = height + 190.0 * bump(x, y, 2900, 2500, 560, 460)      # the fell
    height = height + 90.0 * bump(x, y, 1800, 2800, 640, 300, 12)   # its western shoulder
    height = height + 70.0 * bump(x, y, 3950, 2250, 420, 380)       # the eastern rise
    # the horn behind it, out of every trail's way: a crest with ribs and gullies
    wild = step(y - 3010, 45) * (1 - step(np.abs(x - 2500) - 1450, 170))
    crest = 260.0 * bump(x, y, 2350, 3560, 700, 330) + 190.0 * bump(x, y, 3350, 3520, 420, 300)
    height = height + crest + wild * (95.0 * (ribbed(x, y, 640, 11) - 0.55) + 30.0 * (ribbed(x, y, 260, 12) - 0.6))
    # ribs and hollows on the fell's flanks, and shallow draws below the shelf
    flank = step(y - 1750, 110) * (1 - step(y - 2950, 80))
    height = height + flank * 34.0 * (ribbed(x, y, 620, 13) - 0.7)
    height = height + (1 - step(y - 1300, 90)) * step(y - 760, 60) * 9.0 * (ribbed(x, y, 430, 15) - 0.7)
    # the crag: a steep face that looks north-west over the way to Moss Refuge
    along = (x - 2050) * 0.55 + (y - 2480) * 0.83
    across = (x - 2050) * 0.83 - (y - 2480) * 0.55
    height = height + 120.0 * step(across, 30) * np.exp(-0.5 * (along / 300.0) ** 2) * (1 - step(x - 2450, 120))
    # the tarn: a flat bowl
    height = height - 18.0 * bump(x, y, 3180, 1760, 150, 110)
    for wavelength, size, seed in ((900, 20.0, 1), (380, 8.0, 2), (150, 2.2, 3), (60, 0.45, 4), (22, 0.08, 5)):
        height = height + size * roughness(x, y, wavelength, seed)
    return height


def gill_middle(y):
    """Where the ravine's middle lies, metres from the west."""
    return 3000 + 60 * np.sin(y / 260.0)


def gill(x, y):
    """The ravine that Gill Way bridges: how much lower it makes the ground."""
    return 24.0 * np.exp(-0.5 * ((x - gill_middle(y)) / 22.0) ** 2) * step(1050 - y, 120)


GRID_X = (np.arange(COLUMNS) + 0.5) * CELL
GRID_Y = (np.arange(ROWS) + 0.5) * CELL


def height_at(heights, x, y):
    column = min(max(x / CELL - 0.5, 0.0), COLUMNS - 1.001)
    row = min(max(y / CELL - 0.5, 0.0), ROWS - 1.001)
    i, j = int(column), int(row)
    s, t = column - i, row - j
    return ((heights[j, i] * (1 - s) + heights[j, i + 1] * s) * (1 - t)
            + (heights[j + 1, i] * (1 - s) + heights[j + 1, i + 1] * s) * t)


PITCH = 40.0
STEPS = [(dx, dy) for dx in range(-2, 3) for dy in range(-2, 3)
         if (dx, dy) != (0, 0) and math.gcd(abs(dx), abs(dy)) == 1]


HEADINGS = [math.atan2(dx, dy) for dx, dy in STEPS]


def bend(one, other):
    """Effort of changing from one step's heading to another's, in metres of easy driving."""
    turn = abs((HEADINGS[one] - HEADINGS[other] + math.pi) % (2 * math.pi) - math.pi)
    return 1e9 if turn > math.radians(100) else 90.0 * turn * turn


BENDS = [[bend(one, other) for other in range(len(STEPS))] for one in range(len(STEPS))]


def easiest_way(coarse, taken, start, goal, grade):
    """Least-effort way on a lattice of (place, heading): effort grows fast past the target grade."""
    rows, columns = coarse.shape
    first = (int(round(start[1] / PITCH)), int(round(start[0] / PITCH)))
    last = (int(round(goal[1] / PITCH)), int(round(goal[0] / PITCH)))
    effort, came = {(first, -1): 0.0}, {}
    queue = [(0.0, first, -1)]
    while queue:
        spent, here, heading = heapq.heappop(queue)
        if here == last:
            break
        if spent > effort[(here, heading)]:
            continue
        for index, (dx, dy) in enumerate(STEPS):
            row, column = here[0] + dy, here[1] + dx
            if not (2 <= row < rows - 2 and 2 <= column < columns - 2):
                continue
            turn = BENDS[heading][index] if heading >= 0 else 0.0
            if turn >= 1e9:
                continue
            run = PITCH * math.hypot(dx, dy)
            rise = abs(coarse[row, column] - coarse[here]) / run
            cost = spent + turn + run * (1.0 + (rise / grade) ** 4) * (1.0 + taken[row, column])
            there = ((row, column), index)
            if cost < effort.get(there, 1e300):
                effort[there] = cost
                came[there] = (here, heading)
                heapq.heappush(queue, (cost, (row, column), index))
    state, path = (here, heading), []
    while state in came:
        path.append(state[0])
        state = came[state]
    path.append(first)
    return [(column * PITCH, row * PITCH) for row, column in reversed(path)]


def rounded_corners(points, rounds):
    for _ in range(rounds):
        smooth = [points[0]]
        for (x0, y0), (x1, y1) in zip(points, points[1:]):
            smooth.append((0.75 * x0 + 0.25 * x1, 0.75 * y0 + 0.25 * y1))
            smooth.append((0.25 * x0 + 0.75 * x1, 0.25 * y0 + 0.75 * y1))
        smooth.append(points[-1])
        points = smooth
    return points


def resampled(points, spacing):
    array = np.array(points)
    lengths = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(array, axis=0).T))])
    count = max(2, int(round(lengths[-1] / spacing)) + 1)
    at = np.linspace(0.0, lengths[-1], count)
    return np.column_stack([np.interp(at, lengths, array[:, 0]), np.interp(at, lengths, array[:, 1])])


def out_of(station, bearing, far):
    x, y = STATIONS[station][:2]
    return (x + far * math.sin(math.radians(bearing)), y + far * math.cos(math.radians(bearing)))


ZIGZAG = ((1960.0, 1600.0), (2020.0, 1850.0))
HAIRPINS, HAIRPIN_M = 4, 8.0


def zigzag(start, goal):
    """A ladder of hairpins up the middle of the way: wide enough for a carrier alone, on a trail so
    narrow that a trailer would leave it on the inside."""
    start, goal = np.array(start, dtype=float), np.array(goal, dtype=float)
    along = goal - start
    length = math.hypot(*along)
    along = along / length
    side = np.array([-along[1], along[0]])
    corners = [start]
    for k in range(HAIRPINS):
        swing = -110.0 if k % 2 == 0 else 110.0
        corners.append(start + along * length * (k + 0.5) / HAIRPINS + side * swing)
    corners.append(goal)
    points = [corners[0]]
    for before, corner, after in zip(corners, corners[1:], corners[2:]):
        points += arc(before, corner, after)
    points.append(corners[-1])
    return [tuple(point) for point in points]


def arc(before, corner, after):
    """Points every half metre on the arc of a hairpin, which touches both of its rungs."""
    to_before = (before - corner) / math.hypot(*(before - corner))
    to_after = (after - corner) / math.hypot(*(after - corner))
    half_angle = math.acos(float(np.dot(to_before, to_after))) / 2
    middle = corner + (to_before + to_after) / math.hypot(*(to_before + to_after)) * HAIRPIN_M / math.sin(half_angle)
    first = corner + to_before * HAIRPIN_M / math.tan(half_angle) - middle
    last = corner + to_after * HAIRPIN_M / math.tan(half_angle) - middle
    turn = math.atan2(first[0] * last[1] - first[1] * last[0], float(np.dot(first, last)))
    steps = int(abs(turn) * HAIRPIN_M / 0.5)
    points = []
    for k in range(steps + 1):
        angle = turn * k / steps
        c, s = math.cos(angle), math.sin(angle)
        points.append(middle + np.array([first[0] * c - first[1] * s, first[0] * s + first[1] * c]))
    return points


def with_fine_bends(points):
    """A point every 3 m, and every half metre in bends, so that a hairpin is drawn as round as it is."""
    fine = resampled(points, 0.5)
    heading = np.unwrap(np.arctan2(*np.diff(fine, axis=0).T))
    reach = 6
    turning = np.zeros(len(fine), dtype=bool)
    turning[reach:-reach] = np.abs(heading[2 * reach - 1:] - heading[:-2 * reach + 1]) > 0.3
    keep = turning | (np.arange(len(fine)) % reach == 0)
    keep[-1] = True
    return fine[keep]


def opened(line, spacing, least_radius):
    """Eases a line where it turns more tightly than a radius: its points there give way."""
    line = line.copy()
    for _ in range(400):
        turn = np.abs(np.diff(np.unwrap(np.arctan2(*np.diff(line, axis=0).T))))
        tight = np.flatnonzero(turn > spacing / least_radius) + 1
        if len(tight) == 0:
            break
        near = np.unique(np.clip(np.concatenate([tight - 1, tight, tight + 1]), 1, len(line) - 2))
        line[near] += 0.5 * ((line[near - 1] + line[near + 1]) / 2 - line[near])
    return line


def lattice_of(heights):
    rows, columns = int(HEIGHT_M / PITCH) + 1, int(WIDTH_M / PITCH) + 1
    return np.array([[height_at(heights, column * PITCH, row * PITCH) for column in range(columns)]
                     for row in range(rows)])


def way_of(name, coarse, taken, gates, grade):
    """Corner points of a trail between its two gates."""
    if name == "Crow Zigzag":
        foot, top = ZIGZAG
        return (easiest_way(coarse, taken, gates[0], foot, 0.10)[:-1] + zigzag(foot, top)
                + easiest_way(coarse, taken, top, gates[1], 0.075)[1:])
    stops = [gates[0]] + THROUGH.get(name, []) + [gates[1]]
    way = [stops[0]]
    for begin, end in zip(stops, stops[1:]):
        way += easiest_way(coarse, taken, begin, end, grade)[1:-1] + [end]
    return way


def draw_trails(heights):
    """Lays every trail over the hill, then shapes all their benches at once; returns the lines. The
    zigzag comes last, and is drawn finer than it is shaped."""
    lines, levels = {}, {}
    coarse = lattice_of(heights)
    taken = np.zeros(coarse.shape)
    lattice_x, lattice_y = np.meshgrid(np.arange(taken.shape[1]) * PITCH, np.arange(taken.shape[0]) * PITCH)
    for x, y, _, _ in STATIONS.values():
        taken += 3.0 * np.exp(-0.5 * (np.hypot(lattice_x - x, lattice_y - y) / 50.0) ** 2)
    # nobody lays a trail through the tarn on purpose
    taken += 60.0 * np.exp(-0.5 * (np.hypot(lattice_x - 3180, lattice_y - 1760) / 90.0) ** 2)
    for name, begin, out, end, back, grade, _ in TRAILS:
        gates = (out_of(begin, out, 70), out_of(end, back, 70))
        lattice = coarse if name == "Gill Way" else coarse - gill(lattice_x, lattice_y)
        way = way_of(name, lattice, taken, gates, grade)
        points = [STATIONS[begin][:2], gates[0]] + way[1:-1] + [gates[1], STATIONS[end][:2]]
        rounds, spacing = (4, 3.0) if name == "Crow Zigzag" else (4, 8.0)
        rounded = rounded_corners(points, rounds)
        line = resampled(rounded, spacing)
        if name == "Tarn Loop":
            line = resampled(opened(line, spacing, 14.0), spacing)
        ground = np.array([height_at(heights, x, y) for x, y in line])
        held = held_levels(line, [(lines[other], levels[other]) for other in lines if other not in UNBENCHED], ground)
        lines[name], levels[name] = line, eased_profile(held, ground, spacing, grade)
        near = np.full(taken.shape, 1e9)
        for x, y in line[::3]:
            near = np.minimum(near, np.hypot(lattice_x - x, lattice_y - y))
        taken += 9.0 * np.exp(-0.5 * (near / 42.0) ** 2)
    shape_benches(heights, [(lines[name], levels[name]) for name in lines if name not in UNBENCHED])
    lines["Crow Zigzag"] = with_fine_bends(rounded)
    return lines


def held_levels(line, earlier, ground):
    """Levels that must stay, NaN elsewhere: the yards at both ends, and beside earlier trails theirs."""
    spacing = math.hypot(*(line[1] - line[0]))
    at = np.arange(len(line)) * spacing
    held = np.full(len(line), np.nan)
    held[at < 45.0] = ground[0]
    held[at > at[-1] - 45.0] = ground[-1]
    for other, level in earlier:
        for index, (x, y) in enumerate(line):
            away = np.hypot(other[:, 0] - x, other[:, 1] - y)
            nearest = int(np.argmin(away))
            if away[nearest] < 30.0 and np.isnan(held[index]):
                held[index] = level[nearest]
    return held


def eased_profile(held, ground, spacing, grade):
    """Evens the levels along a line, held ones kept, until no step is steeper than the grade."""
    fixed = ~np.isnan(held)
    eased = np.where(fixed, held, ground)
    width = max(3, int(round(50.0 / spacing)))
    kernel = np.hanning(2 * width + 1)
    kernel /= kernel.sum()
    for _ in range(60):
        padded = np.concatenate([np.full(width, eased[0]), eased, np.full(width, eased[-1])])
        eased = np.where(fixed, held, np.convolve(padded, kernel, mode="valid"))
        if np.max(np.abs(np.diff(eased))) <= grade * spacing:
            break
    return eased


def shape_benches(heights, trails):
    """Level benches 20 m wide along all lines, eased into the hillside over 26 m more. Where lines
    come close, each place takes the mean of their levels, the nearer weighing more."""
    nearest = np.full(heights.shape, 1e9)
    weights, weighted = np.zeros(heights.shape), np.zeros(heights.shape)
    reach = int(36 / CELL) + 1
    for line, levels in trails:
        fine = resampled([tuple(p) for p in line], 2.0)
        level_at = np.interp(np.linspace(0, 1, len(fine)), np.linspace(0, 1, len(levels)), levels)
        for (x, y), level in zip(fine, level_at):
            i, j = int(x / CELL), int(y / CELL)
            window = (slice(max(0, j - reach), min(ROWS, j + reach + 1)),
                      slice(max(0, i - reach), min(COLUMNS, i + reach + 1)))
            away = np.hypot(GRID_X[window[1]][None, :] - x, GRID_Y[window[0]][:, None] - y)
            weight = np.exp(-0.5 * (away / 6.0) ** 2) + 1e-9
            nearest[window] = np.minimum(nearest[window], away)
            weights[window] += weight
            weighted[window] += weight * level
    blend = np.clip((36.0 - nearest) / 26.0, 0.0, 1.0)
    blend = blend * blend * (3 - 2 * blend)
    inside = nearest < 36.0
    heights[inside] = (heights[inside] * (1 - blend[inside])
                       + weighted[inside] / weights[inside] * blend[inside])


def level_stations(heights):
    for x, y, _, _ in STATIONS.values():
        away = np.hypot(GRID_X[None, :] - x, GRID_Y[:, None] - y)
        blend = np.clip((95.0 - away) / 70.0, 0.0, 1.0)
        blend = blend * blend * (3 - 2 * blend)
        heights[:] = heights * (1 - blend) + height_at(heights, x, y) * blend


def chainage_point(line, share):
    lengths = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    at = share * lengths[-1]
    return [float(np.interp(at, lengths, line[:, 0])), float(np.interp(at, lengths, line[:, 1]))]


def piece_of(line, share_a, share_b):
    return [chainage_point(line, s) for s in np.linspace(share_a, share_b, 9)]


def to_globe(points):
    utm, globe = osr.SpatialReference(), osr.SpatialReference()
    utm.ImportFromEPSG(EPSG)
    globe.ImportFromEPSG(4326)
    for system in (utm, globe):
        system.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    transform = osr.CoordinateTransformation(utm, globe)
    return [[round(v, 8) for v in transform.TransformPoint(WEST + x, SOUTH + y)[:2]] for x, y in points]


def write_layer(path, what, features):
    document = {"type": "FeatureCollection", "name": what,
                "features": [{"type": "Feature", "properties": properties,
                              "geometry": {"type": kind,
                                           "coordinates": (to_globe(points)[0] if kind == "Point" else
                                                           [to_globe(points)] if kind == "Polygon" else to_globe(points))}}
                             for kind, points, properties in features]}
    with open(path, "w", encoding="utf-8") as out:
        json.dump(document, out, ensure_ascii=False, indent=1)
        out.write("\n")


def trail_features(lines):
    hours = {"Noon Run": ("06:00", "12:00"), "Piste Link": ("16:30", "24:00")}
    for name, _, _, _, _, _, attributes in TRAILS:
        begin, end = hours.get(name, ("00:00", "24:00"))
        properties = dict(attributes, name=name, open_from=begin, open_to=end, error_m=0.5,
                          sight_m=60.0 if attributes["lanes"] == 2 else 40.0, marker_m=50.0)
        yield "LineString", [tuple(p) for p in lines[name]], properties


def crossing_of(line, middle_at):
    """The share of the line at which it crosses the ravine's middle."""
    lengths = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    middle = middle_at(line[:, 1])
    index = int(np.argmin(np.abs(line[:, 0] - middle)))
    return lengths[index] / lengths[-1]


# trail, name, share of its length. Single lanes driven both ways have nowhere to pass for at most
# 1300 m, but for Void Cut, which is to be closed for that too.
PASSING_PLACES = [
    ("Birk Climb", "Birk Bay", 0.30),
    ("Cable Up", "Cable Bay", 0.50),
    ("Gill Way", "Gill Bay", 0.45),
    ("Tarn Loop", "Loop Bay", 0.50),
    ("Top Road", "Fell Bay", 0.35),
    ("Top Road", "Crow Bay", 0.80),
    ("Moss Low", "Low Bay", 0.35),
    ("Moss Low", "Bog Bay", 0.68),
    ("Crag Foot", "Crag Bay", 0.28),
    ("Crag Foot", "Apron Bay", 0.64),
    ("Ridge Way", "Ridge Bay", 0.50),
    ("Sidehill", "Hill Bay", 0.50),
    ("Crow Zigzag", "First Bay", 0.30),
    ("Crow Zigzag", "Second Bay", 0.65),
]


def mark_features(lines):
    gill = crossing_of(lines["Gill Way"], gill_middle)
    length = float(np.sum(np.hypot(*np.diff(lines["Gill Way"], axis=0).T)))
    half = 75.0 / length

    def at(kind, name, trail, share, **more):
        return "Point", [chainage_point(lines[trail], share)], dict(more, name=name, kind=kind, trail=trail)

    def along(kind, name, trail, share_a, share_b, **more):
        return "LineString", piece_of(lines[trail], share_a, share_b), dict(more, name=name, kind=kind, trail=trail)

    surveyed = {"surveyed": "2026-01-10T10:00:00Z", "inspected": "2026-01-31T22:30:00Z"}
    yield along("bridge", "Gill Bridge", "Gill Way", gill - half, gill + half,
                grade_deg=1.5, cross_deg=0.5, sd_deg=0.3, most_kg=2500.0, **surveyed)
    yield along("bench", "Tarn Shelf", "Tarn Traverse", 0.45, 0.55,
                grade_deg=3.0, cross_deg=2.0, sd_deg=0.4, **surveyed)
    yield at("piste_crossing", "Lower Piste", "Lodge Traverse", 0.40)
    yield at("piste_crossing", "Nursery Piste", "Piste Link", 0.30)
    yield at("road_crossing", "Service Road", "Shed Lane", 0.50)
    yield along("winch_cable", "Fell Winch", "Top Road", 0.55, 0.75)
    yield along("blasting", "Crag Control", "Crag Foot", 0.30, 0.60)
    yield at("gate", "Cable Gate", "Cable Up", 0.08)
    yield along("radio_gate", "Tarn Gate", "Tarn Traverse", 0.05, 0.40)
    yield along("creek_bridge", "Moss Ford", "Moss Way", 0.45, 0.49,
                grade_deg=3.0, cross_deg=2.0, sd_deg=0.5, most_kg=1900.0, **surveyed)
    yield along("cornice", "Ridge Cornice", "Ridge Way", 0.60, 0.80, room_m=13.0, side="right")
    yield along("drop", "Zigzag Edge", "Crow Zigzag", 0.35, 0.50, room_m=5.0, side="right")
    yield along("dead_zone", "Gill Shadow", "Gill Way", 0.55, 0.80)
    yield along("dead_zone", "Moss Shadow", "Moss Low", 0.30, 0.60)
    yield at("refuge", "Shelf Bothy", "Lodge Traverse", 0.60)
    yield at("refuge", "Tarn Box", "Tarn Traverse", 0.60)
    yield at("turning_room", "Traverse Loop", "Lodge Traverse", 0.62, room_m=14.0)
    yield at("turning_room", "Birk Loop", "Birk Climb", 0.50, room_m=14.0)
    for trail, bay, share in PASSING_PLACES:
        yield at("passing_place", bay, trail, share)
    yield at("check_in", "Midway Call", "Cable Up", 0.97)
    yield at("check_in", "Gill Call", "Gill Way", 0.52)
    yield at("check_in", "Climb Call", "Birk Climb", 0.50)


def outline(*points):
    return list(points) + [points[0]]


def zone_features():
    yield "Polygon", outline((1870, 2280), (2180, 2330), (2290, 2620), (2130, 2790), (1900, 2560)), {
        "name": "Crag Face", "kind": "release_area"}
    yield "Polygon", outline((1560, 2330), (1870, 2280), (1900, 2560), (2130, 2790), (1880, 2900), (1600, 2640)), {
        "name": "Crag Apron", "kind": "runout"}
    yield "Polygon", outline((3070, 1690), (3290, 1690), (3310, 1840), (3050, 1840)), {
        "name": "The Tarn", "kind": "forbidden"}
    yield "Polygon", outline((480, 400), (780, 400), (780, 640), (480, 640)), {
        "name": "Cable Yard", "kind": "speed_limit", "speed_kmh": 10.0}
    yield "Polygon", outline((2360, 1320), (2600, 1320), (2600, 1530), (2360, 1530)), {
        "name": "Lodge Yard", "kind": "speed_limit", "speed_kmh": 10.0}
    yield "Polygon", outline((600, 1540), (1520, 1540), (1460, 1780), (610, 1780)), {
        "name": "Moss Flat", "kind": "open_ground", "width_m": 6.0, "lanes": 2, "skiers": "no",
        "open_from": "07:00", "open_to": "18:00", "error_m": 2.0, "visibility_m": 300.0}


def write_heights(path, heights):
    raster = gdal.GetDriverByName("GTiff").Create(
        path, COLUMNS, ROWS, 1, gdal.GDT_Float32,
        ["COMPRESS=DEFLATE", "PREDICTOR=3", "TILED=YES", "BLOCKXSIZE=256", "BLOCKYSIZE=256", "ZLEVEL=9"])
    frame = osr.SpatialReference()
    frame.ImportFromEPSG(EPSG)
    raster.SetProjection(frame.ExportToWkt())
    raster.SetGeoTransform([WEST, CELL, 0.0, SOUTH + HEIGHT_M, 0.0, -CELL])
    band = raster.GetRasterBand(1)
    band.SetNoDataValue(NODATA)
    band.SetUnitType("m")
    band.SetDescription("invented heights of Marrowfell")
    band.WriteArray(heights[::-1].astype(np.float32))
    raster = None


def main():
    root = sys.argv[1] if len(sys.argv) > 1 else os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
    heights = natural_ground(*np.meshgrid(GRID_X, GRID_Y))
    level_stations(heights)
    lines = draw_trails(heights)
    heights -= gill(*np.meshgrid(GRID_X, GRID_Y))
    heights = np.round(heights, 2)
    hole = chainage_point(lines["Void Cut"], 0.5)
    away = np.hypot(GRID_X[None, :] - hole[0], GRID_Y[:, None] - hole[1])
    heights[away < 45.0] = NODATA
    site = os.path.join(root, "routes", "marrowfell")
    os.makedirs(site, exist_ok=True)
    os.makedirs(os.path.join(root, "dem-samples"), exist_ok=True)
    write_heights(os.path.join(root, "dem-samples", "marrowfell.tif"), heights)
    write_layer(os.path.join(site, "trails.geojson"), "trails", trail_features(lines))
    write_layer(os.path.join(site, "stations.geojson"), "stations",
                (("Point", [(x, y)], {"name": name, "kind": kind, "turning_m": float(room)})
                 for name, (x, y, kind, room) in STATIONS.items()))
    write_layer(os.path.join(site, "zones.geojson"), "zones", zone_features())
    write_layer(os.path.join(site, "marks.geojson"), "marks", mark_features(lines))


if __name__ == "__main__":
    main()
