// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/schema.h"

#include <gtest/gtest.h>

#include "core/apiary/validate.h"

namespace outyard::apiary {
namespace {

Date day(const char* iso) {
  return Date::parse(iso).value();
}

TEST(Schema, NamesAndKeysAreUnique) {
  std::set<std::string> names;
  for (const auto& spec : tableSpecs()) {
    EXPECT_TRUE(names.insert(spec.name).second) << spec.name;
    std::set<std::string> columns;
    int keys = 0;
    for (const auto& c : spec.columns) {
      EXPECT_TRUE(columns.insert(c.name).second) << spec.name << "." << c.name;
      keys += c.key ? 1 : 0;
      if (c.type == ColumnType::Integer || c.type == ColumnType::Real) {
        EXPECT_LT(c.min, c.max) << spec.name << "." << c.name;
      }
      if (c.type == ColumnType::Code) {
        EXPECT_FALSE(c.codes.empty());
      }
    }
    EXPECT_GE(keys, 1) << spec.name;
    if (spec.isRecord) {
      EXPECT_EQ(spec.columns[0].name, "record");
      EXPECT_EQ(keys, 1);
    }
  }
  EXPECT_EQ(names.size(), static_cast<std::size_t>(kTableCount));
  EXPECT_EQ(findTable("inspections")->id, TableId::Inspections);
  EXPECT_EQ(findTable("nothing"), nullptr);
}

TEST(Schema, EveryCodeReadsBack) {
  for (int i = 0; i < 41; ++i) {
    const auto kind = static_cast<EventKind>(i);
    EXPECT_EQ(parseCode<EventKind>(code(kind)), kind);
  }
  EXPECT_EQ(code(EventKind::Note), "note");
  EXPECT_EQ(code(EventKind::Verdict), "verdict");
  EXPECT_EQ(code(EventKind::Stacked), "stacked");
  EXPECT_EQ(code(VerdictCode::NotEnoughSeen), "not_enough_seen");
  EXPECT_EQ(code(Method::Unite), "unite");
  EXPECT_EQ(code(Disease::Other), "other");
  EXPECT_FALSE(parseCode<Method>("stacking"));
}

TEST(Schema, StructsSurviveRows) {
  Inspection i;
  i.record = RecordId("r1");
  i.hive = HiveId("TR-01");
  i.date = day("2026-04-20");
  i.time = TimeOfDay::parse("10:30");
  i.seams = 5.25;
  i.eggsSeen = false;  // seen that there are none: not the same as not looked
  i.queenCells = 0;
  i.disease = Disease::Chalkbrood;
  i.notes = "calm";
  const Row row = toRow(i);
  EXPECT_EQ(fromRow<Inspection>(row), i);
  EXPECT_EQ(rowKey(row), "r1");
  const auto& spec = tableSpec(TableId::Inspections);
  const auto at = [&](const char* c) {
    return row.values[static_cast<std::size_t>(spec.columnIndex(c))];
  };
  EXPECT_EQ(at("eggs_seen"), Value{std::int64_t{0}});
  EXPECT_EQ(at("queen_seen"), Value{});
  EXPECT_EQ(at("honey_kg"), Value{});
  EXPECT_EQ(at("void"), Value{});
}

TEST(Validate, CellsByTable) {
  struct Case {
    TableId table;
    const char* column;
    const char* text;
    const char* fault;  ///< nullptr = good
  };
  const std::vector<Case> cases{
      {TableId::Inspections, "date", "2026-02-30", "check.not_date"},
      {TableId::Inspections, "date", "", "check.required"},
      {TableId::Inspections, "seams", "-3", "check.range"},
      {TableId::Inspections, "seams", "40", nullptr},
      {TableId::Inspections, "seams", "40.25", "check.range"},
      {TableId::Inspections, "seams", "4,5", "check.not_number"},
      {TableId::Inspections, "bee_frames", "60", nullptr},
      {TableId::Inspections, "pattern", "0", "check.range"},
      {TableId::Inspections, "pattern", "2.5", "check.not_whole"},
      {TableId::Inspections, "eggs_seen", "yes", "check.not_flag"},
      {TableId::Inspections, "eggs_seen", "0", nullptr},
      {TableId::Inspections, "air_c", "-60", nullptr},
      {TableId::Inspections, "air_c", "61", "check.range"},
      {TableId::Inspections, "disease", "flu", "check.not_code"},
      {TableId::Inspections, "time", "9:30", "check.not_time"},
      {TableId::Frames, "honey_pct", "140", "check.range"},
      {TableId::Events, "kind", "stacked", nullptr},
      {TableId::Yards, "latitude", "95", "check.range"},
      {TableId::Yards, "name", "caf\xe9", "check.not_text"},
  };
  for (const auto& c : cases) {
    const auto& spec = tableSpec(c.table);
    const auto r =
        parseValue(spec.columns[static_cast<std::size_t>(spec.columnIndex(c.column))], c.text);
    if (c.fault) {
      ASSERT_FALSE(r.ok()) << c.column << " " << c.text;
      EXPECT_EQ(r.failure().messages[0].key, c.fault) << c.column << " " << c.text;
    } else {
      EXPECT_TRUE(r.ok()) << c.column << " " << c.text;
    }
  }
}

TEST(Validate, CombContentsSum) {
  CombSide s;
  s.inspection = RecordId("r1");
  s.hive = HiveId("h");
  s.date = day("2026-04-20");
  s.eggsPct = 0;
  s.openPct = 20;
  s.sealedPct = 40;
  s.dronePct = 0;
  s.pollenPct = 10;
  s.nectarPct = 0;
  s.honeyPct = 20;
  s.emptyPct = 10;
  s.undrawnPct = 0;
  EXPECT_TRUE(checkRow(toRow(s)).empty());
  s.emptyPct = 0;  // 90 in all
  ASSERT_EQ(checkRow(toRow(s)).size(), 1U);
  EXPECT_EQ(checkRow(toRow(s))[0].what.key, "check.comb_sum");
  s.emptyPct.reset();  // not everything given: only too much is a fault
  EXPECT_TRUE(checkRow(toRow(s)).empty());
  s.honeyPct = 60;
  EXPECT_EQ(checkRow(toRow(s))[0].what.key, "check.comb_over");
}

}  // namespace
}  // namespace outyard::apiary
