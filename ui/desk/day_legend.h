// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

namespace outyard::desk {

/// What the hives in the strips of days mean, in one line.
class DayLegend : public QWidget {
  Q_OBJECT
 public:
  explicit DayLegend(QWidget* parent = nullptr);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void draw();
};

}  // namespace outyard::desk
