// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_models.h"

#include <QCoreApplication>
#include <QFont>
#include <algorithm>
#include <map>

#include "ui/adapt/words.h"
#include "ui/pairs/pairs_words.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

bool contains(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// Worth a decision first, then what hinders one, then those that are well.
int rank(apiary::VerdictCode verdict) {
  using apiary::VerdictCode;
  switch (verdict) {
    case VerdictCode::SmallSound:
      return 0;
    case VerdictCode::QueenSuspect:
    case VerdictCode::Queenless:
    case VerdictCode::DroneLayer:
    case VerdictCode::LayingWorkers:
      return 1;
    case VerdictCode::Sick:
      return 2;
    case VerdictCode::TooSmall:
      return 3;
    case VerdictCode::NotEnoughSeen:
    case VerdictCode::TooEarly:
      return 4;
    case VerdictCode::Fair:
      return 5;
    case VerdictCode::Strong:
      return 6;
  }
  return 7;
}

QString beesText(const strength::Judgement* j) {
  if (!j || !j->strength || !j->strength->bees) return Words::tr("not seen");
  const auto& b = *j->strength->bees;
  return adapt::band(b.median, b.low, b.high);
}

QString seamsText(const strength::Judgement* j) {
  if (!j || !j->strength || !j->strength->seams) return QStringLiteral("–");
  return widgets::quarters(*j->strength->seams);
}

QString seenText(const strength::Judgement& j) {
  if (!j.daysSinceSeen) return Words::tr("never");
  if (*j.daysSinceSeen == 0) return Words::tr("the same day");
  return *j.daysSinceSeen == 1 ? Words::tr("1 day before")
                               : Words::tr("%1 days before").arg(*j.daysSinceSeen);
}

}  // namespace

void TextTable::setLines(std::vector<Line> lines) {
  beginResetModel();
  m_lines = std::move(lines);
  endResetModel();
}

int TextTable::rowOf(const base::ColonyId& colony) const {
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    if (m_lines[i].colony == colony) return static_cast<int>(i);
  }
  return -1;
}

int TextTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int TextTable::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_head.size());
}

QVariant TextTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const Line& l = line(index.row());
  if (role == Qt::FontRole && l.strong) {
    QFont font;
    font.setBold(true);
    return font;
  }
  if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return l.cells.value(index.column());
  return {};
}

QVariant TextTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  return m_head.value(section);
}

QStringList needHead() {
  return {Words::tr("Colony"), Words::tr("Judgement"), Words::tr("Seams"),
          Words::tr("Bees"),   Words::tr("Seen"),      Words::tr("Evidence")};
}

std::vector<TextTable::Line> needLines(const planning::BoostPlan& plan) {
  std::vector<const strength::Judgement*> order;
  for (const auto& j : plan.problem.judgements) order.push_back(&j);
  std::stable_sort(order.begin(), order.end(), [](const auto* a, const auto* b) {
    return rank(a->verdict) < rank(b->verdict);
  });
  std::vector<TextTable::Line> lines;
  for (const auto* j : order) {
    QString evidence = sentences(j->evidence);
    const auto* bar = barOf(plan.problem, j->colony);
    if (bar) evidence = adapt::words(*bar) + u' ' + evidence;
    QString judgement = widgets::verdictText(j->verdict);
    if (j->ruleVerdict) judgement = Words::tr("%1 (overruled)").arg(judgement);
    lines.push_back({{colonyText(j->colony, j->hive), judgement, seamsText(j), beesText(j),
                      seenText(*j), evidence},
                     j->colony,
                     j->hive,
                     j->verdict == apiary::VerdictCode::SmallSound && !bar});
  }
  return lines;
}

QStringList giveHead() {
  return {Words::tr("Colony"),
          Words::tr("Seams"),
          Words::tr("Bees"),
          Words::tr("Can spare, bees"),
          Words::tr("Keeps at least, bees"),
          Words::tr("Left by this plan, bees"),
          Words::tr("Spares brood combs"),
          Words::tr("Keeps brood combs"),
          Words::tr("Carries a small one"),
          Words::tr("In this plan")};
}

namespace {
QString givesText(const planning::BoostOption& o) {
  const QString to = colonyText(o.colony, o.hive);
  switch (o.method) {
    case apiary::Method::Stack:
      return Words::tr("carries %1").arg(to);
    case apiary::Method::SealedFrames:
      return o.framesMoved == 1
                 ? Words::tr("1 brood comb to %1").arg(to)
                 : Words::tr("%1 brood combs to %2").arg(adapt::roundNumber(o.framesMoved), to);
    case apiary::Method::NurseBees:
      return Words::tr("%1 nurse bees to %2").arg(adapt::roundNumber(o.beesMoved), to);
    case apiary::Method::ChangePlaces:
      return Words::tr("swaps stands with %1").arg(to);
    case apiary::Method::Unite:
      return Words::tr("takes in %1").arg(to);
    default:
      break;
  }
  return Words::tr("%1 for %2").arg(methodText(o.method), to);
}
}  // namespace

std::vector<TextTable::Line> giveLines(const planning::BoostPlan& plan) {
  std::map<std::string, std::vector<const planning::BoostOption*>> given;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (o && o->donorColony) given[o->donorColony->str()].push_back(o);
  }
  const QString none = QStringLiteral("–");
  std::vector<TextTable::Line> lines;
  for (const auto& [colony, limit] : plan.problem.donors) {
    if (limit.bees <= 0 && limit.broodFrames <= 0 && limit.stack <= 0) continue;
    const auto* j = judgementOf(plan.problem, base::ColonyId(colony));
    const auto* seen = j && j->strength ? &*j->strength : nullptr;
    const bool known = seen && seen->bees;
    QStringList work;
    double goes = 0;
    for (const auto* o : given[colony]) {
      work << givesText(*o);
      goes += o->takes.bees;
    }
    const auto bees = [&](double n) { return adapt::roundNumber(std::max(0.0, n)); };
    lines.push_back(
        {{j ? colonyText(j->colony, j->hive) : QString::fromStdString(colony), seamsText(j),
          beesText(j), adapt::roundNumber(limit.bees),
          known ? bees(seen->bees->median - limit.bees) : none,
          known && goes > 0 ? bees(seen->bees->median - goes) : none,
          adapt::roundNumber(limit.broodFrames),
          seen && seen->framesWithBrood ? bees(*seen->framesWithBrood - limit.broodFrames)
                                        : Words::tr("not seen"),
          limit.stack > 0 ? Words::tr("yes") : Words::tr("no"),
          work.isEmpty() ? none : work.join(QStringLiteral(", "))},
         base::ColonyId(colony),
         j ? std::optional(j->hive) : std::nullopt,
         !work.isEmpty()});
  }
  return lines;
}

QStringList barredHead() {
  return {Words::tr("Colony"), Words::tr("Judgement"), Words::tr("Why not")};
}

std::vector<TextTable::Line> barredLines(const planning::BoostPlan& plan) {
  std::vector<TextTable::Line> lines;
  const auto add = [&](const base::ColonyId& colony, const base::HiveId& hive, const QString& why) {
    for (auto& l : lines) {
      if (l.colony != colony) continue;
      l.cells.last() += u' ' + why;  // one line for each colony
      return;
    }
    const auto* j = judgementOf(plan.problem, colony);
    lines.push_back(
        {{colonyText(colony, hive), j ? widgets::verdictText(j->verdict) : QString(), why},
         colony,
         hive,
         false});
  };
  for (const auto* list : {&plan.problem.barred, &plan.problem.donorNotes}) {
    for (const auto& b : *list) add(b.colony, b.hive, adapt::words(b.why));
  }
  for (const auto& j : plan.problem.judgements) {
    const bool told = std::any_of(lines.begin(), lines.end(),
                                  [&](const auto& l) { return l.colony == j.colony; });
    if (!told && rank(j.verdict) == 1) {
      add(j.colony, j.hive,
          Words::tr("Its queen is at fault: it gives nothing. Step 3 says whether to unite it."));
    }
  }
  return lines;
}

namespace {
/// Bees that the donor then has fewer by forecast, else what it gives up in bees.
QString donorLossText(const planning::BoostOption& o, const planning::BoostProblem& problem) {
  if (!o.donorColony) return QStringLiteral("–");
  if (o.chance) {
    return o.chance->donorBees < 0
               ? Words::tr("%1 bees").arg(adapt::roundNumber(-o.chance->donorBees))
               : QStringLiteral("–");
  }
  return o.donorCost > 0 ? worthText(o.donorCost, problem) : QStringLiteral("–");
}
}  // namespace

QStringList pairHead() {
  return {Words::tr("Colony"),      Words::tr("Judgement"),   Words::tr("Do"),
          Words::tr("From"),        Words::tr("Bees moved"),  Words::tr("Gains, bees"),
          Words::tr("Usable"),      Words::tr("Donor loses"), Words::tr("Held"),
          Words::tr("Second best"), Words::tr("Why")};
}

std::vector<TextTable::Line> pairLines(const planning::BoostPlan& plan) {
  const auto& request = plan.problem.request;
  std::vector<TextTable::Line> lines;
  for (const auto& row : planning::boostRows(plan)) {
    const auto* o = row.option;
    if (!o) continue;
    int forbidden = 0;
    for (const auto& option : plan.problem.options) {
      if (option.colony == row.colony && contains(request.forbids, option.id)) ++forbidden;
    }
    QStringList held;
    if (contains(request.pins, o->id)) held << Words::tr("pinned");
    if (forbidden > 0) held << Words::tr("%1 forbidden").arg(forbidden);
    const auto* second = plan.secondBest(row.colony);
    const bool acts = o->method != apiary::Method::Leave;
    lines.push_back(
        {{colonyText(row.colony, row.hive), widgets::verdictText(row.verdict),
          methodText(o->method),
          o->donorHive ? QString::fromStdString(o->donorHive->str()) : QStringLiteral("–"),
          o->beesMoved > 0 ? adapt::roundNumber(o->beesMoved) : QStringLiteral("–"), gainText(*o),
          chanceText(*o), donorLossText(*o, plan.problem), held.join(QStringLiteral(", ")),
          second ? secondText(*second, *o, plan.problem) : QStringLiteral("–"), sentences(row.why)},
         row.colony,
         row.hive,
         acts});
  }
  // What is to be done first, what is left as it is after it.
  std::stable_sort(lines.begin(), lines.end(),
                   [](const auto& a, const auto& b) { return a.strong > b.strong; });
  for (auto& l : lines) l.strong = false;
  return lines;
}

}  // namespace outyard::pairs
