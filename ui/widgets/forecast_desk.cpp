// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/forecast_desk.h"

#include <algorithm>
#include <tuple>

#include "ui/widgets/forecast_worker.h"
#include "ui/widgets/session_model.h"

namespace outyard::widgets {

ForecastDesk::ForecastDesk(SeasonHub& hub)
    : m_hub(hub), m_worker(std::make_unique<ForecastWorker>(*this)) {
  connect(&m_hub, &SeasonHub::changed, this, &ForecastDesk::seasonChanged);
  connect(&m_hub, &SeasonHub::seasonReplaced, this, &ForecastDesk::seasonReplaced);
}

ForecastDesk::~ForecastDesk() = default;

const forecast::ColonyForecast* ForecastDesk::of(const base::YardId& yard,
                                                 const base::ColonyId& colony) {
  for (const auto* found : ofYard(yard)) {
    if (found->colony == colony) return found;
  }
  return nullptr;
}

std::vector<const forecast::ColonyForecast*> ForecastDesk::ofYard(const base::YardId& yard) {
  std::vector<const forecast::ColonyForecast*> all;
  if (!isFresh(yard)) {
    want(yard);
    return all;
  }
  for (const auto& f : m_results.at(yard).colonies) all.push_back(&f);
  return all;
}

std::optional<forecast::ForecastDay> ForecastDesk::on(const base::YardId& yard,
                                                      const base::ColonyId& colony,
                                                      base::Date day) {
  const auto* found = of(yard, colony);
  return found ? forecast::dayBetween(found->days, day) : std::nullopt;
}

const sheet::ExpectedLooks& ForecastDesk::expectedIn(const base::YardId& yard, base::Date day) {
  static const sheet::ExpectedLooks kNone;
  if (day < m_hub.workingDate()) return kNone;
  if (!isFresh(yard)) {
    want(yard);
    return kNone;
  }
  YardResult& result = m_results.at(yard);
  if (result.looksOn == day) return result.looks;
  result.looksOn = day;
  result.looks.clear();
  for (const auto& f : result.colonies) {
    const auto row = forecast::dayBetween(f.days, day);
    if (!row) continue;
    const auto hive = apiary::hiveOn(m_hub.season(), f.hive, m_from);
    result.looks.emplace(f.colony, forecast::expectedLook(m_hub.season(), hive, f.colony, *row));
  }
  return result.looks;
}

bool ForecastDesk::isFresh(const base::YardId& yard) const {
  const auto result = m_results.find(yard);
  if (result == m_results.end() || m_from != m_hub.workingDate()) return false;
  const auto serial = m_serial.find(yard);
  return serial != m_serial.end() && serial->second == result->second.serial;
}

void ForecastDesk::want(const base::YardId& yard) {
  ask(yard, true);
}

void ForecastDesk::wantAll() {
  for (const auto& [key, yard] : m_hub.season().table<apiary::Yard>()) {
    if (!m_pending.contains(yard.yard)) ask(yard.yard, false);
  }
}

void ForecastDesk::ask(const base::YardId& yard, bool first) {
  if (!m_hub.isOpen() || !m_hub.season().yard(yard)) return;
  if (m_from != m_hub.workingDate()) {  // another today: nothing that is kept fits
    m_results.clear();
    m_touched.clear();
    cancel();
    m_from = m_hub.workingDate();
  }
  if (isFresh(yard)) return;
  if (!m_worker->hasSeason()) m_worker->replaceSeason(m_hub.season());
  const auto waiting = m_pending.contains(yard);
  if (waiting && !first) return;
  if (!waiting) {
    m_serial[yard] = ++m_next;
    m_goal = m_pending.empty() ? 1 : m_goal + 1;
    m_pending.insert(yard);
  }
  m_worker->addYard({yard, m_serial[yard], m_from, onlyOf(yard)}, first);
}

std::optional<std::set<base::ColonyId>> ForecastDesk::onlyOf(const base::YardId& yard) const {
  const auto touched = m_touched.find(yard);
  if (touched == m_touched.end() || !m_results.contains(yard)) return std::nullopt;
  return touched->second;
}

void ForecastDesk::cancel() {
  const bool was = !m_pending.empty();
  m_worker->dropYards();
  for (const auto& yard : m_pending) m_serial[yard] = ++m_next;
  m_pending.clear();
  m_goal = 0;
  if (was) Q_EMIT settled();
}

void ForecastDesk::beside(const QString& name, SideWork work) {
  if (!m_hub.isOpen()) return;
  if (!m_worker->hasSeason()) m_worker->replaceSeason(m_hub.season());
  m_sides[name] = ++m_next;
  m_worker->addSide(name, m_next, std::move(work));
}

void ForecastDesk::abandon(const QString& name) {
  m_sides.erase(name);
  m_worker->dropSide(name);
}

void ForecastDesk::takeSide(const QString& name, std::uint64_t serial, const SideResult& result) {
  const auto it = m_sides.find(name);
  if (it == m_sides.end() || it->second != serial) return;  // no longer wanted
  m_sides.erase(it);
  result();
}

void ForecastDesk::takeProgress(double ofYard) {
  if (m_pending.empty() || m_goal <= 0) return;
  const double share = (ready() + std::clamp(ofYard, 0.0, 0.99)) / m_goal;
  Q_EMIT progressed(std::clamp(static_cast<int>(share * 100), 0, 100));
}

void ForecastDesk::takeYard(const base::YardId& yard, std::uint64_t serial, base::Date from,
                            std::vector<forecast::ColonyForecast> colonies) {
  const auto it = m_serial.find(yard);
  if (it == m_serial.end() || it->second != serial || from != m_from) return;  // stale
  YardResult& result = m_results[yard];
  if (const auto only = onlyOf(yard)) {
    // The others are as they were; in the order of the yard again.
    for (auto& kept : result.colonies) {
      if (!only->contains(kept.colony)) colonies.push_back(std::move(kept));
    }
    std::sort(colonies.begin(), colonies.end(), [](const auto& a, const auto& b) {
      return std::tie(a.hive, a.colony) < std::tie(b.hive, b.colony);
    });
  }
  m_touched.erase(yard);
  result = {serial, std::move(colonies), std::nullopt, {}};
  m_pending.erase(yard);
  Q_EMIT updated(yard);
  if (m_pending.empty()) {
    m_goal = 0;
    Q_EMIT settled();
  } else {
    takeProgress(0);
  }
}

void ForecastDesk::seasonReplaced() {
  cancel();
  m_results.clear();
  m_touched.clear();
  m_serial.clear();
  m_sides.clear();
  m_worker->forgetSeason();
}

void ForecastDesk::outdate(const base::YardId& yard, const std::vector<base::HiveId>* touched) {
  const bool waiting = m_pending.contains(yard);
  const bool had = m_results.contains(yard);
  // What fitted before this change, or lacks only colonies that were touched, is kept but for
  // those that ever lived in a hive of the change.
  if (touched && (isFresh(yard) || onlyOf(yard))) {
    auto& colonies = m_touched[yard];
    for (const auto& hive : *touched) {
      for (const auto* stay : m_hub.season().allOf<apiary::ColonyStay>(hive)) {
        colonies.insert(stay->colony);
      }
      for (const auto& kept : m_results.at(yard).colonies) {
        if (kept.hive == hive) colonies.insert(kept.colony);
      }
      colonies.insert(base::ColonyId(hive.str()));  // a hive's first record makes its colony
    }
    // What is learnt of one colony says something of those that it shared a stack with.
    const std::set<base::ColonyId> own = colonies;
    for (const auto& colony : own) {
      for (const auto* stay : m_hub.season().stays(colony)) {
        for (const auto* beside : m_hub.season().journal<apiary::ColonyStay>(stay->hive)) {
          colonies.insert(beside->colony);
        }
      }
    }
  } else {
    m_results.erase(yard);
    m_touched.erase(yard);
  }
  m_worker->dropYard(yard);
  m_serial[yard] = ++m_next;
  if (!waiting && !had) return;
  if (!m_hub.season().yard(yard)) {
    m_pending.erase(yard);
    return;
  }
  if (!waiting) {
    m_goal = m_pending.empty() ? 1 : m_goal + 1;
    m_pending.insert(yard);
  }
  m_worker->addYard({yard, m_serial[yard], m_from, onlyOf(yard)}, true);
}

void ForecastDesk::seasonChanged(const session::Notice& notice) {
  if (!m_worker->hasSeason()) return;
  m_worker->applyChanges(notice.changes);
  m_worker->dropSides();
  m_sides.clear();
  bool everywhere = notice.yards.empty();
  for (const auto& change : notice.changes) {
    switch (change.table) {
      // Plans, tasks and papers move no colony; on their own they cost no forecast.
      case apiary::TableId::Settings:
      case apiary::TableId::FrameTypes:
      case apiary::TableId::Weather:
      case apiary::TableId::Flows:
      case apiary::TableId::Yards:
        everywhere = true;
        break;
      default:
        break;
    }
  }
  const auto movesNothing = [](const apiary::Change& change) {
    switch (change.table) {
      case apiary::TableId::Tasks:
      case apiary::TableId::Plans:
      case apiary::TableId::PlanRows:
      case apiary::TableId::Visits:
      case apiary::TableId::Sheets:
      case apiary::TableId::SheetLines:
      case apiary::TableId::Gear:
      case apiary::TableId::Stands:
      case apiary::TableId::Features:
        return true;
      default:
        return false;
    }
  };
  if (std::all_of(notice.changes.begin(), notice.changes.end(), movesNothing)) return;
  std::vector<base::YardId> touched = notice.yards;
  for (const auto& hive : notice.hives) {
    const auto yard = apiary::hiveOn(m_hub.season(), hive, m_from).yard;
    if (!yard.blank() && std::find(touched.begin(), touched.end(), yard) == touched.end()) {
      touched.push_back(yard);
    }
  }
  if (everywhere) {
    touched.assign(m_pending.begin(), m_pending.end());
    for (const auto& [yard, result] : m_results) touched.push_back(yard);
  }
  if (m_from != m_hub.workingDate()) {
    cancel();
    m_results.clear();
    m_touched.clear();
    m_from = m_hub.workingDate();
    for (const auto& yard : touched) ask(yard, false);
    return;
  }
  for (const auto& yard : touched) outdate(yard, everywhere ? nullptr : &notice.hives);
}

}  // namespace outyard::widgets
