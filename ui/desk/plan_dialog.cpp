// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/plan_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "core/session/commands.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_words.h"
#include "ui/widgets/session_model.h"

namespace outyard::desk {
namespace {

enum Column { kHive, kWork, kWindow, kDay, kColumns };

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

PlanDialog::PlanDialog(widgets::SeasonHub& hub, Facts facts, std::vector<std::size_t> tasks,
                       QWidget* parent)
    : QDialog(parent), m_hub(hub), m_facts(std::move(facts)), m_tasks(std::move(tasks)) {
  setObjectName(QStringLiteral("planDialog"));
  const int count = static_cast<int>(m_tasks.size());
  setWindowTitle(count == 1 ? tr("Plan one piece of work")
                            : tr("Plan %1 pieces of work").arg(count));
  auto* all = new QVBoxLayout(this);
  m_list = new QTreeWidget;
  m_list->setObjectName(QStringLiteral("planTasks"));
  m_list->setAccessibleName(tr("What will be planned"));
  m_list->setColumnCount(kColumns);
  m_list->setHeaderLabels({tr("Hive"), tr("Work"), tr("Window"), tr("Planned for")});
  m_list->setRootIsDecorated(false);
  m_list->setAlternatingRowColors(true);
  m_list->setUniformRowHeights(true);
  const auto units = adapt::Units::from(m_hub.settings());
  for (const std::size_t i : m_tasks) {
    const auto& t = m_facts->due.tasks[i];
    auto* item = new QTreeWidgetItem(
        m_list, {t.hive ? qs(t.hive->str()) : yardName(m_hub.season(), t.yard), workText(t, units),
                 windowText(t, m_facts->due.ask.from), QString()});
    item->setToolTip(kWork, reasonText(t));
  }
  all->addWidget(m_list, 1);

  auto* line = new QHBoxLayout;
  auto* label = new QLabel(tr("&Day"));
  m_how = new QComboBox;
  m_how->setObjectName(QStringLiteral("planHow"));
  m_how->setAccessibleName(tr("Day"));
  m_how->addItems({tr("the day proposed for each"), tr("all on one day")});
  label->setBuddy(m_how);
  base::Date first = m_facts->due.ask.to;
  for (const std::size_t i : m_tasks) first = std::min(first, m_facts->due.tasks[i].date);
  m_day = new QDateEdit(adapt::toQDate(std::max(first, m_facts->due.ask.from)));
  m_day->setObjectName(QStringLiteral("planDate"));
  m_day->setAccessibleName(tr("The one day"));
  m_day->setCalendarPopup(true);
  //: Day, month, year: see QLocale::toString.
  m_day->setDisplayFormat(tr("d MMM yyyy"));
  line->addWidget(label);
  line->addWidget(m_how);
  line->addWidget(m_day);
  line->addStretch();
  all->addLayout(line);

  const auto sentence = [&](const QString& name) {
    auto* made = new QLabel;
    made->setObjectName(name);
    made->setWordWrap(true);
    made->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    all->addWidget(made);
    return made;
  };
  m_weather = sentence(QStringLiteral("planWeather"));
  m_cautions = sentence(QStringLiteral("planCautions"));
  m_fault = sentence(QStringLiteral("planFault"));
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_plan = buttons->button(QDialogButtonBox::Ok);
  m_plan->setText(tr("&Plan"));
  m_plan->setObjectName(QStringLiteral("planOk"));
  all->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_how, &QComboBox::currentIndexChanged, this, &PlanDialog::refresh);
  connect(m_day, &QDateEdit::dateChanged, this, &PlanDialog::refresh);
  m_cautions->setText(cautions());
  m_cautions->setVisible(!m_cautions->text().isEmpty());
  refresh();
  const int letter = fontMetrics().averageCharWidth();
  for (int column = 0; column < kColumns; ++column) m_list->resizeColumnToContents(column);
  m_list->setColumnWidth(kWork, std::max(m_list->columnWidth(kWork), 30 * letter));
  m_list->setMinimumHeight(fontMetrics().height() * std::clamp(count + 3, 5, 12));
  resize(95 * letter, sizeHint().height());
}

bool PlanDialog::oneDay() const {
  return m_how->currentIndex() == 1;
}

base::Date PlanDialog::dayOf(const planning::DueTask& task) const {
  return oneDay() ? adapt::fromQDate(m_day->date()) : task.date;
}

QString PlanDialog::dayFaults() const {
  QStringList out;
  int late = 0, early = 0;
  std::set<base::YardId> yards;
  for (const std::size_t i : m_tasks) {
    const auto& t = m_facts->due.tasks[i];
    const auto day = dayOf(t);
    // What is overdue anyway can only be done late.
    if (day > t.latest && !t.overdue(m_facts->due.ask.from)) ++late;
    if (day < t.earliest) ++early;
    yards.insert(t.yard);
  }
  if (oneDay()) {
    const auto day = adapt::fromQDate(m_day->date());
    const auto units = adapt::Units::from(m_hub.settings());
    for (const auto& yard : m_facts->due.yards) {
      if (!yards.contains(yard.yard)) continue;
      const auto at = std::find_if(yard.days.begin(), yard.days.end(),
                                   [&](const auto& d) { return d.date == day; });
      if (at == yard.days.end()) continue;
      out << QStringLiteral("%1, %2.").arg(yardName(m_hub.season(), yard.yard),
                                           dayWords(*at, units));
    }
  }
  if (early > 0) out << tr("%1 of them would be before the window begins.").arg(early);
  if (late > 0) out << tr("%1 of them would be after the window ends.").arg(late);
  return out.join(u'\n');
}

QString PlanDialog::cautions() const {
  QStringList lines;
  for (const std::size_t i : m_tasks) lines += cautionTexts(m_facts->due.tasks[i]);
  lines.removeDuplicates();
  if (lines.isEmpty()) return {};
  for (QString& line : lines) line.prepend(QStringLiteral("•  "));
  return tr("Take care:") + u'\n' + lines.join(u'\n');
}

void PlanDialog::refresh() {
  m_day->setEnabled(oneDay());
  for (std::size_t k = 0; k < m_tasks.size(); ++k) {
    m_list->topLevelItem(static_cast<int>(k))
        ->setText(kDay, adapt::dateText(dayOf(m_facts->due.tasks[m_tasks[k]])));
  }
  m_weather->setText(dayFaults());
  m_weather->setVisible(!m_weather->text().isEmpty());
  const QString fault = m_hub.whyNot(*command());
  m_fault->setText(fault);
  m_fault->setVisible(!fault.isEmpty());
  m_plan->setEnabled(fault.isEmpty() && !m_tasks.empty());
}

session::CommandPtr PlanDialog::command() const {
  std::vector<apiary::Task> tasks;
  for (const std::size_t i : m_tasks) {
    const auto& due = m_facts->due.tasks[i];
    auto task = planning::taskOf(due, base::TaskId{}, adapt::wordsUtf8);
    task.dueOn = dayOf(due);
    if (oneDay()) task.plannedOn = dayOf(due);
    tasks.push_back(std::move(task));
  }
  return session::addTasks(std::move(tasks));
}

}  // namespace outyard::desk
