// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/session_model.h"

#include <QWidget>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/widgets/forecast_desk.h"

namespace outyard::widgets {
namespace {

const apiary::Season& noSeason() {
  static const apiary::Season empty;
  return empty;
}

}  // namespace

SeasonHub::SeasonHub(Dialogs& dialogs, adapt::DeskSettings& settings, const base::Clock& clock,
                     QObject* parent)
    : QObject(parent), m_dialogs(dialogs), m_settings(settings), m_clock(clock) {
  // Before any place connects, so that places never read what a change has outdated.
  m_forecasts = std::make_unique<ForecastDesk>(*this);
}

SeasonHub::~SeasonHub() = default;

void SeasonHub::open(std::unique_ptr<session::Session> session, const QString& path) {
  m_subscription.reset();
  forget();
  m_session = std::move(session);
  m_path = path;
  m_selection = {};
  m_shown.reset();
  if (m_session) {
    m_subscription = m_session->subscribe([this](const session::Notice& notice) {
      forgetTouched(notice);
      // An undo can take the selected hive out of the season.
      const bool gone = (m_selection.hive && !season().hive(*m_selection.hive)) ||
                        (m_selection.yard && !season().yard(*m_selection.yard));
      if (gone) m_selection = {};
      Q_EMIT changed(notice);
      const bool settings =
          std::any_of(notice.changes.begin(), notice.changes.end(),
                      [](const apiary::Change& c) { return c.table == apiary::TableId::Settings; });
      if (settings && !m_shown) Q_EMIT shownDateChanged();  // the working date is a setting
      if (gone) Q_EMIT selectionChanged();
    });
    const auto& yards = season().table<apiary::Yard>();
    if (!yards.empty()) m_selection.yard = yards.begin()->second.yard;
  }
  Q_EMIT seasonReplaced();
  Q_EMIT shownDateChanged();
  Q_EMIT selectionChanged();
}

void SeasonHub::close() {
  open(nullptr, {});
}

const apiary::Season& SeasonHub::season() const {
  return m_session ? m_session->season() : noSeason();
}

base::Date SeasonHub::workingDate() const {
  return m_session ? m_session->workingDate() : m_clock.today();
}

base::Date SeasonHub::shownDate() const {
  return m_shown.value_or(workingDate());
}

void SeasonHub::setShownDate(base::Date day) {
  if (day == shownDate()) return;
  if (day == workingDate()) {
    m_shown.reset();  // follows the working date again
  } else {
    m_shown = day;
  }
  forget();
  Q_EMIT shownDateChanged();
}

base::Date SeasonHub::firstDate() const {
  std::optional<base::Date> first;
  for (const auto& [key, hive] : season().table<apiary::Hive>()) {
    const auto day = apiary::firstRecordOf(season(), hive.hive);
    if (day && (!first || *day < *first)) first = day;
  }
  return first ? std::min(*first, workingDate()) : workingDate();
}

QString SeasonHub::whyNot(const session::Command& command) const {
  if (!m_session) return tr("No season is open. Open or make one in the File menu first.");
  const auto result = m_session->check(command);
  return result ? QString() : adapt::words(result.failure());
}

bool SeasonHub::execute(session::CommandPtr command, QWidget* parent) {
  const QString title = tr("This cannot be done");
  if (!m_session) {
    m_dialogs.failure(parent, title, whyNot(*command));
    return false;
  }
  const auto result = m_session->execute(*command);
  if (!result) m_dialogs.failure(parent, title, adapt::words(result.failure()));
  return result.ok();
}

bool SeasonHub::undo(QWidget* parent) {
  if (!m_session || !m_session->canUndo()) return false;
  const auto result = m_session->undo();
  if (!result) m_dialogs.failure(parent, tr("Not undone"), adapt::words(result.failure()));
  return result.ok();
}

bool SeasonHub::redo(QWidget* parent) {
  if (!m_session || !m_session->canRedo()) return false;
  const auto result = m_session->redo();
  if (!result) m_dialogs.failure(parent, tr("Not redone"), adapt::words(result.failure()));
  return result.ok();
}

void SeasonHub::select(Selection selection) {
  if (selection.hive) {
    const auto state = apiary::hiveOn(season(), *selection.hive, shownDate());
    if (!selection.yard && !state.yard.blank()) selection.yard = state.yard;
    if (!selection.colony && !state.colonies.empty()) {
      selection.colony = state.colonies.front().colony;
    }
  }
  if (selection == m_selection) return;
  m_selection = std::move(selection);
  Q_EMIT selectionChanged();
}

const std::vector<apiary::HiveState>& SeasonHub::hives(const base::YardId& yard) const {
  const auto it = m_hives.find(yard);
  if (it != m_hives.end()) return it->second;
  return m_hives.emplace(yard, apiary::yardOn(season(), yard, shownDate())).first->second;
}

const apiary::HiveState* SeasonHub::hive(const base::HiveId& hive) const {
  const auto now = apiary::hiveOn(season(), hive, shownDate());
  if (!now.present || now.yard.blank()) return nullptr;
  const auto& all = hives(now.yard);
  const auto it = std::find_if(all.begin(), all.end(),
                               [&](const apiary::HiveState& state) { return state.hive == hive; });
  return it == all.end() ? nullptr : &*it;
}

const std::vector<strength::Judgement>& SeasonHub::judgements(const base::YardId& yard) const {
  const auto it = m_judgements.find(yard);
  if (it != m_judgements.end()) return it->second;
  // A day ahead is judged by what is known today.
  const auto day = std::min(shownDate(), workingDate());
  return m_judgements.emplace(yard, strength::judgeYard(season(), yard, day)).first->second;
}

std::vector<strength::Judgement> SeasonHub::judgementsOf(const base::HiveId& hive) const {
  const auto* state = this->hive(hive);
  if (!state) return {};
  std::vector<strength::Judgement> found;
  for (const auto& colony : state->colonies) {
    for (const auto& judgement : judgements(state->yard)) {
      if (judgement.colony == colony.colony) found.push_back(judgement);
    }
  }
  return found;
}

void SeasonHub::forgetTouched(const session::Notice& notice) const {
  // Rows that belong to no yard or change every figure.
  const bool everywhere =
      std::any_of(notice.changes.begin(), notice.changes.end(), [](const apiary::Change& change) {
        switch (change.table) {
          case apiary::TableId::Settings:
          case apiary::TableId::FrameTypes:
          case apiary::TableId::Queens:
          case apiary::TableId::Weather:
          case apiary::TableId::Flows:
          case apiary::TableId::Yards:
            return true;
          default:
            return false;
        }
      });
  if (everywhere || notice.yards.empty()) {
    forget();
    return;
  }
  for (const auto& yard : notice.yards) {
    m_hives.erase(yard);
    m_judgements.erase(yard);
  }
}

void SeasonHub::forget() const {
  m_hives.clear();
  m_judgements.clear();
}

}  // namespace outyard::widgets
