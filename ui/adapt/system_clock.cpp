// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/system_clock.h"

#include <QDateTime>

namespace outyard::adapt {

base::Date SystemClock::today() const {
  return fromQDate(QDate::currentDate());
}

std::string SystemClock::nowUtc() const {
  return QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toStdString();
}

QDate toQDate(base::Date date) {
  return {date.year(), date.month(), date.day()};
}

base::Date fromQDate(const QDate& date) {
  const auto made = base::Date::fromYmd(date.year(), date.month(), date.day());
  // Days since 1970-01-01 hold outside 1900 to 2199 too; validation names such a year later.
  return made ? *made : base::Date::fromDays(static_cast<int>(date.toJulianDay() - 2440588));
}

}  // namespace outyard::adapt
