// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/clock.h"
#include "core/base/message.h"
#include "core/base/random.h"
#include "core/base/result.h"
#include "core/session/store.h"

namespace outyard::session {

/// What a command may use besides the season: ids for new records and the time of entry.
struct Context {
  base::IdSource& ids;
  const base::Clock& clock;
};

/// One verb with its arguments (made by the functions of commands.h). The same object answers
/// whether it may be done and what it would change.
class Command {
 public:
  virtual ~Command() = default;
  /// Named for the Undo menu ("Undo: inspection of TR-02").
  [[nodiscard]] virtual base::Message title() const = 0;
  /// Why it cannot be done now, in messages that name the place and the cure; ok when it can.
  [[nodiscard]] virtual base::Result<void> check(const apiary::Season& season) const = 0;
  /// What it changes. Called only after check was ok; an empty list is a no-op and leaves no undo
  /// step.
  [[nodiscard]] virtual apiary::ChangeList changes(const apiary::Season& season,
                                                   const Context& context) const = 0;
  /// The latest day on which it says that something was done or seen; Session refuses one that
  /// has not come yet (after the clock's day and after the season's working date). Empty for
  /// plans, drawings and settings.
  [[nodiscard]] virtual std::optional<base::Date> doneOn() const { return std::nullopt; }
};
using CommandPtr = std::unique_ptr<Command>;

/// What changed, told to every subscriber after the transaction and the memory are done.
struct Notice {
  enum class Cause { Executed, Undone, Redone };
  Cause cause = Cause::Executed;
  apiary::ChangeList changes;
  std::vector<base::HiveId> hives;  ///< touched, each once
  std::vector<base::YardId> yards;
  std::uint64_t revision = 0;
};

/// The open season: one list of commands, undo and redo. A transaction is an undo step is a
/// notice. Transaction first, then memory, then notice: when the disk refuses, nothing changed
/// anywhere. Not thread safe: belongs to the thread of its owner.
class Session {
 public:
  /// Loads the season from the store.
  static base::Result<std::unique_ptr<Session>> open(std::unique_ptr<SeasonStore> store,
                                                     base::IdSource& ids, const base::Clock& clock);

  [[nodiscard]] const apiary::Season& season() const { return m_season; }
  /// The season's working_date, else the clock's day.
  [[nodiscard]] base::Date workingDate() const;

  [[nodiscard]] base::Result<void> check(const Command& command) const;
  base::Result<void> execute(const Command& command);

  [[nodiscard]] bool canUndo() const { return m_done > 0; }
  [[nodiscard]] bool canRedo() const { return m_done < m_steps.size(); }
  [[nodiscard]] std::optional<base::Message> undoTitle() const;
  [[nodiscard]] std::optional<base::Message> redoTitle() const;
  base::Result<void> undo();
  base::Result<void> redo();

  using Listener = std::function<void(const Notice&)>;
  /// The listener is called until the returned token is destroyed.
  [[nodiscard]] std::shared_ptr<void> subscribe(Listener listener);

 private:
  Session(apiary::Season season, std::unique_ptr<SeasonStore> store, base::IdSource& ids,
          const base::Clock& clock);
  void tell(const apiary::ChangeList& changes, Notice::Cause cause);

  struct Step {
    base::Message title;
    apiary::ChangeList changes;
  };
  apiary::Season m_season;
  std::unique_ptr<SeasonStore> m_store;
  base::IdSource& m_ids;
  const base::Clock& m_clock;
  std::vector<Step> m_steps;
  std::string m_lastEntered;  ///< two steps never share their time of entry: it tells their order
  std::size_t m_done = 0;     ///< steps before this one are done, the others can be redone
  std::vector<std::weak_ptr<Listener>> m_listeners;
};

}  // namespace outyard::session
