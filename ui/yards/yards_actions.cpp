// SPDX-License-Identifier: GPL-3.0-or-later
// What the place of yards does: its actions, drags and dialogs.
#include <QAction>
#include <QActionGroup>
#include <QLabel>
#include <QMenu>
#include <algorithm>

#include "core/session/task_done.h"
#include "ui/charts/group_course.h"
#include "ui/widgets/task_actions.h"
#include "ui/widgets/theme.h"
#include "ui/yards/arrange.h"
#include "ui/yards/flows_dialog.h"
#include "ui/yards/hive_panel.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/legend.h"
#include "ui/yards/new_dialogs.h"
#include "ui/yards/weather_dialog.h"
#include "ui/yards/yard_list.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {

void YardsPlace::makeActions() {
  const auto make = [this](const QString& text, const QKeySequence& keys, auto slot) {
    auto* action = new QAction(text, this);
    if (!keys.isEmpty()) {
      action->setShortcut(keys);
      action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
      action->setToolTip(QStringLiteral("%1 (%2)").arg(QString(text).remove(u'&'),
                                                       keys.toString(QKeySequence::NativeText)));
    }
    addAction(action);
    connect(action, &QAction::triggered, this, slot);
    return action;
  };
  auto* views = new QActionGroup(this);
  m_asMap = make(tr("&Map"), {}, [this] { showAsTable(false); });
  m_asTable = make(tr("&Table"), QKeySequence(Qt::CTRL | Qt::Key_T),
                   [this] { showAsTable(m_asTable->isChecked()); });
  for (auto* action : {m_asMap, m_asTable}) {
    action->setCheckable(true);
    views->addAction(action);
  }
  m_zoomIn = make(tr("Zoom &in"), QKeySequence::ZoomIn, [this] { m_map->zoomBy(1.25); });
  m_zoomOut = make(tr("Zoom &out"), QKeySequence::ZoomOut, [this] { m_map->zoomBy(0.8); });
  m_fit =
      make(tr("Show &whole yard"), QKeySequence(Qt::CTRL | Qt::Key_0), [this] { m_map->fit(); });
  m_zoomIn->setToolTip(tr("Zoom in (+)"));
  m_zoomOut->setToolTip(tr("Zoom out (-)"));
  m_fit->setToolTip(tr("Show the whole yard (0)"));
  m_showLegend = make(tr("&Legend"), QKeySequence(Qt::CTRL | Qt::Key_L),
                      [this](bool on) { m_legend->setVisible(on); });
  m_showLegend->setCheckable(true);
  m_arrange = make(tr("&Arrange"), QKeySequence(Qt::CTRL | Qt::Key_R), [this](bool on) {
    m_map->setArranging(on);
    refreshHead();
    refreshArrangeActions();
    refreshThingActions();
  });
  m_arrange->setCheckable(true);
  m_arrange->setToolTip(tr("Dragging corrects the drawing instead of recording a move (Ctrl+R)"));

  m_openHive = make(tr("Open &hive"), {}, [this] { Q_EMIT openPlace(QStringLiteral("hive")); });
  m_inspect = make(tr("&Enter inspection"), QKeySequence(Qt::CTRL | Qt::Key_E), [this] {
    Q_EMIT openPlace(QStringLiteral("hive"), QStringLiteral("inspection"));
  });
  m_setOver = make(tr("&Set over…"), {}, [this] {
    if (const auto hive = m_hub.selection().hive) askJoint(*hive, std::nullopt, Joint::SetOver);
  });
  m_unite = make(tr("&Unite…"), {}, [this] {
    if (const auto hive = m_hub.selection().hive) askJoint(*hive, std::nullopt, Joint::Unite);
  });
  m_swap = make(tr("S&wap stands…"), {}, [this] {
    if (const auto hive = m_hub.selection().hive) askJoint(*hive, std::nullopt, Joint::Swap);
  });
  m_moveHive = make(tr("Mo&ve…"), QKeySequence(Qt::CTRL | Qt::Key_M), [this] {
    const auto hives = m_map->chosenHives();
    if (hives.size() > 1) {
      askSeveral(spotsOf(m_hub, hives), *m_hub.selection().yard);
    } else {
      askSpot(SpotDialog::Kind::Move);
    }
  });
  m_correct = make(tr("&Correct its place on the drawing…"), {},
                   [this] { askSpot(SpotDialog::Kind::Correct); });
  m_addHive = make(tr("Add &hive…"), {}, [this] { addHive(std::nullopt); });
  m_addStand = make(tr("Add s&tand…"), {}, [this] { addStand(std::nullopt); });
  m_addYard = make(tr("Add &yard…"), {}, [this] { addYard(); });
  m_changeYard = make(tr("&Change yard…"), {}, [this] { changeYard(); });
  m_flows = make(tr("&Flows of this yard…"), {}, [this] { askFlows(); });
  m_weather = make(tr("Weat&her of this yard…"), {}, [this] { askWeather(); });
  m_course =
      make(tr("Co&urse of the yard…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), [this] {
        charts::GroupCourseDialog dialog(m_hub, this);
        if (m_hub.dialogs().run(dialog)) Q_EMIT openPlace(QStringLiteral("hive"));
      });
  m_course->setStatusTip(tr("Bees, brood, stores and mites expected: the sum, or each hive"));
}

void YardsPlace::connectMap() {
  m_map->setDropCheck([this](const base::HiveId& carried, const base::HiveId& target) {
    return whyNoJoint(m_hub, carried, target);
  });
  connect(m_map, &YardMap::hiveOpened, m_openHive, &QAction::trigger);
  connect(m_map, &YardMap::menuAsked, this,
          [this](const std::optional<base::HiveId>& hive, const QPoint& point) {
            showMenu(hive, m_map->viewport()->mapToGlobal(point),
                     hive ? std::nullopt : std::optional(m_map->metresAt(point)));
          });
  connect(m_map, &YardMap::arranged, this,
          [this](const session::Spot& spot) { m_hub.execute(session::arrange({spot}), this); });
  connect(m_map, &YardMap::carriedTo, this, [this](const session::Spot& spot) {
    if (const auto yard = m_hub.selection().yard) askMove(spot, *yard);
  });
  connect(m_map, &YardMap::droppedOn, this,
          [this](const base::HiveId& carried, const base::HiveId& target) {
            askJoint(carried, target, Joint::SetOver);
          });
  connect(m_map, &YardMap::droppedOutside, this,
          [this](const base::HiveId& hive, const QPoint& globalPoint) {
            const auto yard = m_list->yardAt(globalPoint);
            if (!yard || yard == m_hub.selection().yard) return;
            session::Spot spot;
            spot.hive = hive;
            spot.xM = spot.yM = 1;  // a corner of the other yard; the dialog has the fields
            askMove(spot, *yard);
          });
  connect(m_map, &YardMap::severalCarriedTo, this, [this](const std::vector<session::Spot>& spots) {
    if (const auto yard = m_hub.selection().yard) askSeveral(spots, *yard);
  });
  connect(m_map, &YardMap::severalDroppedOutside, this,
          [this](const std::vector<session::Spot>& spots, const QPoint& globalPoint) {
            const auto yard = m_list->yardAt(globalPoint);
            if (yard && yard != m_hub.selection().yard) askSeveral(spots, *yard);
          });
  connect(m_map, &YardMap::dragHint, this, [this](const QString& text) {
    if (text.isEmpty()) {
      refreshHead();
    } else {
      m_hint->setText(text);
    }
  });
  connect(m_table, &HiveTable::hiveOpened, m_openHive, &QAction::trigger);
  connect(m_table, &HiveTable::menuAsked, this,
          [this](const std::optional<base::HiveId>& hive, const QPoint& point) {
            showMenu(hive, point, std::nullopt);
          });
}

void YardsPlace::refreshActions() {
  const bool open = m_hub.isOpen();
  const bool yard = open && m_hub.selection().yard.has_value();
  const bool hive = yard && m_hub.selection().hive && m_hub.hive(*m_hub.selection().hive);
  m_openHive->setEnabled(hive);
  for (auto* action : {m_inspect, m_setOver, m_unite, m_swap, m_moveHive, m_correct}) {
    action->setEnabled(hive);
  }
  for (auto* action : {m_addHive, m_addStand, m_changeYard, m_course, m_flows, m_weather, m_bulk}) {
    action->setEnabled(yard);
  }
  m_addYard->setEnabled(open);
  m_arrange->setEnabled(yard);
  refreshArrangeActions();
  refreshThingActions();
  refreshToolActions();
  const auto icon = [this](QAction* action, const char* name) {
    action->setIcon(widgets::ownIcon(QLatin1String(name), palette()));
  };
  icon(m_zoomIn, "plus");
  icon(m_zoomOut, "minus");
  icon(m_fit, "fit");
  icon(m_arrange, "arrange");
}

void YardsPlace::showMenu(const std::optional<base::HiveId>& hive, const QPoint& globalPoint,
                          std::optional<QPointF> groundM) {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  if (hive) {
    menu->addActions({m_openHive, m_inspect});
    menu->addSeparator();
    menu->addActions({m_setOver, m_unite, m_swap});
    menu->addSeparator();
    menu->addActions({m_moveHive, m_correct, m_several->menuAction(), m_bulk});
    menu->addSeparator();
    addThingsAt(*menu, globalPoint);
  } else if (groundM) {
    connect(menu->addAction(tr("Add hive here…")), &QAction::triggered, this,
            [this, groundM] { addHive(groundM); });
    connect(menu->addAction(tr("Add stand here…")), &QAction::triggered, this,
            [this, groundM] { addStand(groundM); });
    connect(menu->addAction(tr("Add feature here…")), &QAction::triggered, this,
            [this, groundM] { addFeature(groundM); });
    menu->addSeparator();
    addThingsAt(*menu, globalPoint);
    menu->addActions({m_fit, m_arrange});
  }
  menu->popup(globalPoint);
}

void YardsPlace::askJoint(const base::HiveId& hive, std::optional<base::HiveId> target,
                          Joint joint) {
  JointDialog dialog(m_hub, hive, std::move(target), joint, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::begin(const QString& begin) {
  const auto id = widgets::taskOfBegin(begin);
  const auto* planned = id ? m_hub.season().find<apiary::Task>(id->str()) : nullptr;
  if (!planned || !planned->hive || !planned->otherHive) return;
  const apiary::Task task = *planned;
  const Joint joint = task.kind == "united"           ? Joint::Unite
                      : task.kind == "places_changed" ? Joint::Swap
                                                      : Joint::SetOver;
  // As in the event: for a union the hive that stays comes first.
  const bool unite = joint == Joint::Unite;
  JointDialog dialog(m_hub, unite ? *task.otherHive : *task.hive,
                     unite ? *task.hive : *task.otherHive, joint, this);
  if (!m_hub.dialogs().run(dialog)) return;
  if (dialog.date() > m_hub.workingDate()) {
    // Put off: the task that stands goes to that day, no second one is made.
    m_hub.execute(session::moveTasks({task.task}, dialog.date()), this);
  } else {
    m_hub.execute(session::forTask(task.task, dialog.date(), dialog.command()), this);
  }
}

void YardsPlace::askMove(session::Spot spot, const base::YardId& to) {
  SpotDialog dialog(m_hub, SpotDialog::Kind::Move, std::move(spot), to, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

std::optional<session::Spot> YardsPlace::chosenSpot() const {
  const auto chosen = m_hub.selection().hive;
  const auto* hive = chosen ? m_hub.hive(*chosen) : nullptr;
  if (!hive) return std::nullopt;
  session::Spot spot;
  spot.hive = hive->hive;
  spot.xM = hive->xM.value_or(0);
  spot.yM = hive->yM.value_or(0);
  spot.entranceDeg = hive->entranceDeg;
  spot.stand = hive->stand;
  return spot;
}

void YardsPlace::askSpot(SpotDialog::Kind kind) {
  const auto spot = chosenSpot();
  if (!spot) return;
  SpotDialog dialog(m_hub, kind, *spot, *m_hub.selection().yard, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::addYard() {
  YardDialog dialog(m_hub, nullptr, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::changeYard() {
  const auto chosen = m_hub.selection().yard;
  const auto* yard = chosen ? m_hub.season().yard(*chosen) : nullptr;
  if (!yard) return;
  YardDialog dialog(m_hub, yard, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::askFlows() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  FlowsDialog dialog(m_hub, *yard, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::askWeather() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  WeatherDialog dialog(m_hub, *yard, this);
  m_hub.dialogs().run(dialog);
}

QPointF YardsPlace::freePlace() const {
  // East of the last hive of the yard, a walking step away.
  QPointF place(2, 2);
  for (const auto& hive : m_hub.hives(*m_hub.selection().yard)) {
    if (!hive.xM || !hive.yM) continue;
    if (*hive.xM + 1.5 > place.x()) place = {*hive.xM + 1.5, *hive.yM};
  }
  return place;
}

void YardsPlace::addHive(std::optional<QPointF> placeM) {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  HiveDialog dialog(m_hub, *yard, placeM.value_or(freePlace()), {}, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::addStand(std::optional<QPointF> placeM) {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  StandDialog dialog(m_hub, *yard, placeM.value_or(freePlace()), this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

}  // namespace outyard::yards
