// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

class QComboBox;
class QDoubleSpinBox;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::pairs {

/// "Useful for [a flow]: [4.5 seams], brood on [4 combs]": what the plan counts as a usable colony.
/// A change is one undo step, kept in the season.
class UsableBar : public QWidget {
  Q_OBJECT
 public:
  explicit UsableBar(widgets::SeasonHub& hub, QWidget* parent = nullptr);

 private:
  void fill();
  void choose(int index);
  void keep(double seams, double combs, const QString& source);
  widgets::SeasonHub& m_hub;
  QComboBox* m_purpose;
  QDoubleSpinBox* m_seams;
  QDoubleSpinBox* m_combs;
};

}  // namespace outyard::pairs
