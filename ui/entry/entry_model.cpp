// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_model.h"

#include <QBrush>
#include <QFont>
#include <QGuiApplication>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/entry/entry_words.h"
#include "ui/widgets/theme.h"

namespace outyard::entry {

using session::EntryColumn;
using session::EntryLine;

namespace {

QString text(const std::string& s) {
  return QString::fromStdString(s);
}

/// Without its first word where that only says what the head of the column says.
QString shortExpected(const std::string& printed) {
  const QString all = text(printed);
  const qsizetype colon = all.indexOf(u':');
  if (colon < 0) return all;
  const QString before = all.left(colon);
  const bool figures =
      std::any_of(before.begin(), before.end(), [](QChar c) { return c.isDigit(); });
  return figures ? all : all.mid(colon + 1).trimmed();
}

QColor ink(sheet::Ink which) {
  return widgets::inkColour(QGuiApplication::palette(), which);
}

/// Hatched: nothing is to be written there.
QBrush shut() {
  return {ink(sheet::Ink::FaintLine), Qt::BDiagPattern};
}

}  // namespace

EntryModel::EntryModel(widgets::SeasonHub& hub, QObject* parent)
    : QAbstractTableModel(parent), m_hub(hub) {}

void EntryModel::setSheet(session::EntrySheet sheet) {
  beginResetModel();
  m_sheet = std::move(sheet);
  m_taskColumns = 0;
  for (const EntryLine& l : m_sheet.lines) {
    m_taskColumns = std::max(m_taskColumns, static_cast<int>(l.tasks.size()));
  }
  endResetModel();
}

int EntryModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_sheet.lines.size());
}

int EntryModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kFirstTask + m_taskColumns;
}

std::optional<EntryColumn> EntryModel::entryColumn(int column) {
  if (column < kFirstEntry || column >= kFirstTask) return std::nullopt;
  return session::kAllEntryColumns[static_cast<std::size_t>(column - kFirstEntry)];
}

const EntryLine& EntryModel::line(int row) const {
  return m_sheet.lines.at(static_cast<std::size_t>(row));
}

const apiary::Task* EntryModel::task(const QModelIndex& index) const {
  if (!index.isValid() || index.column() < kFirstTask) return nullptr;
  const auto& tasks = line(index.row()).tasks;
  const auto at = static_cast<std::size_t>(index.column() - kFirstTask);
  return at < tasks.size() ? m_hub.season().find<apiary::Task>(tasks[at].str()) : nullptr;
}

QString EntryModel::typed(const QModelIndex& index) const {
  const auto column = entryColumn(index.column());
  return column ? text(line(index.row()).at(*column)) : QString();
}

QString EntryModel::whyNot(const QModelIndex& index, const QString& typedText) const {
  const auto column = entryColumn(index.column());
  if (!column) return {};
  EntryLine trial = line(index.row());
  trial.at(*column) = typedText.toStdString();
  const auto may = session::checkCell(trial, *column, m_sheet.head);
  return may ? QString() : adapt::words(may.failure());
}

bool EntryModel::open(const QModelIndex& index) const {
  if (!index.isValid()) return false;
  const EntryLine& l = line(index.row());
  if (task(index)) return true;
  const auto column = entryColumn(index.column());
  if (!column || l.entered) return false;
  return l.hasBees || *column == EntryColumn::Seams || *column == EntryColumn::NotDone ||
         *column == EntryColumn::Note;
}

Qt::ItemFlags EntryModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (!open(index)) return flags;
  return flags | (entryColumn(index.column()) ? Qt::ItemIsEditable : Qt::ItemIsUserCheckable);
}

QString EntryModel::cautionOf(const EntryLine& l, EntryColumn column) const {
  if (column == EntryColumn::Sick && QString::fromStdString(l.at(column)).toLower() == u"y") {
    return tr("Sick at %1: the bee inspector decides what it is. Until then nothing in or out: no "
              "bees, combs, honey, tools.")
        .arg(text(l.hive.str()));
  }
  if (session::surprises(l, column)) {
    return tr("Line %1 (%2) surprises: %3 was typed, printed was \"%4\". Look at the paper again.")
        .arg(l.line)
        .arg(text(l.hive.str()), text(l.at(column)), text(l.expected));
  }
  return {};
}

bool EntryModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!open(index)) return false;
  EntryLine& l = m_sheet.lines.at(static_cast<std::size_t>(index.row()));
  if (const auto* t = task(index)) {
    if (role != Qt::CheckStateRole) return false;
    if (value.toInt() == Qt::Checked) {
      l.ticked.insert(t->task);
    } else {
      l.ticked.erase(t->task);
    }
    Q_EMIT said({});
  } else {
    const auto column = entryColumn(index.column());
    if (role != Qt::EditRole || !column) return false;
    l.at(*column) = value.toString().trimmed().toStdString();
    const QString fault = whyNot(index, value.toString());
    Q_EMIT said(fault.isEmpty() ? cautionOf(l, *column) : fault);
  }
  // A point changes how the whole line looks.
  Q_EMIT dataChanged(index.siblingAtColumn(0), index.siblingAtColumn(columnCount() - 1));
  Q_EMIT edited();
  return true;
}

QVariant EntryModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  if (const auto column = entryColumn(index.column())) return entryData(index, *column, role);
  return index.column() >= kFirstTask ? taskData(index, role) : fixedData(index, role);
}

QVariant EntryModel::entryData(const QModelIndex& index, EntryColumn column, int role) const {
  const EntryLine& l = line(index.row());
  const QString written = text(l.at(column));
  const bool fault = !written.isEmpty() && !whyNot(index, written).isEmpty();
  const bool surprise = !fault && session::surprises(l, column);
  const bool caution = column == EntryColumn::Sick && written.toLower() == u"y";
  switch (role) {
    case Qt::DisplayRole:
    case Qt::AccessibleTextRole: {
      QString shown = cellText(column, written);
      if (fault) shown = tr("%1 ?").arg(shown);
      if (surprise || caution) shown = tr("%1 !").arg(shown);
      return shown;
    }
    case Qt::EditRole:
      return written;
    case Qt::TextAlignmentRole:
      return takesOneKey(column) ? QVariant(Qt::AlignCenter)
                                 : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::ForegroundRole:
      if (fault || caution) return ink(sheet::Ink::Alarm);
      if (surprise) return ink(sheet::Ink::Warning);
      return {};
    case Qt::FontRole:
      if (fault || surprise || caution) {
        QFont bold = QGuiApplication::font();
        bold.setBold(true);
        return bold;
      }
      return {};
    case Qt::BackgroundRole:
      // Nothing can be written where the line is entered or nobody lives.
      if (!open(index)) return shut();
      return {};
    case Qt::ToolTipRole: {
      if (fault) return whyNot(index, written);
      const QString more = cautionOf(l, column);
      return more.isEmpty() ? columnKeys(column) : more;
    }
    default:
      return {};
  }
}

QVariant EntryModel::taskData(const QModelIndex& index, int role) const {
  const auto* t = task(index);
  if (!t) return role == Qt::BackgroundRole ? QVariant(shut()) : QVariant();
  switch (role) {
    case Qt::DisplayRole:
      return taskText(*t, adapt::Units::from(m_hub.settings()));
    case Qt::ToolTipRole:
      return tr("%1. Space ticks it off.")
          .arg(t->why.empty() ? taskText(*t, adapt::Units::from(m_hub.settings())) : text(t->why));
    case Qt::CheckStateRole:
      return line(index.row()).ticked.contains(t->task) ? Qt::Checked : Qt::Unchecked;
    default:
      return {};
  }
}

QVariant EntryModel::fixedData(const QModelIndex& index, int role) const {
  const EntryLine& l = line(index.row());
  if (role == Qt::ForegroundRole && l.entered) return ink(sheet::Ink::FaintText);
  if (role == Qt::TextAlignmentRole && index.column() == kLine) return Qt::AlignCenter;
  if (role == Qt::ToolTipRole && index.column() == kExpected) {
    return l.expected.empty() ? tr("Nothing was printed as expected") : text(l.expected);
  }
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case kLine:
      return l.line;
    case kHive: {
      const QString hive = text(l.hive.str());
      const bool named = l.colony && l.colony->str() != l.hive.str();
      return named ? tr("%1 (%2)").arg(hive, text(l.colony->str())) : hive;
    }
    default:
      if (l.entered) return tr("entered before");
      if (!l.hasBees) return tr("no colony: note only");
      return l.expected.empty() ? tr("not printed") : shortExpected(l.expected);
  }
}

QVariant EntryModel::headerData(int section, Qt::Orientation way, int role) const {
  if (way == Qt::Vertical) return {};
  const auto column = entryColumn(section);
  if (role == Qt::ToolTipRole) return column ? QVariant(columnKeys(*column)) : QVariant();
  if (role != Qt::DisplayRole) return {};
  if (column) {
    // In a sheet taken up again the weights keep the unit in which they were typed.
    const bool kg = m_sheet.head.kgPerUnit == 1.0;
    return columnHead(*column, kg ? tr("kg") : tr("lb"));
  }
  switch (section) {
    case kLine:
      return tr("Line");
    case kHive:
      return tr("Hive");
    case kExpected:
      return tr("Expected");
    default:
      return m_taskColumns > 1 ? tr("Done? (%1)").arg(section - kFirstTask + 1) : tr("Done?");
  }
}

}  // namespace outyard::entry
