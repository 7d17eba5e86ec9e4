// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_build.h"

#include <algorithm>
#include <cmath>

#include "core/planning/boost_words.h"
#include "core/strength/frame_table.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using base::Message;
using base::message;

constexpr double kMillion = 1e6;

std::string chamberItem(const std::string& frameType) {
  return "chamber:" + frameType;
}

}  // namespace

std::string idPart(const std::string& name) {
  std::string out;
  for (const char c : name) {
    if (c == ':') {
      out += "%3A";
    } else {
      out += c;
    }
  }
  return out;
}

void setNet(BoostOption& o, double benefit, double donorCost, double otherCost) {
  const auto b = std::llround(benefit * kMillion), d = std::llround(donorCost * kMillion),
             c = std::llround(otherCost * kMillion);
  o.benefit = static_cast<double>(b) / kMillion;
  o.donorCost = static_cast<double>(d) / kMillion;
  o.otherCost = static_cast<double>(c) / kMillion;
  o.net = static_cast<double>(b - d - c) / kMillion;
}

OptionMaker::OptionMaker(const apiary::Season& season, BoostProblem& problem,
                         const Parties& parties, const BoostFigures& figures)
    : m_season(season), m_problem(problem), m_parties(parties), m_figures(figures) {}

void OptionMaker::begin(const Party&) {
  m_because.clear();
}

void OptionMaker::because(Message why) {
  if (std::find(m_because.begin(), m_because.end(), why) == m_because.end()) {
    m_because.push_back(std::move(why));
  }
}

bool OptionMaker::weatherAllows(const Party& p, Method method) {
  const auto [it, fresh] = m_weather.try_emplace({p.yard, method});
  if (fresh) {
    it->second =
        weatherBar(m_parties.weather.at(p.yard), method, m_problem.request.date, m_figures);
    if (it->second) {
      m_problem.notes.push_back(message("planning.note.weather", p.yard.str(), *it->second));
    }
  }
  if (!it->second) return true;
  because(*it->second);
  return false;
}

bool OptionMaker::layingSeen(const Party& p) const {
  if (p.look && p.look->eggsSeen) return *p.look->eggsSeen;
  const auto& eggs = p.seen().eggCells;
  return (eggs && eggs->median > 0) || (p.look && p.look->queenSeen.value_or(false));
}

bool OptionMaker::flowOn(const Party& p) const {
  const int day = m_problem.request.date.dayOfYear();
  for (const auto& [key, flow] : m_season.table<apiary::Flow>()) {
    if (flow.yard != p.yard || flow.nectar.value_or(0) < m_figures.swapMinFlow) continue;
    const bool on = flow.fromDay <= flow.toDay ? flow.fromDay <= day && day <= flow.toDay
                                               : day >= flow.fromDay || day <= flow.toDay;
    if (on) return true;
  }
  return false;
}

double OptionMaker::cellsPerSide(const std::string& frameType) const {
  const auto figures = strength::figuresFor(m_season, frameType);
  // Comb of an unknown frame is taken for the smallest of the shipped brood combs.
  if (figures) return figures->cellsPerSide();
  const auto* smallest = strength::shippedFigures("german_normal");
  return smallest ? smallest->cellsPerSide() : 0;
}

void OptionMaker::alone(const Party& p) {
  const auto& empty = p.look ? p.look->emptyCombFrames : std::optional<double>{};
  if (const auto move = feedMove(p.seen(), m_figures)) {
    if (weatherAllows(p, Method::Feed)) {
      add(p, Method::Feed, nullptr, 0, *move,
          {message("planning.why.feed", p.hive(), hundredths(p.seen().honeyKg->median),
                   m_figures.feedBelowKg)});
    }
  }
  if (!empty || *empty > m_figures.roomMaxEmptyCombs) return;
  if (const auto move = roomMove(p.seen(), m_figures)) {
    if (weatherAllows(p, Method::Room)) {
      add(p, Method::Room, nullptr, 1, *move,
          {message("planning.why.room", p.hive(), *empty, twoFigures(move->gain.median))});
    }
  }
}

bool OptionMaker::withDonors(const Party& p, const std::vector<const Donor*>& donors, bool unite) {
  const std::size_t before = m_problem.options.size();
  if (!unite && !layingSeen(p)) {
    because(message("planning.because.no_eggs", p.hive()));
    return false;
  }
  for (const Donor* d : donors) {
    if (unite) {
      uniteWith(p, *d);
      continue;
    }
    stack(p, *d);
    sealed(p, *d);
    nurse(p, *d);
    if (d->party.yard == p.yard) swap(p, *d);
  }
  return m_problem.options.size() > before;
}

void OptionMaker::stack(const Party& p, const Donor& d) {
  const auto& f = m_figures;
  if (p.seams() < f.stackWeakMinSeams || p.seams() > f.stackWeakMaxSeams) {
    return because(message("planning.because.stack_seams", p.hive(), quarters(p.seams()),
                           f.stackWeakMinSeams, f.stackWeakMaxSeams));
  }
  if (d.limit.stack < 1) return;
  if (!boxesFit(p.frameType, d.party.frameType)) {
    return because(message("planning.because.boxes", p.hive(), d.party.hive()));
  }
  const auto move = stackMove(p.seen(), d.party.seen(), f);
  if (!move || move->bees > d.limit.bees) {
    return because(message("planning.because.few_come_up", d.party.hive(), f.stackMinBees));
  }
  if (!weatherAllows(p, Method::Stack)) return;
  add(p, Method::Stack, &d, 1, *move,
      {message("planning.why.stack", p.hive(), twoFigures(move->gain.median), d.party.hive())});
}

void OptionMaker::sealed(const Party& p, const Donor& d) {
  const auto& f = m_figures;
  if (p.seams() < f.giftMinSeams) {
    return because(
        message("planning.because.gift_seams", p.hive(), quarters(p.seams()), f.giftMinSeams));
  }
  const std::string& type = d.party.frameType;
  if (!type.empty() && !p.frameType.empty() && type != p.frameType) {
    return because(message("planning.because.combs", p.hive(), d.party.hive()));
  }
  const int most = p.seams() < f.giftTwoSeams ? 1 : 2;
  for (int k = 1; k <= most && k <= d.limit.broodFrames; ++k) {
    const auto move = sealedMove(p.seen(), d.party.seen(), k, cellsPerSide(type), f);
    if (!move) {
      return because(message("planning.because.sealed_unknown", d.party.hive()));
    }
    if (!weatherAllows(p, Method::SealedFrames)) return;
    std::vector<Message> why{
        message("planning.why.sealed", p.hive(), k, d.party.hive(), twoFigures(move->gain.median))};
    if (move->uncovered > 100) {
      why.push_back(message("planning.why.uncovered", p.hive(), twoFigures(move->uncovered)));
    }
    add(p, Method::SealedFrames, &d, k, *move, std::move(why));
  }
}

void OptionMaker::nurse(const Party& p, const Donor& d) {
  if (!d.givesShaken || p.seams() < m_figures.shakeMinSeams) return;
  for (int k = 2; k <= 3; ++k) {
    const auto move = nurseMove(d.party.seen(), k, m_figures);
    if (!move || move->bees > d.limit.bees) return;
    if (!weatherAllows(p, Method::NurseBees)) return;
    add(p, Method::NurseBees, &d, k, *move,
        {message("planning.why.nurse", p.hive(), twoFigures(move->bees), k, d.party.hive())});
  }
}

void OptionMaker::swap(const Party& p, const Donor& d) {
  const auto& f = m_figures;
  if (p.seams() < f.swapMinSeams || p.seams() > f.swapMaxSeams) return;
  if (!flowOn(p)) return because(message("planning.because.no_flow", p.yard.str()));
  const auto move = swapMove(p.seen(), d.party.seen(), f);
  if (!move || move->bees > d.limit.bees) return;
  if (!weatherAllows(p, Method::ChangePlaces)) return;
  add(p, Method::ChangePlaces, &d, 1, *move,
      {message("planning.why.swap", p.hive(), d.party.hive(), twoFigures(move->gain.median))});
}

void OptionMaker::uniteWith(const Party& p, const Donor& d) {
  if (!boxesFit(p.frameType, d.party.frameType)) {
    return because(message("planning.because.boxes", p.hive(), d.party.hive()));
  }
  const auto move = uniteMove(p.seen(), d.party.seen(), m_figures);
  if (!move || !weatherAllows(p, Method::Unite)) return;
  add(p, Method::Unite, &d, 1, *move,
      {message("planning.why.unite", p.hive(), twoFigures(move->gain.median), d.party.hive())});
}

void OptionMaker::leave(const Party& p, bool nobodyGives) {
  if (nobodyGives) because(message("planning.because.no_donor", p.yard.str()));
  BoostOption o;
  o.id = "leave:" + idPart(p.judgement->colony.str()) + "::0";
  o.colony = p.judgement->colony;
  o.hive = p.judgement->hive;
  bool stackOffered = false, anyOffered = false;
  for (const auto& other : m_problem.options) {
    if (other.colony != o.colony) continue;
    anyOffered = anyOffered || other.donorColony.has_value();
    stackOffered = stackOffered || other.method == Method::Stack;
  }
  if (!anyOffered && !nobodyGives && m_because.empty()) {
    because(message("planning.because.donors_weak", p.hive()));
  } else if (!stackOffered && p.judgement->verdict == apiary::VerdictCode::SmallSound &&
             !nobodyGives) {
    const bool carrier = std::any_of(m_parties.donors.begin(), m_parties.donors.end(),
                                     [](const Donor& d) { return d.limit.stack > 0; });
    if (!carrier) because(message("planning.because.no_carrier", m_figures.stackDonorMinSeams));
  }
  o.why = m_because;
  m_problem.options.push_back(std::move(o));
}

void OptionMaker::cautions(BoostOption& o, const Party& p, const Donor* d) const {
  o.cautions = methodGuide(o.method).cautions;
  const auto extra = [&](Message m) { o.cautions.push_back(std::move(m)); };
  const auto& honey = p.seen().honeyKg;
  if (o.method != Method::Feed && o.method != Method::Unite && honey &&
      honey->median < m_figures.feedEmergencyKg) {
    extra(message("planning.caution.feed_first", p.hive(), hundredths(honey->median)));
  }
  if (!d) return;
  const Party& q = d->party;
  if (q.yard != p.yard) extra(message("planning.caution.carry", q.yard.str(), p.yard.str()));
  if (p.frameType.empty() || q.frameType.empty()) {
    extra(message("planning.caution.frame_type", p.hive(), q.hive()));
  }
  if (o.method == Method::Stack) {
    if (p.chambers > 1) extra(message("planning.caution.one_box", p.hive()));
    if (q.look && !q.look->queenCells) extra(message("planning.caution.cells_unknown", q.hive()));
    if (q.chambers == 0) extra(message("planning.caution.room_unknown", q.hive()));
  }
}

void OptionMaker::add(const Party& p, Method method, const Donor* donor, int k, const Move& move,
                      std::vector<Message> extra) {
  const MethodFigures& m = methodFigures(method);
  const auto& f = m_figures;
  BoostOption o;
  o.colony = p.judgement->colony;
  o.hive = p.judgement->hive;
  o.method = method;
  o.id = std::string(apiary::code(method)) + ":" + idPart(o.colony.str()) + ":";
  if (donor) {
    o.donorColony = donor->party.judgement->colony;
    o.donorHive = donor->party.judgement->hive;
    o.id += idPart(o.donorColony->str());
  }
  o.id += ":" + std::to_string(k);
  o.beesMoved = move.bees;
  o.framesMoved = move.combs;
  o.gain = move.gain;
  o.sealedCells = move.given;
  if (method != Method::Unite) {
    o.takes = {move.bees, method == Method::Room ? 0 : move.combs, method == Method::Stack ? 1 : 0};
  }
  const std::string& type = donor ? donor->party.frameType : p.frameType;
  if (m.excluders > 0) o.gear["excluder"] = m.excluders;
  if (m.paper > 0) o.gear["paper"] = m.paper;
  if (m.feeders > 0) o.gear["feeder"] = m.feeders;
  if (m.combPerFrame && !type.empty()) o.gear["drawn_comb:" + type] = k;
  if (method == Method::Stack) {
    // The stack is no room for the donor: with one chamber and no two empty combs it gets another.
    const Party& q = donor->party;
    const double empty = q.look ? q.look->emptyCombFrames.value_or(0) : 0;
    if (q.chambers == 1 && empty < 2 && !q.frameType.empty()) {
      o.gear[chamberItem(q.frameType)] = 1;
      extra.push_back(message("planning.why.donor_room", q.hive()));
    }
  }
  int pieces = 0;
  for (const auto& [item, n] : o.gear) pieces += n;
  o.hours = m.minutes / 60.0;
  o.why.push_back(method == Method::Unite
                      ? message("planning.why.queen", p.hive(), quarters(p.seams()))
                      : message("planning.why.sound", p.hive(), quarters(p.seams())));
  for (auto& e : extra) o.why.push_back(std::move(e));
  if (donor) {
    o.why.push_back(message("planning.why.cost", donor->party.hive(),
                            quarters(donor->party.seams()), twoFigures(move.donorLoss)));
  }
  const double work = (m.minutes + m.returnMinutes) / 60.0 * m.people;
  double other = work * f.hourCost + pieces * f.gearCost;
  if (donor && donor->party.yard != p.yard) other += f.driveCost;
  setNet(o, move.gain.median / 1000, move.donorLoss / 1000, other);
  cautions(o, p, donor);
  m_problem.options.push_back(std::move(o));
}

}  // namespace outyard::planning
