// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "ui/hive/comb_model.h"

namespace outyard::hive {

/// The face of one comb side in eighths, 4 wide and 2 high. Arrow keys move, a letter fills the
/// eighth and goes on, Shift with a letter fills the whole side, Delete takes an eighth back, a
/// click fills the eighth with the content last used.
class CombFaceEdit : public QWidget {
  Q_OBJECT
 public:
  explicit CombFaceEdit(CombModel& model, QWidget* parent = nullptr);
  void setRow(int row);  ///< -1 = none
  [[nodiscard]] int row() const { return m_row; }
  [[nodiscard]] int current() const { return m_current; }
  [[nodiscard]] QSize sizeHint() const override { return {260, 170}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {200, 130}; }

 Q_SIGNALS:
  /// The whole side was filled in: the next one may follow.
  void sideFilled();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  [[nodiscard]] QRectF cell(int eighth) const;
  void describe();

  CombModel& m_model;
  int m_row = -1;
  int m_current = 0;
  int m_last = 0;  ///< content that a click fills in
};

/// The key to a comb's face: each content with its ink, hatch, word and letter.
class ContentLegend : public QWidget {
  Q_OBJECT
 public:
  explicit ContentLegend(bool withKeys, QWidget* parent = nullptr);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return {120, 24}; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  /// Lays the entries out in lines; paints them when a painter is given. Returns the height.
  int laidOut(int width, QPainter* painter) const;
  bool m_withKeys;
};

}  // namespace outyard::hive
