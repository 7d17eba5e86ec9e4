// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/evidence.h"

#include <algorithm>

namespace outyard::strength {
namespace {

using apiary::ColonyStay;
using apiary::Disease;
using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using base::ColonyId;
using base::Date;

int days(double rule) {
  return static_cast<int>(rule);
}

const ColonyStay* stayOn(const std::vector<const ColonyStay*>& stays, const base::HiveId& hive,
                         Date day) {
  for (const ColonyStay* s : stays) {
    if (s->hive == hive && s->fromDate <= day && (!s->toDate || day < *s->toDate)) return s;
  }
  return nullptr;
}

/// True when a record of the hive that may name a colony means this one.
bool means(const std::vector<const ColonyStay*>& stays, const base::HiveId& hive,
           const std::optional<ColonyId>& named, const ColonyId& colony, Date day) {
  if (named) return *named == colony;
  const ColonyStay* s = stayOn(stays, hive, day);
  return s && s->place.value_or(apiary::ColonyPlace::Main) == apiary::ColonyPlace::Main;
}

template <class T>
void takeFirst(std::optional<T>& into, const std::optional<T>& from) {
  if (!into) into = from;
}

/// Eggs as an inspection tells of them, by its flag or by its sides.
std::optional<bool> eggsIn(const Inspection& i, const StrengthEstimate& e) {
  if (i.eggsSeen) return i.eggsSeen;
  if (e.eggCellsAtLeast) return true;
  if (e.eggCells) return e.eggCells->median > 0;
  return std::nullopt;
}

std::optional<bool> broodIn(const StrengthEstimate& e) {
  if (e.broodCellsAtLeast) return true;
  if (e.framesWithBrood && *e.framesWithBrood > 0) return true;
  for (const auto& stage : {e.broodCells, e.sealedCells, e.openCells}) {
    if (stage && stage->median > 0) return true;
  }
  if (e.broodCells || (e.framesWithBrood && *e.framesWithBrood == 0)) return false;
  return std::nullopt;
}

/// Merges the fresh inspections, newest first.
void gatherSeen(const apiary::Season& season, const std::vector<const Inspection*>& looks, Date day,
                const VerdictRules& rules, Evidence& out) {
  for (auto it = looks.rbegin(); it != looks.rend(); ++it) {
    const Inspection& i = **it;
    const int age = day - i.date;
    if (age > days(rules.forgottenDays)) break;
    const bool fresh = age <= days(rules.freshDays);
    const StrengthEstimate e = estimateInspection(season, i);
    if (!out.bees && e.bees) {
      out.bees = e.bees;
      // Counted seams stand as counted unless combs were taken out and their bees counted; a quick
      // count of frames is no better than seams.
      // e.basis also names the sides when only brood was read from them; looks hold bees alone.
      const Basis first = e.looks.front().basis;
      const bool byComb = first == Basis::CombSides || first == Basis::FullFrames;
      out.seamsCounted = !byComb && std::any_of(e.looks.begin(), e.looks.end(), [](const Look& l) {
        return l.basis == Basis::Seams || l.basis == Basis::SeamsByBox;
      });
      const auto frames = framesMeant(season, apiary::hiveOn(season, i.hive, i.date), e.colony);
      out.seams =
          out.seamsCounted ? e.seams : std::optional(seamsFromBees(e.bees->median, frames.figures));
    }
    if (!out.bees && !out.seamsAtLeast && e.beesAtLeast) {
      const auto frames = framesMeant(season, apiary::hiveOn(season, i.hive, i.date), e.colony);
      out.seamsAtLeast = seamsFromBees(*e.beesAtLeast, frames.figures);
    }
    if (!fresh) continue;
    takeFirst(out.eggs, eggsIn(i, e));
    takeFirst(out.queenSeen, i.queenSeen);
    takeFirst(out.pattern, i.pattern);
    takeFirst(out.droneBrood, i.droneBrood);
    takeFirst(out.droneShare, e.droneShare);
    if (!out.queenCells && i.queenCells) {
      out.queenCells = i.queenCells;
      out.cellKind = i.cellKind;
    }
    if (!out.anyBrood) {
      out.anyBrood = broodIn(e);
      if (e.broodCells) out.broodCells = e.broodCells->median;
      if (e.sealedCells) out.sealedCells = e.sealedCells->median;
      if (e.openCells) out.openCells = e.openCells->median;
    }
  }
}

/// Last certain laying queen, loss of a queen and queens that are due, from looks and events.
void gatherQueen(const std::vector<const Inspection*>& looks,
                 const std::vector<const Event*>& events,
                 const std::vector<const ColonyStay*>& stays, Date day, const VerdictRules& rules,
                 Evidence& out) {
  const auto later = [](std::optional<Date>& into, Date d) {
    if (!into || *into < d) into = d;
  };
  std::optional<Date> firstNoEggs;  // of the latest row of looks without eggs
  for (const Inspection* i : looks) {
    if (i->queenSeen == true || (i->eggsSeen == true && i->pattern.value_or(0) >= 4)) {
      later(out.queenKnown, i->date);
    }
    if (i->eggsSeen == false && i->queenSeen != true) {
      if (!firstNoEggs) firstNoEggs = i->date;
    } else if (out.queenKnown == i->date) {
      firstNoEggs.reset();
    }
  }
  const auto due = [&](Date since, double wait) {
    const Date on = since.plusDays(days(wait));
    if (on >= day && (!out.queenDue || out.queenDue->since < since)) {
      out.queenDue = QueenDue{since, on};
    }
  };
  for (const Event* e : events) {
    switch (e->kind) {
      case EventKind::QueenSeenLaying:
        later(out.queenKnown, e->date);
        out.queenLost.reset();
        out.queenDue.reset();
        firstNoEggs.reset();
        if (day - e->date <= days(rules.freshDays) && (!out.lastSeen || e->date >= *out.lastSeen)) {
          out.eggs = true;
        }
        break;
      case EventKind::QueenLost:
      case EventKind::QueenRemoved:
        later(out.queenLost, e->date);
        if (out.queenDue && out.queenDue->since < e->date) out.queenDue.reset();
        if (!firstNoEggs) firstNoEggs = e->date;
        break;
      case EventKind::QueenIntroduced:
        out.queenLost.reset();
        firstNoEggs.reset();
        due(e->date, rules.introducedDays);
        break;
      case EventKind::QueenCellGiven:
        out.queenLost.reset();
        due(e->date, rules.cellDays);
        break;
      case EventKind::Swarmed:
        due(e->date, rules.swarmedDays);
        break;
      case EventKind::Split:
        due(e->date, rules.splitDays);
        break;
      default:
        break;
    }
  }
  for (const ColonyStay* s : stays) {
    if (!s->origin || s->fromDate > day) continue;
    if (*s->origin == apiary::ColonyOrigin::Split) due(s->fromDate, rules.splitDays);
    if (*s->origin == apiary::ColonyOrigin::Swarm || *s->origin == apiary::ColonyOrigin::Package) {
      due(s->fromDate, rules.swarmDays);
    }
  }
  if (out.queenKnown) {
    if (out.queenLost && *out.queenLost < *out.queenKnown) out.queenLost.reset();
    if (out.queenDue && out.queenDue->since < *out.queenKnown) out.queenDue.reset();
  }
  // Eggs at a look after the loss was written down: there is a queen again, or workers lay.
  if (out.queenLost && out.eggs == true && out.lastSeen && *out.lastSeen > *out.queenLost) {
    out.queenLost.reset();
  }
  out.knownQueenless = firstNoEggs && day - *firstNoEggs >= days(rules.queenlessLongDays) &&
                       (!out.queenKnown || *out.queenKnown < *firstNoEggs);
}

void gatherDisease(const std::vector<const Inspection*>& looks,
                   const std::vector<const Event*>& events, Date day, const VerdictRules& rules,
                   Evidence& out) {
  std::optional<Date> foul, foulClear;
  Disease foulKind = Disease::SuspectAfb;
  for (const Inspection* i : looks) {
    const bool lookedIn = i->pattern || i->sealedBroodFrames || i->broodFrames || i->eggsSeen;
    if (i->disease == Disease::SuspectAfb || i->disease == Disease::SuspectEfb) {
      foul = i->date;
      foulKind = *i->disease;
    } else if (i->disease) {
      out.disease = i->disease;
      out.diseaseOn = i->date;
    } else if (lookedIn) {
      // A look into the brood that notes nothing ends other illnesses, never suspected foul brood.
      out.disease.reset();
      out.diseaseOn.reset();
    }
  }
  for (const Event* e : events) {
    if (e->kind == EventKind::Note && e->method == "health_clear") foulClear = e->date;
  }
  if (out.diseaseOn && day - *out.diseaseOn > days(rules.diseaseDays)) {
    out.disease.reset();
    out.diseaseOn.reset();
  }
  if (foul && !(foulClear && *foulClear >= *foul)) {
    out.disease = foulKind;
    out.diseaseOn = foul;
  }
}

void gatherMites(const apiary::Season& season, const ColonyId& colony,
                 const std::vector<const ColonyStay*>& stays,
                 const std::vector<const Event*>& events, Date day, const VerdictRules& rules,
                 Evidence& out) {
  const apiary::Wash* last = nullptr;
  std::vector<base::HiveId> seen;
  for (const ColonyStay* s : stays) {
    if (std::find(seen.begin(), seen.end(), s->hive) != seen.end()) continue;
    seen.push_back(s->hive);
    for (const apiary::Wash* w : season.journal<apiary::Wash>(s->hive)) {
      // A board under the hive counts the fall, not mites on bees.
      if (w->date > day || w->bees <= 0 || w->method == apiary::WashMethod::Board) continue;
      if (!means(stays, s->hive, w->colony, colony, w->date)) continue;
      if (!last || last->date <= w->date) last = w;
    }
  }
  if (!last || day - last->date > days(rules.washDays)) return;
  MitesSeen m;
  m.date = last->date;
  m.per100 = 100.0 * last->mites / last->bees;
  const Interval range = wilson(std::min(last->mites, last->bees), last->bees);
  m.per100Range = {100 * range.low, 100 * range.high};
  m.threshold = rules.mitesFor(out.calendar.today);
  for (const Event* e : events) {
    if (e->kind == EventKind::Treated && e->date >= last->date) m.treatedSince = true;
  }
  out.mites = m;
}

}  // namespace

Evidence gatherEvidence(const apiary::Season& season, const ColonyId& colony, Date day,
                        const VerdictRules& rules) {
  Evidence out;
  const auto stays = season.stays(colony);
  out.hive = apiary::hiveOfColony(season, colony, day);
  if (out.hive) out.yard = apiary::hiveOn(season, *out.hive, day).yard;
  out.calendar = yardCalendar(season, out.yard, day);

  const auto looks = inspectionsOf(season, colony, day);
  if (!looks.empty()) {
    out.lastSeen = looks.back()->date;
    out.daysSince = day - looks.back()->date;
    out.fresh = out.daysSince <= days(rules.freshDays);
    out.forgotten = out.daysSince > days(rules.forgottenDays);
    out.strength = estimateInspection(season, *looks.back());
    out.strength->colony = colony;
  }
  gatherSeen(season, looks, day, rules, out);

  std::vector<const Event*> events;
  std::vector<base::HiveId> hives;
  for (const ColonyStay* s : stays) {
    if (std::find(hives.begin(), hives.end(), s->hive) != hives.end()) continue;
    hives.push_back(s->hive);
    for (const Event* e : season.journal<Event>(s->hive)) {
      if (e->date > day) break;
      if (means(stays, s->hive, e->colony, colony, e->date)) events.push_back(e);
    }
  }
  std::stable_sort(events.begin(), events.end(),
                   [](const Event* a, const Event* b) { return a->date < b->date; });
  gatherQueen(looks, events, stays, day, rules, out);
  gatherDisease(looks, events, day, rules, out);
  gatherMites(season, colony, stays, events, day, rules, out);

  if (out.broodCells && out.bees && out.bees->median > 0 && out.strength) {
    const double meanC = meanTemperature(season, out.yard, *out.lastSeen).value_or(10);
    const auto frames =
        out.hive ? framesMeant(season, apiary::hiveOn(season, *out.hive, day), colony).figures
                 : *shippedFigures("langstroth_deep");
    const double warm = warmCells(out.bees->median, meanC, frames);
    if (warm > 0) out.cover = *out.broodCells / warm;
  }
  return out;
}

}  // namespace outyard::strength
