// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QMetaType>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "ui/adapt/units.h"
#include "ui/desk/desk_runner.h"

namespace outyard::desk {

/// One line of the desk, ready to be drawn on screen and on paper: nothing of it is worked out
/// while it is painted.
struct Row {
  enum class Kind { Yard, Task, Risk, Gear, Look, Text };
  Kind kind = Kind::Text;
  QString lead;         ///< in bold: the hive's number, the yard's name, the gear
  QString title;        ///< beside it: the work
  QString extra;        ///< how likely, or that it is planned
  QString right;        ///< at the right edge: the window
  bool urgent = false;  ///< `right` says so: overdue, short
  bool planned = false;
  QStringList lines;  ///< below: reasons
  QString badges;     ///< a letter for each line, blank = none; may be shorter
  QString toolTip;
  QString spoken;                   ///< all of it, for keyboard search and screen readers
  std::optional<std::size_t> days;  ///< into DueList::yards: its strip stands below
  std::vector<std::size_t> tasks;   ///< into DueList::tasks
  std::optional<base::YardId> yard;
  std::optional<base::HiveId> hive;
};

/// Which work the list by yard shows.
enum class Show { All, Overdue, ToPlan };

struct RowMaker {
  const apiary::Season& season;
  const planning::DeskFacts& facts;
  adapt::Units units;

  [[nodiscard]] base::Date today() const { return facts.due.ask.from; }
  [[nodiscard]] Row yard(const planning::YardWork& work) const;
  [[nodiscard]] Row task(std::size_t index) const;
  /// The work of a yard that is to be shown, in its order.
  [[nodiscard]] std::vector<std::size_t> shown(const planning::YardWork& work, Show show) const;
  [[nodiscard]] std::vector<Row> risk() const;
  [[nodiscard]] std::vector<Row> gear() const;
  [[nodiscard]] std::vector<Row> looks() const;

 private:
  [[nodiscard]] Row said(const QString& text) const;
};

/// "4 yards, 61 pieces of work: 5 overdue, 12 planned. 9 hives at risk."
QString sumText(const planning::DeskFacts& facts);

}  // namespace outyard::desk

Q_DECLARE_METATYPE(outyard::desk::Row)
