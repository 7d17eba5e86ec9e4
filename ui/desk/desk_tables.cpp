// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_tables.h"

#include <QCoreApplication>
#include <QLocale>
#include <set>

#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_words.h"

namespace outyard::desk {
namespace {

using widgets::ListTable;

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Desk)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString iso(base::Date day) {
  return qs(day.iso());
}

/// A number for a spreadsheet: a point, no groups.
QString plain(double value) {
  return QString::number(value, 'g', 12);
}

/// Cells that read the same on the page and in the table, and those that do not.
class Line {
 public:
  Line& add(const QString& text) { return add(text, text); }
  Line& add(const QString& shown, const QString& value) {
    m_line.cells << shown;
    m_line.values << value;
    return *this;
  }
  Line& strong(bool strong) {
    m_line.strong = strong;
    return *this;
  }
  [[nodiscard]] const ListTable::Line& done() const { return m_line; }

 private:
  ListTable::Line m_line;
};

ListTable tableOf(const QString& title, const RowMaker& make, const QStringList& head,
                  const std::set<qsizetype>& figures = {}) {
  ListTable out;
  out.title = title;
  out.date = adapt::dateText(make.today());
  out.head = head;
  for (qsizetype i = 0; i < head.size(); ++i) out.right.push_back(figures.contains(i));
  return out;
}

QString hiveOf(const planning::DueTask& task) {
  return task.hive ? qs(task.hive->str()) : Words::tr("whole yard");
}

QString spanText(const planning::DueList& due) {
  return Words::tr("%1 to %2").arg(adapt::dateText(due.ask.from), adapt::dateText(due.ask.to));
}

void addWork(Line& line, const RowMaker& make, std::size_t index) {
  const auto& task = make.facts.due.tasks[index];
  const Row row = make.task(index);
  QStringList why{reasonText(task)};
  why += cautionTexts(task);
  line.add(row.title)
      .add(row.right)
      .add(adapt::dateText(task.earliest), iso(task.earliest))
      .add(adapt::dateText(task.latest), iso(task.latest))
      .add(row.planned ? Words::tr("planned") : widgets::percentText(task))
      .add(why.join(u' '));
  line.strong(row.urgent);
}

QStringList workHead(const QStringList& before) {
  return before + QStringList{Words::tr("Work"),     Words::tr("When"),
                              Words::tr("From"),     Words::tr("To"),
                              Words::tr("How sure"), Words::tr("Why, and what to mind")};
}

}  // namespace

ListTable workTable(const RowMaker& make, Show show) {
  auto out = tableOf(Words::tr("Work of two weeks by yard"), make,
                     workHead({Words::tr("Yard"), Words::tr("Hive")}));
  out.note = spanText(make.facts.due);
  if (show == Show::Overdue) out.note += Words::tr(", overdue work alone");
  if (show == Show::ToPlan) out.note += Words::tr(", work that is not planned yet");
  for (const auto& work : make.facts.yards) {
    const QString yard = yardName(make.season, work.yard);
    if (const auto& sick = make.facts.due.yards[work.days].foulBrood) {
      Line line;
      line.add(yard).add(qs(sick->str())).add(Words::tr("Nothing in or out"));
      for (int i = 0; i < 4; ++i) line.add({});
      line.add(
          Words::tr("Foul brood suspected: no bees, combs, honey, boxes or tools in or out "
                    "of this yard. Call the bee inspector."));
      out.lines.push_back(line.strong(true).done());
    }
    for (const std::size_t i : make.shown(work, show)) {
      Line line;
      line.add(yard).add(hiveOf(make.facts.due.tasks[i]));
      addWork(line, make, i);
      out.lines.push_back(line.done());
    }
  }
  if (out.lines.empty()) out.note += Words::tr(". No such work.");
  return out;
}

ListTable riskTable(const RowMaker& make) {
  auto out = tableOf(Words::tr("Hives at risk"), make,
                     workHead({Words::tr("Yard"), Words::tr("Hive"), Words::tr("Risk")}));
  out.note = spanText(make.facts.due);
  for (const auto& hive : make.facts.risk) {
    for (const std::size_t i : hive.tasks) {
      const auto& task = make.facts.due.tasks[i];
      Line line;
      line.add(yardName(make.season, hive.yard))
          .add(hiveOf(task))
          .add(riskMeaning(riskLetter(task)));
      addWork(line, make, i);
      out.lines.push_back(line.done());
    }
  }
  if (out.lines.empty()) out.note += QStringLiteral(". ") + make.risk().front().lines.join(u' ');
  return out;
}

ListTable daysTable(const RowMaker& make) {
  auto out =
      tableOf(Words::tr("Days warm enough to open hives"), make,
              {Words::tr("Yard"), Words::tr("Day"), Words::tr("Good for"),
               Words::tr("Highest (%1)").arg(make.units.temperatureUnit()), Words::tr("Rain (mm)")},
              {3, 4});
  out.note = spanText(make.facts.due);
  const QLocale locale;
  for (const auto& work : make.facts.yards) {
    for (const auto& day : make.facts.due.yards[work.days].days) {
      Line line;
      line.add(yardName(make.season, work.yard))
          .add(widgets::weekDay(day.date), iso(day.date))
          .add(warmthWords(warmthOf(day)));
      if (day.tmaxC) {
        const double shown = make.units.shown(base::Temperature{*day.tmaxC});
        line.add(locale.toString(shown, 'f', 0), plain(shown));
      } else {
        line.add({});
      }
      if (day.rainMm) {
        line.add(locale.toString(*day.rainMm, 'f', 0), plain(*day.rainMm));
      } else {
        line.add({});
      }
      out.lines.push_back(line.strong(warmthOf(day) == Warmth::Combs).done());
    }
  }
  return out;
}

ListTable gearTable(const RowMaker& make) {
  auto out =
      tableOf(Words::tr("Gear short"), make,
              {Words::tr("Gear"), Words::tr("Needed"), Words::tr("At hand"), Words::tr("Short"),
               Words::tr("First for"), Words::tr("On"), Words::tr("Yards")},
              {1, 2, 3});
  QStringList notes{spanText(make.facts.due)};
  const auto add = [&](const planning::RoundItem& item, const std::vector<std::size_t>& tasks) {
    const auto count = [&](double value) { return countText(value, item.unit, make.units); };
    Line line;
    line.add(itemText(item.item)).add(count(item.needed));
    line.add(item.atHand ? count(*item.atHand) : Words::tr("never counted"));
    line.add(item.missing() > 0 ? count(item.missing()) : QString());
    QStringList names;
    if (tasks.empty()) {
      line.add({}).add({});
    } else {
      const auto& first = make.facts.due.tasks[tasks.front()];
      line.add(hiveOf(first)).add(adapt::dateText(first.date), iso(first.date));
      for (const std::size_t i : tasks) {
        const QString name = yardName(make.season, make.facts.due.tasks[i].yard);
        if (!names.contains(name)) names << name;
      }
    }
    line.add(names.join(QStringLiteral(", ")));
    out.lines.push_back(line.strong(item.missing() > 0).done());
  };
  for (const auto& missing : make.facts.gear.missing) add(missing.item, missing.tasks);
  for (const auto& item : make.facts.gear.uncounted) add(item, {});
  if (make.facts.gear.missing.empty()) notes << make.gear().front().lines;
  out.note = notes.join(QStringLiteral(". "));
  return out;
}

ListTable looksTable(const RowMaker& make) {
  auto out = tableOf(Words::tr("What surprised at the last looks"), make,
                     {Words::tr("Yard"), Words::tr("Hive"), Words::tr("Seen on"), Words::tr("What"),
                      Words::tr("What to look for")});
  QStringList notes{trustText(make.facts.trust)};
  for (const auto& look : make.facts.looks.outside) {
    Line line;
    line.add(yardName(make.season, look.yard))
        .add(qs(look.hive.str()))
        .add(adapt::dateText(look.date), iso(look.date))
        .add(adapt::words(planning::lookText(look)))
        .add(adapt::words(planning::lookHint(look)));
    out.lines.push_back(line.done());
  }
  if (out.lines.empty()) notes << make.looks().back().lines;
  out.note = notes.join(u' ');
  return out;
}

std::vector<ListTable> everyTable(const RowMaker& make, Show show) {
  return {workTable(make, show), riskTable(make), daysTable(make), gearTable(make),
          looksTable(make)};
}

}  // namespace outyard::desk
