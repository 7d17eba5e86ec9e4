// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_place.h"

#include <QAction>
#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPointer>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_words.h"
#include "ui/desk/plan_dialog.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/task_actions.h"
#include "ui/widgets/theme.h"

namespace outyard::desk {

DeskPlace::DeskPlace(widgets::SeasonHub& hub, QWidget* parent)
    : Place(parent),
      m_hub(hub),
      m_runner(hub),
      m_us(hub.settings().get(adapt::desk::kMassUnit) == adapt::MassUnit::Pound) {
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
  // Kilograms or pounds: the settings outlive the place.
  m_hub.settings().onChange([self = QPointer(this)] {
    if (self) self->unitsChanged();
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

QList<QAction*> DeskPlace::menuActions() const {
  QList<QAction*> out{m_planAction};
  out += m_tasks->actions();
  out += {m_openAction,  m_expandAction, m_collapseAction,
          m_againAction, m_stopAction,   m_saveMenu->menuAction()};
  return out;
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

void DeskPlace::unitsChanged() {
  const bool us = m_hub.settings().get(adapt::desk::kMassUnit) == adapt::MassUnit::Pound;
  if (us == m_us) return;
  m_us = us;
  fill();
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
  m_days->setText(QStringLiteral("%1 – %2").arg(shortDay(m_facts->due.ask.from),
                                                adapt::dateText(m_facts->due.ask.to)));
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

void DeskPlace::showState() {
  const bool running = m_runner.running();
  m_progress->setVisible(running);
  m_stop->setVisible(running);
  m_progress->setRange(0, std::max(m_goal, 1));
  m_progress->setValue(m_ready);
  m_progress->setFormat(tr("%1 of %2 yards").arg(m_ready).arg(m_goal));
  const bool ready = m_facts && m_hub.isOpen();
  m_days->setVisible(ready);
  for (QWidget* each : std::initializer_list<QWidget*>{m_showLabel, m_show, m_plan}) {
    each->setVisible(ready);
  }
  if (!ready) m_sum->clear();
  if (ready) {
    m_sum->setText(m_stopped && !m_runner.fresh()
                       ? tr("Stopped: this was worked out before the last change. F5 works it out "
                            "again.")
                       : sumText(*m_facts));
  }
  const auto& season = m_hub.season();
  if (!m_hub.isOpen()) {
    m_empty->sayNoSeason();
  } else if (season.table<apiary::Yard>().empty()) {
    m_empty->say(tr("This season has no yard yet. Add one under Yards, or read your tables in."),
                 widgets::EmptyPage::firstYards());
  } else if (season.table<apiary::Hive>().empty()) {
    m_empty->say(tr("No hive stands in a yard yet. Add hives under Yards, or read your tables in; "
                    "what they need then shows here."),
                 widgets::EmptyPage::firstYards());
  } else if (m_facts) {
    m_pages->setCurrentIndex(1);
  } else if (m_stopped) {
    m_empty->say(tr("Stopped before everything was worked out."),
                 {{QStringLiteral("again"), tr("&Work it out")}});
  } else {
    m_empty->say(tr("Working out what the next two weeks ask for…"));
  }
  refreshActions();
}

// --- what is done from here ---------------------------------------------------------------------

/// A step of a stack that was made: it is recorded from the list of stacks.
bool DeskPlace::followsStack(const Row& row) const {
  if (row.kind != Row::Kind::Task || row.tasks.empty() || !m_facts) return false;
  const auto& due = m_facts->due.tasks.at(row.tasks.front());
  if (due.rule == "paper" || due.rule == "stack_look" || due.rule == "separate" ||
      due.rule == "own_stand") {
    return true;
  }
  if (!due.task) return false;
  const auto* task = m_hub.season().find<apiary::Task>(due.task->str());
  return task && (task->kind == "unstacked" || task->kind == "paper_open" ||
                  (task->kind == "look" && task->method == apiary::Method::Stack));
}

void DeskPlace::open(const Row& row) {
  if (!row.yard && !row.hive) return;
  if (row.hive && m_hub.season().hive(*row.hive)) {
    m_hub.selectHive(*row.hive);
    if (followsStack(row)) {
      Q_EMIT openPlace(QStringLiteral("pairs"), QStringLiteral("stacks"));
    } else {
      Q_EMIT openPlace(QStringLiteral("hive"));
    }
  } else if (row.yard) {
    m_hub.selectYard(*row.yard);
    Q_EMIT openPlace(QStringLiteral("yards"));
  }
}

std::vector<std::size_t> DeskPlace::toPlan() const {
  std::vector<std::size_t> out;
  if (!m_facts) return out;
  const auto add = [&](std::size_t i) {
    if (m_facts->due.tasks[i].rule == "planned") return;
    if (std::find(out.begin(), out.end(), i) == out.end()) out.push_back(i);
  };
  for (const auto* list : {m_yards, m_risk}) {
    for (const Row& row : list->chosen()) {
      for (const std::size_t i : row.tasks) add(i);
    }
  }
  return out;
}

std::vector<base::TaskId> DeskPlace::plannedChosen() const {
  std::vector<base::TaskId> out;
  if (!m_facts || !m_runner.fresh()) return out;
  for (const auto* list : {m_yards, m_risk}) {
    for (const Row& row : list->chosen()) {
      if (row.kind == Row::Kind::Yard) continue;
      for (const std::size_t i : row.tasks) {
        const auto& id = m_facts->due.tasks[i].task;
        if (id && std::find(out.begin(), out.end(), *id) == out.end()) out.push_back(*id);
      }
    }
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
  m_tasks->refresh();
  m_openAction->setEnabled(m_facts != nullptr);
  m_expandAction->setEnabled(m_facts != nullptr);
  m_collapseAction->setEnabled(m_facts != nullptr);
  for (auto* action : m_saveMenu->actions()) action->setEnabled(m_facts != nullptr);
  m_againAction->setEnabled(m_hub.isOpen() && !m_runner.fresh() && !m_runner.running());
  m_stopAction->setEnabled(m_runner.running());
}

void DeskPlace::plan() {
  const auto tasks = m_runner.fresh() ? toPlan() : std::vector<std::size_t>{};
  if (tasks.empty()) return;
  PlanDialog dialog(m_hub, m_facts, tasks, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

}  // namespace outyard::desk
