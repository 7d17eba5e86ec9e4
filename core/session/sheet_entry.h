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
#include "core/session/dead_hives.h"

/// A printed yard sheet on its way back: what was typed for each line, checked cell by cell, and
/// made into records as one undo step.
namespace outyard::session {

/// What stands on a line decides what is printed on it to circle or to write in.
enum class LineKind {
  Colony,
  Dead,   ///< cause, combs, closed
  Empty,  ///< bees in it or not
  Blank   ///< of a hive that was not on the list: its number, and all that a colony has
};

/// The cells of all kinds of lines.
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
  Note,
  Cause,
  Combs,
  Closed,
  BeesIn,
  Hive,
  Origin
};
inline constexpr std::size_t kEntryColumns = 18;
inline constexpr std::array<EntryColumn, kEntryColumns> kAllEntryColumns{
    EntryColumn::Seams,  EntryColumn::Brood,  EntryColumn::Eggs,    EntryColumn::Queen,
    EntryColumn::Cells,  EntryColumn::Stores, EntryColumn::Weight,  EntryColumn::Sick,
    EntryColumn::Temper, EntryColumn::Drones, EntryColumn::NotDone, EntryColumn::Note,
    EntryColumn::Cause,  EntryColumn::Combs,  EntryColumn::Closed,  EntryColumn::BeesIn,
    EntryColumn::Hive,   EntryColumn::Origin};
/// The first of them: what is printed on the line of a colony.
inline constexpr std::size_t kColonyColumns = 12;
/// What is printed on a line of the kind, in the order in which it is typed.
const std::vector<EntryColumn>& columnsOf(LineKind kind);
/// Words as written, not an answer to circle.
bool takesWords(EntryColumn column);
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
  HiveId hive;  ///< blank on a blank line
  std::optional<ColonyId> colony;
  std::string expected;  ///< as printed
  LineKind kind = LineKind::Colony;
  bool entered = false;  ///< its record stands in the season already
  std::array<std::string, kEntryColumns> typed;
  std::vector<base::TaskId> tasks;  ///< planned for this line
  std::set<base::TaskId> ticked;
  /// Printed boosts in which the line takes part: places in EntrySheet::boosts.
  std::vector<std::size_t> offers;

  [[nodiscard]] const std::string& at(EntryColumn column) const {
    return typed[static_cast<std::size_t>(column)];
  }
  std::string& at(EntryColumn column) { return typed[static_cast<std::size_t>(column)]; }
  /// A colony that lay dead: x in place of the seams.
  [[nodiscard]] bool foundDead() const;
  /// What the line asks for: as printed, or what is asked of a dead hive once it was found so.
  [[nodiscard]] LineKind form() const;
  /// Neither typed nor ticked.
  [[nodiscard]] bool blank() const;
  /// The hive's number: printed, or as typed on a blank line.
  [[nodiscard]] std::string name() const;
};

/// A boost that the sheet printed and nobody had accepted.
struct PrintedBoost {
  apiary::PlanRow row;
  bool done = false;  ///< ticked as done the way it was printed
};

struct EntrySheet {
  EntryHead head;
  base::YardId yard;
  std::vector<EntryLine> lines;
  std::vector<PrintedBoost> boosts;
  /// Ticked on the line or for a boost in which it takes part.
  [[nodiscard]] bool untouched(const EntryLine& line) const;
};

/// The blank lines at the end of a sheet.
inline constexpr int kBlankLines = 3;

/// The sheet as it was printed, nothing typed; nullopt when the season has no such sheet. Tasks
/// are those planned for the hives of the sheet up to its day. The blank lines come last and go on
/// counting.
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
/// The same with what the season knows of the number on a blank line: stands elsewhere, lives
/// already, is on the sheet.
base::Result<void> checkCell(const apiary::Season& season, const EntrySheet& sheet,
                             const EntryLine& line, EntryColumn column);
/// What is still to be typed about the hive on a blank line, or wrong with it; ok when its number
/// and origin say who it is.
base::Result<void> checkNewcomer(const apiary::Season& season, const EntrySheet& sheet,
                                 const EntryLine& line);
/// What is typed lies outside what was printed as expected.
bool surprises(const EntryLine& line, EntryColumn column);

using Wording = std::function<std::string(const base::Message&)>;
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
  int boostsDone = 0;  ///< as printed, without having been accepted before
  /// Ticked, but what was moved must still be said in its own dialog.
  std::vector<base::TaskId> needDialog;
  std::vector<HiveId> fedNoAmount;  ///< a printed feed that was ticked
  std::vector<std::pair<int, HiveId>> sick;
  std::vector<HiveId> deaths;     ///< found dead
  std::vector<HiveId> deathSaid;  ///< cause or combs of a hive that was dead before
  std::vector<HiveId> cleared;    ///< combs stored, melted or burnt
  std::vector<HiveId> keepApart;  ///< combs stored of which the cause is not known
  std::vector<HiveId> beesIn;     ///< empty hives with bees in them
  std::vector<HiveId> newHives, movedIn;
};
/// A hive that was not on the list.
struct Newcomer {
  int line = 1;
  HiveId hive;
  std::optional<ColonyId> colony;  ///< that lives there; not given: its first look names it
  bool comes = false;              ///< a colony that is new to the season
  std::optional<apiary::ColonyOrigin> origin;  ///< of that colony
  std::optional<Spot> movedTo;                 ///< carried here from another yard
  std::optional<apiary::Hive> made;            ///< not in the season so far
  std::vector<BoxState> boxes;                 ///< of a hive that is made
};
struct DeadLine {
  HiveId hive;
  std::optional<DeathFound> found;
  std::optional<DeathSaid> said;
  std::optional<CombsCleared> combs;
};
struct TickedTask {
  apiary::Task task;
  /// Of a boost plan, and nothing speaks against recording it as its card tells it.
  bool asPlanned = false;
  bool toSay = false;  ///< what was moved must still be said in its own dialog
};
struct EntryReading {
  std::vector<CellFault> faults;
  std::vector<Newcomer> newcomers;
  std::vector<InspectionEntry> inspections;
  std::vector<apiary::Event> notes;
  std::vector<DeadLine> dead;
  std::vector<TickedTask> ticked;
  std::vector<apiary::PlanRow> boosts;  ///< ticked as done the way they were printed
  std::optional<apiary::Plan> printed;  ///< the plan of those
  std::string printedAt;                ///< UTC
  EntryHead head;
  YardId yard;
  EntryReport report;
  Wording word;
};
/// Checks and reads all lines. `word` words what goes into notes ("queen marked").
EntryReading readSheet(const apiary::Season& season, const EntrySheet& sheet, const Wording& word);
/// All of it as one undo step. A ticked task becomes a record of its kind where that says all that
/// is needed, else it is set done and stands in report.needDialog. Refused while there are faults.
CommandPtr enterSheet(const EntryReading& reading);

}  // namespace outyard::session
