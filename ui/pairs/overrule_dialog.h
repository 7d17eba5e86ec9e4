// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/session/session.h"
#include "core/strength/verdict.h"

class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::pairs {

/// A person's own judgement on a colony, with the reason; the rules' stays beside it.
class OverruleDialog : public QDialog {
  Q_OBJECT
 public:
  OverruleDialog(widgets::SeasonHub& hub, const strength::Judgement& judgement, base::Date date,
                 QWidget* parent);
  [[nodiscard]] session::CommandPtr command() const;

 private:
  void refresh();

  widgets::SeasonHub& m_hub;
  base::HiveId m_hive;
  base::ColonyId m_colony;
  QDateEdit* m_date = nullptr;
  QComboBox* m_verdict = nullptr;
  QLineEdit* m_reason = nullptr;
  QLabel* m_why = nullptr;
  QPushButton* m_ok = nullptr;
};

}  // namespace outyard::pairs
