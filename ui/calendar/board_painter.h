// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QPainter>
#include <QRectF>
#include <QStringList>
#include <optional>

#include "core/planning/season_calendar.h"
#include "ui/print/palette.h"

namespace outyard::calendar {

/// The lanes of a yard, from above: flow, dividing, boosts, treatments, honey, other work.
enum class Lane { Flow, Divide, Boost, Treat, Honey, Work };
inline constexpr int kLanes = 6;
/// Letter and name of a lane, for its bars and for the legend.
QString laneLetter(Lane lane);
QString laneName(Lane lane);

/// Where everything stands, in the painter's units; the same for window, paper and files.
struct BoardMeasures {
  QFont font;
  double names = 130, head = 40, week = 38, lane = 15, gap = 6, hours = 78;
  [[nodiscard]] double row() const { return kLanes * lane + gap; }
  [[nodiscard]] QSizeF sizeOf(const planning::SeasonCalendar& calendar) const;
  [[nodiscard]] QRectF cell(std::size_t yard, std::size_t week) const;
  /// For letters of that size; `names` is as wide as the names ask for.
  static BoardMeasures forFont(const QFont& font, const QStringList& names);
};

struct BoardLook {
  const print::Palette* palette = &print::Palette::light();
  QStringList names;  ///< of the yards, in the calendar's order
  std::optional<std::pair<std::size_t, std::size_t>> cursor;
  bool cursorHasFocus = false;
  /// Of a scrolled board: names and head stay where they are.
  QPointF scrolled;
  QSizeF view;  ///< empty = the whole board
};

/// Paints the board from (0, 0). What is done is filled, what is planned or expected stands in
/// outline, beyond the weeks that can be counted on in a dashed and fainter one; every bar carries
/// its letter.
void paintBoard(QPainter& painter, const planning::SeasonCalendar& calendar,
                const BoardMeasures& measures, const BoardLook& look);
/// A line with every sign and what it means.
void paintLegend(QPainter& painter, const QRectF& rect, const BoardMeasures& measures,
                 const print::Palette& palette);
double legendHeight(double width, const BoardMeasures& measures);

}  // namespace outyard::calendar
