// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <QString>
#include <vector>

#include "core/apiary/find.h"
#include "ui/widgets/session_model.h"

class QLabel;
class QLineEdit;
class QTreeWidget;

namespace outyard::main_window {

/// The quick search: one line to type in, and what holds the words under it. Up and Down go
/// through the list while the line keeps the keyboard; Enter goes there.
class FindEverywhere : public QDialog {
  Q_OBJECT
 public:
  explicit FindEverywhere(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  /// The line that is marked in the list; null when nothing was found.
  [[nodiscard]] const apiary::Found* chosen() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();

  widgets::SeasonHub& m_hub;
  QLineEdit* m_line = nullptr;
  QTreeWidget* m_list = nullptr;
  QLabel* m_count = nullptr;
  std::vector<apiary::Found> m_found;
};

}  // namespace outyard::main_window
