// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/apiary/state.h"
#include "core/forecast/what_if.h"
#include "core/strength/frame_table.h"
#include "ui/adapt/words.h"
#include "ui/charts/colony_course.h"

/// What something tried out would give, against leaving the colony as it is.
namespace outyard::charts {
namespace {

using base::Date;
using forecast::Action;

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

constexpr double kFedKg = 5;
constexpr int kSoonDays = 42;

/// Cells of the colony's chambers and supers, and those of one more chamber like its lowest.
struct Room {
  double nest = 0, supers = 0, chamber = 0;
};
Room roomOf(const apiary::Season& season, const apiary::HiveState& hive,
            const base::ColonyId& colony) {
  Room room;
  for (const auto& box : hive.boxesOf(colony)) {
    const auto figures = strength::figuresFor(season, box.frameType);
    if (!figures || box.role == apiary::BoxRole::Feeder) continue;
    const int frames = box.frames > 0 ? box.frames : figures->framesPerBox;
    const double cells = 2.0 * frames * figures->cellsPerSide();
    (box.role == apiary::BoxRole::Super ? room.supers : room.nest) += cells;
    if (room.chamber <= 0 && box.role == apiary::BoxRole::Chamber) room.chamber = cells;
  }
  return room;
}

/// The planned task that boosts the colony's hive, or for which it gives.
const apiary::Task* boostTask(const apiary::Season& season, const base::HiveId& hive, Date today) {
  using apiary::Method;
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    if (task.state != apiary::TaskState::Planned || !task.method || !task.hive) continue;
    if (task.hive != hive && task.otherHive != hive) continue;
    if (task.latest && *task.latest < today) continue;
    switch (*task.method) {
      case Method::Stack:
      case Method::SealedFrames:
      case Method::NurseBees:
      case Method::ChangePlaces:
      case Method::Unite:
        if (task.otherHive) return &task;
        break;
      default:
        break;
    }
  }
  return nullptr;
}

base::ColonyId colonyOf(const apiary::Season& season, const base::HiveId& hive,
                        const std::optional<base::ColonyId>& named, Date day) {
  const auto state = apiary::hiveOn(season, hive, day);
  return apiary::colonyMeant(state, named).value_or(base::ColonyId(hive.str()));
}

forecast::Joint jointOf(const apiary::Season& season, const apiary::Task& task, Date today) {
  using apiary::Method;
  using forecast::Joint;
  Joint joint;
  joint.date = std::max(today, task.plannedOn.value_or(task.earliest.value_or(today)));
  const double amount = task.amount.value_or(1);
  switch (*task.method) {
    case Method::SealedFrames: {
      joint.kind = Joint::Kind::SealedFrames;
      joint.combs = amount;
      double cells = 6900;
      for (const auto& box : apiary::hiveOn(season, *task.otherHive, today).boxes) {
        if (const auto f = strength::figuresFor(season, box.frameType)) {
          cells = 2 * f->cellsPerSide();
          break;
        }
      }
      constexpr double kFill = 0.7, kCling = 800;  // as the plan reckons a given comb
      joint.cells = amount * cells * kFill;
      joint.bees = amount * kCling;
      break;
    }
    case Method::NurseBees:
      joint.kind = Joint::Kind::NurseBees;
      joint.bees = task.unit == apiary::Unit::Frames ? amount * 1400 : std::max(amount, 1000.0);
      break;
    case Method::ChangePlaces:
      joint.kind = Joint::Kind::ChangePlaces;
      break;
    case Method::Unite:
      joint.kind = Joint::Kind::Unite;
      break;
    default:
      joint.kind = Joint::Kind::Stack;
      joint.until = joint.date.plusDays(28);
      break;
  }
  return joint;
}

std::vector<Action> actionsOf(const CourseAsk& ask, const apiary::Season& season,
                              const apiary::HiveState& hive) {
  const auto action = [&](Action::Kind kind, double amount = 0, double amount2 = 0) {
    return Action{ask.today, kind, amount, amount2};
  };
  switch (ask.trial) {
    case Trial::Chamber: {
      const Room room = roomOf(season, hive, ask.colony);
      return {action(Action::Kind::Boxes, room.nest + room.chamber, room.supers)};
    }
    case Trial::Fed:
      return {action(Action::Kind::Feed, kFedKg)};
    case Trial::Swarmed:
      return {action(Action::Kind::Swarmed)};
    case Trial::Requeened:
      return {action(Action::Kind::QueenGone), action(Action::Kind::QueenIn)};
    case Trial::AsItIs:
    case Trial::Boosted:
      return {};
  }
  return {};
}

/// The difference of the same courses with and without, in words.
QString differenceWords(const forecast::MemberDay& with, const forecast::MemberDay& without,
                        const QString& trial) {
  std::vector<double> apart;
  int more = 0;
  for (std::size_t k = 0; k < with.seen.size() && k < without.seen.size(); ++k) {
    const double d = static_cast<double>(with.seen[k]) - static_cast<double>(without.seen[k]);
    apart.push_back(d);
    more += d > 0 ? 1 : 0;
  }
  if (apart.empty()) return {};
  std::sort(apart.begin(), apart.end());
  const auto at = [&](double p) {
    return apart[static_cast<std::size_t>(p * static_cast<double>(apart.size() - 1) + 0.5)];
  };
  const double low = at(0.1), middle = at(0.5), high = at(0.9);
  const QString day = adapt::dateText(with.date);
  const double share = static_cast<double>(more) / static_cast<double>(apart.size());
  // Less than a tenth of a thousand bees cannot be told apart in a yard.
  if (std::abs(middle) < 100 && std::abs(low) < 300 && std::abs(high) < 300) {
    return Course::tr("%1: on %2 about equal to leaving it as it is.").arg(trial, day);
  }
  const auto number = [](double v) { return adapt::roundNumber(std::abs(v)); };
  if (low < 0 && high > 0) {
    return Course::tr("%1: on %2 between %3 bees fewer and %4 more, more in %5 of 100 courses.")
        .arg(trial, day, number(low), number(high))
        .arg(std::lround(share * 100));
  }
  if (middle >= 0) {
    return Course::tr("%1: on %2 %3 bees more (%4–%5) than as it is.")
        .arg(trial, day, number(middle), number(low), number(high));
  }
  return Course::tr("%1: on %2 %3 bees fewer (%4–%5) than as it is.")
      .arg(trial, day, number(middle), number(high), number(low));
}

}  // namespace

QString trialText(Trial trial) {
  switch (trial) {
    case Trial::AsItIs:
      return Course::tr("As it is");
    case Trial::Chamber:
      return Course::tr("With one more chamber today");
    case Trial::Fed:
      return Course::tr("Fed 5 kg of stores today");
    case Trial::Swarmed:
      return Course::tr("Swarmed today");
    case Trial::Requeened:
      return Course::tr("Requeened today");
    case Trial::Boosted:
      return Course::tr("Boosted as planned");
  }
  return {};
}

void addTrial(CourseData& data, const apiary::Season& season, const CourseAsk& ask,
              base::Progress& progress) {
  data.tried = trialText(ask.trial);
  const auto hiveId = apiary::hiveOfColony(season, ask.colony, ask.today);
  if (!hiveId) return;
  const auto hive = apiary::hiveOn(season, *hiveId, ask.today);
  if (ask.trial == Trial::Chamber && roomOf(season, hive, ask.colony).chamber <= 0) {
    data.remarks.prepend(Course::tr("The boxes of %1 are not recorded: enter them first to try a "
                                    "chamber.")
                             .arg(QString::fromStdString(hiveId->str())));
    return;
  }
  forecast::ForecastAsk f;
  f.from = ask.today;
  f.to = ask.today.plusDays(ask.daysAhead);
  f.stepDays = ask.stepDays;
  std::vector<base::ColonyId> colonies{ask.colony};
  const apiary::Task* task = nullptr;
  base::ColonyId receiver, donor;
  if (ask.trial == Trial::Boosted) {
    task = boostTask(season, *hiveId, ask.today);
    if (!task) {
      data.remarks.prepend(Course::tr("No boost is planned for %1: plan one in Pairs first.")
                               .arg(QString::fromStdString(hiveId->str())));
      return;
    }
    receiver = colonyOf(season, *task->hive, task->colony, ask.today);
    donor = colonyOf(season, *task->otherHive, task->otherColony, ask.today);
    colonies = {receiver, donor};
  }
  const auto starts = forecast::Starts::prepare(season, colonies, f, 1, progress);
  if (progress.cancelled()) return;
  for (const auto& colony : colonies) {
    if (!starts.has(colony)) return;
  }
  std::vector<Date> days;
  for (Date d = f.from; d <= f.to; d = d.plusDays(f.stepDays)) days.push_back(d);
  const auto without = starts.alone(ask.colony, {}, days);
  forecast::Course with;
  if (task) {
    auto both = starts.together(receiver, donor, jointOf(season, *task, ask.today), days);
    with = ask.colony == receiver ? std::move(both.receiver) : std::move(both.donor);
  } else {
    with = starts.alone(ask.colony, actionsOf(ask, season, hive), days);
  }
  addDays(data.lanes, with.bands(), ask.units, &Series::other);
  for (std::size_t i = 0; i < with.days.size() && i < without.days.size(); ++i) {
    if (with.days[i].date - ask.today < kSoonDays) continue;
    data.remarks.prepend(differenceWords(with.days[i], without.days[i], data.tried));
    break;
  }
}

}  // namespace outyard::charts
