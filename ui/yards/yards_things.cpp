// SPDX-License-Identifier: GPL-3.0-or-later
// What the place of yards does with stands and features: add, change, move and take away.
#include <QAction>
#include <QLabel>
#include <QMenu>

#include "ui/yards/thing_dialogs.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {

void YardsPlace::makeThingActions() {
  const auto make = [this](const QString& text, const char* name, auto slot) {
    auto* action = new QAction(text, this);
    action->setObjectName(QLatin1String(name));
    addAction(action);
    connect(action, &QAction::triggered, this, slot);
    return action;
  };
  m_addFeature = make(tr("Add &feature…"), "addFeature", [this] { addFeature(std::nullopt); });
  m_changeThing = make(tr("Change stand or feat&ure…"), "changeThing", [this] { askThing(false); });
  m_removeThing = make(tr("&Remove stand or feature…"), "removeThing", [this] { askThing(true); });
  m_nextThing = make(tr("Choose &next stand or feature") + QStringLiteral("\tS"), "nextThing",
                     [this] { m_map->chooseNextThing(); });
  connect(m_map, &YardMap::thingShifted, this, &YardsPlace::shiftThing);
  connect(m_map, &YardMap::thingChangeAsked, this, [this] {
    if (const auto thing = m_map->chosenThing()) changeThing(*thing);
  });
  connect(m_map, &YardMap::thingRemoveAsked, this, [this] {
    if (const auto thing = m_map->chosenThing()) m_hub.execute(removal(*thing), this);
  });
  connect(m_map, &YardMap::thingChosen, this, [this] { refreshHead(); });
}

void YardsPlace::refreshThingActions() {
  const auto yard = m_hub.selection().yard;
  const bool any = m_hub.isOpen() && yard;
  const bool things = any && !thingsOf(m_hub.season(), *yard).empty();
  m_addFeature->setEnabled(any);
  for (auto* action : {m_changeThing, m_removeThing}) {
    action->setEnabled(things);
    const QString why = things ? QString() : tr("No stand or feature is drawn in this yard.");
    action->setToolTip(why);
    action->setStatusTip(why);
  }
  const QString why = !things ? m_changeThing->toolTip()
                      : !m_map->mayArrange()
                          ? tr("Switch Arrange on first: it corrects the drawing.")
                          : QString();
  m_nextThing->setEnabled(why.isEmpty());
  m_nextThing->setToolTip(why);
  m_nextThing->setStatusTip(why);
}

void YardsPlace::addFeature(std::optional<QPointF> placeM) {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  FeatureDialog dialog(m_hub, *yard, placeM.value_or(freePlace()), this);
  runFeature(dialog);
}

void YardsPlace::runFeature(FeatureDialog& dialog) {
  if (!m_hub.dialogs().run(dialog)) return;
  const QString why = dialog.bringPicture();
  if (why.isEmpty()) {
    m_hub.execute(dialog.command(), this);
  } else {
    m_hub.dialogs().failure(this, dialog.windowTitle(), why);
  }
}

void YardsPlace::changeThing(const Thing& thing) {
  if (const auto* stand = std::get_if<apiary::Stand>(&thing)) {
    StandDialog dialog(m_hub, *stand, this);
    if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
    return;
  }
  FeatureDialog dialog(m_hub, std::get<apiary::Feature>(thing), this);
  runFeature(dialog);
}

void YardsPlace::askThing(bool remove) {
  const auto yard = m_hub.selection().yard;
  if (!yard || thingsOf(m_hub.season(), *yard).empty()) return;
  ThingDialog dialog(m_hub, *yard, remove ? ThingDialog::For::Remove : ThingDialog::For::Change,
                     m_map->chosenThing(), this);
  if (!m_hub.dialogs().run(dialog)) return;
  if (remove) {
    m_hub.execute(dialog.command(), this);
  } else {
    changeThing(dialog.thing());
  }
}

void YardsPlace::shiftThing(const ThingId& id, QPointF byM, double turnDeg) {
  const auto thing = findThing(m_hub.season(), id);
  if (!thing) return;
  if (auto command = shifted(*thing, byM, turnDeg)) {
    m_hub.execute(std::move(command), this);
  } else {
    m_hint->setText(tr("Only stands and pallets turn."));
  }
}

QString YardsPlace::thingHint() const {
  const auto thing = m_map->chosenThing();
  if (!thing || !m_map->arranging()) return {};
  const QString name = thingText(*thing);
  return std::holds_alternative<apiary::Stand>(*thing)
             ? tr("Chosen: %1. Shift and an arrow key shift it by 10 cm, [ and ] turn it, its "
                  "hives "
                  "go along; Return changes it, Del removes it, S goes on to the next.")
                   .arg(name)
             : tr("Chosen: %1. Shift and an arrow key shift it by 10 cm; Return changes it, Del "
                  "removes it, S goes on to the next.")
                   .arg(name);
}

void YardsPlace::addThingsAt(QMenu& menu, const QPoint& globalPoint) {
  const auto thing = m_map->thingAt(m_map->viewport()->mapFromGlobal(globalPoint));
  if (!thing) return;
  connect(menu.addAction(tr("Change %1…").arg(thingText(*thing))), &QAction::triggered, this,
          [this, thing] { changeThing(*thing); });
  connect(menu.addAction(tr("Remove %1").arg(thingText(*thing))), &QAction::triggered, this,
          [this, thing] { m_hub.execute(removal(*thing), this); });
  menu.addSeparator();
}

}  // namespace outyard::yards
