// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_runner.h"

#include <QPointer>
#include <algorithm>
#include <thread>

#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::desk {
namespace {

const QString kWork = QStringLiteral("desk");

/// One core stays with the window.
int threadsBeside() {
  constexpr int kMost = 8;
  return std::clamp(static_cast<int>(std::thread::hardware_concurrency()) - 1, 1, kMost);
}

}  // namespace

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
        out.sums = true;
        break;
      case TableId::Stands:
      case TableId::Features:
      case TableId::Plans:
      case TableId::PlanRows:
      case TableId::Visits:
      case TableId::Sheets:
      case TableId::SheetLines:
        break;
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

DeskRunner::DeskRunner(widgets::SeasonHub& hub, QObject* parent) : QObject(parent), m_hub(hub) {
  connect(&m_hub, &widgets::SeasonHub::changed, this, &DeskRunner::seasonChanged);
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    stop();
    m_lists.clear();
    m_fresh = false;
    Q_EMIT outdated();
  });
}

DeskRunner::~DeskRunner() {
  m_hub.forecasts().abandon(kWork);
}

void DeskRunner::seasonChanged(const session::Notice& notice) {
  // Work beside the window was let go with the change.
  const bool was = m_running;
  stop();
  const Touched touched = touchedBy(m_hub.season(), notice);
  if (touched.all) m_lists.clear();
  for (const auto& yard : touched.yards) m_lists.erase(yard);
  if (touched.any() || was) {
    m_fresh = false;
    Q_EMIT outdated();
  }
}

void DeskRunner::stop() {
  m_hub.forecasts().abandon(kWork);
  m_running = false;
}

void DeskRunner::cancel() {
  if (!m_running) return;
  stop();
  Q_EMIT cancelled();
}

void DeskRunner::refresh() {
  stop();
  if (!m_hub.isOpen()) return;
  if (m_from != m_hub.workingDate()) {
    m_from = m_hub.workingDate();
    m_lists.clear();
    m_fresh = false;
  }
  if (m_fresh) return;
  m_missing.clear();
  const auto& yards = m_hub.season().table<apiary::Yard>();
  std::erase_if(m_lists, [&](const auto& l) { return !yards.contains(l.first.str()); });
  for (const auto& [key, yard] : yards) {
    if (!m_lists.contains(yard.yard)) m_missing.insert(yard.yard);
  }
  m_first = m_lists.empty();
  m_sinceShown.start();
  m_goal = static_cast<int>(m_missing.size());
  m_running = true;
  Q_EMIT progressed(0, m_goal);
  next();
}

void DeskRunner::next() {
  constexpr int kShowEvery = 1500;  // milliseconds
  if (m_missing.empty()) {
    askSums(true);
  } else if (m_first && !m_lists.empty() && m_sinceShown.hasExpired(kShowEvery)) {
    askSums(false);
  } else {
    // What is looked at comes first.
    const auto& chosen = m_hub.selection().yard;
    askYard(chosen && m_missing.contains(*chosen) ? *chosen : *m_missing.begin());
  }
}

// One yard at a time, so that other work (the course of a hive that is looked at) gets between.
void DeskRunner::askYard(const base::YardId& yard) {
  planning::DueAsk ask;
  ask.from = *m_from;
  ask.to = ask.from.plusDays(kDays - 1);
  ask.yards = {yard};
  m_hub.forecasts().beside(kWork, [self = QPointer(this), yard, ask](const apiary::Season& season,
                                                                     base::Progress& progress) {
    auto list = std::make_shared<const planning::DueList>(
        planning::whatFallsDue(season, ask, threadsBeside(), progress));
    return widgets::SideResult([self, yard, list] {
      if (!self) return;
      self->m_lists[yard] = list;
      self->m_missing.erase(yard);
      Q_EMIT self->progressed(self->m_goal - static_cast<int>(self->m_missing.size()),
                              self->m_goal);
      self->next();
    });
  });
}

void DeskRunner::askSums(bool last) {
  std::vector<std::shared_ptr<const planning::DueList>> lists;
  for (const auto& [yard, list] : m_lists) lists.push_back(list);
  m_hub.forecasts().beside(
      kWork, [self = QPointer(this), lists, last](const apiary::Season& season, base::Progress&) {
        std::vector<const planning::DueList*> parts;
        for (const auto& list : lists) parts.push_back(list.get());
        auto facts = std::make_shared<const planning::DeskFacts>(
            planning::deskFacts(season, planning::joined(parts)));
        return widgets::SideResult([self, facts, last] {
          if (!self) return;
          self->m_running = !last;
          self->m_fresh = last;
          self->m_sinceShown.restart();
          Q_EMIT self->finished(facts);
          if (!last && self->m_running) self->next();
        });
      });
}

}  // namespace outyard::desk
