// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/state.h"
#include "core/apiary/validate.h"
#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

using apiary::Box;
using apiary::ColonyId;
using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::HiveId;
using apiary::HiveStatus;
using apiary::Inspection;
using apiary::Place;
using apiary::PlaceHow;
using apiary::TableId;
using apiary::YardId;

Files yards() {
  return {{"yards.csv", "yard\nTR\nKM\n"},
          {"hives.csv", "hive,yard,x_m,y_m\nA,TR,1,2\nB,TR,3,2\nC,KM,,\n"}};
}

Files with(Files files, const std::map<std::string, std::string>& more) {
  for (const auto& [name, text] : more) files[name] = text;
  return files;
}

const TableReport& reportOf(const ImportResult& r, TableId table) {
  for (const auto& t : r.report) {
    if (t.table == table) return t;
  }
  static const TableReport none;
  ADD_FAILURE() << "no report on " << apiary::tableSpec(table).name;
  return none;
}

/// The same folder again changes nothing.
void expectSettled(const Files& files, const apiary::Season& season) {
  const ImportResult again = planned(season, files);
  EXPECT_TRUE(again.ok()) << allFaults(again);
  EXPECT_TRUE(again.changes.empty());
}

TEST(Import, FormsOfTheSameContentAreOne) {
  const std::string plain =
      "record,hive,date,seams,notes\ni1,A,2026-04-10,6.50,\"two\nlines\"\n"
      "i2,B,2026-04-10,2,\xC3\xA4lter\n";
  std::string crlf;
  for (const char c : plain) crlf += c == '\n' ? "\r\n" : std::string(1, c);
  const std::vector<std::string> forms{
      plain, "\xEF\xBB\xBF" + plain, crlf, "\xEF\xBB\xBF" + crlf,
      // other order of columns, other text of the same values, decomposed letters, blanks
      "notes,date,seams,hive,record\n\"two\nlines\",2026-04-10,6.5,A,i1\n"
      "\" a\xCC\x88lter \",2026-04-10,+2.0,B,\"i2\"\n"};
  const auto first = imported(with(yards(), {{"inspections.csv", forms[0]}}));
  EXPECT_EQ(first.find<Inspection>("i1")->notes, "two\nlines");
  for (const auto& form : forms) {
    const auto other = imported(with(yards(), {{"inspections.csv", form}}));
    EXPECT_EQ(exported(other), exported(first)) << form;
    expectSettled(with(yards(), {{"inspections.csv", form}}), first);
  }
}

TEST(Import, LikeRowsWithoutRecordAreBothKept) {
  const Files files = with(yards(), {{"washes.csv",
                                      "hive,date,method,bees,mites\nA,2026-04-10,alcohol,300,2\n"
                                      "A,2026-04-10,alcohol,300,2\n"
                                      "A,2026-04-10,sugar,300,2\n"}});
  const auto season = imported(files);
  EXPECT_EQ(season.table<apiary::Wash>().size(), 3U);
  expectSettled(files, season);
}

TEST(Import, MadeKeysLeaveGivenOnesAlone) {
  const std::string given = "record,hive,date,seams\ninspections/A//2026-04-10,A,2026-04-10,4\n";
  const Files files = with(yards(), {{"inspections.csv", given + ",A,2026-04-10,5\n"}});
  const auto season = imported(files);
  EXPECT_EQ(season.table<Inspection>().size(), 2U);
  EXPECT_NE(season.find<Inspection>("inspections/A//2026-04-10~2"), nullptr);
  expectSettled(files, season);
}

TEST(Import, RecordsMustNotChangeUnderTheirKey) {
  const auto season =
      imported(with(yards(), {{"inspections.csv", "record,hive,date,seams\ni1,A,2026-04-10,4\n"}}));
  const auto r =
      planned(season, {{"inspections.csv", "record,hive,date,seams\ni1,A,2026-04-10,5\n"}});
  EXPECT_EQ(allFaults(r), "inspections.csv:2: seams exchange.key_known\n");
  // The way to correct one:
  const auto corrected = imported(
      {{"inspections.csv", "record,supersedes,hive,date,seams\ni2,i1,A,2026-04-10,5\n"}}, season);
  ASSERT_EQ(corrected.journal<Inspection>(HiveId("A")).size(), 1U);
  EXPECT_EQ(corrected.journal<Inspection>(HiveId("A"))[0]->seams, 5);
  // And to withdraw it:
  const auto withdrawn = imported(
      {{"inspections.csv", "record,supersedes,void,hive,date\ni3,i2,1,A,2026-04-10\n"}}, corrected);
  EXPECT_TRUE(withdrawn.journal<Inspection>(HiveId("A")).empty());
  EXPECT_EQ(withdrawn.table<Inspection>().size(), 3U);
}

TEST(Import, OtherRowsReplaceTheirKeyAndAreCounted) {
  const auto season = imported(
      with(yards(), {{"weather.csv",
                      "yard,date,tmin_c,tmax_c,kind\nTR,2026-04-10,1,9,observed\n"
                      "TR,2026-04-11,1,9,observed\n"},
                     {"gear.csv", "item,place,date,count\nexcluder,truck,2026-04-01,4\n"}}));
  const auto r =
      planned(season, {{"weather.csv",
                        "yard,date,tmin_c,tmax_c,kind\nTR,2026-04-10,1,9.0,observed\n"
                        "TR,2026-04-11,1,10,observed\nTR,2026-04-12,1,9,observed\n"},
                       {"gear.csv", "item,place,date,count\nexcluder,truck,2026-04-01,5\n"},
                       {"yards.csv", "yard,name\nTR,Train field\nKM,\n"}});
  ASSERT_TRUE(r.ok()) << allFaults(r);
  const auto& weather = reportOf(r, TableId::Weather);
  EXPECT_EQ(weather.added, 1);
  EXPECT_EQ(weather.equal, 1);
  EXPECT_EQ(weather.replaced, 1);
  EXPECT_EQ(reportOf(r, TableId::Gear).replaced, 1);
  EXPECT_EQ(reportOf(r, TableId::Yards).replaced, 1);
  EXPECT_EQ(reportOf(r, TableId::Yards).equal, 1);
  EXPECT_EQ(r.changes.size(), 4U);
}

TEST(Import, AHiveGetsItsFirstPlaceFromItsRow) {
  const Files files =
      with(yards(), {{"inspections.csv", "hive,date,seams\nA,2026-04-10,4\nA,2026-03-02,3\n"}});
  const auto season = imported(files);
  const auto a = season.journal<Place>(HiveId("A"));
  ASSERT_EQ(a.size(), 1U);
  EXPECT_EQ(a[0]->fromDate, day("2026-03-02"));
  EXPECT_EQ(a[0]->how, PlaceHow::Placed);
  EXPECT_EQ(a[0]->xM, 1);
  // Without any record: from today.
  EXPECT_EQ(season.journal<Place>(HiveId("B")).at(0)->fromDate, day("2026-04-25"));
  expectSettled(files, season);
}

TEST(Import, PlacesFillTheHiveRow) {
  const Files files{
      {"yards.csv", "yard\nTR\nKM\n"},
      {"hives.csv", "hive,yard\nA,KM\n"},
      {"places.csv", "hive,yard,x_m,y_m,from_date\nA,TR,1,2,2025-09-01\nA,KM,5,6,2026-03-01\n"}};
  const auto season = imported(files);
  EXPECT_EQ(season.hive(HiveId("A"))->xM, 5);
  expectSettled(files, season);
  const auto moved = imported({{"places.csv", "hive,yard,from_date\nA,TR,2026-04-01\n"}}, season);
  EXPECT_EQ(moved.hive(HiveId("A"))->yard, YardId("TR"));
  EXPECT_EQ(moved.hive(HiveId("A"))->xM, std::nullopt);
}

TEST(Import, AHiveWithoutColonyRowHoldsTheColonyOfItsName) {
  const Files files =
      with(yards(), {{"inspections.csv", "hive,date,seams\nA,2026-04-10,4\nA,2026-03-02,3\n"},
                     {"boxes.csv", "hive,date,position,frame_type\nB,2026-01-01,1,zander\n"}});
  const auto season = imported(files);
  const auto stays = season.stays(ColonyId("A"));
  ASSERT_EQ(stays.size(), 1U);
  EXPECT_EQ(stays[0]->hive, HiveId("A"));
  EXPECT_EQ(stays[0]->place, ColonyPlace::Main);
  EXPECT_EQ(stays[0]->fromDate, day("2026-03-02"));
  EXPECT_TRUE(season.stays(ColonyId("B")).empty()) << "empty boxes are no colony";
  expectSettled(files, season);
}

TEST(Import, StatusIsCheckedAndNotStored) {
  Files files = with(yards(), {{"inspections.csv", "hive,date,seams\nA,2026-04-10,4\n"}});
  files["hives.csv"] = "hive,yard,status\nA,TR,live\nB,TR,live\nC,KM,empty\n";
  const auto season = imported(files);
  EXPECT_EQ(season.hive(HiveId("A"))->status, std::nullopt);
  EXPECT_EQ(season.stays(ColonyId("B")).size(), 1U) << "a live hive holds a colony";
  EXPECT_NE(tableText(season, TableId::Hives).find("\nA,TR,,,,,live,\n"), std::string::npos);
  EXPECT_NE(tableText(season, TableId::Hives).find("\nC,KM,,,,,empty,\n"), std::string::npos);
  expectSettled(files, season);
}

TEST(Import, SidesFindOrMakeTheirInspection) {
  const Files files = with(
      yards(), {{"inspections.csv", "record,hive,date,seams\ni1,A,2026-04-10,4\n"},
                {"frames.csv",
                 "hive,date,box,slot,side,bees_pct\nA,2026-04-10,1,2,a,50\n"
                 "A,2026-04-10,1,2,b,60\nB,2026-04-11,1,2,a,50\nB,2026-04-11,1,2,b,40\n"},
                {"seams.csv", "hive,date,box,from_above\nB,2026-04-11,1,4\nA,2026-04-12,1,4\n"}});
  const auto season = imported(files);
  EXPECT_EQ(season.combSides(base::RecordId("i1")).size(), 2U);
  const auto b = season.journal<Inspection>(HiveId("B"));
  ASSERT_EQ(b.size(), 1U);
  EXPECT_EQ(b[0]->date, day("2026-04-11"));
  EXPECT_EQ(season.combSides(b[0]->record).size(), 2U);
  EXPECT_EQ(season.seamCounts(b[0]->record).size(), 1U);
  EXPECT_EQ(season.journal<Inspection>(HiveId("A")).size(), 2U);
  EXPECT_EQ(season.stays(ColonyId("B")).at(0)->fromDate, day("2026-04-11"));
  expectSettled(files, season);
}

TEST(Import, SidesGoToTheInspectionThatCounts) {
  const Files files =
      with(yards(), {{"inspections.csv",
                      "record,supersedes,hive,date,seams\ni1,,A,2026-04-10,4\n"
                      "i2,i1,A,2026-04-10,5\n"},
                     {"frames.csv", "hive,date,box,slot,side,bees_pct\nA,2026-04-10,1,2,a,50\n"}});
  EXPECT_EQ(imported(files).combSides(base::RecordId("i2")).size(), 1U);
}

// --- state rows from events ------------------------------------------------------------------

Files stocked() {
  return with(yards(),
              {{"colonies.csv",
                "record,colony,hive,from_date\nc1,A,A,2025-09-01\n"
                "c2,B,B,2025-09-01\n"},
               {"boxes.csv",
                "hive,date,position,frame_type,frames,role\nA,2025-09-01,1,langstroth_deep,10,\n"
                "B,2025-09-01,1,langstroth_deep,10,chamber\n"
                "B,2025-09-01,2,langstroth_deep,10,chamber\n"}});
}

TEST(ImportEvents, DiedEndsTheStay) {
  const Files files =
      with(stocked(), {{"events.csv", "date,kind,hive\n2026-03-03,died,A\n"},
                       {"hives.csv", "hive,yard,status\nA,TR,dead\nB,TR,live\nC,KM,empty\n"}});
  const auto season = imported(files);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-01")).status, HiveStatus::Dead);
  ASSERT_EQ(season.stays(ColonyId("A")).size(), 1U);
  EXPECT_EQ(season.stays(ColonyId("A"))[0]->toDate, day("2026-03-03"));
  EXPECT_EQ(season.stays(ColonyId("A"))[0]->supersedes, base::RecordId("c1"));
  expectSettled(files, season);
}

TEST(ImportEvents, DiedWithoutAnyOtherRecord) {
  const Files files = with(yards(), {{"events.csv", "date,kind,hive\n2026-03-03,died,A\n"}});
  const auto season = imported(files);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-01")).status, HiveStatus::Dead);
  EXPECT_EQ(season.table<ColonyStay>().size(), 1U) << "a made stay is ended in place";
  expectSettled(files, season);
}

TEST(ImportEvents, StateRowsOfTheSameDayIncludeTheEvent) {
  const Files files =
      with(stocked(), {{"events.csv", "date,kind,hive\n2026-03-03,died,A\n"},
                       {"colonies.csv",
                        "record,colony,hive,from_date,to_date\nc1,A,A,2025-09-01,2026-03-03\n"
                        "c2,B,B,2025-09-01,\n"}});
  EXPECT_EQ(imported(files).table<ColonyStay>().size(), 2U);
}

TEST(ImportEvents, StackedMovesTheColonyAndItsBoxesUp) {
  const Files files =
      with(stocked(), {{"events.csv", "date,kind,hive,other_hive\n2026-04-12,stacked,A,B\n"}});
  const auto season = imported(files);
  const auto state = apiary::hiveOn(season, HiveId("B"), day("2026-04-12"));
  ASSERT_EQ(state.colonies.size(), 2U);
  EXPECT_EQ(state.colonies[1].colony, ColonyId("A"));
  EXPECT_EQ(state.colonies[1].place, ColonyPlace::OverExcluder);
  ASSERT_EQ(state.boxes.size(), 3U);
  EXPECT_EQ(state.boxes[2].colony, ColonyId("A"));
  EXPECT_EQ(state.boxes[2].beneath, apiary::Beneath::Excluder);
  EXPECT_EQ(state.chambersOf(ColonyId("B")), 2);
  EXPECT_TRUE(apiary::hiveOn(season, HiveId("A"), day("2026-04-12")).colonies.empty());
  EXPECT_TRUE(apiary::hiveOn(season, HiveId("A"), day("2026-04-11")).status == HiveStatus::Live);
  EXPECT_TRUE(apiary::checkSeason(season).empty());
  expectSettled(files, season);
}

TEST(ImportEvents, UnstackedSetsTheUpperOneDown) {
  const Files files = with(stocked(), {{"events.csv",
                                        "date,kind,hive,other_hive\n2026-05-10,unstacked,C,B\n"
                                        "2026-04-12,stacked,A,B\n"}});
  const auto season = imported(files);
  const auto c = apiary::hiveOn(season, HiveId("C"), day("2026-05-10"));
  ASSERT_EQ(c.colonies.size(), 1U);
  EXPECT_EQ(c.colonies[0].colony, ColonyId("A"));
  EXPECT_EQ(c.colonies[0].place, ColonyPlace::Main);
  EXPECT_EQ(c.boxes.size(), 1U);
  const auto b = apiary::hiveOn(season, HiveId("B"), day("2026-05-10"));
  EXPECT_EQ(b.colonies.size(), 1U);
  EXPECT_EQ(b.boxes.size(), 2U);
  EXPECT_TRUE(apiary::hiveOn(season, HiveId("B"), day("2026-05-09")).stacked());
  expectSettled(files, season);
}

TEST(ImportEvents, UnitedEndsTheGoingColonyAndItsBoxesComeOnTop) {
  const Files files =
      with(stocked(), {{"events.csv", "date,kind,hive,other_hive\n2025-10-01,united,B,A\n"}});
  const auto season = imported(files);
  const auto b = apiary::hiveOn(season, HiveId("B"), day("2025-10-01"));
  ASSERT_EQ(b.colonies.size(), 1U);
  EXPECT_EQ(b.colonies[0].colony, ColonyId("B"));
  EXPECT_EQ(b.boxes.size(), 3U);
  EXPECT_EQ(season.stays(ColonyId("A"))[0]->toDate, day("2025-10-01"));
  expectSettled(files, season);
}

TEST(ImportEvents, SplitMakesTheNewColony) {
  const Files files = with(
      stocked(), {{"events.csv", "date,kind,hive,colony,other_hive\n2026-05-10,split,C,C-26,B\n"},
                  {"inspections.csv", "hive,date,seams\nC,2026-06-01,4\n"}});
  const auto season = imported(files);
  const auto stays = season.journal<ColonyStay>(HiveId("C"));
  ASSERT_EQ(stays.size(), 1U);
  EXPECT_EQ(stays[0]->colony, ColonyId("C-26"));
  EXPECT_EQ(stays[0]->parentColony, ColonyId("B"));
  EXPECT_EQ(stays[0]->origin, apiary::ColonyOrigin::Split);
  EXPECT_EQ(stays[0]->fromDate, day("2026-05-10"));
  expectSettled(files, season);
}

TEST(ImportEvents, MovedMakesThePlaceAndKeepsTheOldOne) {
  const auto before = imported(stocked());
  const Files events{{"events.csv", "date,kind,hive,other_yard\n2026-04-26,moved,A,KM\n"}};
  const auto season = imported(events, before);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-26")).yard, YardId("KM"));
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-25")).yard, YardId("TR"));
  EXPECT_EQ(season.hive(HiveId("A"))->yard, YardId("KM"));
  EXPECT_EQ(season.hive(HiveId("A"))->xM, std::nullopt) << "where in the new yard is not told";
  expectSettled(events, season);
}

TEST(ImportEvents, MovedWithTheHiveRowGivingThePlaceOfNow) {
  Files files = with(stocked(), {{"events.csv",
                                  "date,kind,hive,other_yard\n2026-02-01,moved,A,KM\n"
                                  "2026-03-01,moved,A,TR\n"}});
  const auto season = imported(files);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-02-10")).yard, YardId("KM"));
  const auto now = apiary::hiveOn(season, HiveId("A"), day("2026-03-10"));
  EXPECT_EQ(now.yard, YardId("TR"));
  EXPECT_EQ(now.xM, 1);
  expectSettled(files, season);
}

TEST(ImportEvents, PlacesChangedSwapsTheSpots) {
  const Files files = with(
      stocked(), {{"events.csv", "date,kind,hive,other_hive\n2026-05-01,places_changed,A,B\n"}});
  const auto season = imported(files);
  // hives.csv says where they stand now, after the change.
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-05-01")).xM, 1);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-30")).xM, 3);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("B"), day("2026-04-30")).xM, 1);
  expectSettled(files, season);

  const auto known = imported(stocked());
  const auto later = imported({{"events.csv", files.at("events.csv")}}, known);
  EXPECT_EQ(apiary::hiveOn(later, HiveId("A"), day("2026-05-01")).xM, 3);
  EXPECT_EQ(later.hive(HiveId("A"))->xM, 3);
}

TEST(ImportEvents, WithdrawnEventsDoNothing) {
  const Files files = with(stocked(), {{"events.csv",
                                        "record,supersedes,void,date,kind,hive\n"
                                        "e1,,,2026-03-03,died,A\ne2,e1,1,2026-03-03,died,A\n"}});
  const auto season = imported(files);
  EXPECT_EQ(season.table<ColonyStay>().size(), 2U);
  EXPECT_EQ(apiary::hiveOn(season, HiveId("A"), day("2026-04-01")).status, HiveStatus::Live);
}

// --- the run of it -----------------------------------------------------------------------------

TEST(Import, ProgressRisesAndACancelChangesNothing) {
  struct Watch : base::Progress {
    double last = 0;
    int calls = 0;
    int stopAfter = 1 << 30;
    void report(double fraction) override {
      EXPECT_GE(fraction, last);
      EXPECT_LE(fraction, 1.0);
      last = fraction;
      ++calls;
    }
    [[nodiscard]] bool cancelled() const override { return calls >= stopAfter; }
  };
  Files files = yards();
  std::string rows = "hive,date,seams\n";
  for (int i = 0; i < 2000; ++i) {
    rows += "A," + day("2020-01-01").plusDays(i).iso() + ",4\n";
  }
  files["inspections.csv"] = rows;
  Watch watch;
  EXPECT_TRUE(planImport({}, MemorySource(files), day("2026-04-25"), watch).ok());
  EXPECT_EQ(watch.last, 1.0);
  EXPECT_GT(watch.calls, 10);
  for (int stop = 1; stop < watch.calls; stop += 3) {
    Watch stopping;
    stopping.stopAfter = stop;
    const auto r = planImport({}, MemorySource(files), day("2026-04-25"), stopping);
    EXPECT_TRUE(r.cancelled);
    EXPECT_FALSE(r.ok());
    EXPECT_TRUE(r.changes.empty());
  }
}

TEST(Import, AFaultOfRowsAlreadyThereIsNotBlamedOnTheFiles) {
  // A season that is wrong already: a wash of a hive that is not there.
  apiary::Season season = imported(yards());
  apiary::Wash wash;
  wash.record = base::RecordId("w1");
  wash.hive = HiveId("gone");
  wash.date = day("2026-04-01");
  wash.bees = 300;
  season.apply({{TableId::Washes, "w1", std::nullopt, apiary::toRow(wash)}});
  EXPECT_TRUE(planned(season, {{"inspections.csv", "hive,date\nA,2026-04-10\n"}}).ok());
}

TEST(Import, AFaultThatTheFilesRaiseInTheSeasonIsTold) {
  const auto season = imported(stocked());
  const auto r =
      planned(season, {{"colonies.csv", "record,colony,hive,from_date\na1,B,A,2025-01-01\n"}});
  EXPECT_FALSE(r.ok());
  EXPECT_NE(allFaults(r).find("check.stays_overlap"), std::string::npos) << allFaults(r);
}

TEST(ImportWeather, ReadsAFileOfOneYard) {
  const auto season = imported(yards());
  base::Progress quiet;
  const auto r = planWeatherImport(
      season, "april.csv", "date,tmin_c,tmax_c,rain_mm\n2026-04-10,-1.5,9,0\n2026-04-11,2,12,\n",
      YardId("TR"), quiet);
  ASSERT_TRUE(r.ok()) << allFaults(r);
  apiary::Season next = season;
  next.apply(r.changes);
  ASSERT_EQ(next.table<apiary::WeatherDay>().size(), 2U);
  const auto& first = next.table<apiary::WeatherDay>().begin()->second;
  EXPECT_EQ(first.yard, YardId("TR"));
  EXPECT_EQ(first.kind, apiary::WeatherKind::Observed);
  EXPECT_EQ(first.rainMm, 0);
  EXPECT_EQ(std::next(next.table<apiary::WeatherDay>().begin())->second.rainMm, std::nullopt);
}

TEST(ImportWeather, TellsFaultsInTheFilesOwnName) {
  const auto season = imported(yards());
  base::Progress quiet;
  const auto cold = planWeatherImport(season, "april.csv",
                                      "date,tmin_c,tmax_c\n2026-04-10,-71,9\n2026-04-11,9,2\n",
                                      YardId("TR"), quiet);
  EXPECT_EQ(allFaults(cold),
            "april.csv:2: tmin_c check.range\napril.csv:3: tmin_c "
            "check.min_over_max\n");
  const auto nowhere =
      planWeatherImport(season, "april.csv", "date,tmin_c,tmax_c\n", YardId("ZZ"), quiet);
  EXPECT_EQ(allFaults(nowhere), "april.csv exchange.weather_yard\n");
  const auto yard = planWeatherImport(
      season, "april.csv", "yard,date,tmin_c,tmax_c\nTR,2026-04-10,1,9\n", YardId("TR"), quiet);
  EXPECT_EQ(allFaults(yard), "april.csv:1: yard exchange.unknown_column\n");
}

}  // namespace
}  // namespace outyard::exchange::testing
