// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/stacks_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>
#include <thread>

#include "ui/adapt/words.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/stack_step_dialog.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"

namespace outyard::pairs {
namespace {

QString work() {
  return QStringLiteral("stacks made");
}

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// The day or days of a step, as they are read on a list.
QString whenText(const planning::StackStep& step) {
  if (step.doneOn) return adapt::dateText(*step.doneOn);
  if (step.state == planning::StepState::Passed) return {};
  if (step.proposed) return adapt::dateText(*step.proposed);
  return StacksDialog::tr("%1 or later").arg(adapt::dateText(step.earliest));
}

}  // namespace

QString stepStateText(const planning::StackStep& step) {
  switch (step.state) {
    case planning::StepState::Done:
      return StacksDialog::tr("done");
    case planning::StepState::Passed:
      return StacksDialog::tr("not recorded");
    case planning::StepState::Waiting:
      return StacksDialog::tr("to come");
    case planning::StepState::Due:
      return StacksDialog::tr("due now");
    case planning::StepState::Overdue:
      break;
  }
  return StacksDialog::tr("overdue");
}

StacksDialog::StacksDialog(widgets::SeasonHub& hub, QWidget* parent) : QDialog(parent), m_hub(hub) {
  setObjectName(QStringLiteral("stacksDialog"));
  setWindowTitle(tr("Stacks made"));
  // In letters, so that a large font widens it too, as far as the screen goes.
  const int letters = fontMetrics().averageCharWidth() * 180;
  const QSize room = screen()->availableGeometry().size() - QSize(40, 60);
  resize(QSize(letters, fontMetrics().lineSpacing() * 40).boundedTo(room));
  auto* all = new QVBoxLayout(this);
  m_pages = new QStackedWidget(this);
  m_sentence = new QLabel(m_pages);
  m_sentence->setObjectName(QStringLiteral("stacksSentence"));
  m_sentence->setAlignment(Qt::AlignCenter);
  m_sentence->setWordWrap(true);
  m_pages->addWidget(m_sentence);
  auto* page = new QWidget(m_pages);
  auto* layout = new QVBoxLayout(page);
  layout->setContentsMargins(0, 0, 0, 0);
  m_model = new TextTable({tr("Stack"), tr("Step"), tr("State"), tr("When"), tr("Why")}, this);
  m_table = new QTableView(page);
  m_table->setObjectName(QStringLiteral("stacks"));
  m_table->setAccessibleName(tr("Stacks made and their steps"));
  m_table->setModel(m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setTabKeyNavigation(false);
  m_table->setShowGrid(false);
  m_table->setWordWrap(false);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 7);
  auto* header = m_table->horizontalHeader();
  header->setHighlightSections(false);
  header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  header->setStretchLastSection(true);
  const int letter = fontMetrics().averageCharWidth();
  const int widths[] = {25, 44, 15, 16};
  for (int i = 0; i < 4; ++i) m_table->setColumnWidth(i, widths[i] * letter);
  layout->addWidget(m_table, 1);
  m_detail = new QLabel(page);
  m_detail->setObjectName(QStringLiteral("stepDetail"));
  m_detail->setAccessibleName(tr("The chosen step"));
  m_detail->setWordWrap(true);
  m_detail->setTextFormat(Qt::RichText);
  m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  m_detail->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  m_detail->setMinimumHeight(fontMetrics().lineSpacing() * 9);
  layout->addWidget(m_detail);
  m_pages->addWidget(page);
  all->addWidget(m_pages, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  m_record = buttons->addButton(tr("&Record this step…"), QDialogButtonBox::ActionRole);
  m_record->setObjectName(QStringLiteral("recordStep"));
  m_file = new widgets::ListFile(m_hub, m_table, [this] { return tr("Stacks made"); }, {});
  auto* pdf = buttons->addButton(tr("Save as &PDF…"), QDialogButtonBox::ActionRole);
  auto* csv = buttons->addButton(tr("Save as &CSV…"), QDialogButtonBox::ActionRole);
  connect(pdf, &QPushButton::clicked, m_file, &widgets::ListFile::savePdf);
  connect(csv, &QPushButton::clicked, m_file, &widgets::ListFile::saveCsv);
  for (auto* each : {m_record, pdf, csv}) each->setAutoDefault(false);
  all->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_record, &QPushButton::clicked, this, &StacksDialog::record);
  connect(m_table, &QTableView::doubleClicked, this, &StacksDialog::record);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &StacksDialog::showChosen);
  connect(&m_hub, &widgets::SeasonHub::changed, this, &StacksDialog::again);
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, &StacksDialog::again);
  again();
}

StacksDialog::~StacksDialog() {
  m_hub.forecasts().abandon(work());
}

void StacksDialog::again() {
  m_hub.forecasts().abandon(work());
  if (!m_hub.isOpen()) {
    take({});
    return;
  }
  m_busy = true;
  if (m_stacks.empty()) {
    m_sentence->setText(tr("Looking through the records…"));
    m_pages->setCurrentIndex(0);
  }
  planning::StackFollowAsk ask;
  ask.today = m_hub.workingDate();
  m_hub.forecasts().beside(work(),
                           [this, ask](const apiary::Season& season, base::Progress& progress) {
                             auto stacks = planning::stacksMade(season, ask, 1, progress);
                             return [this, stacks = std::move(stacks)] { take(stacks); };
                           });
}

void StacksDialog::take(std::vector<planning::MadeStack> stacks) {
  const auto before = current();
  std::optional<base::HiveId> wanted = m_wanted;
  if (!wanted && before && before->stack < m_stacks.size()) {
    wanted = m_stacks[before->stack].hive;
  }
  m_wanted.reset();
  m_busy = false;
  m_stacks = std::move(stacks);
  m_lines.clear();
  std::vector<TextTable::Line> lines;
  for (std::size_t s = 0; s < m_stacks.size(); ++s) {
    const auto& stack = m_stacks[s];
    for (std::size_t i = 0; i < stack.steps.size(); ++i) {
      const auto& step = stack.steps[i];
      TextTable::Line line;
      line.cells = {
          i == 0 ? tr("%1 over %2").arg(qs(stack.upper.str()), qs(stack.lower.str())) : QString(),
          adapt::words(planning::stepName(step.kind)), stepStateText(step), whenText(step),
          adapt::words(step.why)};
      line.strong = stack.next == i;
      line.hive = stack.hive;
      lines.push_back(std::move(line));
      m_lines.push_back({s, i});
    }
  }
  m_model->setLines(std::move(lines));
  if (m_stacks.empty()) {
    m_sentence->setText(
        tr("No colony was set over another in the last five months. A stack that "
           "is recorded shows here with its steps: paper, upper queen, parting, "
           "own stand."));
    m_pages->setCurrentIndex(0);
  } else {
    m_pages->setCurrentIndex(1);
    choose(wanted.value_or(m_stacks.front().hive));
    m_table->setFocus();
  }
  showChosen();
}

void StacksDialog::choose(const base::HiveId& hive) {
  if (m_busy) {
    m_wanted = hive;
    return;
  }
  for (std::size_t n = 0; n < m_lines.size(); ++n) {
    const auto& stack = m_stacks[m_lines[n].stack];
    if (stack.hive != hive && stack.newHive != hive) continue;
    if (stack.next && m_lines[n].step != *stack.next) continue;
    m_table->setCurrentIndex(m_model->index(static_cast<int>(n), 0));
    return;
  }
  if (!m_lines.empty() && !m_table->currentIndex().isValid()) {
    m_table->setCurrentIndex(m_model->index(0, 0));
  }
}

std::optional<StacksDialog::At> StacksDialog::current() const {
  const int row = m_table->currentIndex().row();
  if (row < 0 || static_cast<std::size_t>(row) >= m_lines.size()) return std::nullopt;
  return m_lines[static_cast<std::size_t>(row)];
}

QString StacksDialog::whyNotRecord() const {
  const auto at = current();
  if (!at) return tr("Choose a step first.");
  const auto& stack = m_stacks[at->stack];
  const auto& step = stack.steps[at->step];
  if (step.doneOn) return tr("This step is recorded. Withdraw its record in Hive to change it.");
  if (step.state == planning::StepState::Passed) return tr("This step is not asked for any more.");
  return {};
}

void StacksDialog::showChosen() {
  const QString why = whyNotRecord();
  m_record->setEnabled(why.isEmpty());
  m_record->setToolTip(why);
  const auto at = current();
  if (!at) {
    m_detail->clear();
    return;
  }
  const auto& stack = m_stacks[at->stack];
  const auto& step = stack.steps[at->step];
  QString html =
      QStringLiteral("<b>%1: %2</b>")
          .arg(tr("%1 over %2 in hive %3")
                   .arg(qs(stack.upper.str()), qs(stack.lower.str()), qs(stack.hive.str()))
                   .toHtmlEscaped(),
               adapt::words(planning::stepName(step.kind)).toHtmlEscaped());
  const auto add = [&](const QString& text) {
    html += QStringLiteral("<br>") + text.toHtmlEscaped();
  };
  add(adapt::words(step.why));
  if (!step.doneOn && step.state != planning::StepState::Passed) {
    add(tr("Window %1 to %2.").arg(adapt::dateText(step.earliest), adapt::dateText(step.latest)));
    for (const auto& m : planning::stepAdvice(step.kind)) add(adapt::words(m));
    if (step.task) add(tr("Recording it ticks its planned task off."));
  }
  for (const auto& m : step.cautions) add(tr("Caution: %1").arg(adapt::words(m)));
  m_detail->setText(html);
}

void StacksDialog::record() {
  const auto at = current();
  if (!at || !whyNotRecord().isEmpty()) return;
  StackStepDialog dialog(m_hub, m_stacks[at->stack], m_stacks[at->stack].steps[at->step], this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

}  // namespace outyard::pairs
