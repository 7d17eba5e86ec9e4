// SPDX-License-Identifier: GPL-3.0-or-later
// What the actions of the window do: files, printing, finding.
#include <QAction>
#include <QFileInfo>
#include <QGuiApplication>
#include <QLabel>
#include <QMenu>
#include <QPageSize>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrinter>
#include <QSaveFile>
#include <QStatusBar>

#include "core/sheet/document.h"
#include "ui/adapt/words.h"
#include "ui/entry/sheet_entry_dialog.h"
#include "ui/main_window/find_dialog.h"
#include "ui/main_window/find_everywhere.h"
#include "ui/main_window/main_window.h"
#include "ui/main_window/weather_import.h"
#include "ui/main_window/work_progress.h"
#include "ui/widgets/theme.h"

namespace outyard::main_window {
namespace {

constexpr char16_t kSuffix[] = u".outyard";

QString withSuffix(QString file, QStringView suffix) {
  if (!file.isEmpty() && !file.endsWith(suffix, Qt::CaseInsensitive)) file += suffix;
  return file;
}

}  // namespace

// --- season files -------------------------------------------------------------------------------

bool MainWindow::takeOver(FileServices::Opened opened, const QString& file) {
  if (!opened) {
    dialogs().failure(this, tr("The season was not opened"), adapt::words(opened.failure()));
    return false;
  }
  m_hub.settings().noteSeason(file);
  m_hub.open(std::move(opened.value()), file);
  return true;
}

bool MainWindow::openSeason(const QString& file) {
  const QString whole = QFileInfo(file).absoluteFilePath();
  if (m_hub.isOpen() && whole == QFileInfo(m_hub.path()).absoluteFilePath()) return true;
  return m_services.open && takeOver(m_services.open(whole), whole);
}

bool MainWindow::openSample() {
  const QString& file = m_services.sampleFile;
  if (!m_services.loadSample) return false;
  if (m_hub.isOpen() && QFileInfo(file) == QFileInfo(m_hub.path())) return true;
  return takeOver(m_services.loadSample(file), file);
}

void MainWindow::newSeason() {
  const QString file =
      withSuffix(dialogs().saveFile(this, tr("New season"), tr("Season files (*.outyard)"),
                                    tr("season.outyard")),
                 kSuffix);
  if (!file.isEmpty()) takeOver(m_services.create(file), file);
}

void MainWindow::chooseSeason() {
  const QString file =
      dialogs().openFile(this, tr("Open season"), tr("Season files (*.outyard);;All files (*)"));
  if (!file.isEmpty()) openSeason(file);
}

void MainWindow::saveAs() {
  const QString file =
      withSuffix(dialogs().saveFile(this, tr("Save season as"), tr("Season files (*.outyard)"),
                                    QFileInfo(m_hub.path()).completeBaseName()),
                 kSuffix);
  if (file.isEmpty()) return;
  const auto saved = m_services.saveCopy(m_hub.path(), file);
  if (!saved) {
    dialogs().failure(this, tr("The season was not saved"), adapt::words(saved.failure()));
    return;
  }
  openSeason(file);
}

void MainWindow::refreshRecent() {
  m_recent->clear();
  for (const QString& file : m_hub.settings().get(adapt::desk::kRecentSeasons)) {
    auto* action =
        m_recent->addAction(QFileInfo(file).fileName().replace(u'&', QLatin1String("&&")));
    action->setToolTip(file);
    action->setEnabled(QFileInfo::exists(file));
    connect(action, &QAction::triggered, this, [this, file] { openSeason(file); });
  }
  m_recent->setToolTipsVisible(true);
  m_recent->setEnabled(!m_recent->isEmpty());
}

void MainWindow::importTables() {
  const QString folder = dialogs().chooseFolder(this, tr("Folder with the tables to import"));
  if (folder.isEmpty()) return;
  const auto done = m_services.importTables(*m_hub.session(), folder);
  if (done) {
    dialogs().inform(this, tr("Tables imported"), adapt::words(done.value()));
  } else {
    dialogs().failure(this, tr("Nothing was imported"), adapt::words(done.failure()));
  }
}

void MainWindow::exportTables() {
  const QString folder = dialogs().chooseFolder(this, tr("Folder to write the tables to"));
  if (folder.isEmpty()) return;
  const auto done = m_services.exportTables(m_hub.season(), folder);
  if (done) {
    statusBar()->showMessage(tr("The tables stand in %1").arg(folder), 8000);
  } else {
    dialogs().failure(this, tr("The tables were not written"), adapt::words(done.failure()));
  }
}

void MainWindow::importWeather() {
  const QString file = dialogs().openFile(this, tr("Weather file"),
                                          tr("Weather files (*.csv *.dly *.txt);;All files (*)"));
  if (file.isEmpty()) return;
  WeatherImportDialog dialog(m_hub, QFileInfo(file).fileName(), this);
  if (!dialogs().run(dialog)) return;
  QGuiApplication::setOverrideCursor(Qt::WaitCursor);
  const auto done = m_services.importWeather(*m_hub.session(), file, dialog.ask());
  QGuiApplication::restoreOverrideCursor();
  if (done) {
    dialogs().inform(this, tr("Weather imported"), adapt::words(done.value()));
  } else {
    dialogs().failure(this, tr("Nothing was imported"), adapt::words(done.failure()));
  }
}

// --- paper and pictures -------------------------------------------------------------------------

void MainWindow::printSheet() {
  printSheets({}, std::nullopt);
}

void MainWindow::printSheets(const std::vector<base::YardId>& yards,
                             std::optional<base::Date> day) {
  PrintSheetsDialog dialog(m_hub, this);
  if (!yards.empty()) dialog.choose(yards, day.value_or(m_hub.workingDate()));
  if (!dialogs().run(dialog)) return;
  const SheetAsk ask = dialog.ask();
  m_hub.settings().set(adapt::desk::kLetterPaper, ask.letterPaper);
  auto progress = std::make_unique<WorkProgress>(tr("Making the yard sheets…"), this);
  const auto made = progress->besideWindow(
      [&] { return m_services.makeSheets(*m_hub.session(), ask, *progress); });
  const bool stopped = progress->cancelled();
  progress.reset();  // or it would come up over what follows
  if (!made) {
    if (stopped) return;
    dialogs().failure(this, tr("The sheet was not made"), adapt::words(made.failure()));
    return;
  }
  const QString which = ask.yards.size() == 1
                            ? QString::fromStdString(ask.yards.front().str())
                            : tr("%n yards", nullptr, static_cast<int>(ask.yards.size()));
  const QString name = tr("sheet %1 %2.pdf").arg(which, QString::fromStdString(ask.date.iso()));
  SheetPreview preview(
      sheet::joined(*made), name, dialogs(),
      [&] { return m_services.keepSheets(*m_hub.session(), ask, *made); }, this);
  dialogs().run(preview);
  if (preview.wasWritten()) {
    statusBar()->showMessage(tr("The sheet's number is kept with the season"), 8000);
  }
}

void MainWindow::enterSheet() {
  entry::SheetEntryDialog dialog(m_hub, m_services.draftFolder, this);
  if (dialogs().run(dialog)) {
    statusBar()->showMessage(tr("The sheet is entered; Undo takes the whole of it back"), 8000);
  }
}

void MainWindow::printPlace() {
  // Made only now: a printer object asks the print server, which can be slow.
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(currentPlace()->title());
  QPrintDialog dialog(&printer, this);
  if (dialogs().run(dialog)) currentPlace()->printTo(printer);
}

void MainWindow::savePlacePdf() {
  const QString file =
      withSuffix(dialogs().saveFile(this, tr("Save page as PDF"), tr("PDF files (*.pdf)"),
                                    currentPlace()->title().toLower() + QStringLiteral(".pdf")),
                 u".pdf");
  if (file.isEmpty()) return;
  QSaveFile out(file);
  bool written = out.open(QIODevice::WriteOnly);
  if (written) {
    QPdfWriter writer(&out);
    const bool letter = m_hub.settings().get(adapt::desk::kLetterPaper);
    writer.setPageSize(QPageSize(letter ? QPageSize::Letter : QPageSize::A4));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(currentPlace()->title());
    currentPlace()->printTo(writer);
  }
  written = written && out.commit();
  if (!written) {
    dialogs().failure(
        this, tr("The page was not saved"),
        tr("%1 could not be written: %2. Choose another folder.").arg(file, out.errorString()));
  }
}

void MainWindow::savePicture() {
  const QString file =
      withSuffix(dialogs().saveFile(this, tr("Save page as picture"), tr("PNG pictures (*.png)"),
                                    currentPlace()->title().toLower() + QStringLiteral(".png")),
                 u".png");
  if (file.isEmpty()) return;
  QSaveFile out(file);
  const bool written =
      out.open(QIODevice::WriteOnly) && currentPlace()->picture().save(&out, "PNG") && out.commit();
  if (!written) {
    dialogs().failure(
        this, tr("The picture was not saved"),
        tr("%1 could not be written: %2. Choose another folder.").arg(file, out.errorString()));
  }
}

// --- the rest -----------------------------------------------------------------------------------

bool MainWindow::findHive(const QString& number) {
  const QString wanted = number.trimmed();
  if (wanted.isEmpty()) return false;
  std::vector<base::HiveId> ending;
  for (const auto& [key, hive] : m_hub.season().table<apiary::Hive>()) {
    const QString id = QString::fromStdString(hive.hive.str());
    if (id.compare(wanted, Qt::CaseInsensitive) == 0) {
      m_hub.selectHive(hive.hive);
      return true;
    }
    if (id.endsWith(wanted, Qt::CaseInsensitive)) ending.push_back(hive.hive);
  }
  if (ending.size() != 1) return false;
  m_hub.selectHive(ending.front());
  return true;
}

void MainWindow::askHive() {
  FindDialog dialog(m_hub, this);
  if (!dialogs().run(dialog) || dialog.number().isEmpty()) return;
  if (!findHive(dialog.number())) {
    dialogs().inform(
        this, tr("Find hive"),
        tr("No single hive is numbered %1. Write its whole number.").arg(dialog.number()));
  }
}

void MainWindow::findEverywhere() {
  FindEverywhere dialog(m_hub, this);
  if (!dialogs().run(dialog)) return;
  const auto* found = dialog.chosen();
  if (!found) return;
  if (found->hive) {
    m_hub.select({std::nullopt, found->hive, found->colony});
    showPlace(QStringLiteral("hive"));
  } else if (found->yard) {
    m_hub.selectYard(*found->yard);
    showPlace(QStringLiteral("yards"));
  } else {
    dialogs().inform(this, tr("Find"),
                     tr("Queen %1 is in no hive. Introduce her first, then she can be gone to.")
                         .arg(QString::fromStdString(found->id)));
  }
}

void MainWindow::setTheme(adapt::Theme theme) {
  m_hub.settings().set(adapt::desk::kTheme, theme);
  widgets::applyTheme(theme);
}

void MainWindow::setUnits(bool us) {
  auto& settings = m_hub.settings();
  settings.set(adapt::desk::kMassUnit, us ? adapt::MassUnit::Pound : adapt::MassUnit::Kilogram);
  settings.set(adapt::desk::kTemperatureUnit,
               us ? adapt::TemperatureUnit::Fahrenheit : adapt::TemperatureUnit::Celsius);
  settings.set(adapt::desk::kLengthUnit, us ? adapt::LengthUnit::Foot : adapt::LengthUnit::Metre);
  Q_EMIT m_hub.shownDateChanged();  // every place words its figures again
}

void MainWindow::showAbout() {
  dialogs().inform(
      this, tr("About Outyard"),
      tr("Outyard %1\n\nFor beekeepers with many yards: who is strong, who is small but sound, and "
         "who can help whom.\n\nFree software under the GNU General Public License, version 3 or "
         "later. Your records stay in the season file on this machine.\n\nThe program never "
         "diagnoses a disease: on any sign of foul brood call the bee inspector.")
          .arg(QLatin1String(OUTYARD_VERSION)));
}

}  // namespace outyard::main_window
