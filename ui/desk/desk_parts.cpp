// SPDX-License-Identifier: GPL-3.0-or-later
// The widgets of the desk and their actions.
#include <QAction>
#include <QComboBox>
#include <QHBoxLayout>
#include <QItemSelectionModel>
#include <QLabel>
#include <QMenu>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <map>

#include "ui/desk/day_legend.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_place.h"
#include "ui/desk/desk_tables.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/task_actions.h"

namespace outyard::desk {

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
  m_showLabel = new QLabel(tr("Sho&w"));
  m_show = new QComboBox;
  m_show->setObjectName(QStringLiteral("show"));
  m_show->setAccessibleName(tr("Which work to show"));
  m_show->setToolTip(tr("Which work the list by yard shows"));
  m_show->addItems({tr("all work"), tr("overdue"), tr("not planned yet")});
  m_showLabel->setBuddy(m_show);
  line->addWidget(m_showLabel);
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
  m_empty = new widgets::EmptyPage(*this);
  connect(m_empty, &widgets::EmptyPage::again, this, &DeskPlace::refresh);
  m_pages->addWidget(m_empty);

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
  // Work is chosen in one list at a time: what is planned is never out of sight.
  for (auto* list : {m_yards, m_risk}) {
    connect(list, &DeskList::chosenChanged, this, [this, list] {
      auto* other = list == m_yards ? m_risk : m_yards;
      if (list->selectionModel()->hasSelection()) other->clearSelection();
    });
  }
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
  m_tasks = new widgets::TaskActions(m_hub, *this, {}, [this] { return plannedChosen(); });
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
    list->addAction(m_planAction);
    list->addActions(m_tasks->actions());
    list->addAction(m_openAction);
  }
  makeFiles();
  refreshActions();
}

/// Each list as PDF and CSV, in the menu of the place and in its own; the keys save the list that
/// has the keyboard.
void DeskPlace::makeFiles() {
  m_saveMenu = new QMenu(tr("Save a li&st"), this);
  m_saveMenu->setObjectName(QStringLiteral("saveMenu"));
  const auto add = [this](DeskList* list, const QString& name, const QString& what,
                          widgets::ListFile::Lists lists) {
    auto* file = new widgets::ListFile(m_hub, list, {});
    file->setObjectName(name);
    file->setName(what);
    file->setLists(std::move(lists));
    file->dropKeys();
    m_saveMenu->addActions(file->actions());
    return file;
  };
  std::map<DeskList*, widgets::ListFile*> files;
  using Tables = std::vector<widgets::ListTable>;
  const auto show = [this] { return static_cast<Show>(m_show->currentIndex()); };
  files[m_yards] = add(m_yards, QStringLiteral("workFile"), tr("the work by yard"),
                       [this, show] { return Tables{workTable(maker(), show())}; });
  files[m_risk] = add(m_risk, QStringLiteral("riskFile"), tr("the hives at risk"),
                      [this] { return Tables{riskTable(maker())}; });
  // The strips of days stand in the list by yard.
  add(m_yards, QStringLiteral("daysFile"), tr("the warm days"),
      [this] { return Tables{daysTable(maker())}; });
  files[m_gear] = add(m_gear, QStringLiteral("gearFile"), tr("the gear that is short"),
                      [this] { return Tables{gearTable(maker())}; });
  files[m_looks] = add(m_looks, QStringLiteral("looksFile"), tr("what surprised"),
                       [this] { return Tables{looksTable(maker())}; });
  const auto chosen = [this, files] {
    for (const auto& [list, file] : files) {
      if (list->hasFocus()) return file;
    }
    return files.at(m_yards);
  };
  m_saveMenu->addSeparator();
  m_saveMenu->addAction(
      make(QStringLiteral("savePdf"), tr("Save the list with the &keyboard as PDF…"),
           QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L), [chosen] { chosen()->savePdf(); }));
  m_saveMenu->addAction(
      make(QStringLiteral("saveCsv"), tr("Save the list with the keyboard as CS&V…"),
           QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_V), [chosen] { chosen()->saveCsv(); }));
  m_allFile = new widgets::ListFile(m_hub, m_yards, {}, {}, widgets::ListFile::Menu::Own);
  m_allFile->setObjectName(QStringLiteral("allFile"));
  m_allFile->setLists([this, show] { return everyTable(maker(), show()); });
  m_allFile->pdfAction()->setText(tr("Save &all lists as one PDF…"));
  m_allFile->pdfAction()->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_A));
  m_allFile->pdfAction()->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  m_yards->removeAction(m_allFile->pdfAction());
  m_yards->removeAction(m_allFile->csvAction());
  addAction(m_allFile->pdfAction());
  m_saveMenu->addAction(m_allFile->pdfAction());
}

}  // namespace outyard::desk
