// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_board.h"

#include <QAction>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/sheet/walking_order.h"
#include "ui/hive/hive_page.h"
#include "ui/hive/stack_table.h"
#include "ui/hive/stack_words.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

using widgets::StackPick;
using widgets::StackView;

namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QLabel* caption(const QString& text, QWidget* buddy, QVBoxLayout& to) {
  auto* label = new QLabel(text, buddy->parentWidget());
  label->setBuddy(buddy);
  to.addWidget(label);
  return label;
}

}  // namespace

StackBoard::StackBoard(widgets::SeasonHub& hub, QWidget* parent) : QWidget(parent), m_hub(hub) {
  setObjectName(QStringLiteral("stackBoard"));
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->setSpacing(4);
  auto* line = new QHBoxLayout;
  m_pages = new QStackedWidget(this);
  auto* drawings = new QWidget(m_pages);
  m_both = new QHBoxLayout(drawings);
  m_both->setContentsMargins(0, 0, 0, 0);
  m_views[0] = new StackView(drawings);
  m_views[0]->setObjectName(QStringLiteral("stack"));
  m_both->addWidget(m_views[0], 1);
  m_besidePanel = new QWidget(drawings);
  auto* side = new QVBoxLayout(m_besidePanel);
  side->setContentsMargins(0, 0, 0, 0);
  auto* head = new QHBoxLayout;
  m_besideTitle = new QLabel(m_besidePanel);
  head->addWidget(m_besideTitle, 1);
  auto* hide = new QToolButton(m_besidePanel);
  hide->setText(tr("Hide"));
  hide->setObjectName(QStringLiteral("hideBeside"));
  hide->setAccessibleName(tr("Hide the other hive"));
  connect(hide, &QToolButton::clicked, this, [this] { showBeside(std::nullopt); });
  head->addWidget(hide);
  side->addLayout(head);
  m_views[1] = new StackView(m_besidePanel);
  m_views[1]->setObjectName(QStringLiteral("stackBeside"));
  side->addWidget(m_views[1], 1);
  m_both->addWidget(m_besidePanel, 1);
  m_besidePanel->hide();
  m_pages->addWidget(drawings);
  m_table = new StackTable(this);
  m_tableView = new QTableView(m_pages);
  m_tableView->setObjectName(QStringLiteral("stackTable"));
  m_tableView->setAccessibleName(tr("Combs of the stack as a table"));
  m_tableView->setModel(m_table);
  m_tableView->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_tableView->setTabKeyNavigation(false);
  m_tableView->verticalHeader()->hide();
  m_tableView->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  m_pages->addWidget(m_tableView);
  line->addWidget(m_pages, 1);

  auto* strip = new QWidget(this);
  strip->setFixedWidth(190);
  auto* lists = new QVBoxLayout(strip);
  lists->setContentsMargins(0, 0, 0, 0);
  lists->setSpacing(2);
  m_heap = new QListWidget(strip);
  m_heap->setObjectName(QStringLiteral("gearHeap"));
  m_heap->setAccessibleName(tr("Gear heap: boxes and combs taken off, and fresh gear"));
  m_heap->setWordWrap(true);
  m_hives = new QListWidget(strip);
  m_hives->setObjectName(QStringLiteral("neighbours"));
  m_hives->setAccessibleName(tr("Other hives of this yard"));
  caption(tr("&Gear heap"), m_heap, *lists);
  lists->addWidget(m_heap, 3);
  caption(tr("&Other hives here"), m_hives, *lists);
  lists->addWidget(m_hives, 2);
  line->addWidget(strip);
  all->addLayout(line, 1);
  m_status = new QLabel(this);
  m_status->setObjectName(QStringLiteral("stackStatus"));
  m_status->setWordWrap(true);
  m_status->setMinimumHeight(3 * fontMetrics().lineSpacing());
  m_status->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  auto* foot = new QHBoxLayout;
  auto* work = new QToolButton(this);
  work->setText(tr("Combs and bo&xes") + QStringLiteral("   "));
  work->setObjectName(QStringLiteral("combWork"));
  work->setAccessibleName(tr("Combs and boxes: move, fill in"));
  work->setPopupMode(QToolButton::InstantPopup);
  foot->addWidget(work, 0, Qt::AlignTop);
  foot->addWidget(m_status, 1);
  all->addLayout(foot);

  makeActions();
  auto* menu = new QMenu(work);
  menu->addActions(m_actions);
  menu->setToolTipsVisible(true);
  work->setMenu(menu);
  connectView(0);
  connectView(1);
  m_views[1]->setAccessibleName(tr("Stack of the other hive"));
  connect(m_tableView->selectionModel(), &QItemSelectionModel::selectionChanged, this, [this] {
    std::vector<StackPick> picks;
    for (const auto& index : m_tableView->selectionModel()->selectedRows()) {
      picks.push_back(m_table->pick(index.row()));
    }
    m_views[0]->setPicked(std::move(picks));
  });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] { m_heapOf.reset(); });
  m_tableView->setContextMenuPolicy(Qt::ActionsContextMenu);
  m_tableView->addActions(m_actions);
  m_heap->viewport()->installEventFilter(this);
  m_heap->installEventFilter(this);
  connect(m_heap, &QListWidget::itemActivated, this, [this] { heapDialog(); });
  connect(m_heap, &QListWidget::currentItemChanged, this, &StackBoard::refreshActions);
  connect(m_hives, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
    showBeside(base::HiveId(item->data(kKeyRole).toString().toStdString()));
  });
  refreshActions();
}

StackBoard::~StackBoard() = default;

QAction* StackBoard::add(const char* name, const QString& text, const QKeySequence& key,
                         std::function<void()> run) {
  auto* action = new QAction(text, this);
  action->setObjectName(QLatin1String(name));
  action->setShortcut(key);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  connect(action, &QAction::triggered, this, std::move(run));
  addAction(action);
  m_actions << action;
  return action;
}

void StackBoard::makeActions() {
  add("moveComb", tr("Move &comb to…"), QKeySequence(Qt::CTRL | Qt::Key_M),
      [this] { moveDialog(); });
  add("moveBox", tr("Mo&ve box to…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_M), [this] {
    auto picks = m_views[static_cast<std::size_t>(activeView())]->picked();
    if (picks.empty()) return;
    m_views[static_cast<std::size_t>(activeView())]->setPicked({StackPick{picks.back().box, 0}});
    moveDialog();
  });
  add("fromHeap", tr("&Set in from the gear heap…"), {}, [this] { heapDialog(); });
  add("combSeen", tr("Comb as see&n…"), QKeySequence(Qt::CTRL | Qt::Key_E),
      [this] { combDialog(); });
  add("fillBox", tr("Whole bo&x as seen…"), {}, [this] { fillDialog(); });
  add("broodMiddle", tr("Brood to the mi&ddle…"), {}, [this] { middleDialog(); });
  auto* table = add("stackAsTable", tr("Combs as a &table"), {}, [] {});
  table->setCheckable(true);
  connect(table, &QAction::toggled, this,
          [this](bool on) { m_pages->setCurrentIndex(on ? 1 : 0); });
}

QList<QAction*> StackBoard::actions() const {
  return m_actions;
}

base::Date StackBoard::today() const {
  return m_hub.workingDate();
}

std::optional<base::HiveId> StackBoard::hiveOf(int which) const {
  return which == 0 ? m_hive : m_beside;
}

int StackBoard::activeView() const {
  return m_besidePanel->isVisible() && m_views[1]->hasFocus() ? 1 : 0;
}

void StackBoard::connectView(int which) {
  StackView* view = m_views[static_cast<std::size_t>(which)];
  view->setMovable(true);
  view->setDescriber([this, which](const StackPick& pick) {
    const auto& combs = m_combs[static_cast<std::size_t>(which)];
    return pick.slot > 0 ? combWords(combs, pick.box, pick.slot)
                         : boxWords(m_hub.season(), combs, pick.box);
  });
  connect(view, &StackView::pickedChanged, this, [this, view, which] {
    refreshActions();
    const auto& combs = m_combs[static_cast<std::size_t>(which)];
    if (view->picked().size() > 1) {
      say(tr("%1 combs chosen.").arg(view->picked().size()));
    } else if (!view->picked().empty()) {
      const StackPick at = view->picked().back();
      say(at.slot > 0 ? combWords(combs, at.box, at.slot)
                      : boxWords(m_hub.season(), combs, at.box));
    } else {
      say({});
    }
  });
  connect(view, &StackView::activated, this, [this, view] {
    if (view->picked().back().slot > 0) {
      combDialog();
    } else {
      moveDialog();
    }
  });
  connect(view, &StackView::menuAsked, this, [this](const QPoint& global) {
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->addActions(m_actions);
    menu->popup(global);
  });
  connect(view, &StackView::lifted, this, [this, which] { beginLift(liftOf(which)); });
  connect(view, &StackView::liftMoved, this, &StackBoard::aim);
  connect(view, &StackView::liftStepped, this,
          [this, which](int right, int up) { stepAim(which, right, up); });
  connect(view, &StackView::liftDropped, this, [this](const QPoint& global) {
    aim(global);
    drop();
  });
  connect(view, &StackView::liftSetDown, this, &StackBoard::drop);
  connect(view, &StackView::liftCancelled, this, [this] {
    endLift();
    say(tr("Everything stays where it was."));
  });
}

void StackBoard::showHive(const apiary::HiveState& hive, const QString& description) {
  endLift();
  const bool other = m_hive != hive.hive;
  if (other) {
    m_views[0]->setPicked({});
    say({});
  }
  m_hive = hive.hive;
  m_states[0] = hive;
  const auto day = m_hub.shownDate();
  m_combs[0] = apiary::combsOfHive(m_hub.season(), hive.hive, day);
  m_views[0]->setDrawing(sheet::stackDrawing(m_hub.season(), hive, day), description);
  {
    const QSignalBlocker quiet(m_tableView->selectionModel());
    m_table->load(m_combs[0]);
  }
  const auto* neighbour = m_beside ? m_hub.hive(*m_beside) : nullptr;
  showBeside(neighbour && neighbour->yard == hive.yard && neighbour->hive != hive.hive
                 ? m_beside
                 : std::nullopt);
  fillHeap();
  fillHives();
  refreshActions();
}

void StackBoard::showBeside(std::optional<base::HiveId> hive) {
  const auto* state = hive ? m_hub.hive(*hive) : nullptr;
  m_beside = state ? hive : std::nullopt;
  m_besidePanel->setVisible(state != nullptr);
  if (!state) return;
  m_states[1] = *state;
  const auto day = m_hub.shownDate();
  m_combs[1] = apiary::combsOfHive(m_hub.season(), state->hive, day);
  // Low stacks have more room one over the other, high ones side by side.
  constexpr std::size_t kLowBoxes = 4;
  m_both->setDirection(m_states[0].boxes.size() + state->boxes.size() <= kLowBoxes
                           ? QBoxLayout::TopToBottom
                           : QBoxLayout::LeftToRight);
  m_besideTitle->setText(tr("Hive %1").arg(qs(state->hive.str())));
  m_views[1]->setDrawing(sheet::stackDrawing(m_hub.season(), *state, day),
                         stackSentence(m_hub.season(), *state));
}

void StackBoard::fillHeap() {
  const auto& season = m_hub.season();
  const auto at = std::pair(season.revision(), m_hub.shownDate());
  if (m_heapOf != at) {
    m_heapItems = apiary::gearHeapOn(season, m_hub.shownDate());
    m_heapOf = at;
  }
  const int row = m_heap->currentRow();
  const QSignalBlocker quiet(m_heap);
  m_heap->clear();
  std::vector<const apiary::HeapItem*> items;
  for (const auto& item : m_heapItems) items.push_back(&item);
  const auto here = [&](const apiary::HeapItem* item) {
    const auto* hive = season.hive(item->fromHive);
    return hive && m_hive && hive->yard == m_states[0].yard;
  };
  // What came off last lies on top, what came off here before the rest.
  std::reverse(items.begin(), items.end());
  std::stable_partition(items.begin(), items.end(), here);
  const std::pair<int, QString> fresh[] = {{kNewSuper, tr("New super")},
                                           {kNewChamber, tr("New chamber")},
                                           {kNewDrawn, tr("Drawn comb")},
                                           {kNewFoundation, tr("Foundation")}};
  for (const auto& [what, text] : fresh) {
    auto* line = new QListWidgetItem(text, m_heap);
    line->setData(kFreshRole, what);
    QFont font = line->font();
    font.setItalic(true);
    line->setFont(font);
  }
  for (const auto* item : items) {
    auto* line = new QListWidgetItem(heapWords(season, *item), m_heap);
    line->setData(kKeyRole, qs(item->key));
    const auto combs = item->box.frames.size();
    line->setToolTip(combs == 1 ? tr("1 comb") : tr("%1 combs").arg(combs));
  }
  m_heap->setCurrentRow(std::min(row, m_heap->count() - 1));
}

void StackBoard::fillHives() {
  m_hives->clear();
  if (!m_hive) return;
  std::vector<base::HiveId> ids;
  for (const auto& state : m_hub.hives(m_states[0].yard)) {
    if (state.hive != m_hive) ids.push_back(state.hive);
  }
  std::sort(ids.begin(), ids.end(),
            [](const auto& a, const auto& b) { return sheet::naturalLess(a.str(), b.str()); });
  for (const auto& id : ids) {
    const auto* state = m_hub.hive(id);
    const int boxes = state ? static_cast<int>(state->boxes.size()) : 0;
    auto* line = new QListWidgetItem(boxes == 1 ? tr("%1, 1 box").arg(qs(id.str()))
                                                : tr("%1, %2 boxes").arg(qs(id.str())).arg(boxes),
                                     m_hives);
    line->setData(kKeyRole, qs(id.str()));
    line->setToolTip(tr("Drop combs and boxes here; Enter shows its stack beside this one."));
  }
}

void StackBoard::say(const QString& text) {
  m_status->setText(text.isEmpty()
                        ? tr("Drag a comb, or a box by its number; or choose with the arrows, move "
                             "with Ctrl and arrows, set down with Enter, Escape puts it back.")
                        : text);
}

QString StackBoard::whyNothingMoves() const {
  if (!m_hive) return tr("Choose a hive first.");
  if (!m_hub.showsToday()) {
    return tr("An earlier or later day is shown: go back to today to move anything.");
  }
  return {};
}

void StackBoard::refreshActions() {
  const QString general = whyNothingMoves();
  const auto& picks = m_views[static_cast<std::size_t>(activeView())]->picked();
  const bool comb = !picks.empty() && picks.back().slot > 0;
  for (QAction* action : m_actions) {
    const QString name = action->objectName();
    QString why = general;
    if (name == QLatin1String("stackAsTable")) {
      why.clear();
    } else if (why.isEmpty() &&
               (name == QLatin1String("moveComb") || name == QLatin1String("combSeen")) && !comb) {
      why = tr("Choose a comb in the stack first.");
    } else if (why.isEmpty() && name == QLatin1String("moveBox") && picks.empty()) {
      why = tr("Choose a box or a comb in the stack first.");
    } else if (why.isEmpty() && name == QLatin1String("fromHeap") && !m_heap->currentItem()) {
      why = tr("Choose something on the gear heap first.");
    } else if (why.isEmpty() && name == QLatin1String("broodMiddle")) {
      why = m_hub.whyNot(*session::broodToMiddle(*m_hive, std::nullopt, today()));
    } else if (why.isEmpty() &&
               (name == QLatin1String("fillBox") || name == QLatin1String("combSeen")) &&
               m_states[0].colonies.empty()) {
      why = tr("No colony lives here: combs are seen at the look at a colony.");
    }
    action->setEnabled(why.isEmpty());
    QString plain = action->text();
    plain.remove(u'&');
    action->setToolTip(why.isEmpty() ? plain : tr("%1 cannot be done now: %2").arg(plain, why));
    action->setStatusTip(why);
  }
}

}  // namespace outyard::hive
