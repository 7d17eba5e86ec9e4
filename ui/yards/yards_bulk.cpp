// SPDX-License-Identifier: GPL-3.0-or-later
// One piece of work at several hives of the yard.
#include <QAction>
#include <QStackedWidget>

#include "ui/yards/bulk_dialog.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {

void YardsPlace::makeBulkActions() {
  m_bulk = new QAction(tr("For several hi&ves…"), this);
  m_bulk->setObjectName(QStringLiteral("bulk"));
  m_bulk->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_B));
  m_bulk->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  m_bulk->setToolTip(tr(
      "Boxes, supers, feed, treatment or wraps for the chosen hives or the whole yard (Ctrl+B)"));
  m_bulk->setStatusTip(m_bulk->toolTip());
  addAction(m_bulk);
  connect(m_bulk, &QAction::triggered, this, &YardsPlace::askBulk);
}

std::vector<base::HiveId> YardsPlace::chosenHives() const {
  return m_views->currentIndex() == 1 ? m_table->chosenHives() : m_map->chosenHives();
}

void YardsPlace::askBulk() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  BulkDialog dialog(m_hub, *yard, chosenHives(), this);
  if (!m_hub.dialogs().run(dialog)) return;
  if (auto command = dialog.command()) m_hub.execute(std::move(command), this);
}

}  // namespace outyard::yards
