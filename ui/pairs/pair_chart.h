// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "core/planning/boost_forecast.h"

class QChartView;
class QLabel;

namespace outyard::pairs {

/// The bees of both colonies of a pair to the target day, as they are and with what the plan does:
/// medians as lines, 8 of 10 cases as bands. In words for a screen reader.
class PairChart : public QWidget {
  Q_OBJECT
 public:
  explicit PairChart(QWidget* parent = nullptr);
  /// Says why there is nothing to draw.
  void clear(const QString& why);
  void show(const planning::PairCourse& course, const QString& receiver, const QString& donor);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void draw();

  std::optional<planning::PairCourse> m_course;
  QString m_receiver, m_donor;
  QLabel* m_why;
  QChartView *m_left, *m_right;
};

}  // namespace outyard::pairs
