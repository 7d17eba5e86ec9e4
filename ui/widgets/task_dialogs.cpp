// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/task_dialogs.h"

#include <QDateEdit>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/session/task_done.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/work_words.h"

namespace outyard::widgets {
namespace {

using session::DoneNeeds;

enum Column { kHive, kWork, kDue, kSaid, kColumns };

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString dueText(const apiary::Task& task) {
  const auto day = task.plannedOn ? task.plannedOn : task.dueOn ? task.dueOn : task.latest;
  return day ? adapt::dateText(*day) : QString();
}

QString hiveText(const SeasonHub& hub, const apiary::Task& task) {
  if (task.hive) return qs(task.hive->str());
  return task.yard ? yardName(hub.season(), *task.yard) : QString();
}

}  // namespace

TaskDayDialog::TaskDayDialog(SeasonHub& hub, std::vector<apiary::Task> tasks, base::Date day,
                             QWidget* parent)
    : QDialog(parent), m_hub(hub), m_tasks(std::move(tasks)), m_start(day) {}

base::Date TaskDayDialog::day() const {
  return adapt::fromQDate(m_day->date());
}

void TaskDayDialog::make(const QString& dayLabel, const QString& button, const QString& column) {
  auto* all = new QVBoxLayout(this);
  m_list = new QTreeWidget;
  m_list->setObjectName(QStringLiteral("tasks"));
  m_list->setAccessibleName(tr("The planned work"));
  m_list->setColumnCount(kColumns);
  m_list->setHeaderLabels({tr("Hive"), tr("Work"), tr("Planned for"), column});
  m_list->setRootIsDecorated(false);
  m_list->setUniformRowHeights(true);
  m_list->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
  const auto units = adapt::Units::from(m_hub.settings());
  for (const auto& task : m_tasks) {
    auto* item = new QTreeWidgetItem(
        m_list, {hiveText(m_hub, task), plannedText(task, units), dueText(task), QString()});
    if (!task.why.empty()) item->setToolTip(kWork, qs(task.why));
  }
  all->addWidget(m_list, 1);
  m_fields = new QVBoxLayout;
  auto* line = new QHBoxLayout;
  auto* label = new QLabel(dayLabel);
  m_day = new QDateEdit(adapt::toQDate(m_start));
  m_day->setObjectName(QStringLiteral("taskDay"));
  m_day->setCalendarPopup(true);
  //: Day, month, year: see QLocale::toString.
  m_day->setDisplayFormat(tr("d MMM yyyy"));
  label->setBuddy(m_day);
  line->addWidget(label);
  line->addWidget(m_day);
  line->addStretch();
  m_fields->addLayout(line);
  all->addLayout(m_fields);
  m_fault = new QLabel;
  m_fault->setObjectName(QStringLiteral("taskFault"));
  m_fault->setWordWrap(true);
  all->addWidget(m_fault);
  m_buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_ok = m_buttons->button(QDialogButtonBox::Ok);
  m_ok->setText(button);
  m_ok->setObjectName(QStringLiteral("taskOk"));
  all->addWidget(m_buttons);
  connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_day, &QDateEdit::dateChanged, this, [this] { refresh(); });
  m_day->setFocus();
}

QLabel* TaskDayDialog::addSentence(const QString& name) {
  auto* out = new QLabel;
  out->setObjectName(name);
  out->setWordWrap(true);
  out->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  m_fields->addWidget(out);
  return out;
}

QPushButton* TaskDayDialog::addButton(const QString& name, const QString& text) {
  auto* out = m_buttons->addButton(text, QDialogButtonBox::ActionRole);
  out->setObjectName(name);
  out->setAutoDefault(false);
  return out;
}

void TaskDayDialog::refresh() {
  for (std::size_t i = 0; i < m_tasks.size(); ++i) {
    auto* item = m_list->topLevelItem(static_cast<int>(i));
    item->setText(kSaid, said(m_tasks[i]));
    item->setToolTip(kSaid, item->text(kSaid));
  }
  refreshMore();
  QString fault = fieldFault();
  if (fault.isEmpty()) fault = m_hub.whyNot(*command());
  m_fault->setText(fault);
  m_fault->setVisible(!fault.isEmpty());
  m_ok->setEnabled(fault.isEmpty());
  for (int column = 0; column < kSaid; ++column) m_list->resizeColumnToContents(column);
  const int letter = fontMetrics().averageCharWidth();
  const int rows = std::clamp(static_cast<int>(m_tasks.size()) + 2, 3, 10);
  m_list->setMinimumHeight(m_list->header()->sizeHint().height() +
                           rows * (fontMetrics().height() + 4));
  if (!isVisible()) resize(112 * letter, sizeHint().height());
}

// --- done ---------------------------------------------------------------------------------------

TaskDoneDialog::TaskDoneDialog(SeasonHub& seasonHub, std::vector<apiary::Task> planned,
                               base::Date day, QWidget* parent)
    : TaskDayDialog(seasonHub, std::move(planned), day, parent) {
  setObjectName(QStringLiteral("taskDoneDialog"));
  setWindowTitle(tasks().size() == 1 ? tr("Mark work as done")
                                     : tr("Mark %1 pieces of work as done").arg(tasks().size()));
  make(tr("Done &on"), tr("&Mark as done"), tr("What is recorded"));
  dayField().setMaximumDate(adapt::toQDate(hub().workingDate()));
  const auto& first = tasks().front();
  const auto needs = session::doneNeeds(hub().season(), first, day);
  if (tasks().size() == 1 && needs == DoneNeeds::Amount) {
    auto* line = new QHBoxLayout;
    auto* label = new QLabel(first.kind == "bees_shaken" ? tr("&How many bees")
                             : first.kind == "harvested" ? tr("&How much (kg)")
                                                         : tr("&How many frames"));
    m_amount = new QLineEdit;
    m_amount->setObjectName(QStringLiteral("taskAmount"));
    label->setBuddy(m_amount);
    line->addWidget(label);
    line->addWidget(m_amount);
    line->addStretch();
    fields().addLayout(line);
    connect(m_amount, &QLineEdit::textChanged, this, [this] { refresh(); });
  }
  if (tasks().size() == 1 && needs == DoneNeeds::Look) {
    auto* look = addButton(QStringLiteral("taskLook"), tr("Enter what was &seen…"));
    look->setToolTip(tr("Opens the inspection form; recording it marks the work as done"));
    connect(look, &QPushButton::clicked, this, [this] {
      m_look = true;
      accept();
    });
  }
  m_note = addSentence(QStringLiteral("taskNote"));
  refresh();
}

std::vector<apiary::Task> TaskDoneDialog::told() const {
  auto out = tasks();
  if (m_amount) {
    bool good = false;
    const double amount = QLocale().toDouble(m_amount->text().trimmed(), &good);
    if (good) out.front().amount = amount;
    if (good && out.front().kind == "harvested") out.front().unit = apiary::Unit::Kg;
  }
  return out;
}

QString TaskDoneDialog::said(const apiary::Task& task) const {
  const auto& season = hub().season();
  switch (session::doneNeeds(season, task, day())) {
    case DoneNeeds::Look:
      return tr("the day; what was seen is typed apart");
    case DoneNeeds::Day:
      return session::doneWrites(season, task, day()) ? tr("the day, and the record of it")
                                                      : tr("the day");
    case DoneNeeds::Amount:
      return m_amount ? tr("the day, and the record of it") : tr("the day alone: amount not told");
    case DoneNeeds::Dialog:
      break;
  }
  return tr("the day alone: record it at the hive");
}

QString TaskDoneDialog::fieldFault() const {
  if (!m_amount) return {};
  bool good = false;
  const double amount = QLocale().toDouble(m_amount->text().trimmed(), &good);
  if (good && amount > 0) return {};
  return tr("Type how much it was, more than 0.");
}

void TaskDoneDialog::refreshMore() {
  bool alone = false;
  for (const auto& task : tasks()) {
    const auto needs = session::doneNeeds(hub().season(), task, day());
    alone = alone || needs == DoneNeeds::Dialog || (needs == DoneNeeds::Amount && !m_amount);
  }
  m_note->setText(
      alone ? tr("What needs more than the day (boxes, queens, treatments) is only ticked off "
                 "here. Record it at its hive too, or mark it alone: its own dialog "
                 "then opens.")
            : QString());
  m_note->setVisible(alone);
}

session::CommandPtr TaskDoneDialog::command() const {
  return session::finishTasks(hub().season(), told(), day());
}

// --- moved --------------------------------------------------------------------------------------

TaskMoveDialog::TaskMoveDialog(SeasonHub& seasonHub, std::vector<apiary::Task> planned,
                               base::Date day, QWidget* parent)
    : TaskDayDialog(seasonHub, std::move(planned), day, parent) {
  setObjectName(QStringLiteral("taskMoveDialog"));
  setWindowTitle(tasks().size() == 1 ? tr("Not done: move to another day")
                                     : tr("Not done: move %1 pieces of work").arg(tasks().size()));
  make(tr("&New day"), tr("&Move"), tr("What speaks against it"));
  refresh();
}

QString TaskMoveDialog::said(const apiary::Task& task) const {
  if (day() < hub().workingDate()) return tr("the day is past: it shows as overdue");
  if (task.latest && day() > *task.latest) {
    return tr("should be done by %1").arg(adapt::dateText(*task.latest));
  }
  if (task.earliest && day() < *task.earliest) {
    return tr("not before %1").arg(adapt::dateText(*task.earliest));
  }
  return {};
}

session::CommandPtr TaskMoveDialog::command() const {
  std::vector<base::TaskId> ids;
  for (const auto& task : tasks()) ids.push_back(task.task);
  return session::moveTasks(std::move(ids), day());
}

}  // namespace outyard::widgets
