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
using session::LineKind;

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
    m_taskColumns = std::max(m_taskColumns, static_cast<int>(l.tasks.size() + l.offers.size()));
  }
  endResetModel();
}

int EntryModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_sheet.lines.size());
}

int EntryModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kFirstTask + m_taskColumns;
}

int EntryModel::columnOf(EntryColumn column) {
  const auto at = [](EntryColumn head) { return kFirstEntry + static_cast<int>(head); };
  switch (column) {
    case EntryColumn::Hive:
      return kHive;
    case EntryColumn::Origin:
      return kExpected;
    case EntryColumn::Cause:
    case EntryColumn::BeesIn:
      return at(EntryColumn::Seams);
    case EntryColumn::Combs:
      return at(EntryColumn::Eggs);
    case EntryColumn::Closed:
      return at(EntryColumn::Stores);
    default:
      return at(column);
  }
}

int EntryModel::spanOf(EntryColumn column) {
  switch (column) {
    case EntryColumn::Cause:
    case EntryColumn::BeesIn:
    case EntryColumn::Closed:
      return 2;
    case EntryColumn::Combs:
      return 3;
    default:
      return 1;
  }
}

std::optional<EntryColumn> EntryModel::entryColumn(int column) {
  if (column < kFirstEntry || column >= kFirstTask) return std::nullopt;
  return session::kAllEntryColumns[static_cast<std::size_t>(column - kFirstEntry)];
}

std::optional<EntryColumn> EntryModel::cellAt(const QModelIndex& index) const {
  if (!index.isValid() || index.column() >= kFirstTask) return std::nullopt;
  const EntryLine& l = line(index.row());
  // A number that was entered before is a hive like any other.
  if (l.entered && index.column() < kFirstEntry) return std::nullopt;
  for (const EntryColumn column : session::columnsOf(l.form())) {
    if (columnOf(column) == index.column()) return column;
  }
  return std::nullopt;
}

int EntryModel::firstOpen(int row) const {
  for (int column = 0; column < columnCount(); ++column) {
    if (open(index(row, column))) return column;
  }
  return -1;
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

std::optional<std::size_t> EntryModel::boost(const QModelIndex& index) const {
  if (!index.isValid() || index.column() < kFirstTask) return std::nullopt;
  const EntryLine& l = line(index.row());
  const auto at = static_cast<std::size_t>(index.column() - kFirstTask);
  if (at < l.tasks.size() || at - l.tasks.size() >= l.offers.size()) return std::nullopt;
  return l.offers[at - l.tasks.size()];
}

QString EntryModel::typed(const QModelIndex& index) const {
  const auto column = cellAt(index);
  return column ? text(line(index.row()).at(*column)) : QString();
}

QString EntryModel::whyNot(const QModelIndex& index, const QString& typedText) const {
  auto column = cellAt(index);
  // Where the line has no such cell the sentence says so.
  if (!column) column = entryColumn(index.column());
  if (!column) return {};
  EntryLine trial = line(index.row());
  trial.at(*column) = typedText.toStdString();
  const auto may = session::checkCell(m_hub.season(), m_sheet, trial, *column);
  return may ? QString() : adapt::words(may.failure());
}

bool EntryModel::open(const QModelIndex& index) const {
  if (!index.isValid()) return false;
  if (task(index) || boost(index)) return true;
  return cellAt(index) && !line(index.row()).entered;
}

Qt::ItemFlags EntryModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (!open(index)) return flags;
  return flags | (cellAt(index) ? Qt::ItemIsEditable : Qt::ItemIsUserCheckable);
}

QString EntryModel::cautionOf(const EntryLine& l, EntryColumn column) const {
  if (column == EntryColumn::Sick && QString::fromStdString(l.at(column)).toLower() == u"y") {
    return tr("Sick at %1: the bee inspector decides what it is. Until then nothing in or out: no "
              "bees, combs, honey, tools.")
        .arg(text(l.name()));
  }
  const auto answers = [&](EntryColumn which, QStringView keys) {
    const QString given = text(l.at(which)).toLower();
    return given.isEmpty() || keys.contains(given);
  };
  if (column == EntryColumn::Combs && !l.at(column).empty() && answers(column, u"s") &&
      answers(EntryColumn::Cause, u"u")) {
    return tr("Cause not known at %1: keep the stored combs apart, they go into no other hive.")
        .arg(text(l.name()));
  }
  if (column == EntryColumn::Cause && l.foundDead() && l.at(column).empty()) {
    return tr("%1 found dead: close its entrance, against robbing. Type the cause.")
        .arg(text(l.name()));
  }
  if (column == EntryColumn::Hive) return numberHint(l);
  if (session::surprises(l, column)) {
    return tr("Line %1 (%2) surprises: %3 was typed, printed was \"%4\". Look at the paper again.")
        .arg(l.line)
        .arg(text(l.name()), text(l.at(column)), text(l.expected));
  }
  return {};
}

QString EntryModel::numberHint(const EntryLine& l) const {
  if (l.at(EntryColumn::Hive).empty()) return {};
  const auto known = session::checkNewcomer(m_hub.season(), m_sheet, l);
  return known ? QString() : adapt::words(known.failure());
}

bool EntryModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!open(index)) return false;
  EntryLine& l = m_sheet.lines.at(static_cast<std::size_t>(index.row()));
  QModelIndex last = index;
  if (const auto* t = task(index)) {
    if (role != Qt::CheckStateRole) return false;
    if (value.toInt() == Qt::Checked) {
      l.ticked.insert(t->task);
    } else {
      l.ticked.erase(t->task);
    }
    Q_EMIT said({});
  } else if (const auto at = boost(index)) {
    if (role != Qt::CheckStateRole) return false;
    auto& ticked = m_sheet.boosts.at(*at);
    ticked.done = value.toInt() == Qt::Checked;
    Q_EMIT said(
        ticked.done
            ? tr("When the sheet is recorded: accepted, and done on this day as it is printed.")
            : QString());
    // It stands on the line of the hive that gives too.
    Q_EMIT dataChanged(this->index(0, kFirstTask), this->index(rowCount() - 1, columnCount() - 1));
  } else {
    const auto column = cellAt(index);
    if (role != Qt::EditRole || !column) return false;
    const LineKind before = l.form();
    l.at(*column) = value.toString().trimmed().toStdString();
    // By the cell that was typed in: a colony found dead has another one there from now on.
    const auto may = session::checkCell(m_hub.season(), m_sheet, l, *column);
    const QString fault = may ? QString() : adapt::words(may.failure());
    if (l.form() != before) reshape(l, before);
    // A dead hive is asked for other things than a colony.
    const EntryColumn next = l.form() == before ? *column : *cellAt(index);
    Q_EMIT said(fault.isEmpty() ? cautionOf(l, next) : fault);
    if (l.form() != before) Q_EMIT reshaped(index.row());
  }
  // A point changes how the whole line looks.
  Q_EMIT dataChanged(last.siblingAtColumn(0), last.siblingAtColumn(columnCount() - 1));
  Q_EMIT edited();
  return true;
}

void EntryModel::reshape(EntryLine& l, LineKind before) {
  // What the line no longer asks for must not stay behind unseen; the free line stays.
  const bool dead = l.form() == LineKind::Dead;
  for (const EntryColumn column : session::columnsOf(before)) {
    const bool mark = dead && column == EntryColumn::Seams;
    if (column != EntryColumn::Note && !mark) l.at(column).clear();
  }
}

bool EntryModel::takeBackDeath(int row) {
  EntryLine& l = m_sheet.lines.at(static_cast<std::size_t>(row));
  if (!l.foundDead() || l.entered) return false;
  l.at(EntryColumn::Seams).clear();
  reshape(l, LineKind::Dead);
  Q_EMIT said({});
  Q_EMIT reshaped(row);
  Q_EMIT dataChanged(index(row, 0), index(row, columnCount() - 1));
  Q_EMIT edited();
  return true;
}

QVariant EntryModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  if (const auto column = cellAt(index)) return entryData(index, *column, role);
  if (entryColumn(index.column())) {
    // Nothing is printed there on this line.
    return role == Qt::BackgroundRole ? QVariant(shut()) : QVariant();
  }
  return index.column() >= kFirstTask ? taskData(index, role) : fixedData(index, role);
}

QVariant EntryModel::entryData(const QModelIndex& index, EntryColumn column, int role) const {
  const EntryLine& l = line(index.row());
  const QString written = text(l.at(column));
  const bool fault = !written.isEmpty() && !whyNot(index, written).isEmpty();
  const bool surprise = !fault && session::surprises(l, column);
  const bool caution = (column == EntryColumn::Sick && written.toLower() == u"y") ||
                       (column == EntryColumn::Combs && !cautionOf(l, column).isEmpty());
  const QString label = cellLabel(column);
  switch (role) {
    case Qt::DisplayRole:
    case Qt::AccessibleTextRole:
      return shownText(l, column, fault, surprise || caution);
    case Qt::EditRole:
      return written;
    case Qt::TextAlignmentRole:
      return takesOneKey(column) && label.isEmpty() ? QVariant(Qt::AlignCenter)
                                                    : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::ForegroundRole:
      if (fault || caution) return ink(sheet::Ink::Alarm);
      if (surprise) return ink(sheet::Ink::Warning);
      if (written.isEmpty() && !label.isEmpty()) return ink(sheet::Ink::FaintText);
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

QString EntryModel::shownText(const EntryLine& l, EntryColumn column, bool fault, bool mark) const {
  const QString written = text(l.at(column));
  QString shown = cellText(column, written);
  const QString label = cellLabel(column);
  if (!label.isEmpty() && column != EntryColumn::Hive) {
    //: a cell that says itself what it is for: "combs: burnt", or while it is empty "combs: …"
    shown = tr("%1: %2").arg(label, shown.isEmpty() ? QStringLiteral("\u2026") : shown);
  } else if (column == EntryColumn::Hive && written.isEmpty()) {
    shown = tr("%1 \u2026").arg(label);
  }
  if (fault) return tr("%1 ?").arg(shown);
  return mark ? tr("%1 !").arg(shown) : shown;
}

QString EntryModel::tickText(const QModelIndex& index) const {
  if (const auto* t = task(index)) return taskText(*t, adapt::Units::from(m_hub.settings()));
  const auto at = boost(index);
  return at ? boostText(m_sheet.boosts.at(*at).row, line(index.row()).hive) : QString();
}

QVariant EntryModel::taskData(const QModelIndex& index, int role) const {
  const auto* t = task(index);
  const auto at = boost(index);
  if (!t && !at) return role == Qt::BackgroundRole ? QVariant(shut()) : QVariant();
  const QString shown = tickText(index);
  switch (role) {
    case Qt::DisplayRole:
      return shown;
    case Qt::ToolTipRole: {
      if (t) return tr("%1. Space ticks it off.").arg(t->why.empty() ? shown : text(t->why));
      const auto& row = m_sheet.boosts.at(*at).row;
      const QString how =
          tr("Space ticks it as done the way it is printed: the boost is accepted "
             "and recorded on the day of the sheet.");
      return row.why.empty() ? how : QStringLiteral("%1\n%2").arg(text(row.why), how);
    }
    case Qt::CheckStateRole: {
      const bool done =
          t ? line(index.row()).ticked.contains(t->task) : m_sheet.boosts.at(*at).done;
      return done ? Qt::Checked : Qt::Unchecked;
    }
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
      const QString hive = text(l.name());
      const bool named = l.colony && l.colony->str() != l.hive.str();
      return named ? tr("%1 (%2)").arg(hive, text(l.colony->str())) : hive;
    }
    default:
      if (l.entered) return tr("entered before");
      if (l.foundDead()) return tr("found dead");
      if (l.kind == LineKind::Dead) return tr("dead hive");
      if (l.kind == LineKind::Empty) return tr("empty hive");
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
