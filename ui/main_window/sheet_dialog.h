// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/base/date.h"
#include "core/base/ids.h"
#include "ui/widgets/session_model.h"

class QComboBox;
class QCompleter;
class QDateEdit;
class QLineEdit;

namespace outyard::main_window {

/// Which yard, which day, which paper.
class SheetDialog : public QDialog {
  Q_OBJECT
 public:
  explicit SheetDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  [[nodiscard]] base::YardId yard() const;
  [[nodiscard]] base::Date date() const;
  [[nodiscard]] bool letterPaper() const;

 private:
  QComboBox *m_yard, *m_paper;
  QDateEdit* m_date;
};

/// A hive's number, with the numbers of the season to choose from.
class FindDialog : public QDialog {
  Q_OBJECT
 public:
  explicit FindDialog(const widgets::SeasonHub& hub, QWidget* parent = nullptr);
  [[nodiscard]] QString number() const;

 private:
  QLineEdit* m_number;
};

}  // namespace outyard::main_window
