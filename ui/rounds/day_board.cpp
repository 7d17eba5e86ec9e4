// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/day_board.h"

#include <QContextMenuEvent>
#include <QGridLayout>
#include <QScrollBar>
#include <QTimer>
#include <QToolButton>
#include <algorithm>

#include "ui/adapt/system_clock.h"
#include "ui/rounds/rounds_words.h"
#include "ui/widgets/session_model.h"

namespace outyard::rounds {
namespace {
constexpr int kWeek = 7;
constexpr int kBetween = 6;  ///< between the days
}  // namespace

DayBoard::DayBoard(widgets::SeasonHub& hub, QWidget* parent) : QScrollArea(parent), m_hub(hub) {
  setObjectName(QStringLiteral("board"));
  setAccessibleName(tr("Days and their visits"));
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::NoFocus);
  m_cue = new QToolButton(this);
  m_cue->setObjectName(QStringLiteral("otherWeek"));
  m_cue->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  m_cue->setFocusPolicy(Qt::TabFocus);
  m_cue->setToolTip(tr("Page Down and Page Up go from week to week"));
  m_cue->hide();
  connect(m_cue, &QToolButton::clicked, this, &DayBoard::otherWeek);
  connect(verticalScrollBar(), &QScrollBar::valueChanged, this, &DayBoard::showCue);
  connect(verticalScrollBar(), &QScrollBar::rangeChanged, this, &DayBoard::showCue);
}

// --- both weeks in sight ------------------------------------------------------------------------

int DayBoard::wholeHeight(bool dense) const {
  int out = 0, row = 0, at = 0;
  for (const auto* cell : m_cells) {
    if (at % kWeek == 0 && at > 0) {
      out += row + kBetween;
      row = 0;
    }
    row = std::max(row, cell->heightWhen(dense));
    ++at;
  }
  return out + row;
}

void DayBoard::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  fit();
}

void DayBoard::fit() {
  const bool dense = wholeHeight(false) > height();
  for (auto* cell : m_cells) cell->setDense(dense);
  // The bar has its room for as long as there is something to scroll to.
  const bool scrolls = wholeHeight(dense) > height();
  const int bar = scrolls ? m_cue->sizeHint().height() + 2 : 0;
  if (viewportMargins().bottom() != bar) setViewportMargins(0, 0, 0, bar);
  m_cue->setGeometry(0, height() - bar, width(), std::max(0, bar));
  m_cue->setVisible(scrolls);
  showCue();
}

bool DayBoard::secondWeekHidden() const {
  const auto* scroll = verticalScrollBar();
  return scroll->value() < (scroll->minimum() + scroll->maximum() + 1) / 2;
}

void DayBoard::showCue() {
  if (m_cells.size() <= kWeek) return;
  const bool second = secondWeekHidden();
  const auto begin = second ? std::size_t{kWeek} : std::size_t{0};
  const auto end = std::min(begin + kWeek, m_cells.size());
  std::size_t visits = 0;
  for (auto i = begin; i < end; ++i) visits += m_cells[i]->cards().size();
  const QString days =
      tr("%1 – %2").arg(shortDay(m_cells[begin]->date()), shortDay(m_cells[end - 1]->date()));
  m_cue->setArrowType(second ? Qt::DownArrow : Qt::UpArrow);
  m_cue->setText(second ? tr("%1 below, visits: %2  (Page Down)").arg(days).arg(visits)
                        : tr("%1 above, visits: %2  (Page Up)").arg(days).arg(visits));
  m_cue->setAccessibleName(m_cue->text());
}

void DayBoard::otherWeek() {
  const int by = secondWeekHidden() ? kWeek : -kWeek;
  if (m_day && m_board.at(m_day->plusDays(by))) {
    choose(m_day->plusDays(by), std::nullopt);
    focusChosen();
  }
  auto* scroll = verticalScrollBar();
  scroll->setValue(by > 0 ? scroll->maximum() : scroll->minimum());
}

void DayBoard::dragScroll(const QPoint& screen) {
  const int y = viewport()->mapFromGlobal(screen).y();
  const int edge = 2 * fontMetrics().height();
  auto* scroll = verticalScrollBar();
  if (y < edge) scroll->setValue(scroll->value() - edge / 2);
  if (y > viewport()->height() - edge) scroll->setValue(scroll->value() + edge / 2);
}

// --- the days -----------------------------------------------------------------------------------

void DayBoard::show(const RoundBoard& board) {
  // Where the keyboard is now: the cards are made anew.
  const bool within = m_page && (m_page->isAncestorOf(focusWidget()) && focusWidget()->hasFocus());
  m_board = board;
  m_cells.clear();
  auto* page = new QWidget;
  auto* grid = new QGridLayout(page);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setSpacing(kBetween);
  const auto units = adapt::Units::from(m_hub.settings());
  const auto& season = m_hub.season();
  int at = 0;
  for (const BoardDay& day : m_board.days) {
    auto* cell = new DayCell(day.date());
    const base::Date date = day.date();
    const QString said = daySentence(m_board, day, season, units);
    cell->head().setAccessibleName(said);
    int number = 0;
    for (const BoardStop& stop : day.stops) {
      const auto* weather = dayOf(m_board.due, stop.yard, date);
      StopCard::Text text;
      text.name = yardName(season, stop.yard);
      const auto open = stop.stop.tasks.size();
      text.work = open == 0 && !stop.done.empty()
                      ? tr("%1 done").arg(stop.done.size())
                      : QStringLiteral("%1, %2").arg(
                            open == 0 ? tr("no work yet") : tr("%1 to do").arg(open),
                            hoursText(stop.stop.workHours));
      text.workShort = open > 0            ? tr("%1 to do").arg(open)
                       : stop.done.empty() ? tr("no work yet")
                                           : text.work;
      const bool first = number == 0 && stop.stop.driveKm <= 0;
      text.drive = stop.proposed() ? tr("proposed")
                   : first         ? tr("first stop")
                                   : legText(stop.stop, units);
      text.driveShort = text.drive;
      if (!stop.proposed()) {
        text.driveShort = first ? tr("first") : driveText(stop.stop.driveKm, units);
      }
      if (stop.visit && !stop.fresh.empty()) {
        text.drive = text.driveShort = tr("%1 proposed").arg(stop.fresh.size());
      }
      text.warmth = warmthText(weather);
      text.warm = warmthOf(weather);
      if (date < m_hub.workingDate()) text.warmth.clear();
      text.proposed = stop.proposed();
      if (day.stops.size() > 1) text.number = QString::number(++number);
      auto* card = new StopCard({date, stop.yard}, text);
      const QString sentence = stopSentence(m_board, day, stop, season, units);
      card->setAccessibleName(sentence.section(u'\n', 0, 1).replace(u'\n', u' '));
      card->setAccessibleDescription(
          tr("Alt with the left or right arrow moves it to another day"));
      card->setToolTip(sentence);
      connect(card, &StopCard::clicked, this,
              [this, key = card->key()] { choose(key.date, key.yard); });
      connect(card, &StopCard::moveAsked, this, [this, key = card->key()](int days) {
        Q_EMIT moveAsked(key, key.date.plusDays(days));
      });
      connect(card, &StopCard::stepAsked, this, [this, key = card->key()](int days, int stops) {
        step(key.date, key.yard, days, stops);
      });
      cell->addCard(card);
    }
    connect(cell, &DayCell::chosen, this, [this, date] { choose(date, std::nullopt); });
    connect(cell, &DayCell::dropped, this, [this, date](const StopKey& stop) {
      // After the drag has ended: its card goes away.
      QTimer::singleShot(0, this, [this, stop, date] { Q_EMIT moveAsked(stop, date); });
    });
    connect(cell, &DayCell::hovered, this, [this](const std::optional<base::YardId>& yard) {
      m_dragged = yard;
      heads();
    });
    connect(cell, &DayCell::hoveredAt, this, &DayBoard::dragScroll);
    connect(&cell->head(), &DayHead::stepAsked, this,
            [this, date](int days, int stops) { step(date, std::nullopt, days, stops); });
    grid->addWidget(cell, at / kWeek, at % kWeek);
    ++at;
    m_cells.push_back(cell);
  }
  for (int column = 0; column < kWeek; ++column) grid->setColumnStretch(column, 1);
  // The event that led here may still be at one of the old cards.
  if (auto* old = takeWidget()) {
    old->hide();
    old->deleteLater();
  }
  m_page = page;
  setWidget(page);
  if (m_day && !m_board.at(*m_day)) m_day.reset();
  if (!m_day && !m_board.days.empty()) {
    const auto first = std::find_if(m_board.days.begin(), m_board.days.end(), [&](const auto& d) {
      return !d.stops.empty() && d.date() >= m_hub.workingDate();
    });
    const BoardDay& day = first == m_board.days.end() ? m_board.days.front() : *first;
    m_day = day.date();
    m_yard.reset();
    if (!day.stops.empty()) m_yard = day.stops.front().yard;
  }
  if (m_yard && !m_board.stop(*m_day, *m_yard)) m_yard.reset();
  if (!m_yard && m_day && !m_board.at(*m_day)->stops.empty()) {
    m_yard = m_board.at(*m_day)->stops.front().yard;
  }
  for (auto* cell : m_cells) {
    cell->setChosen(m_day == cell->date());
    for (auto* card : cell->cards()) {
      card->setChecked(m_day == card->key().date && m_yard == card->key().yard);
    }
  }
  heads();
  fit();
  if (within) focusChosen();
  Q_EMIT chosenChanged();
}

/// What the days do for is a matter of the yard: the one that hangs over them, else the chosen.
void DayBoard::heads() {
  const auto units = adapt::Units::from(m_hub.settings());
  const auto yard = m_dragged ? m_dragged : m_yard;
  for (auto* cell : m_cells) {
    const BoardDay& day = *m_board.at(cell->date());
    DayHead::Text text;
    text.day = weekDay(day.date());
    text.today = day.date() == m_hub.workingDate();
    if (text.today) text.day = tr("Today, %1").arg(shortDay(day.date()));
    if (!day.stops.empty()) {
      text.share = day.day.hours / std::max(0.1, m_board.figures.dayHours);
      text.sumShort =
          tr("%1 of %2").arg(hoursText(day.day.hours), hoursText(m_board.figures.dayHours));
      text.sum = tr("%1 of %2, %3")
                     .arg(hoursText(day.day.hours), hoursText(m_board.figures.dayHours),
                          driveText(day.day.driveKm, units));
    }
    QString tip = daySentence(m_board, day, m_hub.season(), units);
    if (yard && day.date() >= m_hub.workingDate()) {
      const auto* weather = dayOf(m_board.due, *yard, day.date());
      text.warm = warmthOf(weather);
      // On a day with the yard's own card the card says it.
      const bool hasCard = m_board.stop(day.date(), *yard) != nullptr;
      if (weather && !hasCard) {
        text.warmth = units.text(base::Temperature{*weather->tmaxC});
        constexpr double kWetMm = 1;
        if (text.warm == Warmth::Shut && weather->rainMm.value_or(0) >= kWetMm) {
          text.warmth += u' ' + warmthText(weather);
        }
      }
      tip += QStringLiteral("\n%1: %2")
                 .arg(yardName(m_hub.season(), *yard), warmthSentence(day.date(), weather, units));
    }
    cell->head().setText(text);
    cell->head().setToolTip(tip);
  }
}

void DayBoard::choose(base::Date day, const std::optional<base::YardId>& yard) {
  m_day = day;
  const BoardDay* on = m_board.at(day);
  m_yard = yard;
  if (!m_yard && on && !on->stops.empty()) m_yard = on->stops.front().yard;
  for (auto* cell : m_cells) {
    cell->setChosen(m_day == cell->date());
    for (auto* card : cell->cards()) {
      card->setChecked(m_day == card->key().date && m_yard == card->key().yard);
    }
  }
  heads();
  Q_EMIT chosenChanged();
  Q_EMIT picked();
}

void DayBoard::step(base::Date from, const std::optional<base::YardId>& yard, int days, int stops) {
  const BoardDay* day = m_board.at(from);
  if (!day) return;
  if (stops != 0) {
    // Heads and cards of a day one after the other, then the day a week on.
    int place = 0;
    for (std::size_t i = 0; yard && i < day->stops.size(); ++i) {
      if (day->stops[i].yard == *yard) place = static_cast<int>(i) + 1;
    }
    place += stops;
    if (place >= 1 && place <= static_cast<int>(day->stops.size())) {
      choose(from, day->stops[static_cast<std::size_t>(place) - 1].yard);
      focusChosen();
      return;
    }
    if (place == 0) {
      choose(from, std::nullopt);
      cell(from)->head().setFocus();
      return;
    }
    days = stops * kWeek;
  }
  const base::Date to = from.plusDays(days);
  if (!m_board.at(to)) return;
  choose(to, std::nullopt);
  focusChosen();
}

StopCard* DayBoard::card(const StopKey& key) const {
  const auto* on = cell(key.date);
  if (!on) return nullptr;
  for (auto* card : on->cards()) {
    if (card->key() == key) return card;
  }
  return nullptr;
}

DayCell* DayBoard::cell(base::Date day) const {
  for (auto* cell : m_cells) {
    if (cell->date() == day) return cell;
  }
  return nullptr;
}

void DayBoard::focusChosen() {
  if (!m_day) return;
  if (auto* on = cell(*m_day)) ensureWidgetVisible(on, 0, 0);
  if (auto* chosen = m_yard ? card({*m_day, *m_yard}) : nullptr) {
    chosen->setFocus();
    ensureWidgetVisible(chosen, 0, 0);
  } else if (auto* on = cell(*m_day)) {
    on->head().setFocus();
  }
}

void DayBoard::contextMenuEvent(QContextMenuEvent* event) {
  Q_EMIT menuAsked(event->globalPos());
}

}  // namespace outyard::rounds
