// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/bulk.h"
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

struct BulkTest : CommandsTest {
  /// All of the yard at once, as the dialog does it; the names of those it was not done to.
  std::vector<std::string> doAll(const BulkWork& work) {
    std::vector<HiveStep> all;
    std::vector<std::string> left;
    for (const auto& hive : apiary::yardOn(season(), YardId{"TR"}, work.date)) {
      BulkSteps each = bulkSteps(season(), hive.hive, work);
      bool may = !each.nothing;
      for (const auto& step : each.steps) {
        may = may && (each.steps.size() > 1 || session->check(*step.command).ok());
      }
      if (!may) {
        left.push_back(hive.hive.str());
        continue;
      }
      for (auto& step : each.steps) all.push_back(std::move(step));
    }
    if (!all.empty()) mustDo(together(base::message("session.title.bulk", 1), std::move(all)));
    return left;
  }
  BulkWork work(BulkKind kind) const {
    BulkWork w;
    w.kind = kind;
    w.date = d;
    return w;
  }
  std::size_t boxes(const char* hive) const { return at(hive, d).boxes.size(); }
};

TEST_F(BulkTest, SupersAndExcludersOnAndOffAgain) {
  const auto none = doAll(work(BulkKind::SupersOff));
  EXPECT_EQ(none.size(), 7U);
  EXPECT_THAT(doAll(work(BulkKind::AddSuper)), testing::IsEmpty());
  EXPECT_EQ(boxes("TR-01"), 2U);
  EXPECT_EQ(at("TR-01", d).boxes[1].role, apiary::BoxRole::Super);
  EXPECT_THAT(doAll(work(BulkKind::AddSuper)), testing::IsEmpty());
  EXPECT_THAT(doAll(work(BulkKind::ExcluderOn)), testing::IsEmpty());
  EXPECT_EQ(at("TR-05", d).boxes[2].beneath, Beneath::Excluder);
  EXPECT_EQ(at("TR-05", d).boxes[3].beneath, Beneath::None);
  EXPECT_EQ(doAll(work(BulkKind::ExcluderOn)).size(), 7U);
  // A chamber goes under the supers.
  auto chamber = work(BulkKind::AddBox);
  EXPECT_THAT(doAll(chamber), testing::IsEmpty());
  EXPECT_EQ(at("TR-01", d).boxes[1].role, apiary::BoxRole::Chamber);
  EXPECT_THAT(doAll(work(BulkKind::ExcluderOff)), testing::IsEmpty());
  EXPECT_THAT(doAll(work(BulkKind::SupersOff)), testing::IsEmpty());
  EXPECT_EQ(boxes("TR-01"), 2U);
  EXPECT_FALSE(hasSupers(season(), HiveId{"TR-01"}, d));
}

TEST_F(BulkTest, FeedAndTreatEveryColonyOfTheYard) {
  auto feed = work(BulkKind::Feed);
  feed.amount = 2;
  feed.unit = apiary::Unit::L;
  EXPECT_THAT(doAll(feed), testing::ElementsAre("TR-07"));  // nobody lives there
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  auto treat = work(BulkKind::Treat);
  treat.product = "strips";
  treat.withdrawalDays = 42;
  EXPECT_THAT(doAll(treat), testing::ElementsAre("TR-01", "TR-07"));
  int treated = 0;
  for (const auto* e : season().journal<apiary::Event>(HiveId{"TR-05"})) {
    treated += e->kind == apiary::EventKind::Treated;
  }
  EXPECT_EQ(treated, 2);  // both colonies of the stack
  EXPECT_EQ(waitingUntil(season(), HiveId{"TR-05"}, d), d.plusDays(42));
  EXPECT_EQ(waitingUntil(season(), HiveId{"TR-05"}, d.plusDays(42)), std::nullopt);
}

TEST_F(BulkTest, WhatIsWrappedIsNotWrappedAgain) {
  apiary::Event e;
  e.kind = apiary::EventKind::Wrapped;
  e.hive = HiveId{"TR-02"};
  e.date = d;
  mustDo(recordEvent(e));
  EXPECT_THAT(doAll(work(BulkKind::Wrap)), testing::ElementsAre("TR-02"));
  EXPECT_TRUE(at("TR-07", d).wrapped);
  EXPECT_THAT(doAll(work(BulkKind::Unwrap)), testing::IsEmpty());
  EXPECT_EQ(doAll(work(BulkKind::Unwrap)).size(), 7U);
}

}  // namespace
}  // namespace outyard::session
