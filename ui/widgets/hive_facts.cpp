// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/hive_facts.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/sheet/marks.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::widgets {
namespace {

using apiary::ColonyPlace;
using apiary::EventKind;

struct Facts {
  Q_DECLARE_TR_FUNCTIONS(HiveFacts)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString placeText(ColonyPlace place) {
  switch (place) {
    case ColonyPlace::Main:
      return Facts::tr("lower colony");
    case ColonyPlace::OverExcluder:
      return Facts::tr("over an excluder");
    case ColonyPlace::OverDoubleScreen:
      return Facts::tr("over a double screen");
    case ColonyPlace::OverBoard:
      return Facts::tr("over a board");
    case ColonyPlace::Left:
      return Facts::tr("left side");
    case ColonyPlace::Right:
      return Facts::tr("right side");
  }
  return {};
}

QString queenText(const apiary::Season& season, const apiary::ColonyState& colony) {
  std::optional<int> year = colony.queenYear;
  std::string line = colony.queenLine;
  std::optional<bool> marked = colony.queenMarked;
  QString name;
  if (colony.queen) {
    name = qs(colony.queen->str());
    if (const auto* queen = season.queen(*colony.queen)) {
      if (!year) year = queen->year;
      if (line.empty()) line = queen->line;
      if (!marked) marked = queen->marked;
    }
  }
  QStringList parts;
  if (!name.isEmpty()) parts << name;
  if (!line.empty() && qs(line) != name) parts << Facts::tr("line %1").arg(qs(line));
  if (year) parts << Facts::tr("of %1").arg(*year);
  if (marked) parts << (*marked ? Facts::tr("marked") : Facts::tr("not marked"));
  return parts.isEmpty() ? Facts::tr("not recorded") : parts.join(QStringLiteral(", "));
}

QString lookText(const apiary::Inspection* look, base::Date day) {
  if (!look) return Facts::tr("never looked at");
  const int days = day - look->date;
  const QString date = adapt::dateText(look->date);
  if (days == 0) return Facts::tr("%1, the same day").arg(date);
  return Facts::tr("%1, %n day(s) before", nullptr, days)
      .arg(date)
      .replace(QLatin1String("day(s)"), days == 1 ? QStringLiteral("day") : QStringLiteral("days"));
}

QString counted(int number, const QString& one, const QString& many) {
  return QStringLiteral("%1 %2").arg(number).arg(number == 1 ? one : many);
}

QString boxesText(const apiary::HiveState& hive) {
  int chambers = 0, supers = 0, feeders = 0;
  for (const auto& box : hive.boxes) {
    if (box.role == apiary::BoxRole::Chamber) ++chambers;
    if (box.role == apiary::BoxRole::Super) ++supers;
    if (box.role == apiary::BoxRole::Feeder) ++feeders;
  }
  QStringList parts;
  if (chambers) parts << counted(chambers, Facts::tr("chamber"), Facts::tr("chambers"));
  if (supers) parts << counted(supers, Facts::tr("super"), Facts::tr("supers"));
  if (feeders) parts << counted(feeders, Facts::tr("feeder"), Facts::tr("feeders"));
  return parts.isEmpty() ? Facts::tr("not recorded") : parts.join(QStringLiteral(", "));
}

QString statusText(const apiary::HiveState& hive) {
  switch (hive.status) {
    case apiary::HiveStatus::Live:
      return Facts::tr("live");
    case apiary::HiveStatus::Empty:
      return Facts::tr("empty");
    case apiary::HiveStatus::Dead:
      return hive.diedOn ? Facts::tr("dead since %1").arg(adapt::dateText(*hive.diedOn))
                         : Facts::tr("dead");
  }
  return {};
}

void fillStrength(ColonyFacts& facts, const strength::StrengthEstimate& seen,
                  const adapt::Units& units) {
  if (seen.seams) facts.seams = quarters(*seen.seams);
  if (seen.bees) facts.bees = adapt::band(seen.bees->median, seen.bees->low, seen.bees->high);
  QStringList brood;
  if (seen.framesWithBrood) {
    brood << counted(*seen.framesWithBrood, Facts::tr("comb with brood"),
                     Facts::tr("combs with brood"));
  }
  if (seen.broodFrames) {
    brood << Facts::tr("%1 full frames").arg(adapt::roundNumber(*seen.broodFrames));
  }
  facts.brood = brood.join(QStringLiteral(", "));
  if (seen.honeyKg) {
    const auto shown = [&](double kg) { return adapt::roundNumber(units.shown(base::Mass{kg})); };
    facts.stores = QStringLiteral("%1\u00A0%2 (%3–%4)")
                       .arg(shown(seen.honeyKg->median), units.massUnit(), shown(seen.honeyKg->low),
                            shown(seen.honeyKg->high));
  }
}

void fillExpected(ColonyFacts& facts, const sheet::ExpectedLooks& expected) {
  const auto found = expected.find(facts.colony);
  if (found == expected.end()) return;
  const auto& look = found->second;
  constexpr strength::WholeRange kOne{1, 1};
  //: Whole seams: "8–9 seams".
  facts.expected = look.seams.whole() == kOne ? Facts::tr("1 seam")
                                              : Facts::tr("%1 seams").arg(rangeText(look.seams));
  facts.expectedBrood = look.combs.whole().high == 0 ? Facts::tr("no brood")
                        : look.combs.whole() == kOne
                            ? Facts::tr("brood on 1 comb")
                            : Facts::tr("brood on %1 combs").arg(rangeText(look.combs));
}

ColonyFacts colonyFacts(const SeasonHub& hub, const apiary::HiveState& hive,
                        const apiary::ColonyState& colony, const sheet::ExpectedLooks& expected) {
  ColonyFacts facts;
  facts.colony = colony.colony;
  facts.name = qs(colony.colony.str());
  if (hive.stacked()) {
    facts.name = Facts::tr("%1, %2").arg(facts.name, placeText(colony.place));
  }
  facts.queen = queenText(hub.season(), colony);
  fillExpected(facts, expected);
  facts.lastLook = lookText(colony.lastInspection, hub.shownDate());
  for (const auto& judgement : hub.judgements(hive.yard)) {
    if (judgement.colony != colony.colony) continue;
    facts.judgement = verdictText(judgement.verdict);
    for (const auto& message : judgement.evidence) facts.evidence << adapt::words(message);
    for (const auto& message : judgement.wouldChange) facts.wouldChange << adapt::words(message);
    if (judgement.ruleVerdict) {
      facts.overruled = Facts::tr("The rules say %1; overruled: %2")
                            .arg(verdictText(*judgement.ruleVerdict), qs(judgement.overruledWhy));
    }
    if (judgement.healthBar) facts.healthBar = adapt::words(*judgement.healthBar);
    if (judgement.strength) {
      fillStrength(facts, *judgement.strength, adapt::Units::from(hub.settings()));
    }
  }
  return facts;
}

QStringList tasksOf(const apiary::Season& season, const base::HiveId& hive) {
  std::vector<const apiary::Task*> found;
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    const bool named = task.hive == hive || task.otherHive == hive;
    if (named && task.state == apiary::TaskState::Planned) found.push_back(&task);
  }
  const auto day = [](const apiary::Task* task) {
    return task->plannedOn.value_or(task->dueOn.value_or(task->earliest.value_or(base::Date())));
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const auto* a, const auto* b) { return day(a) < day(b); });
  QStringList lines;
  for (const auto* task : found) lines << taskText(*task);
  return lines;
}

}  // namespace

QString rangeText(const strength::Spread& spread) {
  const auto whole = spread.whole();
  return whole.low == whole.high ? QLocale().toString(whole.low)
                                 : QStringLiteral("%1–%2").arg(QLocale().toString(whole.low),
                                                               QLocale().toString(whole.high));
}

QString quarters(double value) {
  const double rounded = std::round(value * 4) / 4;
  const int whole = static_cast<int>(std::floor(rounded));
  const int part = static_cast<int>(std::lround((rounded - whole) * 4));
  static constexpr std::array<char16_t, 4> kParts{0, u'¼', u'½', u'¾'};
  const QString number = whole == 0 && part != 0 ? QString() : QLocale().toString(whole);
  return part == 0 ? number : number + QChar(kParts[static_cast<std::size_t>(part)]);
}

QString codeText(const char* set, std::string_view code) {
  base::Message message;
  message.key = std::string("code.") + set + "." + std::string(code);
  return adapt::hasWords(message.key) ? adapt::words(message)
                                      : qs(std::string(code)).replace(u'_', u' ');
}

QString verdictText(apiary::VerdictCode verdict) {
  return codeText("verdict", apiary::code(verdict));
}

QString eventText(EventKind kind) {
  return codeText("event", apiary::code(kind));
}

QString taskText(const apiary::Task& task) {
  QString what;
  if (task.kind == "open" || task.kind == "look") {
    what = task.kind == "open" ? Facts::tr("open the hive") : Facts::tr("look");
  } else if (task.method) {
    what = codeText("method", apiary::code(*task.method));
  } else if (const auto kind = apiary::parseCode<EventKind>(task.kind)) {
    what = eventText(*kind);
  } else {
    what = qs(task.kind);
  }
  if (task.hive && task.otherHive) {
    what = Facts::tr("%1: %2 and %3").arg(what, qs(task.hive->str()), qs(task.otherHive->str()));
  }
  if (task.plannedOn) {
    what = Facts::tr("%1, %2").arg(adapt::dateText(*task.plannedOn), what);
  } else if (task.earliest && task.latest) {
    what = Facts::tr("%1 to %2, %3")
               .arg(adapt::dateText(*task.earliest), adapt::dateText(*task.latest), what);
  } else if (task.dueOn) {
    what = Facts::tr("by %1, %2").arg(adapt::dateText(*task.dueOn), what);
  }
  return task.why.empty() ? what : QStringLiteral("%1 – %2").arg(what, qs(task.why));
}

std::vector<LetterMeaning> letterMeanings() {
  return {{u'S', Facts::tr("sick: nothing in or out")},
          {u'Q', Facts::tr("queen missing or failing")},
          {u'B', Facts::tr("small but sound: boost")},
          {u'2', Facts::tr("two colonies in the hive")},
          {u'N', Facts::tr("not enough seen")},
          {u'W', Facts::tr("too small: write off")},
          {u'R', Facts::tr("strong: needs room, can give")}};
}

HiveFacts hiveFacts(const SeasonHub& hub, const apiary::HiveState& hive) {
  HiveFacts facts;
  facts.number = qs(hive.hive.str());
  facts.letters = qs(sheet::markLetters(hive, hub.judgements(hive.yard)));
  QStringList meanings;
  for (const auto& [letter, meaning] : letterMeanings()) {
    if (facts.letters.contains(letter)) meanings << meaning;
  }
  facts.meanings = meanings.join(QStringLiteral("; "));
  facts.status = statusText(hive);
  facts.stand = qs(hive.stand);
  facts.boxes = boxesText(hive);
  const auto expected = hub.forecasts().expectedIn(hive.yard, hub.shownDate());
  for (const auto& colony : hive.colonies) {
    facts.colonies.push_back(colonyFacts(hub, hive, colony, expected));
  }
  facts.tasks = tasksOf(hub.season(), hive.hive);
  return facts;
}

QString HiveFacts::sentence() const {
  QStringList parts{number, status};
  for (const auto& colony : colonies) {
    if (colonies.size() > 1) parts << colony.name;
    if (!colony.judgement.isEmpty()) parts << colony.judgement;
    if (!colony.seams.isEmpty()) parts << Facts::tr("%1 seams").arg(colony.seams);
    if (!colony.bees.isEmpty()) parts << Facts::tr("%1 bees").arg(colony.bees);
    parts << Facts::tr("last look %1").arg(colony.lastLook);
    if (!colony.expected.isEmpty()) {
      parts << Facts::tr("expected %1, %2").arg(colony.expected, colony.expectedBrood);
    }
  }
  return parts.join(QStringLiteral(", "));
}

}  // namespace outyard::widgets
