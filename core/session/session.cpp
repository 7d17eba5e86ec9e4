// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/session.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "core/base/log.h"
#include "core/base/text.h"

namespace outyard::session {
namespace {

using apiary::Change;
using apiary::ChangeList;

/// A list that the memory could not take must never reach the disk: it is a bug and throws here.
void mustFit(const apiary::Season& season, const ChangeList& changes) {
  std::map<std::pair<apiary::TableId, std::string>, bool> stands;
  for (const Change& c : changes) {
    const auto [it, fresh] = stands.try_emplace({c.table, c.key}, false);
    if (fresh) it->second = season.row(c.table, c.key).has_value();
    if (it->second != c.before.has_value()) {
      throw std::logic_error("change does not fit: " + apiary::tableSpec(c.table).name);
    }
    if (c.after) {
      if (apiary::rowKey(*c.after) != c.key) throw std::logic_error("change with a foreign key");
      apiary::withTable(c.table, [&]<class T>(std::type_identity<T>) {
        static_cast<void>(apiary::fromRow<T>(*c.after));
      });
    }
    it->second = c.after.has_value();
  }
}

template <class I>
void addOnce(std::vector<I>& list, const I& id) {
  if (std::find(list.begin(), list.end(), id) == list.end()) list.push_back(id);
}

void noteRow(const apiary::Row& row, Notice& notice) {
  const auto& columns = apiary::tableSpec(row.table).columns;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const auto* text = std::get_if<std::string>(&row.values[i]);
    if (!text) continue;
    const std::string& name = columns[i].name;
    if (name == "hive" || name == "other_hive" || name == "donor_hive") {
      addOnce(notice.hives, base::HiveId{*text});
    } else if (name == "yard" || name == "other_yard") {
      addOnce(notice.yards, base::YardId{*text});
    }
  }
}

/// One time of entry for all rows of a step, a second after the step before where the clock has
/// not moved on: records of one day are read in the order of their entry.
class StepClock final : public base::Clock {
 public:
  StepClock(const base::Clock& clock, const std::string& last)
      : m_clock(clock), m_now(clock.nowUtc()) {
    if (m_now <= last && last.size() == m_now.size()) m_now = secondAfter(last);
  }
  [[nodiscard]] base::Date today() const override { return m_clock.today(); }
  [[nodiscard]] std::string nowUtc() const override { return m_now; }

 private:
  /// Of YYYY-MM-DDTHH:MM:SSZ; a text of another form as it is.
  static std::string secondAfter(const std::string& utc) {
    const auto day = base::Date::parse(std::string_view(utc).substr(0, 10));
    const auto two = [&](std::size_t at) { return base::parseInteger(utc.substr(at, 2)); };
    if (!day || utc.size() != 20) return utc;
    const auto h = two(11), m = two(14), s = two(17);
    if (!h || !m || !s) return utc;
    const auto seconds = static_cast<int>(*h * 3600 + *m * 60 + *s + 1);
    const int rest = seconds % 86400;
    const auto pad = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    return day->plusDays(seconds / 86400).iso() + 'T' + pad(rest / 3600) + ':' +
           pad(rest / 60 % 60) + ':' + pad(rest % 60) + 'Z';
  }

  const base::Clock& m_clock;
  std::string m_now;
};

}  // namespace

Session::Session(apiary::Season season, std::unique_ptr<SeasonStore> store, base::IdSource& ids,
                 const base::Clock& clock)
    : m_season(std::move(season)), m_store(std::move(store)), m_ids(ids), m_clock(clock) {}

base::Result<std::unique_ptr<Session>> Session::open(std::unique_ptr<SeasonStore> store,
                                                     base::IdSource& ids,
                                                     const base::Clock& clock) {
  auto season = store->load();
  if (!season) return season.failure();
  return std::unique_ptr<Session>(
      new Session(std::move(season.value()), std::move(store), ids, clock));
}

base::Date Session::workingDate() const {
  return m_season.workingDate().value_or(m_clock.today());
}

base::Result<void> Session::check(const Command& command) const {
  if (const auto day = command.doneOn()) {
    const base::Date latest = std::max(m_clock.today(), workingDate());
    if (*day > latest) {
      return base::fail(base::message("session.in_the_future", day->iso(), latest.iso()));
    }
  }
  return command.check(m_season);
}

base::Result<void> Session::execute(const Command& command) {
  if (auto may = check(command); !may) return may;
  const StepClock clock(m_clock, m_lastEntered);
  ChangeList changes = command.changes(m_season, Context{m_ids, clock});
  std::erase_if(changes, [](const Change& c) { return c.before == c.after; });
  if (changes.empty()) return {};
  mustFit(m_season, changes);
  // Made before the transaction: after it nothing may fail any more.
  Step step{command.title(), std::move(changes)};
  m_steps.reserve(m_steps.size() + 1);
  if (auto written = m_store->commit(step.changes); !written) return written;
  m_season.apply(step.changes);
  m_steps.resize(m_done);
  m_steps.push_back(std::move(step));
  m_lastEntered = clock.nowUtc();
  ++m_done;
  tell(m_steps.back().changes, Notice::Cause::Executed);
  return {};
}

std::optional<base::Message> Session::undoTitle() const {
  if (!canUndo()) return std::nullopt;
  return m_steps[m_done - 1].title;
}

std::optional<base::Message> Session::redoTitle() const {
  if (!canRedo()) return std::nullopt;
  return m_steps[m_done].title;
}

base::Result<void> Session::undo() {
  if (!canUndo()) return base::fail(base::message("session.nothing_to_undo"));
  const ChangeList back = apiary::reversed(m_steps[m_done - 1].changes);
  if (auto written = m_store->commit(back); !written) return written;
  m_season.apply(back);
  --m_done;
  tell(back, Notice::Cause::Undone);
  return {};
}

base::Result<void> Session::redo() {
  if (!canRedo()) return base::fail(base::message("session.nothing_to_redo"));
  const ChangeList again = m_steps[m_done].changes;
  if (auto written = m_store->commit(again); !written) return written;
  m_season.apply(again);
  ++m_done;
  tell(again, Notice::Cause::Redone);
  return {};
}

std::shared_ptr<void> Session::subscribe(Listener listener) {
  auto token = std::make_shared<Listener>(std::move(listener));
  m_listeners.push_back(token);
  return token;
}

void Session::tell(const ChangeList& changes, Notice::Cause cause) {
  Notice notice;
  notice.cause = cause;
  notice.changes = changes;
  notice.revision = m_season.revision();
  for (const Change& c : changes) {
    if (c.before) noteRow(*c.before, notice);
    if (c.after) noteRow(*c.after, notice);
  }
  for (const auto& hive : notice.hives) {
    if (const auto* row = m_season.hive(hive)) addOnce(notice.yards, row->yard);
  }
  std::erase_if(m_listeners, [](const auto& weak) { return weak.expired(); });
  const auto listeners = m_listeners;  // a listener may subscribe or drop others while told
  for (const auto& weak : listeners) {
    if (const auto listener = weak.lock()) (*listener)(notice);
  }
}

}  // namespace outyard::session
