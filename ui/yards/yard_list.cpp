// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/yard_list.h"
#include "ui/widgets/list_file.h"

#include <QHeaderView>
#include <QLineEdit>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace outyard::yards {
namespace {

enum Column { Name, Live, Small, Dead, ColumnCount };
constexpr int kIdRole = Qt::UserRole;

}  // namespace

YardList::YardList(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent), m_hub(hub), m_filter(new QLineEdit), m_tree(new QTreeWidget) {
  m_filter->setObjectName(QStringLiteral("yardFilter"));
  m_filter->setPlaceholderText(tr("Filter yards"));
  m_filter->setAccessibleName(tr("Filter yards by name"));
  m_filter->setClearButtonEnabled(true);
  m_tree->setObjectName(QStringLiteral("yardList"));
  m_tree->setAccessibleName(tr("Yards"));
  m_tree->setColumnCount(ColumnCount);
  m_tree->setHeaderLabels({tr("Yard"), tr("Live"), tr("Small"), tr("Dead")});
  m_tree->headerItem()->setToolTip(Live, tr("Hives with a living colony"));
  m_tree->headerItem()->setToolTip(Small, tr("Colonies that are small but sound"));
  m_tree->headerItem()->setToolTip(Dead, tr("Hives whose colony died"));
  m_tree->setRootIsDecorated(false);
  m_tree->setUniformRowHeights(true);
  m_tree->setAllColumnsShowFocus(true);
  m_tree->header()->setStretchLastSection(false);
  m_tree->header()->setMinimumSectionSize(36);
  m_tree->header()->setSectionResizeMode(Name, QHeaderView::Stretch);
  for (const int c : {Live, Small, Dead}) {
    m_tree->header()->setSectionResizeMode(c, QHeaderView::ResizeToContents);
    m_tree->headerItem()->setTextAlignment(c, Qt::AlignRight | Qt::AlignVCenter);
  }
  new widgets::ListFile(m_hub, m_tree, [] { return tr("Yards"); });
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(6);
  layout->addWidget(m_filter);
  layout->addWidget(m_tree, 1);
  connect(m_filter, &QLineEdit::textChanged, this, [this] { applyFilter(); });
  connect(m_tree, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* now) {
    if (!m_following && now) m_hub.selectYard(yardOf(*now));
  });
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, [this] { showSelection(); });
}

base::YardId YardList::yardOf(const QTreeWidgetItem& item) {
  return base::YardId{item.data(Name, kIdRole).toString().toStdString()};
}

void YardList::refresh() {
  m_following = true;
  m_tree->clear();
  for (const auto& [key, yard] : m_hub.season().table<apiary::Yard>()) {
    int live = 0, small = 0, dead = 0;
    for (const auto& hive : m_hub.hives(yard.yard)) {
      live += hive.status == apiary::HiveStatus::Live ? 1 : 0;
      dead += hive.status == apiary::HiveStatus::Dead ? 1 : 0;
    }
    for (const auto& judgement : m_hub.judgements(yard.yard)) {
      small += judgement.verdict == apiary::VerdictCode::SmallSound ? 1 : 0;
    }
    auto* item = new QTreeWidgetItem(m_tree);
    const QString name = QString::fromStdString(yard.name.empty() ? yard.yard.str() : yard.name);
    item->setText(Name, name);
    item->setToolTip(Name, QString::fromStdString(yard.access));
    item->setData(Name, kIdRole, QString::fromStdString(yard.yard.str()));
    item->setSizeHint(Name, QSize(0, m_tree->fontMetrics().height() + 9));
    item->setText(Live, QString::number(live));
    item->setText(Small, small ? QString::number(small) : QString());
    item->setText(Dead, dead ? QString::number(dead) : QString());
    for (const int c : {Live, Small, Dead}) {
      item->setTextAlignment(c, Qt::AlignRight | Qt::AlignVCenter);
    }
    item->setData(
        Name, Qt::AccessibleTextRole,
        tr("%1: %2 live, %3 small but sound, %4 dead").arg(name).arg(live).arg(small).arg(dead));
  }
  m_following = false;
  applyFilter();
  showSelection();
}

void YardList::applyFilter() {
  const QString wanted = m_filter->text().trimmed();
  for (int i = 0; i < m_tree->topLevelItemCount(); ++i) {
    auto* item = m_tree->topLevelItem(i);
    const bool fits = item->text(Name).contains(wanted, Qt::CaseInsensitive) ||
                      item->data(Name, kIdRole).toString().contains(wanted, Qt::CaseInsensitive);
    item->setHidden(!fits);
  }
}

void YardList::showSelection() {
  m_following = true;
  const auto yard = m_hub.selection().yard;
  m_tree->setCurrentItem(nullptr);
  for (int i = 0; i < m_tree->topLevelItemCount(); ++i) {
    auto* item = m_tree->topLevelItem(i);
    if (yard && yardOf(*item) == *yard) m_tree->setCurrentItem(item);
  }
  m_following = false;
}

std::optional<base::YardId> YardList::yardAt(const QPoint& globalPoint) const {
  const auto* item = m_tree->itemAt(m_tree->viewport()->mapFromGlobal(globalPoint));
  if (!item || !m_tree->viewport()->rect().contains(m_tree->viewport()->mapFromGlobal(globalPoint)))
    return std::nullopt;
  return yardOf(*item);
}

}  // namespace outyard::yards
