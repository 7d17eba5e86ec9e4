// SPDX-License-Identifier: GPL-3.0-or-later
// What the place is made of: head, board, lists and actions.
#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "ui/rounds/rounds_place.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/task_actions.h"

namespace outyard::rounds {
namespace {
constexpr int kWeek = 7;
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
  m_empty = new widgets::EmptyPage(*this);
  m_pages->addWidget(m_empty);

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
  m_rows = new QSplitter(Qt::Vertical);
  m_rows->setObjectName(QStringLiteral("rows"));
  m_rows->setChildrenCollapsible(false);
  m_rows->addWidget(m_dayBoard);
  m_rows->addWidget(lower);
  m_rows->setStretchFactor(0, 11);
  m_rows->setStretchFactor(1, 9);
  m_rows->setSizes({590, 410});
  bodyLayout->addWidget(m_rows, 1);
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
  line->addWidget(button(m_tasks->doneAction(), QStringLiteral("done")));
  line->addStretch();
  line->addWidget(button(m_open, QStringLiteral("openHive")));
  layout->addLayout(line);
  m_work->setContextMenuPolicy(Qt::ActionsContextMenu);
  m_work->addActions({m_putIn, m_takeOut});
  m_work->addActions(m_tasks->actions());
  m_work->addActions({m_notDone, m_open});
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
  m_cautions->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  // Never cut: where there is little room they are scrolled.
  auto* caution = new QScrollArea;
  caution->setObjectName(QStringLiteral("cautionArea"));
  caution->setAccessibleName(tr("What to mind when loading"));
  caution->setFrameShape(QFrame::NoFrame);
  caution->setWidgetResizable(true);
  caution->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  caution->setWidget(m_cautions);
  caution->setMinimumHeight(3 * fontMetrics().height());
  caution->setMaximumHeight(8 * fontMetrics().height());
  layout->addWidget(m_loadHead);
  layout->addWidget(m_load, 3);
  layout->addWidget(m_loadSum);
  layout->addWidget(caution, 2);
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
  m_menu << Place::make(name, text, keys, slot);
  return m_menu.back();
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
  m_tasks = new widgets::TaskActions(m_hub, *this, {}, [this] { return plannedChosen(); });
  m_tasks->setDay([this] { return m_dayBoard->day(); });
  m_menu << m_tasks->actions();
  m_notDone =
      make(QStringLiteral("notDoneAction"), tr("Not done after all"), {}, [this] { untick(); });
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

}  // namespace outyard::rounds
