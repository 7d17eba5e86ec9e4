// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/estimate.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/strength/bee_looks.h"
#include "core/strength/brood_stores.h"
#include "core/strength/comb_sums.h"
#include "core/strength/reader_bias.h"
#include "core/strength/yard_calendar.h"

namespace outyard::strength {
namespace {

using apiary::Inspection;
using apiary::SeamCount;
using apiary::SeamsView;

constexpr double kTenPercentPoint = 1.2815515655446004;  ///< normal distribution, 90 %
constexpr double kUnknownFrameSigma = 0.25;  ///< frames from 350 to 1,134 cm2: our assumption

/// All seams of the inspection in one number, and how they were seen.
struct SeamsSeen {
  double seams = 0;
  SeamsView view = SeamsView::Above;
  bool byBox = false, atLeast = false;
};

std::optional<SeamsSeen> seamsSeen(const apiary::Season& season, const Inspection& i) {
  SeamsSeen out;
  bool allBoth = true, allBelow = true, any = false;
  for (const SeamCount* c : season.seamCounts(i.record)) {
    if (!c->fromAbove && !c->fromBelow) continue;
    any = true;
    const bool both = c->fromAbove && c->fromBelow;
    // Mean of top and bottom of each box, summed over boxes (Nasr et al. 1990, from memory).
    out.seams += both ? (*c->fromAbove + *c->fromBelow) / 2
                      : c->fromAbove.value_or(0) + c->fromBelow.value_or(0);
    allBoth = allBoth && both;
    allBelow = allBelow && c->fromBelow.has_value();
    out.atLeast = out.atLeast || c->atLeast.value_or(false);
  }
  if (any) {
    out.byBox = true;
    out.view = allBoth ? SeamsView::Both : allBelow ? SeamsView::Below : SeamsView::Above;
    return out;
  }
  if (!i.seams) return std::nullopt;
  out.seams = *i.seams;
  out.view = i.seamsView.value_or(SeamsView::Above);
  return out;
}

std::optional<double> latitudeOf(const apiary::Season& season, const base::YardId& yard) {
  const apiary::Yard* y = season.yard(yard);
  return y ? y->latitude : std::nullopt;
}

bool flyingHours(const Inspection& i) {
  if (!i.time || !i.airC || *i.airC < 13) return false;
  return *i.time >= base::TimeOfDay::fromHm(10, 0) && *i.time < base::TimeOfDay::fromHm(17, 0);
}

void addBees(const apiary::Season& season, const Inspection& i, const apiary::HiveState& state,
             const CombSums& sums, const MeantFrames& frames, StrengthEstimate& out) {
  const double fullFrame = 2 * frames.figures.beesPerSide();
  const double unknown = frames.known ? 0 : kUnknownFrameSigma;
  std::vector<double> sigmas;  // of each look, also of a look of nought
  const auto look = [&](Basis basis, double bees, double sigma) {
    sigmas.push_back(std::hypot(sigma, unknown));
    out.looks.push_back({basis, Estimate::fromMedian(bees, sigmas.back())});
  };
  // What a reader makes too many of the bees on a comb goes out of the combs and the full frames.
  // Seams and quick counts have errors of their own, far larger than a reader's habit.
  const auto reader = readerFigures(season, i.reader);
  const double bias = reader ? reader->bias : 1;
  if (sums.bees.complete) {
    out.looks.push_back(
        {Basis::CombSides, Estimate::fromMedian(sums.bees.sum / bias,
                                                reader ? reader->countSigma() : kSidesBeesSigma)});
    sigmas.push_back(out.looks.back().bees.sigmaLog);
  } else if (sums.bees.sum > 0) {
    out.beesAtLeast = sums.bees.sum / bias;
  }
  if (i.beeFrames) {
    look(Basis::FullFrames, *i.beeFrames * fullFrame / bias,
         reader ? reader->countSigma() : kFullFramesSigma);
  }
  if (reader && (i.beeFrames || sums.bees.sum > 0)) out.readerBias = bias;
  if (i.framesWithBees) {
    const int day = seasonDay(i.date, latitudeOf(season, state.yard));
    const QuickCount q = fullFramesOfQuickCount(*i.framesWithBees, day);
    look(Basis::FramesWithBees, q.fullFrames * fullFrame, q.sigmaLog);
  }
  if (const auto seen = seamsSeen(season, i)) {
    // "10 or more": the true number lies above what was written.
    const double more = seen->atLeast ? 1.10 : 1.0;
    const double factor = seamTemperatureFactor(i.airC, seen->view);
    double sigma = seamSigma(seen->seams, i.airC, seen->view, seen->atLeast);
    if (i.glance) sigma = std::hypot(sigma, kGlanceSigma);
    out.inFlyingHours = flyingHours(i) && seen->view != SeamsView::Below;
    if (out.inFlyingHours) sigma = std::hypot(sigma, kFlyingHoursSigma);
    look(seen->byBox ? Basis::SeamsByBox : Basis::Seams,
         fullFramesOfSeams(seen->seams * more) * factor * fullFrame, sigma);
    out.seams = seen->seams;
  }
  if (out.looks.empty()) return;
  if (sums.bees.complete) {
    out.bees = out.looks.front().bees;
    out.basis.push_back(Basis::CombSides);
  } else {
    const bool any = std::any_of(out.looks.begin(), out.looks.end(),
                                 [](const Look& l) { return l.bees.median > 0; });
    std::vector<Estimate> all;
    for (std::size_t k = 0; k < out.looks.size(); ++k) {
      const Look& l = out.looks[k];
      // Nought beside others: less than a tenth of a frame, with the error of its way of looking.
      const double least = any && out.looks.size() > 1 ? fullFrame / 10 : 0;
      all.push_back(Estimate::fromMedian(std::max(l.bees.median, least), sigmas[k]));
      out.basis.push_back(l.basis);
    }
    out.bees = combinedSameReader(all, fullFrame, reader ? reader->biasSigma() : kSameReaderSigma);
  }
  if (!out.seams) out.seams = seamsFromBees(out.bees->median, frames.figures);
}

}  // namespace

Estimate Estimate::fromMedian(double median, double sigmaLog) {
  if (median <= 0) return {};
  const double factor = std::exp(kTenPercentPoint * sigmaLog);
  return {median, median / factor, median * factor, sigmaLog};
}

Estimate combined(const std::vector<Estimate>& looks) {
  double weights = 0, sum = 0;
  for (const Estimate& e : looks) {
    if (e.median <= 0) continue;
    if (e.sigmaLog <= 0) return e;  // known without error
    const double w = 1 / (e.sigmaLog * e.sigmaLog);
    weights += w;
    sum += w * std::log(e.median);
  }
  if (weights <= 0) return {};
  return Estimate::fromMedian(std::exp(sum / weights), 1 / std::sqrt(weights));
}

Estimate combinedSameReader(std::vector<Estimate> looks, double unit) {
  return combinedSameReader(std::move(looks), unit, kSameReaderSigma);
}

Estimate combinedSameReader(std::vector<Estimate> looks, double unit, double sameReaderSigma) {
  const bool any = std::any_of(looks.begin(), looks.end(), [](auto& e) { return e.median > 0; });
  if (!any) return {};
  if (looks.size() == 1) return looks.front();
  for (Estimate& e : looks) {
    // Nought has no logarithm: the reader saw less than a tenth of a unit.
    const double sigma = e.sigmaLog > 0 ? e.sigmaLog : 0.5;
    e = Estimate::fromMedian(std::max(e.median, unit / 10), sigma);
  }
  const Estimate c = combined(looks);
  double chi2 = 0;
  for (const Estimate& e : looks) {
    const double z = std::log(e.median / c.median) / e.sigmaLog;
    chi2 += z * z;
  }
  const double birge = std::sqrt(chi2 / static_cast<double>(looks.size() - 1));
  const double sigma = c.sigmaLog * std::max(1.0, birge);
  return Estimate::fromMedian(c.median, std::max(sigma, sameReaderSigma));
}

double seamsFromBees(double bees, const FrameFigures& figures) {
  return seamsOfFullFrames(bees / (2 * figures.beesPerSide()));
}
double beesFromSeams(double seams, const FrameFigures& figures) {
  return fullFramesOfSeams(seams) * 2 * figures.beesPerSide();
}

MeantFrames framesMeant(const apiary::Season& season, const apiary::HiveState& state,
                        const base::ColonyId& colony) {
  for (const apiary::BoxState& b : state.boxesOf(colony)) {
    if (b.role != apiary::BoxRole::Chamber) continue;
    if (const auto figures = figuresFor(season, b.frameType)) return {*figures, true};
    break;
  }
  return {*shippedFigures("langstroth_deep"), false};
}

StrengthEstimate estimateInspection(const apiary::Season& season, const Inspection& inspection) {
  const apiary::HiveState state = apiary::hiveOn(season, inspection.hive, inspection.date);
  StrengthEstimate out;
  out.colony =
      apiary::colonyMeant(state, inspection.colony).value_or(base::ColonyId(inspection.hive.str()));
  out.hive = inspection.hive;
  out.seenOn = inspection.date;

  const std::vector<apiary::BoxState> boxes = state.boxesOf(out.colony);
  const MeantFrames frames = framesMeant(season, state, out.colony);
  const CombSums sums =
      sumCombSides(season, season.combSides(inspection.record), boxes, frames.figures);
  out.sidesPartial = sums.sides > 0 && !sums.bees.complete && !sums.sealed.complete;
  addBees(season, inspection, state, sums, frames, out);
  addBrood(inspection, sums, frames, out);
  addStores(season, inspection, sums, boxes, out);
  return out;
}

std::vector<const Inspection*> inspectionsOf(const apiary::Season& season,
                                             const base::ColonyId& colony, base::Date day) {
  std::vector<base::HiveId> hives;
  const auto stays = season.stays(colony);
  for (const apiary::ColonyStay* s : stays) {
    if (std::find(hives.begin(), hives.end(), s->hive) == hives.end()) hives.push_back(s->hive);
  }
  const auto mainThere = [&](const base::HiveId& hive, base::Date on) {
    return std::any_of(stays.begin(), stays.end(), [&](const apiary::ColonyStay* s) {
      return s->hive == hive && s->fromDate <= on && (!s->toDate || on < *s->toDate) &&
             s->place.value_or(apiary::ColonyPlace::Main) == apiary::ColonyPlace::Main;
    });
  };
  std::vector<const Inspection*> out;
  for (const base::HiveId& hive : hives) {
    for (const Inspection* i : season.journal<Inspection>(hive)) {
      if (i->date > day) break;
      if (i->colony ? *i->colony == colony : mainThere(hive, i->date)) out.push_back(i);
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Inspection* a, const Inspection* b) { return a->date < b->date; });
  return out;
}

std::optional<StrengthEstimate> estimateColony(const apiary::Season& season,
                                               const base::ColonyId& colony, base::Date day) {
  const auto all = inspectionsOf(season, colony, day);
  if (all.empty()) return std::nullopt;
  StrengthEstimate out = estimateInspection(season, *all.back());
  out.colony = colony;
  return out;
}

}  // namespace outyard::strength
