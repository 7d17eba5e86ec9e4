// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

class QAction;
class QLabel;
class QProgressBar;
class QTimer;
class QToolButton;

namespace outyard::widgets {

class SeasonHub;

/// In the status bar: how far the forecasts of the outfit are, and a way to stop them. Begins
/// working all yards out a moment after a season is opened.
class ForecastStatus : public QWidget {
  Q_OBJECT
 public:
  explicit ForecastStatus(SeasonHub& hub, QWidget* parent = nullptr);
  /// "Work out all forecasts" and "Stop the forecasts", for a menu.
  [[nodiscard]] QList<QAction*> actions() const;

 private:
  void refresh();

  SeasonHub& m_hub;
  QLabel* m_label;
  QProgressBar* m_bar;
  QToolButton* m_stop;
  QAction *m_all, *m_cancel;
  QTimer *m_begin, *m_look;
  int m_percent = 0;
};

}  // namespace outyard::widgets
