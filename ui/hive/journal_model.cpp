// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/journal_model.h"

#include <QFont>
#include <algorithm>
#include <set>
#include <tuple>

#include "core/apiary/comb_state.h"
#include "ui/adapt/words.h"

namespace outyard::hive {
namespace {

template <class T>
JournalLine head(const apiary::Season& season, const T& record) {
  JournalLine line;
  line.table = apiary::TableOf<T>::kId;
  line.record = record.record;
  line.date = record.date;
  line.withdrawn = record.isVoid;
  line.corrected = season.isSuperseded(apiary::TableOf<T>::kId, record.record);
  return line;
}

/// Records that a void one stands in the place of: they were withdrawn, not corrected.
template <class T>
std::set<base::RecordId> withdrawnBy(const std::vector<const T*>& records) {
  std::set<base::RecordId> out;
  for (const T* r : records) {
    if (r->isVoid && r->supersedes) out.insert(*r->supersedes);
  }
  return out;
}

}  // namespace

void JournalModel::load(const apiary::Season& season, const std::optional<base::HiveId>& hive,
                        const adapt::Units& units) {
  m_all.clear();
  std::set<base::RecordId> withdrawn;
  if (hive) {
    withdrawn.merge(withdrawnBy(season.allOf<apiary::Inspection>(*hive)));
    withdrawn.merge(withdrawnBy(season.allOf<apiary::Wash>(*hive)));
    withdrawn.merge(withdrawnBy(season.allOf<apiary::Event>(*hive)));
    withdrawn.merge(withdrawnBy(season.allOf<apiary::FrameMove>(*hive)));
    for (const auto* i : season.allOf<apiary::Inspection>(*hive)) {
      if (i->isVoid && i->supersedes) continue;  // only says that the other is withdrawn
      JournalLine line = head(season, *i);
      line.time = i->time;
      line.kind = JournalKind::Look;
      line.words = inspectionWords(*i, units);
      line.who = QString::fromStdString(i->reader);
      m_all.push_back(std::move(line));
    }
    for (const auto* w : season.allOf<apiary::Wash>(*hive)) {
      if (w->isVoid && w->supersedes) continue;  // only says that the other is withdrawn
      JournalLine line = head(season, *w);
      line.kind = JournalKind::Wash;
      line.words = washWords(*w);
      m_all.push_back(std::move(line));
    }
    const auto addEvent = [&](const apiary::Event& e) {
      if (e.isVoid && e.supersedes) return;
      JournalLine line = head(season, e);
      line.time = e.time;
      line.kind = kindOf(e.kind);
      line.words = eventWords(e, *hive, units);
      line.ofOtherHive = e.hive != *hive;
      m_all.push_back(std::move(line));
    };
    for (const auto* e : season.allOf<apiary::Event>(*hive)) addEvent(*e);
    for (const auto* e : season.eventsTouching(*hive)) {
      if (e->hive != *hive) addEvent(*e);
    }
    for (const auto* m : season.allOf<apiary::FrameMove>(*hive)) {
      if (m->isVoid && m->supersedes) continue;  // only says that the other is withdrawn
      // Rows of one move are told once: by their event, or by the first of them.
      const std::string lead = apiary::leadOf(m->record).first;
      const bool first = lead == m->record.str();
      if (!first && (season.find<apiary::Event>(lead) || season.find<apiary::FrameMove>(lead))) {
        continue;
      }
      JournalLine line = head(season, *m);
      line.kind = JournalKind::Combs;
      line.words = frameMoveWords(*m, *hive);
      m_all.push_back(std::move(line));
    }
  }
  for (JournalLine& line : m_all) {
    if (withdrawn.count(line.record) == 0) continue;
    line.withdrawn = true;
    line.corrected = false;
  }
  std::stable_sort(m_all.begin(), m_all.end(), [](const JournalLine& a, const JournalLine& b) {
    return std::tie(b.date, b.time) < std::tie(a.date, a.time);
  });
  filter();
}

void JournalModel::setKind(std::optional<JournalKind> kind) {
  m_kind = kind;
  filter();
}

void JournalModel::setShowAll(bool all) {
  m_showAll = all;
  filter();
}

void JournalModel::filter() {
  beginResetModel();
  m_shown.clear();
  for (std::size_t i = 0; i < m_all.size(); ++i) {
    if (!m_showAll && !m_all[i].counts()) continue;
    if (m_kind && m_all[i].kind != *m_kind) continue;
    m_shown.push_back(i);
  }
  endResetModel();
}

int JournalModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_shown.size());
}

int JournalModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kColumnCount;
}

QVariant JournalModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const JournalLine& l = line(index.row());
  if (role == Qt::FontRole && !l.counts()) {
    QFont font;
    font.setStrikeOut(true);
    return font;
  }
  if (role == Qt::TextAlignmentRole && index.column() == kKind) {
    return QVariant::fromValue(Qt::Alignment(Qt::AlignCenter));
  }
  if (role == Qt::ToolTipRole) {
    return index.column() == kKind ? kindName(l.kind) : l.words;
  }
  if (role == Qt::AccessibleTextRole && index.column() == kKind) return kindName(l.kind);
  if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
  switch (index.column()) {
    case kDate:
      return l.time ? QStringLiteral("%1 %2").arg(adapt::dateText(l.date),
                                                  QString::fromStdString(l.time->text()))
                    : adapt::dateText(l.date);
    case kKind:
      return QString(kindLetter(l.kind));
    case kWords:
      if (l.withdrawn) return tr("Withdrawn: %1").arg(l.words);
      if (l.corrected) return tr("Corrected since: %1").arg(l.words);
      return l.words;
    case kWho:
      return l.who;
    default:
      return {};
  }
}

QVariant JournalModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case kDate:
      return tr("Date");
    case kKind:
      return tr("Kind");
    case kWords:
      return tr("What");
    case kWho:
      return tr("Who");
    default:
      return {};
  }
}

const JournalLine& JournalModel::line(int row) const {
  return m_all.at(m_shown.at(static_cast<std::size_t>(row)));
}

int JournalModel::hiddenCount() const {
  return static_cast<int>(
      std::count_if(m_all.begin(), m_all.end(), [](const JournalLine& l) { return !l.counts(); }));
}

int JournalModel::rowOf(const base::RecordId& record) const {
  for (std::size_t i = 0; i < m_shown.size(); ++i) {
    if (m_all[m_shown[i]].record == record) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace outyard::hive
