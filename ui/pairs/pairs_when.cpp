// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_when.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/base/random.h"
#include "ui/adapt/words.h"
#include "ui/pairs/pairs_notes.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/plan_room.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

using Row = QStringList;
using apiary::Method;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString headHtml(const QString& text) {
  return QStringLiteral("<h3 style='margin:10px 0 2px 0'>%1</h3>").arg(text.toHtmlEscaped());
}

QString paragraphHtml(const QString& text) {
  return QStringLiteral("<p style='margin:2px 0'>%1</p>").arg(text.toHtmlEscaped());
}

QString listHtml(const QString& heading, const std::vector<base::Message>& messages) {
  if (messages.empty()) return {};
  QString html = QStringLiteral(
                     "<p style='margin:4px 0 0 0'><b>%1</b></p><ul style='margin:0 0 0 14px; "
                     "-qt-list-indent:0'>")
                     .arg(heading.toHtmlEscaped());
  for (const auto& m : messages) {
    html += QStringLiteral("<li>%1</li>").arg(adapt::words(m).toHtmlEscaped());
  }
  return html + QStringLiteral("</ul>");
}

QString tableHtml(const Row& head, const std::vector<Row>& rows) {
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='4'><tr>");
  for (const auto& h : head) {
    html += QStringLiteral("<th align='left'>%1</th>").arg(h.toHtmlEscaped());
  }
  html += QStringLiteral("</tr>");
  for (const auto& row : rows) {
    html += QStringLiteral("<tr>");
    for (const auto& cell : row) {
      html += QStringLiteral("<td>%1</td>").arg(cell.toHtmlEscaped());
    }
    html += QStringLiteral("</tr>");
  }
  return html + QStringLiteral("</table>");
}

QString weatherText(const std::optional<planning::DayWeather>& day) {
  if (!day) return Words::tr("nothing entered for that day");
  const QLocale locale;
  const auto degrees = [](double c) { return adapt::roundNumber(std::round(c)); };
  QString text = Words::tr("%1 to %2 °C").arg(degrees(day->tminC), degrees(day->tmaxC));
  if (day->rainMm) text += Words::tr(", rain %1 mm").arg(locale.toString(*day->rainMm, 'f', 0));
  if (day->windMs) text += Words::tr(", wind %1 m/s").arg(locale.toString(*day->windMs, 'f', 0));
  switch (day->kind) {
    case apiary::WeatherKind::Observed:
      return Words::tr("%1 (measured)").arg(text);
    case apiary::WeatherKind::Forecast:
      return Words::tr("%1 (forecast)").arg(text);
    case apiary::WeatherKind::Normal:
      return Words::tr("%1 (usual for the day; forecast not entered)").arg(text);
  }
  return text;
}

/// What stands against the day alone; the days that will do have a column of their own.
QString barText(const base::Message& bar) {
  const auto* why = bar.args.size() > 1 ? std::get_if<base::Message>(&bar.args[1]) : nullptr;
  const QString text = why ? adapt::words(*why) : adapt::words(bar);
  return Words::tr("Wait: %1").arg(text);
}

QString hoursText(double hours) {
  return hours < 0.95 ? Words::tr("About %1 minutes of work at the hives, driving not counted.")
                            .arg(static_cast<int>(std::lround(hours * 12)) * 5)
                      : Words::tr("About %1 h of work at the hives, driving not counted.")
                            .arg(adapt::roundNumber(std::round(hours * 10) / 10));
}

/// What the plan asks for, gathered.
struct Work {
  std::map<Method, std::vector<const planning::BoostOption*>> byMethod;
  std::set<std::pair<base::YardId, Method>> where;
  std::map<std::string, int> gear;
  double hours = 0;
};

Work workOf(const planning::BoostPlan& plan) {
  Work work;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!o || planning::isVisit(*o) || o->method == Method::Leave) continue;
    work.byMethod[o->method].push_back(o);
    work.hours += o->hours;
    const auto yard = plan.problem.yardOf.find(o->colony.str());
    if (yard != plan.problem.yardOf.end()) work.where.insert({yard->second, o->method});
    for (const auto& [item, count] : o->gear) work.gear[item] += count;
  }
  return work;
}

QString weatherHtml(const PlanOutcome& outcome, const apiary::Season& season, const Work& work) {
  const auto& problem = outcome.plan->problem;
  std::set<base::YardId> shut;  // foul brood: no weather opens these
  for (const auto& j : problem.judgements) {
    const auto yard = problem.yardOf.find(j.colony.str());
    if (j.healthBar && j.healthBar->key.starts_with("health.foul_brood") &&
        yard != problem.yardOf.end()) {
      shut.insert(yard->second);
    }
  }
  std::vector<Row> rows;
  for (const auto& w : outcome.weather) {
    if (shut.count(w.yard) > 0) continue;
    // Before any pair is made the two that depend most on the weather are told.
    const bool wanted = work.byMethod.empty()
                            ? w.method == Method::Stack || w.method == Method::SealedFrames
                            : work.where.count({w.yard, w.method}) > 0;
    if (!wanted) continue;
    QString verdict;
    if (w.bar) {
      verdict = barText(*w.bar);
    } else if (!w.day) {
      verdict = Words::tr("Not known: enter the forecast first, then look again.");
    } else {
      verdict = Words::tr("Warm enough.");
    }
    rows.push_back(
        {yardText(season, w.yard), methodText(w.method), weatherText(w.day), verdict,
         w.goodDays.empty() ? Words::tr("none known in three weeks") : daysText(w.goodDays)});
  }
  QString html;
  const QStringList foul = foulBroodLines(problem);
  if (!foul.isEmpty()) {
    html += headHtml(Words::tr("Stop: foul brood suspected"));
    for (const auto& line : foul) html += paragraphHtml(line);
    html +=
        paragraphHtml(Words::tr("Nothing is planned there, whatever the weather; clean the "
                                "tools before another yard."));
  }
  if (rows.empty()) return html;
  return html + headHtml(Words::tr("Weather on %1").arg(adapt::dateText(problem.request.date))) +
         tableHtml({Words::tr("Yard"), Words::tr("Work"), Words::tr("Day"), Words::tr("Will it do"),
                    Words::tr("Days that will do")},
                   rows);
}

QString gearHtml(const PlanOutcome& outcome, const GearPrices& prices, const Work& work) {
  const auto& problem = outcome.plan->problem;
  std::map<std::string, double> worth;
  for (const auto& more : prices) worth[more.item] = more.worth;
  std::map<std::string, int> items = work.gear;
  for (const auto& [item, more] : worth) items.try_emplace(item, 0);
  QString html = headHtml(Words::tr("What to load"));
  std::vector<Row> rows;
  for (const auto& [item, count] : items) {
    const auto counted = problem.gear.find(item);
    QString state;
    if (counted == problem.gear.end()) {
      state = Words::tr("never counted: taken as enough");
    } else if (counted->second < count) {
      state = Words::tr("short by %1").arg(count - counted->second);
    } else if (worth.count(item) > 0) {
      state = counted->second == 0 ? Words::tr("none at hand") : Words::tr("all in use");
    } else {
      state = Words::tr("enough");
    }
    const auto more = worth.find(item);
    rows.push_back(
        {gearText(item), QString::number(count),
         counted == problem.gear.end() ? QStringLiteral("–") : QString::number(counted->second),
         state,
         more == worth.end() ? QStringLiteral("–")
                             : Words::tr("+%1").arg(worthText(more->second, problem))});
  }
  if (rows.empty()) {
    html += paragraphHtml(Words::tr("Nothing beyond the usual tools and gear against stings."));
  } else {
    html += tableHtml({Words::tr("Gear"), Words::tr("Needed"), Words::tr("Counted"),
                       Words::tr("State"), Words::tr("One more would add")},
                      rows);
  }
  return work.byMethod.empty() ? html : html + paragraphHtml(hoursText(work.hours));
}

/// The reason of a task without the names of its colonies, so that like tasks stand in one line.
std::string unnamed(const base::Message& message) {
  base::Message general = message;
  if (message.key.starts_with("planning.task.") && !general.args.empty()) {
    general.args[0] = Words::tr("the small one").toStdString();
    if (general.args.size() > 1) general.args[1] = Words::tr("the donor").toStdString();
  }
  QString text = adapt::words(general);
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text.toStdString();
}

/// The tasks that accepting the plan makes beside the work itself, with their days.
QString returnsHtml(const planning::BoostPlan& plan, const apiary::Season& season) {
  base::SeededIds ids(1);
  const auto day = plan.problem.request.date;
  std::map<std::tuple<base::Date, base::Date, std::string, std::string>, QStringList> groups;
  for (const auto& t : planning::accept(plan, ids, {}, unnamed).tasks) {
    if (!t.earliest || *t.earliest == day) continue;
    groups[{*t.earliest, t.latest.value_or(*t.earliest), t.yard ? t.yard->str() : std::string(),
            t.why}]
        << (t.hive ? qs(t.hive->str()) : QString());
  }
  if (groups.empty()) return {};
  std::vector<Row> rows;
  for (auto& [key, hives] : groups) {
    const auto& [from, to, yard, why] = key;
    std::vector<base::Date> days;
    for (auto d = from; d <= to; d = d.plusDays(1)) days.push_back(d);
    hives.removeDuplicates();
    rows.push_back({daysText(days), yardText(season, base::YardId(yard)),
                    hives.join(QStringLiteral(", ")), qs(why)});
  }
  return headHtml(Words::tr("Before and after")) +
         tableHtml({Words::tr("When"), Words::tr("Yard"), Words::tr("Hives"), Words::tr("What")},
                   rows);
}

QString pairHtml(const planning::BoostOption& o, const planning::MethodGuide& guide,
                 const PlanRoom& room) {
  const QString name = colonyText(o.colony, o.hive);
  QString line =
      QStringLiteral("<b>%1</b>: %2").arg(name.toHtmlEscaped(), optionText(o).toHtmlEscaped());
  for (const auto& caution : o.cautions) {
    // What holds for every pair of the method stands once, under the cautions below.
    const bool general =
        std::find(guide.cautions.begin(), guide.cautions.end(), caution) != guide.cautions.end();
    if (!general) line += QStringLiteral("; ") + adapt::words(caution).toHtmlEscaped();
  }
  if (o.donorColony) {
    const auto* b = room.planB(o);
    const QString instead = b ? Words::tr("Plan B, if %1 will not do on the day: %2.")
                                    .arg(colonyText(*o.donorColony, *o.donorHive), optionText(*b))
                              : Words::tr("No plan B: leave it as it is if it cannot be done.");
    line += QStringLiteral("<br>") + instead.toHtmlEscaped();
    if (o.method == Method::Stack) {
      line += u' ' +
              Words::tr("If you see no eggs in %1: do not set it over.").arg(name).toHtmlEscaped();
    }
  }
  return QStringLiteral("<li>%1</li>").arg(line);
}

}  // namespace

QString whenHtml(const PlanOutcome& outcome, const GearPrices& prices,
                 const apiary::Season& season) {
  if (!outcome.plan) return {};
  const auto& plan = *outcome.plan;
  const Work work = workOf(plan);
  QString html = weatherHtml(outcome, season, work);
  if (work.byMethod.empty()) {
    html += paragraphHtml(Words::tr("The plan asks for no work on this day."));
    return prices.empty() ? html : html + gearHtml(outcome, prices, work);
  }
  html += gearHtml(outcome, prices, work) + returnsHtml(plan, season);
  const PlanRoom room(plan);
  for (const auto& [method, options] : work.byMethod) {
    html += QStringLiteral(
                "<hr><h3 style='margin:4px 0 2px 0'>%1</h3><ul style='margin:0 0 0 14px; "
                "-qt-list-indent:0'>")
                .arg(methodText(method).toHtmlEscaped());
    const auto guide = planning::methodGuide(method);
    for (const auto* o : options) html += pairHtml(*o, guide, room);
    html += QStringLiteral("</ul>");
    html += listHtml(Words::tr("Needed"), guide.needs);
    html += listHtml(Words::tr("Steps"), guide.steps);
    html += listHtml(Words::tr("Come back"), guide.returns);
    html += listHtml(Words::tr("Cautions"), guide.cautions);
  }
  return html;
}

}  // namespace outyard::pairs
