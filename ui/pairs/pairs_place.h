// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <memory>
#include <set>
#include <string>

#include "core/planning/boost.h"
#include "ui/pairs/plan_runner.h"
#include "ui/widgets/place.h"

class QComboBox;
class QDateEdit;
class QHBoxLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QStackedWidget;
class QTabWidget;
class QTableView;
class QTextBrowser;
class QVBoxLayout;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::pairs {

class PairChart;
class PairsMap;
class TextTable;

/// Which small colonies to help, by whom, how and when: the boost plan in four steps, held and
/// barred pair by pair, accepted as one undoable step.
class PairsPlace : public widgets::Place {
  Q_OBJECT
 public:
  explicit PairsPlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~PairsPlace() override;
  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  void takeFocus() override;
  /// "stacks": the stacks made, on the step that the selected hive needs; "review": how plans
  /// turned out.
  void begin(const QString& task) override;

  /// The plan as it stands; null while there is none.
  [[nodiscard]] const planning::BoostPlan* plan() const;
  [[nodiscard]] bool busy() const { return m_runner.running() || m_dirty; }
  /// Writes the table of the plan to a file; false when the disk refuses.
  bool exportCsv(const QString& path);

 public Q_SLOTS:
  /// Asks where to, then writes the table.
  void exportTable();
  void showStacks();
  void showReview();

 Q_SIGNALS:
  /// The plan that the map's arrows show; null takes them away. Good until the next signal.
  void planChanged(const outyard::planning::BoostPlan* plan);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void makeHead(QVBoxLayout& to);
  void makeSteps();
  void makePairs();
  void makeFoot(QVBoxLayout& to);
  /// What follows on a plan: stacks made, how plans turned out.
  void makeAfterwards(QHBoxLayout& to);
  QTableView* makeTable(TextTable& model, const QString& name, const QString& accessible,
                        const std::vector<int>& widths, QWidget* parent);
  QAction* makeAction(const QString& name, const QString& text, const QKeySequence& key,
                      const std::function<void()>& run, QWidget* on);
  void fillYards();
  void followSelection();
  [[nodiscard]] std::vector<base::YardId> yards() const;
  /// Marks the plan as stale and works it out again when it can be seen.
  void again();
  void run();
  void take(std::shared_ptr<const PlanOutcome> outcome);
  void showPlan();
  void showSentence(const QString& sentence);
  void showAccepted();
  /// What may follow a moment after the plan: widths of columns, step 4.
  void showLater();
  void showNotes();
  void showSum();
  void showChosenPair();
  /// Moves the day of the work to the first one on which the weather will do.
  void goToFirstDay();
  /// Works the courses of the chosen pair out beside the window and shows them.
  void showCourses();
  [[nodiscard]] QString emptySentence() const;
  [[nodiscard]] const planning::BoostOption* chosenOption() const;
  /// Why the plan cannot be accepted; empty when it can.
  [[nodiscard]] QString whyNotAccept() const;
  /// The accepted plan with the same pairs on the same day; null when there is none.
  [[nodiscard]] const apiary::Plan* acceptedTwin() const;
  void pin();
  void forbid();
  void takeSecond();
  void allowAgain();
  void letAllGo();
  void overrule();
  void accept();

  widgets::SeasonHub& m_hub;
  PlanRunner m_runner;
  std::shared_ptr<const apiary::Season> m_season;  ///< the copy that the plan was made from
  std::shared_ptr<const PlanOutcome> m_outcome;
  GearPrices m_prices;  ///< of one more piece of gear, once they are worked out
  bool m_laterDue = false, m_filling = false;
  std::set<std::string> m_pins, m_forbids;
  bool m_dirty = true;
  bool m_dateTouched = false;

  QComboBox* m_yard = nullptr;
  QDateEdit* m_date = nullptr;
  QDateEdit* m_target = nullptr;
  QProgressBar* m_progress = nullptr;
  QPushButton* m_stop = nullptr;
  QStackedWidget* m_pages = nullptr;
  QLabel* m_sentence = nullptr;
  QTabWidget* m_steps = nullptr;
  TextTable* m_needs = nullptr;
  TextTable* m_gives = nullptr;
  TextTable* m_barred = nullptr;
  TextTable* m_pairs = nullptr;
  QTableView* m_needTable = nullptr;
  QTableView* m_pairTable = nullptr;
  QLabel* m_evidence = nullptr;
  QTextBrowser* m_pairDetail = nullptr;
  QLabel* m_needSum = nullptr;
  QPushButton* m_firstDay = nullptr;
  QLabel* m_noPairs = nullptr;
  QPushButton* m_overrule = nullptr;
  PairsMap* m_map = nullptr;
  PairChart* m_chart = nullptr;
  QTextBrowser* m_when = nullptr;
  QLabel* m_sum = nullptr;
  QLabel* m_accepted = nullptr;
  QPushButton* m_accept = nullptr;
  QAction *m_pinAction = nullptr, *m_forbidAction = nullptr, *m_secondAction = nullptr,
          *m_allowAction = nullptr, *m_freeAction = nullptr, *m_exportAction = nullptr,
          *m_overruleAction = nullptr, *m_acceptAction = nullptr, *m_stacksAction = nullptr,
          *m_reviewAction = nullptr;
};

}  // namespace outyard::pairs
