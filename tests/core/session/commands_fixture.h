// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/validate.h"
#include "core/session/commands.h"
#include "tests/support/season_builder.h"

namespace outyard::session {

inline BoxState box(int position, apiary::BoxRole role = apiary::BoxRole::Chamber,
                    Beneath beneath = Beneath::None,
                    std::optional<ColonyId> colony = std::nullopt) {
  return {position, "langstroth_deep", 10, role, std::move(colony), beneath};
}

struct CommandsTest : testing::Test {
  base::SeededIds ids{99};
  base::FixedClock clock{tests::day("2026-09-30"), "2026-09-30T18:00:00Z"};
  std::unique_ptr<Session> session;
  std::vector<apiary::Row> start;
  const Date d = tests::day("2026-04-25");

  void SetUp() override { open(tests::smallSeason()); }
  void open(apiary::Season season) {
    session = std::move(
        Session::open(std::make_unique<tests::MemoryStore>(std::move(season)), ids, clock).value());
    start = tests::allRows(session->season());
  }
  /// Every verb that was done leaves a season without faults and can be taken back whole.
  void TearDown() override {
    const auto faults = apiary::checkSeason(session->season());
    EXPECT_TRUE(faults.empty()) << (faults.empty() ? "" : faults[0].what.key);
    while (session->canUndo()) ASSERT_TRUE(session->undo().ok());
    EXPECT_EQ(tests::allRows(session->season()), start);
  }
  const apiary::Season& season() const { return session->season(); }
  apiary::HiveState at(const char* hive, Date date) const {
    return apiary::hiveOn(season(), HiveId{hive}, date);
  }
  void mustDo(CommandPtr command) {
    const auto done = session->execute(*command);
    ASSERT_THAT(tests::keysOf(done), testing::IsEmpty());
  }
  std::vector<std::string> refused(CommandPtr command) {
    const auto before = tests::allRows(season());
    auto keys = tests::keysOf(session->execute(*command));
    EXPECT_FALSE(keys.empty()) << "was done";
    EXPECT_TRUE(tests::allRows(season()) == before) << "refused, yet something changed";
    return keys;
  }
  Stacking stacking(const char* weak, const char* donor) const {
    return {HiveId{weak}, HiveId{donor}, d, Beneath::Excluder, true, std::nullopt};
  }
  base::RecordId lastEvent(const char* hive) const {
    return season().journal<apiary::Event>(HiveId{hive}).back()->record;
  }
};

}  // namespace outyard::session
