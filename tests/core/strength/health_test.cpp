// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>

#include "core/strength/verdict.h"
#include "tests/core/strength/strength_season.h"

// What bars a colony from giving and taking: common practice, no source.
namespace outyard::strength {
namespace {

using apiary::Disease;
using apiary::EventKind;
using apiary::VerdictCode;
using test::day;
using test::TestSeason;

constexpr const char* kDay = "2026-04-25";
const base::ColonyId kColony("H");

bool has(const std::vector<base::Message>& list, const std::string& key) {
  return std::any_of(list.begin(), list.end(), [&](const auto& m) { return m.key == key; });
}

void strongLook(TestSeason& s, std::optional<Disease> disease = std::nullopt,
                base::Date on = day(kDay)) {
  auto i = TestSeason::look(kDay);
  i.date = on;
  i.seams = 8;
  i.eggsSeen = true;
  i.pattern = 4;
  i.framesWithBrood = 5;
  i.disease = disease;
  s.add(i);
}

TEST(Health, FoulBroodBarsTheWholeYard) {
  TestSeason s;
  s.hive("K");
  strongLook(s);
  auto i = TestSeason::look("2026-04-20", "K");
  i.disease = Disease::SuspectAfb;
  s.add(i);
  const auto all = judgeYard(s.season, base::YardId("Y"), day(kDay));
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].verdict, VerdictCode::Strong);
  EXPECT_EQ(all[0].healthBar.value().key, "health.foul_brood_yard");
  EXPECT_EQ(all[1].healthBar.value().key, "health.foul_brood_here");
  // The inspector's clearance, entered as a note, lifts it.
  auto clear = TestSeason::event(EventKind::Note, "2026-04-22", "K");
  clear.method = "health_clear";
  s.add(clear);
  for (const Judgement& j : judgeYard(s.season, base::YardId("Y"), day(kDay))) {
    EXPECT_FALSE(j.healthBar);
  }
}

TEST(Health, ChalkbroodAndSacbroodGiveNoCombs) {
  for (const Disease d : {Disease::Chalkbrood, Disease::Sacbrood}) {
    TestSeason s;
    strongLook(s, d);
    const Judgement j = judge(s.season, kColony, day(kDay));
    EXPECT_TRUE(j.givesNoCombs);
    EXPECT_FALSE(j.healthBar);
  }
}

struct WashCase {
  int mites, bees;
  const char* on;
  bool bars;
};
TEST(Health, HeavyMitesAreTreatedFirst) {
  for (const WashCase& c :
       {WashCase{9, 300, "2026-06-10", true}, WashCase{8, 300, "2026-06-10", false},
        WashCase{6, 300, "2026-04-20", true}, WashCase{5, 300, "2026-04-20", false},
        WashCase{0, 300, "2026-06-10", false}, WashCase{30, 300, "2026-02-01", false}}) {
    TestSeason s;
    const auto judged = day(c.on) > day(kDay) ? day("2026-06-12") : day(kDay);
    strongLook(s, std::nullopt, judged);
    apiary::Wash w;
    w.hive = base::HiveId("H");
    w.date = day(c.on);
    w.method = apiary::WashMethod::Alcohol;
    w.bees = c.bees;
    w.mites = c.mites;
    s.add(w);
    const Judgement j = judge(s.season, kColony, judged);
    EXPECT_EQ(j.healthBar.has_value(), c.bars) << c.mites << " on " << c.on;
    if (c.bars) {
      EXPECT_EQ(j.healthBar->key, "health.mites");
    }
    EXPECT_EQ(j.verdict, VerdictCode::Strong);
  }
}

TEST(Health, TreatmentAfterTheWashLiftsTheBarAndSaysSo) {
  TestSeason s;
  strongLook(s);
  apiary::Wash w;
  w.hive = base::HiveId("H");
  w.date = day("2026-04-10");
  w.bees = 300;
  w.mites = 15;
  s.add(w);
  EXPECT_TRUE(judge(s.season, kColony, day(kDay)).healthBar);
  s.add(TestSeason::event(EventKind::Treated, "2026-04-12"));
  const Judgement j = judge(s.season, kColony, day(kDay));
  EXPECT_FALSE(j.healthBar);
  EXPECT_TRUE(has(j.evidence, "evidence.treated_since_wash"));
}

}  // namespace
}  // namespace outyard::strength
