// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

class QComboBox;
class QDateEdit;
class QDialogButtonBox;
class QDoubleSpinBox;
class QLabel;

namespace outyard::yards {

/// Where a hive stands: as a real move with its date, or as a correction of the drawing. The twin
/// of both drags on the map.
class SpotDialog : public QDialog {
  Q_OBJECT
 public:
  enum class Kind { Move, Correct };
  SpotDialog(widgets::SeasonHub& hub, Kind kind, session::Spot spot, base::YardId to,
             QWidget* parent = nullptr);

  /// What the fields say: records up to the working date, a task for a later day.
  [[nodiscard]] session::CommandPtr command() const;

 private:
  void fillStands();
  void refresh();
  [[nodiscard]] session::Spot spot() const;
  [[nodiscard]] base::YardId yard() const;
  [[nodiscard]] base::Date date() const;
  [[nodiscard]] QString caution() const;

  widgets::SeasonHub& m_hub;
  Kind m_kind;
  session::Spot m_start;
  base::YardId m_from;
  QComboBox *m_yard, *m_stand;
  QDateEdit* m_date;
  QDoubleSpinBox *m_x, *m_y, *m_entrance;
  QLabel *m_does, *m_caution, *m_why;
  QDialogButtonBox* m_buttons;
};

}  // namespace outyard::yards
