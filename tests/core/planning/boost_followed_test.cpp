// SPDX-License-Identifier: GPL-3.0-or-later
// After a boost is recorded the forecast of both colonies follows it: the donor falls and the
// receiver rises by bees that moved. Each of these is recorded by its verb and held against the
// same season without the record.
#include <gtest/gtest.h>

#include "core/forecast/colony_forecast.h"
#include "core/session/commands.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

using base::ColonyId;
using base::Date;
using base::HiveId;
using session::Session;
using testing::kSpringDay;
using testing::SpringYard;
using tests::day;

struct BoostFollowed : ::testing::Test {
  base::SeededIds ids{7};
  base::FixedClock clock{day("2026-05-30"), "2026-05-30T18:00:00Z"};
  std::unique_ptr<Session> session;
  apiary::Season before;
  const Date made = day(kSpringDay);
  const ColonyId weak{"TR-01"}, strong{"TR-02"};

  void SetUp() override { open(2.5, 9); }
  void open(double weakSeams, double strongSeams) {
    SpringYard y;
    y.small("TR-01", weakSeams).strong("TR-02", strongSeams).warm(kSpringDay, 30);
    session = std::move(
        Session::open(std::make_unique<tests::MemoryStore>(y.take()), ids, clock).value());
    before = session->season();
  }
  void record(session::CommandPtr command) {
    const auto done = session->execute(*command);
    ASSERT_TRUE(done.ok()) << done.failure().messages.front().key;
  }
  struct Pair {
    double bees = 0, sealed = 0;
  };
  /// The day's median from everything recorded up to then.
  Pair at(const apiary::Season& season, const ColonyId& colony, int after) const {
    forecast::ForecastAsk ask;
    ask.from = ask.to = made.plusDays(after);
    ask.members = 128;
    const auto f = forecast::forecastColony(season, colony, ask);
    EXPECT_TRUE(f) << colony.str();
    if (!f) return {};
    return {f->days.front().bees.median, f->days.front().sealed.median};
  }
  /// With the record less without it.
  double moreBees(const ColonyId& colony, int after) const {
    return at(session->season(), colony, after).bees - at(before, colony, after).bees;
  }
  double moreSealed(const ColonyId& colony, int after) const {
    return at(session->season(), colony, after).sealed - at(before, colony, after).sealed;
  }
  session::FrameGift gift(apiary::Goods what, double amount) const {
    session::FrameGift g;
    g.toHive = HiveId{"TR-01"};
    g.fromHive = HiveId{"TR-02"};
    g.date = made;
    g.what = what;
    g.amount = amount;
    return g;
  }
};

TEST_F(BoostFollowed, CombsOfSealedBroodGoOver) {
  record(session::giveFrames(gift(apiary::Goods::SealedBrood, 1)));
  const double up = moreSealed(weak, 1), down = moreSealed(strong, 1);
  EXPECT_GT(up, 1000);
  EXPECT_LT(down, -1000);
  // What comes in went out (the two colonies' own brood hatches alike in both seasons).
  EXPECT_NEAR(up, -down, 0.35 * up);
  // Hatched a fortnight later, they are bees.
  EXPECT_GT(moreBees(weak, 14), 500);
  EXPECT_LT(moreBees(strong, 14), -500);
}

TEST_F(BoostFollowed, ShakenNurseBeesGoOver) {
  record(session::giveFrames(gift(apiary::Goods::NurseBees, 2400)));
  const double up = moreBees(weak, 1), down = moreBees(strong, 1);
  // Half fly home (common practice, no source).
  EXPECT_NEAR(up, 1200, 360);
  EXPECT_NEAR(down, -1200, 360);
}

TEST_F(BoostFollowed, StackedTheBeesGoUp) {
  record(session::stackOver(
      {HiveId{"TR-01"}, HiveId{"TR-02"}, made, apiary::Beneath::Excluder, true, std::nullopt}));
  const double up = moreBees(weak, 7), down = moreBees(strong, 7);
  // 3,000 to 6,000 bees move up in a week (common practice, no source).
  EXPECT_GT(up, 2000);
  EXPECT_LT(up, 7500);
  EXPECT_LT(down, -1500);
  EXPECT_LT(-down, 1.5 * up);
}

TEST_F(BoostFollowed, UnitedTheBeesStayWithTheOther) {
  session::Uniting u;
  u.staysHive = HiveId{"TR-02"};
  u.goesHive = HiveId{"TR-01"};
  u.date = made;
  const double gone = at(before, weak, 1).bees;
  record(session::unite(u));
  forecast::ForecastAsk ask;
  ask.from = ask.to = made.plusDays(1);
  EXPECT_FALSE(forecast::forecastColony(session->season(), weak, ask));
  // All its bees come over, but for some that do not arrive.
  EXPECT_GT(moreBees(strong, 1), 0.7 * gone);
  EXPECT_LT(moreBees(strong, 1), gone);
}

TEST_F(BoostFollowed, SwappedStandsTheFieldBeesChangeOver) {
  record(session::swapStands(HiveId{"TR-01"}, HiveId{"TR-02"}, made));
  const double up = moreBees(weak, 1), down = moreBees(strong, 1);
  EXPECT_GT(up, 300);
  EXPECT_LT(down, -300);
  EXPECT_NEAR(up, -down, 0.35 * up);  // what one gains the other loses, but for the deaths of a day
}

TEST_F(BoostFollowed, JoinedInTheStackTheBeesStayWithTheLower) {
  record(session::stackOver(
      {HiveId{"TR-01"}, HiveId{"TR-02"}, made, apiary::Beneath::Excluder, true, std::nullopt}));
  before = session->season();
  record(session::joinStack({HiveId{"TR-02"}, weak, made.plusDays(9), std::nullopt}));
  EXPECT_GT(moreBees(strong, 10), 500);
}

}  // namespace
}  // namespace outyard::planning
