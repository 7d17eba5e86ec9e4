// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/verdict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "core/strength/rule_table.h"
#include "core/strength/verdict_rules.h"
#include "tests/core/strength/strength_season.h"

// The judgements are common practice, no source, where nothing else is named.
namespace outyard::strength {
namespace {

using apiary::Disease;
using apiary::EventKind;
using apiary::Inspection;
using apiary::VerdictCode;
using test::day;
using test::TestSeason;

constexpr const char* kDay = "2026-04-25";  // a month after the first pollen of the test yard
const base::ColonyId kColony("H");

bool has(const std::vector<base::Message>& list, const std::string& key) {
  return std::any_of(list.begin(), list.end(), [&](const auto& m) { return m.key == key; });
}

struct Case {
  const char* what;
  VerdictCode expected;
  const char* evidence;  ///< a key that must stand among the evidence
  std::function<void(TestSeason&)> records;
  const char* on = kDay;
};

/// One inspection on the day of the case, or on another.
std::function<void(TestSeason&)> look(std::function<void(Inspection&)> fill,
                                      const char* iso = kDay) {
  return [=](TestSeason& s) {
    auto i = TestSeason::look(iso);
    fill(i);
    s.add(i);
  };
}
std::function<void(TestSeason&)> both(std::function<void(TestSeason&)> a,
                                      std::function<void(TestSeason&)> b) {
  return [=](TestSeason& s) {
    a(s);
    b(s);
  };
}
std::function<void(TestSeason&)> happened(EventKind kind, const char* iso) {
  return [=](TestSeason& s) { s.add(TestSeason::event(kind, iso)); };
}

void sound(Inspection& i, double seams) {
  i.seams = seams;
  i.eggsSeen = true;
  i.pattern = 4;
  i.framesWithBrood = std::max(1, static_cast<int>(seams * 0.6));
}

const std::vector<Case>& cases() {
  static const std::vector<Case> all{
      {"nine seams, eggs, compact", VerdictCode::Strong, "evidence.eggs_seen",
       look([](auto& i) { sound(i, 9); })},
      {"seven seams exactly", VerdictCode::Strong, "evidence.seams",
       look([](auto& i) { sound(i, 7); })},
      {"a quarter under seven", VerdictCode::Fair, "evidence.pattern_compact",
       look([](auto& i) { sound(i, 6.75); })},
      {"five seams exactly", VerdictCode::Fair, "evidence.seams",
       look([](auto& i) { sound(i, 5); })},
      {"a quarter under five", VerdictCode::SmallSound, "evidence.eggs_seen",
       look([](auto& i) { sound(i, 4.75); })},
      {"fist of bees, good queen", VerdictCode::SmallSound, "evidence.brood_fills_cover",
       look([](auto& i) { sound(i, 2); })},
      {"one seam exactly", VerdictCode::SmallSound, "evidence.seams",
       look([](auto& i) { sound(i, 1); })},
      {"under one seam", VerdictCode::TooSmall, "evidence.seams",
       look([](auto& i) { sound(i, 0.75); })},
      {"small, eggs, pattern not noted, brood fills", VerdictCode::SmallSound,
       "evidence.brood_fills_cover", look([](auto& i) {
         sound(i, 3);
         i.pattern = std::nullopt;
       })},
      {"small, eggs, nothing on brood or pattern", VerdictCode::NotEnoughSeen, "evidence.eggs_seen",
       look([](auto& i) {
         i.seams = 3;
         i.eggsSeen = true;
       })},
      {"small, eggs not noted", VerdictCode::NotEnoughSeen, "evidence.pattern_compact",
       look([](auto& i) {
         sound(i, 3);
         i.eggsSeen = std::nullopt;
       })},
      {"lid look at a small one", VerdictCode::NotEnoughSeen, "evidence.seams",
       look([](auto& i) { i.seams = 3; })},
      {"lid look at a big one", VerdictCode::Strong, "evidence.seams",
       look([](auto& i) { i.seams = 8; })},
      {"full frames instead of seams", VerdictCode::Strong, "evidence.seams_equal",
       look([](auto& i) {
         i.beeFrames = 6;
         i.eggsSeen = true;
       })},
      {"a low quick count beside seven seams", VerdictCode::Strong, "evidence.seams",
       look([](auto& i) {
         sound(i, 7);
         i.framesWithBees = 4;
       })},
      {"one and a half full frames beside seven seams", VerdictCode::SmallSound,
       "evidence.seams_equal", look([](auto& i) {
         sound(i, 7);
         i.beeFrames = 1.5;
         i.airC = 20;
       })},
      {"never looked at", VerdictCode::NotEnoughSeen, "evidence.never_seen", [](TestSeason&) {}},
      {"small and sound eleven days ago", VerdictCode::NotEnoughSeen, "evidence.not_fresh",
       look([](auto& i) { sound(i, 3); }, "2026-04-14")},
      {"small and sound ten days ago", VerdictCode::SmallSound, "evidence.seen_days_ago",
       look([](auto& i) { sound(i, 3); }, "2026-04-15")},
      {"strong three weeks ago", VerdictCode::Strong, "evidence.not_fresh",
       look([](auto& i) { sound(i, 9); }, "2026-04-04")},
      {"strong last autumn", VerdictCode::NotEnoughSeen, "evidence.too_long_ago",
       look([](auto& i) { sound(i, 9); }, "2025-09-10")},
      {"eggs six days ago, lid look today", VerdictCode::SmallSound, "evidence.seen_today",
       both(look([](auto& i) { sound(i, 3); }, "2026-04-19"), look([](auto& i) { i.seams = 3; }))},
      {"no eggs, no brood, in season", VerdictCode::Queenless, "evidence.no_brood",
       look([](auto& i) {
         i.seams = 4;
         i.eggsSeen = false;
         i.framesWithBrood = 0;
       })},
      {"no eggs, no brood, before the first pollen", VerdictCode::TooEarly,
       "evidence.before_pollen",
       look(
           [](auto& i) {
             i.seams = 4;
             i.eggsSeen = false;
             i.framesWithBrood = 0;
           },
           "2026-03-10"),
       "2026-03-10"},
      {"no eggs, no brood, late in autumn", VerdictCode::TooEarly, "evidence.brood_season_over",
       look(
           [](auto& i) {
             i.seams = 6;
             i.eggsSeen = false;
             i.framesWithBrood = 0;
           },
           "2026-10-20"),
       "2026-10-20"},
      {"eggs before the first pollen", VerdictCode::SmallSound, "evidence.eggs_seen",
       look([](auto& i) { sound(i, 3); }, "2026-03-10"), "2026-03-10"},
      {"no eggs, nothing noted on brood", VerdictCode::QueenSuspect, "evidence.no_eggs",
       look([](auto& i) {
         i.seams = 4;
         i.eggsSeen = false;
       })},
      {"no brood, eggs not noted", VerdictCode::QueenSuspect, "evidence.no_brood",
       look([](auto& i) {
         i.seams = 4;
         i.framesWithBrood = 0;
       })},
      {"queen seen, no eggs, no brood", VerdictCode::QueenSuspect, "evidence.queen_seen",
       look([](auto& i) {
         i.seams = 4;
         i.eggsSeen = false;
         i.framesWithBrood = 0;
         i.queenSeen = true;
       })},
      {"sealed brood only", VerdictCode::QueenSuspect, "evidence.only_sealed", look([](auto& i) {
         i.seams = 6;
         i.eggsSeen = false;
         i.sealedBroodFrames = 2;
         i.openBroodFrames = 0;
       })},
      {"scattered, many bees", VerdictCode::QueenSuspect, "evidence.pattern_scattered",
       look([](auto& i) {
         sound(i, 8);
         i.pattern = 2;
       })},
      {"many bees, little brood, in the main season", VerdictCode::QueenSuspect,
       "evidence.brood_little", look([](auto& i) {
         sound(i, 8);
         i.framesWithBrood = std::nullopt;
         i.broodFrames = 0.3;
       })},
      {"little brood just after the first pollen", VerdictCode::Strong, "evidence.brood_little",
       look(
           [](auto& i) {
             sound(i, 8);
             i.framesWithBrood = std::nullopt;
             i.broodFrames = 0.3;
           },
           "2026-04-01"),
       "2026-04-01"},
      {"drone brood all over a scattered pattern", VerdictCode::DroneLayer, "evidence.drone_brood",
       look([](auto& i) {
         i.seams = 4;
         i.eggsSeen = true;
         i.queenSeen = true;
         i.pattern = 1;
         i.droneBrood = 3;
       })},
      {"drone brood in a strong sound colony", VerdictCode::Strong, "evidence.drone_brood",
       look([](auto& i) {
         sound(i, 9);
         i.droneBrood = 2;
       })},
      {"drone brood, no queen for long, eggs", VerdictCode::LayingWorkers,
       "evidence.queen_not_seen", look([](auto& i) {
         i.seams = 4;
         i.eggsSeen = true;
         i.queenSeen = false;
         i.pattern = 1;
         i.droneBrood = 3;
       })},
      {"drone brood, laying queen seen ten days before", VerdictCode::DroneLayer,
       "evidence.drone_brood",
       both(look(
                [](auto& i) {
                  i.seams = 4;
                  i.queenSeen = true;
                },
                "2026-04-15"),
            look([](auto& i) {
              i.seams = 4;
              i.eggsSeen = true;
              i.queenSeen = false;
              i.pattern = 1;
              i.droneBrood = 3;
            }))},
      {"known without a queen for a month, now drone brood", VerdictCode::LayingWorkers,
       "evidence.long_without_eggs",
       both(happened(EventKind::QueenLost, "2026-03-25"), look([](auto& i) {
              i.seams = 4;
              i.pattern = 2;
              i.droneBrood = 2;
            }))},
      {"under one seam and queenless", VerdictCode::TooSmall, "evidence.no_eggs", look([](auto& i) {
         i.seams = 0.5;
         i.eggsSeen = false;
         i.framesWithBrood = 0;
       })},
      {"queen recorded as lost after eggs were seen", VerdictCode::Queenless, "evidence.queen_lost",
       both(look(
                [](auto& i) {
                  i.seams = 6;
                  i.eggsSeen = std::nullopt;
                },
                "2026-04-20"),
            happened(EventKind::QueenLost, "2026-04-22"))},
      {"broodless split, queen under way", VerdictCode::TooEarly, "evidence.queen_due",
       both(happened(EventKind::Split, "2026-05-10"), look(
                                                          [](auto& i) {
                                                            i.seams = 5;
                                                            i.eggsSeen = false;
                                                            i.framesWithBrood = 0;
                                                          },
                                                          "2026-06-01")),
       "2026-06-01"},
      {"split still broodless after its time", VerdictCode::Queenless, "evidence.no_eggs",
       both(happened(EventKind::Split, "2026-05-10"), look(
                                                          [](auto& i) {
                                                            i.seams = 5;
                                                            i.eggsSeen = false;
                                                            i.framesWithBrood = 0;
                                                          },
                                                          "2026-06-20")),
       "2026-06-20"},
      {"queen seen laying since", VerdictCode::SmallSound, "evidence.eggs_seen",
       both(look(
                [](auto& i) {
                  i.seams = 4;
                  i.pattern = 3;
                },
                "2026-04-22"),
            happened(EventKind::QueenSeenLaying, "2026-04-24"))},
      {"foul brood suspected in a strong one", VerdictCode::Sick, "evidence.disease",
       look([](auto& i) {
         sound(i, 9);
         i.disease = Disease::SuspectAfb;
       })},
      {"foul brood suspected last year, never cleared", VerdictCode::Sick, "evidence.disease",
       both(look(
                [](auto& i) {
                  sound(i, 9);
                  i.disease = Disease::SuspectEfb;
                },
                "2025-08-01"),
            look([](auto& i) { sound(i, 9); }))},
      {"nosema", VerdictCode::Sick, "evidence.disease", look([](auto& i) {
         sound(i, 4);
         i.disease = Disease::Nosema;
       })},
      {"nosema gone at the next look into the brood", VerdictCode::SmallSound, "evidence.eggs_seen",
       both(look(
                [](auto& i) {
                  sound(i, 4);
                  i.disease = Disease::Nosema;
                },
                "2026-04-05"),
            look([](auto& i) { sound(i, 4); }))},
      {"chalkbrood keeps the judgement", VerdictCode::SmallSound, "evidence.disease",
       look([](auto& i) {
         sound(i, 4);
         i.disease = Disease::Chalkbrood;
       })},
      {"no eggs by all the sides", VerdictCode::QueenSuspect, "evidence.no_eggs",
       [](TestSeason& s) {
         auto i = TestSeason::look(kDay);
         i = s.add(i);
         for (int slot = 1; slot <= 10; ++slot) {
           for (const auto face : {apiary::FrameSide::A, apiary::FrameSide::B}) {
             auto side = TestSeason::side(i, 1, slot, face);
             side.beesPct = 40;
             side.sealedPct = 10;
             side.emptyPct = 90;
             s.add(side);
           }
         }
       }},
  };
  return all;
}

TEST(Verdict, CaseTable) {
  EXPECT_GE(cases().size(), 25U);
  for (const Case& c : cases()) {
    TestSeason s;
    s.pollen();
    c.records(s);
    const Judgement j = judge(s.season, kColony, day(c.on));
    EXPECT_EQ(apiary::code(j.verdict), apiary::code(c.expected)) << c.what;
    EXPECT_TRUE(has(j.evidence, c.evidence)) << c.what << ": no " << c.evidence;
    EXPECT_FALSE(j.wouldChange.empty()) << c.what;
    EXPECT_FALSE(j.ruleVerdict) << c.what;
  }
}

TEST(Verdict, EveryCodeOccursInTheTable) {
  for (std::size_t i = 0; i < apiary::allCodes<VerdictCode>().size(); ++i) {
    const auto verdict = static_cast<VerdictCode>(i);
    EXPECT_TRUE(std::any_of(cases().begin(), cases().end(), [&](const Case& c) {
      return c.expected == verdict;
    })) << apiary::code(verdict);
  }
}

TEST(Verdict, SouthOfTheEquatorSeasonsShift) {
  const auto broodless = look(
      [](auto& i) {
        i.seams = 4;
        i.eggsSeen = false;
        i.framesWithBrood = 0;
      },
      "2026-10-25");
  TestSeason north("langstroth_deep", 44), south("langstroth_deep", -44);
  broodless(north);
  broodless(south);
  EXPECT_EQ(judge(north.season, kColony, day("2026-10-25")).verdict, VerdictCode::TooEarly);
  EXPECT_EQ(judge(south.season, kColony, day("2026-10-25")).verdict, VerdictCode::Queenless);
}

TEST(Verdict, OverruledByAPersonAfterTheEvidence) {
  TestSeason s;
  s.pollen();
  look([](auto& i) { i.seams = 3; }, "2026-04-20")(s);
  auto e = TestSeason::event(EventKind::Verdict, "2026-04-21");
  e.method = "small_sound";
  e.detail = "saw her lay";
  s.add(e);
  const Judgement j = judge(s.season, kColony, day(kDay));
  EXPECT_EQ(j.verdict, VerdictCode::SmallSound);
  EXPECT_EQ(j.ruleVerdict, VerdictCode::NotEnoughSeen);
  EXPECT_EQ(j.overruledWhy, "saw her lay");
  // Before its day it says nothing; a newer look makes it old.
  EXPECT_EQ(judge(s.season, kColony, day("2026-04-20")).verdict, VerdictCode::NotEnoughSeen);
  look([](auto& i) { sound(i, 8); }, "2026-04-24")(s);
  const Judgement newer = judge(s.season, kColony, day(kDay));
  EXPECT_EQ(newer.verdict, VerdictCode::Strong);
  EXPECT_FALSE(newer.ruleVerdict);
}

TEST(Verdict, OverrulingDoesNotLiftAHealthBar) {
  TestSeason s;
  look([](auto& i) {
    sound(i, 8);
    i.disease = Disease::SuspectAfb;
  })(s);
  auto e = TestSeason::event(EventKind::Verdict, kDay);
  e.method = "strong";
  s.add(e);
  const Judgement j = judge(s.season, kColony, day(kDay));
  EXPECT_EQ(j.verdict, VerdictCode::Strong);
  ASSERT_TRUE(j.healthBar);
  EXPECT_EQ(j.healthBar->key, "health.foul_brood_here");
}

TEST(Verdict, WithdrawnAndUnknownOverrulingsCountForNothing) {
  TestSeason s;
  look([](auto& i) { sound(i, 8); })(s);
  auto e = TestSeason::event(EventKind::Verdict, kDay);
  e.method = "splendid";
  s.add(e);
  e.record = {};
  e.method = "queenless";
  e.isVoid = true;
  s.add(e);
  EXPECT_EQ(judge(s.season, kColony, day(kDay)).verdict, VerdictCode::Strong);
}

TEST(Rules, SettingsReplaceThresholdsInRange) {
  TestSeason s;
  look([](auto& i) { sound(i, 8); })(s);
  apiary::Setting set;
  set.name = "verdict.strong_seams";
  set.value = "9";
  s.add(set);
  EXPECT_EQ(judge(s.season, kColony, day(kDay)).verdict, VerdictCode::Fair);
  TestSeason wrong;
  look([](auto& i) { sound(i, 8); })(wrong);
  set.value = "many";
  wrong.add(set);
  set.name = "verdict.small_seams";
  set.value = "900";
  wrong.add(set);
  EXPECT_EQ(judge(wrong.season, kColony, day(kDay)).verdict, VerdictCode::Strong);
  EXPECT_EQ(rulesFor(wrong.season).smallSeams, RuleTable::shipped().figures().smallSeams);
}

TEST(Rules, EveryShippedValueLiesInItsRangeAndNamesItsSource) {
  const VerdictRules& rules = RuleTable::shipped().figures();
  for (const RuleSpec& spec : ruleSpecs()) {
    EXPECT_GE(rules.*spec.member, spec.low) << spec.name;
    EXPECT_LE(rules.*spec.member, spec.high) << spec.name;
    EXPECT_FALSE(spec.source.empty()) << spec.name;
  }
}

TEST(Verdict, ColonyThatLivesNowhereIsNotJudged) {
  TestSeason s;
  const Judgement j = judge(s.season, base::ColonyId("gone"), day(kDay));
  EXPECT_EQ(j.verdict, VerdictCode::NotEnoughSeen);
  EXPECT_TRUE(has(j.evidence, "evidence.no_colony"));
  EXPECT_TRUE(judgeYard(s.season, base::YardId("nowhere"), day(kDay)).empty());
}

TEST(Verdict, TwoColoniesOfOneStackAreJudgedApart) {
  TestSeason s("langstroth_deep", 44, 2);
  s.pollen();
  apiary::ColonyStay upper;
  upper.colony = base::ColonyId("U");
  upper.hive = base::HiveId("H");
  upper.place = apiary::ColonyPlace::OverExcluder;
  upper.fromDate = day("2026-04-20");
  s.add(upper);
  auto low = TestSeason::look(kDay);
  sound(low, 8);
  s.add(low);
  auto up = TestSeason::look(kDay);
  up.colony = upper.colony;
  sound(up, 3);
  s.add(up);
  const auto all = judgeYard(s.season, base::YardId("Y"), day(kDay));
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].colony, kColony);
  EXPECT_EQ(all[0].verdict, VerdictCode::Strong);
  EXPECT_EQ(all[1].colony, upper.colony);
  EXPECT_EQ(all[1].verdict, VerdictCode::SmallSound);
}

}  // namespace
}  // namespace outyard::strength
