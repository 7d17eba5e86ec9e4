// SPDX-License-Identifier: GPL-3.0-or-later
// What is done from the place.
#include <QAction>
#include <QLabel>
#include <QSaveFile>
#include <QTreeWidget>
#include <algorithm>

#include "core/exchange/calendar.h"
#include "core/session/commands.h"
#include "ui/adapt/words.h"
#include "ui/rounds/rounds_place.h"
#include "ui/rounds/rounds_words.h"
#include "ui/rounds/visit_dialog.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/task_actions.h"

namespace outyard::rounds {

void RoundsPlace::refreshActions() {
  const bool open = m_hub.isOpen() && m_from && !m_board.days.empty();
  const BoardDay* on = open ? day() : nullptr;
  const BoardStop* at = open ? stop() : nullptr;
  const bool proposal = m_proposal && !m_proposal->plan.days.empty();
  bool in = false, out = false, done = false, hive = false;
  for (const auto& row : open ? chosen() : std::vector<WorkRow>{}) {
    in = in || row.part == Part::In;
    out = out || row.part == Part::Also || row.part == Part::Other;
    done = done || row.part == Part::Done;
    hive = hive || (row.part != Part::Done && m_board.due.tasks[row.due].hive);
  }
  const bool ahead = open && m_from->plusDays(kDays - 1) >= m_hub.workingDate();
  m_propose->setEnabled(ahead && !m_runner.proposing());
  m_accept->setEnabled(proposal);
  m_discard->setEnabled(proposal);
  m_acceptDay->setEnabled(proposal && on && on->proposed());
  m_new->setEnabled(open);
  m_edit->setEnabled(at && at->visit);
  m_remove->setEnabled(at && at->visit);
  for (auto* action : {m_move, m_moveEarlier, m_moveLater}) action->setEnabled(at != nullptr);
  m_putIn->setEnabled(at && at->visit && out);
  m_takeOut->setEnabled(in);
  m_tasks->refresh();
  m_notDone->setEnabled(done);
  m_open->setEnabled(hive);
  m_sheets->setEnabled(on && !on->stops.empty());
  m_enter->setEnabled(open);
  m_calendar->setEnabled(on && std::any_of(on->stops.begin(), on->stops.end(),
                                           [](const auto& s) { return s.visit.has_value(); }));
  for (auto* action : {m_earlier, m_later, m_toToday}) action->setEnabled(open);
}

std::vector<RoundsPlace::WorkRow> RoundsPlace::chosen() const {
  std::vector<WorkRow> out;
  for (const auto* item : m_work->selectedItems()) {
    const QVariant row = item->data(0, Qt::UserRole);
    if (row.isValid()) out.push_back(m_workRows[static_cast<std::size_t>(row.toInt())]);
  }
  return out;
}

// --- proposals ----------------------------------------------------------------------------------

void RoundsPlace::propose() {
  m_proposal.reset();
  m_said.clear();
  rebuild();
  m_runner.propose();
  showState();
}

void RoundsPlace::accept(std::optional<base::Date> only) {
  if (!m_proposal) return;
  auto visits = session::roundVisits(m_hub.season(), m_proposal->plan, *m_proposal->due,
                                     adapt::wordsUtf8, only);
  m_accepting = true;
  const bool done = m_hub.execute(session::acceptRounds(std::move(visits)), this);
  m_accepting = false;
  if (!done) return;
  std::erase_if(m_proposal->plan.days, [&](const auto& d) { return !only || d.date == *only; });
  m_said =
      QStringList{only ? tr("The round of %1 is planned; Undo takes it back.").arg(weekDay(*only))
                       : tr("The rounds are planned; Undo takes them back.")};
  if (m_proposal->plan.days.empty()) m_proposal.reset();
  rebuild();
  showState();
}

void RoundsPlace::discard() {
  m_proposal.reset();
  m_said.clear();
  rebuild();
  showState();
}

// --- visits -------------------------------------------------------------------------------------

void RoundsPlace::newVisit() {
  if (!m_from) return;
  const auto on = m_dayBoard->day().value_or(*m_from);
  VisitDialog dialog(m_hub, on, m_hub.selection().yard, this);
  if (!m_hub.dialogs().run(dialog)) return;
  const auto visit = dialog.visit();
  m_said.clear();
  if (!m_hub.execute(dialog.command(), this)) return;
  m_dayBoard->choose(visit.date, visit.yard);
  if (const auto* made = m_board.stop(visit.date, visit.yard)) {
    const QString why = against(*made, visit.date);
    if (!why.isEmpty()) m_said = QStringList{why};
  }
  showState();
}

void RoundsPlace::editVisit() {
  const auto* at = stop();
  const auto* visit =
      at && at->visit ? m_hub.season().find<apiary::Visit>(at->visit->str()) : nullptr;
  if (!visit) return;
  VisitDialog dialog(m_hub, *visit, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void RoundsPlace::removeVisit() {
  const auto* at = stop();
  if (!at || !at->visit) return;
  const QString name = yardName(m_hub.season(), at->yard);
  if (!m_hub.execute(session::removeVisits({*at->visit}), this)) return;
  m_said = QStringList{tr("The visit to %1 is removed; its work stays planned.").arg(name)};
  showState();
}

QString RoundsPlace::dateInWords(const BoardStop& at, base::Date to) const {
  QStringList out{warmthSentence(to, dayOf(m_board.due, at.yard, to), units()) + u'.'};
  const QString why = against(at, to);
  if (!why.isEmpty()) out << why;
  return out.join(u'\n');
}

QString RoundsPlace::against(const BoardStop& at, base::Date to) const {
  QStringList out;
  const auto* weather = dayOf(m_board.due, at.yard, to);
  if (warmthOf(weather) == Warmth::Shut) {
    out << tr("Caution, %1, %2.")
               .arg(yardName(m_hub.season(), at.yard), warmthSentence(to, weather, units()));
  }
  std::size_t late = 0, early = 0, combs = 0;
  constexpr double kCombMinutes = 10;  // as the proposal has it: less is a look under the lid
  for (const std::size_t i : at.stop.tasks) {
    const auto& task = m_board.due.tasks[i];
    if (to > task.latest && !task.overdue(m_hub.workingDate())) ++late;
    if (to < task.earliest) ++early;
    if (task.minutes >= kCombMinutes) ++combs;
  }
  if (warmthOf(weather) == Warmth::Lid && combs > 0) {
    out << tr("Caution, %1, %2; work that takes combs out: %3.")
               .arg(yardName(m_hub.season(), at.yard), warmthSentence(to, weather, units()))
               .arg(combs);
  }
  if (late > 0) out << tr("Work that should be done before: %1.").arg(late);
  if (early > 0) out << tr("Work that is not due yet: %1.").arg(early);
  const auto* on = m_board.at(to);
  if (on && on->day.hours > m_board.figures.dayHours) {
    out << tr("The day takes %1, more than the %2 of a day.")
               .arg(hoursText(on->day.hours), hoursText(m_board.figures.dayHours));
  }
  return out.join(u' ');
}

void RoundsPlace::move(const StopKey& key, base::Date to) {
  const auto* at = m_board.stop(key.date, key.yard);
  if (!at || key.date == to) return;
  const QString name = yardName(m_hub.season(), key.yard);
  m_said.clear();
  if (at->visit) {
    if (!m_hub.execute(session::moveVisit(*at->visit, to), this)) return;
  } else if (m_proposal) {
    moveProposed(*m_proposal, m_hub.season(), m_board.figures, key.yard, key.date, to);
    rebuild();
  }
  if (m_from && (to < *m_from || to > m_from->plusDays(kDays - 1))) {
    setFirstDay(to < *m_from ? to : to.plusDays(1 - kDays));
  }
  m_dayBoard->choose(to, key.yard);
  m_dayBoard->focusChosen();
  const auto* moved = m_board.stop(to, key.yard);
  const QString why = moved ? against(*moved, to) : QString();
  m_said = QStringList{tr("%1 moved to %2.").arg(name, weekDay(to)) +
                       (why.isEmpty() ? QString() : u' ' + why)};
  showState();
}

void RoundsPlace::moveBy(int days) {
  if (stop()) move({day()->date(), stop()->yard}, day()->date().plusDays(days));
}

void RoundsPlace::moveToDay() {
  const auto* at = stop();
  if (!at) return;
  const StopKey key{day()->date(), at->yard};
  const BoardStop copy = *at;
  DayDialog dialog(
      yardName(m_hub.season(), key.yard), key.date,
      [this, copy](base::Date to) { return dateInWords(copy, to); },
      [this, copy](base::Date to) {
        return copy.visit ? m_hub.whyNot(*session::moveVisit(*copy.visit, to)) : QString();
      },
      this);
  if (m_hub.dialogs().run(dialog)) move(key, dialog.day());
}

// --- work ---------------------------------------------------------------------------------------

void RoundsPlace::putIn() {
  const auto* at = stop();
  if (!at || !at->visit) return;
  std::vector<base::TaskId> planned;
  std::vector<apiary::Task> fresh;
  for (const auto& row : chosen()) {
    if (row.part != Part::Also && row.part != Part::Other) continue;
    if (row.task) {
      planned.push_back(*row.task);
    } else {
      fresh.push_back(
          planning::taskOf(m_board.due.tasks[row.due], base::TaskId{}, adapt::wordsUtf8));
    }
  }
  if (planned.empty() && fresh.empty()) return;
  m_said.clear();
  m_hub.execute(session::putIntoVisit(*at->visit, std::move(planned), std::move(fresh)), this);
}

void RoundsPlace::takeOut() {
  std::vector<base::TaskId> tasks;
  for (const auto& row : chosen()) {
    if (row.part == Part::In && row.task) tasks.push_back(*row.task);
  }
  if (tasks.empty()) return;
  m_said.clear();
  m_hub.execute(session::takeOutOfVisit(std::move(tasks)), this);
}

std::vector<base::TaskId> RoundsPlace::plannedChosen() const {
  std::vector<base::TaskId> out;
  for (const auto& row : chosen()) {
    if (row.part != Part::Done && row.task) out.push_back(*row.task);
  }
  return out;
}

void RoundsPlace::untick() {
  std::vector<session::HiveStep> steps;
  base::Message title;
  for (const auto& row : chosen()) {
    if (row.part != Part::Done || !row.task) continue;
    const auto* task = m_hub.season().find<apiary::Task>(row.task->str());
    if (!task) continue;
    auto step = session::setTaskState(*row.task, apiary::TaskState::Planned, std::nullopt);
    title = step->title();
    steps.push_back({task->hive.value_or(base::HiveId{}), std::move(step)});
  }
  if (steps.empty()) return;
  m_said.clear();
  if (steps.size() == 1) {
    m_hub.execute(std::move(steps.front().command), this);
  } else {
    m_hub.execute(session::together(title, std::move(steps)), this);
  }
}

void RoundsPlace::openHive() {
  for (const auto& row : chosen()) {
    if (row.part == Part::Done) continue;
    const auto& hive = m_board.due.tasks[row.due].hive;
    if (!hive || !m_hub.season().hive(*hive)) continue;
    m_hub.selectHive(*hive);
    Q_EMIT openPlace(QStringLiteral("hive"));
    return;
  }
}

// --- out of the program -------------------------------------------------------------------------

void RoundsPlace::printSheets() {
  if (!day() || day()->stops.empty()) return;
  std::vector<base::YardId> yards;
  for (const auto& s : day()->stops) yards.push_back(s.yard);
  Q_EMIT sheetsAsked(yards, day()->date());
}

void RoundsPlace::saveCalendar() {
  if (!day()) return;
  const auto on = day()->date();
  QString file = m_hub.dialogs().saveFile(this, tr("Save the day as calendar file"),
                                          tr("Calendar files (*.ics)"),
                                          tr("round %1.ics").arg(QString::fromStdString(on.iso())));
  if (file.isEmpty()) return;
  if (!file.endsWith(QStringLiteral(".ics"), Qt::CaseInsensitive)) file += QStringLiteral(".ics");
  const auto text =
      exchange::visitsCalendar(m_hub.season(), on, on, m_hub.clock().nowUtc(), adapt::wordsUtf8);
  QSaveFile out(file);
  const bool written = out.open(QIODevice::WriteOnly) &&
                       out.write(text.data(), static_cast<qint64>(text.size())) ==
                           static_cast<qint64>(text.size()) &&
                       out.commit();
  if (!written) {
    m_hub.dialogs().failure(
        this, tr("The calendar file was not saved"),
        tr("%1 could not be written: %2. Choose another folder.").arg(file, out.errorString()));
    return;
  }
  m_said = QStringList{tr("The visits of %1 stand in %2").arg(weekDay(on), file)};
  showState();
}

}  // namespace outyard::rounds
