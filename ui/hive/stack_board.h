// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "core/apiary/comb_state.h"
#include "core/apiary/state.h"
#include "ui/hive/stack_lift.h"
#include "ui/widgets/stack_view.h"

class QAction;
class QBoxLayout;
class QLabel;
class QListWidget;
class QListWidgetItem;
class QStackedWidget;
class QTableView;
class QToolButton;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class StackTable;

/// The stack of the chosen hive to work on: combs and boxes are dragged within it, to and from the
/// gear heap, onto a hive of the same yard, or into that hive's stack shown beside. Everything goes
/// by keys and by the menu too; a drop asks for date and bees and writes its records.
class StackBoard : public QWidget {
  Q_OBJECT
 public:
  explicit StackBoard(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~StackBoard() override;

  /// The hive as the place shows it; the description is of the whole stack.
  void showHive(const apiary::HiveState& hive, const QString& description);
  /// "Move comb to…" and so on, for menus.
  [[nodiscard]] QList<QAction*> actions() const;
  [[nodiscard]] widgets::StackView* stack() const { return m_views[0]; }
  /// The stack of another hive, when it is shown.
  [[nodiscard]] widgets::StackView* beside() const { return m_views[1]; }
  void showBeside(std::optional<base::HiveId> hive);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  /// Kept with a line of the lists: the key of an item or hive, or which fresh gear.
  static constexpr int kKeyRole = Qt::UserRole, kFreshRole = Qt::UserRole + 1;
  enum Fresh { kNewSuper = 1, kNewChamber, kNewDrawn, kNewFoundation };
  void makeActions();
  QAction* add(const char* name, const QString& text, const QKeySequence& key,
               std::function<void()> run);
  void connectView(int which);
  void fill(int which);
  void fillHeap();
  void fillHives();
  void refreshActions();
  void say(const QString& text);
  [[nodiscard]] std::optional<base::HiveId> hiveOf(int which) const;
  /// The view in which something is picked last; 0 unless the one beside has the focus.
  [[nodiscard]] int activeView() const;
  /// What is picked in the view; nullopt when nothing is.
  [[nodiscard]] std::optional<Lift> liftOf(int which) const;
  [[nodiscard]] std::optional<Lift> liftOfItem(const QListWidgetItem* item) const;
  [[nodiscard]] QString whyNothingMoves() const;
  [[nodiscard]] base::Date today() const;

  void beginLift(std::optional<Lift> lift);
  void aim(const QPoint& global);
  void aimAt(Landing landing, bool onto, widgets::StackView* view, const QString& where);
  void stepAim(int which, int right, int up);
  void drop();
  void endLift();

  void askMove(const Lift& lift, const Landing& landing);
  void moveDialog();
  void heapDialog();
  void combDialog();
  void fillDialog();
  void middleDialog();

  widgets::SeasonHub& m_hub;
  std::array<widgets::StackView*, 2> m_views{};
  std::array<apiary::HiveCombs, 2> m_combs;
  std::array<apiary::HiveState, 2> m_states;
  std::optional<base::HiveId> m_hive, m_beside;
  StackTable* m_table = nullptr;
  QTableView* m_tableView = nullptr;
  QStackedWidget* m_pages = nullptr;
  QBoxLayout* m_both = nullptr;
  QLabel* m_besideTitle = nullptr;
  QWidget* m_besidePanel = nullptr;
  QListWidget* m_heap = nullptr;
  QListWidget* m_hives = nullptr;
  QLabel* m_status = nullptr;
  QList<QAction*> m_actions;
  std::vector<apiary::HeapItem> m_heapItems;
  std::optional<std::pair<std::uint64_t, base::Date>> m_heapOf;  ///< season's state it was read at

  std::optional<Lift> m_lift;
  std::optional<Tried> m_aim;
  std::optional<QPoint> m_pressedItem;
};

}  // namespace outyard::hive
