// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractButton>
#include <QFrame>
#include <QScrollArea>
#include <optional>
#include <vector>

#include "ui/rounds/round_board.h"

namespace outyard::widgets {
class SeasonHub;
}

class QGridLayout;
class QToolButton;
class QVBoxLayout;

namespace outyard::rounds {

struct StopKey {
  base::Date date;
  base::YardId yard;
  bool operator==(const StopKey&) const = default;
};

/// A yard on a day: drawn by ourselves, moved by the mouse or by Alt with the arrow keys.
class StopCard : public QAbstractButton {
  Q_OBJECT
 public:
  struct Text {
    QString name, work, workShort, drive, driveShort, warmth;
    Warmth warm = Warmth::Unknown;
    bool proposed = false, done = false;
    QString number;  ///< in the order of driving
  };
  StopCard(StopKey key, Text text, QWidget* parent = nullptr);
  [[nodiscard]] const StopKey& key() const { return m_key; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// Two lines instead of three, where the days would not fit else: the way is in the tool tip.
  void setDense(bool dense);
  [[nodiscard]] int heightWhen(bool dense) const;

 Q_SIGNALS:
  void moveAsked(int days);
  void stepAsked(int days, int stops);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

 private:
  StopKey m_key;
  Text m_text;
  std::optional<QPoint> m_pressed;
  bool m_dense = false;
};

/// The head of a day: date, hours against the day's hours, and what it does for.
class DayHead : public QAbstractButton {
  Q_OBJECT
 public:
  struct Text {
    QString day, sum, sumShort, warmth;
    Warmth warm = Warmth::Unknown;
    double share = 0;  ///< of the day's hours
    bool today = false, weekend = false;
  };
  explicit DayHead(QWidget* parent = nullptr);
  void setText(Text text);
  [[nodiscard]] QSize sizeHint() const override;

 Q_SIGNALS:
  void stepAsked(int days, int stops);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

 private:
  Text m_text;
};

/// One day of the board; takes a card that is dropped.
class DayCell : public QFrame {
  Q_OBJECT
 public:
  DayCell(base::Date date, QWidget* parent = nullptr);
  [[nodiscard]] base::Date date() const { return m_date; }
  [[nodiscard]] DayHead& head() const { return *m_head; }
  void addCard(StopCard* card);
  void setChosen(bool chosen);
  void setDense(bool dense);
  [[nodiscard]] int heightWhen(bool dense) const;
  [[nodiscard]] const std::vector<StopCard*>& cards() const { return m_cards; }

 Q_SIGNALS:
  void chosen();
  void dropped(const outyard::rounds::StopKey& stop);
  /// A card of the yard hangs over the day; nothing when it has gone again.
  void hovered(const std::optional<outyard::base::YardId>& yard);
  /// It hangs over that point of the screen.
  void hoveredAt(const QPoint& at);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dragMoveEvent(QDragMoveEvent* event) override;
  void dragLeaveEvent(QDragLeaveEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  base::Date m_date;
  DayHead* m_head;
  QVBoxLayout* m_layout;
  std::vector<StopCard*> m_cards;
  bool m_chosen = false, m_target = false;
};

/// The days of the board, a week in a row. Where both weeks do not fit, cards are drawn on two
/// lines; where they do not fit even then, a bar says which week is out of sight and leads to it.
class DayBoard : public QScrollArea {
  Q_OBJECT
 public:
  explicit DayBoard(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  /// Shows the board; what was chosen and has the keyboard stays so where it still stands.
  void show(const RoundBoard& board);
  using QScrollArea::show;
  void choose(base::Date day, const std::optional<base::YardId>& yard);
  [[nodiscard]] std::optional<base::Date> day() const { return m_day; }
  [[nodiscard]] const std::optional<base::YardId>& yard() const { return m_yard; }
  [[nodiscard]] StopCard* card(const StopKey& key) const;
  [[nodiscard]] DayCell* cell(base::Date day) const;
  /// The keyboard to the chosen card, else to the chosen day.
  void focusChosen();
  /// Height that all days take; dense: with cards on two lines.
  [[nodiscard]] int wholeHeight(bool dense) const;

 Q_SIGNALS:
  void chosenChanged();
  /// Chosen by hand, not by a change of the board.
  void picked();
  void moveAsked(const outyard::rounds::StopKey& stop, outyard::base::Date to);
  void menuAsked(const QPoint& at);

 protected:
  void contextMenuEvent(QContextMenuEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void heads();
  void fit();
  void showCue();
  /// Brings the week that is out of sight into sight, and the choice with it.
  void otherWeek();
  /// Scrolls on while a card is dragged near the edge.
  void dragScroll(const QPoint& screen);
  [[nodiscard]] bool secondWeekHidden() const;
  void step(base::Date from, const std::optional<base::YardId>& yard, int days, int stops);

  widgets::SeasonHub& m_hub;
  RoundBoard m_board;
  QWidget* m_page = nullptr;
  QToolButton* m_cue = nullptr;
  std::vector<DayCell*> m_cells;
  std::optional<base::Date> m_day;
  std::optional<base::YardId> m_yard, m_dragged;
};

}  // namespace outyard::rounds
