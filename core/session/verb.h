// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/apiary/state.h"
#include "core/apiary/validate.h"
#include "core/base/message.h"
#include "core/session/change_builder.h"
#include "core/session/session.h"

/// Shared by the files that implement commands.h; nobody else includes it.
namespace outyard::session {

/// Collects why a verb cannot be done. Each question answers true or a state when all is well and
/// otherwise notes a message, once.
class Checker {
 public:
  explicit Checker(const apiary::Season& season) : m_season(season) {}

  [[nodiscard]] const apiary::Season& season() const { return m_season; }
  void fault(base::Message message);
  [[nodiscard]] bool ok() const { return m_failure.messages.empty(); }
  [[nodiscard]] base::Result<void> result() const;

  /// The id of something new: neither blank nor with white space around it, at most 64 characters.
  bool name(const std::string& id);
  bool yard(const base::YardId& id);
  bool hive(const base::HiveId& id);
  bool queen(const std::optional<base::QueenId>& id);
  bool task(const std::optional<base::TaskId>& id);
  bool sheet(const std::optional<base::SheetId>& id);
  /// The hive as it stood on the day: known, placed by then, not sold or lost. Boxes that were set
  /// over another hive are not its own any more (see boxesLeft).
  std::optional<apiary::HiveState> standing(const base::HiveId& id, base::Date date);
  /// The colony that a record of the hive means on that day (named; else the only one). The one
  /// that left on the very day counts too.
  std::optional<base::ColonyId> colony(const apiary::HiveState& state,
                                       const std::optional<base::ColonyId>& named, base::Date date);
  /// No foul brood suspected in the yard on the day: nothing goes in or out.
  void healthy(const base::YardId& yard, base::Date date);
  /// Refuses when the hive has later rows that a step on this day would contradict.
  void nothingLater(const base::HiveId& hive, base::Date date);
  void noLaterPlace(const base::HiveId& hive, base::Date date);
  void noLaterStack(const base::HiveId& hive, base::Date date);
  /// A whole stack: positions 1 to n without a gap, known frame types, a chamber for each colony,
  /// an excluder, screen or board between two that stand one above the other.
  void stack(const apiary::HiveState& hive, const std::vector<apiary::BoxState>& boxes);
  /// Types, ranges and sums of one row; ids that are made on execution may be blank.
  template <class T>
  void row(const T& record) {
    row(apiary::toRow(record));
  }

 private:
  void row(const apiary::Row& row);

  const apiary::Season& m_season;
  base::Failure m_failure;
};

/// A command from two functions over the same arguments.
class Verb final : public Command {
 public:
  using Check = std::function<void(Checker&)>;
  using Write = std::function<void(ChangeBuilder&)>;
  Verb(base::Message title, std::optional<base::Date> doneOn, Check check, Write write)
      : m_title(std::move(title)),
        m_doneOn(doneOn),
        m_check(std::move(check)),
        m_write(std::move(write)) {}
  [[nodiscard]] base::Message title() const override { return m_title; }
  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override;
  [[nodiscard]] apiary::ChangeList changes(const apiary::Season& season,
                                           const Context& context) const override;
  [[nodiscard]] std::optional<base::Date> doneOn() const override { return m_doneOn; }

 private:
  base::Message m_title;
  std::optional<base::Date> m_doneOn;
  Check m_check;
  Write m_write;
};

CommandPtr verb(base::Message title, std::optional<base::Date> doneOn, Verb::Check check,
                Verb::Write write);

/// The open stay that counts of the colony in the hive on the day; null when there is none.
const apiary::ColonyStay* openStay(const apiary::Season& season, const base::HiveId& hive,
                                   const base::ColonyId& colony, base::Date date);
/// A task that is not in the season yet; its plan is not asked for when it is made with it.
void checkNewTask(Checker& c, const apiary::Task& task, bool ofNewPlan);
/// Numbers the boxes from 1 in their order.
void renumber(std::vector<apiary::BoxState>& boxes);
/// Where an upper colony lives over what lies between.
apiary::ColonyPlace placeOver(apiary::Beneath between);
/// The event's kind in words.
base::Message kindName(apiary::EventKind kind);

}  // namespace outyard::session
