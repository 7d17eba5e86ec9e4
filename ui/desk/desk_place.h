// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QStringList>
#include <memory>
#include <vector>

#include "ui/desk/desk_rows.h"
#include "ui/widgets/place.h"

class QComboBox;
class QLabel;
class QMenu;
class QProgressBar;
class QPushButton;
class QSplitter;
class QStackedWidget;
class QToolButton;
class QVBoxLayout;

namespace outyard::widgets {
class EmptyPage;
class ListFile;
class SeasonHub;
class TaskActions;
}  // namespace outyard::widgets

namespace outyard::desk {

class DayLegend;
class DeskList;

/// What the next two weeks ask for: work by yard with the days that are warm enough, hives at risk,
/// gear that is short, and what surprised at the last looks. Every line leads to its yard or hive;
/// work that falls due is planned from here.
class DeskPlace : public widgets::Place {
  Q_OBJECT
 public:
  explicit DeskPlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~DeskPlace() override;
  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  void takeFocus() override;

  /// Null while nothing was worked out.
  [[nodiscard]] const planning::DeskFacts* facts() const { return m_facts.get(); }
  [[nodiscard]] bool busy() const;

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void makeHead(QVBoxLayout& to);
  void makeBody(QVBoxLayout& to);
  /// How many pages it takes; paints them only when that is known.
  int paintPages(QPagedPaintDevice& device, QPainter& painter, std::optional<int> pages) const;
  void makeActions();
  void makeFiles();
  QWidget* section(const QString& title, DeskList* list, QLabel** head);
  void take(Facts facts);
  void fill();
  void showState();
  void refreshActions();
  void refresh();
  void open(const Row& row);
  [[nodiscard]] bool followsStack(const Row& row) const;
  [[nodiscard]] RowMaker maker() const;
  /// Pieces of work among the chosen rows that are not planned yet.
  [[nodiscard]] std::vector<std::size_t> toPlan() const;
  [[nodiscard]] std::vector<base::TaskId> plannedChosen() const;
  void plan();
  void shareHeight();
  void unitsChanged();

  widgets::SeasonHub& m_hub;
  DeskRunner m_runner;
  Facts m_facts;
  bool m_us, m_stopped = false, m_shared = false;
  int m_ready = 0, m_goal = 0;
  QLabel *m_days = nullptr, *m_sum = nullptr, *m_note = nullptr, *m_showLabel = nullptr;
  QWidget* m_noteBar = nullptr;
  QComboBox* m_show = nullptr;
  QProgressBar* m_progress = nullptr;
  QPushButton *m_stop = nullptr, *m_plan = nullptr;
  QStackedWidget* m_pages = nullptr;
  widgets::EmptyPage* m_empty = nullptr;
  QSplitter* m_right = nullptr;
  DayLegend* m_legend = nullptr;
  QMenu* m_saveMenu = nullptr;
  widgets::TaskActions* m_tasks = nullptr;
  widgets::ListFile* m_allFile = nullptr;
  QToolButton* m_expand = nullptr;
  DeskList *m_yards = nullptr, *m_risk = nullptr, *m_gear = nullptr, *m_looks = nullptr;
  QLabel *m_riskHead = nullptr, *m_gearHead = nullptr, *m_looksHead = nullptr;
  QAction *m_planAction = nullptr, *m_openAction = nullptr, *m_againAction = nullptr,
          *m_stopAction = nullptr, *m_expandAction = nullptr, *m_collapseAction = nullptr;
};

}  // namespace outyard::desk
