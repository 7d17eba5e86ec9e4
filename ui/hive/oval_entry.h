// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <map>
#include <optional>

class QComboBox;
class QLabel;
class QLineEdit;

namespace outyard::hive {

class CombModel;

/// A patch on a comb side measured by its greatest length and height: an oval (pi/4 times both) as
/// a share of the face. What is typed is in centimetres or inches, by the user's setting.
class OvalEntry : public QWidget {
  Q_OBJECT
 public:
  OvalEntry(CombModel& model, bool inches, QWidget* parent = nullptr);
  /// Comb area of one side in cm2, by position of the box.
  void setAreas(std::map<int, double> areas);
  /// The side that is filled in.
  void setRow(int row);
  /// Puts the share of the oval into the side; the sentence says what was put, or what is missing.
  QString fillIn();

 private:
  void refresh();
  [[nodiscard]] std::optional<double> areaCm2() const;  ///< of the oval
  [[nodiscard]] std::optional<double> faceCm2() const;  ///< of the comb side
  [[nodiscard]] std::optional<double> percent() const;

  CombModel& m_model;
  double m_cmPerUnit = 1;
  std::map<int, double> m_areas;
  int m_row = -1;
  QLineEdit *m_length = nullptr, *m_height = nullptr;
  QComboBox* m_what = nullptr;
  QLabel* m_gives = nullptr;
};

}  // namespace outyard::hive
