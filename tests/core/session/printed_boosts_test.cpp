// SPDX-License-Identifier: GPL-3.0-or-later
// Boosts that a sheet printed, done without having been accepted before.
#include "core/session/printed_boosts.h"

#include "core/planning/printed_plan.h"
#include "tests/core/session/sheet_lines_fixture.h"

namespace outyard::session {
namespace {

using apiary::EventKind;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

class PrintedBoostTest : public SheetLinesTest {
 protected:
  static apiary::PlanRow row(const char* option, const char* hive, apiary::Method method,
                             std::optional<const char*> donor = std::nullopt) {
    apiary::PlanRow r;
    r.plan = base::PlanId{"26-0148"};
    r.option = option;
    r.hive = HiveId{hive};
    r.colony = ColonyId{hive};
    r.method = method;
    if (donor) {
      r.donorHive = HiveId{*donor};
      r.donorColony = ColonyId{*donor};
    }
    r.framesMoved = 2;
    r.beesMoved = 4000;
    r.gain = 3000;
    r.why = "small and sound";
    return r;
  }
  void print(std::vector<apiary::PlanRow> rows) {
    planning::AcceptedPlan printed;
    printed.plan.plan = base::PlanId{"26-0148"};
    printed.plan.yard = YardId{"TR"};
    printed.plan.date = d;
    printed.plan.target = d.plusDays(40);
    printed.plan.basis = "forecast";
    printed.rows = std::move(rows);
    mustDo(keepPrintedPlan(printed));
    again();
  }
  std::vector<const apiary::Plan*> accepted() const {
    std::vector<const apiary::Plan*> out;
    for (const auto& [key, plan] : season().table<apiary::Plan>()) {
      if (!planning::printedOnly(season(), plan)) out.push_back(&plan);
    }
    return out;
  }
  std::vector<const apiary::Task*> tasksOf(apiary::TaskState state) const {
    std::vector<const apiary::Task*> out;
    for (const auto& [key, task] : season().table<apiary::Task>()) {
      if (task.state == state) out.push_back(&task);
    }
    return out;
  }
};

TEST_F(PrintedBoostTest, StandsOnTheLinesOfBothHives) {
  print({row("stack:TR-01:TR-05:1", "TR-01", apiary::Method::Stack, "TR-05"),
         row("feed:TR-02::1", "TR-02", apiary::Method::Feed)});
  ASSERT_EQ(m_sheet.boosts.size(), 2u);
  EXPECT_EQ(line(1).offers.size(), 1u);
  EXPECT_EQ(line(1).offers, line(5).offers);
  EXPECT_EQ(line(2).offers.size(), 1u);
  EXPECT_TRUE(line(3).offers.empty());
  EXPECT_TRUE(m_sheet.untouched(line(1)));
  m_sheet.boosts[line(1).offers[0]].done = true;
  EXPECT_FALSE(m_sheet.untouched(line(1)));
  EXPECT_FALSE(m_sheet.untouched(line(5)));
  EXPECT_TRUE(accepted().empty());
}

TEST_F(PrintedBoostTest, AStackDoneAsPrintedIsAcceptedAndRecordedThatDay) {
  print({row("stack:TR-01:TR-05:1", "TR-01", apiary::Method::Stack, "TR-05"),
         row("sealed_frames:TR-02:TR-06:2", "TR-02", apiary::Method::SealedFrames, "TR-06")});
  const auto before = tests::allRows(season());
  cell(1, EntryColumn::Seams) = "3";
  cell(5, EntryColumn::Seams) = "9";
  for (auto& boost : m_sheet.boosts) boost.done = boost.row.method == apiary::Method::Stack;
  EXPECT_EQ(read().report.boostsDone, 1);
  enter();
  const auto plans = accepted();
  ASSERT_EQ(plans.size(), 1u);
  EXPECT_EQ(plans[0]->date, d);
  EXPECT_EQ(plans[0]->target, d.plusDays(40));
  // Promised when it was printed: what is entered with it was not known then.
  EXPECT_EQ(plans[0]->acceptedAt, "2026-04-24T19:00:00Z");
  int rows = 0;
  for (const auto& [key, r] : season().table<apiary::PlanRow>()) {
    if (r.plan != plans[0]->plan) continue;
    ++rows;
    EXPECT_EQ(r.option, "stack:TR-01:TR-05:1");
    EXPECT_EQ(r.why, "small and sound");
  }
  EXPECT_EQ(rows, 1);
  const auto stacked = events("TR-01", EventKind::Stacked);
  ASSERT_EQ(stacked.size(), 1u);
  EXPECT_EQ(stacked[0]->date, d);
  EXPECT_EQ(stacked[0]->otherHive, HiveId{"TR-05"});
  EXPECT_EQ(stacked[0]->method, "excluder");
  EXPECT_EQ(stacked[0]->detail, "paper");
  EXPECT_TRUE(at("TR-05", d).stacked());
  const auto done = tasksOf(apiary::TaskState::Done);
  ASSERT_EQ(done.size(), 1u);
  EXPECT_EQ(done[0]->doneRecord, stacked[0]->record);
  EXPECT_EQ(done[0]->plan, plans[0]->plan);
  EXPECT_EQ(done[0]->why, "small and sound");
  // The return visits are planned from that day: the look at 7 to 9 days, the taking off after
  // 3 to 4 weeks (common practice, no source).
  const auto planned = tasksOf(apiary::TaskState::Planned);
  ASSERT_EQ(planned.size(), 2u);
  for (const auto* t : planned) EXPECT_EQ(t->hive, HiveId{"TR-05"});
  // Both looks of the day came first.
  EXPECT_EQ(season().journal<apiary::Inspection>(HiveId{"TR-01"}).at(0)->seams, 3);
  again();
  for (const auto& boost : m_sheet.boosts) EXPECT_NE(boost.row.method, apiary::Method::Stack);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before);
}

TEST_F(PrintedBoostTest, EveryMethodHasItsRecord) {
  print({row("room:TR-01::1", "TR-01", apiary::Method::Room),
         row("feed:TR-02::1", "TR-02", apiary::Method::Feed),
         row("sealed_frames:TR-03:TR-06:2", "TR-03", apiary::Method::SealedFrames, "TR-06"),
         row("nurse_bees:TR-02:TR-05:1", "TR-02", apiary::Method::NurseBees, "TR-05"),
         row("change_places:TR-04:TR-05:1", "TR-04", apiary::Method::ChangePlaces, "TR-05")});
  for (auto& boost : m_sheet.boosts) boost.done = true;
  const auto reading = read();
  EXPECT_EQ(reading.report.boostsDone, 5);
  EXPECT_THAT(reading.report.fedNoAmount, ElementsAre(HiveId{"TR-02"}));
  enter();
  EXPECT_EQ(events("TR-01", EventKind::FramesGiven).at(0)->amount, 2);
  EXPECT_EQ(events("TR-03", EventKind::FramesMoved).at(0)->otherHive, HiveId{"TR-06"});
  EXPECT_EQ(events("TR-02", EventKind::BeesShaken).at(0)->amount, 4000);
  EXPECT_EQ(events("TR-04", EventKind::PlacesChanged).at(0)->otherHive, HiveId{"TR-05"});
  EXPECT_EQ(tasksOf(apiary::TaskState::Done).size(), 5u);
}

TEST_F(PrintedBoostTest, AUnionLeavesTheHiveOfTheDonor) {
  print({row("unite:TR-01:TR-03:1", "TR-01", apiary::Method::Unite, "TR-03")});
  m_sheet.boosts[0].done = true;
  enter();
  EXPECT_TRUE(at("TR-01", d).colonies.empty());
  EXPECT_EQ(events("TR-03", EventKind::United).at(0)->otherHive, HiveId{"TR-01"});
  // The poor queen was taken out before: nobody is sent to do it now.
  for (const auto* t : tasksOf(apiary::TaskState::Planned)) EXPECT_NE(t->kind, "queen_removed");
}

TEST_F(PrintedBoostTest, WhatWasAcceptedMeanwhileIsTickedByItsTask) {
  const auto r = row("stack:TR-01:TR-05:1", "TR-01", apiary::Method::Stack, "TR-05");
  print({r});
  base::SeededIds some(5);
  const auto taken =
      planning::acceptPrinted(season(), *season().find<apiary::Plan>("26-0148"), {r}, d.plusDays(3),
                              some, "2026-04-25T18:00:00Z", plainWord);
  mustDo(acceptPlan(taken.plan, taken.rows, taken.tasks));
  again();
  EXPECT_TRUE(m_sheet.boosts.empty());
  ASSERT_EQ(line(1).tasks.size(), 1u);  // though planned for another day
  line(1).ticked.insert(line(1).tasks[0]);
  const auto reading = read();
  EXPECT_THAT(reading.report.needDialog, IsEmpty());  // its card says all
  mustDo(enterSheet(reading));
  EXPECT_TRUE(at("TR-05", d).stacked());
  EXPECT_EQ(accepted().size(), 1u);
  again();
  EXPECT_TRUE(m_sheet.boosts.empty());  // done
}

TEST_F(PrintedBoostTest, WhatCannotBeDoneRefusesTheWholeSheet) {
  print({row("stack:TR-01:TR-05:1", "TR-01", apiary::Method::Stack, "TR-05"),
         row("stack:TR-02:TR-05:1", "TR-02", apiary::Method::Stack, "TR-05")});
  cell(3, EntryColumn::Seams) = "4";
  for (auto& boost : m_sheet.boosts) boost.done = true;
  EXPECT_THAT(refused(enterSheet(read())), Contains("session.already_stacked"));
}

TEST_F(PrintedBoostTest, ThePrintedPlanIsNoAcceptedOne) {
  print({row("stack:TR-01:TR-05:1", "TR-01", apiary::Method::Stack, "TR-05")});
  const auto* plan = season().find<apiary::Plan>("26-0148");
  ASSERT_NE(plan, nullptr);
  EXPECT_TRUE(planning::printedOnly(season(), *plan));
  apiary::Plan other = *plan;
  other.acceptedAt = "2026-04-25T18:00:00Z";
  EXPECT_FALSE(planning::printedOnly(season(), other));
  other.acceptedAt.clear();
  other.plan = base::PlanId{"from a table"};
  EXPECT_FALSE(planning::printedOnly(season(), other));
}

}  // namespace
}  // namespace outyard::session
