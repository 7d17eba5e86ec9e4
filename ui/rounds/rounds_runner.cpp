// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_runner.h"

#include <QPointer>
#include <algorithm>
#include <thread>

#include "core/planning/desk_facts.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::rounds {
namespace {

const QString kWork = QStringLiteral("rounds");

/// One core stays with the window.
int threadsBeside() {
  constexpr int kMost = 8;
  return std::clamp(static_cast<int>(std::thread::hardware_concurrency()) - 1, 1, kMost);
}

/// True when the change of a task says no more than in which visit it is done.
bool onlyTheVisit(const apiary::Change& change) {
  if (!change.before || !change.after) return false;
  auto before = apiary::fromRow<apiary::Task>(*change.before);
  auto after = apiary::fromRow<apiary::Task>(*change.after);
  before.visit = after.visit = std::nullopt;
  before.plannedOn = after.plannedOn = std::nullopt;
  return before == after;
}

struct Touched {
  bool all = false;
  std::set<base::YardId> yards;
};

Touched touchedBy(const apiary::Season& season, const session::Notice& notice) {
  using apiary::TableId;
  Touched out;
  bool ofHives = false;
  for (const apiary::Change& change : notice.changes) {
    switch (change.table) {
      case TableId::Settings:
      case TableId::FrameTypes:
      case TableId::Weather:  // a yard without weather takes that of a neighbour
      case TableId::Flows:
      case TableId::Yards:
      case TableId::Queens:
        out.all = true;
        break;
      case TableId::Gear:
      case TableId::Stands:
      case TableId::Features:
      case TableId::Plans:
      case TableId::PlanRows:
      case TableId::Visits:
      case TableId::Sheets:
      case TableId::SheetLines:
        break;
      case TableId::Tasks:
        if (onlyTheVisit(change)) break;
        [[fallthrough]];
      default:
        ofHives = true;
    }
  }
  if (!ofHives || out.all) return out;
  out.yards.insert(notice.yards.begin(), notice.yards.end());
  // A hive that went from one yard to the other changes both.
  for (const auto& hive : notice.hives) {
    for (const auto* place : season.journal<apiary::Place>(hive)) out.yards.insert(place->yard);
  }
  out.all = out.yards.empty();
  return out;
}

}  // namespace

RoundsRunner::RoundsRunner(widgets::SeasonHub& hub, QObject* parent) : QObject(parent), m_hub(hub) {
  connect(&m_hub, &widgets::SeasonHub::changed, this, &RoundsRunner::seasonChanged);
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    stop();
    m_lists.clear();
    m_due.reset();
    m_from.reset();
    m_stale = true;
    Q_EMIT outdated();
  });
}

RoundsRunner::~RoundsRunner() {
  m_hub.forecasts().abandon(kWork);
}

void RoundsRunner::setDays(base::Date from, base::Date to) {
  from = std::max(from, m_hub.workingDate());
  if (m_from == from && m_to == to) return;
  stop();
  m_from = from;
  m_to = to;
  m_lists.clear();
  m_due.reset();
  m_stale = true;
}

void RoundsRunner::seasonChanged(const session::Notice& notice) {
  // Work beside the window was let go with the change.
  const bool was = m_running;
  stop();
  const Touched touched = touchedBy(m_hub.season(), notice);
  if (touched.all) m_lists.clear();
  for (const auto& yard : touched.yards) m_lists.erase(yard);
  if (touched.all || !touched.yards.empty() || was) {
    m_stale = true;
    Q_EMIT outdated();
  }
}

void RoundsRunner::stop() {
  m_hub.forecasts().abandon(kWork);
  m_running = false;
  m_propose = false;
}

void RoundsRunner::cancel() {
  if (!m_running) return;
  stop();
  Q_EMIT cancelled();
}

void RoundsRunner::propose() {
  if (m_running) {
    m_propose = true;
    return;
  }
  if (!m_stale) {
    m_running = m_propose = true;
    Q_EMIT progressed(m_goal, m_goal);
    askProposal();
    return;
  }
  refresh();
  m_propose = m_running;
}

void RoundsRunner::refresh() {
  stop();
  if (!m_hub.isOpen() || !m_from || *m_to < *m_from || !m_stale) return;
  m_missing.clear();
  const auto& yards = m_hub.season().table<apiary::Yard>();
  std::erase_if(m_lists, [&](const auto& l) { return !yards.contains(l.first.str()); });
  for (const auto& [key, yard] : yards) {
    if (!m_lists.contains(yard.yard)) m_missing.insert(yard.yard);
  }
  m_goal = static_cast<int>(m_missing.size());
  m_running = true;
  Q_EMIT progressed(0, m_goal);
  next();
}

void RoundsRunner::next() {
  if (m_missing.empty()) {
    askSum();
  } else {
    const auto& chosen = m_hub.selection().yard;
    askYard(chosen && m_missing.contains(*chosen) ? *chosen : *m_missing.begin());
  }
}

// One yard at a time, so that other work (the course of a hive that is looked at) gets between.
void RoundsRunner::askYard(const base::YardId& yard) {
  planning::DueAsk ask;
  ask.from = *m_from;
  ask.to = *m_to;
  ask.yards = {yard};
  m_hub.forecasts().beside(kWork, [self = QPointer(this), yard, ask](const apiary::Season& season,
                                                                     base::Progress& progress) {
    auto list = planning::whatFallsDue(season, ask, threadsBeside(), progress);
    list.forecasts.clear();  // shown elsewhere; they are most of its size
    auto kept = std::make_shared<const planning::DueList>(std::move(list));
    return widgets::SideResult([self, yard, kept] {
      if (!self) return;
      self->m_lists[yard] = kept;
      self->m_missing.erase(yard);
      Q_EMIT self->progressed(self->m_goal - static_cast<int>(self->m_missing.size()),
                              self->m_goal);
      self->next();
    });
  });
}

void RoundsRunner::askSum() {
  std::vector<const planning::DueList*> parts;
  for (const auto& [yard, list] : m_lists) parts.push_back(list.get());
  auto all = planning::joined(parts);
  all.ask.from = *m_from;
  all.ask.to = *m_to;
  m_due = std::make_shared<const planning::DueList>(std::move(all));
  m_stale = false;
  if (m_propose) {
    Q_EMIT finished();
    askProposal();
  } else {
    m_running = false;
    Q_EMIT finished();
  }
}

void RoundsRunner::askProposal() {
  m_hub.forecasts().beside(
      kWork, [self = QPointer(this), due = m_due](const apiary::Season& season, base::Progress&) {
        auto made = std::make_shared<Proposal>();
        std::vector<base::Message> notes;
        const auto figures = planning::roundFigures(season, notes);
        std::vector<apiary::Visit> kept;
        for (const auto& [key, visit] : season.table<apiary::Visit>()) kept.push_back(visit);
        made->due = due;
        made->plan = planning::proposeRounds(season, *due, figures, kept);
        made->plan.notes.insert(made->plan.notes.begin(), notes.begin(), notes.end());
        return widgets::SideResult([self, made] {
          if (!self) return;
          self->m_running = self->m_propose = false;
          Q_EMIT self->proposed(made);
        });
      });
}

}  // namespace outyard::rounds
