// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_rows.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <set>

#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_words.h"

namespace outyard::desk {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Desk)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString counted(int number, const QString& one, const QString& many) {
  return (number == 1 ? one : many).arg(QLocale().toString(number));
}

/// Hives by name, at most so many.
QString hivesText(const planning::DueList& due, const std::vector<std::size_t>& tasks,
                  std::size_t most) {
  QStringList names;
  for (const std::size_t i : tasks) {
    const auto& hive = due.tasks[i].hive;
    if (hive && !names.contains(qs(hive->str()))) names << qs(hive->str());
  }
  const auto count = static_cast<std::size_t>(names.size());
  if (count <= most) return names.join(QStringLiteral(", "));
  const QString first = names.mid(0, static_cast<qsizetype>(most)).join(QStringLiteral(", "));
  return Words::tr("%1 and %2 more").arg(first).arg(count - most);
}

}  // namespace

Row RowMaker::said(const QString& text) const {
  Row row;
  row.lines << text;
  row.spoken = text;
  return row;
}

Row RowMaker::task(std::size_t index) const {
  const auto& t = facts.due.tasks[index];
  Row row;
  row.kind = Row::Kind::Task;
  row.lead = t.hive ? qs(t.hive->str()) : Words::tr("whole yard");
  row.title = workText(t, units);
  row.planned = t.rule == "planned";
  row.extra = row.planned ? Words::tr("planned") : chanceText(t);
  row.right = windowText(t, today());
  row.urgent = t.overdue(today());
  // A day that was chosen says more than the window.
  const auto* kept = t.task ? season.find<apiary::Task>(t.task->str()) : nullptr;
  if (kept && kept->plannedOn && *kept->plannedOn >= today()) {
    row.right = Words::tr("on %1").arg(shortDay(*kept->plannedOn));
  }
  const QString reason = reasonText(t);
  if (!reason.isEmpty()) row.lines << reason;
  row.spoken = sentence(t, season, today(), units);
  QStringList tip;
  tip << row.spoken;
  if (!row.urgent && !row.planned) tip << Words::tr("Best on %1.").arg(adapt::dateText(t.date));
  tip += cautionTexts(t);
  row.toolTip = tip.join(u'\n');
  row.tasks = {index};
  row.yard = t.yard;
  row.hive = t.hive;
  return row;
}

std::vector<std::size_t> RowMaker::shown(const planning::YardWork& work, Show show) const {
  std::vector<std::size_t> out;
  for (const std::size_t i : work.tasks) {
    const auto& t = facts.due.tasks[i];
    if (show == Show::Overdue && !t.overdue(today())) continue;
    if (show == Show::ToPlan && t.rule == "planned") continue;
    out.push_back(i);
  }
  return out;
}

Row RowMaker::yard(const planning::YardWork& work) const {
  const auto& days = facts.due.yards[work.days];
  Row row;
  row.kind = Row::Kind::Yard;
  row.yard = work.yard;
  row.days = work.days;
  row.tasks = work.tasks;
  row.lead = yardName(season, work.yard);
  if (qs(work.yard.str()) != row.lead) row.title = qs(work.yard.str());
  const int due = static_cast<int>(work.tasks.size());
  QStringList counts;
  if (work.pressing > 0) {
    counts << counted(work.pressing, Words::tr("%1 hive at risk"), Words::tr("%1 hives at risk"));
  }
  if (work.overdue > 0) counts << Words::tr("%1 overdue").arg(work.overdue);
  counts << (due == 0 ? Words::tr("nothing due") : Words::tr("%1 due").arg(due));
  row.right = counts.join(QStringLiteral("  ·  "));
  if (days.foulBrood) {
    row.lines << Words::tr(
                     "Foul brood suspected in %1: nothing in or out of this yard. Call the bee "
                     "inspector.")
                     .arg(qs(days.foulBrood->str()));
    row.badges = QStringLiteral("S");
  }
  const QString kinds = kindsText(facts.due, work.tasks);
  if (!kinds.isEmpty()) row.lines << kinds;
  row.toolTip = Words::tr("Enter opens the yard; the right arrow shows its work.");
  row.spoken = QStringLiteral("%1: %2. %3 %4")
                   .arg(row.lead, counts.join(QStringLiteral(", ")),
                        row.lines.join(QStringLiteral(". ")), stripWords(days, units));
  return row;
}

std::vector<Row> RowMaker::risk() const {
  std::vector<Row> out;
  for (const auto& hive : facts.risk) {
    Row row;
    row.kind = Row::Kind::Risk;
    row.yard = hive.yard;
    row.hive = hive.hive;
    row.tasks = hive.tasks;
    row.lead = hive.hive ? qs(hive.hive->str()) : yardName(season, hive.yard);
    row.title = hive.hive ? yardName(season, hive.yard) : QString();
    const auto& first = facts.due.tasks[hive.tasks.front()];
    row.right = windowText(first, today());
    row.urgent = first.overdue(today());
    QStringList spoken, tip;
    for (const std::size_t i : hive.tasks) {
      const auto& t = facts.due.tasks[i];
      const QString chance = chanceText(t);
      QString line = workText(t, units);
      if (!chance.isEmpty()) line += QStringLiteral(" (%1)").arg(chance);
      line += QStringLiteral(" – ") + reasonText(t);
      row.lines << line;
      row.badges += riskLetter(t);
      tip << QStringLiteral("%1  %2").arg(riskLetter(t)).arg(riskMeaning(riskLetter(t)));
      tip += cautionTexts(t);
      spoken << line;
    }
    tip.removeDuplicates();
    row.toolTip = tip.join(u'\n');
    row.spoken = QStringLiteral("%1, %2, %3. %4")
                     .arg(row.lead, yardName(season, hive.yard), row.right,
                          spoken.join(QStringLiteral(" ")));
    out.push_back(std::move(row));
  }
  if (out.empty()) {
    out.push_back(
        said(Words::tr("No hive is at risk in these two weeks, as far as was seen and "
                       "can be expected.")));
  }
  return out;
}

std::vector<Row> RowMaker::gear() const {
  std::vector<Row> out;
  for (const auto& missing : facts.gear.missing) {
    Row row;
    row.kind = Row::Kind::Gear;
    row.lead = itemText(missing.item.item);
    row.right =
        Words::tr("%1 short").arg(countText(missing.item.missing(), missing.item.unit, units));
    row.urgent = true;
    row.tasks = missing.tasks;
    QString line = needText(missing.item, units);
    if (!missing.tasks.empty()) {
      const auto& first = facts.due.tasks[missing.tasks.front()];
      row.yard = first.yard;
      row.hive = first.hive;
      std::set<base::YardId> yards;
      for (const std::size_t i : missing.tasks) yards.insert(facts.due.tasks[i].yard);
      line = Words::tr("%1; first for %2 on %3")
                 .arg(line, first.hive ? qs(first.hive->str()) : yardName(season, first.yard),
                      shortDay(first.date));
      QStringList names;
      for (const auto& yard : yards) names << yardName(season, yard);
      row.toolTip =
          Words::tr("For %1 in %2. Enter goes to the first of them.")
              .arg(hivesText(facts.due, missing.tasks, 12), names.join(QStringLiteral(", ")));
    }
    row.lines << line;
    row.spoken = QStringLiteral("%1, %2. %3").arg(row.lead, row.right, line);
    out.push_back(std::move(row));
  }
  if (!facts.gear.anything) {
    out.push_back(said(Words::tr("The work of these two weeks takes no gear beyond the usual.")));
  } else if (out.empty()) {
    out.push_back(
        said(Words::tr("Nothing that was counted is short for the work of these two "
                       "weeks.")));
  }
  if (!facts.gear.uncounted.empty()) {
    QStringList items;
    for (const auto& item : facts.gear.uncounted) {
      items << QStringLiteral("%1 (%2)").arg(itemText(item.item),
                                             countText(item.needed, item.unit, units));
    }
    out.push_back(said(
        Words::tr("Never counted, so taken as enough: %1.").arg(items.join(QStringLiteral("; ")))));
  }
  return out;
}

std::vector<Row> RowMaker::looks() const {
  std::vector<Row> out;
  out.push_back(said(trustText(facts.trust)));
  for (const auto& look : facts.looks.outside) {
    Row row;
    row.kind = Row::Kind::Look;
    row.yard = look.yard;
    row.hive = look.hive;
    row.lead = qs(look.hive.str());
    row.title = yardName(season, look.yard);
    row.right = Words::tr("seen %1").arg(shortDay(look.date));
    const QString text = adapt::words(planning::lookText(look));
    row.lines << text;
    row.badges = look.fewer ? QStringLiteral("▼") : QStringLiteral("▲");
    row.toolTip = adapt::words(planning::lookHint(look));
    row.spoken =
        QStringLiteral("%1, %2, %3: %4. %5").arg(row.lead, row.title, row.right, text, row.toolTip);
    out.push_back(std::move(row));
  }
  // What the trade would look for, once for each kind that stands above.
  QStringList hints;
  for (const auto& look : facts.looks.outside) {
    const QString hint = adapt::words(planning::lookHint(look));
    if (!hints.contains(hint)) hints << hint;
  }
  for (const QString& hint : hints) out.push_back(said(hint));
  if (facts.looks.outside.empty()) {
    out.push_back(
        said(facts.looks.looks == 0
                 ? Words::tr("No look of the last two weeks can be held against what was "
                             "expected.")
                 : counted(facts.looks.looks,
                           Words::tr("The one look of the last two weeks was as expected."),
                           Words::tr("All %1 looks of the last two weeks were as "
                                     "expected."))));
  }
  return out;
}

QString sumText(const planning::DeskFacts& facts) {
  int overdue = 0, planned = 0;
  for (const auto& t : facts.due.tasks) {
    overdue += t.overdue(facts.due.ask.from) ? 1 : 0;
    planned += t.rule == "planned" ? 1 : 0;
  }
  const int work = static_cast<int>(facts.due.tasks.size());
  QStringList parts;
  parts << counted(static_cast<int>(facts.yards.size()), Words::tr("%1 yard"),
                   Words::tr("%1 yards"));
  parts << (work == 0
                ? Words::tr("nothing falls due")
                : counted(work, Words::tr("%1 piece of work"), Words::tr("%1 pieces of work")));
  if (overdue > 0) parts << Words::tr("%1 overdue").arg(overdue);
  if (planned > 0) parts << Words::tr("%1 planned").arg(planned);
  parts << counted(static_cast<int>(facts.risk.size()), Words::tr("%1 hive at risk"),
                   Words::tr("%1 hives at risk"));
  return parts.join(QStringLiteral("  ·  "));
}

}  // namespace outyard::desk
