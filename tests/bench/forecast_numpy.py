# SPDX-License-Identifier: GPL-3.0-or-later
"""The daily colony model in numpy, float32, whole arrays: the yardstick of the forecast's speed.
forecast_numpy.py FOLDER MEMBERS DAYS RUNS reads what forecast_bench.cpp wrote and prints the best
time in seconds and the medians of bees, sealed brood and honey on the last day."""
import sys
import time

import numpy as np

folder, members, days, runs = sys.argv[1], *map(int, sys.argv[2:])
f32 = np.float32
PARAMS = ("queen cover shell care fill s_egg s_open s_sealed d_house d_winter d_hour d_day recruit "
          "slope young_share income use nest supers mite_growth immigration swarm_draw fail_draw "
          "requeen keeper_treats keeper_feeds noise_lay noise_life half").split()
DRIVERS = "lay shell hours nectar pollen winter release rest heat swarm robbing".split()


def load(name, kind, rows):
    data = np.fromfile(f"{folder}/{name}", dtype=kind).reshape(rows, -1)
    if data.shape[1] != members:
        raise SystemExit(f"{name} is not of this program: {data.shape}")
    return data


def names():
    with open(f"{folder}/names", encoding="utf-8") as file:
        return [line.split() for line in file]


PARAM_ORDER, STATE = names()
P_ALL = load("params", f32, len(PARAM_ORDER))
V_ALL = load("values", f32, int(STATE[-1]))
R_ALL = np.fromfile(f"{folder}/random", dtype=np.uint32)
D_ALL = np.fromfile(f"{folder}/drivers", dtype=f32).reshape(days, len(DRIVERS), 32)
P = {name: P_ALL[i] for i, name in enumerate(PARAM_ORDER)}


def noise(s):
    s ^= s << np.uint32(13)
    s ^= s >> np.uint32(17)
    s ^= s << np.uint32(5)
    total = (s & np.uint32(0xFFFF)) + (s >> np.uint32(16))
    return (total.astype(f32) - f32(65535)) * f32(1 / 26754.5)


def soft_least(a, b):
    lo, hi = np.minimum(a, b), np.maximum(a, b)
    q = lo / (hi + f32(1e-6))
    q *= q
    return lo * (f32(1) + q * q) ** f32(-0.25)


def run():
    v = V_ALL.copy()
    rnd = R_ALL.copy()
    at = 0

    def ring(n):
        nonlocal at
        part = v[at:at + n]
        at += n
        return part

    egg, opened, sealed, young = ring(3), ring(6), ring(12), ring(10)
    order = STATE[:-1]
    scalar = {name: v[31 + i] for i, name in enumerate(order[:order.index("miteCells")])}
    mite_cells = v[31 + order.index("miteCells"):][:12]
    rest_at = 31 + order.index("miteCells") + 12
    for i, name in enumerate(order[order.index("miteCells") + 1:]):
        scalar[name] = v[rest_at + i]
    older, foragers, winter = scalar["older"], scalar["foragers"], scalar["winter"]
    honey, pollen, mites = scalar["honey"], scalar["pollen"], scalar["mites"]
    ridden, queenless = scalar["ridden"], scalar["queenless"]
    swarm_h, fail_h = scalar["swarm"], scalar["fail"]
    e_lay, e_life = scalar["errorLay"], scalar["errorLife"]
    clock = 0

    def push(cells, value, n):
        """The oldest leaves and the youngest takes its place."""
        k = n - 1 - clock % n
        oldest = cells[k].copy()
        cells[k] = value
        return oldest

    for d in range(days):
        drive = {name: np.tile(D_ALL[d, i], members // 32) for i, name in enumerate(DRIVERS)}
        t_young, t_open = young.sum(axis=0), opened.sum(axis=0)
        bees = t_young + older + foragers + winter
        brood = egg.sum(axis=0) + t_open + sealed.sum(axis=0)
        e_lay *= f32(0.96)
        e_lay += f32(0.28) * noise(rnd)
        e_life *= f32(0.96)
        e_life += f32(0.28) * noise(rnd)
        life = np.clip(1 + P["noise_life"] * e_life, f32(0.25), f32(4))
        g = np.clip(1 - drive["shell"] * P["shell"] / np.cbrt(bees + 1), f32(0), f32(1))
        cover = P["cover"] * bees * g * g * g
        nurses = t_young + older + f32(0.2) * foragers + f32(0.75) * winter
        care = P["care"] * nurses * (pollen / (pollen + f32(0.04))) * (honey / (honey + f32(0.6)))
        capacity = soft_least(cover, care) * f32(1.25)
        honey_cells = np.maximum(honey * f32(2564) - P["supers"], f32(0))
        room = np.maximum(P["nest"] * f32(0.9) - honey_cells - brood, f32(0))
        potential = P["queen"] * drive["lay"] * np.clip(1 + P["noise_lay"] * e_lay, f32(0.1), f32(2))
        space = np.minimum(np.minimum(np.maximum(capacity - brood, f32(0)), room) / P["fill"],
                           capacity * f32(0.048))
        eggs = soft_least(potential, space)
        half = P["half"]
        eggs = np.where(half > 0, potential * bees / (half + bees + 1), eggs)
        laying = (queenless < f32(0.5)) & (queenless > f32(-0.5))
        eggs = np.where(laying, eggs, f32(0))
        short = np.where(half > 0, f32(0),
                         np.maximum(brood - cover * f32(1.25), f32(0)) / (brood + 1))
        hunger = np.where(half > 0, f32(0), np.clip(
            1 - honey / (bees * f32(5e-6) + f32(0.01)) * f32(0.5), f32(0), f32(1)))
        egg *= P["s_egg"] * (1 - f32(0.35) * short) * (1 - f32(0.5) * hunger)
        opened *= P["s_open"] * (1 - f32(0.30) * short) * (1 - f32(0.5) * hunger)
        sealed *= P["s_sealed"] * (1 - f32(0.20) * short) * \
            (1 - f32(0.5) * np.clip(ridden - f32(0.03), f32(0), f32(0.1)))
        hatch = push(egg, eggs, 3)
        cap = push(opened, hatch, 6)
        emerge = push(sealed, cap, 12)
        u = f32(0.56) * cap / (bees * f32(0.111) + 1)
        entry = np.minimum(u / (1 + u * f32(0.5) + u * u * f32(1 / 12)), f32(1)) * mites
        freed = push(mite_cells, entry, 12)
        mites[:] = np.maximum(
            mites * (1 - np.where(brood > 50, f32(0.006), f32(0.002))) - entry +
            freed * (1 + f32(1.01) * P["mite_growth"]) * f32(0.7) +
            drive["robbing"] * P["immigration"], f32(0))
        mites[:] = np.where(mites > P["keeper_treats"] * bees, mites * f32(0.5), mites)
        np.minimum(mites, bees, out=mites)
        ridden += (np.minimum(mites / (bees + 100), f32(0.25)) - ridden) * f32(0.03)
        weight = np.clip(ridden - f32(0.03), f32(0), f32(0.1))
        starve = f32(0.12) * hunger * hunger
        d_house = np.clip(P["d_house"] * life + f32(1.1) * weight + starve, f32(0), f32(0.9))
        cold = f32(0.1) * np.maximum(f32(0.2) - g, f32(0))
        d_winter = np.clip(P["d_winter"] * life + f32(0.3) * weight + starve + cold,
                           f32(0), f32(0.9))
        d_field = np.clip((P["d_hour"] * drive["hours"] + P["d_day"]) * life +
                          f32(0.45) * weight + starve, f32(0), f32(0.95))
        recruit = np.clip(P["recruit"] - P["slope"] * foragers / (bees + f32(0.01)),
                          f32(0), f32(0.6))
        recruit_young = recruit * P["young_share"]
        young_gone = t_young * recruit_young
        young *= 1 - d_house - recruit_young
        wintering = emerge * drive["winter"]
        grown = push(young, emerge - wintering, 10)
        older_gone = older * recruit
        released = winter * drive["release"]
        older[:] = np.maximum(older * (1 - d_house) - older_gone, f32(0)) + grown
        foragers[:] = foragers * (1 - d_field) + older_gone + young_gone + released
        winter[:] = np.maximum(winter * (1 - d_winter) - released, f32(0)) + wintering
        small = np.minimum(np.maximum((bees * f32(1 / 9000) + f32(0.01)) ** f32(-0.5), f32(1)),
                           f32(1.8))
        per_bee = drive["rest"] * f32(4.4e-6) * small + (1 - drive["rest"]) * f32(6e-6)
        used = (bees * per_bee + t_open * f32(10.9e-6) + brood * f32(7e-6) * drive["heat"]) * P["use"]
        store_room = (np.maximum(P["nest"] * f32(0.35), P["nest"] * f32(0.8) - brood * f32(1.4)) +
                      P["supers"]) * f32(0.00039)
        income = foragers * drive["nectar"] * P["income"]
        honey[:] = np.maximum(np.minimum(honey + income, store_room) - used, P["keeper_feeds"])
        pollen[:] = np.maximum(np.minimum(pollen + foragers * drive["pollen"], f32(2)) -
                               (bees * f32(0.2e-6) + t_open * f32(23.7e-6)), f32(0))
        lost = (bees < 100) & (brood < 1000) & (half <= 0)
        for part in (older, foragers, winter, mites):
            part[lost] = 0
        crowd = np.clip(brood / (P["nest"] * f32(0.45) + 1) - f32(0.6), f32(0), f32(1))
        before = swarm_h.copy()
        swarm_h += drive["swarm"] * crowd
        swarms = (before < P["swarm_draw"]) & (swarm_h >= P["swarm_draw"]) & laying
        before = fail_h.copy()
        fail_h += f32(0.0004)
        fails = (before < P["fail_draw"]) & (fail_h >= P["fail_draw"]) & laying
        stay = np.where(swarms, f32(0.4), f32(1))
        young *= stay
        for part in (older, foragers, winter, mites):
            part *= stay
        honey[:] = np.where(swarms, np.maximum(honey - bees * f32(0.6 * 36e-6), f32(0)), honey)
        queenless[:] = np.where(queenless > 0, np.maximum(queenless - 1, f32(0)), queenless)
        gap = np.where(P["requeen"] > f32(0.82), f32(-1), np.where(swarms, f32(18), f32(24)))
        queenless[:] = np.where(swarms | fails, gap, queenless)
        queenless[lost] = -1
        clock += 1
    bees = young.sum(axis=0) + older + foragers + winter
    return np.median(bees), np.median(sealed.sum(axis=0)), np.median(honey)


best = None
for _ in range(runs):
    begun = time.perf_counter()
    result = run()
    took = time.perf_counter() - begun
    best = took if best is None else min(best, took)
print(best, *result)
