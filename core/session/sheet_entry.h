// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/session/commands.h"

/// A printed yard sheet on its way back: what was typed for each line, checked cell by cell, and
/// made into records as one undo step.
namespace outyard::session {

/// What is printed on a line to circle or to write in.
enum class EntryColumn {
  Seams,
  Brood,
  Eggs,
  Queen,
  Cells,
  Stores,
  Weight,
  Sick,
  Temper,
  Drones,
  NotDone,
  Note
};
inline constexpr std::size_t kEntryColumns = 12;
inline constexpr std::array<EntryColumn, kEntryColumns> kAllEntryColumns{
    EntryColumn::Seams,  EntryColumn::Brood,  EntryColumn::Eggs,    EntryColumn::Queen,
    EntryColumn::Cells,  EntryColumn::Stores, EntryColumn::Weight,  EntryColumn::Sick,
    EntryColumn::Temper, EntryColumn::Drones, EntryColumn::NotDone, EntryColumn::Note};
/// Never translated: names the column in drafts.
std::string_view entryColumnCode(EntryColumn column);

/// What applies to every line of the sheet.
struct EntryHead {
  base::SheetId sheet;
  Date date;
  std::string reader;
  std::optional<base::TimeOfDay> from;
  std::optional<double> airC;
  /// The unit in which weights are typed: 1 for kilograms.
  double kgPerUnit = 1;
};

struct EntryLine {
  int line = 1;
  HiveId hive;
  std::optional<ColonyId> colony;
  std::string expected;  ///< as printed
  bool hasBees = true;   ///< false: dead or empty, takes a note and ticks only
  bool entered = false;  ///< its record stands in the season already
  std::array<std::string, kEntryColumns> typed;
  std::vector<base::TaskId> tasks;  ///< planned for this line
  std::set<base::TaskId> ticked;

  [[nodiscard]] const std::string& at(EntryColumn column) const {
    return typed[static_cast<std::size_t>(column)];
  }
  std::string& at(EntryColumn column) { return typed[static_cast<std::size_t>(column)]; }
  /// Neither typed nor ticked.
  [[nodiscard]] bool blank() const;
};

struct EntrySheet {
  EntryHead head;
  base::YardId yard;
  std::vector<EntryLine> lines;
};

/// The sheet as it was printed, nothing typed; nullopt when the season has no such sheet. Tasks
/// are those planned for the hives of the sheet up to its day.
std::optional<EntrySheet> blankEntry(const apiary::Season& season, const base::SheetId& sheet);
/// True when records that count name the sheet.
bool sheetEntered(const apiary::Season& season, const base::SheetId& sheet);

struct ExpectedRange {
  int low = 0, high = 0;
  bool operator==(const ExpectedRange&) const = default;
};
struct PrintedExpectation {
  std::optional<ExpectedRange> seams, combs;
};
/// Reads what was printed ("Expected: 4–8 seams, brood on 2–3 combs"): the first figures are seams,
/// the second combs; what stands before a colon does not count.
PrintedExpectation readExpected(std::string_view printed);

/// "9:30", "09.30", "930" or "9"; nullopt for anything else.
std::optional<base::TimeOfDay> readTime(std::string_view text);

/// Why the text of one cell cannot be taken: names line and hive, the column and the cure.
base::Result<void> checkCell(const EntryLine& line, EntryColumn column, const EntryHead& head);
/// What is typed lies outside what was printed as expected.
bool surprises(const EntryLine& line, EntryColumn column);

struct CellFault {
  int line = 1;
  EntryColumn column = EntryColumn::Seams;
  base::Message what;
};
/// What an entry leads to, counted for the report.
struct EntryReport {
  int looks = 0;      ///< inspections, glances among them
  int glances = 0;    ///< lid lifted, looked about right
  int notOpened = 0;  ///< lines with a point
  int notes = 0;      ///< note records
  int blank = 0;      ///< lines left empty
  int tasksDone = 0;
  /// Ticked, but what was moved must still be said in its own dialog.
  std::vector<base::TaskId> needDialog;
  std::vector<std::pair<int, HiveId>> sick;
};
struct EntryReading {
  std::vector<CellFault> faults;
  std::vector<InspectionEntry> inspections;
  std::vector<apiary::Event> notes;
  std::vector<apiary::Task> ticked;
  EntryHead head;
  EntryReport report;
};
using Wording = std::function<std::string(const base::Message&)>;
/// Checks and reads all lines. `word` words what goes into notes ("queen marked").
EntryReading readSheet(const apiary::Season& season, const EntrySheet& sheet, const Wording& word);
/// All of it as one undo step. A ticked task becomes a record of its kind where that says all that
/// is needed, else it is set done and stands in report.needDialog. Refused while there are faults.
CommandPtr enterSheet(const EntryReading& reading);

}  // namespace outyard::session
