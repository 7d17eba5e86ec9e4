// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "ui/yards/new_dialogs.h"

namespace outyard::yards {

/// The exact direction of the entrances of one or more hives, as a correction of the drawing.
class FacingDialog : public NewDialog {
  Q_OBJECT
 public:
  FacingDialog(widgets::SeasonHub& hub, std::vector<session::Spot> spots,
               QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 private:
  std::vector<session::Spot> m_spots;
  QDoubleSpinBox* m_degrees;
};

}  // namespace outyard::yards
