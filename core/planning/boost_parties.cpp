// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_parties.h"

#include <algorithm>
#include <cmath>

#include "core/apiary/validate.h"

namespace outyard::planning {
namespace {

using apiary::VerdictCode;
using base::Message;
using base::message;
using strength::Judgement;

Party partyOf(const Judgement& j, const base::YardId& yard, const apiary::HiveState& state,
              const BoostRequest& request, bool south) {
  Party p;
  p.judgement = &j;
  p.yard = yard;
  p.shares = state.stacked();
  const int month = south ? (request.date.month() + 5) % 12 + 1 : request.date.month();
  p.early = month <= 4;
  for (const auto& box : state.boxesOf(j.colony)) {
    if (box.role != apiary::BoxRole::Chamber) continue;
    if (p.frameType.empty()) p.frameType = box.frameType;
    ++p.chambers;
  }
  if (const auto* c = state.colony(j.colony)) p.look = c->lastInspection;
  return p;
}

/// What stands against any work between hives with this colony; nullopt = nothing.
std::optional<Message> barOf(const Party& p, const BoostFigures& f) {
  const Judgement& j = *p.judgement;
  if (j.healthBar) return j.healthBar;
  if (p.shares) return message("planning.bar.shares", p.hive());
  if (!j.daysSinceSeen) return message("planning.bar.never_seen", p.hive());
  if (*j.daysSinceSeen > f.evidenceDays) {
    return message("planning.bar.seen_old", p.hive(), *j.daysSinceSeen, f.evidenceDays);
  }
  if (!j.strength || !j.strength->bees || !j.strength->seams) {
    return message("planning.bar.no_strength", p.hive());
  }
  return std::nullopt;
}

/// Verdicts for which no help is planned, with what to do instead.
std::optional<Message> verdictBar(const Party& p) {
  switch (p.judgement->verdict) {
    case VerdictCode::Sick:
      return message("planning.bar.sick", p.hive());
    case VerdictCode::TooSmall:
      return message("planning.bar.too_small", p.hive());
    case VerdictCode::TooEarly:
      return message("planning.bar.too_early", p.hive());
    case VerdictCode::NotEnoughSeen:
      return message("planning.bar.not_enough_seen", p.hive());
    case VerdictCode::LayingWorkers:
      return message("planning.bar.laying_workers", p.hive());
    default:
      return std::nullopt;
  }
}

Donor donorOf(const Party& p, const BoostFigures& f, std::vector<Barred>& notes) {
  const Judgement& j = *p.judgement;
  const auto& seen = p.seen();
  const auto note = [&](Message why) { notes.push_back({j.colony, j.hive, std::move(why)}); };
  Donor d{p, {}, false, true};
  d.limit.bees = std::floor(std::max(0.0, seen.bees->median - f.donorKeepBees));
  if (d.limit.bees <= 0) {
    note(message("planning.donor.few_bees", p.hive(), f.donorKeepBees));
    return d;
  }
  const double keep = p.early ? f.donorKeepBroodCombs : f.donorKeepBroodCombsLater;
  if (j.givesNoCombs) {
    note(message("planning.donor.no_combs", p.hive()));
  } else if (!seen.framesWithBrood) {
    note(message("planning.donor.brood_unknown", p.hive()));
  } else {
    d.limit.broodFrames =
        std::clamp(static_cast<double>(*seen.framesWithBrood) - keep, 0.0, f.donorMaxCombs);
    if (d.limit.broodFrames < 1) {
      note(message("planning.donor.keeps_brood", p.hive(), *seen.framesWithBrood, keep));
    }
    d.givesShaken = true;
  }
  if (p.seams() < f.stackDonorMinSeams) {
    note(message("planning.donor.few_seams", p.hive(), p.seams(), f.stackDonorMinSeams));
  } else if (!seen.framesWithBrood || *seen.framesWithBrood < f.stackDonorMinBroodCombs) {
    note(message("planning.donor.few_brood", p.hive(), f.stackDonorMinBroodCombs));
  } else if (p.look && p.look->queenCells.value_or(0) > 0) {
    note(message("planning.donor.queen_cells", p.hive(), *p.look->queenCells));
  } else {
    d.limit.stack = 1;
  }
  return d;
}

}  // namespace

bool boxesFit(const std::string& a, const std::string& b) {
  if (a.empty() || b.empty() || a == b) return true;
  const auto shipped = apiary::shippedFrameTypes();
  const auto maker = [&](const std::string& t) {
    const bool known = std::find(shipped.begin(), shipped.end(), t) != shipped.end();
    return known ? t.substr(0, t.find('_')) : t;
  };
  return maker(a) == maker(b);
}

Parties findParties(const apiary::Season& season, BoostProblem& problem, const BoostFigures& f) {
  Parties out;
  const BoostRequest& request = problem.request;
  for (const auto& yard : request.yards) {
    auto judged = strength::judgeYard(season, yard, request.date);
    for (auto& j : judged) {
      problem.yardOf[j.colony.str()] = yard;
      problem.judgements.push_back(std::move(j));
    }
  }
  for (const auto& yardId : request.yards) {
    const apiary::Yard* yard = season.yard(yardId);
    out.weather.emplace(yardId, YardWeather(season, yardId));
    const YardWeather& weather = out.weather.at(yardId);
    if (!weather.on(request.date)) {
      problem.notes.push_back(message("planning.note.no_forecast", yardId.str()));
    } else if (!weather.on(request.date.plusDays(1))) {
      problem.notes.push_back(
          message("planning.note.short_forecast", yardId.str(), request.date.iso()));
    }
    std::map<base::HiveId, apiary::HiveState> states;
    for (auto& s : apiary::yardOn(season, yardId, request.date)) states.emplace(s.hive, s);
    const bool south = yard->latitude.value_or(0) < 0;
    for (const Judgement& j : problem.judgements) {
      const auto at = states.find(j.hive);
      if (at == states.end() || problem.yardOf.at(j.colony.str()) != yardId) continue;
      const Party p = partyOf(j, yardId, at->second, request, south);
      const bool strong = j.verdict == VerdictCode::Strong || j.verdict == VerdictCode::Fair;
      auto bar = j.healthBar ? j.healthBar : verdictBar(p);
      if (!bar) bar = barOf(p, f);
      if (bar) {
        problem.barred.push_back({j.colony, j.hive, *bar});
        continue;
      }
      if (!strong) {
        (j.verdict == VerdictCode::SmallSound ? out.receivers : out.queenAtFault).push_back(p);
        continue;
      }
      if (p.seen().honeyKg && p.seen().honeyKg->median < f.donorMinKg) {
        problem.donorNotes.push_back(
            {j.colony, j.hive, message("planning.donor.hungry", p.hive(), f.donorMinKg)});
        continue;
      }
      Donor d = donorOf(p, f, problem.donorNotes);
      problem.donors[j.colony.str()] = d.limit;
      out.donors.push_back(std::move(d));
    }
  }
  return out;
}

}  // namespace outyard::planning
