// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_runner.h"

#include <QPointer>
#include <algorithm>

#include "core/planning/desk_facts.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::rounds {

RoundsRunner::RoundsRunner(widgets::SeasonHub& hub, QObject* parent)
    : DueRunner(hub, QStringLiteral("rounds"), {}, parent) {}

void RoundsRunner::setBoardDays(base::Date from, base::Date to) {
  from = std::max(from, hub().workingDate());
  m_asked = from <= to;
  if (!setDays(from, to)) return;
  stop();
  m_due.reset();
}

void RoundsRunner::forget() {
  m_due.reset();
  m_asked = false;
}

void RoundsRunner::stop() {
  DueRunner::stop();
  m_propose = false;
}

void RoundsRunner::propose() {
  if (running()) {
    m_propose = true;
    return;
  }
  if (fresh()) {
    m_propose = true;
    setRunning(true);
    Q_EMIT progressed(goal(), goal());
    askProposal();
    return;
  }
  refresh();
  m_propose = running();
}

void RoundsRunner::allReady() {
  std::vector<const planning::DueList*> parts;
  for (const auto& [yard, list] : lists()) parts.push_back(list.get());
  auto all = planning::joined(parts);
  all.ask.from = from();
  all.ask.to = to();
  m_due = std::make_shared<const planning::DueList>(std::move(all));
  setFits(true);
  if (!m_propose) setRunning(false);
  Q_EMIT finished();
  if (m_propose) askProposal();
}

void RoundsRunner::askProposal() {
  hub().forecasts().beside(
      work(), [self = QPointer(this), due = m_due](const apiary::Season& season, base::Progress&) {
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
          self->setRunning(false);
          self->m_propose = false;
          Q_EMIT self->proposed(made);
        });
      });
}

}  // namespace outyard::rounds
