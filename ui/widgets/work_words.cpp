// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/work_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::widgets {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Work)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// Words as ui/adapt has them, or nothing where a code is unknown.
QString known(std::string key, const std::string& last) {
  base::Message message;
  message.key = std::move(key);
  message.key += last;
  return adapt::hasWords(message.key) ? adapt::words(message) : QString();
}

QString number(double value) {
  return QLocale().toString(value, 'f', std::abs(value - std::round(value)) < 0.05 ? 0 : 1);
}

}  // namespace

QString yardName(const apiary::Season& season, const base::YardId& yard) {
  const auto* row = season.yard(yard);
  return row && !row->name.empty() ? qs(row->name) : qs(yard.str());
}

QString shortDay(base::Date day) {
  //: Day and month without the year: see QLocale::toString.
  return QLocale().toString(adapt::toQDate(day), Words::tr("d MMM"));
}

QString weekDay(base::Date day) {
  //: Weekday, day and month without the year: see QLocale::toString.
  return QLocale().toString(adapt::toQDate(day), Words::tr("ddd d MMM"));
}

QString windowText(const planning::DueTask& task, base::Date today) {
  if (task.overdue(today)) return Words::tr("overdue since %1").arg(shortDay(task.latest));
  if (task.latest == today) return Words::tr("today");
  if (task.earliest <= today) return Words::tr("by %1").arg(shortDay(task.latest));
  if (task.earliest == task.latest) return Words::tr("on %1").arg(shortDay(task.latest));
  return Words::tr("%1 – %2").arg(shortDay(task.earliest), shortDay(task.latest));
}

QString percentText(const planning::DueTask& task) {
  if (task.rule == "planned" || task.chance >= 0.995) return {};
  return Words::tr("%1 %").arg(QLocale().toString(std::lround(task.chance * 100)));
}

QString workName(const planning::DueTask& task) {
  // What was planned is named as on the sheet that goes along.
  QString name = task.rule == "planned" ? known("sheet.task.", task.kind) : QString();
  if (name.isEmpty()) name = adapt::words(planning::dueName(task));
  if (!name.isEmpty()) name[0] = name.at(0).toUpper();
  return name;
}

QString workText(const planning::DueTask& task, const adapt::Units& units) {
  QString name = workName(task);
  if (task.amount && (task.unit == apiary::Unit::L || task.unit == apiary::Unit::Kg)) {
    name = Words::tr("%1, %2").arg(name, countText(*task.amount, task.unit, units));
    if (task.what) name += u' ' + codeText("goods", std::string(apiary::code(*task.what)));
  }
  if (task.otherHive && task.otherHive != task.hive) {
    name = Words::tr("%1 with %2").arg(name, qs(task.otherHive->str()));
  }
  return name;
}

QString plannedText(const apiary::Task& task, const adapt::Units& units) {
  planning::DueTask work;
  work.rule = "planned";
  work.kind = task.kind;
  work.hive = task.hive;
  work.otherHive = task.otherHive;
  work.amount = task.amount;
  work.unit = task.unit;
  work.what = task.what;
  return workText(work, units);
}

QString reasonText(const planning::DueTask& task) {
  return task.rule == "planned" && !task.plannedWhy.empty() ? qs(task.plannedWhy)
                                                            : adapt::words(task.why);
}

QStringList cautionTexts(const planning::DueTask& task) {
  QStringList out;
  for (const auto& caution : task.cautions) out << adapt::words(caution);
  return out;
}

QString itemText(const std::string& item) {
  const auto colon = item.find(':');
  const std::string kind = item.substr(0, colon);
  if (colon != std::string::npos) {
    const QString type = codeText("frame_type", item.substr(colon + 1));
    if (kind == "chamber") return Words::tr("chamber, %1").arg(type);
    if (kind == "super") return Words::tr("super, %1").arg(type);
    if (kind == "drawn_comb") return Words::tr("drawn comb, %1").arg(type);
    if (kind == "foundation") return Words::tr("foundation, %1").arg(type);
    return QStringLiteral("%1, %2").arg(qs(kind).replace(u'_', u' '), type);
  }
  if (kind == "treatment") return Words::tr("mite treatment, doses");
  if (kind == "queen") return Words::tr("queens or queen cells");
  QString name = known("sheet.gear.", kind);
  if (name.isEmpty()) name = known("code.goods.", kind);
  return name.isEmpty() ? qs(kind).replace(u'_', u' ') : name;
}

QString countText(double count, const std::optional<apiary::Unit>& unit,
                  const adapt::Units& units) {
  if (unit == apiary::Unit::Kg) {
    return QStringLiteral("%1\u00A0%2")
        .arg(number(units.shown(base::Mass{count})), units.massUnit());
  }
  if (unit == apiary::Unit::L) {
    const bool us = units.shown(base::Mass{1}) > 1.5;  // pounds go with gallons
    return us ? Words::tr("%1\u00A0gal").arg(number(base::inUsGallons({count})))
              : Words::tr("%1\u00A0l").arg(number(count));
  }
  return number(count);
}

}  // namespace outyard::widgets
