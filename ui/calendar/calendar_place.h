// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>
#include <optional>

#include "core/planning/season_calendar.h"
#include "ui/widgets/place.h"

class QComboBox;
class QDateEdit;
class QLabel;
class QProgressBar;
class QPushButton;
class QSpinBox;
class QStackedWidget;
class QTableView;
class QVBoxLayout;

namespace outyard::widgets {
class ListFile;
class EmptyPage;
class SeasonHub;
}  // namespace outyard::widgets

namespace outyard::calendar {

class CalendarBoard;
class CalendarModel;
class LegendStrip;

/// The season of all yards at one look, week by week, with the hours that it takes; and what other
/// dates would do, tried before they are kept.
class CalendarPlace : public widgets::Place {
  Q_OBJECT
 public:
  explicit CalendarPlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~CalendarPlace() override;
  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  /// On one page, whatever its size.
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QImage picture() override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  void takeFocus() override;

  /// As worked out, or with the dates that are being tried; null while there is none.
  [[nodiscard]] std::shared_ptr<const planning::SeasonCalendar> shown() const;
  [[nodiscard]] bool busy() const { return m_working || m_trying; }
  [[nodiscard]] bool showsTrial() const { return m_trial != nullptr; }
  /// Writes the board as SVG; false when the disk refuses.
  bool writeSvg(const QString& path);

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  using Calendar = std::shared_ptr<const planning::SeasonCalendar>;
  void makeHead(QVBoxLayout& to);
  void makeSide(QVBoxLayout& to);
  void makeActions();
  void again();
  void run();
  void stop();
  void tryDates();
  void keepDates();
  void letGo();
  void takeTrial(Calendar trial, apiary::ChangeList changes);
  void fillWhat();
  void showCalendar();
  void showCell();
  void showState();
  void openYard(const base::YardId& yard);
  void saveSvg();
  void showAsTable(bool table);
  [[nodiscard]] planning::CalendarAsk ask() const;
  [[nodiscard]] QStringList names() const;
  [[nodiscard]] std::optional<base::YardId> yardAtCursor() const;
  [[nodiscard]] base::Result<apiary::ChangeList> wantedChanges() const;
  void paintWhole(QPainter& painter, const QRectF& target, bool onPaper) const;

  widgets::SeasonHub& m_hub;
  Calendar m_calendar, m_trial;
  apiary::ChangeList m_changes;
  base::Message m_title;  ///< of the step that keeping the trial makes
  bool m_working = false, m_trying = false, m_dirty = true, m_stopped = false;

  QDateEdit* m_first = nullptr;
  QSpinBox* m_weeks = nullptr;
  QLabel* m_say = nullptr;
  QProgressBar* m_progress = nullptr;
  QPushButton* m_stop = nullptr;
  QStackedWidget* m_pages = nullptr;
  widgets::EmptyPage* m_empty = nullptr;
  CalendarBoard* m_board = nullptr;
  LegendStrip* m_legend = nullptr;
  CalendarModel* m_model = nullptr;
  QTableView* m_table = nullptr;
  widgets::ListFile* m_file = nullptr;
  QLabel *m_cellHead = nullptr, *m_cell = nullptr, *m_hours = nullptr;
  QPushButton* m_open = nullptr;
  QComboBox* m_what = nullptr;
  QSpinBox* m_days = nullptr;
  QPushButton *m_try = nullptr, *m_keep = nullptr, *m_letGo = nullptr;
  QLabel* m_change = nullptr;
  QAction *m_svgAction = nullptr, *m_tableAction = nullptr, *m_againAction = nullptr;
};

}  // namespace outyard::calendar
