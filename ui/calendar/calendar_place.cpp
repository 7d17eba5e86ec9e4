// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/calendar_place.h"

#include <QAction>
#include <QBuffer>
#include <QComboBox>
#include <QCoreApplication>
#include <QDateEdit>
#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QPointer>
#include <QProgressBar>
#include <QPushButton>
#include <QSpinBox>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "core/session/commands.h"
#include "ui/adapt/words.h"
#include "ui/calendar/calendar_board.h"
#include "ui/calendar/calendar_model.h"
#include "ui/calendar/calendar_words.h"
#include "ui/calendar/legend_strip.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::calendar {

namespace {

const QString kWork = QStringLiteral("calendar"), kTrial = QStringLiteral("calendarTrial");
constexpr int kWeeksBack = 4;

QDate qtDate(base::Date date) {
  return {date.year(), date.month(), date.day()};
}
base::Date coreDate(QDate date) {
  return base::Date::fromYmd(date.year(), date.month(), date.day()).value();
}

/// Hands the share that is done to the window now and then.
class Told : public base::Progress {
 public:
  Told(base::Progress& inner, QPointer<QProgressBar> bar) : m_inner(inner), m_bar(std::move(bar)) {}
  void report(double fraction) override {
    m_inner.report(fraction);
    const int percent = static_cast<int>(fraction * 100);
    if (percent == m_last) return;
    m_last = percent;
    // Asked for in the window's thread, where alone the pointer may be looked at.
    QMetaObject::invokeMethod(
        QCoreApplication::instance(),
        [bar = m_bar, percent] {
          if (bar) bar->setValue(percent);
        },
        Qt::QueuedConnection);
  }
  [[nodiscard]] bool cancelled() const override { return m_inner.cancelled(); }

 private:
  base::Progress& m_inner;
  QPointer<QProgressBar> m_bar;
  int m_last = -1;
};

}  // namespace

CalendarPlace::CalendarPlace(widgets::SeasonHub& hub, QWidget* parent) : Place(parent), m_hub(hub) {
  setObjectName(QStringLiteral("calendarPlace"));
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 12, 8);
  makeHead(*all);
  m_pages = new QStackedWidget;
  m_empty = new widgets::EmptyPage(*this);
  connect(m_empty, &widgets::EmptyPage::again, this, &CalendarPlace::again);
  auto* body = new QWidget;
  auto* across = new QHBoxLayout(body);
  across->setContentsMargins(0, 0, 0, 0);
  auto* left = new QVBoxLayout;
  m_board = new CalendarBoard;
  m_model = new CalendarModel(this);
  m_table = new QTableView;
  m_table->setObjectName(QStringLiteral("calendarTable"));
  m_table->setAccessibleName(tr("Season calendar as a table"));
  m_table->setModel(m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->verticalHeader()->hide();
  m_table->horizontalHeader()->setStretchLastSection(true);
  m_table->setTabKeyNavigation(false);
  m_table->hide();
  m_file = new widgets::ListFile(
      m_hub, m_table, [] { return tr("Season calendar"); },
      [this] { return showsTrial() ? tr("With the dates that are being tried") : QString(); });
  left->addWidget(m_board, 1);
  left->addWidget(m_table, 1);
  m_legend = new LegendStrip;
  left->addWidget(m_legend);
  across->addLayout(left, 1);
  auto* side = new QWidget;
  side->setFixedWidth(fontMetrics().horizontalAdvance(QLatin1Char('0')) * 38);
  auto* sideLayout = new QVBoxLayout(side);
  sideLayout->setContentsMargins(12, 0, 0, 0);
  makeSide(*sideLayout);
  across->addWidget(side);
  m_pages->addWidget(m_empty);
  m_pages->addWidget(body);
  all->addWidget(m_pages, 1);
  makeActions();

  connect(m_board, &CalendarBoard::cursorMoved, this, [this] {
    showCell();
    fillWhat();
  });
  connect(m_board, &CalendarBoard::yardOpened, this, &CalendarPlace::openYard);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& index) {
            if (index.isValid()) m_board->setCursorCell(m_model->cellOf(index.row()));
          });
  connect(m_table, &QTableView::activated, this, [this](const QModelIndex& index) {
    openYard(shown()->yards.at(m_model->cellOf(index.row()).first));
  });
  connect(&m_hub, &widgets::SeasonHub::changed, this, [this] { again(); });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    m_calendar.reset();
    const QSignalBlocker block(m_first);
    m_first->setDate(qtDate(planning::mondayOf(m_hub.workingDate()).plusDays(-7 * kWeeksBack)));
    again();
  });
  m_first->setDate(qtDate(planning::mondayOf(m_hub.workingDate()).plusDays(-7 * kWeeksBack)));
  connect(m_first, &QDateEdit::dateChanged, this, [this] { again(); });
  connect(m_weeks, qOverload<int>(&QSpinBox::valueChanged), this, [this] { again(); });
  showState();
}

CalendarPlace::~CalendarPlace() {
  m_hub.forecasts().abandon(kWork);
  m_hub.forecasts().abandon(kTrial);
}

QString CalendarPlace::title() const {
  return tr("Season");
}

QIcon CalendarPlace::icon() const {
  return widgets::ownIcon(QStringLiteral("calendar"), palette());
}

QList<QAction*> CalendarPlace::menuActions() const {
  return {m_tableAction, m_againAction, m_svgAction, m_file->pdfAction(), m_file->csvAction()};
}

void CalendarPlace::takeFocus() {
  (m_table->isVisible() ? static_cast<QWidget*>(m_table) : m_board)->setFocus();
}

void CalendarPlace::showAsTable(bool table) {
  m_board->setVisible(!table);
  m_legend->setVisible(!table);
  m_table->setVisible(table);
  takeFocus();
}

// --- working it out -----------------------------------------------------------------------------

std::shared_ptr<const planning::SeasonCalendar> CalendarPlace::shown() const {
  return m_trial ? m_trial : m_calendar;
}

planning::CalendarAsk CalendarPlace::ask() const {
  planning::CalendarAsk ask;
  ask.first = coreDate(m_first->date());
  ask.last = planning::mondayOf(ask.first).plusDays(7 * m_weeks->value() - 1);
  return ask;
}

void CalendarPlace::showEvent(QShowEvent* event) {
  Place::showEvent(event);
  if (m_dirty) run();
}

void CalendarPlace::changeEvent(QEvent* event) {
  Place::changeEvent(event);
  if (event->type() == QEvent::LanguageChange) showState();
}

void CalendarPlace::again() {
  m_dirty = true;
  m_trial.reset();
  m_changes.clear();
  m_trying = false;
  m_hub.forecasts().abandon(kTrial);
  if (isVisible()) {
    run();
  } else {
    m_hub.forecasts().abandon(kWork);
    m_working = false;
  }
}

void CalendarPlace::run() {
  m_dirty = false;
  m_stopped = false;
  if (!m_hub.isOpen() || m_hub.season().table<apiary::Yard>().empty()) {
    m_calendar.reset();
    m_working = false;
    showCalendar();
    return;
  }
  m_working = true;
  m_progress->setValue(0);
  showState();
  m_hub.forecasts().beside(
      kWork,
      [self = QPointer(this), bar = QPointer(m_progress), ask = ask(), today = m_hub.workingDate()](
          const apiary::Season& season, base::Progress& progress) -> widgets::SideResult {
        Told told(progress, bar);
        Calendar made = std::make_shared<const planning::SeasonCalendar>(
            planning::seasonCalendar(season, today, ask, widgets::threadsBeside(), told));
        if (progress.cancelled()) return {};
        return [self, made] {
          if (!self) return;
          self->m_working = false;
          self->m_calendar = made;
          self->showCalendar();
        };
      });
}

void CalendarPlace::stop() {
  m_hub.forecasts().abandon(kWork);
  m_hub.forecasts().abandon(kTrial);
  m_stopped = m_working;
  m_working = m_trying = false;
  showState();
}

// --- what if ------------------------------------------------------------------------------------

std::optional<base::YardId> CalendarPlace::yardAtCursor() const {
  const auto cell = m_board->cursor();
  const auto calendar = shown();
  if (!cell || !calendar) return std::nullopt;
  return calendar->yards.at(cell->first);
}

void CalendarPlace::fillWhat() {
  const QString before = m_what->currentData().toString();
  m_what->clear();
  const auto yard = yardAtCursor();
  if (!yard) return;
  m_what->addItem(tr("Planned work of %1").arg(yardName(m_hub.season(), *yard)), QString());
  for (const auto& [key, flow] : m_hub.season().table<apiary::Flow>()) {
    if (flow.yard != *yard || flow.nectar.value_or(0) <= 0) continue;
    const auto day = [&](int of) {
      const auto date = base::Date::fromYmd(m_hub.workingDate().year(), 1, 1)
                            ->plusDays(std::clamp(of, 1, 366) - 1);
      return adapt::dateText(date);
    };
    m_what->addItem(tr("Flow %1 to %2").arg(day(flow.fromDay), day(flow.toDay)),
                    QString::fromStdString(key));
  }
  const int at = m_what->findData(before);
  m_what->setCurrentIndex(std::max(0, at));
}

base::Result<apiary::ChangeList> CalendarPlace::wantedChanges() const {
  const auto yard = yardAtCursor();
  const QString key = m_what->currentData().toString();
  if (key.isEmpty()) {
    return planning::shiftedTasks(m_hub.season(), *yard, m_hub.workingDate(), m_days->value());
  }
  const auto* flow = m_hub.season().find<apiary::Flow>(key.toStdString());
  return planning::shiftedFlow(m_hub.season(), flow ? *flow : apiary::Flow{*yard, 1, 1, {}, {}},
                               m_days->value());
}

void CalendarPlace::tryDates() {
  if (!yardAtCursor() || m_what->currentIndex() < 0 || m_trial || !m_calendar) return;
  auto changes = wantedChanges();
  if (!changes.ok()) {
    m_change->setText(adapt::words(changes.failure()));
    return;
  }
  m_title =
      m_what->currentData().toString().isEmpty()
          ? base::message("planning.calendar.title_shift", yardAtCursor()->str(), m_days->value())
          : base::message("planning.calendar.title_flow", yardAtCursor()->str(), m_days->value());
  m_trying = true;
  m_progress->setValue(0);
  showState();
  m_hub.forecasts().beside(
      kTrial,
      [self = QPointer(this), bar = QPointer(m_progress), ask = ask(), today = m_hub.workingDate(),
       list = changes.value()](const apiary::Season& season,
                               base::Progress& progress) -> widgets::SideResult {
        Told told(progress, bar);
        apiary::Season other = season;
        other.apply(list);
        Calendar made = std::make_shared<const planning::SeasonCalendar>(
            planning::seasonCalendar(other, today, ask, widgets::threadsBeside(), told));
        if (progress.cancelled()) return {};
        return [self, made, list] {
          if (self) self->takeTrial(made, list);
        };
      });
}

void CalendarPlace::takeTrial(Calendar trial, apiary::ChangeList changes) {
  m_trying = false;
  const auto yard = yardAtCursor();
  m_trial = std::move(trial);
  m_changes = std::move(changes);
  showCalendar();
  if (yard) {
    const auto change = planning::compared(*m_calendar, *m_trial, *yard);
    m_change->setText(changeLines(change).join(QLatin1Char('\n')));
  }
  m_keep->setFocus();
}

void CalendarPlace::keepDates() {
  if (!m_trial) return;
  // What is kept changes the season, and that works the calendar out again.
  auto changes = m_changes;
  if (changes.empty()) {
    letGo();
  } else {
    m_hub.execute(session::applyChanges(m_title, std::move(changes)), this);
  }
}

void CalendarPlace::letGo() {
  m_trial.reset();
  m_changes.clear();
  showCalendar();
}

// --- showing ------------------------------------------------------------------------------------

QStringList CalendarPlace::names() const {
  QStringList out;
  if (const auto calendar = shown()) {
    for (const auto& yard : calendar->yards) out << yardName(m_hub.season(), yard);
  }
  return out;
}

void CalendarPlace::showCalendar() {
  m_board->show(shown(), names());
  m_model->show(shown(), names());
  m_table->resizeColumnsToContents();
  if (!m_trial) m_change->clear();
  fillWhat();
  showCell();
  showState();
}

void CalendarPlace::showCell() {
  const auto cell = m_board->cursor();
  const auto calendar = shown();
  m_open->setEnabled(cell && calendar);
  if (!cell || !calendar) {
    for (auto* label : {m_cellHead, m_cell, m_hours}) label->clear();
    return;
  }
  const auto [yard, week] = *cell;
  const QString name = yardName(m_hub.season(), calendar->yards.at(yard));
  QString head = name + QLatin1Char('\n') + weekText(calendar->weeks.at(week).monday);
  if (calendar->expectedOnly(week))
    head += QLatin1Char('\n') + tr("Expected: more than five weeks off");
  m_cellHead->setText(head);
  QStringList lines = cellLines(*calendar, yard, week);
  // The side has room for so much; the rest is said as a number, and the yard has it whole.
  constexpr int kMost = 6;
  QStringList work = workLines(*calendar, yard, week);
  for (QString& line : work) {
    if (line.size() > 160)
      line = line.left(line.lastIndexOf(QLatin1Char(','), 150)) + tr(" and more");
  }
  if (work.size() > kMost) {
    const auto more = work.size() - kMost;
    work = work.mid(0, kMost) << tr("and %1 more kinds of work").arg(more);
  }
  if (!work.isEmpty()) lines << QString() << work;
  m_cell->setText(lines.join(QLatin1Char('\n')));
  m_hours->setText(tr("All yards this week: %1").arg(hoursText(*calendar, week)));
  m_board->setAccessibleDescription(m_cellHead->text() + QLatin1Char('\n') +
                                    cellLines(*calendar, yard, week).join(QStringLiteral("; ")));
}

void CalendarPlace::showState() {
  const auto calendar = shown();
  if (!m_hub.isOpen()) {
    m_empty->sayNoSeason();
  } else if (m_hub.season().table<apiary::Yard>().empty()) {
    m_empty->say(tr("There is no yard yet. Make one in Yards; its weeks then stand here."),
                 widgets::EmptyPage::firstYards());
  } else if (calendar) {
    m_pages->setCurrentIndex(1);
  } else if (m_stopped) {
    m_empty->say(tr("Stopped before the weeks were worked out."),
                 {{QStringLiteral("again"), tr("&Work them out")}});
  } else {
    m_empty->say(tr("The season of all yards is being worked out."));
  }
  m_progress->setVisible(busy());
  m_stop->setVisible(busy());
  m_first->setEnabled(m_hub.isOpen());
  m_weeks->setEnabled(m_hub.isOpen());
  QString say;
  if (m_trial) {
    say = tr("With the dates that are being tried: nothing is kept yet.");
  } else if (busy() && calendar) {
    say = tr("Being worked out anew.");
  } else if (calendar) {
    const auto over = std::count_if(calendar->weeks.begin(), calendar->weeks.end(),
                                    [](const auto& week) { return week.overFull(); });
    say = over > 0 ? tr("Weeks over full: %1").arg(over) : tr("No week is over full.");
  }
  m_say->setText(say);
  m_try->setEnabled(calendar && !busy() && !m_trial && yardAtCursor());
  m_keep->setEnabled(m_trial != nullptr && !busy());
  m_letGo->setEnabled(m_trial != nullptr && !busy());
  m_what->setEnabled(!m_trial && calendar);
  m_days->setEnabled(!m_trial && calendar);
  m_svgAction->setEnabled(calendar != nullptr);
  for (QAction* action : m_file->actions()) action->setEnabled(calendar != nullptr);
}

void CalendarPlace::openYard(const base::YardId& yard) {
  m_hub.selectYard(yard);
  Q_EMIT openPlace(QStringLiteral("yards"));
}

}  // namespace outyard::calendar
