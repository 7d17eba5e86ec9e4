// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/planning/boost_rows.h"
#include "core/planning/boost_words.h"
#include "ui/adapt/words.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
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

QString tableHtml(const QStringList& head, const std::vector<QStringList>& rows) {
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
  QString text = Words::tr("%1 to %2 °C")
                     .arg(locale.toString(day->tminC, 'f', 0), locale.toString(day->tmaxC, 'f', 0));
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

std::string csvCell(std::string text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

}  // namespace

QString methodText(apiary::Method method) {
  return adapt::words(planning::methodWord(method));
}

QString optionText(const planning::BoostOption& option) {
  return adapt::words(planning::optionWords(option));
}

QString gainText(const planning::BoostOption& option) {
  if (option.gain.high <= 0) return QStringLiteral("–");
  return adapt::band(option.gain.median, option.gain.low, option.gain.high);
}

QString worthText(double worth, const planning::BoostProblem& problem) {
  if (problem.basis != "forecast")
    return Words::tr("%1 bees").arg(adapt::roundNumber(worth * 1000));
  return Words::tr("%1 usable colonies").arg(QLocale().toString(worth, 'f', 2));
}

QString chanceText(const planning::BoostOption& option) {
  if (!option.chance) return QStringLiteral("–");
  const auto percent = [](double share) {
    return QLocale().toString(static_cast<int>(std::lround(100 * share)));
  };
  if (option.method == apiary::Method::Leave) {
    return Words::tr("%1 %").arg(percent(option.chance->receiverWithout));
  }
  const bool unite = option.method == apiary::Method::Unite;
  return Words::tr("%1 → %2 %")
      .arg(percent(unite ? option.chance->donorWithout : option.chance->receiverWithout),
           percent(unite ? option.chance->donorWith : option.chance->receiverWith));
}

QString gearText(const std::string& item) {
  const auto colon = item.find(':');
  const std::string kind = item.substr(0, colon);
  QString name = qs(kind).replace(u'_', u' ');
  if (kind == "excluder") name = Words::tr("excluder");
  if (kind == "chamber") name = Words::tr("chamber");
  if (kind == "super") name = Words::tr("super");
  if (kind == "drawn_comb") name = Words::tr("drawn comb");
  if (kind == "foundation") name = Words::tr("foundation");
  if (kind == "floor") name = Words::tr("floor");
  if (kind == "cover") name = Words::tr("cover");
  if (kind == "feeder") name = Words::tr("feeder");
  if (kind == "paper") name = Words::tr("sheet of newspaper");
  if (colon == std::string::npos) return name;
  base::Message type;
  type.key = "code.frame_type." + item.substr(colon + 1);
  const QString typeName =
      adapt::hasWords(type.key) ? adapt::words(type) : qs(item.substr(colon + 1));
  return QStringLiteral("%1, %2").arg(name, typeName);
}

QString sentences(const std::vector<base::Message>& messages) {
  QStringList all;
  for (const auto& m : messages) all << adapt::words(m);
  return all.join(u' ');
}

QString colonyText(const base::ColonyId& colony, const base::HiveId& hive) {
  return colony.str() == hive.str() ? qs(hive.str())
                                    : Words::tr("%1 in %2").arg(qs(colony.str()), qs(hive.str()));
}

const strength::Judgement* judgementOf(const planning::BoostProblem& problem,
                                       const base::ColonyId& colony) {
  for (const auto& j : problem.judgements) {
    if (j.colony == colony) return &j;
  }
  return nullptr;
}

QString whenHtml(const PlanOutcome& outcome, const apiary::Season& season) {
  if (!outcome.plan) return {};
  const auto& plan = *outcome.plan;
  const auto& problem = plan.problem;
  std::map<apiary::Method, std::vector<const planning::BoostOption*>> byMethod;
  std::set<std::pair<base::YardId, apiary::Method>> work;
  std::map<std::string, int> gear;
  double hours = 0;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!o || planning::isVisit(*o) || o->method == apiary::Method::Leave) continue;
    byMethod[o->method].push_back(o);
    hours += o->hours;
    if (const auto yard = problem.yardOf.find(o->colony.str()); yard != problem.yardOf.end()) {
      work.insert({yard->second, o->method});
    }
    for (const auto& [item, count] : o->gear) gear[item] += count;
  }
  QString html = QStringLiteral("<h3 style='margin:0 0 2px 0'>%1</h3>")
                     .arg(Words::tr("Weather on %1")
                              .arg(adapt::dateText(problem.request.date))
                              .toHtmlEscaped());
  std::vector<QStringList> rows;
  for (const auto& w : outcome.weather) {
    // Before any pair is made the two that depend most on the weather are told.
    const bool wanted = byMethod.empty() ? w.method == apiary::Method::Stack ||
                                               w.method == apiary::Method::SealedFrames
                                         : work.count({w.yard, w.method}) > 0;
    if (!wanted) continue;
    const auto* yard = season.yard(w.yard);
    QString verdict;
    if (w.bar) {
      verdict = adapt::words(*w.bar);
    } else if (!w.day) {
      verdict = Words::tr("Not known: enter the forecast first, then look again.");
    } else {
      verdict = Words::tr("Warm enough.");
    }
    rows.push_back(
        {yard && !yard->name.empty() ? qs(yard->name) : qs(w.yard.str()), methodText(w.method),
         weatherText(w.day), verdict,
         w.firstDay ? adapt::dateText(*w.firstDay) : Words::tr("none known in three weeks")});
  }
  html += tableHtml({Words::tr("Yard"), Words::tr("Work"), Words::tr("Day"),
                     Words::tr("Will it do"), Words::tr("First day that will do")},
                    rows);
  if (byMethod.empty()) {
    return html + QStringLiteral("<p>%1</p>")
                      .arg(Words::tr("The plan asks for no work on this day.").toHtmlEscaped());
  }
  html += QStringLiteral("<h3 style='margin:10px 0 2px 0'>%1</h3>")
              .arg(Words::tr("What to load").toHtmlEscaped());
  rows.clear();
  for (const auto& [item, count] : gear) {
    const auto counted = problem.gear.find(item);
    QString state;
    if (counted == problem.gear.end()) {
      state = Words::tr("never counted: taken as enough");
    } else if (counted->second < count) {
      state = Words::tr("short by %1").arg(count - counted->second);
    } else {
      state = Words::tr("enough");
    }
    rows.push_back(
        {gearText(item), QString::number(count),
         counted == problem.gear.end() ? QStringLiteral("–") : QString::number(counted->second),
         state});
  }
  if (rows.empty()) {
    html += QStringLiteral("<p style='margin:0'>%1</p>")
                .arg(Words::tr("Nothing beyond the usual tools and gear against stings.")
                         .toHtmlEscaped());
  } else {
    html += tableHtml(
        {Words::tr("Gear"), Words::tr("Needed"), Words::tr("Counted"), Words::tr("State")}, rows);
  }
  html += QStringLiteral("<p style='margin:2px 0'>%1</p>")
              .arg(Words::tr("About %1 hours of work, driving not counted.")
                       .arg(QLocale().toString(hours, 'f', 1))
                       .toHtmlEscaped());
  for (const auto& [method, options] : byMethod) {
    html += QStringLiteral(
                "<hr><h3 style='margin:4px 0 2px 0'>%1</h3><ul style='margin:0 0 0 14px; "
                "-qt-list-indent:0'>")
                .arg(methodText(method).toHtmlEscaped());
    const auto guide = planning::methodGuide(method);
    for (const auto* o : options) {
      QString line =
          QStringLiteral("<b>%1</b>: %2")
              .arg(colonyText(o->colony, o->hive).toHtmlEscaped(), optionText(*o).toHtmlEscaped());
      for (const auto& caution : o->cautions) {
        // What holds for every pair of the method stands once, under the cautions below.
        const bool general = std::find(guide.cautions.begin(), guide.cautions.end(), caution) !=
                             guide.cautions.end();
        if (!general) line += QStringLiteral("; ") + adapt::words(caution).toHtmlEscaped();
      }
      html += QStringLiteral("<li>%1</li>").arg(line);
    }
    html += QStringLiteral("</ul>");
    html += listHtml(Words::tr("Needed"), guide.needs);
    html += listHtml(Words::tr("Steps"), guide.steps);
    html += listHtml(Words::tr("Come back"), guide.returns);
    html += listHtml(Words::tr("Cautions"), guide.cautions);
  }
  return html;
}

QString planCsv(const planning::BoostPlan& plan) {
  std::string out =
      "colony,hive,verdict,method,donor_colony,donor_hive,bees_moved,frames_moved,gain,gain_low,"
      "gain_high,donor_cost,why\n";
  for (const auto& row : planning::boostRows(plan)) {
    const auto* o = row.option;
    std::vector<std::string> cells{row.colony.str(), row.hive.str(),
                                   std::string(apiary::code(row.verdict))};
    if (o) {
      cells.insert(cells.end(), {std::string(apiary::code(o->method)),
                                 o->donorColony ? o->donorColony->str() : "",
                                 o->donorHive ? o->donorHive->str() : "",
                                 base::shortest(o->beesMoved), base::shortest(o->framesMoved),
                                 base::shortest(o->gain.median), base::shortest(o->gain.low),
                                 base::shortest(o->gain.high), base::shortest(o->donorCost)});
    } else {
      cells.insert(cells.end(), 9, std::string());
    }
    cells.push_back(sentences(row.why).toStdString());
    for (std::size_t i = 0; i < cells.size(); ++i) {
      out += (i > 0 ? "," : "") + csvCell(cells[i]);
    }
    out += '\n';
  }
  return qs(out);
}

}  // namespace outyard::pairs
