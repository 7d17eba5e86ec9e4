// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/session.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iostream>

#include "core/apiary/validate.h"
#include "core/session/change_builder.h"
#include "core/session/commands.h"
#include "tests/support/random_verbs.h"
#include "tests/support/season_builder.h"

namespace outyard::session {
namespace {

using testing::Contains;
using testing::ElementsAre;
using tests::allRows;
using tests::day;
using tests::keysOf;

struct SessionTest : testing::Test {
  base::SeededIds ids{7};
  base::FixedClock clock{day("2026-05-01"), "2026-05-01T18:00:00Z"};
  tests::MemoryStore* store = nullptr;
  std::unique_ptr<Session> session;

  void SetUp() override {
    auto own = std::make_unique<tests::MemoryStore>(tests::smallSeason());
    store = own.get();
    session = std::move(Session::open(std::move(own), ids, clock).value());
  }
};

apiary::Event fed(const char* hive, const char* date) {
  apiary::Event e;
  e.kind = apiary::EventKind::Fed;
  e.hive = HiveId{hive};
  e.date = day(date);
  e.what = apiary::Goods::Syrup11;
  e.amount = 2;
  e.unit = apiary::Unit::L;
  return e;
}

TEST_F(SessionTest, ExecutesUndoesAndRedoesTheSameRows) {
  const auto start = allRows(session->season());
  ASSERT_TRUE(session->execute(*recordEvent(fed("TR-01", "2026-04-20"))).ok());
  const auto after = allRows(session->season());
  EXPECT_EQ(after.size(), start.size() + 1);
  EXPECT_EQ(allRows(store->kept()), after);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(allRows(session->season()), start);
  EXPECT_EQ(allRows(store->kept()), start);
  ASSERT_TRUE(session->redo().ok());
  EXPECT_EQ(allRows(session->season()), after) << "redo brings back the same record id";
}

TEST_F(SessionTest, ARefusingDiskChangesNothingAnywhere) {
  ASSERT_TRUE(session->execute(*recordEvent(fed("TR-01", "2026-04-20"))).ok());
  ASSERT_TRUE(session->execute(*recordEvent(fed("TR-02", "2026-04-20"))).ok());
  ASSERT_TRUE(session->undo().ok());
  const auto before = allRows(session->season());
  const auto revision = session->season().revision();
  int told = 0;
  const auto token = session->subscribe([&](const Notice&) { ++told; });
  store->refuse = true;
  EXPECT_THAT(keysOf(session->execute(*recordEvent(fed("TR-03", "2026-04-20")))),
              ElementsAre("test.refused"));
  EXPECT_FALSE(session->undo().ok());
  EXPECT_FALSE(session->redo().ok());
  EXPECT_EQ(allRows(session->season()), before);
  EXPECT_EQ(allRows(store->kept()), before);
  EXPECT_EQ(session->season().revision(), revision);
  EXPECT_EQ(told, 0);
  EXPECT_TRUE(session->canUndo());
  EXPECT_TRUE(session->canRedo()) << "a refused step does not cost what could be redone";
  store->refuse = false;
  EXPECT_TRUE(session->redo().ok());
}

TEST_F(SessionTest, NoOpsLeaveNoStep) {
  ASSERT_TRUE(session->execute(*editHiveNotes(HiveId{"TR-01"}, "")).ok());
  EXPECT_FALSE(session->canUndo());
  EXPECT_EQ(store->commits, 0);
  ASSERT_TRUE(session->execute(*arrange({{HiveId{"TR-01"}, 2, 3, std::nullopt, ""}})).ok());
  EXPECT_FALSE(session->canUndo()) << "dropped where it was";
}

TEST_F(SessionTest, ANewStepClearsWhatCouldBeRedone) {
  ASSERT_TRUE(session->execute(*recordEvent(fed("TR-01", "2026-04-20"))).ok());
  ASSERT_TRUE(session->undo().ok());
  ASSERT_TRUE(session->canRedo());
  ASSERT_TRUE(session->execute(*recordEvent(fed("TR-02", "2026-04-20"))).ok());
  EXPECT_FALSE(session->canRedo());
  EXPECT_THAT(keysOf(session->redo()), ElementsAre("session.nothing_to_redo"));
  ASSERT_TRUE(session->undo().ok());
  EXPECT_THAT(keysOf(session->undo()), ElementsAre("session.nothing_to_undo"));
}

TEST_F(SessionTest, NoticesNameHivesAndYardsUntilTheTokenGoes) {
  std::vector<Notice> told;
  auto token = session->subscribe([&](const Notice& n) { told.push_back(n); });
  ASSERT_TRUE(session
                  ->execute(*stackOver({HiveId{"TR-01"}, HiveId{"TR-05"}, day("2026-04-25"),
                                        Beneath::Excluder, true, std::nullopt}))
                  .ok());
  ASSERT_EQ(told.size(), 1u);
  EXPECT_EQ(told[0].cause, Notice::Cause::Executed);
  EXPECT_THAT(told[0].hives, testing::UnorderedElementsAre(HiveId{"TR-01"}, HiveId{"TR-05"}));
  EXPECT_THAT(told[0].yards, ElementsAre(YardId{"TR"}));
  EXPECT_EQ(told[0].revision, session->season().revision());
  ASSERT_TRUE(session->undo().ok());
  ASSERT_EQ(told.size(), 2u);
  EXPECT_EQ(told[1].cause, Notice::Cause::Undone);
  token.reset();
  ASSERT_TRUE(session->redo().ok());
  EXPECT_EQ(told.size(), 2u);
}

TEST_F(SessionTest, WhatWasDoneIsNotInTheFuture) {
  EXPECT_THAT(keysOf(session->check(*recordEvent(fed("TR-01", "2026-05-02")))),
              ElementsAre("session.in_the_future"));
  EXPECT_TRUE(session->check(*recordEvent(fed("TR-01", "2026-05-01"))).ok());
  // The season's own working date may lie ahead of the clock (the sample season).
  ASSERT_TRUE(session->execute(*changeSetting("working_date", "2026-06-10", "")).ok());
  EXPECT_EQ(session->workingDate(), day("2026-06-10"));
  EXPECT_TRUE(session->check(*recordEvent(fed("TR-01", "2026-06-10"))).ok());
  EXPECT_FALSE(session->check(*recordEvent(fed("TR-01", "2026-06-11"))).ok());
  // And one that lies behind it takes nothing away.
  ASSERT_TRUE(session->execute(*changeSetting("working_date", "2026-03-01", "")).ok());
  EXPECT_TRUE(session->check(*recordEvent(fed("TR-01", "2026-05-01"))).ok());
}

TEST_F(SessionTest, AListThatDoesNotFitThrowsBeforeTheDisk) {
  class Broken : public Command {
   public:
    base::Message title() const override { return base::message("test.broken"); }
    base::Result<void> check(const apiary::Season&) const override { return {}; }
    apiary::ChangeList changes(const apiary::Season& season, const Context&) const override {
      const auto row = season.row(apiary::TableId::Yards, "TR").value();
      return {{apiary::TableId::Yards, "TR", std::nullopt, row}};
    }
  };
  EXPECT_THROW(static_cast<void>(session->execute(Broken{})), std::logic_error);
  EXPECT_EQ(store->commits, 0);
  EXPECT_FALSE(session->canUndo());
}

TEST_F(SessionTest, ReadyChangesMustStandOnThisSeason) {
  const auto row = session->season().row(apiary::TableId::Yards, "TR").value();
  auto other = row;
  other.values[1] = std::string("Other name");
  const apiary::ChangeList good{{apiary::TableId::Yards, "TR", row, other}};
  const auto title = base::message("test.import");
  ASSERT_TRUE(session->execute(*applyChanges(title, good)).ok());
  EXPECT_EQ(session->undoTitle(), title);
  EXPECT_THAT(keysOf(session->check(*applyChanges(title, good))),
              ElementsAre("session.changed_meanwhile"));
}

TEST_F(SessionTest, BuilderSeesItsOwnRowsAndDropsWhatChangesNothing) {
  const Context context{ids, clock};
  ChangeBuilder b(session->season(), context);
  apiary::Yard y = *session->season().yard(YardId{"TR"});
  y.name = "New";
  b.put(y);
  EXPECT_EQ(b.find<apiary::Yard>("TR")->name, "New");
  y.name = "Yard TR";
  b.put(y);
  apiary::Yard z;
  z.yard = YardId{"ZZ"};
  b.put(z);
  b.remove<apiary::Yard>("ZZ");
  EXPECT_FALSE(b.find<apiary::Yard>("ZZ"));
  EXPECT_TRUE(b.take().empty());
}

// A season in which 400 senseless and sensible verbs were tried keeps its order: no fault between
// rows, hives say where they stand, undo gives the start, redo the end.
TEST(SessionRandom, VerbsKeepTheSeasonWhole) {
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    std::cout << "seed " << seed << '\n';
    SCOPED_TRACE(seed);
    base::SeededIds ids(seed + 1000);
    base::FixedClock clock(day("2026-12-31"), "2026-12-31T18:00:00Z");
    auto own = std::make_unique<tests::MemoryStore>(tests::smallSeason());
    auto* store = own.get();
    auto session = std::move(Session::open(std::move(own), ids, clock).value());
    const auto start = allRows(session->season());
    tests::RandomVerbs verbs(seed);
    int done = 0;
    for (int i = 0; i < 400; ++i) {
      const auto command = verbs.next(session->season());
      if (session->execute(*command).ok()) ++done;
      const auto faults = apiary::checkSeason(session->season());
      for (const auto& [key, hive] : session->season().table<apiary::Hive>()) {
        ASSERT_FALSE(session->season().journal<apiary::Place>(hive.hive).empty())
            << key << " after " << command->title().key;
      }
      ASSERT_TRUE(faults.empty()) << "after " << command->title().key << ": "
                                  << apiary::tableSpec(faults[0].table).name << ' ' << faults[0].key
                                  << ' ' << faults[0].what.key;
    }
    EXPECT_GT(done, 100) << "too few verbs passed their checks to say anything";
    for (const auto& row : allRows(session->season())) {
      ASSERT_TRUE(apiary::checkRow(row).empty()) << apiary::tableSpec(row.table).name;
    }
    for (const auto& [key, hive] : session->season().table<apiary::Hive>()) {
      const auto* place = session->season().journal<apiary::Place>(hive.hive).back();
      EXPECT_EQ(hive.yard, place->yard) << key;
      EXPECT_EQ(hive.xM, place->xM) << key;
    }
    const auto end = allRows(session->season());
    while (session->canUndo()) ASSERT_TRUE(session->undo().ok());
    EXPECT_EQ(allRows(session->season()), start);
    EXPECT_EQ(allRows(store->kept()), start);
    while (session->canRedo()) ASSERT_TRUE(session->redo().ok());
    EXPECT_EQ(allRows(session->season()), end);
    EXPECT_EQ(allRows(store->kept()), end);
  }
}

}  // namespace
}  // namespace outyard::session
