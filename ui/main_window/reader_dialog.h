// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <vector>

#include "core/strength/reader_bias.h"

class QComboBox;
class QLabel;
class QPushButton;
class QTableWidget;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::main_window {

/// What one reader makes of the bees beside a count that is known better: pairs of own count and
/// weighed or graded count, the habit that they show, and the step that keeps it in the season.
class ReaderDialog : public QDialog {
  Q_OBJECT
 public:
  explicit ReaderDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);

 private:
  [[nodiscard]] std::vector<strength::ReaderPair> pairs() const;
  /// A sentence on the first cell that is no number above nought; empty when all can be read.
  [[nodiscard]] QString fault() const;
  [[nodiscard]] std::string reader() const;
  void refresh();
  void keep();
  void takeAway();

  widgets::SeasonHub& m_hub;
  QComboBox* m_reader = nullptr;
  QTableWidget* m_pairs = nullptr;
  QLabel *m_kept = nullptr, *m_says = nullptr;
  QPushButton *m_keep = nullptr, *m_takeAway = nullptr;
};

}  // namespace outyard::main_window
