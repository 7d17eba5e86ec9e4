// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAction>
#include <QList>
#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "core/session/commands.h"

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class VerbDialog;

/// What can be recorded about the selected hive: one action each, greyed with its reason while it
/// cannot be done, opening one small dialog.
class HiveActions : public QObject {
  Q_OBJECT
 public:
  HiveActions(widgets::SeasonHub& hub, QWidget& window);
  [[nodiscard]] QList<QAction*> all() const;
  [[nodiscard]] QAction* named(const QString& name) const;
  /// Looks again at what can be done.
  void refresh();

 private:
  struct Work {
    QAction* action = nullptr;
    std::function<QString()> whyNot;
  };
  void add(const QString& name, const QString& text, const QKeySequence& key,
           std::function<QString()> whyNot, std::function<void()> run);
  /// Shows the dialog and does its command.
  void carryOut(VerbDialog& dialog);

  void inspect();
  void feed();
  void treat();
  void note();
  void wash();
  void addBox();
  void reverse();
  void takeOff();
  void death();
  void overrule();
  void queen();

  [[nodiscard]] base::HiveId hive() const;
  [[nodiscard]] std::optional<base::ColonyId> colony() const;
  /// Named in a record only where two share the hive.
  [[nodiscard]] std::optional<base::ColonyId> named() const;
  [[nodiscard]] apiary::HiveState state(base::Date day) const;
  [[nodiscard]] apiary::Event event(apiary::EventKind kind, base::Date day) const;
  [[nodiscard]] QString whyNoEvent(apiary::Event probe) const;
  /// The upper colony of two, if there is one.
  [[nodiscard]] std::optional<base::ColonyId> upper(base::Date day) const;

  widgets::SeasonHub& m_hub;
  QWidget& m_window;
  std::vector<Work> m_work;
};

}  // namespace outyard::hive
