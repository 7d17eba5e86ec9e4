// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/calendar_model.h"

#include <QLocale>
#include <cmath>

#include "ui/adapt/words.h"
#include "ui/calendar/calendar_words.h"
#include "ui/widgets/list_table.h"

namespace outyard::calendar {

namespace {

bool isEmpty(const planning::CalendarCell& c) {
  return c.nectar <= 0 && c.splitReady.value_or(0) < 0.5 && c.splitsDone == 0 &&
         c.boostsDone + c.boostsPlanned == 0 && c.treatmentsDone + c.treatmentsPlanned == 0 &&
         !c.underTreatment && !c.waiting && c.harvests + c.harvestsDue == 0 && c.tasks.empty() &&
         c.looksDone + c.feedsDone + c.washesDone == 0 && c.visitsPlanned == 0;
}

}  // namespace

void CalendarModel::show(std::shared_ptr<const planning::SeasonCalendar> calendar,
                         const QStringList& names) {
  beginResetModel();
  m_calendar = std::move(calendar);
  m_names = names;
  m_rows.clear();
  if (m_calendar) {
    for (std::size_t y = 0; y < m_calendar->yards.size(); ++y) {
      for (std::size_t w = 0; w < m_calendar->weeks.size(); ++w) {
        if (!isEmpty(m_calendar->cell(y, w))) m_rows.emplace_back(y, w);
      }
    }
  }
  endResetModel();
}

int CalendarModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int CalendarModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : ColumnCount;
}

QVariant CalendarModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const auto& [yard, week] = m_rows.at(static_cast<std::size_t>(index.row()));
  const auto& c = m_calendar->cell(yard, week);
  const bool figure = index.column() == Flow || index.column() == Ready || index.column() == Hours;
  if (role == Qt::TextAlignmentRole && figure) return int(Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::ToolTipRole) return cellLines(*m_calendar, yard, week).join(QLatin1Char('\n'));
  if (role == widgets::kListValueRole) {
    if (index.column() == Week) return QString::fromStdString(m_calendar->weeks[week].monday.iso());
    if (index.column() == Flow && c.nectar > 0) return QString::number(c.nectar);
    if (index.column() == Ready && c.splitReady) return QString::number(*c.splitReady, 'g', 8);
    if (index.column() == Hours && c.workHours > 0) return QString::number(c.workHours, 'g', 8);
    return {};
  }
  if (role != Qt::DisplayRole) return {};
  QStringList parts;
  const auto add = [&](const QString& text, int count) {
    if (count > 0) parts << text.arg(count);
  };
  switch (index.column()) {
    case Yard:
      return m_names.value(static_cast<int>(yard));
    case Week:
      return weekText(m_calendar->weeks[week].monday);
    case Flow:
      return c.nectar > 0 ? QLocale().toString(c.nectar, 'g', 2) : QString();
    case Ready:
      return c.splitReady && *c.splitReady >= 0.5 ? QString::number(std::lround(*c.splitReady))
                                                  : QString();
    case Boosts:
      add(tr("%1 done"), c.boostsDone);
      add(tr("%1 planned"), c.boostsPlanned);
      break;
    case Treatments:
      add(tr("%1 done"), c.treatmentsDone);
      add(tr("%1 planned"), c.treatmentsPlanned);
      if (c.underTreatment) parts << tr("in the hives");
      if (c.waiting) parts << (c.waitingEnds ? tr("waiting period ends") : tr("waiting period"));
      break;
    case Honey:
      if (c.harvestKg > 0) {
        parts << tr("%1 kg taken").arg(adapt::roundNumber(c.harvestKg));
      } else {
        add(tr("%1 taken"), c.harvests);
      }
      add(tr("%1 to take"), c.harvestsDue);
      break;
    case Work:
      add(tr("%1 looks"), c.looksDue);
      add(tr("%1 feeds"), c.feedsDue);
      add(tr("%1 washes"), c.washesDue);
      add(tr("%1 other"), c.otherDue);
      add(tr("%1 done"), c.looksDone + c.feedsDone + c.washesDone);
      break;
    case Hours:
      return c.workHours > 0 ? QLocale().toString(c.workHours, 'f', 1) : QString();
    default:
      return {};
  }
  return parts.join(QStringLiteral(", "));
}

QVariant CalendarModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case Yard:
      return tr("Yard");
    case Week:
      return tr("Week");
    case Flow:
      return tr("Flow, 0 to 3");
    case Ready:
      return tr("Ready to divide");
    case Boosts:
      return tr("Boosts");
    case Treatments:
      return tr("Treatments");
    case Honey:
      return tr("Honey");
    case Work:
      return tr("Looks, feeds, washes, other");
    case Hours:
      return tr("Hours there");
    default:
      return {};
  }
}

}  // namespace outyard::calendar
