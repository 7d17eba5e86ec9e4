// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

namespace outyard::yards {

/// What the marks and the letters beside the numbers mean.
class Legend : public QWidget {
  Q_OBJECT
 public:
  explicit Legend(QWidget* parent = nullptr);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void rebuild();
};

}  // namespace outyard::yards
