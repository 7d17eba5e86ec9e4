// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QMenu>
#include <memory>

#include "ui/hive/work_actions.h"

class QComboBox;

namespace outyard::hive {

class HiveActions;

/// What happens to queens and to whole colonies: the submenus Queen and Colony of the selected
/// hive, one small dialog each, greyed with the reason while it cannot be done.
class QueenActions : public WorkActions {
  Q_OBJECT
 public:
  /// `others` are the actions of the same hive that come into these menus too.
  QueenActions(widgets::SeasonHub& hub, QWidget& window, HiveActions& others);
  ~QueenActions() override;

  [[nodiscard]] QMenu* queenMenu() const { return m_queenMenu.get(); }
  [[nodiscard]] QMenu* colonyMenu() const { return m_colonyMenu.get(); }

 private:
  void add(QMenu& menu, const char* name, const QString& text, std::function<QString()> whyNot,
           std::function<void()> run);

  void giveQueen();
  void giveCells();
  void mark();
  void queenGone();
  void swarmed();
  void trouble(apiary::EventKind kind);
  void bought();
  void parting(bool sold);

  [[nodiscard]] std::optional<base::ColonyId> colony() const;
  [[nodiscard]] const apiary::ColonyState* lives(const apiary::HiveState& state) const;
  /// A name that no colony had yet.
  [[nodiscard]] base::ColonyId freshColony(const base::HiveId& hive, base::Date day) const;
  [[nodiscard]] QString freshQueen(base::Date day) const;

  widgets::SeasonHub& m_hub;
  QWidget& m_window;
  std::unique_ptr<QMenu> m_queenMenu, m_colonyMenu;
};

}  // namespace outyard::hive
