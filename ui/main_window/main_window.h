// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QMainWindow>
#include <QString>
#include <functional>
#include <memory>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/exchange/tables.h"
#include "core/session/session.h"
#include "ui/main_window/print_sheets.h"
#include "ui/widgets/place.h"
#include "ui/widgets/session_model.h"

class QAction;
class QActionGroup;
class QLabel;
class QMenu;
class QStackedWidget;
class QToolBar;
class QPagedPaintDevice;

namespace outyard::widgets {
class ForecastStatus;
}

namespace outyard::main_window {

/// What the window asks of the program around it: the store, the exchange tables and the sheet
/// are out of reach for ui. Each may be empty; its action is then greyed.
struct FileServices {
  using Opened = base::Result<std::unique_ptr<session::Session>>;
  std::function<Opened(const QString& file)> create;
  std::function<Opened(const QString& file)> open;
  /// A new file that holds the invented sample season.
  std::function<Opened(const QString& file)> loadSample;
  /// Copies the open season file to another name; the window goes on with the copy.
  std::function<base::Result<void>(const QString& from, const QString& to)> saveCopy;
  /// Reads the exchange tables of a folder into the season as one undo step; the message says
  /// what came in.
  std::function<base::Result<base::Message>(session::Session& session, const QString& folder)>
      importTables;
  std::function<base::Result<void>(const apiary::Season& season, const QString& folder)>
      exportTables;
  /// Reads a weather file for one yard as one undo step; the message says what came in.
  std::function<base::Result<base::Message>(session::Session& session, const QString& file,
                                            const exchange::WeatherAsk& ask)>
      importWeather;
  /// Lays out the yard sheets of a day; nothing is kept yet. Stopping is a failure.
  std::function<base::Result<std::vector<sheet::YardSheet>>(
      const session::Session& session, const SheetAsk& ask, base::Progress& progress)>
      makeSheets;
  /// Keeps numbers and lines of sheets that were printed, as one undo step.
  std::function<base::Result<void>(session::Session& session, const SheetAsk& ask,
                                   const std::vector<sheet::YardSheet>& sheets)>
      keepSheets;
  /// Where the sample season is put when it is asked for.
  QString sampleFile;
  /// Where half-entered sheets are kept; empty keeps none.
  QString draftFolder;
};

/// The one window: a bar of places on the left, the places, and the table of actions. It makes
/// places and actions and holds no knowledge of bees.
class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  MainWindow(widgets::SeasonHub& hub, FileServices services, QWidget* parent = nullptr);
  ~MainWindow() override;

  /// Opens a season file; on failure says why, and the season before stays open.
  bool openSeason(const QString& file);
  /// Makes (or opens) the sample season.
  bool openSample();
  /// Shows a place by its name ("yards", "hive", "pairs").
  void showPlace(const QString& name, const QString& task = {});
  [[nodiscard]] QString placeName() const;
  /// Selects a hive by its number, written in any case; false when there is none.
  bool findHive(const QString& number);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  struct PlaceEntry {
    QString name;
    widgets::Place* place = nullptr;
    QAction* action = nullptr;
  };
  void makePlaces();
  void makeFileMenu();
  void makeEditMenu();
  void makeViewMenu();
  void makeHelpMenu();
  QAction* addTo(QMenu* menu, const QString& text, const QKeySequence& keys,
                 std::function<void()> slot, bool needsSeason);
  void makeStatus();
  void makeGuide();
  /// The next place of the bar; its shortcut follows the order.
  void addPlace(const QString& name, widgets::Place* place);
  /// What a place asks of the window: "sample", "new", "open", "tables", "weather", "sheet".
  void doFor(const QString& what);
  bool takeOver(FileServices::Opened opened, const QString& file);
  void newSeason();
  void chooseSeason();
  void saveAs();
  void importTables();
  void exportTables();
  void importWeather();
  void printSheet();
  /// Asks what to print (these yards and this day ticked), shows it, and keeps what was printed.
  void printSheets(const std::vector<base::YardId>& yards, std::optional<base::Date> day);
  /// Types a printed sheet back in.
  void enterSheet();
  void printPlace();
  void savePlacePdf();
  void savePicture();
  void askHive();
  /// The quick search over the whole season, and the way to what was chosen.
  void findEverywhere();
  void showAbout();
  void refreshActions();
  void refreshStatus();
  void refreshRecent();
  void setTheme(adapt::Theme theme);
  void setUnits(bool us);
  void refreshIcons();
  void fillPlaceMenu();
  [[nodiscard]] widgets::Place* currentPlace() const;
  [[nodiscard]] widgets::Dialogs& dialogs() const { return m_hub.dialogs(); }

  widgets::SeasonHub& m_hub;
  FileServices m_services;
  std::vector<PlaceEntry> m_places;
  QToolBar* m_bar = nullptr;
  QActionGroup* m_placeGroup = nullptr;
  QStackedWidget* m_stack = nullptr;
  QWidget* m_guide = nullptr;
  QMenu* m_recent = nullptr;
  QMenu* m_placeMenu = nullptr;
  QLabel* m_dateLabel = nullptr;
  QLabel* m_fileLabel = nullptr;
  QLabel* m_countLabel = nullptr;
  widgets::ForecastStatus* m_forecasts = nullptr;
  QAction* m_undo = nullptr;
  QAction* m_redo = nullptr;
  std::vector<QAction*> m_needSeason;
};

}  // namespace outyard::main_window
