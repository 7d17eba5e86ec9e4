// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <vector>

#include "ui/charts/colony_course.h"

class QAction;
class QComboBox;
class QLabel;
class QPagedPaintDevice;
class QStackedWidget;
class QTableView;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::charts {

class CourseTable;
class CourseView;

/// A course with everything around it: the choice of what is tried out, the words under the
/// pointer, what is to be said of it, its table twin, and how it is saved and printed.
class CoursePanel : public QWidget {
  Q_OBJECT
 public:
  explicit CoursePanel(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~CoursePanel() override;

  /// One colony; its journal comes in the words of the place that shows it.
  void showColony(const base::ColonyId& colony, const QString& title, std::vector<Tick> ticks);
  /// A course that is worked out already (a yard, the outfit); nothing can be tried on it.
  void showCourse(std::shared_ptr<const CourseData> course);
  void clear(const QString& why);
  void setTrial(Trial trial);
  [[nodiscard]] CourseView& view() const { return *m_view; }
  [[nodiscard]] const CourseTable& table() const { return *m_model; }
  [[nodiscard]] QList<QAction*> actions() const;
  [[nodiscard]] bool showsTable() const;
  /// One page, when something is shown.
  void printTo(QPagedPaintDevice& device) const;
  /// True while it is being worked out.
  [[nodiscard]] bool working() const { return m_working; }

 Q_SIGNALS:
  void shown();

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void makeActions();
  void recompute();
  void take(std::shared_ptr<const CourseData> course);
  void save();
  void refreshWords();

  widgets::SeasonHub& m_hub;
  QString m_name;  ///< of the work beside the window
  CourseAsk m_ask;
  bool m_ofColony = false, m_working = false, m_waiting = false;
  std::shared_ptr<const CourseData> m_data;
  CourseView* m_view;
  CourseTable* m_model;
  QTableView* m_table;
  QStackedWidget* m_pages;
  QComboBox* m_trial;
  QLabel *m_words, *m_remarks, *m_trialName;
  QString m_pointed;
  QAction *m_asTable = nullptr, *m_save = nullptr, *m_nearer = nullptr, *m_farther = nullptr,
          *m_season = nullptr, *m_soon = nullptr;
};

}  // namespace outyard::charts
