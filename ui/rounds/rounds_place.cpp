// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_place.h"

#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/rounds/rounds_words.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::rounds {
RoundsPlace::RoundsPlace(widgets::SeasonHub& hub, QWidget* parent)
    : Place(parent), m_hub(hub), m_runner(hub) {
  setObjectName(QStringLiteral("roundsPlace"));
  makeActions();
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 12, 8);
  makeHead(*all);
  makeBody(*all);

  connect(&m_runner, &RoundsRunner::finished, this, [this] {
    rebuild();
    showState();
  });
  connect(&m_runner, &RoundsRunner::proposed, this, [this](std::shared_ptr<Proposal> proposal) {
    m_proposal = std::move(proposal);
    m_said.clear();
    if (m_proposal->plan.days.empty()) {
      m_said << tr("No visit in these days would be worth its drive.");
    }
    rebuild();
    for (const auto& d : m_board.days) {
      if (!d.proposed()) continue;
      m_dayBoard->choose(d.date(), std::nullopt);
      break;
    }
    showState();
  });
  connect(&m_runner, &RoundsRunner::progressed, this, [this](int ready, int goal) {
    m_ready = ready;
    m_goal = goal;
    showState();
  });
  connect(&m_runner, &RoundsRunner::cancelled, this, [this] {
    m_stopped = true;
    showState();
  });
  connect(&m_runner, &RoundsRunner::outdated, this, [this] { refresh(); });
  connect(&m_hub, &widgets::SeasonHub::changed, this, &RoundsPlace::seasonChanged);
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    m_proposal.reset();
    m_said.clear();
    m_from.reset();
    if (isVisible()) setFirstDay(m_hub.shownDate());
    showState();
  });
  connect(&m_hub, &widgets::SeasonHub::shownDateChanged, this, [this] {
    if (m_hub.isOpen()) setFirstDay(m_hub.shownDate());
  });
  showState();
}

RoundsPlace::~RoundsPlace() = default;

QString RoundsPlace::title() const {
  return tr("Rounds");
}

QIcon RoundsPlace::icon() const {
  return widgets::ownIcon(QStringLiteral("rounds"), palette());
}

void RoundsPlace::takeFocus() {
  m_dayBoard->focusChosen();
}

adapt::Units RoundsPlace::units() const {
  return adapt::Units::from(m_hub.settings());
}

const BoardDay* RoundsPlace::day() const {
  return m_dayBoard->day() ? m_board.at(*m_dayBoard->day()) : nullptr;
}

const BoardStop* RoundsPlace::stop() const {
  return m_dayBoard->day() && m_dayBoard->yard()
             ? m_board.stop(*m_dayBoard->day(), *m_dayBoard->yard())
             : nullptr;
}

// --- what is shown ------------------------------------------------------------------------------

void RoundsPlace::setFirstDay(base::Date from) {
  if (m_from == from) return;
  m_from = from;
  m_proposal.reset();
  m_said.clear();
  rebuild();
  refresh();
}

void RoundsPlace::refresh() {
  m_stopped = false;
  if (m_hub.isOpen() && m_from && isVisible()) {
    m_runner.setBoardDays(*m_from, m_from->plusDays(kDays - 1));
    m_runner.refresh();
    rebuild();
  }
  showState();
}

void RoundsPlace::showEvent(QShowEvent* event) {
  Place::showEvent(event);
  if (m_hub.isOpen() && !m_from) {
    setFirstDay(m_hub.shownDate());
  } else if (!m_stopped && !m_runner.running()) {
    refresh();
  }
  showState();
}

void RoundsPlace::changeEvent(QEvent* event) {
  Place::changeEvent(event);
  if (event->type() == QEvent::FontChange) m_shared = false;
  const bool look = event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange;
  if (look && m_from) rebuild();
}

void RoundsPlace::seasonChanged(const session::Notice&) {
  if (!m_accepting) {
    if (m_proposal) m_said = QStringList{tr("The season has changed: propose the rounds again.")};
    m_proposal.reset();
  }
  if (isVisible()) {
    rebuild();
    showState();
  }
}

void RoundsPlace::rebuild() {
  if (!m_from || !m_hub.isOpen()) return;
  m_board = makeBoard(m_hub.season(), m_runner.due(), m_proposal.get(), *m_from,
                      m_from->plusDays(kDays - 1));
  m_days->setText(QStringLiteral("%1 – %2").arg(shortDay(*m_from),
                                                adapt::dateText(m_from->plusDays(kDays - 1))));
  double hours = 0, km = 0;
  int days = 0;
  std::size_t work = 0;
  for (const auto& d : m_board.days) {
    hours += d.day.hours;
    km += d.day.driveKm;
    if (!d.stops.empty()) ++days;
    for (const auto& s : d.stops) work += s.stop.tasks.size();
  }
  const auto visits = m_board.visits();
  m_total = visits == 0 ? tr("No visit yet")
                        : tr("Visits %1, days %2, to do %3, hours %4, drive %5")
                              .arg(visits)
                              .arg(days)
                              .arg(work)
                              .arg(hoursText(hours), driveText(km, units()));
  m_dayBoard->show(m_board);
  showNotes();
  shareHeight();
}

/// At first the board gets what both weeks take, as far as the lists below keep some lines.
void RoundsPlace::shareHeight() {
  if (m_shared || !m_rows->isVisible() || !m_runner.fresh()) return;
  m_shared = true;
  const int whole = m_rows->height();
  const int most = whole - 12 * fontMetrics().height();
  int board = whole * 59 / 100;
  for (const bool dense : {false, true}) {
    const int wanted = m_dayBoard->wholeHeight(dense);
    if (wanted > most && !dense) continue;
    board = std::max(board, std::min(wanted, most));
    break;
  }
  m_rows->setSizes({board, whole - board});
}

void RoundsPlace::showNotes() {
  QStringList notes = m_said;
  bool noWeather = false;
  const bool running = m_runner.running();
  if (m_proposal && !m_proposal->plan.days.empty()) {
    std::size_t visits = 0, fresh = 0;
    for (const auto& d : m_board.days) {
      for (const auto& s : d.stops) {
        visits += s.visit ? 0 : 1;
        fresh += s.fresh.size();
      }
    }
    notes << tr("Proposed (dashed): new visits %1, pieces of work %2. Drag a card to another day "
                "before accepting, if you like.")
                 .arg(visits)
                 .arg(fresh);
    for (const auto& note : m_proposal->plan.notes) notes << adapt::words(note);
  } else if (!running && m_runner.due() && m_board.visits() == 0) {
    notes << (m_board.due.tasks.empty()
                  ? tr("Nothing falls due in these days, and no visit is planned. Look at a later "
                       "week, or make a visit.")
                  : tr("No visit is planned in these days, and %1 fall due: let rounds be "
                       "proposed, or make a visit.")
                        .arg(countOfWork(m_board.due.tasks.size())));
  }
  if (m_runner.due()) {
    int without = 0;
    for (const auto& note : m_runner.due()->notes) {
      if (note.key == "planning.due.no_weather") {
        noWeather = true;
        if (++without > 1) continue;
      }
      notes << adapt::words(note);
    }
    if (without > 1) notes << tr("Yards without weather in these days: %1.").arg(without);
  }
  notes.removeDuplicates();
  m_note->setText(notes.join(u'\n'));
  const bool proposal = m_proposal && !m_proposal->plan.days.empty();
  for (auto* b : {m_acceptButton, m_acceptDayButton, m_discardButton}) b->setVisible(proposal);
  m_weather->setVisible(noWeather);
  m_noteBar->setVisible(!notes.isEmpty() || proposal);
}

void RoundsPlace::showState() {
  const bool running = m_runner.running();
  m_progress->setVisible(running);
  m_stop->setVisible(running);
  // While the rounds are put together nothing can be counted.
  const bool counted = m_ready < m_goal;
  m_progress->setRange(0, counted ? m_goal : 0);
  m_progress->setValue(m_ready);
  m_progress->setFormat(tr("%1 of %2 yards").arg(m_ready).arg(m_goal));
  const auto& season = m_hub.season();
  const bool ready = m_hub.isOpen() && !season.table<apiary::Hive>().empty();
  m_headBar->setVisible(ready);
  if (!m_hub.isOpen()) {
    m_empty->sayNoSeason();
  } else if (season.table<apiary::Yard>().empty()) {
    m_empty->say(tr("There is no yard to drive to yet. Add one under Yards, or read your tables "
                    "in."),
                 widgets::EmptyPage::firstYards());
  } else if (!ready) {
    m_empty->say(tr("No hive stands in a yard yet. Add hives under Yards; what they need is then "
                    "put into rounds here."),
                 widgets::EmptyPage::firstYards());
  } else {
    m_pages->setCurrentIndex(1);
  }
  showNotes();
  refreshActions();
}

}  // namespace outyard::rounds
