# SPDX-License-Identifier: GPL-3.0-or-later
"""What a reader writes down at a full look, by what is the matter with the colony."""
import math

import combs
from chance import steps

CELLS_OF_FRAME = 5630  # both sides of a Langstroth deep, four fifths of the cells in use
BEES_OF_FRAME = 2290  # both sides fully covered


def expected(c):
    """Bees (full frames), sealed and open brood (full frames) and combs with brood."""
    ratio = {"strong": 1.2, "fair": 1.15, "small": 0.85, "upper": 0.9, "tiny": 0.5,
             "scattered": 0.3, "efb": 0.45, "chalk": 1.05, "nosema": 0.4}.get(c.fate, 0)
    r = c.chance("brood")
    # A small cluster fills its seams less than a big one (seen from above: not a line).
    bees = c.seams * 0.8 * (1 - math.exp(-0.42 * c.seams ** 0.68)) * r.between(0.95, 1.05)
    frames = bees * BEES_OF_FRAME * ratio * r.between(0.92, 1.1) / CELLS_OF_FRAME
    share = 12 / 21 * r.between(0.95, 1.08)  # sealed 12 : open and eggs 9
    if c.fate in ("scattered", "nosema"):
        share = 0.66
    n = {"strong": round(0.66 * c.seams + 0.4), "chalk": round(0.66 * c.seams),
         "fair": round(0.6 * c.seams + 0.4)}.get(
        c.fate, max(1, round(0.55 * c.seams + 0.4)))
    return bees, frames * share, frames * (1 - share), n


def summary(c, r):
    bees, sealed, young, n = expected(c)
    fine = 0.25 if sealed > 0.6 else 0.05
    values = dict(sealed_brood_frames=steps(sealed, fine), open_brood_frames=steps(young, fine),
                  frames_with_brood=n if sealed else 0, honey_kg=steps(c.kg, 0.5),
                  pollen_frames=steps(r.between(0.3, 0.6) + 0.06 * c.seams, 0.25))
    if r.yes(0.6):
        values["bee_frames"] = steps(bees, 0.25 if bees > 1 else 0.1)
    elif r.yes(0.3) and c.seams > 3:
        values["frames_with_bees"] = steps(1.5 + 0.95 * bees, 0.5)
    if r.yes(0.5):
        values["empty_comb_frames"] = float(max(0, round(10 * c.deeps - c.kg / 2.6
                                                         - values["sealed_brood_frames"]
                                                         - values["open_brood_frames"] - 1)))
    return values


def comb_rows(c, values):
    bees, sealed, young, _ = expected(c)
    small = c.seams < 4.5  # nest all above
    above = c.seams < 7
    share = [1.0] if c.deeps == 1 else ([0.0, 1.0] if above else [0.3, 1.0])
    rows = combs.comb_sides(
        c.hive, share, bees, sealed, young, c.kg,
        drone=0.08 if c.fate == "strong" else 0.0, scattered=c.fate in ("scattered", "efb"),
        undrawn={(1, 1), (1, 10)} if c.chance("undrawn").yes(0.3) and c.deeps == 2 else (),
        mould={(1, 2), (1, 9)} if small and c.deeps == 2 else ())
    total = combs.totals(rows)
    values.update(bee_frames=steps(total["bees"], 0.25 if total["bees"] > 1 else 0.1),
                  sealed_brood_frames=steps(total["sealed"], 0.05),
                  open_brood_frames=steps(total["young"], 0.05),
                  brood_frames=steps(total["brood"], 0.05), frames_with_brood=total["combs"],
                  honey_kg=steps(total["honey_kg"], 0.5),
                  pollen_frames=steps(total["pollen"], 0.25),
                  empty_comb_frames=steps(total["empty"], 0.5))
    return rows


def finding(c, r):
    """What was seen of queen, eggs and health, by what is the matter with the colony."""
    good = dict(eggs_seen=True, queen_seen=True if r.yes(0.3) else None,
                pattern=5 if r.yes(0.6) else 4, drone_brood=0)
    fate = c.fate
    if fate == "strong":
        return good | dict(drone_brood=1, drones_seen=r.yes(0.3), queen_cells=0)
    if fate in ("fair", "upper"):
        return good | dict(queen_cells=0)
    if fate == "small":
        note = r.pick([None, "fills what it covers", "food heavy on both sides",
                       "good queen, few bees"])
        return good | dict(pattern=r.whole(4, 5), notes=note)
    if fate == "tiny":
        return good | dict(pattern=4, notes="a handful of bees")
    if fate == "scattered":
        return good | dict(pattern=r.whole(1, 2), queen_seen=True, drone_brood=1,
                           notes="brood in patches, many gaps")
    if fate == "queenless":
        return dict(eggs_seen=False, queen_seen=False, drone_brood=0, frames_with_brood=0,
                    sealed_brood_frames=0.0, open_brood_frames=0.0,
                    queen_cells=0, notes="no eggs, loud when opened")
    if fate == "early":
        return dict(eggs_seen=False, frames_with_brood=0, sealed_brood_frames=0.0,
                    open_brood_frames=0.0, pollen_frames=0.25,
                    notes="no brood yet, no fresh pollen")
    if fate == "drone_layer":
        return dict(eggs_seen=True, queen_seen=True, pattern=1, drone_brood=3,
                    sealed_brood_frames=0.0, open_brood_frames=0.1, frames_with_brood=2,
                    notes="domed caps in worker cells, one egg in a cell")
    if fate == "laying_workers":
        return dict(eggs_seen=True, queen_seen=False, pattern=1, drone_brood=3,
                    sealed_brood_frames=0.0, open_brood_frames=0.15, frames_with_brood=3,
                    notes="several eggs in a cell, on the walls: laying workers")
    if fate == "efb":
        return dict(eggs_seen=True, pattern=2, drone_brood=0, disease="suspect_efb",
                    notes="larvae off colour, sour smell: hive closed, tools cleaned, "
                          "bee inspector called")
    if fate == "chalk":
        return good | dict(pattern=3, disease="chalkbrood", notes="mummies on the floor")
    return good | dict(pattern=4, disease="nosema", notes="soiled front and top bars")
