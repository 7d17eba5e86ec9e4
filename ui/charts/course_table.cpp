// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_table.h"

#include <algorithm>
#include <cstdlib>
#include <set>

#include "ui/adapt/words.h"

namespace outyard::charts {
namespace {

constexpr int kFixed = 2;  // date, how it is known
constexpr int kTail = 2;   // weather, journal

const Series* seriesAt(const CourseData& data, int index) {
  for (const auto& lane : data.lanes) {
    for (const auto& series : lane.series) {
      if (index-- == 0) return &series;
    }
  }
  return nullptr;
}

int seriesCount(const CourseData& data) {
  int count = 0;
  for (const auto& lane : data.lanes) count += static_cast<int>(lane.series.size());
  return count;
}

int decimalsOf(const CourseData& data, const Series* wanted) {
  for (const auto& lane : data.lanes) {
    for (const auto& series : lane.series) {
      if (&series == wanted) return lane.decimals;
    }
  }
  return 0;
}

}  // namespace

void CourseTable::setData(std::shared_ptr<const CourseData> data) {
  beginResetModel();
  m_data = std::move(data);
  m_days.clear();
  if (m_data) {
    std::set<base::Date> days;
    for (base::Date d = m_data->today; d <= m_data->last; d = d.plusDays(7)) days.insert(d);
    for (base::Date d = m_data->today; d >= m_data->first; d = d.plusDays(-7)) days.insert(d);
    for (const auto& tick : m_data->ticks) {
      if (tick.date >= m_data->first && tick.date <= m_data->last) days.insert(tick.date);
    }
    for (const auto look : m_data->looks) days.insert(look);
    m_days.assign(days.begin(), days.end());
  }
  endResetModel();
}

base::Date CourseTable::dayOf(int row) const {
  return m_days.at(static_cast<std::size_t>(row));
}

int CourseTable::rowNear(base::Date day) const {
  int best = -1;
  for (std::size_t i = 0; i < m_days.size(); ++i) {
    if (best < 0 ||
        std::abs(m_days[i] - day) < std::abs(m_days[static_cast<std::size_t>(best)] - day)) {
      best = static_cast<int>(i);
    }
  }
  return best;
}

int CourseTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_days.size());
}

int CourseTable::columnCount(const QModelIndex& /*parent*/) const {
  return kFixed + kTail + (m_data ? seriesCount(*m_data) : 0);
}

QString CourseTable::text(base::Date day, int column) const {
  if (column == 0) return adapt::dateText(day);
  if (column == 1) {
    if (std::binary_search(m_data->looks.begin(), m_data->looks.end(), day)) return tr("looked at");
    if (day > m_data->today) return tr("expected");
    return unseen(*m_data, day) ? tr("estimated, not looked at for five weeks") : tr("estimated");
  }
  const int series = column - kFixed;
  if (const auto* s = seriesAt(*m_data, series)) {
    const int decimals = decimalsOf(*m_data, s);
    QStringList parts;
    for (const auto& p : s->seen) {
      if (p.date != day) continue;
      parts << tr("seen %1").arg(bandText({day, p.low, p.median, p.high}, decimals));
      if (p.surprise) parts << p.words;
    }
    if (const auto band = at(*s, day)) parts << bandText(*band, decimals);
    if (const auto band = at(s->other, day)) {
      parts << tr("%1: %2").arg(m_data->tried, bandText(*band, decimals));
    }
    return parts.join(QStringLiteral("; "));
  }
  if (series == seriesCount(*m_data)) {
    for (const auto& w : m_data->weather) {
      if (w.date != day) continue;
      return tr("%1 to %2 %3")
                 .arg(numberText(w.tmin, 0), numberText(w.tmax, 0), m_data->temperatureUnit) +
             (w.opens ? tr(", combs can be lifted") : QString());
    }
    return {};
  }
  QStringList parts;
  for (const auto& t : m_data->ticks) {
    if (t.date == day) parts << QStringLiteral("%1 – %2").arg(t.letter).arg(t.words);
  }
  return parts.join(QStringLiteral("; "));
}

QVariant CourseTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || !m_data || index.row() >= rowCount()) return {};
  if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole || role == Qt::ToolTipRole) {
    return text(dayOf(index.row()), index.column());
  }
  return {};
}

QVariant CourseTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  if (section == 0) return tr("Day");
  if (section == 1) return tr("Known");
  if (!m_data) return section == kFixed ? tr("Weather") : tr("Journal");
  if (const auto* s = seriesAt(*m_data, section - kFixed)) {
    QString name = s->name;
    name[0] = name[0].toUpper();
    return s->unit.isEmpty() ? name : tr("%1, %2").arg(name, s->unit);
  }
  return section - kFixed == seriesCount(*m_data) ? tr("Weather") : tr("Journal");
}

}  // namespace outyard::charts
