// SPDX-License-Identifier: GPL-3.0-or-later
// The work of the chosen visit, the load of its day, and both on paper.
#include <QHeaderView>
#include <QLabel>
#include <QPagedPaintDevice>
#include <QTreeWidget>
#include <algorithm>
#include <cmath>

#include "ui/adapt/words.h"
#include "ui/rounds/rounds_place.h"
#include "ui/rounds/rounds_words.h"
#include "ui/widgets/list_pages.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::rounds {
namespace {

enum Column { kHive, kWork, kWindow, kChance, kTime, kWhy };
enum LoadColumn { kItem, kNeeded, kAtHand, kShort, kWeight };

QString hiveText(const planning::DueTask& task) {
  return task.hive ? QString::fromStdString(task.hive->str()) : RoundsPlace::tr("yard");
}

QString kgText(double kg, const adapt::Units& units) {
  return units.text(base::Mass{kg}, kg < 9.5 ? 1 : 0);
}

}  // namespace

void RoundsPlace::addWork(const QString& text, Part part, const std::vector<std::size_t>& tasks) {
  if (tasks.empty()) return;
  auto* head = new QTreeWidgetItem(m_work);
  head->setText(0, text);
  head->setFirstColumnSpanned(true);
  head->setFlags(Qt::ItemIsEnabled);
  QFont bold = m_work->font();
  bold.setBold(true);
  head->setFont(0, bold);
  const auto today = m_hub.workingDate();
  for (const std::size_t i : tasks) {
    const auto& task = m_board.due.tasks[i];
    auto* item = new QTreeWidgetItem(head);
    item->setText(kHive, hiveText(task));
    item->setText(kWork, workText(task, units()));
    item->setText(kWindow, windowText(task, today));
    item->setText(kChance, percentText(task));
    item->setText(kTime, tr("%1 min").arg(std::lround(task.minutes)));
    item->setText(kWhy, reasonText(task));
    item->setTextAlignment(kChance, Qt::AlignRight | Qt::AlignVCenter);
    item->setTextAlignment(kTime, Qt::AlignRight | Qt::AlignVCenter);
    QStringList tip{
        QStringLiteral("%1: %2. %3").arg(hiveText(task), item->text(kWork), item->text(kWhy))};
    for (const QString& caution : cautionTexts(task)) tip << tr("Take care: %1").arg(caution);
    for (int column = 0; column <= kWhy; ++column) {
      item->setToolTip(column, tip.join(u'\n'));
    }
    if (task.overdue(today)) {
      item->setForeground(kWindow, widgets::inkColour(palette(), sheet::Ink::Alarm));
      item->setFont(kWindow, bold);
    }
    item->setData(0, Qt::UserRole, static_cast<int>(m_workRows.size()));
    item->setData(0, Qt::AccessibleTextRole,
                  QStringLiteral("%1, %2, %3, %4")
                      .arg(text, hiveText(task), item->text(kWork), item->text(kWindow)));
    m_workRows.push_back({part, i, task.task});
  }
  head->setExpanded(true);
}

void RoundsPlace::fillWork() {
  QString sum = m_total;
  if (m_dayBoard->yard()) {
    sum += tr("; warmth at %1").arg(yardName(m_hub.season(), *m_dayBoard->yard()));
  }
  m_sum->setText(sum);
  m_work->clear();
  m_workRows.clear();
  const BoardStop* at = stop();
  if (!at) {
    m_workHead->setText(m_dayBoard->day() ? tr("%1: no visit").arg(weekDay(*m_dayBoard->day()))
                                          : tr("Choose a visit"));
    return;
  }
  QString head = tr("%1, %2").arg(yardName(m_hub.season(), at->yard), weekDay(day()->date()));
  if (at->time) head += u' ' + QString::fromStdString(at->time->text());
  head += tr(": %1 there, %2").arg(hoursText(at->stop.workHours), wayText(at->stop, units()));
  if (!at->visit) head += tr(" (proposed)");
  if (!at->notes.empty()) head += u'\n' + tr("Notes: %1").arg(QString::fromStdString(at->notes));
  m_workHead->setText(head);
  std::vector<std::size_t> in, proposed;
  for (const std::size_t i : at->stop.tasks) {
    (at->fresh.contains(i) || !at->visit ? proposed : in).push_back(i);
  }
  addWork(tr("In this visit (%1)").arg(in.size()), Part::In, in);
  addWork(tr("Proposed for it (%1)").arg(proposed.size()), Part::Proposed, proposed);
  if (!at->done.empty()) {
    auto* done = new QTreeWidgetItem(m_work);
    done->setText(0, tr("Done (%1)").arg(at->done.size()));
    done->setFirstColumnSpanned(true);
    done->setFlags(Qt::ItemIsEnabled);
    QFont bold = m_work->font();
    bold.setBold(true);
    done->setFont(0, bold);
    for (const auto& id : at->done) {
      const auto* task = m_hub.season().find<apiary::Task>(id.str());
      if (!task) continue;
      const auto was = asDue(m_hub.season(), *task, day()->date());
      auto* item = new QTreeWidgetItem(done);
      item->setText(kHive, hiveText(was));
      item->setText(kWork, workText(was, units()));
      item->setText(kWindow, task->doneOn ? tr("✓ %1").arg(shortDay(*task->doneOn)) : tr("✓"));
      item->setText(kWhy, QString::fromStdString(task->why));
      for (int column = 0; column <= kWhy; ++column) item->setToolTip(column, item->text(column));
      item->setData(0, Qt::UserRole, static_cast<int>(m_workRows.size()));
      m_workRows.push_back({Part::Done, 0, id});
    }
    done->setExpanded(true);
  }
  addWork(tr("Also due there then, in no visit (%1)").arg(at->alsoDue.size()), Part::Also,
          at->alsoDue);
  addWork(tr("Due there on other days (%1)").arg(at->otherDue.size()), Part::Other, at->otherDue);
  const int letter = fontMetrics().averageCharWidth();
  for (const int column : {kHive, kWindow, kChance, kTime}) m_work->resizeColumnToContents(column);
  m_work->setColumnWidth(kHive, std::max(m_work->columnWidth(kHive), 9 * letter));
  m_work->resizeColumnToContents(kWork);
  m_work->setColumnWidth(kWork, std::clamp(m_work->columnWidth(kWork), 16 * letter, 34 * letter));
}

void RoundsPlace::fillLoad() {
  m_load->clear();
  const BoardDay* at = day();
  const bool any = at && !at->stops.empty();
  m_loadHead->setText(any ? tr("Load for %1").arg(weekDay(at->date())) : tr("Load list"));
  m_loadSum->clear();
  m_cautions->clear();
  if (any) {
    const auto& load = at->day.load;
    QFont bold = m_load->font();
    bold.setBold(true);
    double sugar = 0;
    for (const auto& thing : load.items) {
      auto* item = new QTreeWidgetItem(m_load);
      item->setText(kItem, itemText(thing.item));
      item->setText(kNeeded, countText(thing.needed, thing.unit, units()));
      item->setText(kAtHand, thing.atHand ? countText(*thing.atHand, thing.unit, units())
                                          : tr("not counted"));
      const double missing = thing.missing();
      if (missing > 0) item->setText(kShort, countText(missing, thing.unit, units()));
      item->setText(kWeight, thing.kg ? kgText(*thing.kg, units()) : tr("?"));
      QString tip = tr("%1: %2 needed, %3 at hand")
                        .arg(item->text(kItem), item->text(kNeeded), item->text(kAtHand));
      if (!thing.atHand)
        tip +=
            tr(" (count it under Gear or in the tables to be told what is "
               "short)");
      if (thing.sugarKg) {
        sugar += *thing.sugarKg;
        tip += tr("; %1 of sugar in it").arg(kgText(*thing.sugarKg, units()));
      }
      for (int column = 0; column <= kWeight; ++column) {
        item->setToolTip(column, tip);
        if (column != kItem) {
          item->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
        }
      }
      if (missing > 0) {
        item->setForeground(kShort, widgets::inkColour(palette(), sheet::Ink::Alarm));
        item->setFont(kShort, bold);
      }
      item->setData(0, Qt::AccessibleTextRole, tip);
    }
    QString sum = load.items.empty() ? tr("The work of this day takes no gear on record.")
                                     : tr("Together %1").arg(kgText(load.kg, units()));
    if (sugar > 0) sum += tr(", of it sugar for the feed %1").arg(kgText(sugar, units()));
    m_loadSum->setText(sum);
    QStringList cautions;
    for (const auto& caution : load.cautions) {
      cautions << QStringLiteral("•  ") + adapt::words(caution);
    }
    m_cautions->setText(cautions.join(u'\n'));
  }
  findChild<QWidget*>(QStringLiteral("cautionArea"))->setVisible(!m_cautions->text().isEmpty());
  m_loadSum->setVisible(!m_loadSum->text().isEmpty());
  QPalette colours = palette();
  if (any && at->day.load.tooHeavy) {
    colours.setColor(QPalette::WindowText, widgets::inkColour(palette(), sheet::Ink::Alarm));
  }
  m_loadSum->setPalette(colours);
  for (int column = kNeeded; column <= kWeight; ++column) m_load->resizeColumnToContents(column);
  m_load->header()->setStretchLastSection(false);
  m_load->header()->setSectionResizeMode(kItem, QHeaderView::Stretch);
}

// --- paper --------------------------------------------------------------------------------------

std::vector<widgets::ListTable> RoundsPlace::pages() const {
  std::vector<const BoardDay*> days;
  if (day() && !day()->stops.empty()) {
    days.push_back(day());
  } else {
    for (const auto& d : m_board.days) {
      if (!d.stops.empty()) days.push_back(&d);
    }
  }
  const auto today = m_hub.workingDate();
  std::vector<widgets::ListTable> out;
  const auto line = [](const QStringList& cells, bool strong) {
    return widgets::ListTable::Line{cells, cells, strong};
  };
  for (const BoardDay* d : days) {
    widgets::ListTable round;
    round.title = tr("Round of %1").arg(weekDay(d->date()));
    if (d->proposed()) round.title += tr(" (in part proposed)");
    round.date = adapt::dateText(d->date());
    round.note = daySentence(m_board, *d, m_hub.season(), units());
    round.head = {tr("☐"), tr("Hive"), tr("Work"), tr("Window"), tr("Why, and what to mind")};
    int number = 0;
    for (const auto& s : d->stops) {
      const auto* weather = dayOf(m_board.due, s.yard, d->date());
      QString head = yardName(m_hub.season(), s.yard);
      if (s.time) head += tr(", at %1").arg(QString::fromStdString(s.time->text()));
      QString way = tr("%1, %2 there").arg(wayText(s.stop, units()), hoursText(s.stop.workHours));
      way += QStringLiteral(". ") + warmthSentence(d->date(), weather, units());
      if (!s.notes.empty()) way += QStringLiteral(". ") + QString::fromStdString(s.notes);
      round.lines.push_back(line(
          {QString::number(++number), QString::fromStdString(s.yard.str()), head, {}, way}, true));
      for (const std::size_t i : s.stop.tasks) {
        const auto& task = m_board.due.tasks[i];
        QStringList why{reasonText(task)};
        why += cautionTexts(task);
        round.lines.push_back(line({tr("☐"), hiveText(task), workText(task, units()),
                                    windowText(task, today), why.join(QStringLiteral(" "))},
                                   false));
      }
    }
    round.right.assign(static_cast<std::size_t>(round.head.size()), false);
    out.push_back(std::move(round));
    widgets::ListTable load;
    load.title = tr("Load for %1").arg(weekDay(d->date()));
    load.date = adapt::dateText(d->date());
    double sugar = 0;
    for (const auto& thing : d->day.load.items) sugar += thing.sugarKg.value_or(0);
    QStringList notes{tr("Together %1").arg(kgText(d->day.load.kg, units()))};
    if (sugar > 0) notes << tr("Sugar in the feed %1").arg(kgText(sugar, units()));
    for (const auto& caution : d->day.load.cautions) notes << adapt::words(caution);
    load.note =
        notes.join(QStringLiteral(". ")).replace(QStringLiteral(".. "), QStringLiteral(". "));
    load.head = {tr("☐"), tr("Load"), tr("Needed"), tr("At hand"), tr("Short"), tr("Weight")};
    load.right = {false, false, true, true, true, true};
    for (const auto& thing : d->day.load.items) {
      const double missing = thing.missing();
      load.lines.push_back(
          line({tr("☐"), itemText(thing.item), countText(thing.needed, thing.unit, units()),
                thing.atHand ? countText(*thing.atHand, thing.unit, units()) : tr("not counted"),
                missing > 0 ? countText(missing, thing.unit, units()) : QString(),
                thing.kg ? kgText(*thing.kg, units()) : tr("not known")},
               missing > 0));
    }
    if (!load.lines.empty()) out.push_back(std::move(load));
  }
  if (out.empty()) {
    widgets::ListTable none;
    none.title = tr("Rounds");
    none.note = tr("No visit is planned from %1 to %2.")
                    .arg(adapt::dateText(m_from.value_or(today)),
                         adapt::dateText(m_from.value_or(today).plusDays(kDays - 1)));
    none.head = {tr("Day"), tr("Yard")};
    none.right = {false, false};
    out.push_back(std::move(none));
  }
  return out;
}

void RoundsPlace::printTo(QPagedPaintDevice& device) {
  widgets::paintLists(device, pages());
}

}  // namespace outyard::rounds
