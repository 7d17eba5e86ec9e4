// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>
#include <optional>

#include "ui/rounds/round_board.h"
#include "ui/widgets/due_runner.h"

namespace outyard::rounds {

/// Works out what falls due in the days of the board, and the rounds proposed for it.
class RoundsRunner : public widgets::DueRunner {
  Q_OBJECT
 public:
  explicit RoundsRunner(widgets::SeasonHub& hub, QObject* parent = nullptr);
  /// Days before the working date are not asked for.
  void setBoardDays(base::Date from, base::Date to);
  /// Proposes rounds once everything due is worked out.
  void propose();
  [[nodiscard]] bool proposing() const { return m_propose; }
  [[nodiscard]] bool fresh() const { return m_due != nullptr && fits(); }
  /// The last one that was worked out for these days; null before the first.
  [[nodiscard]] const planning::DueList* due() const { return m_due.get(); }

 Q_SIGNALS:
  void finished();
  void proposed(std::shared_ptr<outyard::rounds::Proposal> proposal);

 protected:
  bool begins() override { return m_asked; }
  void allReady() override;
  void forget() override;
  void stop() override;

 private:
  void askProposal();

  Due m_due;
  bool m_asked = false, m_propose = false;
};

}  // namespace outyard::rounds
