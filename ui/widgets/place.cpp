// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/place.h"

#include <QAction>

namespace outyard::widgets {

QAction* Place::make(const QString& name, const QString& text, const QKeySequence& keys,
                     const std::function<void()>& slot) {
  auto* action = new QAction(text, this);
  action->setObjectName(name);
  action->setShortcut(keys);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  connect(action, &QAction::triggered, this, slot);
  addAction(action);
  return action;
}

}  // namespace outyard::widgets
