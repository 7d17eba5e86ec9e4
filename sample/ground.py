# SPDX-License-Identifier: GPL-3.0-or-later
"""The invented yards: ground, stands, what stands around them, flows. Metres from the south-west
corner, y to the top of the drawing; directions clockwise from north."""
import math
from dataclasses import dataclass, field


@dataclass
class Yard:
    code: str
    name: str
    latitude: float
    longitude: float
    width: int
    length: int
    north: int
    elevation: int
    warmer: float  # degrees against the lower ground
    access: str
    notes: str
    stands: list = field(default_factory=list)  # (name, kind, x, y, angle, entrance, hives)
    features: list = field(default_factory=list)


def row(letter, kind, count, x, y, step_x, step_y, angle, entrance, hives):
    return [(f"{letter}{i + 1}", kind, x + i * step_x, y + i * step_y, angle, entrance, hives)
            for i in range(count)]


YARDS = [
    Yard("AB", "Alder Bend", 45.118, -97.642, 46, 34, 0, 402, 0.2,
         "Gravel lane from the county road, firm in all weather. Close the field gate.",
         "Alders and willows along the brook to the north.",
         row("A", "pallet_4", 3, 9, 23, 8.5, 0.3, 0, 170, 4)
         + row("B", "pallet_4", 3, 9.6, 14, 8.5, 0.2, 3, 170, 4),
         [("gate", 43, 5, None, None, ""), ("truck", 36, 8, None, None, "turn round here"),
          ("water", 24, 31.5, None, None, "brook"), ("fence", 2, 2, 44, 2, ""),
          ("fence", 2, 2, 2, 29, "")]),
    Yard("KM", "Kettle Marsh", 45.034, -97.581, 40, 36, 12, 388, -0.3,
         "Soft after rain: leave the truck at the gate.", "Open to the west, low ground.",
         row("A", "pallet_2", 5, 7, 24, 5.6, 0.4, 0, 160, 2)
         + row("B", "pallet_2", 5, 7.5, 15.5, 5.6, 0.4, 0, 160, 2),
         [("gate", 37, 4, None, None, ""), ("truck", 33, 6, None, None, "hard standing"),
          ("water", 5, 33, None, None, "ditch"), ("fence", 2, 3, 34, 3, "")]),
    Yard("LK", "Larch Knoll", 45.201, -97.733, 38, 28, -8, 455, -0.8,
         "Farm track, 1.2 km, chained from November to April: ask at the house for the key.",
         "Snow lies long on the track.",
         row("A", "stand", 4, 6.5, 17.5, 7.5, -0.6, 5, 150, 4),
         [("gate", 3, 4, None, None, "chain"), ("truck", 8, 6, None, None, ""),
          ("fence", 2, 2, 36, 2, ""), ("fence", 36, 2, 36, 25, "")]),
    Yard("NH", "North Hollow", 45.274, -97.618, 42, 32, 20, 471, -4.0,
         "Steep last bend; chains in snow. Two wheel tracks through the wood.",
         "Frost hollow: a week behind the other yards.",
         row("A", "pallet_4", 3, 9, 21, 9, -0.4, -4, 190, 4)
         + row("B", "pallet_4", 2, 12, 12, 9, 0, -4, 190, 4),
         [("gate", 39, 16, None, None, ""), ("truck", 34, 15, None, None, ""),
          ("water", 5, 5, None, None, "spring"), ("fence", 3, 28, 39, 28, "wood's edge")]),
    Yard("SO", "Sorrel Orchard", 45.087, -97.497, 52, 30, 0, 396, 0.5,
         "Through the orchard yard; say when you come during bloom.",
         "Apples from mid May, sprayed: hives may have to be shut in.",
         row("A", "stand", 4, 8, 20, 9, 0, 0, 175, 3)
         + row("B", "stand", 5, 6.5, 11, 8.6, 0.2, 0, 175, 2),
         [("gate", 49, 26, None, None, ""), ("truck", 44, 24, None, None, ""),
          ("water", 48, 4, None, None, "trough"), ("fence", 2, 28, 45, 28, "hedge")]),
    Yard("TR", "Tarrow Ridge", 45.152, -97.554, 44, 36, -5, 421, 0.0,
         "Gravel to the gate, then grass. Bull in the next field in summer.",
         "Hedge to the north and west, sun from nine.",
         row("A", "pallet_2", 6, 6.5, 26, 5.8, 0.2, 0, 165, 2)
         + row("B", "pallet_2", 5, 8, 18, 6.2, 0.2, 0, 165, 2)
         + row("C", "pallet_4", 1, 12, 9, 0, 0, 0, 165, 4),
         [("gate", 41, 6, None, None, ""), ("truck", 34, 8, None, None, ""),
          ("water", 3.5, 8, None, None, "barrel, fill it"), ("fence", 2, 33, 42, 33, "hedge"),
          ("fence", 2, 10, 2, 33, "hedge")]),
    Yard("WF", "Willow Ford", 45.009, -97.689, 48, 32, 3, 379, 0.8,
         "Ford is too deep above the white post. Good ground.",
         "First pollen of all yards: willows from the end of March.",
         row("A", "pallet_4", 4, 8, 20, 9.5, 0.3, 2, 155, 4)
         + row("B", "stand", 2, 10, 10.5, 12, 0.2, 0, 155, 3),
         [("gate", 4, 4, None, None, ""), ("truck", 8, 6, None, None, ""),
          ("water", 44, 28, None, None, "river"), ("fence", 3, 29, 38, 31, "")]),
]

# Day of the year from, to, nectar, pollen. Invented, after the course of a northern prairie edge;
# asters give pollen into the middle of October.
FLOWS = [(95, 107, 0.0, 1.0), (108, 124, 0.5, 2.0), (125, 146, 1.5, 2.5), (147, 163, 0.5, 1.5),
         (164, 214, 3.0, 2.0), (215, 232, 1.0, 1.5), (233, 262, 1.5, 2.0), (263, 274, 0.5, 1.5),
         (275, 290, 0.0, 1.0), (291, 94, 0.0, 0.0)]


def turned(x, y, angle):
    a = math.radians(angle)
    return x * math.cos(a) + y * math.sin(a), y * math.cos(a) - x * math.sin(a)


def spots(yard):
    """The spots for hives in walking order: x, y, entrance, stand."""
    out = []
    for name, kind, x, y, angle, entrance, hives in yard.stands:
        if kind == "pallet_4":
            offsets = [(-0.3, -0.35, 0), (0.3, -0.35, 0), (-0.3, 0.35, 180), (0.3, 0.35, 180)]
        elif kind == "pallet_2":
            offsets = [(-0.35, 0, 0), (0.35, 0, 0)]
        else:
            offsets = [(0.75 * (i - (hives - 1) / 2), 0, 0) for i in range(hives)]
        for dx, dy, turn in offsets:
            tx, ty = turned(dx, dy, angle)
            out.append((round(x + tx, 2), round(y + ty, 2), (entrance + turn) % 360, name))
    return out


def add_ground(tables):
    for y in YARDS:
        tables.add("yards", yard=y.code, name=y.name, latitude=y.latitude, longitude=y.longitude,
                   width_m=y.width, length_m=y.length, north_deg=y.north, elevation_m=y.elevation,
                   access=y.access, notes=y.notes)
        for name, kind, sx, sy, angle, _, _ in y.stands:
            tables.add("stands", stand=name, yard=y.code, x_m=round(sx, 2), y_m=round(sy, 2),
                       angle_deg=angle, kind=kind)
        count = {}
        for kind, fx, fy, x2, y2, notes in y.features:
            count[kind] = count.get(kind, 0) + 1
            number = f"-{count[kind]}" if kind == "fence" else ""
            tables.add("features", feature=f"{y.code}-{kind}{number}", yard=y.code, kind=kind,
                       x_m=fx, y_m=fy, x2_m=x2, y2_m=y2, notes=notes)
        for first, last, nectar, pollen in FLOWS:
            if y.code == "NH":  # spring comes late there, the rest of the year less so
                first = {95: 116, 108: 124, 275: 275, 291: 291}.get(first, first + 6)
                last = {107: 123, 94: 115, 274: 274, 290: 290}.get(last, last + 6)
            tables.add("flows", yard=y.code, from_day=first, to_day=last, nectar=nectar,
                       pollen=pollen)
