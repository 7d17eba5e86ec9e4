// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_place.h"

#include <QAction>
#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/session/commands.h"
#include "ui/adapt/words.h"
#include "ui/desk/day_legend.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_words.h"
#include "ui/desk/plan_dialog.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::desk {

DeskPlace::DeskPlace(widgets::SeasonHub& hub, QWidget* parent)
    : Place(parent), m_hub(hub), m_runner(hub) {
  setObjectName(QStringLiteral("deskPlace"));
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 12, 8);
  makeHead(*all);
  makeBody(*all);
  makeActions();

  connect(&m_runner, &DeskRunner::finished, this, &DeskPlace::take);
  connect(&m_runner, &DeskRunner::progressed, this, [this](int ready, int goal) {
    m_ready = ready;
    m_goal = goal;
    showState();
  });
  connect(&m_runner, &DeskRunner::cancelled, this, [this] {
    m_stopped = true;
    showState();
  });
  connect(&m_runner, &DeskRunner::outdated, this, [this] { refresh(); });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    m_facts.reset();
    m_shared = false;
    for (auto* list : {m_yards, m_risk, m_gear, m_looks}) list->clear();
    refresh();
  });
  showState();
}

DeskPlace::~DeskPlace() = default;

QString DeskPlace::title() const {
  return tr("Desk");
}

QIcon DeskPlace::icon() const {
  return widgets::ownIcon(QStringLiteral("desk"), palette());
}

bool DeskPlace::busy() const {
  return m_runner.running();
}

void DeskPlace::takeFocus() {
  m_yards->setFocus();
}

void DeskPlace::makeHead(QVBoxLayout& to) {
  auto* line = new QHBoxLayout;
  line->setSpacing(10);
  m_days = new QLabel;
  m_days->setObjectName(QStringLiteral("days"));
  QFont large = m_days->font();
  large.setBold(true);
  large.setPointSizeF(large.pointSizeF() * 1.25);
  m_days->setFont(large);
  line->addWidget(m_days);
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
  m_stop->setToolTip(tr("Stops working the desk out; yards that are ready are kept"));
  line->addWidget(m_progress);
  line->addWidget(m_stop);
  auto* label = new QLabel(tr("Sho&w"));
  m_show = new QComboBox;
  m_show->setObjectName(QStringLiteral("show"));
  m_show->setAccessibleName(tr("Which work to show"));
  m_show->setToolTip(tr("Which work the list by yard shows"));
  m_show->addItems({tr("all work"), tr("overdue"), tr("not planned yet")});
  label->setBuddy(m_show);
  line->addWidget(label);
  line->addWidget(m_show);
  m_plan = new QPushButton(tr("&Plan the chosen work…"));
  m_plan->setObjectName(QStringLiteral("plan"));
  line->addWidget(m_plan);
  to.addLayout(line);
  connect(m_stop, &QPushButton::clicked, &m_runner, &DeskRunner::cancel);
  connect(m_show, &QComboBox::currentIndexChanged, this, [this] { fill(); });
  connect(m_plan, &QPushButton::clicked, this, &DeskPlace::plan);
}

QWidget* DeskPlace::section(const QString& title, DeskList* list, QLabel** head) {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(4);
  *head = new QLabel(title);
  QFont bold = (*head)->font();
  bold.setBold(true);
  (*head)->setFont(bold);
  (*head)->setBuddy(list);
  layout->addWidget(*head);
  layout->addWidget(list, 1);
  return box;
}

void DeskPlace::makeBody(QVBoxLayout& to) {
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
  m_noteBar = new QWidget;
  auto* noteLine = new QHBoxLayout(m_noteBar);
  noteLine->setContentsMargins(0, 0, 0, 0);
  m_note = new QLabel;
  m_note->setObjectName(QStringLiteral("note"));
  m_note->setWordWrap(true);
  auto* weather = new QPushButton(tr("Import &weather…"));
  weather->setObjectName(QStringLiteral("importWeather"));
  connect(weather, &QPushButton::clicked, this,
          [this] { Q_EMIT asked(QStringLiteral("weather")); });
  noteLine->addWidget(m_note, 1);
  noteLine->addWidget(weather);
  bodyLayout->addWidget(m_noteBar);

  m_yards = new DeskList(m_hub, QStringLiteral("yards"), tr("Work of the next two weeks by yard"));
  m_yards->setRootIsDecorated(true);
  m_yards->setSelectionMode(QAbstractItemView::ExtendedSelection);
  m_risk =
      new DeskList(m_hub, QStringLiteral("risk"), tr("Hives at risk, the most pressing first"));
  m_gear = new DeskList(m_hub, QStringLiteral("gear"), tr("Gear that is short"));
  m_looks = new DeskList(m_hub, QStringLiteral("looks"), tr("What surprised at the last looks"));
  m_risk->setSelectionMode(QAbstractItemView::ExtendedSelection);
  auto* columns = new QSplitter(Qt::Horizontal);
  columns->setObjectName(QStringLiteral("columns"));
  columns->setChildrenCollapsible(false);
  QLabel* yardsHead = nullptr;
  auto* left = section(tr("Work b&y yard"), m_yards, &yardsHead);
  auto* leftLayout = qobject_cast<QVBoxLayout*>(left->layout());
  auto* headLine = new QHBoxLayout;
  leftLayout->removeWidget(yardsHead);
  headLine->addWidget(yardsHead);
  m_expand = new QToolButton;
  m_expand->setObjectName(QStringLiteral("expand"));
  m_expand->setCheckable(true);
  m_expand->setText(tr("Show &all work"));
  m_expand->setToolTip(
      tr("Shows the work of every yard, or the yards only. The right arrow opens "
         "one yard."));
  m_expand->setFocusPolicy(Qt::TabFocus);
  connect(m_expand, &QToolButton::toggled, this, [this](bool all) {
    if (all) {
      m_yards->expandAll();
    } else {
      m_yards->collapseAll();
    }
  });
  headLine->addSpacing(8);
  headLine->addWidget(m_expand);
  headLine->addStretch();
  m_legend = new DayLegend;
  headLine->addWidget(m_legend);
  leftLayout->insertLayout(0, headLine);
  columns->addWidget(left);
  m_right = new QSplitter(Qt::Vertical);
  m_right->setObjectName(QStringLiteral("rows"));
  m_right->setChildrenCollapsible(false);
  m_right->addWidget(section(tr("Hives at &risk"), m_risk, &m_riskHead));
  m_right->addWidget(section(tr("&Gear short"), m_gear, &m_gearHead));
  m_right->addWidget(section(tr("What surprised at the &last looks"), m_looks, &m_looksHead));
  columns->addWidget(m_right);
  // Both columns begin at the same height.
  m_riskHead->setMinimumHeight(m_expand->sizeHint().height());
  columns->setStretchFactor(0, 13);
  columns->setStretchFactor(1, 9);
  columns->setSizes({1300, 900});
  bodyLayout->addWidget(columns, 1);
  m_pages->addWidget(body);
  to.addWidget(m_pages, 1);
  for (auto* list : {m_yards, m_risk, m_gear, m_looks}) {
    connect(list, &DeskList::opened, this, &DeskPlace::open);
    connect(list, &DeskList::chosenChanged, this, &DeskPlace::refreshActions);
  }
}

QAction* DeskPlace::make(const QString& name, const QString& text, const QKeySequence& keys,
                         const std::function<void()>& slot) {
  auto* action = new QAction(text, this);
  action->setObjectName(name);
  action->setShortcut(keys);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  connect(action, &QAction::triggered, this, slot);
  addAction(action);
  return action;
}

void DeskPlace::makeActions() {
  m_planAction = make(QStringLiteral("planAction"), tr("&Plan the chosen work…"),
                      QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_T), [this] { plan(); });
  m_openAction = make(QStringLiteral("openAction"), tr("&Open the hive or yard"), {}, [this] {
    for (auto* list : {m_yards, m_risk, m_gear, m_looks}) {
      if (list->hasFocus() && list->currentIndex().isValid()) {
        open(DeskList::rowOf(list->currentIndex()));
        return;
      }
    }
    if (m_yards->currentIndex().isValid()) open(DeskList::rowOf(m_yards->currentIndex()));
  });
  m_dropAction = make(QStringLiteral("dropAction"), tr("&Drop the chosen planned work"),
                      QKeySequence(Qt::Key_Delete), [this] { drop(); });
  m_expandAction =
      make(QStringLiteral("expandAction"), tr("Show the work of &every yard"), {}, [this] {
        m_expand->setChecked(true);
        m_yards->expandAll();
      });
  m_collapseAction = make(QStringLiteral("collapseAction"), tr("Show yards on&ly"), {}, [this] {
    m_expand->setChecked(false);
    m_yards->collapseAll();
  });
  m_againAction = make(QStringLiteral("againAction"), tr("&Work the desk out"),
                       QKeySequence(Qt::Key_F5), [this] { refresh(); });
  m_stopAction = make(QStringLiteral("stopAction"), tr("S&top working it out"), {},
                      [this] { m_runner.cancel(); });
  for (auto* list : {m_yards, m_risk}) {
    list->setContextMenuPolicy(Qt::ActionsContextMenu);
    list->addActions({m_planAction, m_openAction, m_dropAction});
  }
  refreshActions();
}

QList<QAction*> DeskPlace::menuActions() const {
  return {m_planAction,     m_dropAction,  m_openAction, m_expandAction,
          m_collapseAction, m_againAction, m_stopAction};
}

// --- what was worked out ------------------------------------------------------------------------

void DeskPlace::refresh() {
  m_stopped = false;
  if (isVisible()) m_runner.refresh();
  showState();
}

void DeskPlace::showEvent(QShowEvent* event) {
  Place::showEvent(event);
  if (!m_stopped && !m_runner.running()) m_runner.refresh();
  showState();
}

void DeskPlace::changeEvent(QEvent* event) {
  Place::changeEvent(event);
  if (event->type() == QEvent::FontChange) fill();
}

void DeskPlace::take(Facts facts) {
  m_facts = std::move(facts);
  fill();
  showState();
}

RowMaker DeskPlace::maker() const {
  return {m_hub.season(), *m_facts, adapt::Units::from(m_hub.settings())};
}

void DeskPlace::fill() {
  if (!m_facts) return;
  const RowMaker make = maker();
  const auto show = static_cast<Show>(m_show->currentIndex());
  std::vector<DeskList::Branch> branches;
  for (const auto& work : m_facts->yards) {
    DeskList::Branch branch{make.yard(work), {}};
    for (const std::size_t i : make.shown(work, show)) branch.below.push_back(make.task(i));
    branches.push_back(std::move(branch));
  }
  m_yards->setRows(m_facts, branches);
  m_risk->setFlat(m_facts, make.risk());
  m_gear->setFlat(m_facts, make.gear());
  m_looks->setFlat(m_facts, make.looks());
  const auto counted = [](const QString& text, std::size_t count) {
    return count == 0 ? text : QStringLiteral("%1 (%2)").arg(text).arg(count);
  };
  m_riskHead->setText(counted(tr("Hives at &risk"), m_facts->risk.size()));
  m_gearHead->setText(counted(tr("&Gear short"), m_facts->gear.missing.size()));
  m_looksHead->setText(
      counted(tr("What surprised at the &last looks"), m_facts->looks.outside.size()));
  m_days->setText(QStringLiteral("%1 – %2").arg(dayText(m_facts->due.ask.from),
                                                adapt::dateText(m_facts->due.ask.to)));
  m_sum->setText(sumText(*m_facts));
  QStringList notes;
  int without = 0;
  for (const auto& note : m_facts->due.notes) {
    if (note.key == "planning.due.no_weather" && ++without > 1) continue;
    notes << adapt::words(note);
  }
  if (without > 1) {
    notes << tr("%1 yards have no weather in these days.").arg(without);
  }
  m_note->setText(notes.join(u'\n'));
  m_noteBar->setVisible(!notes.isEmpty());
  m_noteBar->findChild<QPushButton*>(QStringLiteral("importWeather"))->setVisible(without > 0);
  shareHeight();
  refreshActions();
}

/// At first each list on the right gets what it needs, hives at risk what is left.
void DeskPlace::shareHeight() {
  if (m_shared || !isVisible()) return;
  m_shared = true;
  const int head = fontMetrics().height() + 10;
  const int whole = m_right->height();
  const int gear = std::min(m_gear->wholeHeight() + head, whole * 28 / 100);
  const int looks = std::min(m_looks->wholeHeight() + head, whole * 32 / 100);
  m_right->setSizes({whole - gear - looks, gear, looks});
}

void DeskPlace::showSentence(const QString& text,
                             const std::vector<std::pair<QString, QString>>& buttons) {
  m_sentence->setText(text);
  while (auto* item = m_buttons->takeAt(0)) {
    if (item->widget()) item->widget()->deleteLater();
    delete item;
  }
  m_buttons->addStretch();
  for (const auto& [name, words] : buttons) {
    auto* button = new QPushButton(words);
    button->setObjectName(QStringLiteral("first_") + name);
    connect(button, &QPushButton::clicked, this, [this, name = name] {
      if (name == QStringLiteral("yards")) {
        Q_EMIT openPlace(name);
      } else if (name == QStringLiteral("again")) {
        refresh();
      } else {
        Q_EMIT asked(name);
      }
    });
    m_buttons->addWidget(button);
  }
  m_buttons->addStretch();
  m_pages->setCurrentIndex(0);
}

void DeskPlace::showState() {
  const bool running = m_runner.running();
  m_progress->setVisible(running);
  m_stop->setVisible(running);
  m_progress->setRange(0, std::max(m_goal, 1));
  m_progress->setValue(m_ready);
  m_progress->setFormat(tr("%1 of %2 yards").arg(m_ready).arg(m_goal));
  const bool ready = m_facts && m_hub.isOpen();
  m_days->setVisible(ready);
  m_sum->setVisible(ready);
  m_show->setEnabled(ready);
  const auto& season = m_hub.season();
  if (!m_hub.isOpen()) {
    showSentence(tr("No season is open. Begin with the sample season to look around, or with a "
                    "season of your own."),
                 {{QStringLiteral("sample"), tr("Open the &sample season")},
                  {QStringLiteral("new"), tr("&New season…")},
                  {QStringLiteral("open"), tr("&Open a season…")}});
  } else if (season.table<apiary::Yard>().empty()) {
    showSentence(tr("This season has no yard yet. Add one under Yards, or read your tables in."),
                 {{QStringLiteral("yards"), tr("Go to &Yards")},
                  {QStringLiteral("tables"), tr("&Import tables…")}});
  } else if (season.table<apiary::Hive>().empty()) {
    showSentence(tr("No hive stands in a yard yet. Add hives under Yards, or read your tables in; "
                    "what they need then shows here."),
                 {{QStringLiteral("yards"), tr("Go to &Yards")},
                  {QStringLiteral("tables"), tr("&Import tables…")}});
  } else if (m_facts) {
    m_pages->setCurrentIndex(1);
  } else if (m_stopped) {
    showSentence(tr("Stopped before everything was worked out."),
                 {{QStringLiteral("again"), tr("&Work it out")}});
  } else {
    showSentence(tr("Working out what the next two weeks ask for…"), {});
  }
  refreshActions();
}

// --- what is done from here ---------------------------------------------------------------------

void DeskPlace::open(const Row& row) {
  if (!row.yard && !row.hive) return;
  if (row.hive && m_hub.season().hive(*row.hive)) {
    m_hub.selectHive(*row.hive);
    Q_EMIT openPlace(QStringLiteral("hive"));
  } else if (row.yard) {
    m_hub.selectYard(*row.yard);
    Q_EMIT openPlace(QStringLiteral("yards"));
  }
}

std::vector<std::size_t> DeskPlace::toPlan() const {
  std::vector<std::size_t> out;
  if (!m_facts) return out;
  const auto* list = m_risk->hasFocus() ? m_risk : m_yards;
  const auto add = [&](std::size_t i) {
    if (m_facts->due.tasks[i].rule == "planned") return;
    if (std::find(out.begin(), out.end(), i) == out.end()) out.push_back(i);
  };
  for (const Row& row : list->chosen()) {
    for (const std::size_t i : row.tasks) add(i);
  }
  return out;
}

std::vector<base::TaskId> DeskPlace::plannedChosen() const {
  std::vector<base::TaskId> out;
  if (!m_facts) return out;
  for (const Row& row : m_yards->chosen()) {
    if (row.kind != Row::Kind::Task || !row.planned) continue;
    if (const auto& id = m_facts->due.tasks[row.tasks.front()].task) out.push_back(*id);
  }
  return out;
}

void DeskPlace::refreshActions() {
  if (!m_planAction) return;
  // Until the facts fit again there is nothing to plan from: the work may be planned already.
  const bool fresh = m_facts && m_runner.fresh();
  const auto count = fresh ? toPlan().size() : 0;
  m_planAction->setEnabled(count > 0);
  m_plan->setEnabled(count > 0);
  m_plan->setToolTip(
      count > 0 ? tr("Plans %1 piece(s) of work, with the days and cautions (%2)")
                      .arg(count)
                      .arg(m_planAction->shortcut().toString(QKeySequence::NativeText))
                      .replace(QLatin1String("piece(s)"), count == 1 ? tr("piece") : tr("pieces"))
                : tr("Choose work in the list by yard, or a yard for all its work"));
  m_dropAction->setEnabled(fresh && !plannedChosen().empty());
  m_openAction->setEnabled(m_facts != nullptr);
  m_expandAction->setEnabled(m_facts != nullptr);
  m_collapseAction->setEnabled(m_facts != nullptr);
  m_againAction->setEnabled(m_hub.isOpen() && !m_runner.fresh() && !m_runner.running());
  m_stopAction->setEnabled(m_runner.running());
}

void DeskPlace::plan() {
  const auto tasks = m_runner.fresh() ? toPlan() : std::vector<std::size_t>{};
  if (tasks.empty()) return;
  PlanDialog dialog(m_hub, m_facts, tasks, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void DeskPlace::drop() {
  const auto planned = m_runner.fresh() ? plannedChosen() : std::vector<base::TaskId>{};
  if (planned.empty()) return;
  if (planned.size() == 1) {
    m_hub.execute(session::setTaskState(planned.front(), apiary::TaskState::Dropped, std::nullopt),
                  this);
    return;
  }
  std::vector<session::HiveStep> steps;
  for (const auto& id : planned) {
    const auto* task = m_hub.season().find<apiary::Task>(id.str());
    if (!task) continue;
    steps.push_back({task->hive.value_or(base::HiveId{}),
                     session::setTaskState(id, apiary::TaskState::Dropped, std::nullopt)});
  }
  m_hub.execute(session::together(base::message("session.title.task_dropped"), std::move(steps)),
                this);
}

}  // namespace outyard::desk
