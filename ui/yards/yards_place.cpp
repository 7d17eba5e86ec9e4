// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/yards_place.h"

#include <QAction>
#include <QActionGroup>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/adapt/words.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/theme.h"
#include "ui/yards/date_bar.h"
#include "ui/yards/hive_filter.h"
#include "ui/yards/hive_panel.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/legend.h"
#include "ui/yards/yard_list.h"
#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

constexpr int kListWidth = 230, kPanelWidth = 310;

QToolButton* buttonFor(QAction* action, Qt::ToolButtonStyle style) {
  auto* button = new QToolButton;
  button->setDefaultAction(action);
  button->setToolButtonStyle(style);
  button->setAccessibleName(action->text().remove(u'&'));
  return button;
}

}  // namespace

YardsPlace::YardsPlace(widgets::SeasonHub& hub, QWidget* parent) : Place(parent), m_hub(hub) {
  setObjectName(QStringLiteral("yardsPlace"));
  m_list = new YardList(hub);
  m_map = new YardMap(hub);
  m_table = new HiveTable(hub);
  m_tableSide = new FilteredHives(hub, m_table);
  m_panel = new HivePanel(hub);
  m_dates = new DateBar(hub);
  m_legend = new Legend;
  m_listWait = new QTimer(this);
  m_listWait->setSingleShot(true);
  constexpr int kListWaitMs = 200;  // all yards are judged: not at every step of a dragged slider
  m_listWait->setInterval(kListWaitMs);
  makeActions();
  makeArrangeActions();
  makeThingActions();
  makeToolActions();
  makeBulkActions();

  auto* left = new QWidget;
  auto* leftLayout = new QVBoxLayout(left);
  leftLayout->setContentsMargins(10, 10, 4, 10);
  leftLayout->addWidget(m_list, 1);
  auto* leftButtons = new QHBoxLayout;
  leftButtons->addWidget(buttonFor(m_addYard, Qt::ToolButtonTextOnly));
  leftButtons->addWidget(buttonFor(m_changeYard, Qt::ToolButtonTextOnly));
  leftButtons->addStretch(1);
  leftLayout->addLayout(leftButtons);
  auto* right = new QWidget;
  auto* rightLayout = new QVBoxLayout(right);
  rightLayout->setContentsMargins(4, 10, 10, 10);
  rightLayout->addWidget(m_panel, 1);
  right->setMinimumWidth(270);
  left->setMinimumWidth(190);
  m_splitter = new QSplitter;
  m_splitter->addWidget(left);
  m_splitter->addWidget(makeCentre());
  m_splitter->addWidget(right);
  m_splitter->setStretchFactor(1, 1);
  m_splitter->setChildrenCollapsible(false);
  m_splitter->setSizes({kListWidth, 700, kPanelWidth});
  m_splitter->restoreState(hub.settings().get(adapt::desk::kYardsSplitter));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(m_splitter);

  connectMap();
  connect(m_panel, &HivePanel::openAsked, m_openHive, &QAction::trigger);
  connect(m_panel, &HivePanel::inspectionAsked, m_inspect, &QAction::trigger);
  connect(m_panel, &HivePanel::setOverAsked, m_setOver, &QAction::trigger);
  connect(m_listWait, &QTimer::timeout, m_list, &YardList::refresh);
  connect(m_splitter, &QSplitter::splitterMoved, this,
          [this] { m_hub.settings().set(adapt::desk::kYardsSplitter, m_splitter->saveState()); });
  connect(&hub, &widgets::SeasonHub::changed, this, [this] { refresh(); });
  connect(&hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    m_map->setArrows({});
    refresh();
    m_map->fit();
  });
  connect(&hub, &widgets::SeasonHub::selectionChanged, this, [this] {
    // Another hive of the same yard changes neither the table nor the days.
    if (m_hub.selection().yard != m_yard) {
      m_yard = m_hub.selection().yard;
      m_table->refresh();
      m_dates->refresh();
    }
    refreshHead();
    refreshActions();
  });
  connect(&hub, &widgets::SeasonHub::shownDateChanged, this, [this] {
    m_map->refresh();
    m_table->refresh();
    m_panel->refresh();
    m_listWait->start();
    refreshHead();
    refreshActions();
  });
  connect(&hub.forecasts(), &widgets::ForecastDesk::updated, this,
          [this](const base::YardId& yard) {
            if (yard != m_hub.selection().yard) return;
            m_map->refresh();
            m_table->refresh();
            m_panel->refresh();
            refreshHead();
          });
  showAsTable(hub.settings().get(adapt::desk::kYardsAsTable));
  refresh();
}

YardsPlace::~YardsPlace() = default;

QString YardsPlace::title() const {
  return tr("Yards");
}

QIcon YardsPlace::icon() const {
  return widgets::ownIcon(QStringLiteral("yards"), palette());
}

QList<QAction*> YardsPlace::menuActions() const {
  const auto line = [this] {
    auto* separator = new QAction(const_cast<YardsPlace*>(this));
    separator->setSeparator(true);
    return separator;
  };
  return {m_asMap,
          m_asTable,
          m_zoomIn,
          m_zoomOut,
          m_fit,
          m_showLegend,
          m_measure,
          m_arrange,
          m_several->menuAction(),
          line(),
          m_openHive,
          m_inspect,
          m_setOver,
          m_unite,
          m_swap,
          m_moveHive,
          m_correct,
          m_bulk,
          m_course,
          line(),
          m_addHive,
          m_addStand,
          m_addFeature,
          m_nextThing,
          m_changeThing,
          m_removeThing,
          m_pictureMenu->menuAction(),
          line(),
          m_addYard,
          m_changeYard,
          m_flows,
          m_weather,
          m_copyLayout,
          m_saveMap,
          m_printMap,
          m_tableSide->file().csvAction(),
          m_tableSide->file().pdfAction()};
}

void YardsPlace::takeFocus() {
  m_views->currentWidget()->setFocus();
}

void YardsPlace::changeEvent(QEvent* event) {
  Place::changeEvent(event);
  if (event->type() != QEvent::PaletteChange || !m_dates) return;
  m_table->refresh();
  m_panel->refresh();
  refreshActions();
}

void YardsPlace::showPairs(const planning::BoostPlan* plan) {
  m_map->setArrows(plan ? pairArrows(*plan) : std::vector<PairArrow>());
}

void YardsPlace::showAsTable(bool table) {
  (table ? m_asTable : m_asMap)->setChecked(true);
  m_views->setCurrentIndex(table ? 1 : 0);
  for (auto* action : {m_zoomIn, m_zoomOut, m_fit}) action->setEnabled(!table);
  m_hub.settings().set(adapt::desk::kYardsAsTable, table);
}

QWidget* YardsPlace::makeToolRow() {
  auto* row = new QWidget;
  auto* layout = new QHBoxLayout(row);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(4);
  m_name = new QLabel;
  m_name->setObjectName(QStringLiteral("yardName"));
  QFont bold = m_name->font();
  bold.setBold(true);
  bold.setPointSizeF(bold.pointSizeF() * 1.25);
  m_name->setFont(bold);
  m_name->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  layout->addWidget(m_name, 1);
  layout->addWidget(buttonFor(m_asMap, Qt::ToolButtonTextOnly));
  layout->addWidget(buttonFor(m_asTable, Qt::ToolButtonTextOnly));
  layout->addSpacing(10);
  layout->addWidget(buttonFor(m_zoomOut, Qt::ToolButtonIconOnly));
  layout->addWidget(buttonFor(m_zoomIn, Qt::ToolButtonIconOnly));
  layout->addWidget(buttonFor(m_fit, Qt::ToolButtonIconOnly));
  layout->addSpacing(10);
  layout->addWidget(buttonFor(m_arrange, Qt::ToolButtonTextBesideIcon));
  layout->addWidget(buttonFor(m_showLegend, Qt::ToolButtonTextOnly));
  return row;
}

QWidget* YardsPlace::makeCentre() {
  m_hint = new QLabel;
  m_hint->setObjectName(QStringLiteral("mapHint"));
  m_hint->setWordWrap(true);
  m_hint->setMinimumHeight(2 * fontMetrics().height() + 2);  // so that the map never jumps
  m_hint->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  m_views = new QStackedWidget;
  auto* mapSide = new QWidget;
  auto* mapLayout = new QHBoxLayout(mapSide);
  mapLayout->setContentsMargins(0, 0, 0, 0);
  mapLayout->addWidget(m_map, 1);
  mapSide->setFocusProxy(m_map);
  m_legend->setFixedWidth(210);
  auto* legendSide = new QVBoxLayout;
  legendSide->addWidget(m_legend);
  legendSide->addStretch(1);
  mapLayout->addLayout(legendSide);
  m_legend->hide();
  m_views->addWidget(mapSide);
  m_views->addWidget(m_tableSide);
  auto* centre = new QWidget;
  auto* layout = new QVBoxLayout(centre);
  layout->setContentsMargins(4, 10, 4, 6);
  layout->setSpacing(6);
  layout->addWidget(makeToolRow());
  layout->addWidget(m_views, 1);
  layout->addWidget(m_hint);
  layout->addWidget(m_dates);
  return centre;
}

void YardsPlace::refresh() {
  m_yard = m_hub.selection().yard;
  m_list->refresh();
  m_map->refresh();
  m_table->refresh();
  m_panel->refresh();
  m_dates->refresh();
  refreshHead();
  refreshActions();
}

void YardsPlace::refreshHead() {
  const auto chosen = m_hub.selection().yard;
  const auto* yard = chosen ? m_hub.season().yard(*chosen) : nullptr;
  if (!yard) {
    m_name->setText(tr("Yards"));
    m_hint->clear();
    return;
  }
  const QString name = QString::fromStdString(yard->name.empty() ? yard->yard.str() : yard->name);
  m_name->setText(name);
  m_name->setToolTip(QString::fromStdString(yard->access));
  QString hint = m_map->ruler().active() ? m_map->rulerHint() : thingHint();
  if (!hint.isEmpty()) {
    // The measuring line, or a stand or feature that keys act on.
  } else if (m_hub.showsFuture()) {
    hint = m_hub.forecasts().isFresh(yard->yard)
               ? tr("Outlines: the seams expected on %1; the fainter, the less sure. Filled: as "
                    "last seen. Nothing planned is taken in.")
                     .arg(adapt::dateText(m_hub.shownDate()))
               : tr("What is expected on %1 is being worked out.")
                     .arg(adapt::dateText(m_hub.shownDate()));
  } else if (!m_hub.showsToday()) {
    hint = tr("As it stood on %1. Hives are moved on today's map only.")
               .arg(adapt::dateText(m_hub.shownDate()));
  } else if (m_map->arranging() && m_map->marked().size() > 1) {
    hint =
        tr("%n hives chosen: drag one to carry them all, [ and ] turn them, Shift and an arrow "
           "key shift them by 10 cm. Esc lets them go.",
           nullptr, static_cast<int>(m_map->marked().size()));
  } else if (m_map->arranging()) {
    hint =
        tr("Arrange: dragging corrects the drawing, no move is recorded; Ctrl and dragging a hive "
           "takes its stand along. S chooses stands and features, a frame or Shift and click "
           "several hives; [ and ] turn, Shift and an arrow key shift by 10 cm.");
  } else if (m_map->marked().size() > 1) {
    hint = tr("%1 hives chosen: drag one to move them all, here or onto another yard in the list. "
              "Esc lets them go.")
               .arg(m_map->marked().size());
  } else {
    hint =
        tr("Drag a hive to move it, or onto another to join them. Tab and arrows walk the yard.");
  }
  if (const auto sick = apiary::foulBroodIn(m_hub.season(), yard->yard, m_hub.shownDate())) {
    hint = tr("Foul brood is suspected in %1: nothing goes in or out of this yard, tools are "
              "cleaned, the bee inspector decides.")
               .arg(QString::fromStdString(sick->str()));
  }
  m_hint->setText(hint);
}

}  // namespace outyard::yards
