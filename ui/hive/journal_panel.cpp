// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/journal_panel.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QSplitter>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/hive/inspection_form.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

JournalPanel::JournalPanel(widgets::SeasonHub& hub, QWidget* parent) : QWidget(parent), m_hub(hub) {
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  auto* top = new QHBoxLayout;
  auto* title = new QLabel(tr("Journal"), this);
  QFont bold = title->font();
  bold.setBold(true);
  title->setFont(bold);
  top->addWidget(title);
  m_kind = new QComboBox(this);
  m_kind->setObjectName(QStringLiteral("journalKind"));
  m_kind->setAccessibleName(tr("Kind of record shown"));
  m_kind->addItem(tr("all kinds"), -1);
  for (int k = 0; k < kJournalKinds; ++k) {
    const auto kind = static_cast<JournalKind>(k);
    m_kind->addItem(QStringLiteral("%1  %2").arg(kindLetter(kind)).arg(kindName(kind)), k);
  }
  top->addWidget(m_kind);
  m_all = new QCheckBox(tr("also corrected and withdrawn"), this);
  m_all->setObjectName(QStringLiteral("journalAll"));
  top->addWidget(m_all);
  top->addStretch();
  m_correct = new QAction(tr("&Correct…"), this);
  m_correct->setObjectName(QStringLiteral("correct"));
  m_withdraw = new QAction(tr("&Withdraw…"), this);
  m_withdraw->setObjectName(QStringLiteral("withdraw"));
  m_withdraw->setShortcut(QKeySequence(Qt::Key_Delete));
  m_withdraw->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  for (QAction* action : {m_correct, m_withdraw}) {
    auto* button = new QToolButton(this);
    button->setDefaultAction(action);
    button->setFocusPolicy(Qt::TabFocus);
    top->addWidget(button);
  }
  all->addLayout(top);

  auto* split = new QSplitter(Qt::Horizontal, this);
  m_model = new JournalModel(this);
  m_table = new QTableView(split);
  m_table->setObjectName(QStringLiteral("journal"));
  m_table->setAccessibleName(tr("Journal of the hive"));
  m_table->setModel(m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setTabKeyNavigation(false);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
  m_table->setShowGrid(false);
  m_table->setAlternatingRowColors(true);
  m_table->setWordWrap(false);
  auto* header = m_table->horizontalHeader();
  header->setHighlightSections(false);
  header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  header->setSectionResizeMode(JournalModel::kDate, QHeaderView::ResizeToContents);
  header->setSectionResizeMode(JournalModel::kKind, QHeaderView::ResizeToContents);
  header->setSectionResizeMode(JournalModel::kWords, QHeaderView::Stretch);
  header->setSectionResizeMode(JournalModel::kWho, QHeaderView::ResizeToContents);
  m_table->addAction(m_withdraw);
  m_table->addAction(m_correct);
  m_lists = new widgets::ListFile(
      m_hub, m_table,
      [this] {
        const auto& hive = m_hub.selection().hive;
        return hive ? tr("Journal of %1").arg(QString::fromStdString(hive->str())) : tr("Journal");
      },
      [this] { return m_kind->currentText(); });
  auto* area = new QScrollArea(split);
  area->setWidgetResizable(true);
  area->setMinimumWidth(240);
  m_detail = new QLabel(area);
  m_detail->setObjectName(QStringLiteral("journalDetail"));
  m_detail->setAccessibleName(tr("The chosen record"));
  m_detail->setWordWrap(true);
  m_detail->setTextFormat(Qt::RichText);
  m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  m_detail->setMargin(6);
  m_detail->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  area->setWidget(m_detail);
  split->addWidget(m_table);
  split->addWidget(area);
  split->setStretchFactor(0, 3);
  split->setStretchFactor(1, 1);
  split->setSizes({860, 320});
  all->addWidget(split, 1);

  connect(m_kind, &QComboBox::currentIndexChanged, this, [this] {
    const int k = m_kind->currentData().toInt();
    m_model->setKind(k < 0 ? std::nullopt : std::optional(static_cast<JournalKind>(k)));
    showDetail();
  });
  connect(m_all, &QCheckBox::toggled, this, [this](bool on) {
    m_model->setShowAll(on);
    showDetail();
  });
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &JournalPanel::showDetail);
  connect(m_correct, &QAction::triggered, this, &JournalPanel::correct);
  connect(m_withdraw, &QAction::triggered, this, &JournalPanel::withdraw);
  connect(m_table, &QTableView::doubleClicked, this, [this] {
    if (m_correct->isEnabled()) correct();
  });
  showDetail();
}

QList<QAction*> JournalPanel::actions() const {
  return QList<QAction*>{m_correct, m_withdraw} + m_lists->actions();
}

void JournalPanel::reload() {
  std::optional<base::RecordId> before;
  if (const auto* line = chosen()) before = line->record;
  m_model->load(m_hub.season(), m_hub.selection().hive, adapt::Units::from(m_hub.settings()));
  int row = before ? m_model->rowOf(*before) : -1;
  if (row < 0 && m_model->rowCount() > 0) row = 0;
  if (row >= 0) m_table->setCurrentIndex(m_model->index(row, JournalModel::kWords));
  const int hidden = m_model->hiddenCount();
  m_all->setText(hidden == 0 ? tr("also corrected and withdrawn (none)")
                             : tr("also corrected and withdrawn (%1)").arg(hidden));
  m_all->setEnabled(hidden > 0);
  showDetail();
}

const JournalLine* JournalPanel::chosen() const {
  const auto index = m_table->currentIndex();
  if (!index.isValid() || index.row() >= m_model->rowCount()) return nullptr;
  return &m_model->line(index.row());
}

void JournalPanel::showDetail() {
  const JournalLine* line = chosen();
  QString whyNotCorrect, whyNotWithdraw;
  if (!line) {
    m_detail->setText(m_hub.selection().hive
                          ? (m_model->rowCount() == 0
                                 ? tr("Nothing is recorded here yet. Enter an inspection with "
                                      "Ctrl+I.")
                                 : tr("Choose a record to read all of it."))
                          : tr("Choose a hive to read its journal."));
    whyNotCorrect = whyNotWithdraw = tr("Choose a record first.");
  } else {
    QString html = QStringLiteral("<b>%1, %2</b><br>%3")
                       .arg(adapt::dateText(line->date).toHtmlEscaped(),
                            kindName(line->kind).toHtmlEscaped(), line->words.toHtmlEscaped());
    const auto row = m_hub.season().row(line->table, line->record.str());
    if (row) {
      html += QStringLiteral("<table cellspacing='4'>");
      for (const auto& [label, value] : detailOf(*row, adapt::Units::from(m_hub.settings()))) {
        html += QStringLiteral("<tr><td>%1</td><td><b>%2</b></td></tr>")
                    .arg(label.toHtmlEscaped(), value.toHtmlEscaped());
      }
      html += QStringLiteral("</table>");
    }
    if (line->table == apiary::TableId::Inspections) {
      const auto sides = m_hub.season().combSides(line->record).size();
      if (sides > 0) html += tr("%1 comb sides recorded, drawn in the stack above.").arg(sides);
    }
    m_detail->setText(html);
    if (line->withdrawn) {
      whyNotCorrect = whyNotWithdraw = tr("This record was withdrawn already.");
    } else if (line->corrected) {
      whyNotCorrect = whyNotWithdraw = tr("A later record stands in its place: use that one.");
    } else {
      if (line->table != apiary::TableId::Inspections) {
        whyNotCorrect =
            tr("Only looks are corrected in place. Withdraw this record and enter it "
               "again.");
      } else if (line->ofOtherHive) {
        whyNotCorrect = tr("Correct it in the journal of its own hive.");
      }
      whyNotWithdraw = m_hub.isOpen()
                           ? m_hub.whyNot(*session::withdrawRecord(line->table, line->record))
                           : tr("No season is open.");
    }
  }
  m_correct->setEnabled(whyNotCorrect.isEmpty());
  m_correct->setToolTip(whyNotCorrect.isEmpty() ? tr("Correct this look") : whyNotCorrect);
  m_withdraw->setEnabled(whyNotWithdraw.isEmpty());
  m_withdraw->setToolTip(whyNotWithdraw.isEmpty() ? tr("Withdraw this record (Delete)")
                                                  : whyNotWithdraw);
}

void JournalPanel::correct() {
  const JournalLine* line = chosen();
  if (!line || !m_hub.selection().hive) return;
  InspectionForm form(m_hub, *m_hub.selection().hive, std::nullopt, this);
  form.correct(line->record);
  m_hub.dialogs().run(form);
}

void JournalPanel::withdraw() {
  const JournalLine* line = chosen();
  if (!line) return;
  const auto table = line->table;
  const auto record = line->record;
  const QString what = QStringLiteral("%1: %2").arg(adapt::dateText(line->date), line->words);
  if (!m_hub.dialogs().question(
          this, tr("Withdraw this record?"),
          tr("%1\n\nIt stays in the journal, struck through, and no longer counts. Undo brings it "
             "back.")
              .arg(what),
          tr("Withdraw"))) {
    return;
  }
  m_hub.execute(session::withdrawRecord(table, record), this);
}

}  // namespace outyard::hive
