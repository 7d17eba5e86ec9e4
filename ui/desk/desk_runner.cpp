// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_runner.h"

#include <QPointer>

#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::desk {

DeskRunner::DeskRunner(widgets::SeasonHub& hub, QObject* parent)
    : DueRunner(hub, QStringLiteral("desk"), {.visits = true, .gear = true, .forecasts = true},
                parent) {}

bool DeskRunner::begins() {
  const auto today = hub().workingDate();
  setDays(today, today.plusDays(kDays - 1));
  m_first = lists().empty();
  m_sinceShown.start();
  return true;
}

void DeskRunner::yardReady() {
  constexpr int kShowEvery = 1500;  // milliseconds
  const bool more = lists().size() < hub().season().table<apiary::Yard>().size();
  if (more && m_first && m_sinceShown.hasExpired(kShowEvery)) {
    askSums(false);
  } else {
    next();
  }
}

void DeskRunner::askSums(bool last) {
  std::vector<List> kept;
  for (const auto& [yard, list] : lists()) kept.push_back(list);
  hub().forecasts().beside(
      work(), [self = QPointer(this), kept, last](const apiary::Season& season, base::Progress&) {
        std::vector<const planning::DueList*> parts;
        for (const auto& list : kept) parts.push_back(list.get());
        auto facts = std::make_shared<const planning::DeskFacts>(
            planning::deskFacts(season, planning::joined(parts)));
        return widgets::SideResult([self, facts, last] {
          if (!self) return;
          self->setRunning(!last);
          self->setFits(last);
          self->m_sinceShown.restart();
          Q_EMIT self->finished(facts);
          if (!last && self->running()) self->next();
        });
      });
}

}  // namespace outyard::desk
