// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAction>
#include <QList>
#include <QMenu>
#include <QObject>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/session/commands.h"

class QComboBox;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class HiveActions;
class VerbDialog;

/// What happens to queens and to whole colonies: the submenus Queen and Colony of the selected
/// hive, one small dialog each, greyed with the reason while it cannot be done.
class QueenActions : public QObject {
  Q_OBJECT
 public:
  /// `others` are the actions of the same hive that come into these menus too.
  QueenActions(widgets::SeasonHub& hub, QWidget& window, HiveActions& others);
  ~QueenActions() override;

  [[nodiscard]] QMenu* queenMenu() const { return m_queenMenu.get(); }
  [[nodiscard]] QMenu* colonyMenu() const { return m_colonyMenu.get(); }
  [[nodiscard]] QAction* named(const QString& name) const;
  void refresh();

 private:
  struct Work {
    QAction* action = nullptr;
    std::function<QString()> whyNot;
  };
  void add(QMenu& menu, const char* name, const QString& text, std::function<QString()> whyNot,
           std::function<void()> run);
  void carryOut(VerbDialog& dialog);

  void giveQueen();
  void giveCells();
  void mark();
  void queenGone();
  void swarmed();
  void trouble(apiary::EventKind kind);
  void bought();
  void parting(bool sold);

  [[nodiscard]] base::HiveId hive() const;
  [[nodiscard]] apiary::HiveState state(base::Date day) const;
  [[nodiscard]] std::optional<base::ColonyId> colony() const;
  [[nodiscard]] const apiary::ColonyState* lives(const apiary::HiveState& state) const;
  /// A name that no colony had yet.
  [[nodiscard]] base::ColonyId freshColony(const base::HiveId& hive, base::Date day) const;
  [[nodiscard]] QString freshQueen(base::Date day) const;

  widgets::SeasonHub& m_hub;
  QWidget& m_window;
  std::unique_ptr<QMenu> m_queenMenu, m_colonyMenu;
  std::vector<Work> m_work;
};

}  // namespace outyard::hive
