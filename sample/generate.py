#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes the sample season: an invented outfit in a cold-winter climate, as exchange tables.

    python3 sample/generate.py           writes the tables beside this file
    python3 sample/generate.py --check   exits 1 when the tables there are not what it would write

People, places and weather are invented. The same tables come out on every machine."""
import argparse
import sys
from datetime import date, timedelta
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent))

from colonies import STACKS, add_queens, make_colonies  # noqa: E402
from ground import YARDS, add_ground  # noqa: E402
from journal import FIRST_LOOK, ROUND, Journal  # noqa: E402
from tables import Tables  # noqa: E402
from weather import LAST, add_weather  # noqa: E402


def add_hives(tables, colonies):
    empty = set(STACKS)
    later = {row["hive"] for row in tables.rows["boxes"].values()
             if row["date"] > date(2026, 4, 11)}
    for c in colonies:
        status = "live"
        if c.fate == "united" or c.hive in empty or (c.fate == "dead" and c.hive in later):
            status = "empty"
        elif c.fate == "dead":
            status = "dead"
        notes = {"dadant_brood": "Dadant, from the neighbour"}.get(c.frame_type)
        tables.add("hives", hive=c.hive, yard=c.yard, x_m=c.x, y_m=c.y, entrance_deg=c.entrance,
                   stand=c.stand, status=status, notes=notes)


def add_gear(tables):
    counted = date(2026, 4, 15)
    shed = {"excluder": 34, "chamber:langstroth_deep": 18, "super:langstroth_medium": 210,
            "drawn_comb:langstroth_deep": 96, "foundation:langstroth_deep": 140, "floor": 14,
            "cover": 16, "feeder": 40, "paper": 60, "strap": 30}
    truck = {"excluder": 4, "chamber:langstroth_deep": 2, "drawn_comb:langstroth_deep": 20,
             "floor": 2, "cover": 2, "feeder": 4, "paper": 8, "strap": 6}
    for item, count in shed.items():
        tables.add("gear", item=item, place="shed", date=counted, count=count)
    for item, count in truck.items():
        tables.add("gear", item=item, place="truck", date=date(2026, 4, 24), count=count)
    for item, count in (("excluder", 2), ("drawn_comb:langstroth_deep", 10)):
        tables.add("gear", item=item, place="AB", date=date(2026, 4, 22), count=count)


def add_visits(tables):
    for yard, day in FIRST_LOOK.items():
        tables.add("visits", visit=f"v-{yard}-{day:%y%m%d}", yard=yard, date=day, time="12:00",
                   notes="first look from above")
    for yard, day in ROUND.items():
        tables.add("visits", visit=f"v-{yard}-{day:%y%m%d}", yard=yard, date=day, time="10:30",
                   notes="full round")
    for yard, day in (("LK", date(2026, 4, 29)), ("NH", date(2026, 4, 30)),
                      ("AB", date(2026, 4, 28)), ("TR", date(2026, 5, 2))):
        tables.add("visits", visit=f"v-{yard}-{day:%y%m%d}", yard=yard, date=day, time="10:00",
                   notes="planned")


def add_tasks(tables, colonies):
    def task(name, kind, yard, **values):
        tables.add("tasks", task=name, kind=kind, yard=yard, **values)

    task("t-open-LK", "open", "LK", visit="v-LK-260429", earliest=date(2026, 4, 27),
         latest=date(2026, 5, 3), planned_on=date(2026, 4, 29), state="planned",
         why="not opened since autumn")
    task("t-inspector-KM", "note", "KM", hive="KM-09", due_on=date(2026, 4, 27), state="planned",
         why="bee inspector comes; nothing in or out of this yard")
    task("t-drop-WF", "look", "WF", planned_on=date(2026, 4, 14), state="dropped",
         why="rain all day; done with the full round")
    for c in colonies:
        if c.yard not in ROUND or not c.lives:
            continue
        r = c.chance("task")
        if c.fate == "strong" and c.kg < 5 and c.yard != "KM":
            task(f"t-feed-{c.hive}", "fed", c.yard, hive=c.hive, what="syrup_1_1", amount=3.0,
                 unit="l", earliest=LAST, latest=LAST + timedelta(days=5), state="planned",
                 why=f"about {c.kg:.0f} kg of stores")
        elif c.fate == "strong" and c.seams >= 9 and c.hive not in STACKS.values():
            task(f"t-room-{c.hive}", "supered", c.yard, hive=c.hive, amount=1.0, unit="boxes",
                 earliest=date(2026, 5, 1), latest=date(2026, 5, 10), state="planned",
                 why=f"{c.seams:g} seams: room before the dandelion")
        elif c.fate == "drone_layer":
            task(f"t-queen-{c.hive}", "queen_removed", c.yard, hive=c.hive,
                 earliest=date(2026, 4, 28), latest=date(2026, 5, 5), state="planned",
                 why="drone layer: take the queen out, shake the bees off")
        elif c.fate == "queenless" and c.yard != "KM":
            task(f"t-test-{c.hive}", "frames_moved", c.yard, hive=c.hive, what="open_brood",
                 amount=1.0, unit="frames", earliest=date(2026, 4, 28), latest=date(2026, 5, 2),
                 state="planned", why="test comb with eggs, look after three days")
        elif c.fate == "fair" and r.yes(0.15):
            task(f"t-look-{c.hive}", "look", c.yard, hive=c.hive, earliest=date(2026, 5, 4),
                 latest=date(2026, 5, 9), state="planned", why="stores and room")


def make_season():
    tables = Tables()
    add_ground(tables)
    add_weather(tables, YARDS)
    weather = {(row["yard"], row["date"]): (row["tmin_c"], row["tmax_c"], row["rain_mm"])
               for row in tables.rows["weather"].values() if row["kind"] == "observed"}
    colonies = make_colonies()
    add_queens(tables, colonies)
    journal = Journal(tables, colonies, weather)
    journal.mark_deaths()
    journal.autumn()
    journal.late_winter()
    journal.spring()
    journal.corrections()
    add_hives(tables, colonies)
    add_gear(tables)
    add_visits(tables)
    add_tasks(tables, colonies)
    tables.add("settings", name="working_date", value=LAST.isoformat(), source="sample season")
    return tables


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--check", action="store_true", help="compare, write nothing")
    parser.add_argument("--out", type=Path, default=Path(__file__).resolve().parent)
    options = parser.parse_args()
    files = make_season().files()
    if not options.check:
        options.out.mkdir(parents=True, exist_ok=True)
        for name, text in files.items():
            (options.out / name).write_bytes(text.encode("utf-8"))
        return 0
    here = {p.name for p in options.out.glob("*.csv")}
    stale = [n for n, text in files.items()
             if n not in here or (options.out / n).read_bytes() != text.encode("utf-8")]
    stale += sorted(here - set(files))
    for name in stale:
        print(f"{name}: not as generate.py writes it; run python3 sample/generate.py",
              file=sys.stderr)
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
