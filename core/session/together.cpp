// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "core/session/commands.h"

namespace outyard::session {

namespace {

class Together final : public Command {
 public:
  Together(base::Message title, std::vector<HiveStep> steps)
      : m_title(std::move(title)), m_steps(std::move(steps)) {}

  [[nodiscard]] base::Message title() const override { return m_title; }

  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override {
    // Ids and time of a trial: nothing of it is kept. Steps that are themselves several steps must
    // not come upon ids that the trial around them gave away.
    base::SeededIds ids{1 + season.revision()};
    const base::FixedClock clock{base::Date{}, "9999-12-31T23:59:59Z"};
    const Context trial{ids, clock};
    apiary::Season after = season;
    for (const HiveStep& step : m_steps) {
      if (auto may = step.command->check(after); !may) {
        base::Failure failure = may.failure();
        failure.messages.insert(failure.messages.begin(),
                                base::message("session.together_refused", step.hive.str()));
        return failure;
      }
      after.apply(step.command->changes(after, trial));
    }
    return {};
  }

  [[nodiscard]] apiary::ChangeList changes(const apiary::Season& season,
                                           const Context& context) const override {
    apiary::Season after = season;
    apiary::ChangeList all;
    for (const HiveStep& step : m_steps) {
      const auto some = step.command->changes(after, context);
      after.apply(some);
      all.insert(all.end(), some.begin(), some.end());
    }
    return all;
  }

  [[nodiscard]] std::optional<Date> doneOn() const override {
    std::optional<Date> latest;
    for (const HiveStep& step : m_steps) {
      const auto day = step.command->doneOn();
      if (day && (!latest || *latest < *day)) latest = day;
    }
    return latest;
  }

 private:
  base::Message m_title;
  std::vector<HiveStep> m_steps;
};

}  // namespace

CommandPtr together(base::Message title, std::vector<HiveStep> steps) {
  return std::make_unique<Together>(std::move(title), std::move(steps));
}

}  // namespace outyard::session
