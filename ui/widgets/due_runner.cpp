// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/due_runner.h"

#include <QPointer>
#include <utility>

#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::widgets {
namespace {

/// True when the change of a task says no more than in which visit it is done.
bool onlyTheVisit(const apiary::Change& change) {
  if (!change.before || !change.after) return false;
  auto before = apiary::fromRow<apiary::Task>(*change.before);
  auto after = apiary::fromRow<apiary::Task>(*change.after);
  before.visit = after.visit = std::nullopt;
  before.plannedOn = after.plannedOn = std::nullopt;
  return before == after;
}

}  // namespace

Touched touchedBy(const apiary::Season& season, const session::Notice& notice, bool visits) {
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
        out.gear = true;
        break;
      case TableId::Stands:
      case TableId::Features:
      case TableId::Plans:
      case TableId::PlanRows:
      case TableId::Visits:
      case TableId::Sheets:
      case TableId::SheetLines:
        break;
      case TableId::Tasks:
        if (!visits && onlyTheVisit(change)) break;
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

DueRunner::DueRunner(SeasonHub& hub, QString work, Minds minds, QObject* parent)
    : QObject(parent), m_hub(hub), m_work(std::move(work)), m_minds(minds) {
  connect(&m_hub, &SeasonHub::changed, this, &DueRunner::seasonChanged);
  connect(&m_hub, &SeasonHub::seasonReplaced, this, [this] {
    stop();
    m_lists.clear();
    m_from.reset();
    m_to.reset();
    m_fits = false;
    forget();
    Q_EMIT outdated();
  });
}

DueRunner::~DueRunner() {
  m_hub.forecasts().abandon(m_work);
}

bool DueRunner::setDays(base::Date from, base::Date to) {
  if (m_from == from && m_to == to) return false;
  m_from = from;
  m_to = to;
  m_lists.clear();
  m_fits = false;
  return true;
}

void DueRunner::seasonChanged(const session::Notice& notice) {
  // Work beside the window was let go with the change.
  const bool was = m_running;
  stop();
  const Touched touched = touchedBy(m_hub.season(), notice, m_minds.visits);
  if (touched.all) m_lists.clear();
  for (const auto& yard : touched.yards) m_lists.erase(yard);
  const bool gear = touched.gear && m_minds.gear;
  if (touched.all || gear || !touched.yards.empty() || was) {
    m_fits = false;
    Q_EMIT outdated();
  }
}

void DueRunner::stop() {
  m_hub.forecasts().abandon(m_work);
  m_running = false;
}

void DueRunner::cancel() {
  if (!m_running) return;
  stop();
  Q_EMIT cancelled();
}

void DueRunner::refresh() {
  stop();
  if (!m_hub.isOpen() || !begins() || m_fits) return;
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

void DueRunner::next() {
  if (m_missing.empty()) {
    allReady();
    return;
  }
  // What is looked at comes first.
  const auto& chosen = m_hub.selection().yard;
  askYard(chosen && m_missing.contains(*chosen) ? *chosen : *m_missing.begin());
}

// One yard at a time, so that other work (the course of a hive that is looked at) gets between.
void DueRunner::askYard(const base::YardId& yard) {
  planning::DueAsk ask;
  ask.from = from();
  ask.to = to();
  ask.yards = {yard};
  m_hub.forecasts().beside(
      m_work, [self = QPointer(this), yard, ask, forecasts = m_minds.forecasts](
                  const apiary::Season& season, base::Progress& progress) {
        auto list = planning::whatFallsDue(season, ask, threadsBeside(), progress);
        if (!forecasts) list.forecasts.clear();
        auto kept = std::make_shared<const planning::DueList>(std::move(list));
        return SideResult([self, yard, kept] {
          if (!self) return;
          self->m_lists[yard] = kept;
          self->m_missing.erase(yard);
          Q_EMIT self->progressed(self->m_goal - static_cast<int>(self->m_missing.size()),
                                  self->m_goal);
          self->yardReady();
        });
      });
}

}  // namespace outyard::widgets
