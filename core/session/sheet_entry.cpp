// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/sheet_entry.h"

#include <algorithm>
#include <map>

#include "core/planning/printed_plan.h"
#include "core/session/printed_boosts.h"
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

}  // namespace

const std::vector<EntryColumn>& columnsOf(LineKind kind) {
  static const std::vector<EntryColumn> kColony(kAllEntryColumns.begin(),
                                                kAllEntryColumns.begin() + kColonyColumns);
  static const std::vector<EntryColumn> kDead{EntryColumn::Cause, EntryColumn::Combs,
                                              EntryColumn::Closed, EntryColumn::Note};
  static const std::vector<EntryColumn> kEmpty{EntryColumn::BeesIn, EntryColumn::Note};
  static const std::vector<EntryColumn> kBlank = [] {
    std::vector<EntryColumn> all{EntryColumn::Hive, EntryColumn::Origin};
    all.insert(all.end(), kColony.begin(), kColony.end());
    return all;
  }();
  switch (kind) {
    case LineKind::Dead:
      return kDead;
    case LineKind::Empty:
      return kEmpty;
    case LineKind::Blank:
      return kBlank;
    case LineKind::Colony:
      break;
  }
  return kColony;
}

bool takesWords(EntryColumn column) {
  return column == EntryColumn::NotDone || column == EntryColumn::Note ||
         column == EntryColumn::Hive;
}

std::string_view entryColumnCode(EntryColumn column) {
  static constexpr std::array<std::string_view, kEntryColumns> kCodes{
      "seams",  "brood",    "eggs", "queen", "cells", "stores", "weight",  "sick", "temper",
      "drones", "not_done", "note", "cause", "combs", "closed", "bees_in", "hive", "origin"};
  return kCodes[static_cast<std::size_t>(column)];
}

bool EntryLine::foundDead() const {
  const std::string& seams = at(EntryColumn::Seams);
  return kind == LineKind::Colony && (seams == "x" || seams == "X");
}

LineKind EntryLine::form() const {
  return foundDead() ? LineKind::Dead : kind;
}

bool EntryLine::blank() const {
  return ticked.empty() &&
         std::all_of(typed.begin(), typed.end(), [](const std::string& t) { return t.empty(); });
}

std::string EntryLine::name() const {
  return hive.blank() ? at(EntryColumn::Hive) : hive.str();
}

bool EntrySheet::untouched(const EntryLine& line) const {
  return line.blank() && std::none_of(line.offers.begin(), line.offers.end(),
                                      [&](std::size_t i) { return boosts.at(i).done; });
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

namespace {

/// Makes the lines of one sheet as they were printed.
class Printed {
 public:
  Printed(const apiary::Season& season, const SheetRow& row) : m_season(season), m_row(row) {
    m_out.head.sheet = row.sheet;
    m_out.head.date = row.date;
    m_out.yard = row.yard;
    for (const auto& [key, i] : season.table<Inspection>()) {
      if (i.sheet == row.sheet && i.line && season.counts(i)) m_looks[*i.line] = &i;
    }
    for (const auto& [key, e] : season.table<Event>()) {
      if (e.sheet != row.sheet || !season.counts(e)) continue;
      m_said.insert(e.hive);
      if (e.kind == EventKind::Died) m_died.insert({e.hive, e.colony});
    }
  }

  EntrySheet make() {
    std::vector<const SheetLine*> printed;
    for (const auto& [key, line] : m_season.table<SheetLine>()) {
      if (line.sheet == m_row.sheet) printed.push_back(&line);
    }
    std::sort(printed.begin(), printed.end(),
              [](const SheetLine* a, const SheetLine* b) { return a->line < b->line; });
    for (const SheetLine* p : printed) m_out.lines.push_back(lineOf(*p));
    addBoosts();
    if (!printed.empty()) addBlank(printed.back()->line);
    return std::move(m_out);
  }

 private:
  EntryLine lineOf(const SheetLine& p) {
    EntryLine line;
    line.line = p.line;
    line.hive = p.hive;
    line.colony = p.colony;
    line.expected = p.expected;
    const apiary::HiveState state = apiary::hiveOn(m_season, p.hive, m_row.date);
    if (!line.colony && state.colonies.size() == 1) line.colony = state.colonies.front().colony;
    if (!line.colony && state.colonies.empty()) {
      line.kind = state.status == apiary::HiveStatus::Dead ? LineKind::Dead : LineKind::Empty;
    }
    line.entered = m_looks.contains(p.line) ||
                   (line.kind == LineKind::Colony ? m_died.contains({p.hive, line.colony})
                                                  : m_said.contains(p.hive));
    const bool first = m_seen.insert(p.hive).second;
    for (const auto& [key, task] : m_season.table<Task>()) {
      if (task.state != apiary::TaskState::Planned || task.hive != p.hive) continue;
      if (task.colony && line.colony ? *task.colony != *line.colony : !first) continue;
      if (printedOn(task, m_row.date)) line.tasks.push_back(task.task);
    }
    return line;
  }

  EntryLine* lineFor(const HiveId& hive, const std::optional<ColonyId>& colony) {
    EntryLine* found = nullptr;
    for (EntryLine& line : m_out.lines) {
      if (line.hive != hive) continue;
      if (line.colony == colony) return &line;
      if (!found) found = &line;
    }
    return found;
  }

  /// A row that was accepted meanwhile is ticked by its task; one that was done is not asked for.
  void addBoosts() {
    for (const apiary::PlanRow& row : planning::printedRows(m_season, m_row.sheet)) {
      EntryLine* own = lineFor(row.hive, row.colony);
      if (!own || planning::isDone(m_season, row, m_row.date)) continue;
      const Task* task = nullptr;
      bool closed = false;
      for (const auto& [key, t] : m_season.table<Task>()) {
        if (!planning::isWorkOf(t, row)) continue;
        if (t.state == apiary::TaskState::Planned) task = &t;
        closed = closed || (t.doneOn && *t.doneOn >= m_row.date);
      }
      if (task) {
        const bool there =
            std::any_of(m_out.lines.begin(), m_out.lines.end(), [&](const EntryLine& line) {
              return std::find(line.tasks.begin(), line.tasks.end(), task->task) !=
                     line.tasks.end();
            });
        if (!there) own->tasks.push_back(task->task);
        continue;
      }
      if (closed) continue;
      const std::size_t at = m_out.boosts.size();
      m_out.boosts.push_back({row, false});
      own->offers.push_back(at);
      EntryLine* donor = row.donorHive ? lineFor(*row.donorHive, row.donorColony) : nullptr;
      if (donor && donor != own) donor->offers.push_back(at);
    }
  }

  void addBlank(int last) {
    for (int i = 1; i <= kBlankLines; ++i) {
      EntryLine line;
      line.line = last + i;
      line.kind = LineKind::Blank;
      if (const auto look = m_looks.find(line.line); look != m_looks.end()) {
        line.hive = look->second->hive;
        line.colony = look->second->colony;
        line.entered = true;
      }
      m_out.lines.push_back(std::move(line));
    }
  }

  const apiary::Season& m_season;
  const SheetRow& m_row;
  EntrySheet m_out;
  std::map<int, const Inspection*> m_looks;
  std::set<HiveId> m_said, m_seen;
  std::set<std::pair<HiveId, std::optional<ColonyId>>> m_died;
};

}  // namespace

std::optional<EntrySheet> blankEntry(const apiary::Season& season, const base::SheetId& id) {
  const SheetRow* row = season.find<SheetRow>(id.str());
  if (!row) return std::nullopt;
  return Printed(season, *row).make();
}

EntryReading readSheet(const apiary::Season& season, const EntrySheet& sheet, const Wording& word) {
  EntryReading out;
  out.head = sheet.head;
  out.yard = sheet.yard;
  out.word = word;
  for (const EntryLine& raw : sheet.lines) {
    if (sheet.untouched(raw)) {
      if (!raw.entered && raw.kind != LineKind::Blank) ++out.report.blank;
      continue;
    }
    EntryLine line = cleaned(raw);
    const std::size_t before = out.faults.size();
    for (const EntryColumn column : kAllEntryColumns) {
      if (const auto may = checkCell(line, column, sheet.head); !may) {
        out.faults.push_back({line.line, column, may.failure().messages.front()});
      }
    }
    if (out.faults.size() != before) continue;
    if (line.kind == LineKind::Blank && !line.blank() && !line.entered) {
      NewcomerRead read = readNewcomer(season, sheet, line);
      if (read.fault) {
        out.faults.push_back(*read.fault);
        continue;
      }
      line.hive = read.who->hive;
      line.colony = read.who->colony;
      out.newcomers.push_back(std::move(*read.who));
    }
    for (const base::TaskId& id : line.ticked) {
      const Task* task = season.find<Task>(id.str());
      if (!task) continue;
      TickedTask ticked{*task};
      if (!ticked.task.colony && line.kind == LineKind::Colony) ticked.task.colony = line.colony;
      const TaskWay way = wayOf(season, ticked.task, sheet.head.date);
      ticked.asPlanned = way == TaskWay::Boost;
      ticked.toSay = way == TaskWay::Dialog;
      out.ticked.push_back(std::move(ticked));
    }
    if (!line.entered) readLine(season, sheet.head, line, word, out);
  }
  placeNewcomers(season, sheet, out);
  for (const TickedTask& ticked : out.ticked) {
    ++out.report.tasksDone;
    if (ticked.toSay) out.report.needDialog.push_back(ticked.task.task);
  }
  for (const PrintedBoost& boost : sheet.boosts) {
    if (!boost.done) continue;
    out.boosts.push_back(boost.row);
    ++out.report.boostsDone;
    if (boost.row.method == apiary::Method::Feed) out.report.fedNoAmount.push_back(boost.row.hive);
  }
  if (!out.boosts.empty()) {
    if (const auto* plan = season.find<apiary::Plan>(sheet.head.sheet.str())) out.printed = *plan;
    if (const auto* row = season.find<SheetRow>(sheet.head.sheet.str()))
      out.printedAt = row->madeAt;
  }
  return out;
}

namespace {

void addNewcomer(const Newcomer& who, const EntryReading& reading, std::vector<HiveStep>& steps) {
  const Date day = reading.head.date;
  if (who.made) steps.push_back({who.hive, addHive(*who.made, day, who.boxes)});
  if (who.movedTo) steps.push_back({who.hive, moveHives({*who.movedTo}, reading.yard, day)});
  if (!who.comes) return;
  if (who.origin == apiary::ColonyOrigin::Bought) {
    Purchase bought;
    bought.hive = who.hive;
    bought.colony = who.colony.value();
    bought.date = day;
    steps.push_back({who.hive, recordPurchase(std::move(bought))});
  } else {
    steps.push_back({who.hive, installColony(who.hive, who.colony.value(), day, who.origin.value(),
                                             std::nullopt)});
  }
}

void addDead(const DeadLine& dead, std::vector<HiveStep>& steps) {
  if (dead.found) steps.push_back({dead.hive, findDead(*dead.found)});
  if (dead.said) steps.push_back({dead.hive, correctDeath(*dead.said)});
  if (dead.combs) steps.push_back({dead.hive, clearCombs(*dead.combs)});
}

bool emptyReading(const EntryReading& r) {
  return r.newcomers.empty() && r.inspections.empty() && r.notes.empty() && r.dead.empty() &&
         r.ticked.empty() && r.boosts.empty();
}

/// Whole colonies go last: what was seen and done in place was seen and done before.
}  // namespace

CommandPtr enterSheet(const EntryReading& reading) {
  base::Message title = message("session.title.enter_sheet", reading.head.sheet.str());
  std::vector<base::Message> refused;
  for (const CellFault& f : reading.faults) refused.push_back(f.what);
  if (refused.empty() && emptyReading(reading)) {
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
  // A hive that was dead before is cleared before a swarm is put into it.
  for (const DeadLine& dead : reading.dead) {
    if (!dead.found) addDead(dead, steps);
  }
  for (const Newcomer& who : reading.newcomers) addNewcomer(who, reading, steps);
  for (const InspectionEntry& entry : reading.inspections) {
    std::vector<InspectionEntry> one{entry};
    steps.push_back({entry.inspection.hive, recordInspections(std::move(one))});
  }
  for (const Event& note : reading.notes) steps.push_back({note.hive, recordEvent(note)});
  // Whole colonies go last: what was seen and done in place was seen and done before.
  for (const bool moves : {false, true}) {
    for (const TickedTask& ticked : reading.ticked) {
      if (ticked.asPlanned != moves) continue;
      steps.push_back({ticked.task.hive.value_or(HiveId{}), tickedTask(ticked, reading.head)});
    }
  }
  if (reading.printed && !reading.boosts.empty()) {
    steps.push_back({reading.boosts.front().hive,
                     doneAsPrinted({*reading.printed, reading.boosts, reading.head.date,
                                    reading.printedAt, reading.word})});
  }
  for (const DeadLine& dead : reading.dead) {
    if (dead.found) addDead(dead, steps);
  }
  return together(std::move(title), std::move(steps));
}

}  // namespace outyard::session
