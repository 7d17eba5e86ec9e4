// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "core/apiary/season.h"
#include "core/sheet/shape.h"
#include "ui/pairs/plan_runner.h"

namespace outyard::pairs {

/// The yard to scale with an arrow for each pair of the plan, the chosen one drawn stronger. Its
/// table twin stands beside it.
class PairsMap : public QWidget {
  Q_OBJECT
 public:
  explicit PairsMap(QWidget* parent = nullptr);
  void setPlan(std::shared_ptr<const PlanOutcome> outcome,
               std::shared_ptr<const apiary::Season> season);
  void setYard(std::optional<base::YardId> yard);
  [[nodiscard]] const std::optional<base::YardId>& yard() const { return m_yard; }
  void choose(std::optional<base::ColonyId> colony);
  [[nodiscard]] QSize sizeHint() const override { return {420, 320}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {220, 160}; }
  /// The drawing for a ground of that size in millimetres.
  [[nodiscard]] sheet::Shapes shapesFor(double widthMm, double heightMm) const;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void describe();
  /// The pairs of the plan whose small colony stands in the yard shown.
  [[nodiscard]] std::vector<const planning::BoostOption*> pairsHere() const;

  std::shared_ptr<const PlanOutcome> m_outcome;
  std::shared_ptr<const apiary::Season> m_season;
  std::optional<base::YardId> m_yard;
  std::optional<base::ColonyId> m_colony;
};

}  // namespace outyard::pairs
