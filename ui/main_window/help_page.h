// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

namespace outyard::main_window {

/// A page of resources/help with its pictures, to read and scroll.
class HelpPage : public QDialog {
  Q_OBJECT
 public:
  /// `name` without folder and ending: "calibration".
  HelpPage(const QString& name, const QString& title, QWidget* parent = nullptr);
};

}  // namespace outyard::main_window
