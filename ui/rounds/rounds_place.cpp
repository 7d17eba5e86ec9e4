// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_place.h"

#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/rounds/rounds_words.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::rounds {
namespace {
constexpr int kWeek = 7;
}

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

// --- what is on the page ------------------------------------------------------------------------

QPushButton* RoundsPlace::button(QAction* action, const QString& name) {
  auto* out = new QPushButton(action->text());
  out->setObjectName(name);
  out->setToolTip(action->toolTip());
  connect(out, &QPushButton::clicked, action, &QAction::trigger);
  const auto follow = [out, action] { out->setEnabled(action->isEnabled()); };
  connect(action, &QAction::changed, out, follow);
  follow();
  return out;
}

void RoundsPlace::makeHead(QVBoxLayout& to) {
  m_headBar = new QWidget;
  auto* line = new QHBoxLayout(m_headBar);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(8);
  const auto arrow = [&](QAction* action, Qt::ArrowType type, const char* name) {
    auto* out = new QToolButton;
    out->setObjectName(QLatin1String(name));
    out->setArrowType(type);
    out->setToolTip(action->toolTip());
    out->setAccessibleName(action->toolTip());
    out->setFocusPolicy(Qt::TabFocus);
    connect(out, &QToolButton::clicked, action, &QAction::trigger);
    return out;
  };
  line->addWidget(arrow(m_earlier, Qt::LeftArrow, "earlier"));
  m_days = new QLabel;
  m_days->setObjectName(QStringLiteral("days"));
  QFont large = m_days->font();
  large.setBold(true);
  large.setPointSizeF(large.pointSizeF() * 1.25);
  m_days->setFont(large);
  line->addWidget(m_days);
  line->addWidget(arrow(m_later, Qt::RightArrow, "later"));
  m_sum = new QLabel;
  m_sum->setObjectName(QStringLiteral("sum"));
  m_sum->setWordWrap(true);
  line->addWidget(m_sum, 1);
  m_progress = new QProgressBar;
  m_progress->setObjectName(QStringLiteral("progress"));
  m_progress->setAccessibleName(tr("Yards worked out"));
  m_progress->setMaximumWidth(160);
  m_stop = new QPushButton(tr("Stop"));
  m_stop->setObjectName(QStringLiteral("stop"));
  m_stop->setToolTip(tr("Stops working out what falls due; yards that are ready are kept"));
  connect(m_stop, &QPushButton::clicked, &m_runner, &RoundsRunner::cancel);
  line->addWidget(m_progress);
  line->addWidget(m_stop);
  line->addWidget(button(m_new, QStringLiteral("newVisit")));
  line->addWidget(button(m_propose, QStringLiteral("propose")));
  to.addWidget(m_headBar);
}

void RoundsPlace::makeBody(QVBoxLayout& to) {
  m_pages = new QStackedWidget;
  auto* empty = new QWidget;
  auto* emptyLayout = new QVBoxLayout(empty);
  m_sentence = new QLabel;
  m_sentence->setObjectName(QStringLiteral("emptySentence"));
  m_sentence->setAlignment(Qt::AlignCenter);
  m_sentence->setWordWrap(true);
  m_buttons = new QHBoxLayout;
  emptyLayout->addStretch(2);
  emptyLayout->addWidget(m_sentence);
  emptyLayout->addSpacing(8);
  emptyLayout->addLayout(m_buttons);
  emptyLayout->addStretch(3);
  m_pages->addWidget(empty);

  auto* body = new QWidget;
  auto* bodyLayout = new QVBoxLayout(body);
  bodyLayout->setContentsMargins(0, 0, 0, 0);
  m_noteBar = new QFrame;
  m_noteBar->setObjectName(QStringLiteral("noteBar"));
  auto* noteLine = new QHBoxLayout(m_noteBar);
  noteLine->setContentsMargins(0, 2, 0, 2);
  m_note = new QLabel;
  m_note->setObjectName(QStringLiteral("note"));
  m_note->setWordWrap(true);
  noteLine->addWidget(m_note, 1);
  m_acceptButton = button(m_accept, QStringLiteral("acceptAll"));
  m_acceptDayButton = button(m_acceptDay, QStringLiteral("acceptDay"));
  m_discardButton = button(m_discard, QStringLiteral("discard"));
  m_weather = new QPushButton(tr("Import &weather…"));
  m_weather->setObjectName(QStringLiteral("importWeather"));
  connect(m_weather, &QPushButton::clicked, this,
          [this] { Q_EMIT asked(QStringLiteral("weather")); });
  for (auto* b : {m_acceptButton, m_acceptDayButton, m_discardButton, m_weather}) {
    noteLine->addWidget(b);
  }
  bodyLayout->addWidget(m_noteBar);

  m_dayBoard = new DayBoard(m_hub);
  connect(m_dayBoard, &DayBoard::chosenChanged, this, [this] {
    fillWork();
    fillLoad();
    refreshActions();
  });
  connect(m_dayBoard, &DayBoard::picked, this, [this] {
    if (m_dayBoard->yard() && m_hub.selection().yard != m_dayBoard->yard()) {
      m_hub.selectYard(*m_dayBoard->yard());
    }
  });
  connect(m_dayBoard, &DayBoard::moveAsked, this, &RoundsPlace::move);
  connect(m_dayBoard, &DayBoard::menuAsked, this, [this](const QPoint& at) {
    QMenu menu(this);
    menu.addActions({m_new, m_edit, m_move, m_moveEarlier, m_moveLater, m_remove});
    menu.addSeparator();
    menu.addActions({m_acceptDay, m_sheets, m_calendar});
    menu.exec(at);
  });
  auto* lower = new QSplitter(Qt::Horizontal);
  lower->setObjectName(QStringLiteral("lower"));
  lower->setChildrenCollapsible(false);
  lower->addWidget(makeWork());
  lower->addWidget(makeLoad());
  lower->setStretchFactor(0, 7);
  lower->setStretchFactor(1, 4);
  lower->setSizes({700, 400});
  auto* rows = new QSplitter(Qt::Vertical);
  rows->setObjectName(QStringLiteral("rows"));
  rows->setChildrenCollapsible(false);
  rows->addWidget(m_dayBoard);
  rows->addWidget(lower);
  rows->setStretchFactor(0, 11);
  rows->setStretchFactor(1, 9);
  rows->setSizes({590, 410});
  bodyLayout->addWidget(rows, 1);
  m_pages->addWidget(body);
  to.addWidget(m_pages, 1);
}

namespace {
QLabel* heading(const QString& name) {
  auto* out = new QLabel;
  out->setObjectName(name);
  QFont bold = out->font();
  bold.setBold(true);
  out->setFont(bold);
  out->setWordWrap(true);
  return out;
}
QTreeWidget* list(const QString& name, const QString& accessible, const QStringList& columns) {
  auto* out = new QTreeWidget;
  out->setObjectName(name);
  out->setAccessibleName(accessible);
  out->setHeaderLabels(columns);
  out->setUniformRowHeights(true);
  out->setTextElideMode(Qt::ElideRight);
  out->setAllColumnsShowFocus(true);
  return out;
}
}  // namespace

QWidget* RoundsPlace::makeWork() {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(0, 4, 0, 0);
  layout->setSpacing(4);
  m_workHead = heading(QStringLiteral("workHead"));
  m_work = list(QStringLiteral("work"), tr("Work of the chosen visit"),
                {tr("Hive"), tr("Work"), tr("Window"), tr("Chance"), tr("Time"), tr("Why")});
  m_work->setSelectionMode(QAbstractItemView::ExtendedSelection);
  m_work->setRootIsDecorated(false);
  m_work->setIndentation(12);
  m_workHead->setBuddy(m_work);
  layout->addWidget(m_workHead);
  layout->addWidget(m_work, 1);
  auto* line = new QHBoxLayout;
  line->addWidget(button(m_putIn, QStringLiteral("putIn")));
  line->addWidget(button(m_takeOut, QStringLiteral("takeOut")));
  line->addWidget(button(m_done, QStringLiteral("done")));
  line->addStretch();
  line->addWidget(button(m_open, QStringLiteral("openHive")));
  layout->addLayout(line);
  m_work->setContextMenuPolicy(Qt::ActionsContextMenu);
  m_work->addActions({m_putIn, m_takeOut, m_done, m_notDone, m_open});
  connect(m_work, &QTreeWidget::itemSelectionChanged, this, &RoundsPlace::refreshActions);
  connect(m_work, &QTreeWidget::itemActivated, this, [this] { openHive(); });
  auto* file = new widgets::ListFile(m_hub, m_work, [this] { return m_workHead->text(); });
  m_menu << file->actions();
  return box;
}

QWidget* RoundsPlace::makeLoad() {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(4, 4, 0, 0);
  layout->setSpacing(4);
  m_loadHead = heading(QStringLiteral("loadHead"));
  m_load = list(QStringLiteral("load"), tr("What to load for the chosen day"),
                {tr("Load"), tr("Needed"), tr("At hand"), tr("Short"), tr("Weight")});
  m_load->setRootIsDecorated(false);
  m_loadHead->setBuddy(m_load);
  m_loadSum = new QLabel;
  m_loadSum->setObjectName(QStringLiteral("loadSum"));
  m_loadSum->setWordWrap(true);
  m_cautions = new QLabel;
  m_cautions->setObjectName(QStringLiteral("cautions"));
  m_cautions->setWordWrap(true);
  layout->addWidget(m_loadHead);
  layout->addWidget(m_load, 1);
  layout->addWidget(m_loadSum);
  layout->addWidget(m_cautions);
  auto* line = new QHBoxLayout;
  line->addWidget(button(m_sheets, QStringLiteral("printSheets")));
  line->addWidget(button(m_enter, QStringLiteral("enterSheet")));
  line->addStretch();
  layout->addLayout(line);
  new widgets::ListFile(m_hub, m_load, [this] { return m_loadHead->text(); });
  return box;
}

QAction* RoundsPlace::make(const QString& name, const QString& text, const QKeySequence& keys,
                           const std::function<void()>& slot) {
  auto* action = new QAction(text, this);
  action->setObjectName(name);
  action->setShortcut(keys);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  connect(action, &QAction::triggered, this, slot);
  addAction(action);
  m_menu << action;
  return action;
}

void RoundsPlace::makeActions() {
  const auto tip = [](QAction* action, const QString& text) { action->setToolTip(text); };
  m_propose = make(QStringLiteral("proposeAction"), tr("&Propose rounds"),
                   QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_R), [this] { propose(); });
  tip(m_propose, tr("Visits for what falls due in these days: warm days first, the shortest drive, "
                    "no more than a day's hours"));
  m_accept =
      make(QStringLiteral("acceptAction"), tr("&Accept all"), {}, [this] { accept(std::nullopt); });
  tip(m_accept, tr("Makes visits and tasks of every proposed day"));
  m_acceptDay = make(QStringLiteral("acceptDayAction"), tr("Accept this &day"), {},
                     [this] { accept(m_dayBoard->day()); });
  tip(m_acceptDay, tr("Makes visits and tasks of the chosen day alone"));
  m_discard =
      make(QStringLiteral("discardAction"), tr("&Discard the proposal"), {}, [this] { discard(); });
  m_new = make(QStringLiteral("newVisitAction"), tr("&New visit…"), QKeySequence(Qt::Key_Insert),
               [this] { newVisit(); });
  tip(m_new, tr("A visit to a yard on the chosen day"));
  m_edit = make(QStringLiteral("editVisitAction"), tr("&Time and notes…"), QKeySequence(Qt::Key_F2),
                [this] { editVisit(); });
  m_move = make(QStringLiteral("moveAction"), tr("&Move to day…"),
                QKeySequence(Qt::CTRL | Qt::Key_M), [this] { moveToDay(); });
  // The keys themselves belong to the card: elsewhere Alt and an arrow mean something else.
  m_moveEarlier =
      make(QStringLiteral("moveEarlierAction"),
           tr("Move a day &earlier") + QStringLiteral("\tAlt+Left"), {}, [this] { moveBy(-1); });
  m_moveLater =
      make(QStringLiteral("moveLaterAction"),
           tr("Move a day &later") + QStringLiteral("\tAlt+Right"), {}, [this] { moveBy(1); });
  m_remove = make(QStringLiteral("removeVisitAction"), tr("&Remove the visit"),
                  QKeySequence(Qt::CTRL | Qt::Key_Delete), [this] { removeVisit(); });
  tip(m_remove, tr("Its work stays planned, for no day"));
  m_putIn = make(QStringLiteral("putInAction"), tr("Put &into the visit"),
                 QKeySequence(Qt::CTRL | Qt::Key_Plus), [this] { putIn(); });
  tip(m_putIn, tr("Takes the chosen work that is due into this visit"));
  m_takeOut = make(QStringLiteral("takeOutAction"), tr("Take &out"),
                   QKeySequence(Qt::CTRL | Qt::Key_Minus), [this] { takeOut(); });
  tip(m_takeOut, tr("The chosen work stays planned, in no visit"));
  m_done = make(QStringLiteral("doneAction"), tr("Done"), QKeySequence(Qt::CTRL | Qt::Key_D),
                [this] { tick(true); });
  tip(m_done, tr("Ticks the chosen work off; what was seen is entered with the sheet"));
  m_notDone =
      make(QStringLiteral("notDoneAction"), tr("Not done after all"), {}, [this] { tick(false); });
  m_open = make(QStringLiteral("openHiveAction"), tr("Open the &hive"), {}, [this] { openHive(); });
  m_sheets = make(QStringLiteral("sheetsAction"), tr("Print the day's &sheets…"), {},
                  [this] { printSheets(); });
  tip(m_sheets, tr("The yard sheets of every visit of the chosen day"));
  m_enter = make(QStringLiteral("enterAction"), tr("Enter a sheet…"), {},
                 [this] { Q_EMIT asked(QStringLiteral("sheet")); });
  tip(m_enter, tr("Types what was written on the sheet back in"));
  m_calendar = make(QStringLiteral("calendarAction"), tr("Save the day as &calendar file…"), {},
                    [this] { saveCalendar(); });
  m_earlier = make(QStringLiteral("earlierAction"), tr("A week earlier"),
                   QKeySequence(Qt::ALT | Qt::Key_PageUp),
                   [this] { setFirstDay(m_from->plusDays(-kWeek)); });
  m_later = make(QStringLiteral("laterAction"), tr("A week later"),
                 QKeySequence(Qt::ALT | Qt::Key_PageDown),
                 [this] { setFirstDay(m_from->plusDays(kWeek)); });
  m_toToday =
      make(QStringLiteral("toTodayAction"), tr("From today"), QKeySequence(Qt::ALT | Qt::Key_Home),
           [this] { setFirstDay(m_hub.workingDate()); });
}

QList<QAction*> RoundsPlace::menuActions() const {
  return m_menu;
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
    m_runner.setDays(*m_from, m_from->plusDays(kDays - 1));
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
  m_dayBoard->show(m_board);
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
  m_sum->setText(visits == 0 ? tr("No visit yet")
                             : tr("Visits %1, days %2, to do %3, hours %4, drive %5")
                                   .arg(visits)
                                   .arg(days)
                                   .arg(work)
                                   .arg(hoursText(hours), driveText(km, units())));
  showNotes();
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

void RoundsPlace::showSentence(const QString& text,
                               const std::vector<std::pair<QString, QString>>& buttons) {
  m_sentence->setText(text);
  while (auto* item = m_buttons->takeAt(0)) {
    if (item->widget()) item->widget()->deleteLater();
    delete item;
  }
  m_buttons->addStretch();
  for (const auto& [name, words] : buttons) {
    auto* out = new QPushButton(words);
    out->setObjectName(QStringLiteral("first_") + name);
    connect(out, &QPushButton::clicked, this, [this, name = name] {
      if (name == QStringLiteral("yards")) {
        Q_EMIT openPlace(name);
      } else {
        Q_EMIT asked(name);
      }
    });
    m_buttons->addWidget(out);
  }
  m_buttons->addStretch();
  m_pages->setCurrentIndex(0);
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
    showSentence(tr("No season is open. Begin with the sample season to look around, or with a "
                    "season of your own."),
                 {{QStringLiteral("sample"), tr("Open the &sample season")},
                  {QStringLiteral("new"), tr("&New season…")},
                  {QStringLiteral("open"), tr("&Open a season…")}});
  } else if (season.table<apiary::Yard>().empty()) {
    showSentence(tr("There is no yard to drive to yet. Add one under Yards, or read your tables "
                    "in."),
                 {{QStringLiteral("yards"), tr("Go to &Yards")},
                  {QStringLiteral("tables"), tr("&Import tables…")}});
  } else if (!ready) {
    showSentence(tr("No hive stands in a yard yet. Add hives under Yards; what they need is then "
                    "put into rounds here."),
                 {{QStringLiteral("yards"), tr("Go to &Yards")},
                  {QStringLiteral("tables"), tr("&Import tables…")}});
  } else {
    m_pages->setCurrentIndex(1);
  }
  showNotes();
  refreshActions();
}

}  // namespace outyard::rounds
