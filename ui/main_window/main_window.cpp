// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/main_window.h"

#include <QAction>
#include <QActionGroup>
#include <QCloseEvent>
#include <QFileInfo>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolBar>
#include <QVBoxLayout>

#include "ui/adapt/words.h"
#include "ui/calendar/calendar_place.h"
#include "ui/desk/desk_place.h"
#include "ui/hive/hive_place.h"
#include "ui/main_window/figures_dialog.h"
#include "ui/main_window/guide.h"
#include "ui/main_window/help_page.h"
#include "ui/main_window/reader_dialog.h"
#include "ui/pairs/pairs_place.h"
#include "ui/rounds/rounds_place.h"
#include "ui/widgets/forecast_status.h"
#include "ui/yards/yards_place.h"

namespace outyard::main_window {

using adapt::Theme;

MainWindow::MainWindow(widgets::SeasonHub& hub, FileServices services, QWidget* parent)
    : QMainWindow(parent), m_hub(hub), m_services(std::move(services)) {
  setObjectName(QStringLiteral("mainWindow"));
  resize(1280, 800);
  m_bar = new QToolBar(tr("Places"));
  m_bar->setObjectName(QStringLiteral("placeBar"));
  m_bar->setMovable(false);
  m_bar->setOrientation(Qt::Vertical);
  m_bar->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
  m_bar->setIconSize({30, 30});
  m_bar->toggleViewAction()->setVisible(false);  // the way between places always stays
  addToolBar(Qt::LeftToolBarArea, m_bar);
  m_placeGroup = new QActionGroup(this);
  auto* centre = new QWidget;
  auto* layout = new QVBoxLayout(centre);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  m_stack = new QStackedWidget;
  makeGuide();
  layout->addWidget(m_guide);
  layout->addWidget(m_stack, 1);
  setCentralWidget(centre);

  makeFileMenu();
  makeEditMenu();
  makePlaces();
  makeViewMenu();
  m_placeMenu = menuBar()->addMenu(QString());
  makeHelpMenu();
  makeStatus();

  connect(&m_hub, &widgets::SeasonHub::changed, this, [this] {
    refreshActions();
    refreshStatus();
  });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    refreshActions();
    refreshStatus();
    refreshRecent();
  });
  connect(&m_hub, &widgets::SeasonHub::shownDateChanged, this, [this] { refreshStatus(); });
  auto& settings = m_hub.settings();
  restoreGeometry(settings.get(adapt::desk::kWindowGeometry));
  restoreState(settings.get(adapt::desk::kWindowState));
  const QString place = settings.get(adapt::desk::kWindowPlace);
  showPlace(place.isEmpty() ? m_places.front().name : place);
  refreshIcons();
  refreshActions();
  refreshStatus();
  refreshRecent();
}

MainWindow::~MainWindow() = default;

// --- places -------------------------------------------------------------------------------------

void MainWindow::makePlaces() {
  addPlace(QStringLiteral("desk"), new desk::DeskPlace(m_hub));
  auto* yards = new yards::YardsPlace(m_hub);
  auto* pairs = new pairs::PairsPlace(m_hub);
  connect(pairs, &pairs::PairsPlace::planChanged, yards, &yards::YardsPlace::showPairs);
  addPlace(QStringLiteral("yards"), yards);
  addPlace(QStringLiteral("hive"), new hive::HivePlace(m_hub));
  addPlace(QStringLiteral("pairs"), pairs);
  auto* rounds = new rounds::RoundsPlace(m_hub);
  connect(rounds, &rounds::RoundsPlace::sheetsAsked, this,
          [this](const std::vector<base::YardId>& those, base::Date day) {
            if (m_services.makeSheets) printSheets(those, day);
          });
  addPlace(QStringLiteral("rounds"), rounds);
  addPlace(QStringLiteral("calendar"), new calendar::CalendarPlace(m_hub));
}

void MainWindow::doFor(const QString& what) {
  if (what == QStringLiteral("sample")) openSample();
  if (what == QStringLiteral("new")) newSeason();
  if (what == QStringLiteral("open")) chooseSeason();
  if (what == QStringLiteral("tables")) importTables();
  if (what == QStringLiteral("weather")) importWeather();
  if (what == QStringLiteral("sheet")) enterSheet();
}

void MainWindow::addPlace(const QString& name, widgets::Place* place) {
  // Ctrl+1 to Ctrl+9, then Ctrl+0, in the order of the bar.
  const int number = static_cast<int>(m_places.size()) + 1;
  const QKeySequence keys =
      number > 10 ? QKeySequence() : QKeySequence(Qt::CTRL | Qt::Key(Qt::Key_0 + number % 10));
  auto* action = new QAction(place->title(), this);
  action->setCheckable(true);
  action->setShortcut(keys);
  action->setToolTip(
      QStringLiteral("%1 (%2)").arg(place->title(), keys.toString(QKeySequence::NativeText)));
  m_placeGroup->addAction(action);
  m_bar->addAction(action);
  m_stack->addWidget(place);
  m_places.push_back({name, place, action});
  connect(action, &QAction::triggered, this, [this, name] { showPlace(name); });
  connect(place, &widgets::Place::openPlace, this, &MainWindow::showPlace);
  connect(place, &widgets::Place::asked, this, &MainWindow::doFor);
}

void MainWindow::showPlace(const QString& name, const QString& task) {
  for (const auto& entry : m_places) {
    if (entry.name != name) continue;
    entry.action->setChecked(true);
    m_stack->setCurrentWidget(entry.place);
    fillPlaceMenu();
    entry.place->takeFocus();
    if (!task.isEmpty()) entry.place->begin(task);
    m_hub.settings().set(adapt::desk::kWindowPlace, name);
  }
}

QString MainWindow::placeName() const {
  for (const auto& entry : m_places) {
    if (entry.place == m_stack->currentWidget()) return entry.name;
  }
  return {};
}

widgets::Place* MainWindow::currentPlace() const {
  return qobject_cast<widgets::Place*>(m_stack->currentWidget());
}

void MainWindow::fillPlaceMenu() {
  if (!m_placeMenu) return;
  m_placeMenu->clear();
  const auto* place = currentPlace();
  m_placeMenu->setTitle(place->title());
  m_placeMenu->addActions(place->menuActions());
  m_placeMenu->menuAction()->setVisible(!m_placeMenu->isEmpty());
}

// --- actions ------------------------------------------------------------------------------------

QAction* MainWindow::addTo(QMenu* menu, const QString& text, const QKeySequence& keys,
                           std::function<void()> slot, bool needsSeason) {
  auto* action = menu->addAction(text);
  action->setShortcut(keys);
  connect(action, &QAction::triggered, this, std::move(slot));
  if (needsSeason) m_needSeason.push_back(action);
  return action;
}

void MainWindow::makeFileMenu() {
  auto* menu = menuBar()->addMenu(tr("&File"));
  const auto usable = [](QAction* action, bool service) { action->setVisible(service); };
  usable(addTo(
             menu, tr("&New season…"), QKeySequence::New, [this] { newSeason(); }, false),
         m_services.create != nullptr);
  usable(addTo(
             menu, tr("&Open season…"), QKeySequence::Open, [this] { chooseSeason(); }, false),
         m_services.open != nullptr);
  m_recent = menu->addMenu(tr("Open &recent"));
  usable(addTo(
             menu, tr("Open the sample &season"), {}, [this] { openSample(); }, false),
         m_services.loadSample != nullptr);
  usable(addTo(
             menu, tr("Save &as…"), QKeySequence::SaveAs, [this] { saveAs(); }, true),
         m_services.saveCopy != nullptr);
  menu->addSeparator();
  usable(addTo(
             menu, tr("&Import tables…"), {}, [this] { importTables(); }, true),
         m_services.importTables != nullptr);
  usable(addTo(
             menu, tr("Import &weather…"), {}, [this] { importWeather(); }, true),
         m_services.importWeather != nullptr);
  usable(addTo(
             menu, tr("&Export tables…"), {}, [this] { exportTables(); }, true),
         m_services.exportTables != nullptr);
  menu->addSeparator();
  usable(addTo(
             menu, tr("Print &yard sheet…"), QKeySequence::Print, [this] { printSheet(); }, true),
         m_services.makeSheets != nullptr);
  addTo(
      menu, tr("&Enter a sheet…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E),
      [this] { enterSheet(); }, true);
  addTo(
      menu, tr("&Print this page…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P),
      [this] { printPlace(); }, true);
  addTo(
      menu, tr("Save this page as P&DF…"), {}, [this] { savePlacePdf(); }, true);
  addTo(
      menu, tr("Save this page as pi&cture…"), {}, [this] { savePicture(); }, true);
  menu->addSeparator();
  auto* quit = addTo(
      menu, tr("&Quit"), QKeySequence::Quit, [this] { close(); }, false);
  quit->setMenuRole(QAction::QuitRole);
}

void MainWindow::makeEditMenu() {
  auto* menu = menuBar()->addMenu(tr("&Edit"));
  m_undo = addTo(
      menu, tr("&Undo"), QKeySequence::Undo, [this] { m_hub.undo(this); }, false);
  m_redo = addTo(
      menu, tr("&Redo"), QKeySequence::Redo, [this] { m_hub.redo(this); }, false);
  menu->addSeparator();
  addTo(
      menu, tr("Find in the &season…"), QKeySequence::Find, [this] { findEverywhere(); }, true);
  addTo(
      menu, tr("&Find hive…"), QKeySequence(Qt::CTRL | Qt::Key_G), [this] { askHive(); }, true);
  menu->addSeparator();
  addTo(
      menu, tr("Fi&gures of this outfit…"), {},
      [this] {
        FiguresDialog dialog(m_hub, this);
        dialogs().run(dialog);
      },
      true);
  addTo(
      menu, tr("&Calibrate a reader…"), {},
      [this] {
        ReaderDialog dialog(m_hub, this);
        dialogs().run(dialog);
      },
      true);
}

void MainWindow::makeViewMenu() {
  auto* menu = menuBar()->addMenu(tr("&View"));
  for (const auto& entry : m_places) menu->addAction(entry.action);
  menu->addSeparator();
  const auto choice = [this](QMenu* to, const QString& text, bool checked, auto slot) {
    auto* action = to->addAction(text);
    action->setCheckable(true);
    action->setChecked(checked);
    connect(action, &QAction::triggered, this, slot);
    return action;
  };
  m_forecasts = new widgets::ForecastStatus(m_hub, this);
  menu->addActions(m_forecasts->actions());
  menu->addSeparator();
  auto& settings = m_hub.settings();
  auto* themes = menu->addMenu(tr("&Colours"));
  auto* themeGroup = new QActionGroup(this);
  const std::pair<Theme, QString> kThemes[] = {{Theme::System, tr("As the &system")},
                                               {Theme::Light, tr("&Light")},
                                               {Theme::Dark, tr("&Dark")}};
  for (const auto& [theme, text] : kThemes) {
    themeGroup->addAction(choice(themes, text, settings.get(adapt::desk::kTheme) == theme,
                                 [this, theme = theme] { setTheme(theme); }));
  }
  auto* units = menu->addMenu(tr("&Units"));
  const bool us = settings.get(adapt::desk::kMassUnit) == adapt::MassUnit::Pound;
  auto* unitGroup = new QActionGroup(this);
  unitGroup->addAction(
      choice(units, tr("&Kilograms, °C, metres"), !us, [this] { setUnits(false); }));
  unitGroup->addAction(choice(units, tr("&Pounds, °F, feet"), us, [this] { setUnits(true); }));
}

void MainWindow::makeHelpMenu() {
  auto* menu = menuBar()->addMenu(tr("&Help"));
  addTo(
      menu, tr("Show the &guide"), QKeySequence::HelpContents,
      [this] {
        m_hub.settings().set(adapt::desk::kGuideDismissed, false);
        m_guide->show();
      },
      false);
  addTo(
      menu, tr("How far the &forecast can be trusted…"), {},
      [this] {
        HelpPage page(QStringLiteral("calibration"), tr("How far the forecast can be trusted"),
                      this);
        dialogs().run(page);
      },
      false);
  addTo(
      menu, tr("&About Outyard"), {}, [this] { showAbout(); }, false)
      ->setMenuRole(QAction::AboutRole);
}

void MainWindow::makeGuide() {
  auto* guide = new Guide;
  m_guide = guide;
  guide->setVisible(!m_hub.settings().get(adapt::desk::kGuideDismissed));
  connect(guide, &Guide::dismissed, this, [this] {
    m_hub.settings().set(adapt::desk::kGuideDismissed, true);
    m_guide->hide();
    if (auto* place = currentPlace()) place->takeFocus();
  });
}

void MainWindow::makeStatus() {
  m_fileLabel = new QLabel;
  m_fileLabel->setObjectName(QStringLiteral("statusFile"));
  m_countLabel = new QLabel;
  m_countLabel->setObjectName(QStringLiteral("statusCounts"));
  m_dateLabel = new QLabel;
  m_dateLabel->setObjectName(QStringLiteral("statusDate"));
  for (auto* label : {m_fileLabel, m_countLabel, m_dateLabel})
    label->setContentsMargins(6, 0, 6, 0);
  statusBar()->addWidget(m_fileLabel, 1);
  statusBar()->addPermanentWidget(m_forecasts);
  statusBar()->addPermanentWidget(m_countLabel);
  statusBar()->addPermanentWidget(m_dateLabel);
}

// --- what follows the season --------------------------------------------------------------------

void MainWindow::refreshActions() {
  for (auto* action : m_needSeason) action->setEnabled(m_hub.isOpen());
  const auto* session = m_hub.session();
  const auto titled = [](QAction* action, const QString& plain, const QString& with,
                         const std::optional<base::Message>& title, bool can) {
    action->setEnabled(can);
    action->setText(can && title ? with.arg(adapt::words(*title)) : plain);
  };
  titled(m_undo, tr("&Undo"), tr("&Undo: %1"), session ? session->undoTitle() : std::nullopt,
         session && session->canUndo());
  titled(m_redo, tr("&Redo"), tr("&Redo: %1"), session ? session->redoTitle() : std::nullopt,
         session && session->canRedo());
}

void MainWindow::refreshStatus() {
  const QFileInfo file(m_hub.path());
  if (!m_hub.isOpen()) {
    setWindowTitle(tr("Outyard"));
    m_fileLabel->setText(tr("No season is open"));
    m_countLabel->clear();
    m_dateLabel->clear();
    return;
  }
  setWindowTitle(tr("%1 – Outyard").arg(file.completeBaseName()));
  m_fileLabel->setText(file.fileName());
  m_fileLabel->setToolTip(file.absoluteFilePath());
  const QString date = adapt::dateText(m_hub.workingDate());
  m_dateLabel->setText(m_hub.season().workingDate()
                           ? tr("Working date %1, set by the season").arg(date)
                           : tr("Today %1").arg(date));
  if (!m_hub.showsToday()) return;  // the counts are those of today
  int live = 0, empty = 0, dead = 0;
  for (const auto& [key, yard] : m_hub.season().table<apiary::Yard>()) {
    for (const auto& hive : m_hub.hives(yard.yard)) {
      live += hive.status == apiary::HiveStatus::Live ? 1 : 0;
      empty += hive.status == apiary::HiveStatus::Empty ? 1 : 0;
      dead += hive.status == apiary::HiveStatus::Dead ? 1 : 0;
    }
  }
  m_countLabel->setText(tr("%1 hives: %2 live, %3 empty, %4 dead")
                            .arg(live + empty + dead)
                            .arg(live)
                            .arg(empty)
                            .arg(dead));
}

void MainWindow::refreshIcons() {
  for (const auto& entry : m_places) entry.action->setIcon(entry.place->icon());
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refreshIcons();
}

void MainWindow::closeEvent(QCloseEvent* event) {
  m_hub.settings().set(adapt::desk::kWindowGeometry, saveGeometry());
  m_hub.settings().set(adapt::desk::kWindowState, saveState());
  QMainWindow::closeEvent(event);
}

}  // namespace outyard::main_window
