// SPDX-License-Identifier: GPL-3.0-or-later
// Events of queens and ends in a folder whose colonies.csv does not say what they changed.
#include "core/apiary/state.h"
#include "core/apiary/validate.h"
#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

Files withEvents(const std::string& events, const std::string& colonies = {}) {
  Files f;
  f["yards.csv"] = "yard\nTR\n";
  f["hives.csv"] = "hive,yard\nT1,TR\nT2,TR\n";
  f["queens.csv"] = "queen,line,year\nQ1,A,2024\nQ2,B,2026\n";
  f["boxes.csv"] =
      "hive,date,position,frame_type,frames\nT1,2025-04-01,1,langstroth_deep,10\n"
      "T2,2025-04-01,1,langstroth_deep,10\n";
  f["colonies.csv"] = colonies.empty() ? "colony,hive,queen,from_date,to_date\n"
                                         "C1,T1,Q1,2025-04-01,\n"
                                       : colonies;
  f["events.csv"] = "date,kind,hive,queen,method\n" + events;
  return f;
}

std::optional<base::QueenId> queenOn(const apiary::Season& s, const char* hive, const char* date) {
  const auto state = apiary::hiveOn(s, base::HiveId{hive}, day(date));
  return state.colonies.empty() ? std::nullopt : state.colonies.front().queen;
}

TEST(QueenEvents, AQueenIntroducedBeginsAStay) {
  const auto files = withEvents("2026-05-01,queen_introduced,T1,Q2,\n");
  const auto s = imported(files);
  EXPECT_EQ(queenOn(s, "T1", "2026-04-30"), base::QueenId{"Q1"});
  EXPECT_EQ(queenOn(s, "T1", "2026-05-01"), base::QueenId{"Q2"});
  EXPECT_TRUE(apiary::checkSeason(s).empty());
  // Out and in again nothing more is made.
  const auto again = planned({}, exported(s));
  ASSERT_TRUE(again.ok()) << allFaults(again);
  for (const auto& t : again.report) EXPECT_EQ(t.made, 0);
}

TEST(QueenEvents, LostRemovedAndAPrimeSwarmEndIt) {
  for (const char* kind : {"queen_lost", "queen_removed", "swarmed"}) {
    SCOPED_TRACE(kind);
    const auto s = imported(withEvents(std::string("2026-05-01,") + kind + ",T1,,\n"));
    EXPECT_EQ(queenOn(s, "T1", "2026-04-30"), base::QueenId{"Q1"});
    EXPECT_EQ(queenOn(s, "T1", "2026-05-01"), std::nullopt);
    EXPECT_EQ(apiary::hiveOn(s, base::HiveId{"T1"}, day("2026-05-01")).colonies.size(), 1U);
  }
  const auto s = imported(withEvents("2026-05-01,swarmed,T1,,after\n"));
  EXPECT_EQ(queenOn(s, "T1", "2026-05-01"), base::QueenId{"Q1"});
}

TEST(QueenEvents, RowsThatSayHowItWentOnStand) {
  const auto s = imported(withEvents("2026-05-01,queen_introduced,T1,Q2,\n",
                                     "colony,hive,queen,from_date,to_date\n"
                                     "C1,T1,Q1,2025-04-01,2026-05-04\n"
                                     "C1,T1,Q2,2026-05-04,\n"));
  EXPECT_EQ(queenOn(s, "T1", "2026-05-03"), base::QueenId{"Q1"});
  EXPECT_EQ(queenOn(s, "T1", "2026-05-04"), base::QueenId{"Q2"});
}

TEST(QueenEvents, SoldAndLostEndTheStayBoughtBeginsOne) {
  for (const char* kind : {"sold", "lost"}) {
    SCOPED_TRACE(kind);
    const auto s = imported(withEvents(std::string("2026-05-01,") + kind + ",T1,,\n"));
    EXPECT_FALSE(apiary::hiveOfColony(s, base::ColonyId{"C1"}, day("2026-05-01")));
    EXPECT_FALSE(apiary::hiveOn(s, base::HiveId{"T1"}, day("2026-05-01")).present);
  }
  const auto s = imported(withEvents("2026-05-01,bought,T2,Q2,\n"));
  EXPECT_EQ(queenOn(s, "T2", "2026-05-01"), base::QueenId{"Q2"});
  EXPECT_TRUE(apiary::hiveOn(s, base::HiveId{"T2"}, day("2026-04-30")).colonies.empty());
  // Somebody lives there: the row stands.
  const auto kept = imported(withEvents("2026-05-01,bought,T1,Q2,\n"));
  EXPECT_EQ(queenOn(kept, "T1", "2026-05-01"), base::QueenId{"Q1"});
}

}  // namespace
}  // namespace outyard::exchange::testing
