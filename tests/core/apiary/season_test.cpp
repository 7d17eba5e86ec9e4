// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/season.h"

#include <gtest/gtest.h>

#include "core/apiary/state.h"
#include "core/apiary/validate.h"

namespace outyard::apiary {
namespace {

Date day(const char* iso) {
  return Date::parse(iso).value();
}

template <class T>
Change added(const T& record) {
  const Row row = toRow(record);
  return Change{row.table, rowKey(row), std::nullopt, row};
}

template <class T>
T record(const char* id) {
  T r;
  r.record = RecordId(id);
  return r;
}

/// One yard, one hive with a colony from 2025 on, two boxes.
Season small() {
  Season s;
  Yard y;
  y.yard = YardId("Y");
  Hive h;
  h.hive = HiveId("H1");
  h.yard = y.yard;
  auto p = record<Place>("p1");
  p.hive = h.hive;
  p.yard = y.yard;
  p.xM = 3;
  p.fromDate = day("2025-04-01");
  auto c = record<ColonyStay>("c1");
  c.colony = ColonyId("H1");
  c.hive = h.hive;
  c.fromDate = day("2025-04-01");
  auto b = record<Box>("b1");
  b.hive = h.hive;
  b.date = day("2025-04-01");
  b.frameType = "langstroth_deep";
  b.frames = 10;
  auto b2 = b;
  b2.record = RecordId("b2");
  b2.position = 2;
  s.apply({added(y), added(h), added(p), added(c), added(b), added(b2)});
  return s;
}

TEST(Season, FoldsAHive) {
  const Season s = small();
  const HiveState before = hiveOn(s, HiveId("H1"), day("2025-03-31"));
  EXPECT_FALSE(before.present);
  EXPECT_TRUE(before.colonies.empty());
  const HiveState now = hiveOn(s, HiveId("H1"), day("2026-04-01"));
  EXPECT_TRUE(now.present);
  EXPECT_EQ(now.status, HiveStatus::Live);
  EXPECT_EQ(now.boxes.size(), 2U);
  EXPECT_EQ(now.xM, 3);
  EXPECT_EQ(now.chambersOf(ColonyId("H1")), 2);
  EXPECT_EQ(yardOn(s, YardId("Y"), day("2026-04-01")).size(), 1U);
  EXPECT_TRUE(checkSeason(s).empty());
}

TEST(Season, LaterStackReplacesTheWholeEarlierOne) {
  Season s = small();
  auto b = record<Box>("b3");
  b.hive = HiveId("H1");
  b.date = day("2026-04-10");
  b.frameType = "langstroth_deep";
  s.apply({added(b)});
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-04-09")).boxes.size(), 2U);
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-04-10")).boxes.size(), 1U);
}

TEST(Season, SupersededAndVoidRecordsNoLongerCount) {
  Season s = small();
  auto i = record<Inspection>("i1");
  i.hive = HiveId("H1");
  i.date = day("2026-04-10");
  i.seams = 4;
  auto better = i;
  better.record = RecordId("i2");
  better.supersedes = RecordId("i1");
  better.seams = 6;
  s.apply({added(i)});
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-04-20")).colonies[0].lastInspection->seams, 4);
  s.apply({added(better)});
  ASSERT_EQ(s.journal<Inspection>(HiveId("H1")).size(), 1U);
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-04-20")).colonies[0].lastInspection->seams, 6);
  auto withdrawn = better;
  withdrawn.record = RecordId("i3");
  withdrawn.supersedes = RecordId("i2");
  withdrawn.isVoid = true;
  s.apply({added(withdrawn)});
  EXPECT_TRUE(s.journal<Inspection>(HiveId("H1")).empty());
  EXPECT_EQ(s.allOf<Inspection>(HiveId("H1")).size(), 3U);
  EXPECT_TRUE(checkSeason(s).empty());
}

TEST(Season, DeathEndsTheStayAndEmptyBoxesEndTheDeath) {
  Season s = small();
  auto ended = *s.find<ColonyStay>("c1");
  ended.record = RecordId("c2");
  ended.supersedes = RecordId("c1");
  ended.toDate = day("2026-02-01");
  auto died = record<Event>("e1");
  died.hive = HiveId("H1");
  died.date = day("2026-02-01");
  died.kind = EventKind::Died;
  s.apply({added(ended), added(died)});
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-01-31")).status, HiveStatus::Live);
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-02-01")).status, HiveStatus::Dead);
  auto b = record<Box>("b9");
  b.hive = HiveId("H1");
  b.date = day("2026-03-01");
  b.frameType = "langstroth_deep";
  s.apply({added(b)});
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-03-02")).status, HiveStatus::Empty);
}

TEST(Season, BoxesSetOverAnotherHiveAreGoneFromTheirStand) {
  Season s = small();
  Hive other;
  other.hive = HiveId("H2");
  other.yard = YardId("Y");
  auto stacked = record<Event>("e1");
  stacked.hive = HiveId("H1");
  stacked.otherHive = other.hive;
  stacked.date = day("2026-04-20");
  stacked.kind = EventKind::Stacked;
  s.apply({added(other), added(stacked)});
  EXPECT_EQ(hiveOn(s, HiveId("H1"), day("2026-04-19")).boxes.size(), 2U);
  EXPECT_TRUE(hiveOn(s, HiveId("H1"), day("2026-04-20")).boxes.empty());
}

TEST(Season, FoulBroodIsClearedOnlyByName) {
  Season s = small();
  auto i = record<Inspection>("i1");
  i.hive = HiveId("H1");
  i.date = day("2026-04-10");
  i.disease = Disease::SuspectAfb;
  auto later = record<Inspection>("i2");
  later.hive = HiveId("H1");
  later.date = day("2026-04-15");
  s.apply({added(i), added(later)});
  EXPECT_FALSE(foulBroodIn(s, YardId("Y"), day("2026-04-09")));
  EXPECT_EQ(foulBroodIn(s, YardId("Y"), day("2026-04-20")), HiveId("H1"));
  auto note = record<Event>("e1");
  note.hive = HiveId("H1");
  note.date = day("2026-04-22");
  note.method = "health_clear";
  s.apply({added(note)});
  EXPECT_TRUE(foulBroodIn(s, YardId("Y"), day("2026-04-21")));
  EXPECT_FALSE(foulBroodIn(s, YardId("Y"), day("2026-04-22")));
}

TEST(Season, ReversedChangesRestoreAndCopiesStandAlone) {
  Season s = small();
  const auto before = s.rows(TableId::Colonies);
  auto i = record<Inspection>("i1");
  i.hive = HiveId("H1");
  i.date = day("2026-04-10");
  const ChangeList changes{added(i)};
  s.apply(changes);
  const Season copy = s;
  s.apply(reversed(changes));
  EXPECT_EQ(s.rows(TableId::Colonies), before);
  EXPECT_TRUE(s.journal<Inspection>(HiveId("H1")).empty());
  EXPECT_EQ(copy.journal<Inspection>(HiveId("H1")).size(), 1U);
  EXPECT_THROW(s.apply(reversed(changes)), std::logic_error);
}

TEST(CheckSeason, FindsWhatIsWrongBetweenRows) {
  struct Case {
    const char* fault;
    std::function<void(Season&)> spoil;
  };
  const std::vector<Case> cases{
      {"check.unknown_hive",
       [](Season& s) {
         auto i = record<Inspection>("i1");
         i.hive = HiveId("nowhere");
         i.date = day("2026-04-10");
         s.apply({added(i)});
       }},
      {"check.stays_overlap",
       [](Season& s) {
         Hive h;
         h.hive = HiveId("H2");
         h.yard = YardId("Y");
         auto c = record<ColonyStay>("c2");
         c.colony = ColonyId("H1");
         c.hive = h.hive;
         c.fromDate = day("2026-01-01");
         s.apply({added(h), added(c)});
       }},
      {"check.place_taken",
       [](Season& s) {
         auto c = record<ColonyStay>("c2");
         c.colony = ColonyId("other");
         c.hive = HiveId("H1");
         c.fromDate = day("2026-01-01");
         s.apply({added(c)});
       }},
      {"check.colony_not_there",
       [](Season& s) {
         auto w = record<Wash>("w1");
         w.hive = HiveId("H1");
         w.colony = ColonyId("other");
         w.date = day("2026-04-10");
         w.bees = 300;
         s.apply({added(w)});
       }},
      {"check.superseded_twice",
       [](Season& s) {
         auto a = record<Event>("e1");
         a.hive = HiveId("H1");
         a.date = day("2026-04-10");
         auto b = a, c = a;
         b.record = RecordId("e2");
         b.supersedes = RecordId("e1");
         c.record = RecordId("e3");
         c.supersedes = RecordId("e1");
         s.apply({added(a), added(b), added(c)});
       }},
      {"check.supersede_circle",
       [](Season& s) {
         auto a = record<Event>("e1"), b = record<Event>("e2");
         a.hive = b.hive = HiveId("H1");
         a.date = b.date = day("2026-04-10");
         a.supersedes = RecordId("e2");
         b.supersedes = RecordId("e1");
         s.apply({added(a), added(b)});
       }},
      {"check.position_gap",
       [](Season& s) {
         auto b = record<Box>("b5");
         b.hive = HiveId("H1");
         b.date = day("2026-04-10");
         b.position = 2;
         b.frameType = "langstroth_deep";
         s.apply({added(b)});
       }},
      {"check.unknown_frame_type",
       [](Season& s) {
         auto b = record<Box>("b5");
         b.hive = HiveId("H1");
         b.date = day("2026-04-10");
         b.frameType = "shoebox";
         s.apply({added(b)});
       }},
  };
  for (const auto& c : cases) {
    Season s = small();
    c.spoil(s);
    const auto faults = checkSeason(s);
    ASSERT_FALSE(faults.empty()) << c.fault;
    bool found = false;
    for (const auto& f : faults) found = found || f.what.key == c.fault;
    EXPECT_TRUE(found) << c.fault << " but " << faults[0].what.key;
  }
}

}  // namespace
}  // namespace outyard::apiary
