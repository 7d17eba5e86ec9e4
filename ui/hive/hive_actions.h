// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "ui/hive/work_actions.h"

namespace outyard::hive {

/// What can be recorded about the selected hive: one action each, greyed with its reason while it
/// cannot be done, opening one small dialog.
class HiveActions : public WorkActions {
  Q_OBJECT
 public:
  HiveActions(widgets::SeasonHub& hub, QWidget& window);
  using WorkActions::named;

 private:
  void add(const QString& name, const QString& text, const QKeySequence& key,
           std::function<QString()> whyNot, std::function<void()> run);

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

  [[nodiscard]] std::optional<base::ColonyId> colony() const;
  /// Named in a record only where two share the hive.
  [[nodiscard]] std::optional<base::ColonyId> named() const;
  [[nodiscard]] apiary::Event event(apiary::EventKind kind, base::Date day) const;
  [[nodiscard]] QString whyNoEvent(apiary::Event probe) const;
  /// The upper colony of two, if there is one.
  [[nodiscard]] std::optional<base::ColonyId> upper(base::Date day) const;

  widgets::SeasonHub& m_hub;
  QWidget& m_window;
};

}  // namespace outyard::hive
