// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/exchange/tables.h"
#include "ui/widgets/session_model.h"

class QCheckBox;
class QComboBox;
class QDateEdit;

namespace outyard::main_window {

/// Whose weather a file holds, its units where it does not show them, and which of its days.
class WeatherImportDialog : public QDialog {
  Q_OBJECT
 public:
  WeatherImportDialog(widgets::SeasonHub& hub, const QString& fileName, QWidget* parent = nullptr);
  [[nodiscard]] exchange::WeatherAsk ask() const;

 private:
  QComboBox *m_yard, *m_units;
  QCheckBox *m_since, *m_usual;
  QDateEdit* m_from;
};

}  // namespace outyard::main_window
