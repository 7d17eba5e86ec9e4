// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <QWidget>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ui/charts/colony_course.h"

class QComboBox;
class QLabel;
class QScrollArea;
class QStackedWidget;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::charts {

class CoursePanel;

/// One hive of the small multiples: its bees, on the same scale as its neighbours'.
struct SmallCourse {
  base::HiveId hive;
  base::ColonyId colony;
  QString name;
  Series bees;
};

/// Many small courses side by side, all on one scale of days and bees. Arrows choose one, Enter
/// opens it; what is chosen is read out.
class SmallCourses : public QWidget {
  Q_OBJECT
 public:
  explicit SmallCourses(QWidget* parent = nullptr);
  void setCourses(std::vector<SmallCourse> courses, base::Date from, base::Date to,
                  base::Date today);
  [[nodiscard]] int count() const { return static_cast<int>(m_courses.size()); }
  [[nodiscard]] int chosen() const { return m_chosen; }
  void choose(int index);
  [[nodiscard]] QString words(int index) const;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;

 Q_SIGNALS:
  void opened(const outyard::base::HiveId& hive);
  void chosenChanged(const QString& words);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;

 private:
  [[nodiscard]] int columns(int width) const;
  [[nodiscard]] QRectF cell(int index) const;
  [[nodiscard]] int at(QPointF point) const;

  std::vector<SmallCourse> m_courses;
  base::Date m_from, m_to, m_today;
  double m_top = 1;
  int m_chosen = -1;
};

/// What was seen of a yard's colonies (of all yards without one) in the past year, a fortnight
/// apart: the sum of each colony's last look of five weeks, brought up to all that lived there
/// where some were not looked at. Days on which fewer than half were are left out.
struct PastSum {
  Band bees, sealed, brood, honeyKg;
  [[nodiscard]] bool empty() const { return bees.empty() && brood.empty() && honeyKg.empty(); }
};
PastSum pastSum(const apiary::Season& season, const std::optional<base::YardId>& yard,
                base::Date today, base::Progress& progress);

/// The sum of the yard's colonies (of all yards without one), from their forecasts; null when none
/// is ready.
std::shared_ptr<CourseData> groupCourse(
    const apiary::Season& season, const std::optional<base::YardId>& yard, const QString& title,
    const std::vector<const forecast::ColonyForecast*>& forecasts, base::Date today,
    const adapt::Units& units, const PastSum& past = {});

/// The course of a yard or of the whole outfit: their sum, or each hive beside the others. Follows
/// the season while it is open.
class GroupCourseDialog : public QDialog {
  Q_OBJECT
 public:
  explicit GroupCourseDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  [[nodiscard]] CoursePanel& panel() const { return *m_panel; }
  [[nodiscard]] SmallCourses& small() const { return *m_small; }
  /// A yard, or all of them.
  void showYard(const std::optional<base::YardId>& yard);

 private:
  void refresh();
  /// The past of what is shown, asked for beside the window when it is not at hand.
  const PastSum& past(const std::optional<base::YardId>& yard);

  widgets::SeasonHub& m_hub;
  PastSum m_past;
  std::optional<std::pair<std::string, std::uint64_t>> m_pastOf;  ///< yard and revision
  QComboBox *m_which, *m_how;
  QStackedWidget* m_pages;
  CoursePanel* m_panel;
  SmallCourses* m_small;
  QScrollArea* m_area;
  QLabel* m_note;
};

}  // namespace outyard::charts
