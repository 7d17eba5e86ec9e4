# SPDX-License-Identifier: GPL-3.0-or-later
"""The exchange tables: columns in the program's order, keys, and how a value is written."""

HEAD = ["record", "supersedes", "void", "entered_at"]

COLUMNS = {
    "yards": "yard name latitude longitude width_m length_m north_deg elevation_m access notes",
    "hives": "hive yard x_m y_m entrance_deg stand status notes",
    "queens": "queen line year mother origin marked clipped notes",
    "colonies": "HEAD colony hive place queen queen_year queen_line queen_marked from_date to_date "
                "parent_colony origin",
    "boxes": "HEAD hive date position frame_type frames role colony beneath",
    "inspections": "HEAD hive colony date time air_c seams seams_view bee_frames frames_with_bees "
                   "sealed_brood_frames open_brood_frames brood_frames frames_with_brood "
                   "drone_brood eggs_seen queen_seen queen_cells cell_kind pattern honey_kg "
                   "pollen_frames empty_comb_frames weight_kg temper disease drones_seen reader "
                   "sheet line notes stores_level glance",
    "frames": "inspection hive colony date box slot side bees_pct eggs_pct open_pct sealed_pct "
              "drone_pct pollen_pct nectar_pct honey_pct empty_pct undrawn_pct mould",
    "seams": "inspection hive date box from_above from_below at_least",
    "washes": "HEAD hive colony date method bees mites",
    "events": "HEAD date time kind hive colony other_hive other_yard other_colony queen what "
              "with_bees amount unit method dose batch task sheet detail withdrawal_days",
    "tasks": "task kind yard hive colony other_hive other_colony plan visit method what earliest "
             "latest due_on planned_on done_on amount unit why state done_record",
    "weather": "yard date tmin_c tmax_c rain_mm kind issued wind_ms sun_h",
    "flows": "yard from_day to_day nectar pollen",
    "gear": "item place date count",
    "settings": "name value source",
    "places": "HEAD hive yard x_m y_m entrance_deg stand from_date how",
    "stands": "stand yard x_m y_m angle_deg kind notes",
    "features": "feature yard kind x_m y_m x2_m y2_m file notes",
    "frame_moves": "HEAD date hive box slot other_hive other_box other_slot with_bees task detail",
    "plans": "plan yard date target accepted_at objective basis notes",
    "plan_rows": "plan option colony hive verdict method donor_colony donor_hive bees_moved "
                 "frames_moved gain gain_low gain_high donor_cost why",
    "visits": "visit yard date time notes",
    "sheets": "sheet yard date made_at paper",
    "sheet_lines": "sheet line hive colony expected",
}
COLUMNS = {name: sum((HEAD if c == "HEAD" else [c] for c in text.split()), [])
           for name, text in COLUMNS.items()}

KEYS = {
    "yards": ["yard"], "hives": ["hive"], "queens": ["queen"], "tasks": ["task"],
    "frames": ["inspection", "box", "slot", "side"], "seams": ["inspection", "box"],
    "weather": ["yard", "date", "kind", "issued"], "flows": ["yard", "from_day", "to_day"],
    "gear": ["item", "place", "date"], "settings": ["name"], "stands": ["stand", "yard"],
    "features": ["feature"], "plans": ["plan"], "plan_rows": ["plan", "option"],
    "visits": ["visit"], "sheets": ["sheet"], "sheet_lines": ["sheet", "line"],
}
for _name in COLUMNS:
    KEYS.setdefault(_name, ["record"])


def text_of(value):
    """Empty when not recorded; flags 0 or 1; the shortest form of a number."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "1" if value else "0"
    if isinstance(value, float):
        short = repr(round(value, 6) + 0.0)  # no minus zero
        return short[:-2] if short.endswith(".0") else short
    return str(value)


def quoted(field):
    if any(c in field for c in ',"\n\r'):
        return '"' + field.replace('"', '""') + '"'
    return field


class Tables:
    """The rows of the season, checked for unknown columns and double keys as they are added."""

    def __init__(self):
        self.rows = {name: {} for name in COLUMNS}

    def add(self, table, **values):
        unknown = set(values) - set(COLUMNS[table])
        if unknown:
            raise KeyError(f"{table} has no column {', '.join(sorted(unknown))}")
        key = "\x1f".join(text_of(values.get(k)) for k in KEYS[table])
        if key in self.rows[table]:
            raise KeyError(f"{table}: key twice: {key}")
        self.rows[table][key] = values
        return values

    def files(self):
        """File name and content of every table that has rows, in the order of the keys."""
        out = {}
        for name, rows in self.rows.items():
            if not rows:
                continue
            lines = [",".join(COLUMNS[name])]
            for key in sorted(rows, key=lambda k: k.encode()):
                row = rows[key]
                lines.append(",".join(quoted(text_of(row.get(c))) for c in COLUMNS[name]))
            out[name + ".csv"] = "\n".join(lines) + "\n"
        return out
