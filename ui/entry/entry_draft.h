// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/session/sheet_entry.h"

namespace outyard::entry {

/// Half-entered sheets: one JSON file for each season file and sheet, in a folder beside the desk
/// settings. An empty folder keeps nothing.
class DraftFolder {
 public:
  DraftFolder(QString folder, const QString& seasonFile);

  [[nodiscard]] bool has(const base::SheetId& sheet) const;
  /// False when it could not be written; a sheet with nothing typed leaves no draft.
  bool keep(const session::EntrySheet& sheet) const;
  /// Puts what was typed into the sheet as printed; lines that are no longer the same hive's and
  /// lines entered meanwhile stay empty. False when there is no draft that can be read.
  bool restore(session::EntrySheet& sheet) const;
  void remove(const base::SheetId& sheet) const;
  [[nodiscard]] QString file(const base::SheetId& sheet) const;

 private:
  QString m_folder;
  QString m_season;
};

}  // namespace outyard::entry
