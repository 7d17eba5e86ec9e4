// SPDX-License-Identifier: GPL-3.0-or-later
// A stack that stands in the journal is run through with both colonies' bees, as a what-if run of
// the same stack is.
#include <gtest/gtest.h>

#include <cmath>

#include "core/forecast/past_run.h"
#include "core/forecast/what_if.h"
#include "tests/support/season_builder.h"

namespace outyard::forecast {
namespace {

using base::ColonyId;
using base::Date;
using tests::day;

const ColonyId kSmall{"S"}, kStrong{"D"};
constexpr const char *kBegin = "2026-04-25", *kEnd = "2026-05-16", *kToday = "2026-05-20";

enum class Told { Nothing, Stays, EventAlone, Board };

apiary::ColonyStay stay(tests::SeasonBuilder& b, const char* colony, const char* hive,
                        apiary::ColonyPlace place, const char* from, const char* to) {
  apiary::ColonyStay s;
  static_cast<apiary::RecordHead&>(s) = b.head();
  s.colony = ColonyId{colony};
  s.hive = base::HiveId{hive};
  s.place = place;
  s.fromDate = day(from);
  if (*to) s.toDate = day(to);
  return s;
}

apiary::Season season(Told told, bool stillStands = false) {
  tests::SeasonBuilder b;
  b.yard("Y").hive("S", "Y", 2, 2, 1).livingHive("D", "Y", 4, 2, 2);
  using P = apiary::ColonyPlace;
  if (told == Told::Stays || told == Told::Board) {
    b.put(stay(b, "S", "S", P::Main, "2025-04-01", kBegin));
    b.put(stay(b, "S", "D", told == Told::Stays ? P::OverExcluder : P::OverBoard, kBegin,
               stillStands ? "" : kEnd));
    if (!stillStands) b.put(stay(b, "S", "S", P::Main, kEnd, ""));
  } else {
    b.colony("S", "S");
  }
  b.inspection("S", kBegin, [](apiary::Inspection& i) {
    i.beeFrames = 0.6;
    i.sealedBroodFrames = 720.0 / 6688;
    i.openBroodFrames = 580.0 / 6688;
    i.eggsSeen = true;
    i.honeyKg = 8;
  });
  b.inspection("D", kBegin, [](apiary::Inspection& i) {
    i.beeFrames = 6;
    i.sealedBroodFrames = 2.2;
    i.openBroodFrames = 1.4;
    i.eggsSeen = true;
    i.honeyKg = 15;
  });
  if (told == Told::Nothing) return b.take();
  const auto event = [&](apiary::EventKind kind, const char* date) {
    apiary::Event e;
    static_cast<apiary::RecordHead&>(e) = b.head();
    e.kind = kind;
    e.hive = base::HiveId("S");
    e.colony = kSmall;
    e.otherHive = base::HiveId("D");
    e.otherColony = kStrong;
    e.date = day(date);
    b.put(e);
  };
  event(apiary::EventKind::Stacked, kBegin);
  if (!stillStands) event(apiary::EventKind::Unstacked, kEnd);
  return b.take();
}

std::vector<ColonyForecast> forecastOf(const apiary::Season& s, std::vector<ColonyId> colonies,
                                       int threads = 1) {
  ForecastAsk ask;
  ask.from = day(kToday);
  ask.to = ask.from.plusDays(28);
  base::Progress quiet;
  return forecastColonies(s, colonies, ask, threads, quiet);
}

bool same(const ColonyForecast& a, const ColonyForecast& b) {
  if (a.colony != b.colony || a.days.size() != b.days.size()) return false;
  for (std::size_t k = 0; k < a.days.size(); ++k) {
    const auto &x = a.days[k], &y = b.days[k];
    const auto equal = [](const Band& p, const Band& q) {
      return p.median == q.median && p.low == q.low && p.high == q.high;
    };
    if (!equal(x.bees, y.bees) || !equal(x.brood, y.brood) || !equal(x.honeyKg, y.honeyKg)) {
      return false;
    }
  }
  return true;
}

TEST(PastStack, BothColoniesAreMovedAndThePastAgreesWithTheTrial) {
  const auto stacked = forecastOf(season(Told::Stays), {kSmall, kStrong});
  const auto alone = forecastOf(season(Told::Nothing), {kSmall, kStrong});
  ASSERT_EQ(stacked.size(), 2U);
  // On 20 May, 25 days after: the small one has several times its bees, the donor is behind.
  EXPECT_GT(stacked[0].days[0].bees.median, 2 * alone[0].days[0].bees.median);
  EXPECT_LT(stacked[1].days[0].bees.median, 0.95 * alone[1].days[0].bees.median);

  // The same stack as a trial on the day it was made.
  ForecastAsk ask;
  ask.from = day(kBegin);
  ask.to = day(kToday);
  base::Progress quiet;
  const auto starts = Starts::prepare(season(Told::Nothing), {kSmall, kStrong}, ask, 1, quiet);
  Joint joint;
  joint.date = ask.from;
  joint.until = day(kEnd);
  const std::vector<Date> days{ask.to};
  const auto tried = starts.together(kSmall, kStrong, joint, days);
  const auto up = tried.receiver.bands()[0], down = tried.donor.bands()[0];
  EXPECT_NEAR(std::log(stacked[0].days[0].bees.median / up.bees.median), 0, 0.1);
  EXPECT_NEAR(std::log(stacked[0].days[0].brood.median / up.brood.median), 0, 0.1);
  EXPECT_NEAR(std::log(stacked[1].days[0].bees.median / down.bees.median), 0, 0.1);
}

TEST(PastStack, WhatIsAskedBesideChangesNothing) {
  const auto s = season(Told::Stays);
  const auto both = forecastOf(s, {kSmall, kStrong});
  const auto other = forecastOf(s, {kStrong, kSmall}, 2);
  const auto small = forecastOf(s, {kSmall}), strong = forecastOf(s, {kStrong});
  ASSERT_EQ(small.size(), 1U);
  EXPECT_TRUE(same(both[0], small[0]));
  EXPECT_TRUE(same(both[1], strong[0]));
  EXPECT_TRUE(same(both[0], other[1]));
  EXPECT_TRUE(same(both[1], other[0]));
  EXPECT_EQ(both[0].hive, base::HiveId("S"));
}

TEST(PastStack, AStackThatStillStandsGoesOnSharing) {
  const auto stands = forecastOf(season(Told::Stays, true), {kSmall, kStrong});
  const auto off = forecastOf(season(Told::Stays), {kSmall, kStrong});
  ASSERT_EQ(stands.size(), 2U);
  EXPECT_EQ(stands[0].hive, base::HiveId("D"));
  EXPECT_GT(stands[0].days.back().bees.median, off[0].days.back().bees.median);
}

TEST(PastStack, NothingPassesABoardAndAnUnknownPartnerGivesTheUsualAmount) {
  const auto alone = forecastOf(season(Told::Nothing), {kSmall, kStrong});
  const auto board = forecastOf(season(Told::Board), {kSmall, kStrong});
  EXPECT_LT(board[0].days[0].bees.median, 1.1 * alone[0].days[0].bees.median);
  EXPECT_TRUE(same(board[1], alone[1]));
  // Rows of an event alone, no stay that says where the colony lived.
  const auto event = forecastOf(season(Told::EventAlone), {kSmall});
  ASSERT_EQ(event.size(), 1U);
  EXPECT_GT(event[0].days[0].bees.median, alone[0].days[0].bees.median + 2000);
}

TEST(PastStack, FollowsAChainOfStacksOnce) {
  const auto found = linkedHistories(season(Told::Stays), kSmall, day(kToday));
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].colony, kStrong);
  EXPECT_EQ(found[1].colony, kSmall);
  ASSERT_EQ(found[1].stacks.size(), 1U);
  EXPECT_TRUE(found[1].stacks[0].upper);
  EXPECT_TRUE(found[1].stacks[0].takenOff);
  EXPECT_FALSE(found[0].stacks[0].upper);
  // Stacks of a year that the weather does not reach back to link nobody.
  EXPECT_EQ(linkedHistories(season(Told::Stays), kSmall, day("2028-06-01")).size(), 1U);
}

}  // namespace
}  // namespace outyard::forecast
