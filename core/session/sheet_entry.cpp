// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/sheet_entry.h"

#include <algorithm>

#include "core/session/sheet_entry_parts.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using apiary::SheetLine;
using apiary::SheetRow;
using apiary::Task;
using base::message;

namespace {

constexpr int kDaysAhead = 3;  ///< tasks due so soon are printed too (core/sheet prints the same)

/// The task stood on a sheet of that day: planned for it, its window begun, or due soon.
bool printedOn(const Task& task, Date day) {
  if (task.plannedOn) return *task.plannedOn == day;
  if (task.earliest || task.latest) return !task.earliest || *task.earliest <= day;
  return task.dueOn && *task.dueOn <= day.plusDays(kDaysAhead);
}

bool notOpened(const EntryLine& line) {
  return line.at(EntryColumn::Seams) == ".";
}
bool glanced(const EntryLine& line) {
  return line.at(EntryColumn::Seams) == "=";
}

void append(std::string& text, const std::string& more) {
  if (more.empty()) return;
  if (!text.empty()) text += "; ";
  text += more;
}

/// The box that is looked into from above: the top chamber of the colony.
int topBox(const apiary::Season& season, const EntryLine& line, Date date) {
  const apiary::HiveState state = apiary::hiveOn(season, line.hive, date);
  int top = 1;
  const auto own = line.colony ? state.boxesOf(*line.colony) : state.boxes;
  for (const BoxState& box : own) {
    if (box.role == apiary::BoxRole::Chamber) top = std::max(top, box.position);
  }
  return top;
}

/// Reads the lines of one sheet whose cells are without fault.
class Reader {
 public:
  Reader(const apiary::Season& season, const EntryHead& head, const Wording& word,
         EntryReading& out)
      : m_season(season), m_head(head), m_word(word), m_out(out) {}

  void read(const EntryLine& line) {
    for (const base::TaskId& id : line.ticked) addTask(line, id);
    if (!line.hasBees || notOpened(line) || onlyWords(line)) {
      if (notOpened(line) || !line.at(EntryColumn::NotDone).empty()) ++m_out.report.notOpened;
      addNote(line);
      return;
    }
    const bool seen = std::any_of(line.typed.begin(), line.typed.end(),
                                  [](const std::string& text) { return !text.empty(); });
    if (seen) addLook(line);
  }

 private:
  static bool onlyWords(const EntryLine& line) {
    return std::all_of(kAllEntryColumns.begin(), kAllEntryColumns.end(), [&](EntryColumn column) {
      return column == EntryColumn::NotDone || column == EntryColumn::Note ||
             line.at(column).empty();
    });
  }

  void addNote(const EntryLine& line) {
    Event note;
    note.kind = EventKind::Note;
    note.date = m_head.date;
    note.time = m_head.from;
    note.hive = line.hive;
    if (line.hasBees) note.colony = line.colony;
    note.sheet = m_head.sheet;
    if (!line.at(EntryColumn::NotDone).empty()) {
      note.detail = m_word(message("session.entry.not_done", line.at(EntryColumn::NotDone)));
    }
    append(note.detail, line.at(EntryColumn::Note));
    if (note.detail.empty()) return;
    m_out.notes.push_back(note);
    ++m_out.report.notes;
  }

  void addTask(const EntryLine& line, const base::TaskId& id) {
    const Task* task = m_season.find<Task>(id.str());
    if (!task) return;
    Task done = *task;
    if (!done.colony && line.hasBees) done.colony = line.colony;
    m_out.ticked.push_back(done);
  }

  void addLook(const EntryLine& line) {
    Inspection i;
    i.hive = line.hive;
    i.colony = line.colony;
    i.date = m_head.date;
    i.time = m_head.from;
    i.airC = m_head.airC;
    i.reader = m_head.reader;
    i.sheet = m_head.sheet;
    i.line = line.line;
    InspectionEntry entry;
    addSeams(line, i, entry);
    const std::string& brood = line.at(EntryColumn::Brood);
    if (const auto figure = typedFigure(brood)) {
      i.framesWithBrood = static_cast<int>(figure->value);
      if (figure->atLeast) {
        append(i.notes, m_word(message("session.entry.brood_at_least", *i.framesWithBrood)));
      }
    }
    if (const auto& eggs = line.at(EntryColumn::Eggs); !eggs.empty()) i.eggsSeen = eggs == "y";
    addQueen(line.at(EntryColumn::Queen), i);
    addCells(line.at(EntryColumn::Cells), i);
    if (const auto& stores = line.at(EntryColumn::Stores); !stores.empty()) {
      i.storesLevel = stores == "l"   ? apiary::StoresLevel::Low
                      : stores == "m" ? apiary::StoresLevel::Medium
                                      : apiary::StoresLevel::Heavy;
    }
    if (const auto weight = typedFigure(line.at(EntryColumn::Weight))) {
      i.weightKg = weight->value * m_head.kgPerUnit;
    }
    if (line.at(EntryColumn::Sick) == "y") {
      i.disease = apiary::Disease::Other;
      m_out.report.sick.emplace_back(line.line, line.hive);
    }
    if (const auto& temper = line.at(EntryColumn::Temper); !temper.empty()) {
      i.temper = temper.front() - '0';
    }
    if (const auto& drones = line.at(EntryColumn::Drones); !drones.empty()) {
      i.dronesSeen = drones == "y";
    }
    if (const auto& why = line.at(EntryColumn::NotDone); !why.empty()) {
      append(i.notes, m_word(message("session.entry.not_done", why)));
    }
    append(i.notes, line.at(EntryColumn::Note));
    entry.inspection = std::move(i);
    m_out.inspections.push_back(std::move(entry));
    ++m_out.report.looks;
  }

  void addSeams(const EntryLine& line, Inspection& i, InspectionEntry& entry) {
    const std::string& text = line.at(EntryColumn::Seams);
    if (glanced(line)) {
      // The middle of what the reader had on paper; the forecast itself is never fed back.
      const ExpectedRange range = readExpected(line.expected).seams.value();
      i.seams = (range.low + range.high) / 2.0;
      i.seamsView = apiary::SeamsView::Above;
      i.glance = apiary::Glance::AboutRight;
      ++m_out.report.glances;
      return;
    }
    const auto figure = typedFigure(text);
    if (!figure) return;
    i.seams = figure->value;
    i.seamsView = apiary::SeamsView::Above;
    if (!figure->atLeast) return;
    apiary::SeamCount count;
    count.box = topBox(m_season, line, m_head.date);
    count.fromAbove = figure->value;
    count.atLeast = true;
    entry.seams.push_back(count);
  }

  void addQueen(const std::string& queen, Inspection& i) {
    if (queen.empty()) return;
    i.queenSeen = !isDash(queen);
    if (queen == "m") append(i.notes, m_word(message("session.entry.queen_marked")));
    if (queen == "u") append(i.notes, m_word(message("session.entry.queen_unmarked")));
    if (queen == "v") append(i.notes, m_word(message("session.entry.queen_virgin")));
  }

  static void addCells(const std::string& cells, Inspection& i) {
    if (cells == "0") i.queenCells = 0;
    if (cells == "u") i.cellKind = apiary::CellKind::Cups;
    if (cells == "c") i.cellKind = apiary::CellKind::Charged;
    if (cells == "s") i.cellKind = apiary::CellKind::Sealed;
  }

  const apiary::Season& m_season;
  const EntryHead& m_head;
  const Wording& m_word;
  EntryReading& m_out;
};

/// How a ticked task is written down.
enum class TaskWay {
  Done,    ///< nothing more to say: looked, opened
  Event,   ///< a record of its kind says it all
  Gift,    ///< combs or bees from hive to hive
  Dialog,  ///< set done; what moved must be said in its own dialog
};

TaskWay wayOf(const Task& task) {
  if (task.kind == "open" || task.kind == "look" || !task.hive) return TaskWay::Done;
  const auto kind = apiary::parseCode<EventKind>(task.kind);
  if (!kind) return TaskWay::Done;
  switch (*kind) {
    case EventKind::TreatmentOff:
    case EventKind::Note:
    case EventKind::QueenMarked:
    case EventKind::QueenSeenLaying:
    case EventKind::CellsRemoved:
    case EventKind::PaperOpen:
    case EventKind::Wrapped:
    case EventKind::Unwrapped:
    case EventKind::Robbed:
    case EventKind::Bloom:
    case EventKind::Poisoned:
    case EventKind::QueenCellGiven:
      return TaskWay::Event;
    case EventKind::Fed:
      return task.what && task.amount ? TaskWay::Event : TaskWay::Dialog;
    case EventKind::FramesGiven:
    case EventKind::FramesTaken:
    case EventKind::BeesShaken:
    case EventKind::Harvested:
      return task.amount ? TaskWay::Event : TaskWay::Dialog;
    case EventKind::FramesMoved:
      return task.what && task.amount && task.otherHive ? TaskWay::Gift : TaskWay::Dialog;
    default:
      // Boxes, stands, queens and whole colonies: each has a verb that must know more.
      return TaskWay::Dialog;
  }
}

CommandPtr commandFor(const Task& task, const EntryHead& head) {
  switch (wayOf(task)) {
    case TaskWay::Event: {
      Event e;
      e.kind = apiary::parseCode<EventKind>(task.kind).value();
      e.date = head.date;
      e.time = head.from;
      e.hive = task.hive.value();
      e.colony = task.colony;
      e.otherHive = task.otherHive;
      e.otherColony = task.otherColony;
      e.what = task.what;
      e.amount = task.amount;
      e.unit = task.unit;
      e.task = task.task;
      e.sheet = head.sheet;
      e.detail = task.why;
      return recordEvent(e);
    }
    case TaskWay::Gift: {
      FrameGift gift;
      gift.toHive = task.hive.value();
      gift.fromHive = task.otherHive.value();
      gift.toColony = task.colony;
      gift.fromColony = task.otherColony;
      gift.date = head.date;
      gift.what = task.what.value();
      gift.amount = task.amount.value();
      gift.task = task.task;
      return giveFrames(gift);
    }
    case TaskWay::Done:
    case TaskWay::Dialog:
      break;
  }
  return setTaskState(task.task, apiary::TaskState::Done, head.date);
}

}  // namespace

std::string_view entryColumnCode(EntryColumn column) {
  static constexpr std::array<std::string_view, kEntryColumns> kCodes{
      "seams",  "brood", "eggs",   "queen",  "cells",    "stores",
      "weight", "sick",  "temper", "drones", "not_done", "note"};
  return kCodes[static_cast<std::size_t>(column)];
}

bool EntryLine::blank() const {
  return ticked.empty() &&
         std::all_of(typed.begin(), typed.end(), [](const std::string& t) { return t.empty(); });
}

bool sheetEntered(const apiary::Season& season, const base::SheetId& sheet) {
  for (const auto& [key, row] : season.table<Inspection>()) {
    if (row.sheet == sheet && season.counts(row)) return true;
  }
  for (const auto& [key, row] : season.table<Event>()) {
    if (row.sheet == sheet && season.counts(row)) return true;
  }
  return false;
}

std::optional<EntrySheet> blankEntry(const apiary::Season& season, const base::SheetId& id) {
  const SheetRow* row = season.find<SheetRow>(id.str());
  if (!row) return std::nullopt;
  EntrySheet out;
  out.head.sheet = id;
  out.head.date = row->date;
  out.yard = row->yard;
  std::set<int> entered;
  for (const auto& [key, i] : season.table<Inspection>()) {
    if (i.sheet == id && i.line && season.counts(i)) entered.insert(*i.line);
  }
  std::vector<const SheetLine*> printed;
  for (const auto& [key, line] : season.table<SheetLine>()) {
    if (line.sheet == id) printed.push_back(&line);
  }
  std::sort(printed.begin(), printed.end(),
            [](const SheetLine* a, const SheetLine* b) { return a->line < b->line; });
  std::set<HiveId> firstOfHive;
  for (const SheetLine* p : printed) {
    EntryLine line;
    line.line = p->line;
    line.hive = p->hive;
    line.colony = p->colony;
    line.expected = p->expected;
    const apiary::HiveState state = apiary::hiveOn(season, p->hive, row->date);
    if (!line.colony && state.colonies.size() == 1) line.colony = state.colonies.front().colony;
    // A hive of which nothing is known yet is taken to hold bees, as on import.
    line.hasBees = line.colony.has_value() || season.journal<apiary::ColonyStay>(p->hive).empty();
    line.entered = entered.contains(p->line);
    const bool first = firstOfHive.insert(p->hive).second;
    for (const auto& [key, task] : season.table<Task>()) {
      if (task.state != apiary::TaskState::Planned || task.hive != p->hive) continue;
      if (task.colony && line.colony ? *task.colony != *line.colony : !first) continue;
      if (printedOn(task, row->date)) line.tasks.push_back(task.task);
    }
    out.lines.push_back(std::move(line));
  }
  return out;
}

EntryReading readSheet(const apiary::Season& season, const EntrySheet& sheet, const Wording& word) {
  EntryReading out;
  out.head = sheet.head;
  Reader reader(season, sheet.head, word, out);
  for (const EntryLine& raw : sheet.lines) {
    if (raw.blank()) {
      if (!raw.entered) ++out.report.blank;
      continue;
    }
    const EntryLine line = cleaned(raw);
    const std::size_t before = out.faults.size();
    for (const EntryColumn column : kAllEntryColumns) {
      if (const auto may = checkCell(line, column, sheet.head); !may) {
        out.faults.push_back({line.line, column, may.failure().messages.front()});
      }
    }
    if (out.faults.size() == before) reader.read(line);
  }
  for (const Task& task : out.ticked) {
    ++out.report.tasksDone;
    if (wayOf(task) == TaskWay::Dialog) out.report.needDialog.push_back(task.task);
  }
  return out;
}

CommandPtr enterSheet(const EntryReading& reading) {
  base::Message title = message("session.title.enter_sheet", reading.head.sheet.str());
  std::vector<base::Message> refused;
  for (const CellFault& f : reading.faults) refused.push_back(f.what);
  if (refused.empty() && reading.inspections.empty() && reading.notes.empty() &&
      reading.ticked.empty()) {
    refused.push_back(message("session.entry.nothing_typed", reading.head.sheet.str()));
  }
  if (!refused.empty()) {
    return verb(
        std::move(title), std::nullopt,
        [refused](Checker& c) {
          for (const base::Message& why : refused) c.fault(why);
        },
        [](ChangeBuilder&) {});
  }
  std::vector<HiveStep> steps;
  for (const InspectionEntry& entry : reading.inspections) {
    std::vector<InspectionEntry> one{entry};
    steps.push_back({entry.inspection.hive, recordInspections(std::move(one))});
  }
  for (const Event& note : reading.notes) steps.push_back({note.hive, recordEvent(note)});
  for (const Task& task : reading.ticked) {
    steps.push_back({task.hive.value_or(HiveId{}), commandFor(task, reading.head)});
  }
  return together(std::move(title), std::move(steps));
}

}  // namespace outyard::session
