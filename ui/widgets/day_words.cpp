// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/day_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "ui/widgets/work_words.h"

namespace outyard::widgets {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Day)
};

}  // namespace

Warmth warmthOf(const planning::YardDay& day) {
  if (!day.tmaxC) return Warmth::Unknown;
  if (day.combWarm) return Warmth::Combs;
  return day.lidWarm ? Warmth::Lid : Warmth::Shut;
}

QString warmthWords(Warmth warmth) {
  switch (warmth) {
    case Warmth::Unknown:
      return Words::tr("no weather known");
    case Warmth::Shut:
      return Words::tr("leave shut: too cold or wet");
    case Warmth::Lid:
      return Words::tr("warm and dry enough to lift the lid");
    case Warmth::Combs:
      return Words::tr("warm and dry enough to take combs out");
  }
  return {};
}

QString dayWords(const planning::YardDay& day, const adapt::Units& units) {
  QString text = QStringLiteral("%1: %2").arg(weekDay(day.date), warmthWords(warmthOf(day)));
  if (!day.tmaxC) return text;
  text += Words::tr(", up to %1").arg(units.text(base::Temperature{*day.tmaxC}));
  if (!day.rainMm) return text + Words::tr(", rain not known");
  if (!isWet(day)) return text + Words::tr(", dry");
  return text + Words::tr(", %1 mm of rain").arg(QLocale().toString(*day.rainMm, 'f', 0));
}

bool isWet(const planning::YardDay& day) {
  constexpr double kDropMm = 0.5;
  return day.rainMm && *day.rainMm >= kDropMm;
}

}  // namespace outyard::widgets
