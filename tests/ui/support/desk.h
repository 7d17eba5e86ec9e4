// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QPushButton>
#include <QTemporaryDir>
#include <functional>
#include <memory>

#include "core/exchange/file_source.h"
#include "core/exchange/tables.h"
#include "core/session/session.h"
#include "tests/support/season_builder.h"
#include "ui/adapt/settings.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/session_model.h"

/// A desk for tests of real widgets: a season in memory, settings in a folder that goes away, and
/// dialogs that answer by themselves.
namespace outyard::tests {

class FakeDialogs : public widgets::Dialogs {
 public:
  bool question(QWidget*, const QString&, const QString& text, const QString&) override {
    asked << text;
    return yes;
  }
  void inform(QWidget*, const QString&, const QString& text) override { informed << text; }
  void failure(QWidget*, const QString&, const QString& text) override { failures << text; }
  bool run(QDialog& dialog) override {
    titles << dialog.windowTitle();
    if (!onRun) return false;
    dialog.show();
    QCoreApplication::processEvents();
    const bool accepted = onRun(dialog);
    // As a person: only when the button can be pressed.
    const auto* box = dialog.findChild<QDialogButtonBox*>();
    const auto* ok = box ? box->button(QDialogButtonBox::Ok) : nullptr;
    return accepted && (!ok || ok->isEnabled());
  }
  QString openFile(QWidget*, const QString&, const QString&) override { return file; }
  QString saveFile(QWidget*, const QString&, const QString&, const QString&) override {
    return file;
  }
  QString chooseFolder(QWidget*, const QString&) override { return file; }

  bool yes = true;
  QString file;
  std::function<bool(QDialog&)> onRun;
  QStringList asked, informed, failures, titles;
};

/// Fills a dialog's field by its objectName; a missing one fails the test.
template <class T>
T* field(QWidget& parent, const char* name) {
  auto* found = parent.findChild<T*>(QLatin1String(name));
  EXPECT_NE(found, nullptr) << name;
  return found;
}

struct Desk {
  explicit Desk(apiary::Season season, const char* today = "2026-04-25")
      : clock(day(today), std::string(today) + "T07:00:00Z"),
        settings(folder.filePath(QStringLiteral("desk.ini"))),
        hub(dialogs, settings, clock) {
    auto made = std::make_unique<MemoryStore>(std::move(season));
    store = made.get();
    auto opened = session::Session::open(std::move(made), ids, clock);
    EXPECT_TRUE(opened.ok());
    hub.open(std::move(opened.value()), folder.filePath(QStringLiteral("test.outyard")));
  }

  QTemporaryDir folder;
  FakeDialogs dialogs;
  base::SeededIds ids{7};
  base::FixedClock clock;
  adapt::DeskSettings settings;
  widgets::SeasonHub hub;
  MemoryStore* store = nullptr;
};

/// The sample season as the exchange tables hold it.
inline apiary::Season sampleSeason() {
  apiary::Season season;
  const exchange::FolderSource files(std::string(OUTYARD_SOURCE_DIR "/sample"));
  base::Progress quiet;
  const auto read = exchange::planImport(season, files, day("2026-05-02"), quiet);
  EXPECT_TRUE(read.ok());
  season.apply(read.changes);
  return season;
}

}  // namespace outyard::tests
