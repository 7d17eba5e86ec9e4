// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "ui/widgets/session_model.h"

class QLabel;
class QSlider;
class QTimer;
class QToolButton;

namespace outyard::yards {

/// The days of the season under the map: drag to see the yard as it stood, or beyond today
/// as it is expected to stand. Small ticks stand
/// where the chosen yard has records; the buttons go from one such day to the next.
class DateBar : public QWidget {
  Q_OBJECT
 public:
  /// The slider reaches this far ahead of the working date.
  static constexpr int kDaysAhead = 365;
  explicit DateBar(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  void refresh();
  [[nodiscard]] const std::vector<base::Date>& recordDays() const { return m_days; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void showDate();
  void step(int by);
  [[nodiscard]] double xOf(base::Date day) const;

  widgets::SeasonHub& m_hub;
  QSlider* m_slider;
  QLabel* m_label;
  QToolButton *m_back, *m_on, *m_today;
  QTimer* m_wait;
  base::Date m_first;
  std::vector<base::Date> m_days;
  bool m_following = false;
};

}  // namespace outyard::yards
