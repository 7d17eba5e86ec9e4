// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <set>

#include "core/apiary/state.h"
#include "core/apiary/validate.h"
#include "core/exchange/tables.h"
#include "core/planning/boost.h"
#include "tests/architecture/source_tree.h"

// The sample season as it is committed: it reads without a fault, comes out again as it went in,
// and shows every state that the program can show.
namespace outyard::architecture {
namespace {

using apiary::Season;

std::string told(const exchange::ImportResult& result) {
  std::string out;
  for (const auto& f : result.faults) out += exchange::placeText(f) + " " + f.what.key + "\n";
  return out;
}

class SampleSeason : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    const exchange::FolderSource files(sourceRoot() / "sample");
    base::Progress progress;
    const auto result =
        exchange::planImport(Season{}, files, base::Date::parse("2026-04-25").value(), progress);
    ASSERT_TRUE(result.ok()) << result.faultCount << " faults\n" << told(result);
    auto* season = new Season;
    season->apply(result.changes);
    s_season.reset(season);
    for (const auto& r : result.report) s_made += r.made;
  }
  static void TearDownTestSuite() { s_season.reset(); }
  void SetUp() override { ASSERT_TRUE(s_season); }

  static const Season& season() { return *s_season; }
  static base::Date day() { return season().workingDate().value(); }

  static inline std::unique_ptr<const Season> s_season;
  static inline int s_made = 0;
};

TEST_F(SampleSeason, NothingHadToBeMadeUpAndNothingIsWrong) {
  EXPECT_EQ(s_made, 0) << "state rows that the tables should hold themselves";
  for (const auto& f : apiary::checkSeason(season())) {
    ADD_FAILURE() << apiary::tableSpec(f.table).name << " " << f.key << " " << f.column << " "
                  << f.what.key;
  }
}

TEST_F(SampleSeason, ComesOutAsItWentIn) {
  for (const auto& spec : apiary::tableSpecs()) {
    const fs::path file = sourceRoot() / "sample" / (spec.name + ".csv");
    if (!fs::exists(file)) {
      EXPECT_TRUE(season().rows(spec.id).empty()) << spec.name;
      continue;
    }
    EXPECT_TRUE(exchange::tableText(season(), spec.id) == textOf(file)) << spec.name;
  }
}

TEST_F(SampleSeason, IsOfTheSizeOfAnOutfit) {
  EXPECT_EQ(season().table<apiary::Yard>().size(), 7u);
  EXPECT_EQ(season().table<apiary::Hive>().size(), 150u);
  std::uintmax_t bytes = 0;
  for (const auto& file : filesBelow({"sample"}, {".csv"})) bytes += fs::file_size(file);
  EXPECT_LT(bytes, 1'500'000u);
}

TEST_F(SampleSeason, ShowsEveryJudgement) {
  std::set<std::string> found, overruled;
  for (const auto& [key, yard] : season().table<apiary::Yard>()) {
    for (const auto& j : strength::judgeYard(season(), yard.yard, day())) {
      found.emplace(apiary::code(j.verdict));
      if (j.ruleVerdict) overruled.insert(j.colony.str());
      EXPECT_FALSE(j.evidence.empty()) << j.colony.str();
    }
  }
  for (const auto code : apiary::allCodes<apiary::VerdictCode>()) {
    EXPECT_TRUE(found.contains(std::string(code))) << code;
  }
  EXPECT_FALSE(overruled.empty());
}

TEST_F(SampleSeason, ShowsEveryKindOfHive) {
  std::set<apiary::HiveStatus> status;
  int stacked = 0, dead = 0, wrapped = 0;
  for (const auto& [key, hive] : season().table<apiary::Hive>()) {
    const auto state = apiary::hiveOn(season(), hive.hive, day());
    status.insert(state.status);
    stacked += state.stacked() ? 1 : 0;
    wrapped += state.wrapped ? 1 : 0;
  }
  EXPECT_EQ(status.size(), 3u);
  EXPECT_EQ(stacked, 2);
  EXPECT_GT(wrapped, 5);
  for (const auto& [key, e] : season().table<apiary::Event>()) {
    dead += e.kind == apiary::EventKind::Died ? 1 : 0;
  }
  // Winter losses of 10 to 25 in a hundred: common practice, no source.
  EXPECT_GE(dead, 15);
  EXPECT_LE(dead, 37);
}

TEST_F(SampleSeason, HasBoostsToMakeAndYardsWhereNoneMayBe) {
  base::Progress progress;
  int withStack = 0, withBrood = 0;
  for (const auto& [key, yard] : season().table<apiary::Yard>()) {
    planning::BoostRequest request;
    request.yards = {yard.yard};
    request.date = day();
    auto problem = planning::makeBoostProblem(season(), request);
    ASSERT_TRUE(problem) << key;
    const auto plan = planning::solveBoost(std::move(*problem), progress);
    ASSERT_TRUE(plan) << key;
    EXPECT_TRUE(plan->optimal) << key;
    bool stack = false, brood = false;
    for (const auto& id : plan->chosen) {
      const auto* o = plan->option(id);
      stack = stack || (o && o->method == apiary::Method::Stack);
      brood = brood || (o && o->method == apiary::Method::SealedFrames);
    }
    withStack += stack ? 1 : 0;
    withBrood += brood ? 1 : 0;
    if (key == "KM") {  // foul brood suspected: nothing in or out
      EXPECT_TRUE(apiary::foulBroodIn(season(), yard.yard, day()));
      EXPECT_TRUE(plan->problem.options.empty());
      EXPECT_FALSE(plan->problem.barred.empty());
    }
    if (key == "NH") {  // frost hollow: not today
      EXPECT_FALSE(stack);
      EXPECT_FALSE(plan->problem.notes.empty());
    }
  }
  EXPECT_GE(withStack, 3);
  EXPECT_GE(withBrood, 1);
}

}  // namespace
}  // namespace outyard::architecture
