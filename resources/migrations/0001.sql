-- SPDX-License-Identifier: GPL-3.0-or-later
-- The first schema: one table for each exchange table, columns in its order. NULL = not recorded.
-- Never edited once released; what comes later is a migration of its own. References are checked
-- at the end of a transaction, so that the rows of one step may come in any order.
-- weather.issued is part of the key and may be missing: '' there, since NULLs are all distinct.

CREATE TABLE "yards" (
  "yard" TEXT NOT NULL CHECK ("yard" <> ''),
  "name" TEXT,
  "latitude" REAL CHECK ("latitude" BETWEEN -90 AND 90),
  "longitude" REAL CHECK ("longitude" BETWEEN -180 AND 180),
  "width_m" REAL CHECK ("width_m" BETWEEN 0 AND 100000),
  "length_m" REAL CHECK ("length_m" BETWEEN 0 AND 100000),
  "north_deg" REAL CHECK ("north_deg" BETWEEN -360 AND 360),
  "elevation_m" REAL CHECK ("elevation_m" BETWEEN -500 AND 9000),
  "access" TEXT,
  "notes" TEXT,
  PRIMARY KEY ("yard")
) STRICT;

CREATE TABLE "hives" (
  "hive" TEXT NOT NULL CHECK ("hive" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "x_m" REAL CHECK ("x_m" BETWEEN -100000 AND 100000),
  "y_m" REAL CHECK ("y_m" BETWEEN -100000 AND 100000),
  "entrance_deg" REAL CHECK ("entrance_deg" BETWEEN -360 AND 360),
  "stand" TEXT,
  "status" TEXT CHECK ("status" IN ('live', 'empty', 'dead')),
  "notes" TEXT,
  PRIMARY KEY ("hive")
) STRICT;

CREATE TABLE "queens" (
  "queen" TEXT NOT NULL CHECK ("queen" <> ''),
  "line" TEXT,
  "year" INTEGER CHECK ("year" BETWEEN 1900 AND 2199),
  "mother" TEXT,
  "origin" TEXT,
  "marked" INTEGER CHECK ("marked" IN (0, 1)),
  "clipped" INTEGER CHECK ("clipped" IN (0, 1)),
  "notes" TEXT,
  PRIMARY KEY ("queen")
) STRICT;

CREATE TABLE "colonies" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "colonies" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "colony" TEXT NOT NULL CHECK ("colony" <> ''),
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "place" TEXT
    CHECK ("place" IN ('main', 'over_excluder', 'over_double_screen', 'over_board', 'left',
      'right')),
  "queen" TEXT
    REFERENCES "queens" ("queen") DEFERRABLE INITIALLY DEFERRED,
  "queen_year" INTEGER CHECK ("queen_year" BETWEEN 1900 AND 2199),
  "queen_line" TEXT,
  "queen_marked" INTEGER CHECK ("queen_marked" IN (0, 1)),
  "from_date" TEXT NOT NULL
    CHECK ("from_date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "to_date" TEXT CHECK ("to_date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "parent_colony" TEXT,
  "origin" TEXT CHECK ("origin" IN ('wintered', 'split', 'swarm', 'package', 'bought')),
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "boxes" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "boxes" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "position" INTEGER NOT NULL CHECK ("position" BETWEEN 1 AND 12),
  "frame_type" TEXT NOT NULL CHECK ("frame_type" <> ''),
  "frames" INTEGER CHECK ("frames" BETWEEN 0 AND 60),
  "role" TEXT CHECK ("role" IN ('chamber', 'super', 'feeder')),
  "colony" TEXT,
  "beneath" TEXT CHECK ("beneath" IN ('none', 'excluder', 'paper', 'double_screen', 'board')),
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "inspections" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "inspections" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "time" TEXT CHECK ("time" GLOB '[0-2][0-9]:[0-5][0-9]'),
  "air_c" REAL CHECK ("air_c" BETWEEN -60 AND 60),
  "seams" REAL CHECK ("seams" BETWEEN 0 AND 40),
  "seams_view" TEXT CHECK ("seams_view" IN ('above', 'below', 'both')),
  "bee_frames" REAL CHECK ("bee_frames" BETWEEN 0 AND 60),
  "frames_with_bees" REAL CHECK ("frames_with_bees" BETWEEN 0 AND 60),
  "sealed_brood_frames" REAL CHECK ("sealed_brood_frames" BETWEEN 0 AND 60),
  "open_brood_frames" REAL CHECK ("open_brood_frames" BETWEEN 0 AND 60),
  "brood_frames" REAL CHECK ("brood_frames" BETWEEN 0 AND 60),
  "frames_with_brood" INTEGER CHECK ("frames_with_brood" BETWEEN 0 AND 60),
  "drone_brood" INTEGER CHECK ("drone_brood" BETWEEN 0 AND 3),
  "eggs_seen" INTEGER CHECK ("eggs_seen" IN (0, 1)),
  "queen_seen" INTEGER CHECK ("queen_seen" IN (0, 1)),
  "queen_cells" INTEGER CHECK ("queen_cells" BETWEEN 0 AND 500),
  "cell_kind" TEXT CHECK ("cell_kind" IN ('cups', 'charged', 'sealed')),
  "pattern" INTEGER CHECK ("pattern" BETWEEN 1 AND 5),
  "honey_kg" REAL CHECK ("honey_kg" BETWEEN 0 AND 300),
  "pollen_frames" REAL CHECK ("pollen_frames" BETWEEN 0 AND 60),
  "empty_comb_frames" REAL CHECK ("empty_comb_frames" BETWEEN 0 AND 60),
  "weight_kg" REAL CHECK ("weight_kg" BETWEEN 0 AND 300),
  "temper" INTEGER CHECK ("temper" BETWEEN 1 AND 5),
  "disease" TEXT
    CHECK ("disease" IN ('suspect_afb', 'suspect_efb', 'chalkbrood', 'sacbrood', 'nosema',
      'other')),
  "drones_seen" INTEGER CHECK ("drones_seen" IN (0, 1)),
  "reader" TEXT,
  "sheet" TEXT
    REFERENCES "sheets" ("sheet") DEFERRABLE INITIALLY DEFERRED,
  "line" INTEGER CHECK ("line" BETWEEN 1 AND 10000),
  "notes" TEXT,
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "frames" (
  "inspection" TEXT NOT NULL CHECK ("inspection" <> '')
    REFERENCES "inspections" ("record") DEFERRABLE INITIALLY DEFERRED,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "box" INTEGER NOT NULL CHECK ("box" BETWEEN 1 AND 12),
  "slot" INTEGER NOT NULL CHECK ("slot" BETWEEN 1 AND 60),
  "side" TEXT NOT NULL CHECK ("side" IN ('a', 'b')),
  "bees_pct" REAL CHECK ("bees_pct" BETWEEN 0 AND 100),
  "eggs_pct" REAL CHECK ("eggs_pct" BETWEEN 0 AND 100),
  "open_pct" REAL CHECK ("open_pct" BETWEEN 0 AND 100),
  "sealed_pct" REAL CHECK ("sealed_pct" BETWEEN 0 AND 100),
  "drone_pct" REAL CHECK ("drone_pct" BETWEEN 0 AND 100),
  "pollen_pct" REAL CHECK ("pollen_pct" BETWEEN 0 AND 100),
  "nectar_pct" REAL CHECK ("nectar_pct" BETWEEN 0 AND 100),
  "honey_pct" REAL CHECK ("honey_pct" BETWEEN 0 AND 100),
  "empty_pct" REAL CHECK ("empty_pct" BETWEEN 0 AND 100),
  "undrawn_pct" REAL CHECK ("undrawn_pct" BETWEEN 0 AND 100),
  "mould" INTEGER CHECK ("mould" IN (0, 1)),
  PRIMARY KEY ("inspection", "box", "slot", "side")
) STRICT;

CREATE TABLE "seams" (
  "inspection" TEXT NOT NULL CHECK ("inspection" <> '')
    REFERENCES "inspections" ("record") DEFERRABLE INITIALLY DEFERRED,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "box" INTEGER NOT NULL CHECK ("box" BETWEEN 1 AND 12),
  "from_above" REAL CHECK ("from_above" BETWEEN 0 AND 40),
  "from_below" REAL CHECK ("from_below" BETWEEN 0 AND 40),
  "at_least" INTEGER CHECK ("at_least" IN (0, 1)),
  PRIMARY KEY ("inspection", "box")
) STRICT;

CREATE TABLE "washes" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "washes" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "method" TEXT CHECK ("method" IN ('alcohol', 'sugar', 'co2', 'soap', 'board')),
  "bees" INTEGER NOT NULL CHECK ("bees" BETWEEN 1 AND 5000),
  "mites" INTEGER NOT NULL CHECK ("mites" BETWEEN 0 AND 5000),
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "events" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "events" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "time" TEXT CHECK ("time" GLOB '[0-2][0-9]:[0-5][0-9]'),
  "kind" TEXT NOT NULL
    CHECK ("kind" IN ('box_added', 'box_removed', 'reversed', 'frames_moved', 'frames_given',
      'frames_taken', 'bees_shaken', 'stacked', 'unstacked', 'united', 'split',
      'places_changed', 'queen_introduced', 'queen_lost', 'queen_cell_given',
      'queen_marked', 'queen_removed', 'queen_seen_laying', 'cells_removed',
      'installed', 'excluder_on', 'excluder_off', 'paper_open', 'fed',
      'treated', 'treatment_off', 'supered', 'harvested', 'wrapped',
      'unwrapped', 'moved', 'swarmed', 'robbed', 'poisoned', 'sold', 'bought',
      'lost', 'bloom', 'died', 'verdict', 'note')),
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "other_hive" TEXT
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "other_yard" TEXT
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "other_colony" TEXT,
  "queen" TEXT
    REFERENCES "queens" ("queen") DEFERRABLE INITIALLY DEFERRED,
  "what" TEXT
    CHECK ("what" IN ('sealed_brood', 'open_brood', 'stores', 'drawn', 'foundation',
      'nurse_bees', 'syrup_1_1', 'syrup_2_1', 'fondant', 'dry_sugar',
      'honey_comb', 'pollen_patty', 'pollen_feed')),
  "with_bees" INTEGER CHECK ("with_bees" IN (0, 1)),
  "amount" REAL CHECK ("amount" BETWEEN 0 AND 1000000),
  "unit" TEXT CHECK ("unit" IN ('kg', 'l', 'frames', 'boxes', 'bees')),
  "method" TEXT,
  "dose" TEXT,
  "batch" TEXT,
  "task" TEXT
    REFERENCES "tasks" ("task") DEFERRABLE INITIALLY DEFERRED,
  "sheet" TEXT
    REFERENCES "sheets" ("sheet") DEFERRABLE INITIALLY DEFERRED,
  "detail" TEXT,
  "withdrawal_days" INTEGER CHECK ("withdrawal_days" BETWEEN 0 AND 1000),
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "tasks" (
  "task" TEXT NOT NULL CHECK ("task" <> ''),
  "kind" TEXT NOT NULL CHECK ("kind" <> ''),
  "yard" TEXT
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "hive" TEXT
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "other_hive" TEXT
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "other_colony" TEXT,
  "plan" TEXT
    REFERENCES "plans" ("plan") DEFERRABLE INITIALLY DEFERRED,
  "visit" TEXT
    REFERENCES "visits" ("visit") DEFERRABLE INITIALLY DEFERRED,
  "method" TEXT
    CHECK ("method" IN ('leave', 'room', 'feed', 'sealed_frames', 'nurse_bees', 'stack',
      'change_places', 'unite')),
  "what" TEXT
    CHECK ("what" IN ('sealed_brood', 'open_brood', 'stores', 'drawn', 'foundation',
      'nurse_bees', 'syrup_1_1', 'syrup_2_1', 'fondant', 'dry_sugar',
      'honey_comb', 'pollen_patty', 'pollen_feed')),
  "earliest" TEXT CHECK ("earliest" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "latest" TEXT CHECK ("latest" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "due_on" TEXT CHECK ("due_on" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "planned_on" TEXT CHECK ("planned_on" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "done_on" TEXT CHECK ("done_on" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "amount" REAL CHECK ("amount" BETWEEN 0 AND 1000000),
  "unit" TEXT CHECK ("unit" IN ('kg', 'l', 'frames', 'boxes', 'bees')),
  "why" TEXT,
  "state" TEXT NOT NULL CHECK ("state" IN ('planned', 'done', 'dropped')),
  "done_record" TEXT,
  PRIMARY KEY ("task")
) STRICT;

CREATE TABLE "weather" (
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "tmin_c" REAL NOT NULL CHECK ("tmin_c" BETWEEN -60 AND 60),
  "tmax_c" REAL NOT NULL CHECK ("tmax_c" BETWEEN -60 AND 60),
  "rain_mm" REAL CHECK ("rain_mm" BETWEEN 0 AND 2000),
  "kind" TEXT NOT NULL CHECK ("kind" IN ('observed', 'forecast', 'normal')),
  "issued" TEXT NOT NULL DEFAULT ''
    CHECK ("issued" = '' OR "issued" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "wind_ms" REAL CHECK ("wind_ms" BETWEEN 0 AND 120),
  "sun_h" REAL CHECK ("sun_h" BETWEEN 0 AND 24),
  PRIMARY KEY ("yard", "date", "kind", "issued")
) STRICT;

CREATE TABLE "flows" (
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "from_day" INTEGER NOT NULL CHECK ("from_day" BETWEEN 1 AND 366),
  "to_day" INTEGER NOT NULL CHECK ("to_day" BETWEEN 1 AND 366),
  "nectar" REAL CHECK ("nectar" BETWEEN 0 AND 3),
  "pollen" REAL CHECK ("pollen" BETWEEN 0 AND 3),
  PRIMARY KEY ("yard", "from_day", "to_day")
) STRICT;

CREATE TABLE "gear" (
  "item" TEXT NOT NULL CHECK ("item" <> ''),
  "place" TEXT NOT NULL CHECK ("place" <> ''),
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "count" REAL NOT NULL CHECK ("count" BETWEEN 0 AND 1000000),
  PRIMARY KEY ("item", "place", "date")
) STRICT;

CREATE TABLE "settings" (
  "name" TEXT NOT NULL CHECK ("name" <> ''),
  "value" TEXT NOT NULL CHECK ("value" <> ''),
  "source" TEXT,
  PRIMARY KEY ("name")
) STRICT;

CREATE TABLE "places" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "places" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "x_m" REAL CHECK ("x_m" BETWEEN -100000 AND 100000),
  "y_m" REAL CHECK ("y_m" BETWEEN -100000 AND 100000),
  "entrance_deg" REAL CHECK ("entrance_deg" BETWEEN -360 AND 360),
  "stand" TEXT,
  "from_date" TEXT NOT NULL
    CHECK ("from_date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "how" TEXT CHECK ("how" IN ('placed', 'moved', 'drawn')),
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "stands" (
  "stand" TEXT NOT NULL CHECK ("stand" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "x_m" REAL NOT NULL CHECK ("x_m" BETWEEN -100000 AND 100000),
  "y_m" REAL NOT NULL CHECK ("y_m" BETWEEN -100000 AND 100000),
  "angle_deg" REAL CHECK ("angle_deg" BETWEEN -360 AND 360),
  "kind" TEXT CHECK ("kind" IN ('stand', 'pallet_2', 'pallet_4')),
  "notes" TEXT,
  PRIMARY KEY ("stand", "yard")
) STRICT;

CREATE TABLE "features" (
  "feature" TEXT NOT NULL CHECK ("feature" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "kind" TEXT NOT NULL CHECK ("kind" IN ('gate', 'truck', 'water', 'fence', 'picture')),
  "x_m" REAL NOT NULL CHECK ("x_m" BETWEEN -100000 AND 100000),
  "y_m" REAL NOT NULL CHECK ("y_m" BETWEEN -100000 AND 100000),
  "x2_m" REAL CHECK ("x2_m" BETWEEN -100000 AND 100000),
  "y2_m" REAL CHECK ("y2_m" BETWEEN -100000 AND 100000),
  "file" TEXT,
  "notes" TEXT,
  PRIMARY KEY ("feature")
) STRICT;

CREATE TABLE "frame_moves" (
  "record" TEXT NOT NULL CHECK ("record" <> ''),
  "supersedes" TEXT UNIQUE
    REFERENCES "frame_moves" ("record") DEFERRABLE INITIALLY DEFERRED,
  "void" INTEGER CHECK ("void" IN (0, 1)),
  "entered_at" TEXT,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "box" INTEGER CHECK ("box" BETWEEN 1 AND 12),
  "slot" INTEGER CHECK ("slot" BETWEEN 1 AND 60),
  "other_hive" TEXT
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "other_box" INTEGER CHECK ("other_box" BETWEEN 1 AND 12),
  "other_slot" INTEGER CHECK ("other_slot" BETWEEN 1 AND 60),
  "with_bees" INTEGER CHECK ("with_bees" IN (0, 1)),
  "task" TEXT
    REFERENCES "tasks" ("task") DEFERRABLE INITIALLY DEFERRED,
  "detail" TEXT,
  PRIMARY KEY ("record")
) STRICT;

CREATE TABLE "frame_types" (
  "frame_type" TEXT NOT NULL CHECK ("frame_type" <> ''),
  "name" TEXT,
  "comb_cm2" REAL CHECK ("comb_cm2" BETWEEN 100 AND 3000),
  "cells_per_cm2" REAL CHECK ("cells_per_cm2" BETWEEN 3.5 AND 4.8),
  "bees_per_cm2" REAL CHECK ("bees_per_cm2" BETWEEN 1.1 AND 1.5),
  "honey_side_kg" REAL CHECK ("honey_side_kg" BETWEEN 0.2 AND 6),
  "frames_per_box" INTEGER CHECK ("frames_per_box" BETWEEN 1 AND 20),
  "box_kg" REAL CHECK ("box_kg" BETWEEN 0.5 AND 40),
  "source" TEXT,
  PRIMARY KEY ("frame_type")
) STRICT;

CREATE TABLE "plans" (
  "plan" TEXT NOT NULL CHECK ("plan" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "target" TEXT CHECK ("target" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "accepted_at" TEXT,
  "objective" REAL CHECK ("objective" BETWEEN -1000000 AND 1000000),
  "basis" TEXT,
  "notes" TEXT,
  PRIMARY KEY ("plan")
) STRICT;

CREATE TABLE "plan_rows" (
  "plan" TEXT NOT NULL CHECK ("plan" <> '')
    REFERENCES "plans" ("plan") DEFERRABLE INITIALLY DEFERRED,
  "option" TEXT NOT NULL CHECK ("option" <> ''),
  "colony" TEXT NOT NULL CHECK ("colony" <> ''),
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "verdict" TEXT
    CHECK ("verdict" IN ('strong', 'fair', 'small_sound', 'queen_suspect', 'queenless',
      'drone_layer', 'laying_workers', 'sick', 'too_small', 'too_early',
      'not_enough_seen')),
  "method" TEXT
    CHECK ("method" IN ('leave', 'room', 'feed', 'sealed_frames', 'nurse_bees', 'stack',
      'change_places', 'unite')),
  "donor_colony" TEXT,
  "donor_hive" TEXT
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "bees_moved" REAL CHECK ("bees_moved" BETWEEN 0 AND 1000000),
  "frames_moved" REAL CHECK ("frames_moved" BETWEEN 0 AND 60),
  "gain" REAL CHECK ("gain" BETWEEN -1000000 AND 1000000),
  "gain_low" REAL CHECK ("gain_low" BETWEEN -1000000 AND 1000000),
  "gain_high" REAL CHECK ("gain_high" BETWEEN -1000000 AND 1000000),
  "donor_cost" REAL CHECK ("donor_cost" BETWEEN -1000000 AND 1000000),
  "why" TEXT,
  PRIMARY KEY ("plan", "option")
) STRICT;

CREATE TABLE "visits" (
  "visit" TEXT NOT NULL CHECK ("visit" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "time" TEXT CHECK ("time" GLOB '[0-2][0-9]:[0-5][0-9]'),
  "notes" TEXT,
  PRIMARY KEY ("visit")
) STRICT;

CREATE TABLE "sheets" (
  "sheet" TEXT NOT NULL CHECK ("sheet" <> ''),
  "yard" TEXT NOT NULL CHECK ("yard" <> '')
    REFERENCES "yards" ("yard") DEFERRABLE INITIALLY DEFERRED,
  "date" TEXT NOT NULL CHECK ("date" GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
  "made_at" TEXT,
  "paper" TEXT,
  PRIMARY KEY ("sheet")
) STRICT;

CREATE TABLE "sheet_lines" (
  "sheet" TEXT NOT NULL CHECK ("sheet" <> '')
    REFERENCES "sheets" ("sheet") DEFERRABLE INITIALLY DEFERRED,
  "line" INTEGER NOT NULL CHECK ("line" BETWEEN 1 AND 10000),
  "hive" TEXT NOT NULL CHECK ("hive" <> '')
    REFERENCES "hives" ("hive") DEFERRABLE INITIALLY DEFERRED,
  "colony" TEXT,
  "expected" TEXT,
  PRIMARY KEY ("sheet", "line")
) STRICT;
