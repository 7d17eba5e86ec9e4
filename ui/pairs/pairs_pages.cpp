// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QTabWidget>
#include <QTableView>
#include <QTextBrowser>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pairs/pair_chart.h"
#include "ui/pairs/pairs_map.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_place.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"

// The four pages of PairsPlace as they are built.
namespace outyard::pairs {

QTableView* PairsPlace::makeTable(TextTable& model, const QString& name, const QString& accessible,
                                  const std::vector<int>& widths, QWidget* parent) {
  auto* table = new QTableView(parent);
  table->setObjectName(name);
  table->setAccessibleName(accessible);
  table->setModel(&model);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->setTabKeyNavigation(false);
  table->setAlternatingRowColors(true);
  table->setShowGrid(false);
  table->setWordWrap(false);
  table->verticalHeader()->hide();
  table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 7);
  auto* header = table->horizontalHeader();
  header->setHighlightSections(false);
  header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  header->setStretchLastSection(true);
  // In letters of the font, so that a larger font does not cut the columns.
  const int letter = fontMetrics().averageCharWidth();
  for (std::size_t i = 0; i < widths.size(); ++i) {
    const int column = static_cast<int>(i);
    const QString head = model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    table->setColumnWidth(
        column, std::max(widths[i] * letter, fontMetrics().horizontalAdvance(head) + 3 * letter));
  }
  new widgets::ListFile(
      m_hub, table, [accessible] { return accessible; },
      [this] { return tr("%1, for %2").arg(m_yard->currentText(), m_date->text()); });
  return table;
}

QAction* PairsPlace::makeAction(const QString& name, const QString& text, const QKeySequence& key,
                                const std::function<void()>& run, QWidget* on) {
  auto* action = new QAction(text, this);
  action->setObjectName(name);
  action->setShortcut(key);
  action->setShortcutContext(Qt::WidgetShortcut);
  connect(action, &QAction::triggered, this, run);
  if (on) on->addAction(action);
  return action;
}

void PairsPlace::makeSteps() {
  // 1: who needs help
  auto* need = new QWidget(m_steps);
  auto* needLayout = new QVBoxLayout(need);
  m_needs = new TextTable(needHead(), this);
  m_needTable =
      makeTable(*m_needs, QStringLiteral("needs"),
                tr("Every colony with its judgement and the evidence"), {16, 28, 9, 28, 19}, need);
  m_needSum = new QLabel(need);
  m_needSum->setObjectName(QStringLiteral("needSum"));
  m_needSum->setWordWrap(true);
  needLayout->addWidget(m_needSum);
  needLayout->addWidget(m_needTable, 1);
  auto* needFoot = new QHBoxLayout;
  m_evidence = new QLabel(need);
  m_evidence->setWordWrap(true);
  m_evidence->setMinimumHeight(fontMetrics().lineSpacing() * 4);
  m_evidence->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  needFoot->addWidget(m_evidence, 1);
  m_overrule = new QPushButton(tr("&Overrule…"), need);
  m_overrule->setObjectName(QStringLiteral("overrule"));
  needFoot->addWidget(m_overrule, 0, Qt::AlignTop);
  needLayout->addLayout(needFoot);
  m_steps->addTab(need, tr("&1  Who needs help"));
  need->setFocusProxy(m_needTable);
  connect(m_overrule, &QPushButton::clicked, this, &PairsPlace::overrule);
  m_overruleAction = makeAction(
      QStringLiteral("overruleAction"), tr("Overrule judgement…"), QKeySequence(Qt::Key_O),
      [this] { overrule(); }, m_needTable);
  m_needTable->setContextMenuPolicy(Qt::ActionsContextMenu);
  connect(m_needTable->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &PairsPlace::showChosenPair);

  // 2: who can give
  auto* give = new QSplitter(Qt::Vertical, m_steps);
  m_gives = new TextTable(giveHead(), this);
  m_barred = new TextTable(barredHead(), this);
  const auto titled = [&](const QString& text, QWidget* table) {
    auto* box = new QWidget(give);
    auto* layout = new QVBoxLayout(box);
    layout->addWidget(new QLabel(text, box));
    table->setParent(box);
    layout->addWidget(table, 1);
    give->addWidget(box);
  };
  auto* giveTable = makeTable(*m_gives, QStringLiteral("gives"),
                              tr("Colonies that can give, what they spare and what they keep"),
                              {10, 7, 26, 15, 19, 21, 19, 18, 18}, give);
  titled(tr("Can give, and what each keeps:"), giveTable);
  titled(tr("Cannot, or not everything, and why:"),
         makeTable(*m_barred, QStringLiteral("barred"), tr("Colonies that are barred, and why"),
                   {16, 28}, give));
  give->setChildrenCollapsible(false);
  give->setFocusProxy(giveTable);
  m_steps->addTab(give, tr("&2  Who can give"));

  makePairs();

  // 4: when and with what
  m_when = new QTextBrowser(m_steps);
  m_when->setObjectName(QStringLiteral("when"));
  m_when->setAccessibleName(tr("When, and with what"));
  m_when->setOpenLinks(false);
  m_when->setTabChangesFocus(true);
  m_steps->addTab(m_when, tr("&4  When and with what"));
}

void PairsPlace::makePairs() {
  auto* pairs = new QWidget(m_steps);
  auto* pairLayout = new QVBoxLayout(pairs);
  auto* noteLine = new QHBoxLayout;
  m_noPairs = new QLabel(pairs);
  m_noPairs->setObjectName(QStringLiteral("noPairs"));
  m_noPairs->setWordWrap(true);
  noteLine->addWidget(m_noPairs, 1);
  m_firstDay = new QPushButton(pairs);
  m_firstDay->setObjectName(QStringLiteral("firstDay"));
  noteLine->addWidget(m_firstDay, 0, Qt::AlignTop);
  pairLayout->addLayout(noteLine);
  connect(m_firstDay, &QPushButton::clicked, this, &PairsPlace::goToFirstDay);

  auto* parts = new QSplitter(Qt::Vertical, pairs);
  parts->setObjectName(QStringLiteral("pairParts"));
  parts->setChildrenCollapsible(false);
  auto* upper = new QWidget(parts);
  auto* upperLayout = new QVBoxLayout(upper);
  upperLayout->setContentsMargins(0, 0, 0, 0);
  m_pairs = new TextTable(pairHead(), this);
  m_pairTable = makeTable(*m_pairs, QStringLiteral("pairs"), tr("The plan, one line a colony"),
                          {13, 17, 22, 10, 13, 27, 14, 15, 10, 34}, upper);
  m_pairTable->setContextMenuPolicy(Qt::ActionsContextMenu);
  // Head and four lines are always to be seen, whatever the font.
  m_pairTable->setMinimumHeight(m_pairTable->verticalHeader()->defaultSectionSize() * 6);
  upperLayout->addWidget(m_pairTable, 1);
  auto* tools = new QHBoxLayout;
  m_pinAction = makeAction(
      QStringLiteral("pin"), tr("Pin this (P)"), QKeySequence(Qt::Key_P), [this] { pin(); },
      m_pairTable);
  m_forbidAction = makeAction(
      QStringLiteral("forbid"), tr("Forbid this (F)"), QKeySequence(Qt::Key_F),
      [this] { forbid(); }, m_pairTable);
  m_secondAction = makeAction(
      QStringLiteral("second"), tr("Take the second best (S)"), QKeySequence(Qt::Key_S),
      [this] { takeSecond(); }, m_pairTable);
  m_allowAction = makeAction(
      QStringLiteral("allow"), tr("Allow all for this colony (A)"), QKeySequence(Qt::Key_A),
      [this] { allowAgain(); }, m_pairTable);
  m_freeAction = makeAction(
      QStringLiteral("free"), tr("Let go of all pins"), {}, [this] { letAllGo(); }, m_pairTable);
  m_exportAction = makeAction(
      QStringLiteral("exportCsv"), tr("Export the table…"), {}, [this] { exportTable(); },
      m_pairTable);
  for (QAction* action :
       {m_pinAction, m_forbidAction, m_secondAction, m_allowAction, m_freeAction, m_exportAction}) {
    auto* button = new QToolButton(upper);
    button->setDefaultAction(action);
    button->setFocusPolicy(Qt::TabFocus);
    tools->addWidget(button);
  }
  tools->addStretch();
  upperLayout->addLayout(tools);
  parts->addWidget(upper);

  auto* lower = new QSplitter(Qt::Horizontal, parts);
  lower->setChildrenCollapsible(false);
  auto* views = new QTabWidget(lower);
  views->setObjectName(QStringLiteral("pairViews"));
  m_map = new PairsMap(views);
  views->addTab(m_map, tr("On the &map"));
  m_chart = new PairChart(views);
  views->addTab(m_chart, tr("C&ourses"));
  lower->addWidget(views);
  // In a view that scrolls: in a large font the cautions need more room than there is.
  m_pairDetail = new QTextBrowser(lower);
  m_pairDetail->setObjectName(QStringLiteral("pairDetail"));
  m_pairDetail->setAccessibleName(tr("The chosen pair"));
  m_pairDetail->setOpenLinks(false);
  m_pairDetail->setTabChangesFocus(true);
  lower->addWidget(m_pairDetail);
  lower->setSizes({600, 440});
  lower->setStretchFactor(0, 3);
  lower->setStretchFactor(1, 2);
  parts->addWidget(lower);
  parts->setStretchFactor(0, 1);
  parts->setStretchFactor(1, 1);
  pairLayout->addWidget(parts, 1);
  pairs->setFocusProxy(m_pairTable);
  m_steps->addTab(pairs, tr("&3  Pairs"));
  connect(m_pairTable->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &PairsPlace::showChosenPair);
}

}  // namespace outyard::pairs
