// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <memory>

#include "core/planning/plan_review.h"

class QLabel;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace outyard::widgets {
class ListFile;
class SeasonHub;
}  // namespace outyard::widgets

namespace outyard::pairs {

class TextTable;

/// How plans turned out: what each promised and what was then seen.
class ReviewDialog : public QDialog {
  Q_OBJECT
 public:
  explicit ReviewDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~ReviewDialog() override;
  [[nodiscard]] bool busy() const { return m_busy; }
  [[nodiscard]] const planning::PlanReview& review() const { return m_review; }

 private:
  void again();
  void take(planning::PlanReview review);
  void showChosen();

  widgets::SeasonHub& m_hub;
  planning::PlanReview m_review;
  bool m_busy = false;
  QStackedWidget* m_pages = nullptr;
  QLabel* m_sentence = nullptr;
  QLabel* m_sum = nullptr;
  QTableView* m_table = nullptr;
  TextTable* m_model = nullptr;
  QLabel* m_detail = nullptr;
  QPushButton *m_pdf = nullptr, *m_csv = nullptr;
  widgets::ListFile* m_file = nullptr;
};

}  // namespace outyard::pairs
