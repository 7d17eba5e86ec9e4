// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <vector>

#include "ui/yards/new_dialogs.h"

class QListWidget;
class QPushButton;
class QTableWidget;

namespace outyard::yards {

/// The year as a strip: nectar as bars, pollen as a hatched edge above, months below.
class FlowStrip : public QWidget {
  Q_OBJECT
 public:
  explicit FlowStrip(QWidget* parent = nullptr);
  void setFlows(std::vector<apiary::Flow> flows);
  [[nodiscard]] QSize sizeHint() const override { return {560, 84}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {300, 84}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<apiary::Flow> m_flows;
};

/// The flow calendar of a yard: from, to, strength of nectar and of pollen. One undo step, for as
/// many yards as are ticked.
class FlowsDialog : public NewDialog {
  Q_OBJECT
 public:
  FlowsDialog(widgets::SeasonHub& hub, base::YardId yard, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;
  [[nodiscard]] std::vector<apiary::Flow> flows() const;

 private:
  void addRow(const apiary::Flow& flow);
  void fill(const std::vector<apiary::Flow>& flows);
  void nameRows();
  void changedRows();

  base::YardId m_yard;
  QTableWidget* m_table;
  QListWidget* m_others;
  FlowStrip* m_strip;
  QPushButton* m_remove;
};

/// The default calendar of a latitude, which serves a yard without one of its own.
std::vector<apiary::Flow> usualFlows(const base::YardId& yard, double latitude);

}  // namespace outyard::yards
