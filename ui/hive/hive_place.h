// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/apiary/state.h"
#include "ui/widgets/place.h"

class QComboBox;
class QLabel;
class QStackedWidget;
class QTabBar;
class QTabWidget;
class QVBoxLayout;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::charts {
class CoursePanel;
}

namespace outyard::hive {

class HiveActions;
class QueenActions;
class JournalPanel;
class StackBoard;

/// One hive: its stack from the side, what is known of its colonies, its journal, and everything
/// that can be recorded about it.
class HivePlace : public widgets::Place {
  Q_OBJECT
 public:
  explicit HivePlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~HivePlace() override;
  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  void takeFocus() override;
  /// "inspection" opens the form at once; the names of the other actions do the same, and a
  /// planned task (widgets::beginFor) opens the dialog that records its work.
  void begin(const QString& task) override;

 private:
  void doTask(const apiary::Task& task);
  void makeHead(QVBoxLayout& to);
  /// What can be recorded, with the submenus of queens and colonies.
  [[nodiscard]] QList<QAction*> workActions() const;
  void makeMiddle(QVBoxLayout& to);
  /// All hives by yard, each yard in walking order.
  void fillChooser();
  void showHive();
  void showFacts(const apiary::HiveState& state);
  /// The course of the chosen colony over time, with the hive's journal.
  void showCourse(const apiary::HiveState& state);
  void chooseTyped();
  void step(int by);

  widgets::SeasonHub& m_hub;
  HiveActions* m_actions = nullptr;
  QueenActions* m_queens = nullptr;
  std::vector<base::HiveId> m_order;
  QComboBox* m_chooser = nullptr;
  QAction* m_previous = nullptr;
  QAction* m_next = nullptr;
  QLabel* m_title = nullptr;
  QLabel* m_subtitle = nullptr;
  QTabBar* m_colonies = nullptr;
  QStackedWidget* m_pages = nullptr;
  QLabel* m_empty = nullptr;
  StackBoard* m_board = nullptr;
  QLabel* m_stackNote = nullptr;
  QLabel* m_facts = nullptr;
  JournalPanel* m_journal = nullptr;
  QTabWidget* m_tabs = nullptr;
  charts::CoursePanel* m_course = nullptr;
  QAction* m_showCourse = nullptr;
};

}  // namespace outyard::hive
