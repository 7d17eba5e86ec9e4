// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "ui/widgets/session_model.h"

class QLineEdit;

namespace outyard::main_window {

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
