// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QLabel>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/entry/entry_model.h"
#include "ui/entry/entry_table.h"
#include "ui/entry/sheet_entry_dialog.h"

/// A printed sheet and a hand that types it back in.
namespace outyard::entry {

using session::EntryColumn;
using tests::Desk;
using tests::field;

inline constexpr char kNumber[] = "26-0148";
inline const base::YardId kYard{"TR"};

/// A sheet of the yard as it stands on the working day, with what was last seen as expected.
inline void printSheet(Desk& desk) {
  const base::Date day = desk.hub.workingDate();
  apiary::SheetRow sheet;
  sheet.sheet = base::SheetId{kNumber};
  sheet.yard = kYard;
  sheet.date = day;
  sheet.paper = "a4";
  std::vector<apiary::SheetLine> lines;
  for (const auto& hive : apiary::yardOn(desk.hub.season(), kYard, day)) {
    const auto add = [&](std::optional<base::ColonyId> colony, const std::string& expected) {
      apiary::SheetLine line;
      line.line = static_cast<int>(lines.size()) + 1;
      line.hive = hive.hive;
      line.colony = std::move(colony);
      line.expected = expected;
      lines.push_back(std::move(line));
    };
    for (const auto& colony : hive.colonies) {
      const auto* seen = colony.lastInspection;
      const int seams = seen && seen->seams ? static_cast<int>(*seen->seams) : -1;
      add(colony.colony, seams < 0
                             ? std::string()
                             : "Expected: " + std::to_string(std::max(0, seams - 1)) + "\u2013" +
                                   std::to_string(seams + 2) + " seams, brood on 1\u20133 combs");
    }
    if (hive.colonies.empty()) add(std::nullopt, {});
  }
  ASSERT_TRUE(desk.hub.execute(session::keepSheet(sheet, lines)));
}

/// The dialog under a hand that has only a keyboard.
class Typist {
 public:
  explicit Typist(Desk& desk)
      : dialog(desk.hub, QDir(desk.folder.path()).filePath(QStringLiteral("drafts"))) {
    dialog.show();
    QApplication::setActiveWindow(&dialog);
    QCoreApplication::processEvents();
  }
  void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(dialog.focusWidget(), key, with);
    QCoreApplication::processEvents();
    ++count;
  }
  void type(const char* keys) {
    for (const char* k = keys; *k; ++k) {
      QTest::keyClick(dialog.focusWidget(), *k);
      QCoreApplication::processEvents();
      ++count;
    }
  }
  /// From the number to the first cell.
  void openSheet() {
    type("0148");  // only its end
    key(Qt::Key_Return);
    type("Ida");
    key(Qt::Key_Return);
    type("930");
    key(Qt::Key_Return);
    type("14,5");
    key(Qt::Key_Return);
  }
  EntryModel& model() { return *dialog.findChild<EntryModel*>(); }
  EntryTable& table() { return *dialog.findChild<EntryTable*>(); }
  QString said() { return field<QLabel>(dialog, "entrySay")->text(); }
  QString cell(int row, EntryColumn column, int role = Qt::DisplayRole) {
    return model().index(row, EntryModel::columnOf(column)).data(role).toString();
  }
  void at(int row, EntryColumn column) { table().goTo(row, EntryModel::columnOf(column)); }
  bool isAt(int row, EntryColumn column) {
    return table().currentIndex() == model().index(row, EntryModel::columnOf(column));
  }

  SheetEntryDialog dialog;
  int count = 0;
};

}  // namespace outyard::entry
