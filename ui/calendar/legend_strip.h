// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

namespace outyard::calendar {

/// The signs of the board below it.
class LegendStrip : public QWidget {
  Q_OBJECT
 public:
  explicit LegendStrip(QWidget* parent = nullptr);
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
};

}  // namespace outyard::calendar
