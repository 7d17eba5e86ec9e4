// SPDX-License-Identifier: GPL-3.0-or-later
// What the place of yards does with several hives at once: turn, row, spread. Corrections of the
// drawing, each one step to undo.
#include <QAction>
#include <QLabel>
#include <QMenu>

#include "ui/yards/arrange.h"
#include "ui/yards/facing_dialog.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {

void YardsPlace::makeArrangeActions() {
  m_several = new QMenu(tr("Chosen hives on the &drawing"), this);
  m_several->setToolTipsVisible(true);
  // After the tab: keys that the map itself listens to.
  const auto make = [this](const QString& text, const char* name, int least, auto slot) {
    auto* action = m_several->addAction(text);
    action->setObjectName(QLatin1String(name));
    action->setData(least);
    connect(action, &QAction::triggered, this, slot);
  };
  make(tr("Choose &all hives") + QStringLiteral("\tCtrl+A"), "markAll", 0,
       [this] { m_map->markAll(); });
  m_several->addSeparator();
  make(tr("Turn &left by 15°") + QStringLiteral("\t["), "turnLeft", 1,
       [this] { turnChosen(-kTurnStepDeg); });
  make(tr("Turn &right by 15°") + QStringLiteral("\t]"), "turnRight", 1,
       [this] { turnChosen(kTurnStepDeg); });
  make(tr("&Turn entrances to…"), "turnTo", 1, [this] { askFacing(); });
  m_several->addSeparator();
  make(tr("Put in a row along &x"), "rowX", 2,
       [this] { arrangeAll(inRow(spotsOf(m_hub, m_map->chosenHives()), RowAlong::X)); });
  make(tr("Put in a row along &y"), "rowY", 2,
       [this] { arrangeAll(inRow(spotsOf(m_hub, m_map->chosenHives()), RowAlong::Y)); });
  make(tr("&Spread evenly"), "spread", 3,
       [this] { arrangeAll(spreadEvenly(spotsOf(m_hub, m_map->chosenHives()))); });
  connect(m_map, &YardMap::turnAsked, this, &YardsPlace::turnChosen);
  connect(m_map, &YardMap::arrangedAll, this, &YardsPlace::arrangeAll);
  connect(m_map, &YardMap::markedChanged, this, [this] {
    refreshHead();
    refreshArrangeActions();
  });
}

QString YardsPlace::whyNoArrange(int least) const {
  if (!m_hub.isOpen() || !m_hub.selection().yard) return tr("Choose a yard first.");
  if (least == 0) return {};
  if (!m_hub.showsToday()) return tr("Another day is shown. Go back to today to arrange hives.");
  if (!m_map->arranging()) return tr("Switch Arrange on first: it corrects the drawing.");
  const auto chosen = static_cast<int>(m_map->chosenHives().size());
  if (chosen >= least) return {};
  return least == 1 ? tr("Choose a hive first.")
                    : tr("Choose at least %1 hives: Shift and click, or draw a frame round them.")
                          .arg(least);
}

void YardsPlace::refreshArrangeActions() {
  for (auto* action : m_several->actions()) {
    if (action->isSeparator()) continue;
    const QString why = whyNoArrange(action->data().toInt());
    action->setEnabled(why.isEmpty());
    action->setToolTip(why);
    action->setStatusTip(why);
  }
}

void YardsPlace::arrangeAll(const std::vector<session::Spot>& spots) {
  const auto yard = m_hub.selection().yard;
  if (spots.empty() || !yard || !m_map->mayArrange()) return;
  m_hub.execute(session::arrange(offTheirStands(m_hub.season(), *yard, spots)), this);
}

void YardsPlace::turnChosen(double degrees) {
  const QString why = whyNoArrange(1);
  if (!why.isEmpty()) {
    m_hint->setText(why);
    return;
  }
  const auto spots = spotsOf(m_hub, m_map->chosenHives());
  const auto turned = turnedBy(spots, degrees);
  if (!turned.empty() && !m_hub.execute(session::arrange(turned), this)) return;
  const auto left = static_cast<int>(spots.size() - turned.size());
  if (left > 0) {
    m_hint->setText(
        tr("The entrance of %n chosen hives is not recorded, so they are not turned. "
           "Say where they face with “Turn entrances to”.",
           nullptr, left));
  }
}

void YardsPlace::askFacing() {
  const auto spots = spotsOf(m_hub, m_map->chosenHives());
  if (spots.empty() || !m_map->mayArrange()) return;
  FacingDialog dialog(m_hub, spots, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

}  // namespace outyard::yards
