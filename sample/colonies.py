# SPDX-License-Identifier: GPL-3.0-or-later
"""Who lives in which hive, and how each of them fared: the invented truth behind the journal."""
from dataclasses import dataclass, field

from chance import Chance, steps
from ground import YARDS, spots

# What the round of late April finds, by yard. The hives of a yard are dealt out at random, apart
# from the few in PINNED that the walk through the program speaks of.
FATES = {
    "AB": {"strong": 7, "fair": 6, "small": 4, "queenless": 1, "drone_layer": 1, "tiny": 1,
           "dead": 3, "united": 1},
    "KM": {"efb": 1, "strong": 5, "fair": 6, "small": 4, "queenless": 1, "dead": 3},
    "LK": {"unseen": 9, "lid": 5, "dead": 2},
    "NH": {"strong": 4, "fair": 4, "small": 3, "early": 4, "scattered": 1, "dead": 4},
    "SO": {"strong": 5, "fair": 5, "small": 3, "drone_layer": 1, "nosema": 1, "queenless": 1,
           "upper": 1, "dead": 4, "united": 1},
    "TR": {"strong": 7, "fair": 6, "small": 5, "scattered": 1, "laying_workers": 1, "tiny": 1,
           "upper": 1, "dead": 4},
    "WF": {"strong": 6, "fair": 6, "small": 2, "chalk": 1, "scattered": 1, "laying_workers": 1,
           "tiny": 1, "dead": 4},
}
PINNED = {"TR-02": "small", "TR-03": "strong", "TR-07": "upper", "TR-08": "strong",
          "AB-05": "small", "AB-06": "strong", "SO-11": "upper", "SO-12": "strong",
          "NH-13": "fair", "KM-09": "efb"}
PINNED_SEAMS = {"TR-02": 2.25, "TR-03": 9.0, "AB-05": 2.0, "AB-06": 8.5}
# The colonies that stand over a neighbour since April: hive they came from -> hive below.
STACKS = {"TR-07": "TR-08", "SO-11": "SO-12"}
# United in September, because too small to winter: hive that was given up -> hive that stayed.
UNITED_INTO = {}

LINES = ["Ridge", "Knoll grey", "Ford 7", "Brook"]
CAUSES = [
    ("starved: stores out of reach of the cluster", "sound combs kept for spring"),
    ("starved: no stores left", "combs kept, cleaned"),
    ("too small a cluster, frozen", "combs kept, brushed"),
    ("queen failed in autumn", "combs kept"),
    ("mites: few bees, spotted brood", "brood combs melted, outer combs kept"),
    ("dysentery, combs soiled", "all combs melted"),
    ("mice in the lower chamber", "chewed combs melted, the others kept"),
    ("cause not known", "combs set aside, not used"),
]


@dataclass
class Colony:
    hive: str
    yard: str
    x: float
    y: float
    entrance: int
    stand: str
    fate: str
    frame_type: str = "langstroth_deep"
    deeps: int = 2
    queen: str = ""
    queen_year: int = 2025
    line: str = ""
    autumn_seams: float = 0  # in mid-September, from above, all boxes
    winter_seams: float = 0  # in late October, when the cluster draws together
    autumn_kg: float = 0
    supers: int = 1
    seams: float = 0  # in late April, from above, all boxes
    kg: float = 0  # stores in late April
    combs: bool = False  # read comb by comb
    died_on: object = None
    cause: tuple = field(default_factory=tuple)

    @property
    def lives(self):
        return self.fate not in ("dead", "united")

    def chance(self, *what):
        return Chance(self.hive, *what)


SEAMS = {"strong": (7, 10.25), "fair": (5, 6.75), "small": (1.25, 4), "tiny": (0.4, 0.8),
         "queenless": (2.5, 5.5), "drone_layer": (1.5, 3), "laying_workers": (1.5, 2.75),
         "scattered": (3, 5.25), "efb": (3, 4), "chalk": (7, 8), "nosema": (2, 3),
         "early": (2, 4.5), "unseen": (4, 9), "lid": (2.5, 9), "upper": (1.5, 2.25)}


# The queen failed, or disease came, after the autumn looks.
FAILED = ("queenless", "drone_layer", "laying_workers", "nosema", "efb")


def make_colonies():
    out = []
    for yard in YARDS:
        places = spots(yard)
        names = [f"{yard.code}-{i + 1:02d}" for i in range(len(places))]
        left = [fate for fate, count in FATES[yard.code].items() for _ in range(count)]
        for name in names:
            if name in PINNED:
                left.remove(PINNED[name])
        left = Chance("fates", yard.code).shuffled(left)
        for name, (x, y, entrance, stand) in zip(names, places):
            fate = PINNED[name] if name in PINNED else left.pop()
            out.append(make_colony(Colony(name, yard.code, x, y, entrance, stand, fate)))
        assert not left, yard.code
        here = [c for c in out if c.yard == yard.code]
        for c in here:
            if c.fate == "united":
                strong = [d for d in here if d.fate == "fair" and d.deeps == 2
                          and d.hive not in UNITED_INTO.values()]
                near = min(strong, key=lambda d: (abs(d.x - c.x) + abs(d.y - c.y), d.hive))
                UNITED_INTO[c.hive] = near.hive
        choose_combs(here)
    name_queens(out)
    return out


def make_colony(c):
    r = c.chance("made")
    if c.yard == "WF" and c.stand.startswith("B"):
        c.frame_type, c.deeps = "dadant_brood", 1
    elif c.fate in ("upper", "united") or c.fate in ("small", "tiny", "nosema") and r.yes(0.4):
        c.deeps = 1
    c.supers = r.whole(1, 2) if c.fate in ("strong", "fair", "lid", "unseen") else r.whole(0, 1)
    # Draws passed over, so that those that follow stay as they are.
    for _ in range(2 if c.fate == "united" else 1):
        r.between(0, 1)
    c.autumn_kg = r.between(30, 38) if c.deeps == 2 else r.between(20, 25)
    if c.frame_type == "dadant_brood":
        c.autumn_kg = r.between(24, 29)
    c.queen_year = 2025 if r.yes(0.5) else (2024 if r.yes(0.75) else 2023)
    if c.fate in ("drone_layer", "scattered"):
        c.queen_year = 2023 if r.yes(0.6) else 2024
    c.line = r.pick(LINES)
    if c.fate in SEAMS:
        c.seams = PINNED_SEAMS.get(c.hive, steps(r.between(*SEAMS[c.fate]), 0.25))
        if c.deeps == 1:
            c.seams = min(c.seams, 9.0)
        used = r.between(11, 14) + 0.75 * c.seams  # a winter's food, more for a big colony
        c.kg = max(2.5, c.autumn_kg - used) if c.deeps == 2 else max(3.5, c.autumn_kg - used + 4)
        if c.fate == "small":
            c.kg = max(c.kg, r.between(9, 13) if c.deeps == 2 else r.between(7, 10))
        if c.fate == "strong" and r.yes(0.2):
            c.kg = r.between(3, 4.5)
    if c.fate == "dead":
        c.cause = r.pick(CAUSES)
    size_autumn(c)
    return c


def size_autumn(c):
    """Bees of September and October. What is strong in April was mostly strong in September, with
    a wide scatter (common practice, no source); a queen that failed in winter says nothing of the
    autumn before. By late October the cluster has drawn together, a small one more."""
    r = c.chance("September")
    if c.fate == "united":
        seams = r.between(2.5, 3.5)
    elif c.fate == "dead":
        seams = r.between(4, 8.5) if r.yes(0.6) else r.between(8.5, 14)
    elif c.fate in FAILED:
        seams = r.between(6, 10)
    else:
        seams = 2.6 + 1.5 * c.seams + 1.3 * r.normal()
    most = 18.5 if c.deeps == 2 else (10 if c.frame_type == "dadant_brood" else 8.5)
    c.autumn_seams = steps(min(max(seams, 5 if c.lives else 2.5), most), 0.5)
    left = r.between(0.74, 0.88) if c.autumn_seams >= 9 else r.between(0.65, 0.8)
    c.winter_seams = steps(c.autumn_seams * left, 0.5)


def choose_combs(here):
    """About three in a yard are read comb by comb, small ones and possible donors."""
    wanted = {"AB": {"strong": 3, "small": 3, "fair": 1}, "TR": {"strong": 3, "small": 2},
              "SO": {"strong": 2, "small": 2}, "NH": {"strong": 1, "small": 1},
              "WF": {"strong": 1}, "KM": {"efb": 1}}
    for fate, count in wanted.get(here[0].yard, {}).items():
        fitting = [c for c in here if c.fate == fate and c.frame_type == "langstroth_deep"]
        fitting.sort(key=lambda c: (c.hive not in PINNED, c.hive))
        for c in fitting[:count]:
            c.combs = True


def name_queens(colonies):
    number = {2023: 0, 2024: 0, 2025: 0}
    for c in colonies:
        number[c.queen_year] += 1
        c.queen = f"Q{c.queen_year % 100}-{number[c.queen_year]:03d}"


def add_queens(tables, colonies):
    mothers = {"Ridge": "Q22-004", "Knoll grey": "Q23-101", "Ford 7": "Q22-011",
               "Brook": "Q21-009"}
    for line, queen in mothers.items():
        tables.add("queens", queen=queen, line=line, year=2000 + int(queen[1:3]), origin="own",
                   marked=True, notes="breeder")
    for c in colonies:
        r = c.chance("queen")
        bought = c.line == "Knoll grey" and c.queen_year == 2024
        tables.add("queens", queen=c.queen, line=c.line, year=c.queen_year,
                   mother=None if bought else mothers[c.line],
                   origin="bought" if bought else r.pick(["own", "own", "supersedure"]),
                   marked=r.yes(0.75), clipped=False)
