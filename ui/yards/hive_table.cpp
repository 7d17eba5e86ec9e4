// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/hive_table.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QFontMetrics>
#include <QHeaderView>
#include <QKeyEvent>
#include <algorithm>

#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/mark_painter.h"
#include "ui/yards/hive_filter.h"

namespace outyard::yards {
namespace {

constexpr int kMarkPx = 22;

/// One text from those of all colonies of a hive, the main one first.
QString joined(const widgets::HiveFacts& facts, QString widgets::ColonyFacts::*field) {
  QStringList parts;
  for (const auto& colony : facts.colonies) {
    const QString& text = colony.*field;
    parts << (text.isEmpty() ? QStringLiteral("–") : text);
  }
  return parts.join(QStringLiteral(" / "));
}

}  // namespace

HiveTableModel::HiveTableModel(widgets::SeasonHub& hub, QObject* parent)
    : QAbstractTableModel(parent), m_hub(hub) {}

void HiveTableModel::refresh() {
  beginResetModel();
  m_lines.clear();
  if (const auto yard = m_hub.selection().yard) {
    const auto& judgements = m_hub.judgements(*yard);
    const auto expected = m_hub.forecasts().expectedIn(*yard, m_hub.shownDate());
    const auto seenUpTo = std::min(m_hub.shownDate(), m_hub.workingDate());
    for (const auto& hive : m_hub.hives(*yard)) {
      Line line;
      line.hive = hive.hive;
      line.facts = widgets::hiveFacts(m_hub, hive);
      auto mark = sheet::markInput(m_hub.season(), hive, judgements, seenUpTo);
      sheet::addExpected(mark, hive, expected);
      if (mark.expectedSeams) line.expectedOrder = *mark.expectedSeams;
      line.mark =
          widgets::markPixmap(mark, kMarkPx, QApplication::palette(), qApp->devicePixelRatio());
      line.boxesOrder = static_cast<int>(hive.boxes.size());
      for (const auto& judgement : m_hub.judgementsOf(hive.hive)) {
        const auto verdict = judgement.verdict;
        line.weak = line.weak || verdict == apiary::VerdictCode::SmallSound ||
                    verdict == apiary::VerdictCode::TooSmall;
        if (!judgement.strength || line.beesOrder >= 0) continue;
        if (judgement.strength->bees) line.beesOrder = judgement.strength->bees->median;
        if (judgement.strength->broodCells) {
          line.broodOrder = judgement.strength->broodCells->median;
        }
        if (judgement.strength->honeyKg) line.storesOrder = judgement.strength->honeyKg->median;
        line.seamsOrder = judgement.strength->seams.value_or(-1);
      }
      for (const auto& colony : hive.colonies) {
        if (colony.lastInspection) {
          line.lookOrder = std::max(line.lookOrder, colony.lastInspection->date.days());
        }
      }
      m_lines.push_back(std::move(line));
    }
  }
  endResetModel();
}

std::optional<base::HiveId> HiveTableModel::hiveAt(int row) const {
  if (row < 0 || row >= static_cast<int>(m_lines.size())) return std::nullopt;
  return m_lines[static_cast<std::size_t>(row)].hive;
}

int HiveTableModel::rowOf(const base::HiveId& hive) const {
  const auto it = std::find_if(m_lines.begin(), m_lines.end(),
                               [&](const Line& line) { return line.hive == hive; });
  return it == m_lines.end() ? -1 : static_cast<int>(it - m_lines.begin());
}

int HiveTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int HiveTableModel::columnCount(const QModelIndex& /*parent*/) const {
  return ColumnCount;
}

QString HiveTableModel::text(const Line& line, int column) const {
  using widgets::ColonyFacts;
  switch (column) {
    case Number:
      return line.facts.number;
    case Letters:
      return line.facts.letters;
    case Status:
      return line.facts.status;
    case Judgement:
      return line.facts.colonies.empty() ? line.facts.status
                                         : joined(line.facts, &ColonyFacts::judgement);
    case Seams:
      return joined(line.facts, &ColonyFacts::seams);
    case Expected:
      return joined(line.facts, &ColonyFacts::expected);
    case Bees:
      return joined(line.facts, &ColonyFacts::bees);
    case Brood:
      return joined(line.facts, &ColonyFacts::brood);
    case Stores:
      return joined(line.facts, &ColonyFacts::stores);
    case Queen:
      return joined(line.facts, &ColonyFacts::queen);
    case LastLook:
      return joined(line.facts, &ColonyFacts::lastLook);
    case Boxes:
      return line.facts.boxes;
    case Stand:
      return line.facts.stand;
    case Tasks:
      return line.facts.tasks.isEmpty() ? QString() : line.facts.tasks.first();
    default:
      return {};
  }
}

QVariant HiveTableModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= static_cast<int>(m_lines.size())) return {};
  const Line& line = m_lines[static_cast<std::size_t>(index.row())];
  switch (role) {
    case Qt::DisplayRole:
      return text(line, index.column());
    case Qt::DecorationRole:
      if (index.column() == Number) return line.mark;
      return {};
    case Qt::ToolTipRole:
      if (index.column() == Letters) return line.facts.meanings;
      if (index.column() == Tasks) return line.facts.tasks.join(u'\n');
      return text(line, index.column());
    case Qt::AccessibleTextRole:
      return index.column() == Letters ? line.facts.meanings : text(line, index.column());
    case kSortRole:
      if (index.column() == Bees) return line.beesOrder;
      if (index.column() == Brood) return line.broodOrder;
      if (index.column() == Boxes) return line.boxesOrder;
      if (index.column() == Seams) return line.seamsOrder;
      if (index.column() == Expected) return line.expectedOrder;
      if (index.column() == Stores) return line.storesOrder;
      if (index.column() == LastLook) return line.lookOrder;
      return text(line, index.column());
    case kWordsRole:
      return words(line);
    default:
      return {};
  }
}

QString HiveTableModel::words(const Line& line) const {
  QStringList all;
  for (int column = 0; column < ColumnCount; ++column) all << text(line, column);
  all << line.facts.meanings << line.facts.tasks;
  // What people call a colony that is too small, whatever the judgement says of its cause.
  if (line.weak) all << tr("weak");
  return all.join(u'\n');
}

QVariant HiveTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case Number:
      return tr("Hive");
    case Letters:
      return tr("Letters");
    case Status:
      return tr("Status");
    case Judgement:
      return tr("Judgement");
    case Seams:
      return tr("Seams");
    case Expected:
      return tr("Expected");
    case Bees:
      return tr("Bees");
    case Brood:
      return tr("Brood");
    case Stores:
      return tr("Stores");
    case Queen:
      return tr("Queen");
    case LastLook:
      return tr("Last look");
    case Boxes:
      return tr("Boxes");
    case Stand:
      return tr("Stand");
    case Tasks:
      return tr("Next task");
    default:
      return {};
  }
}

HiveTable::HiveTable(widgets::SeasonHub& hub, QWidget* parent)
    : QTableView(parent),
      m_hub(hub),
      m_model(new HiveTableModel(hub, this)),
      m_filter(new HiveFilter(HiveTableModel::kWordsRole, HiveTableModel::kSortRole, this)) {
  setObjectName(QStringLiteral("hiveTable"));
  setAccessibleName(tr("Hives of the yard"));
  m_filter->setSourceModel(m_model);
  setModel(m_filter);
  setSelectionBehavior(SelectRows);
  setSelectionMode(ExtendedSelection);
  setSortingEnabled(true);
  sortByColumn(HiveTableModel::Number, Qt::AscendingOrder);
  setAlternatingRowColors(true);
  setWordWrap(false);
  setShowGrid(false);
  setTabKeyNavigation(false);
  setIconSize({40, kMarkPx});
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(28);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& now) {
            if (m_following) return;
            if (const auto hive = hiveAt(now)) m_hub.selectHive(*hive);
          });
  connect(this, &QTableView::doubleClicked, this, [this](const QModelIndex& index) {
    if (const auto hive = hiveAt(index)) Q_EMIT hiveOpened(*hive);
  });
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, [this] { showSelection(); });
}

std::optional<base::HiveId> HiveTable::hiveAt(const QModelIndex& index) const {
  return m_model->hiveAt(m_filter->mapToSource(index).row());
}

std::vector<base::HiveId> HiveTable::chosenHives() const {
  std::vector<base::HiveId> out;
  auto rows = selectionModel()->selectedRows();
  std::sort(rows.begin(), rows.end(),
            [](const auto& a, const auto& b) { return a.row() < b.row(); });
  for (const auto& row : rows) {
    if (const auto hive = hiveAt(row)) out.push_back(*hive);
  }
  return out;
}

void HiveTable::setFilter(const QString& words) {
  m_following = true;
  m_filter->setWords(words);
  m_following = false;
  showSelection();
}

void HiveTable::refresh() {
  m_following = true;
  m_model->refresh();
  m_following = false;
  resizeColumnsToContents();
  constexpr int kMostPx = 260;
  for (int c = 0; c < HiveTableModel::ColumnCount; ++c) {
    setColumnWidth(c, std::min(columnWidth(c) + 4, kMostPx));
  }
  showSelection();
}

void HiveTable::showSelection() {
  const auto hive = m_hub.selection().hive;
  const int row = hive ? m_model->rowOf(*hive) : -1;
  const QModelIndex at = row < 0 ? QModelIndex() : m_filter->mapFromSource(m_model->index(row, 0));
  m_following = true;
  if (!at.isValid()) {
    clearSelection();
  } else if (at.row() != currentIndex().row() || !selectionModel()->isRowSelected(at.row(), {})) {
    setCurrentIndex(at);
  }
  m_following = false;
}

void HiveTable::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    if (const auto hive = hiveAt(currentIndex())) Q_EMIT hiveOpened(*hive);
    return;
  }
  QTableView::keyPressEvent(event);
}

void HiveTable::contextMenuEvent(QContextMenuEvent* event) {
  const QModelIndex index = event->reason() == QContextMenuEvent::Keyboard
                                ? currentIndex()
                                : indexAt(viewport()->mapFrom(this, event->pos()));
  Q_EMIT menuAsked(hiveAt(index), event->globalPos());
}

}  // namespace outyard::yards
