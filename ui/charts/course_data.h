// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QChar>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/base/date.h"
#include "core/sheet/shape.h"

/// The course of a colony, a yard or the outfit as plain values: what the chart draws, what the
/// table lists, what is written to files. Units are those that the person reads.
namespace outyard::charts {

struct BandPoint {
  base::Date date;
  double low = 0, median = 0, high = 0;
};
using Band = std::vector<BandPoint>;  ///< ascending

/// Something that was seen, with the error of the look.
struct SeenPoint {
  base::Date date;
  double low = 0, median = 0, high = 0;
  bool surprise = false;  ///< beyond what was expected by far
  QString words;          ///< of the surprise
};

/// One line of a lane with its band and its points.
struct Series {
  QString name;
  QString unit;
  sheet::Ink ink = sheet::Ink::Bees;
  bool broken = false;  ///< drawn dashed, so that two lines are told apart without colour
  Band past, ahead;     ///< up to today; from today on
  Band other;           ///< what the person tries out; empty when nothing is tried
  std::vector<SeenPoint> seen;
  [[nodiscard]] bool empty() const { return past.empty() && ahead.empty() && seen.empty(); }
};

struct Lane {
  QString name;
  QString unit;
  int decimals = 0;
  double height = 1;  ///< share of the drawing
  std::vector<Series> series;
};

struct WeatherPoint {
  enum class Kind { Observed, Forecast, Usual };
  base::Date date;
  double tmin = 0, tmax = 0;
  std::optional<double> rainMm;
  Kind kind = Kind::Usual;
  bool flight = false;  ///< warm and dry enough for bees to fly
  bool opens = false;   ///< warm and dry enough to open hives and lift combs
};

struct Tick {
  base::Date date;
  QChar letter;
  QString words;
};

struct CourseData {
  QString title;
  base::Date first, last, today;
  std::vector<Lane> lanes;
  std::vector<WeatherPoint> weather;
  QString temperatureUnit;
  std::vector<Tick> ticks;
  /// Days of looks at the bees: between them and after them the course is dotted when they are
  /// more than five weeks off.
  std::vector<base::Date> looks;
  QString tried;        ///< name of what is tried out, as the choice reads
  QStringList remarks;  ///< how often the band held, surprises, what trying it gives
};

/// After so many days without a look the course is dotted.
inline constexpr int kUnseenDays = 35;
/// True when the last look before the day lies too far back.
bool unseen(const CourseData& data, base::Date date);
/// The band on a day, on a straight line between its points.
std::optional<BandPoint> at(const Band& band, base::Date date);
/// The series' band on a day, past or ahead.
std::optional<BandPoint> at(const Series& series, base::Date date);

/// The day in words: what was and is expected, what was seen, the weather, the journal. lane -1 =
/// everything; lanes.size() = weather; beyond = journal.
QString dayWords(const CourseData& data, base::Date date, int lane = -1);
/// A number as the lane writes it: two significant figures, decimals where they say something.
QString numberText(double value, int decimals);
QString bandText(const BandPoint& point, int decimals);

}  // namespace outyard::charts
