// SPDX-License-Identifier: GPL-3.0-or-later
// Each rule on, off and at its edge. Facts of the trade: common practice, no source.
#include "core/planning/due_rules.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/core/planning/due_facts_maker.h"

namespace outyard::planning::testing {
namespace {

using apiary::VerdictCode;

TEST(Chance, AboveTheMedianIsHalfAndTheTenthsAreTenths) {
  const forecast::Band b{100, 80, 140};
  EXPECT_NEAR(chanceAbove(b, 100, false), 0.5, 1e-9);
  EXPECT_NEAR(chanceAbove(b, 140, false), 0.1, 1e-9);
  EXPECT_NEAR(chanceAbove(b, 80, false), 0.9, 1e-9);
  EXPECT_NEAR(chanceAbove(b, 140, true), 0.1, 1e-9);
  EXPECT_NEAR(chanceAbove({0, 0, 0}, 1, true), 0, 1e-9);
  EXPECT_NEAR(chanceAbove({5, 5, 5}, 4, false), 1, 1e-9);
}

TEST(Facts, ForecastBetweenItsRows) {
  DueFacts f;
  f.days(8000, 15000);
  EXPECT_FALSE(f.colony.on(day("2026-04-24")));
  EXPECT_NEAR(f.colony.on(day("2026-04-25"))->seen.median, 8000, 1);
  EXPECT_NEAR(f.colony.on(day("2026-05-02"))->seen.median, 9750, 1);  // day 7 of 28
  EXPECT_FALSE(f.colony.on(day("2026-05-24")));
}

TEST(Facts, SeasonDaysTurnSouthOfTheEquator) {
  DueFacts f;
  EXPECT_EQ(f.yard.seasonDate(115), day("2026-04-25"));
  EXPECT_EQ(f.yard.seasonDate(196), day("2026-07-15"));
  f.yard.latitude = -35;
  f.yard.from = day("2026-10-25");  // day 298, as 115 (298 + 182 - 365) in the north
  EXPECT_EQ(f.yard.seasonDate(196), day("2027-01-14"));
}

TEST(Facts, AWindowOfTheSeasonIsTheOneThatIsOpenOrNext) {
  DueFacts f;
  const auto window = [&](const char* from) {
    f.yard.from = day(from);
    return f.yard.seasonWindow(105, 300);
  };
  EXPECT_EQ(window("2026-04-25").first, day("2026-04-15"));
  EXPECT_EQ(window("2026-10-27").second, day("2026-10-27"));  // its last day
  EXPECT_EQ(window("2026-10-28").first, day("2027-04-15"));
  EXPECT_EQ(window("2026-01-10").first, day("2026-04-15"));
}

TEST(DueOpen, ByAgeOfTheLook) {
  DueFacts f;
  const auto t = f.due("open");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->earliest, day("2026-05-14"));  // three weeks after the look
  EXPECT_EQ(t->why.key, "planning.due.open_age");
  f.colony.verdict = VerdictCode::SmallSound;
  EXPECT_EQ(f.due("open")->earliest, day("2026-05-03"));  // ten days
  f.colony.verdict = VerdictCode::QueenSuspect;
  EXPECT_EQ(f.due("open")->why.key, "planning.due.open_small");
  f.colony.lastLook.reset();
  EXPECT_EQ(f.due("open")->why.key, "planning.due.open_never");
}

TEST(DueOpen, SoonerWhenTheForecastIsUnsureAndNeverInWinter) {
  DueFacts f;
  for (auto& d : f.colony.days) {
    if (d.date >= day("2026-05-03")) d.seen = {8000, 4000, 16000};
  }
  const auto t = f.due("open");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->why.key, "planning.due.open_unsure");
  EXPECT_EQ(t->earliest, day("2026-05-07"));  // two weeks after the look, not before
  EXPECT_GT(t->chance, 0.5);
  DueFacts winter;
  winter.yard.firstPollen = day("2026-07-01");
  winter.colony.lastLook = day("2026-04-01");
  EXPECT_EQ(winter.due("open")->earliest, day("2026-06-17"));  // two weeks before first pollen
}

TEST(DueAddBox, WhenBeesCoverFourFifthsOfTheCombs) {
  DueFacts f;  // 10 combs of 1,400 bees: four fifths are 11,200
  EXPECT_FALSE(f.due("add_box"));
  f.days(8000, 14400);
  const auto t = f.due("add_box");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->latest, day("2026-05-09"));  // half way
  EXPECT_EQ(t->earliest, day("2026-04-29"));
  EXPECT_GE(t->chance, 0.5);
  EXPECT_EQ(t->gear, "chamber:langstroth_deep");
  f.colony.supers = 1;
  f.colony.superType = "langstroth_medium";
  EXPECT_EQ(f.due("add_box")->gear, "super:langstroth_medium");
  EXPECT_EQ(f.due("add_box")->kind, "supered");
  f.colony.combsBees = 28000;
  EXPECT_FALSE(f.due("add_box"));
  f.colony.days.clear();
  EXPECT_FALSE(f.due("add_box"));
}

TEST(DueNoRoom, WhenBroodAndStoresFillTheChambers) {
  DueFacts f;  // 71,200 cells; nine tenths are 64,080
  EXPECT_FALSE(f.due("no_room"));
  f.days(8000, 8000, 23, 23, 9000, 9000);  // 23 kg are 58,972 cells: 67,972 in all
  const auto t = f.due("no_room");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->latest, f.yard.from);
  EXPECT_EQ(t->gear, "drawn_comb:langstroth_deep");
  f.colony.superCells = 40000;  // the supers take it first
  EXPECT_FALSE(f.due("no_room"));
  f.colony.superCells = 0;
  f.colony.verdict = VerdictCode::Queenless;
  EXPECT_FALSE(f.due("no_room"));
}

TEST(DueStores, OutByTheDayOnWhichTheChanceIsOneInFive) {
  DueFacts f;
  EXPECT_FALSE(f.due("stores_out"));
  f.days(8000, 8000, 8, 1);
  const auto t = f.due("stores_out");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->earliest, f.yard.from);
  EXPECT_GT(t->latest, day("2026-05-13"));
  EXPECT_LE(t->latest, day("2026-05-22"));
  EXPECT_NEAR(t->chance, 0.5, 0.05);  // 1 kg expected at the end
  f.days(8000, 8000, 8, 4);
  EXPECT_FALSE(f.due("stores_out"));
}

TEST(DueFeed, LitresFromTheDensityOfSyrup) {
  DueFacts f;
  EXPECT_FALSE(f.due("feed"));
  f.days(8000, 8000, 4.25, 4.25);
  const auto t = f.due("feed");
  ASSERT_TRUE(t);
  // 3.75 kg of stores = 3 kg of sugar (1 kg gives 1.25 kg) = 4.9 l at 0.615 kg a litre.
  EXPECT_EQ(t->what, apiary::Goods::Syrup11);
  EXPECT_EQ(t->unit, apiary::Unit::L);
  EXPECT_DOUBLE_EQ(t->amount.value(), 5.0);
  EXPECT_EQ(t->latest, f.yard.from);
  f.yard.weather = [](base::Date) { return DayWeather{-2, 5, 0.0, 2.0}; };
  EXPECT_EQ(f.due("feed")->what, apiary::Goods::Fondant);  // too cold for syrup
  EXPECT_DOUBLE_EQ(f.due("feed")->amount.value(), 4.0);    // 3 kg sugar / 0.78
  f.colony.supers = 1;
  const auto cautions = f.due("feed")->cautions;
  EXPECT_TRUE(std::any_of(cautions.begin(), cautions.end(),
                          [](const auto& m) { return m.key == "planning.feed.caution_supers"; }));
  f.days(8000, 8000, 6, 6);
  EXPECT_FALSE(f.due("feed"));
}

TEST(DueFeed, UpToTheWeightForWinter) {
  DueFacts f;
  f.yard.from = day("2026-08-25");
  f.yard.to = day("2026-09-22");
  f.days(12000, 10000, 20, 22);
  const auto t = f.due("feed");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->why.key, "planning.due.feed_winter");
  EXPECT_EQ(t->what, apiary::Goods::Syrup21);
  // 10 kg stores = 8 kg sugar = 9.04 l at 0.885 kg a litre, in whole halves.
  EXPECT_DOUBLE_EQ(t->amount.value(), 9.5);
  f.yard.latitude = 32;  // a mild winter
  EXPECT_FALSE(f.due("feed") && f.due("feed")->amount > 1);
  f.yard.latitude = 45;
  f.days(12000, 10000, 34, 34);
  EXPECT_FALSE(f.due("feed"));
}

TEST(DueStack, PaperThenLookThenOff) {
  DueFacts f;
  EXPECT_FALSE(f.due("paper"));
  EXPECT_FALSE(f.due("stack_look"));
  EXPECT_FALSE(f.due("separate"));
  f.colony.upper = true;
  f.colony.stackedOn = day("2026-04-23");
  f.colony.lastLook = day("2026-04-23");
  f.colony.partner = base::HiveId("TR-08");
  const auto paper = f.due("paper");
  ASSERT_TRUE(paper);
  EXPECT_EQ(paper->earliest, day("2026-04-25"));
  EXPECT_EQ(paper->latest, day("2026-04-27"));
  const auto look = f.due("stack_look");
  ASSERT_TRUE(look);
  EXPECT_EQ(look->earliest, day("2026-04-30"));
  EXPECT_EQ(look->latest, day("2026-05-02"));
  const auto off = f.due("separate");
  ASSERT_TRUE(off);
  EXPECT_EQ(off->earliest, day("2026-05-14"));
  EXPECT_EQ(off->latest, day("2026-05-21"));
  EXPECT_EQ(off->otherHive, base::HiveId("TR-08"));
  f.colony.paperOpenOn = day("2026-04-25");
  EXPECT_FALSE(f.due("paper"));
  f.colony.lastLook = day("2026-04-29");  // a day early serves
  EXPECT_FALSE(f.due("stack_look"));
  f.colony.lastLook = day("2026-04-28");
  EXPECT_TRUE(f.due("stack_look"));
  f.colony.stackedOn = day("2026-04-18");  // a week ago: the look asks for the paper too
  f.colony.paperOpenOn.reset();
  f.colony.lastLook = day("2026-04-18");
  EXPECT_FALSE(f.due("paper"));
}

TEST(DueOwnStand, AWeekAfterTakingOff) {
  DueFacts f;
  EXPECT_FALSE(f.due("own_stand"));
  f.colony.unstackedOn = day("2026-04-20");
  f.colony.lastLook = day("2026-04-20");
  EXPECT_EQ(f.due("own_stand")->earliest, day("2026-04-27"));
  f.colony.lastLook = day("2026-04-27");
  EXPECT_FALSE(f.due("own_stand"));
  f.colony.lastLook = day("2026-03-20");
  f.colony.unstackedOn = day("2026-03-20");
  EXPECT_FALSE(f.due("own_stand"));  // too long ago
}

TEST(DueReverse, TwoChambersWithTheNestAbove) {
  DueFacts f;
  EXPECT_FALSE(f.due("reverse"));
  f.colony.chambers = 2;
  const auto t = f.due("reverse");
  ASSERT_TRUE(t);
  EXPECT_DOUBLE_EQ(t->chance, 0.5);  // nobody noted where they sit
  EXPECT_EQ(t->earliest, day("2026-04-19"));
  EXPECT_EQ(t->latest, day("2026-05-20"));
  f.colony.nestAbove = true;
  EXPECT_DOUBLE_EQ(f.due("reverse")->chance, 0.8);
  f.colony.nestAbove = false;
  EXPECT_FALSE(f.due("reverse"));
  f.colony.nestAbove = true;
  f.colony.seams = 4.75;
  EXPECT_FALSE(f.due("reverse"));
  f.colony.seams = 5;
  EXPECT_TRUE(f.due("reverse"));
  f.colony.reversedOn = day("2026-04-20");
  EXPECT_FALSE(f.due("reverse"));
  f.colony.reversedOn = day("2025-05-01");
  EXPECT_TRUE(f.due("reverse"));
  f.yard.firstPollen = day("2026-03-01");
  EXPECT_FALSE(f.due("reverse"));  // its time is over
}

TEST(DueSplit, EightCombsOfBeesSixOfBroodDronesAndSummer) {
  DueFacts f;
  EXPECT_FALSE(f.due("split"));
  // 8 x 1,400 = 11,200 bees; 6 combs half full of 7,120 cells = 21,360 cells.
  f.days(9000, 20000, 12, 12, 12000, 40000);
  const auto t = f.due("split");
  ASSERT_TRUE(t);
  EXPECT_GE(t->earliest, day("2026-05-10"));  // 35 days after first pollen: drones
  EXPECT_GE(t->chance, 0.5);
  const auto early = t->earliest;
  f.colony.dronesSeen = true;
  EXPECT_LE(f.due("split")->earliest, early);
  f.colony.verdict = VerdictCode::SmallSound;
  EXPECT_FALSE(f.due("split"));
  f.colony.verdict = VerdictCode::QueenSuspect;
  EXPECT_FALSE(f.due("split"));
  f.colony.verdict = VerdictCode::Strong;
  f.colony.healthBar = base::message("planning.caution.foul_brood");
  EXPECT_FALSE(f.due("split"));
  f.colony.healthBar.reset();
  f.figures.splitLastDay = 120;  // end of April
  EXPECT_FALSE(f.due("split"));
}

TEST(DueSwarm, CellsSeenOrACrowdedNest) {
  DueFacts f;
  EXPECT_FALSE(f.due("swarm"));
  f.colony.cellsOn = day("2026-04-23");
  const auto t = f.due("swarm");
  ASSERT_TRUE(t);
  EXPECT_DOUBLE_EQ(t->chance, 0.7);
  EXPECT_EQ(t->latest, day("2026-04-30"));  // before a cell can be sealed and left
  f.colony.cellsOn = day("2026-04-03");
  EXPECT_FALSE(f.due("swarm"));  // whatever came of it is over
  f.colony.cellsOn.reset();
  // Nest: 0.45 x 71,200 = 32,040 cells; at 40,000 the crowding is 0.65: 2 % a day.
  f.days(15000, 15000, 12, 12, 40000, 40000);
  const auto crowded = f.due("swarm");
  ASSERT_TRUE(crowded);
  const double crowd = 40000.0 / (71200 * 0.45 + 1) - 0.6;
  EXPECT_NEAR(crowded->chance, 1 - std::exp(-29 * 0.03 * crowd), 1e-9);
  EXPECT_EQ(crowded->earliest, day("2026-04-30"));  // a week after the last look
  f.yard.from = day("2026-08-25");
  f.yard.to = day("2026-09-22");
  f.days(15000, 15000, 12, 12, 40000, 40000);
  EXPECT_FALSE(f.due("swarm"));  // its season is over
}

TEST(DueWash, MonthlyInTheBroodSeason) {
  DueFacts f;
  const auto first = f.due("wash");
  ASSERT_TRUE(first);
  EXPECT_EQ(first->why.key, "planning.due.wash_never");
  EXPECT_EQ(first->earliest, day("2026-04-15"));
  f.colony.washedOn = day("2026-04-20");
  f.colony.mitesPer100 = 0.3;
  EXPECT_EQ(f.due("wash")->earliest, day("2026-05-20"));
  // Mites rise over the threshold: 600 mites, 35 % on 8,000 bees = 2.6 per 100.
  for (auto& d : f.colony.days) d.mites = {1200, 800, 1800};
  f.colony.mitesThreshold = 2;
  EXPECT_GT(f.due("wash")->chance, 0.9);
  f.colony.treatedOn = day("2026-04-22");
  EXPECT_FALSE(f.due("wash"));  // while the treatment is in
  f.colony.treatedOn.reset();
  f.figures.washToDay = 130;
  EXPECT_FALSE(f.due("wash"));
}

TEST(DueTreat, OverTheThresholdOfTheSeason) {
  DueFacts f;
  EXPECT_FALSE(f.due("treat"));
  f.colony.washedOn = day("2026-04-20");
  f.colony.mitesPer100 = 2.9;
  f.colony.mitesThreshold = 3;
  EXPECT_FALSE(f.due("treat"));
  f.colony.mitesPer100 = 3;
  const auto t = f.due("treat");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->latest, day("2026-05-04"));
  EXPECT_TRUE(std::any_of(t->cautions.begin(), t->cautions.end(),
                          [](const auto& m) { return m.key == "planning.due.caution_label"; }));
  f.colony.treatedOn = day("2026-04-20");
  EXPECT_FALSE(f.due("treat"));
  f.colony.treatedOn = day("2026-04-19");
  EXPECT_TRUE(f.due("treat"));
  f.colony.washedOn = day("2026-02-20");
  f.colony.treatedOn.reset();
  EXPECT_FALSE(f.due("treat"));  // too old to act upon
}

TEST(DueTreatOff, SixToEightWeeksUnlessItCameOff) {
  DueFacts f;
  EXPECT_FALSE(f.due("treat_off"));
  f.colony.treatedOn = day("2026-03-20");
  const auto t = f.due("treat_off");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->earliest, day("2026-05-01"));
  EXPECT_EQ(t->latest, day("2026-05-15"));
  f.colony.treatmentOffOn = day("2026-04-20");
  EXPECT_FALSE(f.due("treat_off"));
  f.colony.treatmentOffOn = day("2025-10-01");  // of an earlier one
  EXPECT_TRUE(f.due("treat_off"));
  f.colony.treatedOn = day("2025-12-20");
  EXPECT_FALSE(f.due("treat_off"));
}

TEST(DueQueenCheck, NewQueensAndQueensInDoubt) {
  DueFacts f;
  EXPECT_FALSE(f.due("queen_check"));
  f.colony.queenSince = day("2026-04-10");
  f.colony.queenDue = day("2026-05-01");
  EXPECT_EQ(f.due("queen_check")->earliest, day("2026-04-24"));
  EXPECT_EQ(f.due("queen_check")->latest, day("2026-05-01"));
  f.colony.lastLook = day("2026-05-01");
  EXPECT_FALSE(f.due("queen_check"));
  f.colony.queenDue.reset();
  f.colony.lastLook = day("2026-04-23");
  for (const auto v : {VerdictCode::QueenSuspect, VerdictCode::Queenless, VerdictCode::DroneLayer,
                       VerdictCode::LayingWorkers}) {
    f.colony.verdict = v;
    EXPECT_EQ(f.due("queen_check")->latest, day("2026-04-30"));
  }
  f.colony.verdict = VerdictCode::TooEarly;
  EXPECT_FALSE(f.due("queen_check"));
}

TEST(DueTakeOff, AfterTheFlowAndTheWaitingPeriod) {
  DueFacts f;
  f.yard.flows = {{day("2026-05-01"), day("2026-05-15"), 3}};
  f.days(20000, 20000, 20, 40);
  EXPECT_FALSE(f.due("take_off"));  // no supers
  f.colony.supers = 2;
  const auto t = f.due("take_off");
  ASSERT_TRUE(t);
  EXPECT_EQ(t->earliest, day("2026-05-15"));
  EXPECT_EQ(t->latest, day("2026-05-29"));
  f.colony.harvestFrom = day("2026-06-20");
  EXPECT_EQ(f.due("take_off")->earliest, day("2026-06-20"));
  EXPECT_EQ(f.due("take_off")->why.key, "planning.due.take_off_wait");
  f.colony.harvestFrom.reset();
  f.yard.flows.push_back({day("2026-05-20"), day("2026-07-01"), 2});
  EXPECT_EQ(f.due("take_off")->earliest, day("2026-07-01"));  // the next flow follows at once
  f.yard.flows = {{day("2026-05-01"), day("2026-05-15"), 1}};
  EXPECT_FALSE(f.due("take_off"));  // no flow that fills supers
  f.yard.flows = {{day("2026-05-01"), day("2026-05-15"), 3}};
  f.days(20000, 20000, 10, 12);
  EXPECT_FALSE(f.due("take_off"));
}

TEST(DueUnwrap, AboutTheFirstPollen) {
  DueFacts f;
  EXPECT_FALSE(f.due("unwrap"));
  f.colony.wrapped = true;
  EXPECT_EQ(f.due("unwrap")->earliest, day("2026-03-29"));
  EXPECT_EQ(f.due("unwrap")->latest, day("2026-04-19"));
}

// When to wrap: common practice, no source.
TEST(DueWrap, AboutTheUsualFirstFrostsWhereWintersAreCold) {
  DueFacts f;
  f.yard.from = day("2026-09-01");
  f.yard.to = day("2026-12-31");
  // Mean night lows fall by 0.2 degrees a day from 14 C on 1 September: 2 C on 31 October.
  const auto falling = [](double least) {
    return [least](base::Date d) {
      const int month = d.month(), year = month >= 8 ? d.year() : d.year() - 1;
      const int days = d - *base::Date::fromYmd(year, 9, 1);
      const double night = std::max(least, 14 - 0.2 * days);
      return std::optional<DayWeather>({night, night + 8, 0.0, 2.0});
    };
  };
  f.yard.weather = falling(-12);
  ASSERT_TRUE(f.due("wrap"));
  EXPECT_EQ(f.due("wrap")->kind, "wrapped");
  EXPECT_EQ(f.due("wrap")->earliest, day("2026-10-17"));
  EXPECT_EQ(f.due("wrap")->latest, day("2026-11-21"));
  EXPECT_EQ(f.due("wrap")->cautions.size(), 2u);
  f.yard.weather = falling(-5);
  EXPECT_TRUE(f.due("wrap"));
  f.yard.weather = falling(-4.9);
  EXPECT_FALSE(f.due("wrap")) << "no winter to wrap for";
  f.yard.weather = falling(-12);
  f.colony.wrapped = true;
  EXPECT_FALSE(f.due("wrap"));
  f.colony.wrapped = false;
  f.yard.weather = [](base::Date) { return std::optional<DayWeather>(); };
  EXPECT_FALSE(f.due("wrap")) << "nothing is known of the nights";
}

TEST(DueSplit, ChanceOfADayGoesWithTheRule) {
  DueFacts f;
  f.days(9000, 21000, 12, 12, 20000, 45000);
  f.colony.dronesSeen = true;
  const auto split = f.due("split");
  ASSERT_TRUE(split);
  EXPECT_GE(splitChance(f.colony, f.figures, split->earliest), 0.5);
  EXPECT_LT(splitChance(f.colony, f.figures, f.yard.from), 0.1);
  f.colony.dronesSeen = false;  // drones are expected from 10 May
  EXPECT_EQ(splitChance(f.colony, f.figures, day("2026-05-09")), 0);
  f.colony.dronesSeen = true;
  f.colony.verdict = apiary::VerdictCode::Queenless;
  EXPECT_EQ(splitChance(f.colony, f.figures, split->earliest), 0);
}

TEST(DueRules, TableIsWholeAndNamesItsSources) {
  std::set<std::string> codes;
  for (const DueRule& r : dueRules()) {
    EXPECT_TRUE(codes.insert(std::string(r.code)).second) << r.code;
    EXPECT_FALSE(r.source.empty()) << r.code;
    const bool known = r.kind == "open" || r.kind == "look" ||
                       apiary::parseCode<apiary::EventKind>(r.kind).has_value();
    EXPECT_TRUE(known) << r.kind;
  }
  std::set<std::string> told;
  for (const auto& t : dueRuleTexts()) told.insert(std::string(t.code));
  for (const auto& code : codes) EXPECT_TRUE(told.contains(code)) << code;
  for (const DueFigure& f : dueFigureTable()) {
    const double shipped = DueFigures{}.*f.member;
    EXPECT_FALSE(f.source.empty()) << f.name;
    EXPECT_LE(f.min, shipped) << f.name;
    EXPECT_GE(f.max, shipped) << f.name;
  }
}

TEST(DueFigures, ASettingReplacesAFigure) {
  apiary::Season season;
  apiary::Setting s{"due.open_days", "14", "ours"};
  apiary::Setting bad{"due.feed_to_kg", "plenty", ""};
  season.apply({{apiary::TableId::Settings, "due.open_days", std::nullopt, apiary::toRow(s)},
                {apiary::TableId::Settings, "due.feed_to_kg", std::nullopt, apiary::toRow(bad)}});
  std::vector<base::Message> notes;
  const auto f = dueFigures(season, notes);
  EXPECT_DOUBLE_EQ(f.openDays, 14);
  EXPECT_DOUBLE_EQ(f.feedToKg, 8);
  ASSERT_EQ(notes.size(), 1U);
  EXPECT_EQ(notes[0].key, "planning.setting_bad");
}

}  // namespace
}  // namespace outyard::planning::testing
