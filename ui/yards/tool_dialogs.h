// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "ui/yards/new_dialogs.h"

namespace outyard::yards {

/// Stands and features of a yard drawn in another one, or in a new one.
class LayoutDialog : public NewDialog {
  Q_OBJECT
 public:
  LayoutDialog(widgets::SeasonHub& hub, base::YardId from, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;
  [[nodiscard]] base::YardId to() const;

 protected:
  [[nodiscard]] QString whyNotYet() const override;

 private:
  [[nodiscard]] bool isNew() const;

  base::YardId m_from;
  QComboBox* m_to;
  QLineEdit *m_id, *m_name;
  QCheckBox *m_stands, *m_features;
  QFormLayout* m_form;
};

/// A picture of the ground brought to scale: how far the two measured points truly are apart. The
/// first point stays where it is.
class ScaleDialog : public NewDialog {
  Q_OBJECT
 public:
  ScaleDialog(widgets::SeasonHub& hub, apiary::Feature picture, QPointF fromM, QPointF toM,
              QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 private:
  apiary::Feature m_picture;
  QPointF m_at;
  double m_drawnM;
  QDoubleSpinBox* m_true;
};

/// Two points nearer than this give no scale.
inline constexpr double kLeastScaleM = 0.2;

}  // namespace outyard::yards
