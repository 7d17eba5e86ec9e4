// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_data.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "ui/adapt/words.h"

namespace outyard::charts {
namespace {

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

QString seriesWords(const CourseData& data, const Series& series, const Lane& lane,
                    base::Date date) {
  QStringList parts;
  for (const auto& seen : series.seen) {
    if (seen.date != date) continue;
    //: A quantity, the number counted and its unit.
    parts << Course::tr("%1 seen: %2 %3")
                 .arg(series.name,
                      bandText({date, seen.low, seen.median, seen.high}, lane.decimals),
                      series.unit)
                 .trimmed();
    if (seen.surprise) parts << seen.words;
  }
  if (const auto band = at(series, date)) {
    const QString form =
        date > data.today ? Course::tr("%1 expected: %2 %3") : Course::tr("%1 estimated: %2 %3");
    parts << form.arg(series.name, bandText(*band, lane.decimals), series.unit).trimmed();
  }
  if (const auto band = at(series.other, date)) {
    //: The number that what is tried out would give.
    parts << Course::tr("tried: %1 %2").arg(bandText(*band, lane.decimals), series.unit).trimmed();
  }
  return parts.join(QStringLiteral("; "));
}

QString weatherWords(const CourseData& data, base::Date date) {
  const auto it = std::find_if(data.weather.begin(), data.weather.end(),
                               [&](const WeatherPoint& w) { return w.date == date; });
  if (it == data.weather.end()) return {};
  QString text = Course::tr("%1 to %2 %3")
                     .arg(numberText(it->tmin, 0), numberText(it->tmax, 0), data.temperatureUnit);
  if (it->rainMm && *it->rainMm >= 0.05) {
    text += Course::tr(", %1 mm rain").arg(QLocale().toString(*it->rainMm, 'f', 1));
  }
  if (it->opens) {
    text += Course::tr(", warm and dry enough to lift combs");
  } else if (it->flight) {
    text += Course::tr(", a flight day");
  }
  switch (it->kind) {
    case WeatherPoint::Kind::Observed:
      return Course::tr("Weather %1").arg(text);
    case WeatherPoint::Kind::Forecast:
      return Course::tr("Weather forecast %1").arg(text);
    case WeatherPoint::Kind::Usual:
      return Course::tr("Weather usual for the day %1").arg(text);
  }
  return {};
}

}  // namespace

bool unseen(const CourseData& data, base::Date date) {
  const auto after = std::upper_bound(data.looks.begin(), data.looks.end(), date);
  return after == data.looks.begin() || date - *std::prev(after) > kUnseenDays;
}

std::optional<BandPoint> at(const Band& band, base::Date date) {
  const auto after = std::lower_bound(band.begin(), band.end(), date,
                                      [](const BandPoint& p, base::Date d) { return p.date < d; });
  if (after == band.end()) return std::nullopt;
  if (after->date == date) return *after;
  if (after == band.begin()) return std::nullopt;
  const BandPoint &a = *std::prev(after), &b = *after;
  const double share = static_cast<double>(date - a.date) / (b.date - a.date);
  const auto mix = [share](double x, double y) { return x + (y - x) * share; };
  return BandPoint{date, mix(a.low, b.low), mix(a.median, b.median), mix(a.high, b.high)};
}

std::optional<BandPoint> at(const Series& series, base::Date date) {
  const auto ahead = at(series.ahead, date);
  return ahead ? ahead : at(series.past, date);
}

QString numberText(double value, int decimals) {
  if (decimals > 0 && std::abs(value) < 9.95) return QLocale().toString(value, 'f', 1);
  if (std::abs(value) < 100) return QLocale().toString(std::lround(value));
  return adapt::roundNumber(value);
}

QString bandText(const BandPoint& point, int decimals) {
  return QStringLiteral("%1 (%2–%3)")
      .arg(numberText(point.median, decimals), numberText(point.low, decimals),
           numberText(point.high, decimals));
}

QString dayWords(const CourseData& data, base::Date date, int lane) {
  QStringList sentences;
  const int lanes = static_cast<int>(data.lanes.size());
  for (int i = 0; i < lanes; ++i) {
    if (lane >= 0 && lane != i) continue;
    for (const auto& series : data.lanes[static_cast<std::size_t>(i)].series) {
      sentences << seriesWords(data, series, data.lanes[static_cast<std::size_t>(i)], date);
    }
  }
  if (lane < 0 || lane == lanes) sentences << weatherWords(data, date);
  for (const auto& tick : data.ticks) {
    if (tick.date == date) sentences << QStringLiteral("%1 – %2").arg(tick.letter).arg(tick.words);
  }
  sentences.removeAll(QString());
  QString day = adapt::dateText(date);
  if (date == data.today) day = Course::tr("%1, today").arg(day);
  if (date <= data.last && unseen(data, date) && !data.looks.empty() && date > data.looks.front()) {
    sentences << Course::tr("not looked at for more than five weeks");
  }
  if (sentences.isEmpty()) sentences << Course::tr("nothing known");
  return Course::tr("%1: %2.").arg(day, sentences.join(QStringLiteral("; ")));
}

}  // namespace outyard::charts
