// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <functional>
#include <optional>

#include "core/session/session.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;
class QTimeEdit;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::rounds {

/// A new visit, or day, time and notes of one that stands.
class VisitDialog : public QDialog {
  Q_OBJECT
 public:
  VisitDialog(widgets::SeasonHub& hub, base::Date day, const std::optional<base::YardId>& yard,
              QWidget* parent = nullptr);
  VisitDialog(widgets::SeasonHub& hub, const apiary::Visit& visit, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const;
  [[nodiscard]] apiary::Visit visit() const;

 private:
  void make();
  void refresh();

  widgets::SeasonHub& m_hub;
  std::optional<base::VisitId> m_visit;
  QComboBox* m_yard;
  QDateEdit* m_day;
  QCheckBox* m_timed;
  QTimeEdit* m_time;
  QLineEdit* m_notes;
  QLabel* m_fault;
  QPushButton* m_ok = nullptr;
};

/// Another day for a visit, with what the day does for.
class DayDialog : public QDialog {
  Q_OBJECT
 public:
  using Say = std::function<QString(base::Date)>;
  /// `say` puts the day in words; `fault` says why it cannot be, or nothing.
  DayDialog(const QString& what, base::Date day, Say say, Say fault, QWidget* parent = nullptr);
  [[nodiscard]] base::Date day() const;

 private:
  QDateEdit* m_day;
};

}  // namespace outyard::rounds
