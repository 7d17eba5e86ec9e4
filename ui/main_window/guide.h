// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFrame>

namespace outyard::main_window {

/// A few lines for the first start, above the places until they are dismissed.
class Guide : public QFrame {
  Q_OBJECT
 public:
  explicit Guide(QWidget* parent = nullptr);

 Q_SIGNALS:
  void dismissed();
};

}  // namespace outyard::main_window
