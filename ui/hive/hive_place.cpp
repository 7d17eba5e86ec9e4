// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/hive_place.h"

#include <QAction>
#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QTabWidget>
#include <QToolBar>
#include <QToolButton>
#include <QVBoxLayout>
#include <map>

#include "core/sheet/marks.h"
#include "core/sheet/walking_order.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/charts/course_panel.h"
#include "ui/charts/course_view.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/estimate_words.h"
#include "ui/hive/hive_actions.h"
#include "ui/hive/hive_page.h"
#include "ui/hive/journal_model.h"
#include "ui/hive/journal_panel.h"
#include "ui/hive/queen_dialogs.h"
#include "ui/hive/record_words.h"
#include "ui/hive/stack_board.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/task_actions.h"
#include "ui/widgets/theme.h"

namespace outyard::hive {
namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

HivePlace::HivePlace(widgets::SeasonHub& hub, QWidget* parent) : Place(parent), m_hub(hub) {
  setObjectName(QStringLiteral("hivePlace"));
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 12, 8);
  makeHead(*all);
  m_pages = new QStackedWidget(this);
  m_empty = new QLabel(m_pages);
  m_empty->setObjectName(QStringLiteral("emptySentence"));
  m_empty->setAlignment(Qt::AlignCenter);
  m_empty->setWordWrap(true);
  m_pages->addWidget(m_empty);
  auto* page = new QWidget(m_pages);
  auto* pageLayout = new QVBoxLayout(page);
  pageLayout->setContentsMargins(0, 0, 0, 0);
  makeMiddle(*pageLayout);
  m_pages->addWidget(page);
  all->addWidget(m_pages, 1);

  connect(&m_hub, &widgets::SeasonHub::changed, this, [this] {
    fillChooser();
    showHive();
  });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    fillChooser();
    showHive();
  });
  connect(&m_hub, &widgets::SeasonHub::shownDateChanged, this, [this] {
    fillChooser();
    showHive();
  });
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, &HivePlace::showHive);
  fillChooser();
  showHive();
}

HivePlace::~HivePlace() = default;

QString HivePlace::title() const {
  return tr("Hive");
}

QIcon HivePlace::icon() const {
  return widgets::ownIcon(QStringLiteral("hive"), palette());
}

void HivePlace::makeHead(QVBoxLayout& to) {
  auto* line = new QHBoxLayout;
  m_title = new QLabel(this);
  m_title->setObjectName(QStringLiteral("hiveTitle"));
  QFont big = m_title->font();
  big.setPointSizeF(big.pointSizeF() * 1.5);
  big.setBold(true);
  m_title->setFont(big);
  line->addWidget(m_title);
  m_subtitle = new QLabel(this);
  m_subtitle->setObjectName(QStringLiteral("hiveSubtitle"));
  m_subtitle->setTextFormat(Qt::PlainText);
  line->addWidget(m_subtitle, 1);
  m_previous = new QAction(tr("&Previous hive"), this);
  m_previous->setShortcut(QKeySequence(Qt::ALT | Qt::Key_PageUp));
  m_next = new QAction(tr("Ne&xt hive"), this);
  m_next->setShortcut(QKeySequence(Qt::ALT | Qt::Key_PageDown));
  m_previous->setObjectName(QStringLiteral("previousHive"));
  m_next->setObjectName(QStringLiteral("nextHive"));
  connect(m_previous, &QAction::triggered, this, [this] { step(-1); });
  connect(m_next, &QAction::triggered, this, [this] { step(1); });
  m_chooser = new QComboBox(this);
  m_chooser->setObjectName(QStringLiteral("hiveChooser"));
  m_chooser->setAccessibleName(tr("Hive: type a number to find it"));
  m_chooser->setEditable(true);
  m_chooser->setInsertPolicy(QComboBox::NoInsert);
  m_chooser->setMinimumContentsLength(22);
  m_chooser->completer()->setFilterMode(Qt::MatchContains);
  m_chooser->completer()->setCompletionMode(QCompleter::PopupCompletion);
  m_chooser->lineEdit()->setPlaceholderText(tr("Find a hive"));
  connect(m_chooser, &QComboBox::activated, this, [this](int index) {
    if (index >= 0) m_hub.selectHive(m_order.at(static_cast<std::size_t>(index)));
  });
  connect(m_chooser->lineEdit(), &QLineEdit::returnPressed, this, &HivePlace::chooseTyped);
  for (QAction* action : {m_previous, m_next}) {
    action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    addAction(action);
    auto* button = new QToolButton(this);
    button->setDefaultAction(action);
    button->setArrowType(action == m_previous ? Qt::LeftArrow : Qt::RightArrow);
    button->setAccessibleName(QString(action->text()).remove(u'&'));
    button->setFocusPolicy(Qt::TabFocus);
    if (action == m_next) line->addWidget(m_chooser);
    line->addWidget(button);
  }
  to.addLayout(line);

  m_actions = new HiveActions(m_hub, *this);
  m_queens = new QueenActions(m_hub, *this, *m_actions);
  auto* bar = new QToolBar(tr("What to record"), this);
  bar->setToolButtonStyle(Qt::ToolButtonTextOnly);
  const auto work = workActions();
  bar->addActions(work);
  for (QAction* action : work) {
    auto* button = qobject_cast<QToolButton*>(bar->widgetForAction(action));
    if (!button) continue;
    button->setFocusPolicy(Qt::TabFocus);
    if (action->menu()) button->setPopupMode(QToolButton::InstantPopup);
  }
  to.addWidget(bar);
  m_colonies = new QTabBar(this);
  m_colonies->setObjectName(QStringLiteral("colonies"));
  m_colonies->setAccessibleName(tr("Colonies of this hive"));
  m_colonies->setExpanding(false);
  connect(m_colonies, &QTabBar::currentChanged, this, [this](int index) {
    if (index < 0) return;
    auto selection = m_hub.selection();
    selection.colony = base::ColonyId(m_colonies->tabData(index).toString().toStdString());
    m_hub.select(selection);
  });
  to.addWidget(m_colonies);
}

void HivePlace::makeMiddle(QVBoxLayout& to) {
  auto* split = new QSplitter(Qt::Vertical, this);
  auto* upper = new QSplitter(Qt::Horizontal, split);
  auto* left = new QWidget(upper);
  auto* leftLayout = new QVBoxLayout(left);
  leftLayout->setContentsMargins(0, 0, 8, 0);
  m_board = new StackBoard(m_hub, left);
  leftLayout->addWidget(m_board, 1);
  m_stackNote = new QLabel(left);
  m_stackNote->setWordWrap(true);
  leftLayout->addWidget(m_stackNote);
  leftLayout->addWidget(new ContentLegend(false, left));
  auto* area = new QScrollArea(upper);
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  m_facts = new QLabel(area);
  m_facts->setObjectName(QStringLiteral("facts"));
  m_facts->setAccessibleName(tr("What is known of the colony"));
  m_facts->setTextFormat(Qt::RichText);
  m_facts->setWordWrap(true);
  m_facts->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  m_facts->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  area->setWidget(m_facts);
  upper->addWidget(left);
  upper->addWidget(area);
  upper->setStretchFactor(0, 1);
  upper->setStretchFactor(1, 1);
  upper->setSizes({600, 600});
  m_journal = new JournalPanel(m_hub, split);
  split->addWidget(upper);
  split->addWidget(m_journal);
  split->setStretchFactor(0, 3);
  split->setStretchFactor(1, 2);
  split->setSizes({430, 270});
  split->setChildrenCollapsible(false);
  m_tabs = new QTabWidget(this);
  m_tabs->setObjectName(QStringLiteral("hiveTabs"));
  m_tabs->setDocumentMode(true);
  m_tabs->addTab(split, tr("Stack and journal"));
  m_course = new charts::CoursePanel(m_hub);
  m_tabs->addTab(m_course, tr("Course"));
  m_tabs->setTabToolTip(1, tr("Bees, brood, stores and mites over time, as seen and as expected"));
  m_showCourse = new QAction(tr("Show the &course"), this);
  m_showCourse->setObjectName(QStringLiteral("showCourse"));
  m_showCourse->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C));
  m_showCourse->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  m_showCourse->setStatusTip(tr("Bees, brood, stores and mites over time; press again to go back"));
  addAction(m_showCourse);
  connect(m_showCourse, &QAction::triggered, this,
          [this] { m_tabs->setCurrentIndex(m_tabs->currentIndex() == 1 ? 0 : 1); });
  to.addWidget(m_tabs, 1);
}

void HivePlace::fillChooser() {
  const QSignalBlocker quiet(m_chooser);
  m_order.clear();
  m_chooser->clear();
  const auto& season = m_hub.season();
  for (const auto& [key, yard] : season.table<apiary::Yard>()) {
    const auto& hives = m_hub.hives(yard.yard);
    const auto& judgements = m_hub.judgements(yard.yard);
    const QString yardName = yard.name.empty() ? qs(key) : qs(yard.name);
    for (const auto* hive : sheet::walkingOrder(season, yard.yard, hives, judgements)) {
      m_order.push_back(hive->hive);
      m_chooser->addItem(tr("%1, %2").arg(qs(hive->hive.str()), yardName));
    }
  }
}

void HivePlace::showHive() {
  const auto& chosen = m_hub.selection().hive;
  const auto* state = chosen ? m_hub.hive(*chosen) : nullptr;
  int at = -1;
  for (std::size_t i = 0; chosen && i < m_order.size(); ++i) {
    if (m_order[i] == *chosen) at = static_cast<int>(i);
  }
  {
    const QSignalBlocker quiet(m_chooser);
    m_chooser->setCurrentIndex(at);
    if (at < 0) m_chooser->clearEditText();
  }
  m_previous->setEnabled(!m_order.empty());
  m_next->setEnabled(!m_order.empty());
  m_actions->refresh();
  m_queens->refresh();
  m_journal->reload();
  if (!state) {
    m_title->setText(tr("Hive"));
    m_subtitle->clear();
    m_colonies->setVisible(false);
    m_pages->setCurrentIndex(0);
    if (!m_hub.isOpen()) {
      m_empty->setText(tr("No season is open. Open or make one in the File menu."));
    } else if (m_order.empty()) {
      m_empty->setText(tr("No hive stands in any yard on %1. Add one on the map of its yard, or "
                          "read tables in from the File menu.")
                           .arg(adapt::dateText(m_hub.shownDate())));
    } else if (chosen) {
      m_empty->setText(tr("%1 does not stand in any yard on %2. Choose another day or another "
                          "hive.")
                           .arg(qs(chosen->str()), adapt::dateText(m_hub.shownDate())));
    } else {
      m_empty->setText(
          tr("Choose a hive: type its number above, or go through the yards in "
             "walking order with Alt+Page Down."));
    }
    return;
  }
  m_pages->setCurrentIndex(1);
  {
    const QSignalBlocker quiet(m_colonies);
    while (m_colonies->count() > 0) m_colonies->removeTab(0);
    for (const auto& c : state->colonies) {
      const int tab = m_colonies->addTab(colonyTabText(c));
      m_colonies->setTabData(tab, qs(c.colony.str()));
      if (m_hub.selection().colony == c.colony) m_colonies->setCurrentIndex(tab);
    }
    m_colonies->setVisible(state->stacked());
  }
  const auto* yard = m_hub.season().yard(state->yard);
  m_title->setText(qs(state->hive.str()));
  QStringList under;
  under << (yard && !yard->name.empty() ? qs(yard->name) : qs(state->yard.str()));
  if (at >= 0) {
    int place = 0, count = 0;
    for (const auto& id : m_order) {
      const auto* other = m_hub.hive(id);
      if (!other || other->yard != state->yard) continue;
      ++count;
      if (id == state->hive) place = count;
    }
    under << tr("%1 of %2 on the walk").arg(place).arg(count);
  }
  under << (m_hub.showsToday() ? tr("as of %1").arg(adapt::dateText(m_hub.shownDate()))
                               : tr("as it stood on %1").arg(adapt::dateText(m_hub.shownDate())));
  m_subtitle->setText(under.join(QStringLiteral("  ·  ")));
  m_board->showHive(*state, stackSentence(m_hub.season(), *state));
  m_stackNote->setText(stackNote(m_hub.season(), *state, m_hub.shownDate()));
  showFacts(*state);
  showCourse(*state);
}

void HivePlace::showCourse(const apiary::HiveState& state) {
  const auto& colony = m_hub.selection().colony;
  if (!colony || !state.colony(*colony)) {
    m_course->clear(
        tr("No colony lives in %1: there is nothing to expect.").arg(qs(state.hive.str())));
    return;
  }
  JournalModel journal;
  journal.load(m_hub.season(), state.hive, adapt::Units::from(m_hub.settings()));
  std::vector<charts::Tick> ticks;
  for (int row = 0; row < journal.rowCount(); ++row) {
    const JournalLine& line = journal.line(row);
    if (line.counts()) ticks.push_back({line.date, kindLetter(line.kind), line.words});
  }
  const QString title = state.stacked()
                            ? tr("%1, colony %2").arg(qs(state.hive.str()), qs(colony->str()))
                            : qs(state.hive.str());
  m_course->showColony(*colony, title, std::move(ticks));
}

void HivePlace::showFacts(const apiary::HiveState& state) {
  const auto& wanted = m_hub.selection().colony;
  m_facts->setText(factsHtml(m_hub, state, wanted));
}

void HivePlace::chooseTyped() {
  const QString typed = m_chooser->lineEdit()->text().trimmed();
  int found = m_chooser->findText(typed, Qt::MatchFixedString);
  for (std::size_t i = 0; found < 0 && i < m_order.size(); ++i) {
    if (qs(m_order[i].str()).compare(typed, Qt::CaseInsensitive) == 0) found = static_cast<int>(i);
  }
  if (found < 0) found = m_chooser->findText(typed, Qt::MatchContains);
  if (found >= 0) m_hub.selectHive(m_order.at(static_cast<std::size_t>(found)));
}

void HivePlace::step(int by) {
  if (m_order.empty()) return;
  const int count = static_cast<int>(m_order.size());
  int at = by > 0 ? -1 : count;
  for (int i = 0; i < count; ++i) {
    if (m_hub.selection().hive == m_order[static_cast<std::size_t>(i)]) at = i;
  }
  m_hub.selectHive(m_order[static_cast<std::size_t>((at + by + count) % count)]);
}

void HivePlace::printTo(QPagedPaintDevice& device) {
  if (m_tabs->currentIndex() == 1 && m_course->view().data()) {
    m_course->printTo(device);
    return;
  }
  const auto& chosen = m_hub.selection().hive;
  const auto* state = chosen ? m_hub.hive(*chosen) : nullptr;
  printHivePage(device, m_hub, state, m_journal->model());
}

QList<QAction*> HivePlace::workActions() const {
  QList<QAction*> out = m_actions->all();
  // They stand in the submenus of queens and colonies.
  out.removeOne(m_actions->named(QStringLiteral("queen")));
  out.removeOne(m_actions->named(QStringLiteral("death")));
  out << m_queens->queenMenu()->menuAction() << m_queens->colonyMenu()->menuAction();
  return out;
}

QList<QAction*> HivePlace::menuActions() const {
  QList<QAction*> out{m_previous, m_next};
  auto* line = new QAction(const_cast<HivePlace*>(this));
  line->setSeparator(true);
  out << line << workActions();
  auto* combs = new QAction(const_cast<HivePlace*>(this));
  combs->setSeparator(true);
  out << combs << m_board->actions();
  auto* course = new QAction(const_cast<HivePlace*>(this));
  course->setSeparator(true);
  out << course << m_showCourse << m_course->actions();
  out << m_journal->actions();
  return out;
}

void HivePlace::begin(const QString& task) {
  if (const auto id = widgets::taskOfBegin(task)) {
    if (const auto* planned = m_hub.season().find<apiary::Task>(id->str())) doTask(*planned);
    return;
  }
  const QString name = task == QStringLiteral("inspection") ? QStringLiteral("inspect") : task;
  auto* action = m_actions->named(name);
  if (!action) action = m_queens->named(name);
  if (action) action->trigger();
}

/// The dialog that records the work of a planned task.
void HivePlace::doTask(const apiary::Task& task) {
  static const std::map<std::string, QString> kActions{
      {"open", QStringLiteral("inspect")},
      {"look", QStringLiteral("inspect")},
      {"fed", QStringLiteral("feed")},
      {"treated", QStringLiteral("treat")},
      {"box_added", QStringLiteral("addBox")},
      {"supered", QStringLiteral("addBox")},
      {"reversed", QStringLiteral("reverse")},
      {"queen_introduced", QStringLiteral("giveQueen")},
      {"queen_removed", QStringLiteral("queenGone")}};
  const auto known = kActions.find(task.kind);
  if (known == kActions.end()) return;
  for (WorkActions* work : std::initializer_list<WorkActions*>{m_actions, m_queens}) {
    auto* action = work->named(known->second);
    if (!action) continue;
    work->refresh();
    if (action->isEnabled()) {
      work->doTask(task, *action);
    } else {
      m_hub.dialogs().failure(this, tr("The work cannot be recorded now"), action->statusTip());
    }
    return;
  }
}

void HivePlace::takeFocus() {
  if (m_hub.selection().hive) {
    m_journal->setFocus();
  } else {
    m_chooser->setFocus();
  }
}

}  // namespace outyard::hive
