// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>

#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

class QLabel;
class QPushButton;
class QTextBrowser;

namespace outyard::widgets {
class StackView;
}

namespace outyard::yards {

/// The chosen hive beside the map: stack, judgement with its evidence, what was seen, what is
/// planned, and the buttons that lead on.
class HivePanel : public QWidget {
  Q_OBJECT
 public:
  explicit HivePanel(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  void refresh();

 Q_SIGNALS:
  void openAsked();
  void inspectionAsked();
  void setOverAsked();

 private:
  [[nodiscard]] QString html(const widgets::HiveFacts& facts) const;

  widgets::SeasonHub& m_hub;
  QLabel *m_number, *m_letters, *m_status;
  widgets::StackView* m_stack;
  QTextBrowser* m_facts;
  QPushButton *m_open, *m_inspect, *m_setOver;
};

}  // namespace outyard::yards
