# SPDX-License-Identifier: GPL-3.0-or-later
"""The season's records: autumn work, winter, and the first rounds of spring."""
import math
from datetime import date, timedelta

import findings
from chance import steps
from colonies import STACKS, UNITED_INTO

START = date(2025, 9, 1)
READERS = ["IK", "OT"]
# First look from above, and the full round, of each yard. Larch Knoll is still to come.
FIRST_LOOK = {"AB": date(2026, 3, 31), "KM": date(2026, 4, 3), "LK": date(2026, 4, 4),
              "NH": date(2026, 4, 10), "SO": date(2026, 3, 30), "TR": date(2026, 3, 31),
              "WF": date(2026, 4, 4)}
ROUND = {"AB": date(2026, 4, 22), "KM": date(2026, 4, 17), "NH": date(2026, 4, 23),
         "SO": date(2026, 4, 18), "TR": date(2026, 4, 21), "WF": date(2026, 4, 16)}
UNWRAP = {"AB": date(2026, 4, 10), "KM": date(2026, 4, 11), "SO": date(2026, 4, 9),
          "TR": date(2026, 4, 11), "WF": date(2026, 4, 9)}
STACKED_ON = {"TR-07": date(2026, 4, 11), "SO-11": date(2026, 4, 12)}
STACK_LOOK = {"TR-07": date(2026, 4, 18), "SO-11": date(2026, 4, 20)}
# Mites on about 300 bees before the autumn treatment: few in those that came through well.
MITES = {"strong": [0, 0, 1, 1, 2, 2, 3, 4], "fair": [0, 1, 1, 2, 3, 4, 5, 6],
         "others": [1, 2, 4, 5, 6, 8, 11, 14]}
SHEET_YARDS = ("AB", "TR")
TARE_BOX, TARE_REST = 10.0, 7.0


class Journal:
    def __init__(self, tables, colonies, weather):
        self.t, self.colonies, self.weather = tables, colonies, weather
        self.by_hive = {c.hive: c for c in colonies}
        self.clock = {}  # (yard, day) -> minutes worked so far

    # --- small helpers -----------------------------------------------------------------------
    def rid(self, kind, hive, day, extra=""):
        return f"{kind}-{hive}-{day:%y%m%d}{extra}"

    def day(self, yard, first, warm=12.0):
        """The first dry enough day from then on that is warm enough for the work."""
        day = first
        while True:
            _, high, rain = self.weather[yard, day]
            if high >= warm and rain < 1.5:
                return day
            day += timedelta(days=1)

    def time_and_air(self, yard, day, start=10 * 60 + 30, each=9):
        minute = self.clock.get((yard, day), start)
        self.clock[yard, day] = minute + each
        low, high, _ = self.weather[yard, day]
        air = low + (high - low) * max(0.0, math.sin(math.pi * (minute / 60 - 6) / 18))
        return f"{minute // 60:02d}:{minute % 60:02d}", round(air, 1)

    def event(self, kind, c, day, extra="", **values):
        record = self.rid("e-" + kind, c.hive, day, extra)
        self.t.add("events", record=record, date=day, kind=kind, hive=c.hive, **values)
        return record

    def boxes(self, hive, day, stack):
        """`stack`: bottom first, tuples of type, role, colony, beneath."""
        for position, (frame_type, role, colony, beneath) in enumerate(stack, start=1):
            self.t.add("boxes", record=self.rid("b", hive, day, f"-{position}"), hive=hive,
                       date=day, position=position, frame_type=frame_type, frames=10, role=role,
                       colony=colony, beneath=beneath)

    def chambers(self, c):
        return [(c.frame_type, "chamber", None, None)] * c.deeps

    def look(self, c, day, prefix="i", **values):
        record = self.rid(prefix, c.hive, day)
        return self.t.add("inspections", record=record, hive=c.hive, date=day, **values)

    def reader(self, yard, day):
        return READERS[(day.toordinal() + ord(yard[0])) % 2]

    # --- September to November ---------------------------------------------------------------
    def autumn(self):
        for c in self.colonies:
            self.settle(c)
        for c in self.colonies:
            self.harvest(c)
            self.autumn_treatment(c)
            self.autumn_look(c)
            self.requeen(c)
            if c.fate == "united":
                self.unite(c)
                continue
            self.autumn_feed(c)
            self.autumn_weight(c)
            self.event("wrapped", c, self.day(c.yard, date(2025, 11, 6), 3))
            self.winter_treatment(c)

    def settle(self, c):
        yard, x, y, entrance, stand = c.yard, c.x, c.y, c.entrance, c.stand
        if c.hive in ("AB-23", "AB-24"):  # stood at Larch Knoll until October
            yard, x, y, entrance, stand = "LK", 30.0 + (c.hive == "AB-24"), 9.0, 150, None
            moved = date(2025, 10, 18)
            self.t.add("places", record=self.rid("p", c.hive, moved), hive=c.hive, yard=c.yard,
                       x_m=c.x, y_m=c.y, entrance_deg=c.entrance, stand=c.stand, from_date=moved,
                       how="moved")
            self.event("moved", c, moved, time="07:10", other_yard=c.yard,
                       detail="screened, strapped, 13 km")
        self.t.add("places", record=self.rid("p", c.hive, START), hive=c.hive, yard=yard, x_m=x,
                   y_m=y, entrance_deg=entrance, stand=stand, from_date=START, how="placed")
        self.boxes(c.hive, START, self.chambers(c)
                   + [("langstroth_medium" if c.frame_type == "langstroth_deep" else
                       "dadant_super", "super", None, "excluder" if i == 0 else None)
                      for i in range(c.supers)])

    def stay(self, c, hive, first, last, queen, place="main", **values):
        self.t.add("colonies", record=self.rid("c", c.hive, first), colony=c.hive, hive=hive,
                   place=place, queen=queen, from_date=first, to_date=last, **values)

    def harvest(self, c):
        if c.supers == 0:
            return
        day = self.day(c.yard, date(2025, 9, 3), 15)
        r = c.chance("harvest")
        self.event("harvested", c, day, amount=steps(r.between(7, 14) * c.supers, 0.5), unit="kg")
        self.event("box_removed", c, day, amount=c.supers, unit="boxes", detail="supers off")
        self.boxes(c.hive, day, self.chambers(c))

    def autumn_treatment(self, c):
        r = c.chance("treat")
        on = self.day(c.yard, date(2025, 9, 9), 15)
        formic = c.yard in ("KM", "SO")
        if r.yes(0.28):
            self.wash(c, on - timedelta(days=1), r.pick(MITES.get(c.fate, MITES["others"])))
        self.event("treated", c, on,
                   method="formic acid, evaporator" if formic else "thymol, trays",
                   dose=f"as on the label, {'two boxes' if c.deeps == 2 else 'one box'}",
                   batch="F-2508" if formic else "T-2506", withdrawal_days=0,
                   detail="supers off; gloves and goggles")
        if c.fate == "united":
            return
        off = self.day(c.yard, date(2025, 10, 3), 8)
        self.event("treatment_off", c, off, method="formic acid, evaporator" if formic
                   else "thymol, trays")
        if r.yes(0.15):
            self.wash(c, off, r.pick([0, 0, 1, 1, 2, 3]))

    def winter_treatment(self, c):
        day = self.day(c.yard, date(2025, 11, 22), 2)
        seams = max(3, round(c.winter_seams * 0.85))
        dose = f"{5 * seams} ml, 5 ml a seam" if seams < 10 else "50 ml, the most for a colony"
        self.event("treated", c, day, method="oxalic acid, trickled", batch="O-2510",
                   dose=dose, withdrawal_days=0,
                   detail="broodless; gloves, goggles, mask")

    def wash(self, c, day, mites, colony=None):
        r = c.chance("wash", day)
        self.t.add("washes", record=self.rid("w", c.hive, day), hive=c.hive, colony=colony,
                   date=day, method="alcohol" if c.yard != "WF" else "sugar",
                   bees=300 if r.yes(0.7) else r.whole(27, 33) * 10, mites=mites)

    def autumn_look(self, c):
        day = self.day(c.yard, date(2025, 9, 14), 15)
        r = c.chance("autumn")
        time, air = self.time_and_air(c.yard, day, 10 * 60, 11)
        cells = c.autumn_seams * r.between(700, 950)
        brood = cells / findings.CELLS_OF_FRAME
        kg = c.autumn_kg * r.between(0.55, 0.75)
        self.look(c, day, time=time, air_c=air, seams=c.autumn_seams, seams_view="above",
                  sealed_brood_frames=steps(brood * 0.62, 0.25),
                  open_brood_frames=steps(brood * 0.38, 0.25), eggs_seen=True,
                  frames_with_brood=max(2, round(1.5 + brood * 2.2)), queen_seen=r.yes(0.3),
                  pattern=r.whole(2, 3) if c.fate in ("scattered", "drone_layer")
                  else r.whole(3, 5),
                  honey_kg=steps(kg, 0.5), temper=r.whole(1, 3) if r.yes(0.8) else 4,
                  reader=self.reader(c.yard, day),
                  notes="to be united: too small to winter" if c.fate == "united" else None)

    def requeen(self, c):
        """Every ninth colony got a young queen in September: two stays of one colony."""
        number = int(c.hive[3:])
        requeened = number % 9 == 4 and c.fate in ("strong", "fair", "small", "unseen", "lid")
        last = c.died_on or (STACKED_ON[c.hive] if c.fate == "upper" else None)
        if c.fate == "united":
            last = self.day(c.yard, date(2025, 9, 19), 14)
        if requeened and c.queen_year == 2025:
            removed, on = date(2025, 9, 17), date(2025, 9, 18)
            old = f"Q23-{200 + number + 30 * (ord(c.yard[0]) % 7)}"
            self.t.add("queens", queen=old, line=c.line, year=2023, origin="own", marked=True,
                       notes="removed in September 2025")
            self.event("queen_removed", c, removed, queen=old, detail="third year")
            self.event("queen_introduced", c, on, queen=c.queen, detail="in a cage, candy end")
            self.stay(c, c.hive, START, on, old, origin="wintered")
            self.stay(c, c.hive, on, last, c.queen)
        else:
            self.stay(c, c.hive, START, last, c.queen,
                      origin="split" if c.queen_year == 2025 and number % 5 == 0 else "wintered")

    def unite(self, c):
        into = self.by_hive[UNITED_INTO[c.hive]]
        day = self.day(c.yard, date(2025, 9, 19), 14)
        self.event("queen_removed", c, day - timedelta(days=1), queen=c.queen)
        self.event("united", into, day, time="18:30", colony=into.hive, other_hive=c.hive,
                   other_colony=c.hive, queen=c.queen, amount=float(c.deeps), unit="boxes",
                   detail="one sheet of paper, weak one on top")
        self.boxes(into.hive, day, self.chambers(into)
                   + [(c.frame_type, "chamber", None, "paper")])
        off = day + timedelta(days=9)
        self.event("box_removed", into, off, amount=1, unit="boxes",
                   detail="empty top chamber back to its stand")
        self.boxes(into.hive, off, self.chambers(into))
        self.event("box_added", c, off, amount=1, unit="boxes", detail="empty, entrance closed")
        self.boxes(c.hive, off, self.chambers(c))

    def autumn_feed(self, c):
        r = c.chance("feed")
        for first in (date(2025, 9, 17), date(2025, 9, 27)):
            self.event("fed", c, self.day(c.yard, first, 11), time="18:00", what="syrup_2_1",
                       amount=float(r.whole(3, 5)), unit="l")

    def autumn_weight(self, c):
        day = self.day(c.yard, date(2025, 10, 20), 4)
        if c.hive in ("AB-23", "AB-24"):
            day = max(day, date(2025, 10, 22))
        time, air = self.time_and_air(c.yard, day, 11 * 60, 6)
        weight = TARE_REST + TARE_BOX * c.deeps + c.autumn_kg + 0.22 * c.winter_seams
        self.look(c, day, time=time, air_c=air, seams=c.winter_seams, seams_view="above",
                  weight_kg=steps(weight, 0.5), honey_kg=steps(c.autumn_kg, 0.5),
                  reader=self.reader(c.yard, day), notes="weighed, two sides; lid lifted")

    # --- winter and first looks ---------------------------------------------------------------
    def mark_deaths(self):
        """Before the stays are written: when each dead colony was found."""
        for c in self.colonies:
            if c.fate == "dead":
                early = c.chance("death").yes(0.35)
                c.died_on = self.day(c.yard, date(2026, 3, 6), 3) if early else FIRST_LOOK[c.yard]

    def late_winter(self):
        for c in self.colonies:
            if c.fate == "dead":
                self.event("died", c, c.died_on, detail=f"{c.cause[0]}; {c.cause[1]}",
                           method=c.cause[0].split(":")[0].split(",")[0])
                continue
            if not c.lives:
                continue
            r = c.chance("winter")
            if c.kg < 7 and c.fate not in ("unseen", "lid"):
                self.event("fed", c, self.day(c.yard, date(2026, 3, 8), 3), what="fondant",
                           amount=2.5, unit="kg", detail="over the cluster")
            self.pollen_patties(c)
            if c.fate != "unseen":
                self.first_look(c, r)
        # A dead-out cleaned and set up again is an empty hive.
        cleaned = [c for c in self.colonies if c.fate == "dead" and "melted" not in c.cause[1]
                   and "not used" not in c.cause[1] and c.yard in ("AB", "SO")]
        for c in cleaned[:2]:
            day = date(2026, 4, 12)
            self.boxes(c.hive, day, [(c.frame_type, "chamber", None, None)])
            self.event("note", c, day, detail="cleaned, one chamber of sound comb, entrance closed")

    def pollen_patties(self, c):
        """Who went into winter on nine seams or more gets a pollen patty in March and one at the
        first look: brood starts weeks before the willows (common practice, no source)."""
        if c.winter_seams < 9 or c.fate in ("unseen", "lid", "early"):
            return
        for day in (self.day(c.yard, date(2026, 3, 14), 3), FIRST_LOOK[c.yard]):
            self.event("fed", c, day, "-p", what="pollen_patty", amount=1.0, unit="kg",
                       detail="on the top bars")

    def first_look(self, c, r):
        day = FIRST_LOOK[c.yard]
        time, air = self.time_and_air(c.yard, day, 12 * 60, 6)
        ago = {"strong": 0.75, "fair": 0.9}.get(c.fate, 1.1)
        if c.fate != "lid":
            ago *= 1 + 0.18 * c.chance("first look").normal()
        values = dict(time=time, air_c=air, seams=steps(max(0.5, c.seams * ago), 0.5),
                      seams_view="above", reader=self.reader(c.yard, day))
        if r.yes(0.45):
            used = 2.5
            values["weight_kg"] = steps(TARE_REST + TARE_BOX * c.deeps + c.kg + used
                                        + 0.15 * c.seams, 0.5)
        self.look(c, day, **values)

    def corrections(self):
        """Slips of the pen as they stand in every journal: one put right, one withdrawn."""
        c = next(c for c in self.colonies if c.yard == "AB" and c.fate == "fair")
        old = self.rid("i", c.hive, FIRST_LOOK["AB"])
        right = dict(self.t.rows["inspections"][old])
        self.t.rows["inspections"][old]["seams"] = right["seams"] + 10
        self.t.add("inspections", **(right | dict(record=old + "-r", supersedes=old,
                                                  entered_at="2026-04-01T01:12:00Z")))
        old, row = next((k, r) for k, r in sorted(self.t.rows["washes"].items())
                        if r["hive"].startswith("WF"))
        self.t.add("washes", **(row | dict(record=old + "-v", supersedes=old, void=True,
                                           entered_at="2025-10-08T02:05:00Z")))

    # --- April --------------------------------------------------------------------------------
    def spring(self):
        for c in self.colonies:
            if c.lives and c.yard in UNWRAP:
                self.event("unwrapped", c, UNWRAP[c.yard])
        for weak, below in STACKS.items():
            self.stack(self.by_hive[weak], self.by_hive[below])
        for yard in sorted(ROUND):
            self.round(yard)
        self.april_work()

    def round(self, yard):
        day, line, sheet = ROUND[yard], 0, None
        if yard in SHEET_YARDS:
            sheet = f"{yard}-{day:%y%m%d}"
            eve = day - timedelta(days=1)
            self.t.add("sheets", sheet=sheet, yard=yard, date=day,
                       made_at=f"{eve.isoformat()}T23:40:00Z", paper="a4")
        for c in self.colonies:
            if c.yard != yard or c.fate == "united":
                continue
            line += 1
            if sheet:
                self.t.add("sheet_lines", sheet=sheet, line=line, hive=c.hive)
            if not c.lives or c.fate == "upper" or c.hive in STACKS.values():
                continue
            if yard == "NH":
                self.event("unwrapped", c, day)
            self.full_look(c, day, sheet=sheet, line=line if sheet else None)

    def full_look(self, c, day, colony=None, prefix="i", **more):
        r = c.chance("full", day)
        time, air = self.time_and_air(c.yard, day)
        values = dict(time=time, air_c=air, seams=c.seams, seams_view="above", colony=colony,
                      temper=r.whole(1, 3) if r.yes(0.85) else 4, reader=self.reader(c.yard, day))
        values.update({k: v for k, v in more.items() if v is not None})
        rows = None
        if c.combs:
            rows = findings.comb_rows(c, values)
        else:
            values.update(findings.summary(c, r))
        values.update(findings.finding(c, r))
        seen = self.look(c, day, prefix, **values)
        if rows:
            for box, slot, side, row in rows:
                self.t.add("frames", inspection=seen["record"], hive=c.hive, colony=colony,
                           date=day, box=box, slot=slot, side=side, **row)
        if c.deeps == 2 and c.seams > 5 and not c.combs and r.yes(0.35):
            upper = steps(c.seams * r.between(0.6, 0.75), 0.25)
            for box, count in ((1, c.seams - upper), (2, upper)):
                self.t.add("seams", inspection=seen["record"], hive=c.hive, date=day, box=box,
                           from_above=count)

    def stack(self, weak, below):
        """The small colony's chamber over the strong one, paper and excluder between."""
        day, look = STACKED_ON[weak.hive], STACK_LOOK[weak.hive]
        before = self.look(weak, day - timedelta(days=1), time="14:20",
                           air_c=self.time_and_air(weak.yard, day - timedelta(days=1), 860)[1],
                           seams=weak.seams, seams_view="above", sealed_brood_frames=0.15,
                           open_brood_frames=0.15, frames_with_brood=2, eggs_seen=True,
                           queen_seen=True, pattern=4, honey_kg=steps(weak.kg, 0.5),
                           reader=self.reader(weak.yard, day))
        task = f"t-stack-{weak.hive}"
        record = self.event("stacked", weak, day, time="08:20", colony=weak.hive,
                            other_hive=below.hive, other_colony=below.hive, task=task,
                            amount=float(weak.deeps), unit="boxes", method="excluder",
                            detail="paper")
        self.stay(weak, below.hive, day, None, weak.queen, place="over_excluder")
        self.boxes(below.hive, day,
                   [(below.frame_type, "chamber", below.hive, None)] * below.deeps
                   + [(weak.frame_type, "chamber", weak.hive, "excluder")])
        self.event("paper_open", below, look, colony=weak.hive, task=f"t-paper-{weak.hive}")
        self.t.add("tasks", task=task, kind="stacked", yard=weak.yard, hive=weak.hive,
                   colony=weak.hive, other_hive=below.hive, other_colony=below.hive,
                   plan=f"plan-{weak.yard}-{day:%y%m%d}", method="stack", planned_on=day,
                   earliest=day, latest=day + timedelta(days=3), done_on=day, state="done",
                   why=f"{weak.seams:g} seams, eggs, compact: too few bees", done_record=record)
        self.t.add("tasks", task=f"t-paper-{weak.hive}", kind="paper_open", yard=weak.yard,
                   hive=below.hive, colony=weak.hive, planned_on=look, due_on=look, done_on=look,
                   state="done", why="paper open, eggs above, cells",
                   done_record=self.rid("e-paper_open", below.hive, look))
        self.t.add("tasks", task=f"t-divide-{weak.hive}", kind="unstacked", yard=weak.yard,
                   hive=below.hive, colony=weak.hive, earliest=day + timedelta(days=21),
                   latest=day + timedelta(days=28), state="planned",
                   why="both fill their chamber: upper one to a new stand")
        self.accepted_plan(weak, below, day, before)
        grown = steps(weak.seams + 3, 0.25)
        time, air = self.time_and_air(weak.yard, look)
        self.look(below, look, "i-up", colony=weak.hive, time=time, air_c=air, seams=grown,
                  seams_view="above", sealed_brood_frames=0.35, open_brood_frames=1.1,
                  frames_with_brood=3, eggs_seen=True, pattern=5, queen_cells=0, honey_kg=5.5,
                  reader=self.reader(weak.yard, look), notes="paper chewed through, no cells")
        self.full_look(below, look, colony=below.hive)

    def accepted_plan(self, weak, below, day, before):
        plan = f"plan-{weak.yard}-{day:%y%m%d}"
        eve = day - timedelta(days=1)
        self.t.add("plans", plan=plan, yard=weak.yard, date=day, target=day + timedelta(days=45),
                   accepted_at=f"{eve.isoformat()}T23:55:00Z", objective=3.1,
                   notes="first warm days, one stop")
        self.t.add("plan_rows", plan=plan, option=f"stack:{weak.hive}:{below.hive}:1",
                   colony=weak.hive, hive=weak.hive, verdict="small_sound", method="stack",
                   donor_colony=below.hive, donor_hive=below.hive, bees_moved=4000.0, gain=3800.0,
                   gain_low=2400.0, gain_high=5200.0, donor_cost=600.0,
                   why=f"{before['seams']:g} seams with eggs; {below.hive} has bees to spare")

    # --- feeding, washes and the like after the round ------------------------------------------
    def april_work(self):
        mites = {"strong": [0, 0, 1, 1, 2, 3], "fair": [0, 1, 1, 2]}
        heavy = next(c for c in self.colonies if c.yard == "SO" and c.fate == "fair")
        for c in self.colonies:
            if c.yard not in ROUND or not c.lives or c.hive in STACKS.values():
                continue
            r, day = c.chance("april"), ROUND[c.yard]
            if c.hive == heavy.hive:
                self.wash(c, day, 12)
            elif c.fate in mites and r.yes(0.2):
                self.wash(c, day, r.pick(mites[c.fate]))
            if c.kg < 6 and c.fate in ("strong", "fair") and c.yard != "NH" and r.yes(0.5):
                self.event("fed", c, day, time="17:40", what="syrup_1_1", amount=2.0, unit="l")
        self.overruled()
        self.comb_of_stores()
        for hive in ("AB-06", "WF-03"):
            c = self.by_hive[hive]
            if c.fate == "strong" and c.deeps == 2:
                self.event("reversed", c, ROUND[c.yard], detail="brood all above")
                self.boxes(hive, ROUND[c.yard], self.chambers(c))
        for yard in sorted(UNWRAP):
            c = next(c for c in self.colonies if c.yard == yard and c.fate in ("strong", "fair"))
            self.event("bloom", c, FIRST_LOOK[yard] + timedelta(days=6),
                       detail="willow, first pollen")

    def overruled(self):
        c = next(c for c in self.colonies if c.yard == "SO" and c.fate == "fair"
                 and c.queen_year < 2025)
        self.event("verdict", c, ROUND["SO"], time="18:20", colony=c.hive, method="queen_suspect",
                   detail="third spring running that she stops at four combs")

    def comb_of_stores(self):
        """A comb of food from a heavy hive to its light neighbour, an empty one back: both boxes
        stay full."""
        here = [c for c in self.colonies if c.yard == "WF" and c.fate in ("strong", "fair")
                and c.frame_type == "langstroth_deep" and not c.combs]
        gets, gives = min(here, key=lambda c: c.kg), max(here, key=lambda c: c.kg)
        day = ROUND["WF"]
        record = self.event("frames_moved", gets, day, time="15:40", colony=gets.hive,
                            other_hive=gives.hive, other_colony=gives.hive, what="stores",
                            with_bees=False, amount=1.0, unit="frames")
        self.t.add("frame_moves", record=record + "-1", date=day, hive=gets.hive, box=2, slot=2,
                   other_hive=gives.hive, other_box=2, other_slot=1, with_bees=False)
        # The comb that stood in slot 2 has slid on to slot 3.
        self.t.add("frame_moves", record=record + "-2", date=day, hive=gives.hive, box=2, slot=1,
                   other_hive=gets.hive, other_box=2, other_slot=3, with_bees=False)
