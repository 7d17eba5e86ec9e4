// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

struct Broken {
  const char* folder;  ///< its files are laid over those of base
  const char* place;
  const char* key;
  std::size_t count = 1;  ///< faults in all; the named one is among them
};

const std::vector<Broken>& brokenCases() {
  static const std::vector<Broken> cases{
      {"quote_inside_field", "inspections.csv:2: notes", "exchange.stray_quote"},
      {"quote_never_closed", "inspections.csv:3: notes", "exchange.unclosed_quote"},
      {"quote_then_text", "inspections.csv:2: notes", "exchange.text_after_quote"},
      {"latin_1", "inspections.csv:2: notes", "exchange.not_utf8"},
      {"latin_1_in_key", "hives.csv:2: hive", "exchange.not_utf8"},
      {"utf_16", "washes.csv:1: 1", "exchange.utf16"},
      {"nul_byte", "inspections.csv:3: notes", "exchange.nul_byte"},
      {"truncated_utf_8", "inspections.csv:2: notes", "exchange.not_utf8"},
      {"empty_file", "washes.csv:1", "exchange.empty_file"},
      {"only_a_byte_order_mark", "washes.csv:1", "exchange.empty_file"},
      {"column_unknown", "inspections.csv:1: seems", "exchange.unknown_column"},
      {"column_twice", "inspections.csv:1: seams", "exchange.column_twice"},
      {"column_required_missing", "inspections.csv:1: date", "exchange.column_missing"},
      {"column_without_name", "inspections.csv:1: 4", "exchange.unknown_column"},
      {"header_missing", "inspections.csv:1", "exchange.no_header"},
      {"header_upper_case", "inspections.csv:1", "exchange.no_header"},
      {"semicolons", "inspections.csv:1", "exchange.semicolons"},
      {"line_short", "inspections.csv:2: sealed_brood_frames", "exchange.line_short"},
      {"line_long_by_decimal_comma", "inspections.csv:2: 7", "exchange.line_long"},
      {"line_blank", "inspections.csv:2", "exchange.blank_line"},
      {"carriage_return_alone", "inspections.csv:2: notes", "exchange.stray_return"},
      {"decimal_comma", "inspections.csv:2: seams", "check.not_number"},
      {"number_in_words", "inspections.csv:2: seams", "check.not_number"},
      {"number_infinite", "inspections.csv:2: seams", "check.not_number"},
      {"number_not_one", "inspections.csv:2: seams", "check.not_number"},
      {"number_too_great", "inspections.csv:2: seams", "check.not_number"},
      {"number_with_unit", "inspections.csv:2: seams", "check.not_number"},
      {"frames_negative", "inspections.csv:2: sealed_brood_frames", "check.range"},
      {"seams_41", "inspections.csv:2: seams", "check.range"},
      {"temper_6", "inspections.csv:2: temper", "check.range"},
      {"cells_not_whole", "inspections.csv:2: queen_cells", "check.not_whole"},
      {"flag_yes", "inspections.csv:2: eggs_seen", "check.not_flag"},
      {"time_25_00", "inspections.csv:2: time", "check.not_time"},
      {"date_30_february", "inspections.csv:2: date", "check.not_date"},
      {"date_with_points", "inspections.csv:2: date", "check.not_date"},
      {"date_left_empty", "inspections.csv:2: date", "check.required"},
      {"hive_unknown", "inspections.csv:3: hive", "check.unknown_hive"},
      {"yard_unknown", "hives.csv:4: yard", "check.unknown_yard"},
      {"yard_unknown_in_event", "events.csv:2: other_yard", "check.unknown_yard", 2},
      {"queen_unknown", "colonies.csv:2: queen", "check.unknown_queen"},
      {"sheet_unknown", "inspections.csv:2: sheet", "check.unknown_reference"},
      {"frame_type_unknown", "boxes.csv:4: frame_type", "check.unknown_frame_type"},
      {"code_unknown", "events.csv:2: kind", "check.not_code"},
      {"code_upper_case", "events.csv:2: kind", "check.not_code"},
      {"percent_140", "frames.csv:2: bees_pct", "check.range"},
      {"side_sums_to_90", "frames.csv:2", "check.comb_sum"},
      {"side_over_101", "frames.csv:2", "check.comb_over"},
      {"side_c", "frames.csv:2: side", "check.not_code"},
      {"side_twice", "frames.csv:3: inspection", "exchange.key_twice"},
      {"side_of_another_day", "frames.csv:2: inspection", "check.side_of_other_inspection"},
      {"side_of_two_inspections", "frames.csv:2: inspection", "exchange.which_inspection"},
      {"inspection_unknown", "frames.csv:2: inspection", "check.unknown_reference"},
      {"supersedes_in_a_circle", "events.csv:2: supersedes", "check.supersede_circle", 2},
      {"supersedes_itself", "events.csv:2: supersedes", "check.supersede_circle"},
      {"supersedes_unknown", "events.csv:2: supersedes", "check.unknown_reference"},
      {"supersedes_another_table", "events.csv:2: supersedes", "check.unknown_reference"},
      {"superseded_twice", "events.csv:4: supersedes", "check.superseded_twice"},
      {"record_twice", "inspections.csv:3: record", "exchange.key_twice"},
      {"record_in_two_tables", "washes.csv:2: record", "exchange.record_in_two_tables"},
      {"yard_twice", "yards.csv:4: yard", "exchange.key_twice"},
      {"table_name_wrong", "inspection.csv", "exchange.unknown_table"},
      {"table_name_upper_case", "Washes.CSV", "exchange.unknown_table"},
      {"weather_min_over_max", "weather.csv:2: tmin_c", "check.min_over_max"},
      {"mites_over_bees", "washes.csv:2: mites", "check.mites_over_bees"},
      {"stay_ends_before_it_begins", "colonies.csv:2: to_date", "check.to_before_from"},
      {"task_latest_first", "tasks.csv:2: latest", "check.latest_before_earliest"},
      {"colony_in_two_hives", "colonies.csv:4: from_date", "check.stays_overlap"},
      {"two_colonies_in_one_place", "colonies.csv:4: place", "check.place_taken", 2},
      {"colony_not_in_the_hive", "inspections.csv:2: colony", "check.colony_not_there"},
      {"colony_to_be_named", "inspections.csv:2: colony", "check.colony_must_be_named"},
      {"box_position_gap", "boxes.csv:2: position", "check.position_gap"},
      {"box_position_twice", "boxes.csv:3: position", "check.position_twice"},
      {"status_wrong", "hives.csv:3: status", "exchange.status_disagrees"},
      {"place_wrong", "hives.csv:2: x_m", "exchange.place_disagrees"},
      {"died_elsewhere", "events.csv:2: colony", "check.colony_not_there"},
      {"died_too_early", "events.csv:2: date", "exchange.event_stay_goes_on"},
      {"unstacked_without_an_upper_colony", "events.csv:2: other_hive", "exchange.event_no_colony"},
      {"united_with_a_colony_elsewhere", "events.csv:2: other_colony",
       "exchange.event_colony_not_there"},
      {"stacked_over_nothing", "events.csv:2: other_hive", "exchange.event_needs_other_hive"},
      {"stacked_elsewhere", "events.csv:2: hive", "exchange.event_arrived_elsewhere"},
      {"split_into_a_full_hive", "events.csv:2: hive", "exchange.event_hive_taken"},
      {"moved_to_another_yard_than_its_place", "events.csv:2: other_yard",
       "exchange.moved_elsewhere"},
      {"places_changed_with_nobody", "events.csv:2: other_hive", "exchange.event_needs_other_hive"},
      {"working_date_no_date", "settings.csv:2: value", "check.not_date"},
      {"setting_without_value", "settings.csv:2: value", "check.required"},
      {"longitude_190", "yards.csv:2: longitude", "check.range"},
      {"flow_day_367", "flows.csv:2: from_day", "check.range"},
      {"gear_below_nothing", "gear.csv:2: count", "check.range"},
      {"notes_too_long", "inspections.csv:2: notes", "check.too_long"},
      {"fault_behind_a_text_of_two_lines", "inspections.csv:4: seams", "check.not_number"},
  };
  return cases;
}

TEST(BrokenTables, BaseIsSound) {
  const auto season = imported(folder(brokenTables() / "base"));
  EXPECT_EQ(season.table<apiary::Inspection>().size(), 2U);
}

class BrokenTables : public ::testing::TestWithParam<Broken> {};

TEST_P(BrokenTables, IsToldWithItsPlaceAndNothingIsImported) {
  const Broken& c = GetParam();
  Files files = folder(brokenTables() / "base");
  const Files over = folder(brokenTables() / c.folder);
  ASSERT_FALSE(over.empty());
  for (const auto& [name, text] : over) files[name] = text;
  const ImportResult r = planned({}, files);
  const std::string expected = std::string(c.place) + " " + c.key;
  bool found = false;
  for (const auto& f : r.faults) found = found || shown(f) == expected;
  EXPECT_TRUE(found) << "expected " << expected << "\nbut\n" << allFaults(r);
  EXPECT_EQ(r.faultCount, c.count) << allFaults(r);
  EXPECT_FALSE(r.ok());
  EXPECT_TRUE(r.changes.empty());
  EXPECT_TRUE(r.report.empty());
}

INSTANTIATE_TEST_SUITE_P(Corpus, BrokenTables, ::testing::ValuesIn(brokenCases()),
                         [](const auto& c) { return std::string(c.param.folder); });

TEST(BrokenTables, EveryFolderOfTheCorpusIsExpected) {
  std::set<std::string> known{"base"};
  for (const auto& c : brokenCases()) EXPECT_TRUE(known.insert(c.folder).second) << c.folder;
  for (const auto& entry : std::filesystem::directory_iterator(brokenTables())) {
    EXPECT_TRUE(known.contains(entry.path().filename().string())) << entry.path();
  }
  EXPECT_GE(known.size(), 51U);
}

TEST(BrokenTables, FieldsBeyondSixtyFourKibibytes) {
  for (const std::size_t size : {65'537UL, 5'000'000UL}) {
    Files files = folder(brokenTables() / "base");
    files["inspections.csv"] += "i3,TR-01,2026-04-11,6,1.5,\"" + std::string(size, 'x') + "\"\n";
    const ImportResult r = planned({}, files);
    ASSERT_EQ(r.faultCount, 1U);
    EXPECT_EQ(shown(r.faults[0]), "inspections.csv:4: notes exchange.field_too_long");
  }
  Files files = folder(brokenTables() / "base");
  files["inspections.csv"] += "i3,TR-01,2026-04-11,6,1.5,\"" + std::string(5'000'000, '\n');
  const ImportResult r = planned({}, files);
  ASSERT_EQ(r.faultCount, 1U);
  EXPECT_EQ(shown(r.faults[0]), "inspections.csv:4: notes exchange.unclosed_quote");
}

TEST(BrokenTables, AHundredFaultsThenACount) {
  Files files = folder(brokenTables() / "base");
  for (int i = 0; i < 150; ++i) files["inspections.csv"] += "x,TR-01,2026-04-11,many,1.5,\n";
  const ImportResult r = planned({}, files);
  EXPECT_EQ(r.faults.size(), 100U);
  EXPECT_EQ(r.faultCount, 150U);
  ASSERT_TRUE(r.moreFaults().has_value());
  EXPECT_EQ(r.moreFaults()->args[0], base::Message::Arg(std::int64_t{50}));
  EXPECT_EQ(placeText(r.faults[99]), "inspections.csv:103: seams");
}

TEST(BrokenTables, AllFilesAreToldAtOnceAndOneFaultRaisesNoOthers) {
  Files files = folder(brokenTables() / "base");
  files["hives.csv"] = "hive,yard,x_m\nTR-01,TR,far\nTR-02,TR,\nKM-01,KM,\n";
  files["washes.csv"] = "hive,date,bees,mites\nTR-01,2026-04-10,300,many\n";
  files["events.csv"] = "date,kind,hive\n2026-04-11,note,ZZ-09\n2026-04-11,note,TR-01\n";
  const ImportResult r = planned({}, files);
  EXPECT_EQ(allFaults(r),
            "events.csv:2: hive check.unknown_hive\nhives.csv:2: x_m check.not_number\n"
            "washes.csv:2: mites check.not_whole\n");
}

TEST(BrokenTables, AMissingFolderAndAFolderWithoutTables) {
  base::Progress quiet;
  const auto gone =
      planImport({}, FolderSource(brokenTables() / "no_such_folder"), day("2026-04-25"), quiet);
  ASSERT_EQ(gone.faultCount, 1U);
  EXPECT_EQ(gone.faults[0].what.key, "exchange.cannot_read");
  const auto none = planned({}, {{"readme.txt", "no table"}});
  ASSERT_EQ(none.faultCount, 1U);
  EXPECT_EQ(none.faults[0].what.key, "exchange.no_tables");
}

}  // namespace
}  // namespace outyard::exchange::testing
