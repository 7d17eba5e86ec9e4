// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <compare>
#include <functional>
#include <optional>
#include <vector>

#include "core/sheet/marks.h"

namespace outyard::widgets {

/// A comb of the stack, or with slot 0 the whole box.
struct StackPick {
  int box = 1;   ///< 1 = bottom
  int slot = 0;  ///< 1 = left
  auto operator<=>(const StackPick&) const = default;
};

/// The hive from the side, as the sheet's stack drawing has it, scaled to fit. Movable, its combs
/// and boxes can be picked and lifted by mouse and keys; what becomes of a lift is for the owner.
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

  /// Numbered grips beside the boxes, picks and lifts.
  void setMovable(bool movable);
  /// Words for a pick, for screen readers.
  void setDescriber(std::function<QString(const StackPick&)> words) { m_words = std::move(words); }
  /// Combs of one box or several, or one box; the last one is where the keys are.
  [[nodiscard]] const std::vector<StackPick>& picked() const { return m_picked; }
  void setPicked(std::vector<StackPick> picks);
  /// Comb or box (by its grip or walls) under the point.
  [[nodiscard]] std::optional<StackPick> pickAt(const QPointF& point) const;
  /// Where a comb dropped there would go in: in front of the comb that stands in the slot.
  [[nodiscard]] std::optional<StackPick> combSpotAt(const QPointF& point) const;
  /// The position that a box dropped there would get in a stack that it is new to.
  [[nodiscard]] int boxSpotAt(const QPointF& point) const;
  [[nodiscard]] int boxCount() const { return static_cast<int>(m_drawing.boxes.size()); }
  [[nodiscard]] int combCount(int box) const;
  /// Middle of a comb, or of a box's grip, in the widget.
  [[nodiscard]] QPointF middleOf(const StackPick& pick) const;

  /// What a lift would do here: a line where it goes in, or a frame round what it changes with.
  enum class Mark { None, Between, Onto };
  void setMark(Mark mark, const StackPick& at = {}, bool refused = false);

 Q_SIGNALS:
  void boxClicked(int position);
  void pickedChanged();
  void activated();
  void menuAsked(const QPoint& global);
  void lifted();
  void liftMoved(const QPoint& global);
  void liftDropped(const QPoint& global);
  /// Ctrl and an arrow: the lift goes on by keys.
  void liftStepped(int right, int up);
  void liftSetDown();
  void liftCancelled();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool event(QEvent* event) override;

 private:
  [[nodiscard]] QTransform toPixels() const;
  [[nodiscard]] QRectF rectOf(const StackPick& pick) const;
  [[nodiscard]] QRectF gripOf(int box) const;
  void paintPicks(QPainter& painter) const;
  void paintMark(QPainter& painter) const;
  void step(int right, int up, bool more);
  void describe();

  sheet::StackDrawing m_drawing;
  QRectF m_boundsMm;
  QString m_description;
  bool m_movable = false;
  std::function<QString(const StackPick&)> m_words;
  std::vector<StackPick> m_picked;
  std::optional<QPointF> m_pressed;
  bool m_lifting = false, m_keyLift = false;
  Mark m_mark = Mark::None;
  StackPick m_markAt;
  bool m_refused = false;
};

}  // namespace outyard::widgets
