// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QStringList>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "ui/adapt/units.h"
#include "ui/rounds/day_board.h"
#include "ui/rounds/round_board.h"
#include "ui/rounds/rounds_runner.h"
#include "ui/widgets/place.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QSplitter;
class QStackedWidget;
class QTreeWidget;
class QTreeWidgetItem;
class QVBoxLayout;

namespace outyard::widgets {
class EmptyPage;
class SeasonHub;
class TaskActions;
struct ListTable;
}  // namespace outyard::widgets

namespace outyard::rounds {

/// Visits by day and yard, the work in each, the way between them and the load of a day; rounds
/// proposed from what falls due, as dashed cards until they are accepted.
class RoundsPlace : public widgets::Place {
  Q_OBJECT
 public:
  static constexpr int kDays = 14;

  explicit RoundsPlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~RoundsPlace() override;
  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  /// The round of the chosen day and its load list; without a visit on it, of every day shown.
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  void takeFocus() override;

  [[nodiscard]] bool busy() const { return m_runner.running(); }
  [[nodiscard]] const RoundBoard& board() const { return m_board; }
  [[nodiscard]] const Proposal* proposal() const { return m_proposal.get(); }
  /// The first day of the board.
  void setFirstDay(base::Date from);

 Q_SIGNALS:
  /// Sheets of the yards for the day.
  void sheetsAsked(const std::vector<outyard::base::YardId>& yards, outyard::base::Date day);

 protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  /// Which part of the list of work a row stands in.
  enum class Part { Head, In, Proposed, Done, Also, Other };
  struct WorkRow {
    Part part = Part::Head;
    std::size_t due = 0;
    std::optional<base::TaskId> task;
  };

  void makeHead(QVBoxLayout& to);
  void makeBody(QVBoxLayout& to);
  QWidget* makeWork();
  QWidget* makeLoad();
  void makeActions();
  QAction* make(const QString& name, const QString& text, const QKeySequence& keys,
                const std::function<void()>& slot);
  QPushButton* button(QAction* action, const QString& name);

  void refresh();
  void rebuild();
  void showState();
  void showNotes();
  void shareHeight();
  void refreshActions();
  void fillWork();
  void fillLoad();
  void addWork(const QString& heading, Part part, const std::vector<std::size_t>& tasks);
  void seasonChanged(const session::Notice& notice);

  [[nodiscard]] const BoardDay* day() const;
  [[nodiscard]] const BoardStop* stop() const;
  [[nodiscard]] std::vector<WorkRow> chosen() const;
  [[nodiscard]] adapt::Units units() const;
  /// What speaks against the day for the stop; empty when nothing does.
  [[nodiscard]] QString against(const BoardStop& stop, base::Date day) const;
  [[nodiscard]] QString dateInWords(const BoardStop& stop, base::Date day) const;

  void propose();
  void accept(std::optional<base::Date> only);
  void discard();
  void newVisit();
  void editVisit();
  void removeVisit();
  void move(const StopKey& stop, base::Date to);
  void moveBy(int days);
  void moveToDay();
  void putIn();
  void takeOut();
  void untick();
  /// The planned work among the chosen rows.
  [[nodiscard]] std::vector<base::TaskId> plannedChosen() const;
  void openHive();
  void printSheets();
  void saveCalendar();
  [[nodiscard]] std::vector<widgets::ListTable> pages() const;

  widgets::SeasonHub& m_hub;
  RoundsRunner m_runner;
  RoundBoard m_board;
  std::shared_ptr<Proposal> m_proposal;
  std::optional<base::Date> m_from;
  QString m_total;     ///< of the days shown
  QStringList m_said;  ///< of what was done last
  bool m_stopped = false, m_accepting = false, m_shared = false;
  int m_ready = 0, m_goal = 0;

  QLabel *m_days = nullptr, *m_sum = nullptr, *m_note = nullptr, *m_workHead = nullptr,
         *m_loadHead = nullptr, *m_loadSum = nullptr, *m_cautions = nullptr;
  QWidget *m_noteBar = nullptr, *m_headBar = nullptr;
  QProgressBar* m_progress = nullptr;
  QPushButton *m_stop = nullptr, *m_weather = nullptr, *m_acceptButton = nullptr,
              *m_acceptDayButton = nullptr, *m_discardButton = nullptr;
  QStackedWidget* m_pages = nullptr;
  widgets::EmptyPage* m_empty = nullptr;
  QSplitter* m_rows = nullptr;
  DayBoard* m_dayBoard = nullptr;
  QTreeWidget *m_work = nullptr, *m_load = nullptr;
  std::vector<WorkRow> m_workRows;
  widgets::TaskActions* m_tasks = nullptr;
  QList<QAction*> m_menu;
  QAction *m_earlier = nullptr, *m_later = nullptr, *m_toToday = nullptr, *m_propose = nullptr,
          *m_accept = nullptr, *m_acceptDay = nullptr, *m_discard = nullptr, *m_new = nullptr,
          *m_edit = nullptr, *m_move = nullptr, *m_moveEarlier = nullptr, *m_moveLater = nullptr,
          *m_remove = nullptr, *m_putIn = nullptr, *m_takeOut = nullptr, *m_notDone = nullptr,
          *m_open = nullptr, *m_sheets = nullptr, *m_enter = nullptr, *m_calendar = nullptr;
};

}  // namespace outyard::rounds
