// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>

#include "core/sheet/marks.h"

namespace outyard::widgets {

/// The hive from the side, as the sheet's stack drawing has it, scaled to fit.
class StackView : public QWidget {
  Q_OBJECT
 public:
  explicit StackView(QWidget* parent = nullptr);
  void setDrawing(sheet::StackDrawing drawing, const QString& description);
  void clear();
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return false; }
  /// Position of the box under a point of the widget, 1 = bottom.
  [[nodiscard]] std::optional<int> boxAt(const QPointF& point) const;

 Q_SIGNALS:
  void boxClicked(int position);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  [[nodiscard]] QTransform toPixels() const;

  sheet::StackDrawing m_drawing;
  QRectF m_boundsMm;
};

}  // namespace outyard::widgets
