// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "ui/yards/new_dialogs.h"

namespace outyard::yards {

/// Several hives carried together on one day, here or to another yard: they keep their places to
/// each other. Records up to the working date, a task for each hive for a later day.
class SeveralDialog : public NewDialog {
  Q_OBJECT
 public:
  /// The spots as they would stand in `to`; for another yard only their places to each other count.
  SeveralDialog(widgets::SeasonHub& hub, std::vector<session::Spot> spots, const base::YardId& to,
                QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 protected:
  [[nodiscard]] QString whyNotYet() const override;

 private:
  [[nodiscard]] std::vector<session::Spot> spots() const;
  [[nodiscard]] base::YardId yard() const;
  [[nodiscard]] base::Date date() const;

  std::vector<session::Spot> m_spots;
  base::YardId m_drawnIn;  ///< where their stands are
  double m_west = 0, m_south = 0;
  QDateEdit* m_date;
  QComboBox* m_yard;
  QDoubleSpinBox *m_x, *m_y;
  QLabel *m_does, *m_caution;
};

}  // namespace outyard::yards
