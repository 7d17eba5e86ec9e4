// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_list.h"

#include <QHelpEvent>
#include <QItemSelectionModel>
#include <QScrollBar>
#include <QStandardItem>
#include <QStandardItemModel>
#include <QStyle>

#include "ui/widgets/session_model.h"

namespace outyard::desk {
namespace {

constexpr int kRowRole = Qt::UserRole + 1;

/// The same thing before and after the lists were made anew.
QString idOf(const Row& row) {
  QStringList parts{QString::number(static_cast<int>(row.kind))};
  parts << (row.yard ? QString::fromStdString(row.yard->str()) : QString());
  parts << (row.hive ? QString::fromStdString(row.hive->str()) : QString());
  if (row.kind != Row::Kind::Yard) parts << row.lead << row.title;
  return parts.join(u'\n');
}

}  // namespace

DeskList::DeskList(widgets::SeasonHub& hub, const QString& name, const QString& accessible,
                   QWidget* parent)
    : QTreeView(parent),
      m_hub(hub),
      m_model(new QStandardItemModel(this)),
      m_delegate(new DeskDelegate(hub, *this)) {
  setObjectName(name);
  setAccessibleName(accessible);
  m_model->setColumnCount(1);
  setModel(m_model);
  setItemDelegate(m_delegate);
  setHeaderHidden(true);
  setRootIsDecorated(false);
  setEditTriggers(NoEditTriggers);
  setExpandsOnDoubleClick(false);
  setUniformRowHeights(false);
  setVerticalScrollMode(ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);  // the width that words wrap at stays
  setTabKeyNavigation(false);
  setIndentation(fontMetrics().height());
  setFrameShape(StyledPanel);
  // The delegate shows what is chosen; the style would fill the room before a row as well.
  QPalette own;
  own.setColor(QPalette::Highlight, Qt::transparent);
  setPalette(own);
  connect(this, &QTreeView::activated, this,
          [this](const QModelIndex& index) { Q_EMIT opened(rowOf(index)); });
  connect(selectionModel(), &QItemSelectionModel::selectionChanged, this, &DeskList::chosenChanged);
}

const Row& DeskList::rowOf(const QModelIndex& index) {
  static const Row kNone;
  const auto* row = static_cast<const Row*>(index.data(kRowRole).value<const void*>());
  return row ? *row : kNone;
}

namespace {

/// Keeps its row itself: a variant that is copied at every paint would copy all its words.
class RowItem : public QStandardItem {
 public:
  explicit RowItem(const Row& row) : m_row(row) {
    setText(row.spoken);
    setEditable(false);
  }
  [[nodiscard]] QVariant data(int role) const override {
    if (role == kRowRole) return QVariant::fromValue<const void*>(&m_row);
    if (role == Qt::ToolTipRole) return m_row.toolTip;
    return QStandardItem::data(role);
  }

 private:
  Row m_row;
};

}  // namespace

QStandardItem* DeskList::itemOf(const Row& row) const {
  return new RowItem(row);
}

void DeskList::setRows(Facts facts, const std::vector<Branch>& rows) {
  // What is open, chosen and looked at stays, as far as it is still there.
  std::set<QString> open, chosen;
  QString current;
  const bool first = m_model->rowCount() == 0;
  for (int i = 0; i < m_model->rowCount(); ++i) {
    const auto index = m_model->index(i, 0);
    if (isExpanded(index)) open.insert(idOf(rowOf(index)));
  }
  for (const auto& index : selectionModel()->selectedIndexes()) chosen.insert(idOf(rowOf(index)));
  // Who stands at the top stays there, whatever comes to stand first.
  const bool atTop = !currentIndex().parent().isValid() && currentIndex().row() <= 0;
  if (currentIndex().isValid() && !atTop) current = idOf(rowOf(currentIndex()));
  const int scrolled = verticalScrollBar()->value();
  setAutoScroll(false);
  {
    const QSignalBlocker quiet(selectionModel());
    m_model->removeRows(0, m_model->rowCount());
    m_facts = std::move(facts);
    m_delegate->forgetMarks();
    for (const auto& [row, below] : rows) {
      auto* item = itemOf(row);
      for (const auto& each : below) item->appendRow(itemOf(each));
      m_model->appendRow(item);
    }
  }
  const bool alone = m_hub.season().table<apiary::Yard>().size() == 1;
  QItemSelection again;
  QModelIndex at;
  const auto take = [&](const QModelIndex& index) {
    const QString id = idOf(rowOf(index));
    if (chosen.contains(id)) again.select(index, index);
    if (id == current) at = index;
  };
  for (int i = 0; i < m_model->rowCount(); ++i) {
    const auto index = m_model->index(i, 0);
    // At first all yards are to be seen at a glance; one alone is open.
    if (open.contains(idOf(rowOf(index))) || (first && alone)) setExpanded(index, true);
    take(index);
    for (int k = 0; k < m_model->rowCount(index); ++k) take(m_model->index(k, 0, index));
  }
  if (!at.isValid() && m_model->rowCount() > 0) at = m_model->index(0, 0);
  selectionModel()->setCurrentIndex(at, QItemSelectionModel::NoUpdate);
  selectionModel()->select(again, QItemSelectionModel::ClearAndSelect);
  executeDelayedItemsLayout();
  verticalScrollBar()->setValue(scrolled);
  setAutoScroll(true);
  viewport()->update();
  Q_EMIT chosenChanged();
}

void DeskList::setFlat(Facts facts, const std::vector<Row>& rows) {
  std::vector<Branch> branches;
  for (const auto& row : rows) branches.push_back({row, {}});
  setRows(std::move(facts), branches);
}

void DeskList::clear() {
  m_model->removeRows(0, m_model->rowCount());
  m_facts.reset();
}

std::vector<Row> DeskList::chosen() const {
  std::vector<Row> out;
  const auto* selected = selectionModel();
  for (int i = 0; i < m_model->rowCount(); ++i) {
    const auto index = m_model->index(i, 0);
    if (selected->isSelected(index)) out.push_back(rowOf(index));
    for (int k = 0; k < m_model->rowCount(index); ++k) {
      const auto below = m_model->index(k, 0, index);
      if (selected->isSelected(below)) out.push_back(rowOf(below));
    }
  }
  return out;
}

int DeskList::wholeHeight() const {
  int height = 2 * frameWidth();
  QStyleOptionViewItem option;
  option.font = font();
  for (int i = 0; i < m_model->rowCount(); ++i) {
    height += m_delegate->sizeHint(option, m_model->index(i, 0)).height();
  }
  return height;
}

void DeskList::resizeEvent(QResizeEvent* event) {
  QTreeView::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) scheduleDelayedItemsLayout();
}

void DeskList::changeEvent(QEvent* event) {
  QTreeView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
    setIndentation(fontMetrics().height());
    m_delegate->forgetMarks();
    scheduleDelayedItemsLayout();
  }
}

void DeskList::drawBranches(QPainter* painter, const QRect& rect, const QModelIndex& index) const {
  // Only the triangle of a yard: lines between rows say nothing here.
  if (!rootIsDecorated() || index.parent().isValid() || !m_model->hasChildren(index)) return;
  QStyleOption option;
  option.initFrom(this);
  option.state |= QStyle::State_Children;
  if (isExpanded(index)) option.state |= QStyle::State_Open;
  const int side = fontMetrics().height();
  option.rect = QRect(rect.right() - indentation() + (indentation() - side) / 2 + 1, rect.top() + 6,
                      side, side);
  const auto arrow =
      isExpanded(index) ? QStyle::PE_IndicatorArrowDown : QStyle::PE_IndicatorArrowRight;
  style()->drawPrimitive(arrow, &option, painter, this);
}

}  // namespace outyard::desk
