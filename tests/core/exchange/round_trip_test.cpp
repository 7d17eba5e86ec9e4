// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>

#include "core/apiary/validate.h"
#include "tests/core/exchange/exchange_support.h"
#include "tests/core/exchange/random_season.h"
#include "tests/support/random_verbs.h"
#include "tests/support/season_builder.h"

namespace outyard::exchange::testing {
namespace {

namespace fs = std::filesystem;

/// Out, in, out again: the same bytes; in once more: no change.
void expectRoundTrip(const apiary::Season& season) {
  const Files first = exported(season);
  ASSERT_EQ(first.size(), static_cast<std::size_t>(apiary::kTableCount));
  const ImportResult r = planned({}, first);
  ASSERT_TRUE(r.ok()) << allFaults(r);
  for (const auto& t : r.report) {
    EXPECT_EQ(t.made, 0) << apiary::tableSpec(t.table).name;
  }
  apiary::Season copy;
  copy.apply(r.changes);
  for (const auto& [name, text] : exported(copy)) EXPECT_EQ(text, first.at(name)) << name;
  const ImportResult again = planned(copy, first);
  EXPECT_TRUE(again.ok()) << allFaults(again);
  EXPECT_TRUE(again.changes.empty());
}

TEST(RoundTrip, ARandomSeasonLosesNothing) {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    SCOPED_TRACE(seed);
    const RandomSeason made(seed, 12);
    const auto faults = apiary::checkSeason(made.season());
    for (const auto& f : faults) {
      ADD_FAILURE() << apiary::tableSpec(f.table).name << " " << f.column << " " << f.what.key;
    }
    expectRoundTrip(made.season());
  }
}

TEST(RoundTrip, TheRandomSeasonFillsEveryColumn) {
  const RandomSeason made(3, 24);
  for (const auto& spec : apiary::tableSpecs()) {
    const auto rows = made.season().rows(spec.id);
    for (std::size_t c = 0; c < spec.columns.size(); ++c) {
      if (spec.id == apiary::TableId::Hives && spec.columns[c].name == "status") continue;
      EXPECT_TRUE(std::any_of(
          rows.begin(), rows.end(),
          [&](const auto& r) { return !std::holds_alternative<std::monostate>(r.values[c]); }))
          << spec.name << " " << spec.columns[c].name;
    }
  }
}

TEST(RoundTrip, TheSampleSeason) {
  const Files files = folder(fs::path(OUTYARD_SOURCE_DIR) / "sample");
  ASSERT_TRUE(files.contains("hives.csv"));
  const auto season = imported(files);
  EXPECT_TRUE(apiary::checkSeason(season).empty());
  const ImportResult again = planned(season, files);
  EXPECT_TRUE(again.ok()) << allFaults(again);
  EXPECT_TRUE(again.changes.empty());
  expectRoundTrip(season);
}

TEST(RoundTrip, ASeasonMadeByTheVerbs) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(seed);
    base::SeededIds ids(seed + 1000);
    const base::FixedClock clock(day("2026-09-30"), "2026-09-30T08:00:00Z");
    auto session = session::Session::open(
        std::make_unique<tests::MemoryStore>(tests::smallSeason()), ids, clock);
    ASSERT_TRUE(session.ok());
    tests::RandomVerbs verbs(seed);
    int done = 0;
    for (int i = 0; i < 400; ++i) {
      const auto verb = verbs.next((*session)->season());
      if (!(*session)->check(*verb)) continue;
      ASSERT_TRUE((*session)->execute(*verb).ok());
      ++done;
    }
    ASSERT_GT(done, 40);
    expectRoundTrip((*session)->season());
  }
}

TEST(Export, AnEmptySeasonIsHeadersOnly) {
  const Files files = exported({});
  EXPECT_EQ(files.at("gear.csv"), "item,place,date,count\n");
  for (const auto& [name, text] : files) {
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 1) << name;
  }
  EXPECT_TRUE(planned({}, files).ok());
}

TEST(Export, RowsAreSortedByKeyAndNumbersShort) {
  const auto season = imported({{"gear.csv",
                                 "place,item,count,date\ntruck,paper,12.50,2026-04-01\n"
                                 "shed,paper,3.0,2026-04-01\ntruck,feeder,1e1,2026-04-01\n"}});
  EXPECT_EQ(tableText(season, apiary::TableId::Gear),
            "item,place,date,count\nfeeder,truck,2026-04-01,10\npaper,shed,2026-04-01,3\n"
            "paper,truck,2026-04-01,12.5\n");
}

class FolderTest : public ::testing::Test {
 protected:
  void SetUp() override {
    m_folder =
        fs::temp_directory_path() /
        ("outyard_exchange_" + std::to_string(::testing::UnitTest::GetInstance()->random_seed()) +
         "_" + ::testing::UnitTest::GetInstance()->current_test_info()->name());
    fs::remove_all(m_folder);
  }
  void TearDown() override { fs::remove_all(m_folder); }
  fs::path m_folder;
};

TEST_F(FolderTest, TheFolderIsMadeAndFilesAreReplaced) {
  base::Progress quiet;
  const RandomSeason made(5, 4);
  for (const apiary::Season& season : {apiary::Season{}, made.season()}) {
    FolderSink sink(m_folder / "below" / "it");
    ASSERT_TRUE(exportTables(season, sink, quiet).ok());
    EXPECT_EQ(folder(m_folder / "below" / "it"), exported(season)) << "and no temporary is left";
  }
}

TEST_F(FolderTest, WhatCannotBeWrittenIsToldAndNothingIsTouched) {
  base::Progress quiet;
  fs::create_directories(m_folder / "weather.csv");  // a folder where a file should go
  std::ofstream(m_folder / "yards.csv") << "kept";
  {
    FolderSink sink(m_folder);
    const auto done = exportTables({}, sink, quiet);
    ASSERT_FALSE(done.ok());
    EXPECT_EQ(done.failure().messages[0].key, "exchange.cannot_write");
  }
  EXPECT_EQ(folder(m_folder), (Files{{"yards.csv", "kept"}}));

  std::ofstream(m_folder / "file") << "x";
  FolderSink below(m_folder / "file" / "below");
  EXPECT_FALSE(exportTables({}, below, quiet).ok());
}

TEST_F(FolderTest, AStoppedExportTouchesNothing) {
  struct Stopped : base::Progress {
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  FolderSink sink(m_folder);
  EXPECT_FALSE(exportTables({}, sink, stopped).ok());
  EXPECT_FALSE(fs::exists(m_folder / "yards.csv"));
}

}  // namespace
}  // namespace outyard::exchange::testing
