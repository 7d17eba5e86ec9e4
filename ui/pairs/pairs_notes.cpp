// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_notes.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <map>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/pairs/pairs_words.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

std::string textArg(const base::Message& m, std::size_t at) {
  const auto* text = at < m.args.size() ? std::get_if<std::string>(&m.args[at]) : nullptr;
  return text ? *text : std::string();
}

const base::Message* messageArg(const base::Message& m, std::size_t at) {
  return at < m.args.size() ? std::get_if<base::Message>(&m.args[at]) : nullptr;
}

bool foul(const base::Message& bar) {
  return bar.key.starts_with("health.foul_brood");
}

/// Small colonies that could be helped, were there a way.
int smallSound(const planning::BoostProblem& problem) {
  return static_cast<int>(
      std::count_if(problem.judgements.begin(), problem.judgements.end(), [&](const auto& j) {
        return j.verdict == apiary::VerdictCode::SmallSound && !barOf(problem, j.colony);
      }));
}

}  // namespace

QString yardText(const apiary::Season& season, const base::YardId& yard) {
  const auto* row = season.yard(yard);
  return QString::fromStdString(row && !row->name.empty() ? row->name : yard.str());
}

QStringList foulBroodLines(const planning::BoostProblem& problem) {
  QStringList out;
  for (const auto& j : problem.judgements) {
    if (!j.healthBar || !foul(*j.healthBar)) continue;
    // The hive itself says it of "this hive", its neighbours name it.
    if (j.healthBar->key != "health.foul_brood_yard") continue;
    const QString line = adapt::words(*j.healthBar);
    if (!out.contains(line)) out << line;
  }
  // A suspect that stands alone has no neighbour to name it.
  for (const auto& j : problem.judgements) {
    if (!j.healthBar || !foul(*j.healthBar) || j.healthBar->key == "health.foul_brood_yard") {
      continue;
    }
    const QString hive = QString::fromStdString(j.hive.str());
    const bool told = std::any_of(out.begin(), out.end(),
                                  [&](const QString& line) { return line.contains(hive); });
    if (!told) out << QStringLiteral("%1: %2").arg(hive, adapt::words(*j.healthBar));
  }
  return out;
}

QStringList planNotes(const PlanOutcome& outcome, const apiary::Season& season) {
  const auto& problem = outcome.plan->problem;
  QStringList out = foulBroodLines(problem);
  QStringList never, none, rest;
  // By yard and first day that will do, in the order in which they came.
  std::vector<std::pair<std::pair<std::string, std::string>, QStringList>> waits;
  for (const auto& note : problem.notes) {
    const auto* inner = messageArg(note, 1);
    const auto* method = inner ? messageArg(*inner, 0) : nullptr;
    if (note.key == "planning.note.never_counted") {
      never << gearText(textArg(note, 0));
    } else if (note.key == "planning.note.none_at_hand") {
      none << gearText(textArg(note, 0));
    } else if (note.key == "planning.note.weather" && method) {
      const std::pair key{textArg(note, 0),
                          inner->key == "planning.weather.wait" ? textArg(*inner, 2) : ""};
      auto at = std::find_if(waits.begin(), waits.end(),
                             [&](const auto& wait) { return wait.first == key; });
      if (at == waits.end()) at = waits.insert(waits.end(), {key, {}});
      at->second << adapt::words(*method);
    } else {
      rest << adapt::words(note);
    }
  }
  const QString day = adapt::dateText(problem.request.date);
  for (const auto& [key, works] : waits) {
    const QString yard = yardText(season, base::YardId(key.first));
    const QString list = works.join(QStringLiteral(", "));
    const auto first = base::Date::parse(key.second);
    out << (first ? Words::tr("%1, %2: the weather stands against: %3. Wait; the first day that "
                              "will do is %4.")
                        .arg(yard, day, list, adapt::dateText(*first))
                  : Words::tr("%1, %2: the weather stands against: %3. Wait; no day that will do "
                              "is known yet.")
                        .arg(yard, day, list));
  }
  const bool anyGives =
      std::any_of(problem.options.begin(), problem.options.end(),
                  [](const auto& o) { return o.donorColony && o.method != apiary::Method::Unite; });
  if (!anyGives && waits.empty() && smallSound(problem) > 0) {
    out << Words::tr(
        "Nobody here is strong enough to give: leave the small ones as they are "
        "and look again in a week. Step 2 says what each lacks.");
  }
  const QString apart = QStringLiteral("; ");
  if (!none.isEmpty()) {
    out << Words::tr("None at hand by the last count: %1.").arg(none.join(apart));
  }
  if (!never.isEmpty()) {
    out << Words::tr("Never counted, so taken as enough: %1.").arg(never.join(apart));
  }
  return out + rest;
}

std::optional<base::Date> firstWarmDay(const PlanOutcome& outcome) {
  const auto& problem = outcome.plan->problem;
  std::optional<base::Date> first;
  for (const auto& note : problem.notes) {
    const auto* inner = messageArg(note, 1);
    if (note.key != "planning.note.weather" || !inner || inner->key != "planning.weather.wait") {
      continue;
    }
    const auto day = base::Date::parse(textArg(*inner, 2));
    if (day && (!first || *day < *first)) first = *day;
  }
  return first;
}

QString daysText(const std::vector<base::Date>& days) {
  QStringList runs;
  for (std::size_t i = 0; i < days.size();) {
    std::size_t last = i;
    while (last + 1 < days.size() && days[last + 1] == days[last].plusDays(1)) ++last;
    const QString to = adapt::dateText(days[last]);
    if (last == i) {
      runs << to;
    } else {
      const bool sameMonth = days[i].month() == days[last].month();
      //: Day alone, and day with month: see QLocale::toString.
      const QString form = sameMonth ? Words::tr("d") : Words::tr("d MMM");
      runs << QStringLiteral("%1–%2").arg(QLocale().toString(adapt::toQDate(days[i]), form), to);
    }
    i = last + 1;
  }
  return runs.join(QStringLiteral(", "));
}

QString needSum(const planning::BoostPlan& plan) {
  const auto& all = plan.problem.judgements;
  int queens = 0, barred = 0;
  for (const auto& j : all) {
    switch (j.verdict) {
      case apiary::VerdictCode::QueenSuspect:
      case apiary::VerdictCode::Queenless:
      case apiary::VerdictCode::DroneLayer:
      case apiary::VerdictCode::LayingWorkers:
        ++queens;
        break;
      default:
        break;
    }
    if (barOf(plan.problem, j.colony)) ++barred;
  }
  QString text = Words::tr("%1 of %2 colonies: small but sound – a laying queen, too few bees.")
                     .arg(smallSound(plan.problem))
                     .arg(all.size());
  if (queens > 0) text += u' ' + Words::tr("Queen at fault: %1.").arg(queens);
  if (barred > 0) {
    text += u' ' + Words::tr("Barred: %1; step 2 says why.").arg(barred);
  }
  return text + u' ' + Words::tr("What you know better can be overruled (O).");
}

}  // namespace outyard::pairs
