# SPDX-License-Identifier: GPL-3.0-or-later
"""Comb by comb: an invented nest laid over the combs of a hive, as a careful reader would enter it.

The nest is a ball: wide in the middle combs, shrinking to its edge; sealed brood in the middle,
eggs and larvae around it, pollen beside the nest, stores above and at the walls."""
import math

from chance import Chance, steps

SLOTS = 10
HONEY_SIDE_KG = 1.45  # a full capped side of a Langstroth deep


def solved(total, total_of, low, high):
    """The value between low and high at which total_of reaches the total (it grows with it)."""
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if total_of(middle) < total else (low, middle)
    return (low + high) / 2


class Rounding:
    """Rounds to steps and carries what is left over on to the next side, so that sums stay."""

    def __init__(self, step):
        self.step, self.left = step, 0.0

    def __call__(self, value, most):
        wanted = value + self.left
        given = min(max(steps(wanted, self.step), 0), math.floor(most / self.step) * self.step)
        self.left = wanted - given
        return int(given)


def comb_sides(name, boxes, bees, sealed, young, honey_kg, drone=0.0, scattered=False,
               undrawn=(), mould=()):
    """Rows (box, slot, side, percentages) whose totals come near the figures given: full frames of
    bees, of sealed and of open brood (eggs and larvae), kilograms of stores, frames of drone
    brood. `boxes` is the share of the nest in each box, bottom first."""
    chance = Chance("combs", name)
    centre = chance.between(4.6, 5.6)
    sides = [(b, s, side, s - 0.5 + (0.2 if side == "b" else -0.2))
             for b in range(1, len(boxes) + 1) for s in range(1, SLOTS + 1) for side in "ab"]
    open_sides = [s for s in sides if (s[0], s[1]) not in undrawn]

    def ball(radius, most):
        def at(side):
            share = boxes[side[0] - 1] / max(boxes)
            u = (side[3] - centre) / max(radius * math.sqrt(share), 0.01) if share else 9
            return most * share * max(0.0, 1 - u * u)
        return at

    brood = sealed + young + drone
    thick = min(0.85, 0.3 + 0.2 * brood / sum(boxes) * max(boxes)) * (0.7 if scattered else 1)
    radius = solved(2 * brood, lambda r: sum(map(ball(r, thick), open_sides)), 0.05, 9)
    nest = {s: ball(radius, thick)(s) for s in open_sides}
    cover_most = min(0.95, thick + 0.3)
    wide = solved(2 * bees, lambda r: sum(map(ball(r, cover_most), sides)), 0.05, 30)
    cover = {s: ball(wide, cover_most)(s) for s in sides}

    # Older brood sits in the middle: the sealed share of a side falls towards the nest's edge.
    rest = {s: max(0.0, 1 - abs(s[3] - centre) / max(radius, 0.3)) for s in open_sides}
    worker = max(sealed + young, 0.001)
    level = solved(sealed, lambda k: sum(nest[s] * min(1, k * (0.25 + rest[s])) for s in open_sides)
                   / 2 * worker / max(brood, 0.001), 0, 6)
    away = {s: abs(s[3] - centre) / 5 + (0.25 if boxes[s[0] - 1] < max(boxes) else 0)
            for s in open_sides}
    room = {s: max(0.0, 0.95 - nest[s] - 0.12 * (0.2 < nest[s] + away[s] < 0.8))
            for s in open_sides}
    top = len(boxes)

    def stores(base):
        return {s: min(room[s], max(0.0, base + 0.9 * away[s] + (0.12 if s[0] == top else -0.2)))
                for s in open_sides}

    honey = stores(solved(honey_kg, lambda b: sum(stores(b).values()) * HONEY_SIDE_KG, -2, 2))

    r_bees, r_sealed, r_larvae, r_eggs = Rounding(5), Rounding(5), Rounding(5), Rounding(5)
    r_drone, r_honey = Rounding(5), Rounding(5)
    rows = []
    for s in sides:
        row = dict.fromkeys(["eggs_pct", "open_pct", "sealed_pct", "drone_pct", "pollen_pct",
                             "nectar_pct", "honey_pct", "empty_pct", "undrawn_pct"], 0)
        row["bees_pct"] = r_bees(100 * cover[s], 100)
        if s not in nest:
            row["undrawn_pct"] = 100
        else:
            share = worker / max(brood, 0.001) * nest[s] * 100
            capped = share * min(1, level * (0.25 + rest[s]))
            left = 100
            for key, rounding, value in (
                    ("sealed_pct", r_sealed, capped),
                    ("open_pct", r_larvae, (share - capped) * 0.64),
                    ("eggs_pct", r_eggs, (share - capped) * 0.36),
                    ("drone_pct", r_drone, nest[s] * 100 * drone / max(brood, 0.001)),
                    ("honey_pct", r_honey, 100 * honey[s])):
                if nest[s] <= 0 and key != "honey_pct":
                    continue
                row[key] = rounding(value, left)
                left -= row[key]
            beside = radius < abs(s[3] - centre) < radius + 1.2 or 0 < nest[s] < 0.3
            if beside and cover[s] > 0.05:
                row["pollen_pct"] = min(left, 5 * chance.whole(1, 4))
            elif nest[s]:
                row["pollen_pct"] = min(left, 5 * chance.whole(0, 2))
            left -= row["pollen_pct"]
            if cover[s] > 0.2 and left >= 10:
                row["nectar_pct"] = 5 * chance.whole(0, 2)
                left -= row["nectar_pct"]
            row["empty_pct"] = left
        if (s[0], s[1]) in mould:
            row["mould"] = True
        rows.append((s[0], s[1], s[2], row))
    return rows


def totals(rows):
    """What the sides add up to, in full frames and kilograms, and the combs with any brood."""
    def frames(*keys):
        return sum(r[3][k] for r in rows for k in keys) / 200

    brood_keys = ("eggs_pct", "open_pct", "sealed_pct", "drone_pct")
    combs = {(r[0], r[1]) for r in rows if any(r[3][k] for k in brood_keys)}
    return {"bees": frames("bees_pct"), "sealed": frames("sealed_pct"),
            "young": frames("eggs_pct", "open_pct"), "brood": frames(*brood_keys),
            "combs": len(combs), "pollen": frames("pollen_pct"), "empty": frames("empty_pct"),
            "honey_kg": frames("honey_pct", "nectar_pct") * 2 * HONEY_SIDE_KG}
