// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "tests/core/planning/spring_yard.h"

// What the plan advises is common practice, no source.
namespace outyard::planning {
namespace {

using apiary::Method;
using base::ColonyId;
using base::message;
using testing::findKey;
using testing::hasKey;
using testing::planOf;
using testing::springRequest;
using testing::SpringYard;

int countOf(const BoostProblem& p, const std::string& colony, Method method) {
  return static_cast<int>(std::count_if(p.options.begin(), p.options.end(), [&](const auto& o) {
    return o.colony.str() == colony && o.method == method;
  }));
}
const Barred* barOf(const BoostProblem& p, const std::string& colony) {
  for (const auto& b : p.barred) {
    if (b.colony.str() == colony) return &b;
  }
  return nullptr;
}
BoostProblem problemOf(const apiary::Season& season, const BoostRequest& request) {
  auto made = makeBoostProblem(season, request);
  return made.value();
}

TEST(BoostPlan, ASmallSoundColonyIsSetOverItsStrongNeighbour) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  const BoostOption* o = plan.chosenFor(ColonyId("TR-01"));
  ASSERT_NE(o, nullptr);
  EXPECT_EQ(o->id, "stack:TR-01:TR-02:1");
  EXPECT_EQ(o->method, Method::Stack);
  // A stack moves 3,000 to 6,000 bees up in a week: common practice, no source; the lower end for a
  // donor of nine seams.
  EXPECT_GT(o->beesMoved, 2000);
  EXPECT_LE(o->beesMoved, 6000);
  EXPECT_LT(o->gain.low, o->gain.median);
  EXPECT_LT(o->gain.median, o->gain.high);
  EXPECT_NEAR(o->net, o->benefit - o->donorCost - o->otherCost, 1e-9);
  EXPECT_GT(o->net, 0);
  EXPECT_EQ(o->gear.at("excluder"), 1);
  EXPECT_EQ(o->gear.at("paper"), 1);
  EXPECT_TRUE(hasKey(o->cautions, "planning.caution.lift"));
  EXPECT_TRUE(hasKey(o->cautions, "planning.stack.caution_eggs"));
  EXPECT_EQ(plan.problem.basis, "strength_now");
  EXPECT_EQ(plan.problem.target, tests::day("2026-06-09"));
}

TEST(BoostPlan, AQueenlessColonyIsUnitedAndNeverStacked) {
  SpringYard yard;
  yard.queenless("TR-01").strong("TR-02").warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Stack), 0);
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::SealedFrames), 0);
  ASSERT_NE(plan.chosenFor(ColonyId("TR-01")), nullptr);
  EXPECT_EQ(plan.chosenFor(ColonyId("TR-01"))->id, "unite:TR-01:TR-02:1");
}

TEST(BoostPlan, TwoWeakColoniesAreNotUnited) {
  SpringYard yard;
  yard.queenless("TR-01").small("TR-02", 4).warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Unite), 0);
  EXPECT_EQ(plan.chosenFor(ColonyId("TR-01"))->method, Method::Leave);
}

TEST(BoostPlan, NothingMovesFromOrToASickColony) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  yard.livingHive("TR-03", "TR", 7, 1, 2);
  yard.inspection("TR-03", testing::kSeenDay, [](apiary::Inspection& i) {
    i.seams = 9;
    i.eggsSeen = true;
    i.pattern = 4;
    i.framesWithBrood = 7;
    i.sealedBroodFrames = 3;
    i.disease = apiary::Disease::Nosema;
  });
  const BoostProblem p = problemOf(yard.season(), springRequest());
  ASSERT_NE(barOf(p, "TR-03"), nullptr);
  for (const auto& o : p.options) {
    EXPECT_NE(o.colony.str(), "TR-03");
    EXPECT_TRUE(!o.donorColony || o.donorColony->str() != "TR-03") << o.id;
  }
  EXPECT_FALSE(p.donors.contains("TR-03"));
}

TEST(BoostPlan, FoulBroodAnywhereBarsTheWholeYard) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  yard.livingHive("TR-03", "TR", 7, 1, 1);
  yard.inspection("TR-03", testing::kSeenDay, [](apiary::Inspection& i) {
    i.seams = 5;
    i.disease = apiary::Disease::SuspectAfb;
  });
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_TRUE(p.options.empty());
  EXPECT_TRUE(p.donors.empty());
  EXPECT_NE(barOf(p, "TR-01"), nullptr);
  EXPECT_NE(barOf(p, "TR-02"), nullptr);
}

TEST(BoostPlan, ChalkbroodGivesNoCombs) {
  SpringYard yard;
  yard.small("TR-01", 3).strong("TR-02").warm("2026-04-25");
  const auto look = yard.season().journal<apiary::Inspection>(base::HiveId("TR-02"));
  apiary::Inspection changed = *look.front();
  changed.disease = apiary::Disease::Chalkbrood;
  yard.put(changed);
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(p, "TR-01", Method::SealedFrames), 0);
  EXPECT_EQ(countOf(p, "TR-01", Method::NurseBees), 0);
  EXPECT_EQ(countOf(p, "TR-01", Method::Stack), 1);
}

TEST(BoostPlan, WithoutAStrongNeighbourItIsLeftAndTheReasonSaid) {
  SpringYard yard;
  yard.small("TR-01").small("TR-02").warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  const BoostOption* o = plan.chosenFor(ColonyId("TR-01"));
  ASSERT_NE(o, nullptr);
  EXPECT_EQ(o->method, Method::Leave);
  EXPECT_TRUE(hasKey(o->why, "planning.because.no_donor"));
  EXPECT_EQ(o->net, 0);
}

TEST(BoostPlan, ADonorWithQueenCellsCarriesNoStack) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  apiary::Inspection look =
      *yard.season().journal<apiary::Inspection>(base::HiveId("TR-02")).front();
  look.queenCells = 3;
  yard.put(look);
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Stack), 0);
  EXPECT_TRUE(std::any_of(plan.problem.donorNotes.begin(), plan.problem.donorNotes.end(),
                          [](const auto& n) { return n.why.key == "planning.donor.queen_cells"; }));
}

TEST(BoostPlan, SixSeamsCarryNoStack) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02", 6.75).warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Stack), 0);
  for (const auto& o : plan.problem.options) {
    if (o.method != Method::Leave) continue;
    EXPECT_TRUE(hasKey(o.why, "planning.because.no_carrier"));
  }
}

TEST(BoostPlan, OldEvidenceIsNotSeen) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02", 9, "2026-04-14").warm("2026-04-25");
  const BoostProblem p = problemOf(yard.season(), springRequest());
  ASSERT_NE(barOf(p, "TR-02"), nullptr);
  EXPECT_EQ(barOf(p, "TR-02")->why, message("planning.bar.seen_old", "TR-02", 11, 10.0));
  EXPECT_EQ(countOf(p, "TR-01", Method::Stack), 0);
}

TEST(BoostPlan, BroodCombsGoByTheSeams) {
  SpringYard yard;
  yard.small("TR-01", 2.75)
      .small("TR-02", 3)
      .small("TR-03", 4.75)
      .strong("TR-09")
      .warm("2026-04-25");
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(p, "TR-01", Method::SealedFrames), 0);
  EXPECT_EQ(countOf(p, "TR-02", Method::SealedFrames), 1);
  EXPECT_EQ(countOf(p, "TR-03", Method::SealedFrames), 1);
  EXPECT_EQ(countOf(p, "TR-03", Method::Stack), 0);
  // Brood on seven combs, five kept in April.
  EXPECT_EQ(p.donors.at("TR-09").broodFrames, 2);
}

TEST(BoostPlan, OneStackPerDonorAndFourPerStop) {
  SpringYard yard;
  for (int i = 1; i <= 7; ++i) yard.small("S" + std::to_string(i), 2);
  for (int i = 1; i <= 6; ++i) yard.strong("D" + std::to_string(i), 10);
  yard.warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_TRUE(plan.optimal);
  int stacks = 0;
  std::map<std::string, int> onDonor;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (o->method != Method::Stack) continue;
    ++stacks;
    EXPECT_EQ(++onDonor[o->donorColony->str()], 1);
  }
  EXPECT_EQ(stacks, 4);
}

TEST(BoostPlan, ColdOnTheDayNamesTheFirstWarmDay) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02");
  yard.weather("2026-04-25", 1, 9).weather("2026-04-26", 1, 11.5).warm("2026-04-27");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Stack), 0);
  const BoostOption* leave = plan.chosenFor(ColonyId("TR-01"));
  ASSERT_EQ(leave->method, Method::Leave);
  const auto* wait = findKey(leave->why, "planning.weather.wait");
  ASSERT_NE(wait, nullptr);
  EXPECT_EQ(wait->args.at(1),
            base::Message::Arg(message("planning.weather.too_cold", "2026-04-25", 9.0, 12.0)));
  EXPECT_EQ(std::get<std::string>(wait->args.at(2)), "2026-04-27");
  EXPECT_TRUE(hasKey(plan.problem.notes, "planning.note.weather"));
}

TEST(BoostPlan, AColdSpellAheadWaitsUntilItIsOver) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02");
  yard.weather("2026-04-25", 5, 16);
  for (const char* d : {"2026-04-26", "2026-04-27", "2026-04-28"}) yard.weather(d, 0, 7);
  yard.warm("2026-04-29");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(plan.problem, "TR-01", Method::Stack), 0);
  // Whatever is done instead today, the row says from when a stack is possible: from the last cold
  // day but one on, no three cold days lie ahead, but that day itself is too cold.
  const auto rows = boostRows(plan);
  const auto* wait = findKey(rows.at(0).why, "planning.weather.wait");
  ASSERT_NE(wait, nullptr);
  EXPECT_EQ(std::get<base::Message>(wait->args.at(1)).key, "planning.weather.cold_spell");
  EXPECT_EQ(std::get<std::string>(wait->args.at(2)), "2026-04-29");
}

TEST(BoostPlan, WithoutWeatherTheOptionsStayAndTheNoteSaysSo) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02");
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_TRUE(hasKey(p.notes, "planning.note.no_forecast"));
  EXPECT_EQ(countOf(p, "TR-01", Method::Stack), 1);
}

TEST(BoostPlan, ASettingMovesTheThreshold) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").weather("2026-04-25", 3, 11).warm("2026-04-26");
  EXPECT_EQ(countOf(problemOf(yard.season(), springRequest()), "TR-01", Method::Stack), 0);
  yard.set("boost.stack_min_c", "10");
  EXPECT_EQ(countOf(problemOf(yard.season(), springRequest()), "TR-01", Method::Stack), 1);
  yard.set("boost.stack_min_c", "warm");
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_EQ(countOf(p, "TR-01", Method::Stack), 0);
  EXPECT_TRUE(hasKey(p.notes, "planning.setting_bad"));
}

TEST(BoostPlan, WithoutAnExcluderAtHandThereIsNoStack) {
  SpringYard yard;
  yard.small("TR-01", 2).strong("TR-02").warm("2026-04-25");
  yard.gear("excluder", "truck", "2026-04-20", 0);
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(plan.problem.gear.at("excluder"), 0);
  EXPECT_TRUE(hasKey(plan.problem.notes, "planning.note.none_at_hand"));
  EXPECT_NE(plan.chosenFor(ColonyId("TR-01"))->method, Method::Stack);
  // Paper was never counted: taken as enough, and said.
  EXPECT_FALSE(plan.problem.gear.contains("paper"));
  EXPECT_TRUE(hasKey(plan.problem.notes, "planning.note.never_counted"));
}

TEST(BoostPlan, ADonorInOneFullChamberGetsRoomFirst) {
  SpringYard yard;
  yard.small("TR-01").warm("2026-04-25");
  yard.livingHive("TR-02", "TR", 3, 1, 1);
  yard.inspection("TR-02", testing::kSeenDay, [](apiary::Inspection& i) {
    i.seams = 9;
    i.eggsSeen = true;
    i.pattern = 5;
    i.framesWithBrood = 7;
    i.sealedBroodFrames = 2.2;
    i.openBroodFrames = 1.2;
  });
  const BoostProblem p = problemOf(yard.season(), springRequest());
  const auto o = std::find_if(p.options.begin(), p.options.end(),
                              [](const auto& x) { return x.method == Method::Stack; });
  ASSERT_NE(o, p.options.end());
  EXPECT_EQ(o->gear.at("chamber:langstroth_deep"), 1);
  EXPECT_TRUE(hasKey(o->why, "planning.why.donor_room"));
}

TEST(BoostPlan, TwoInOneHiveAreLeftAlone) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  yard.colony("TR-02", "UP", "2026-04-10", apiary::ColonyPlace::OverExcluder);
  const BoostProblem p = problemOf(yard.season(), springRequest());
  EXPECT_TRUE(p.donors.empty());
  ASSERT_NE(barOf(p, "TR-02"), nullptr);
  EXPECT_EQ(barOf(p, "TR-02")->why.key, "planning.bar.shares");
}

TEST(BoostPlan, HungryColoniesAreOfferedFeed) {
  SpringYard yard;
  yard.small("TR-01").warm("2026-04-25");
  apiary::Inspection look =
      *yard.season().journal<apiary::Inspection>(base::HiveId("TR-01")).front();
  look.honeyKg = 1.5;
  yard.put(look);
  const BoostPlan plan = planOf(yard.season(), springRequest());
  EXPECT_EQ(plan.chosenFor(ColonyId("TR-01"))->id, "feed:TR-01::0");
}

TEST(BoostPlan, PinsAndForbidsAreKept) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02", 9).strong("TR-03", 10).warm("2026-04-25");
  auto request = springRequest();
  const BoostPlan free = planOf(yard.season(), request);
  const std::string best = free.chosenFor(ColonyId("TR-01"))->id;
  request.forbids = {best};
  const BoostPlan without = planOf(yard.season(), request);
  EXPECT_NE(without.chosenFor(ColonyId("TR-01"))->id, best);
  EXPECT_LE(without.objective, free.objective);
  request.forbids.clear();
  request.pins = {"leave:TR-01::0"};
  EXPECT_EQ(planOf(yard.season(), request).chosenFor(ColonyId("TR-01"))->method, Method::Leave);
}

TEST(BoostPlan, TheSecondBestIsNamedWithItsDistance) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02", 8).strong("TR-03", 11).warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest());
  const auto rows = boostRows(plan);
  const auto row = std::find_if(rows.begin(), rows.end(),
                                [](const auto& r) { return r.colony.str() == "TR-01"; });
  ASSERT_NE(row, rows.end());
  ASSERT_NE(row->option, nullptr);
  const auto* second = findKey(row->why, "planning.second_best");
  ASSERT_NE(second, nullptr);
  const auto* other = plan.secondBest(ColonyId("TR-01"));
  EXPECT_NEAR(std::get<double>(second->args.at(1)), row->option->net - other->net, 0.0051);
  EXPECT_EQ(rows.size(), 3U);
}

TEST(BoostPlan, SeveralYardsCostADriveEach) {
  SpringYard yard("TR");
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  yard.addYard("MB").small("MB-01").strong("MB-02").warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest({"TR", "MB"}));
  EXPECT_TRUE(plan.optimal);
  ASSERT_NE(plan.option("visit:TR"), nullptr);
  EXPECT_TRUE(isVisit(*plan.option("visit:TR")));
  const auto chosen = [&](const std::string& id) {
    return std::count(plan.chosen.begin(), plan.chosen.end(), id) > 0;
  };
  EXPECT_TRUE(chosen("visit:TR"));
  EXPECT_TRUE(chosen("visit:MB"));
  EXPECT_TRUE(chosen("stack:MB-01:MB-02:1"));
  // Yard first: no option reaches into the other yard while there is help at home.
  for (const auto& o : plan.problem.options) {
    if (!o.donorColony) continue;
    EXPECT_EQ(o.colony.str().substr(0, 2), o.donorColony->str().substr(0, 2)) << o.id;
  }
  const BoostPlan tried = solveBoostByTrying(plan.problem);
  EXPECT_NEAR(tried.objective, plan.objective, 1e-9);
}

TEST(BoostPlan, ADearDriveIsNotWorthOneColony) {
  SpringYard yard("TR");
  yard.small("TR-01").strong("TR-02").warm("2026-04-25").set("boost.drive_cost", "50");
  yard.addYard("MB");
  const BoostPlan plan = planOf(yard.season(), springRequest({"TR", "MB"}));
  EXPECT_EQ(plan.chosenFor(ColonyId("TR-01"))->method, Method::Leave);
  EXPECT_EQ(plan.objective, 0);
}

TEST(BoostPlan, HelpFromAnotherYardWhenThereIsNoneAtHome) {
  SpringYard yard("TR");
  yard.small("TR-01").warm("2026-04-25");
  yard.addYard("MB").strong("MB-02").warm("2026-04-25");
  const BoostPlan plan = planOf(yard.season(), springRequest({"TR", "MB"}));
  const BoostOption* o = plan.chosenFor(ColonyId("TR-01"));
  ASSERT_EQ(o->id, "stack:TR-01:MB-02:1");
  EXPECT_TRUE(hasKey(o->cautions, "planning.caution.carry"));
  EXPECT_EQ(std::count(plan.chosen.begin(), plan.chosen.end(), "visit:MB"), 1);
}

TEST(BoostPlan, FaultsNameThePlace) {
  SpringYard yard;
  EXPECT_EQ(tests::keysOf(makeBoostProblem(yard.season(), springRequest({"XX"}))),
            std::vector<std::string>{"planning.unknown_yard"});
  EXPECT_EQ(tests::keysOf(makeBoostProblem(yard.season(), springRequest({}))),
            std::vector<std::string>{"planning.no_yard"});
  auto request = springRequest();
  request.target = tests::day("2026-04-01");
  EXPECT_EQ(tests::keysOf(makeBoostProblem(yard.season(), request)),
            std::vector<std::string>{"planning.target_before"});
}

TEST(BoostPlan, SixtyHivesFromTheSeasonToTheProvenPlanWithinSeconds) {
  SpringYard yard;
  base::Random random(7);
  for (int i = 0; i < 60; ++i) {
    const std::string name = "H" + std::to_string(100 + i);
    if (i % 5 < 2) {
      yard.small(name, 1 + 0.25 * static_cast<double>(random.below(15)));
    } else {
      yard.strong(name, 6 + 0.25 * static_cast<double>(random.below(24)));
    }
  }
  yard.warm("2026-04-25").gear("excluder", "truck", "2026-04-20", 6).set("boost.hours", "7");
  const auto start = std::chrono::steady_clock::now();
  const BoostPlan plan = planOf(yard.season(), springRequest());
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  EXPECT_TRUE(plan.optimal) << plan.gap;
  EXPECT_GT(plan.objective, 10);
  EXPECT_LT(took.count(), 3.0);
  RecordProperty("seconds", std::to_string(took.count()));
  RecordProperty("options", static_cast<int>(plan.problem.options.size()));
}

}  // namespace
}  // namespace outyard::planning
