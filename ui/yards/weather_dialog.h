// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <optional>
#include <vector>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

class QComboBox;
class QDateEdit;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QPushButton;
class QTableWidget;

namespace outyard::yards {

/// The weather of a yard as it is known: days observed, forecasts, usual weather; a day is typed in
/// or changed by hand, each time as one undo step.
class WeatherDialog : public QDialog {
  Q_OBJECT
 public:
  WeatherDialog(widgets::SeasonHub& hub, base::YardId yard, QWidget* parent = nullptr);
  /// The day that the fields say.
  [[nodiscard]] apiary::WeatherDay typed() const;

 private:
  void makeFields(QFormLayout* form);
  void fill();
  void show(const apiary::WeatherDay& day);
  void refresh();
  void enter();
  void takeOut();
  [[nodiscard]] std::vector<apiary::WeatherDay> chosen() const;

  widgets::SeasonHub& m_hub;
  base::YardId m_yard;
  std::vector<apiary::WeatherDay> m_days;  ///< rows of the table
  QComboBox *m_which, *m_kind;
  QTableWidget* m_table;
  QDateEdit *m_date, *m_issued;
  QDoubleSpinBox *m_min, *m_max, *m_rain, *m_wind;
  QFormLayout* m_form;
  QLabel *m_about, *m_why;
  QPushButton *m_enter, *m_takeOut;
};

}  // namespace outyard::yards
