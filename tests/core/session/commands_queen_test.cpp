// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using testing::Contains;
using testing::ElementsAre;

struct QueenCommandsTest : CommandsTest {
  const HiveId h1{"TR-01"};
  const ColonyId c1{"TR-01"};

  apiary::Queen queen(const char* id, int year = 2026) const {
    apiary::Queen q;
    q.queen = base::QueenId{id};
    q.year = year;
    q.line = "North";
    q.origin = "own graft";
    q.marked = true;
    q.clipped = false;
    return q;
  }
  QueenGiven given(const char* hive, apiary::Queen q) const {
    return {HiveId{hive}, ColonyId{hive}, d, std::move(q), "cage", "", std::nullopt};
  }
  Event last(const char* hive) const { return *season().journal<Event>(HiveId{hive}).back(); }
};

TEST_F(QueenCommandsTest, AQueenGivenEndsTheStayOfTheEarlierOne) {
  mustDo(introduceQueen(given("TR-01", queen("Q9"))));
  const auto before = at("TR-01", d.plusDays(-1)), after = at("TR-01", d);
  EXPECT_EQ(before.colonies.at(0).queen, base::QueenId{"Q1"});
  EXPECT_EQ(after.colonies.at(0).queen, base::QueenId{"Q9"});
  EXPECT_EQ(after.colonies.at(0).queenYear, 2026);
  EXPECT_EQ(after.colonies.at(0).queenLine, "North");
  EXPECT_EQ(after.colonies.at(0).queenMarked, true);
  ASSERT_TRUE(season().queen(base::QueenId{"Q9"}));
  EXPECT_EQ(season().queen(base::QueenId{"Q9"})->origin, "own graft");
  EXPECT_EQ(last("TR-01").kind, EventKind::QueenIntroduced);
  EXPECT_EQ(last("TR-01").queen, base::QueenId{"Q9"});
  ASSERT_TRUE(session->undo().ok());
  EXPECT_FALSE(season().queen(base::QueenId{"Q9"}));
  ASSERT_TRUE(session->redo().ok());
}

TEST_F(QueenCommandsTest, WrongQueensAreRefused) {
  EXPECT_THAT(refused(introduceQueen(given("TR-07", queen("Q9")))),
              Contains("session.colony_not_there"));
  EXPECT_THAT(refused(introduceQueen(given("TR-01", queen("")))), Contains("session.name_blank"));
  EXPECT_THAT(refused(introduceQueen(given("TR-01", queen("Q9", 2027)))),
              ElementsAre("session.queen_year"));
  EXPECT_THAT(refused(introduceQueen(given("TR-01", queen("Q2")))),
              ElementsAre("session.queen_known", "session.queen_elsewhere"));
  EXPECT_THAT(refused(introduceQueen(given("TR-01", *season().queen(base::QueenId{"Q2"})))),
              ElementsAre("session.queen_elsewhere"));
}

TEST_F(QueenCommandsTest, AQueenTakenOutCanBeGivenElsewhere) {
  mustDo(recordQueenGone({h1, c1, d, true, "too old", std::nullopt}));
  EXPECT_EQ(last("TR-01").kind, EventKind::QueenRemoved);
  EXPECT_EQ(last("TR-01").queen, base::QueenId{"Q1"});
  EXPECT_FALSE(at("TR-01", d).colonies.at(0).queen);
  mustDo(introduceQueen(given("TR-03", *season().queen(base::QueenId{"Q1"}))));
  EXPECT_EQ(at("TR-03", d).colonies.at(0).queen, base::QueenId{"Q1"});
}

TEST_F(QueenCommandsTest, LostAndGivenOnOneDayIsOneStayWithTheNewQueen) {
  mustDo(recordQueenGone({h1, c1, d, false, "", std::nullopt}));
  mustDo(introduceQueen(given("TR-01", queen("Q9"))));
  int from = 0;
  for (const ColonyStay* s : season().journal<ColonyStay>(h1)) from += s->fromDate == d;
  EXPECT_EQ(from, 1);
  EXPECT_EQ(at("TR-01", d).colonies.at(0).queen, base::QueenId{"Q9"});
}

TEST_F(QueenCommandsTest, MarkingGoesIntoHerRow) {
  mustDo(markQueen({h1, c1, d, true, true, "blue 14"}));
  const auto* q = season().queen(base::QueenId{"Q1"});
  EXPECT_EQ(q->marked, true);
  EXPECT_EQ(q->clipped, true);
  EXPECT_EQ(at("TR-01", d).colonies.at(0).queenMarked, true);
  EXPECT_EQ(last("TR-01").method, "marked clipped");
  // A queen without a name: the stay says it.
  mustDo(markQueen({HiveId{"TR-03"}, ColonyId{"TR-03"}, d, true, false, ""}));
  EXPECT_EQ(at("TR-03", d).colonies.at(0).queenMarked, true);
  EXPECT_THAT(refused(markQueen({h1, c1, d, false, false, ""})),
              ElementsAre("session.marking_empty"));
}

TEST_F(QueenCommandsTest, CellsChangeNoStay) {
  const auto stays = season().table<ColonyStay>().size();
  mustDo(giveQueenCells({h1, std::nullopt, d, 2, "North", "sealed", std::nullopt}));
  EXPECT_EQ(last("TR-01").kind, EventKind::QueenCellGiven);
  EXPECT_EQ(last("TR-01").amount, 2);
  EXPECT_EQ(season().table<ColonyStay>().size(), stays);
  EXPECT_THAT(refused(giveQueenCells({h1, std::nullopt, d, 0, "", "", std::nullopt})),
              ElementsAre("session.cells_amount"));
}

TEST_F(QueenCommandsTest, APrimeSwarmTakesTheOldQueenAlong) {
  mustDo(recordSwarm({h1, c1, d, false, HiveId{"TR-07"}, std::nullopt, ""}));
  EXPECT_FALSE(at("TR-01", d).colonies.at(0).queen);
  const auto hived = at("TR-07", d);
  ASSERT_EQ(hived.colonies.size(), 1U);
  EXPECT_EQ(hived.status, apiary::HiveStatus::Live);
  EXPECT_EQ(hived.colonies[0].queen, base::QueenId{"Q1"});
  const auto* stay = season().journal<ColonyStay>(HiveId{"TR-07"}).back();
  EXPECT_EQ(stay->origin, apiary::ColonyOrigin::Swarm);
  EXPECT_EQ(stay->parentColony, c1);
}

TEST_F(QueenCommandsTest, AnAfterSwarmLeavesTheQueenAsRecorded) {
  mustDo(recordSwarm({h1, c1, d, true, std::nullopt, std::nullopt, ""}));
  EXPECT_EQ(at("TR-01", d).colonies.at(0).queen, base::QueenId{"Q1"});
  EXPECT_EQ(last("TR-01").method, "after");
  EXPECT_THAT(refused(recordSwarm({h1, c1, d, true, HiveId{"TR-02"}, std::nullopt, ""})),
              Contains("session.target_not_empty"));
}

TEST_F(QueenCommandsTest, ASoldHiveIsGoneASoldColonyLeavesItsHive) {
  mustDo(recordSale({HiveId{"TR-03"}, std::nullopt, d, "to a neighbour"}));
  EXPECT_FALSE(at("TR-03", d).present);
  EXPECT_TRUE(at("TR-03", d.plusDays(-1)).present);
  mustDo(recordSale({h1, c1, d, ""}));
  EXPECT_TRUE(at("TR-01", d).present);
  EXPECT_EQ(at("TR-01", d).status, apiary::HiveStatus::Empty);
  // She went with them, and cannot be given to another.
  EXPECT_THAT(refused(recordEvent([&] {
                Event e;
                e.kind = EventKind::Fed;
                e.hive = HiveId{"TR-03"};
                e.date = d;
                e.what = apiary::Goods::Fondant;
                return e;
              }())),
              ElementsAre("session.hive_gone"));
}

TEST_F(QueenCommandsTest, ABoughtColonyBringsItsQueen) {
  mustDo(recordPurchase({HiveId{"TR-07"}, ColonyId{"K1"}, d, queen("Q9", 2025), "five frames"}));
  EXPECT_EQ(at("TR-07", d).colonies.at(0).queen, base::QueenId{"Q9"});
  EXPECT_EQ(season().journal<ColonyStay>(HiveId{"TR-07"}).back()->origin,
            apiary::ColonyOrigin::Bought);
  EXPECT_THAT(refused(recordPurchase({h1, ColonyId{"K2"}, d, std::nullopt, ""})),
              ElementsAre("session.target_not_empty"));
}

TEST_F(QueenCommandsTest, ALostHiveStandsNowhere) {
  mustDo(recordLoss({HiveId{"TR-05"}, std::nullopt, d, "flooded"}));
  EXPECT_FALSE(at("TR-05", d).present);
  EXPECT_FALSE(apiary::hiveOfColony(season(), ColonyId{"TR-05"}, d));
}

TEST_F(QueenCommandsTest, NothingLeavesASickYard) {
  apiary::Inspection i;
  i.hive = HiveId{"TR-02"};
  i.date = d;
  i.disease = apiary::Disease::SuspectAfb;
  mustDo(recordInspection(i, {}, {}));
  EXPECT_THAT(refused(recordSale({h1, c1, d, ""})), ElementsAre("session.foul_brood"));
  EXPECT_THAT(refused(introduceQueen(given("TR-01", queen("Q9")))),
              ElementsAre("session.foul_brood"));
  // What happened is recorded all the same.
  mustDo(recordSwarm({h1, c1, d, false, std::nullopt, std::nullopt, ""}));
  mustDo(recordLoss({HiveId{"TR-05"}, std::nullopt, d, ""}));
}

TEST_F(QueenCommandsTest, AQueenGivenCanBeWithdrawnWhenTheColonyWasSeenSince) {
  mustDo(introduceQueen(given("TR-01", queen("Q9"))));
  const auto record = lastEvent("TR-01");
  apiary::Inspection i;
  i.hive = h1;
  i.date = d.plusDays(10);
  i.eggsSeen = true;
  mustDo(recordInspection(i, {}, {}));
  mustDo(withdrawRecord(apiary::TableId::Events, record));
  EXPECT_EQ(at("TR-01", d.plusDays(10)).colonies.at(0).queen, base::QueenId{"Q1"});
}

TEST_F(QueenCommandsTest, ASaleWithdrawnBringsTheHiveBack) {
  mustDo(recordSale({HiveId{"TR-03"}, std::nullopt, d, ""}));
  mustDo(withdrawRecord(apiary::TableId::Events, lastEvent("TR-03")));
  EXPECT_TRUE(at("TR-03", d).present);
  EXPECT_EQ(at("TR-03", d).status, apiary::HiveStatus::Live);
}

}  // namespace
}  // namespace outyard::session
