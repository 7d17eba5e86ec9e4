// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QElapsedTimer>
#include <memory>

#include "core/planning/desk_facts.h"
#include "ui/widgets/due_runner.h"

namespace outyard::desk {

using Facts = std::shared_ptr<const planning::DeskFacts>;

/// Works out what the next days ask for, and the sums over all yards.
class DeskRunner : public widgets::DueRunner {
  Q_OBJECT
 public:
  static constexpr int kDays = 14;

  explicit DeskRunner(widgets::SeasonHub& hub, QObject* parent = nullptr);
  /// True when the last facts handed out fit the season.
  [[nodiscard]] bool fresh() const { return fits(); }

 Q_SIGNALS:
  /// All of it; on the first go of a large outfit also what is ready so far, before fresh().
  void finished(std::shared_ptr<const outyard::planning::DeskFacts> facts);

 protected:
  bool begins() override;
  void yardReady() override;
  void allReady() override { askSums(true); }

 private:
  void askSums(bool last);

  bool m_first = false;  ///< nothing was ready before: what comes in is shown at once
  QElapsedTimer m_sinceShown;
};

}  // namespace outyard::desk
