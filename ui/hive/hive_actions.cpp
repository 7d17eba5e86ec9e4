// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/hive_actions.h"

#include <QWidget>

#include "ui/adapt/words.h"
#include "ui/hive/inspection_form.h"
#include "ui/hive/stack_work.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

using apiary::EventKind;

HiveActions::HiveActions(widgets::SeasonHub& hub, QWidget& window)
    : WorkActions(hub, window), m_hub(hub), m_window(window) {
  const auto today = [this] { return m_hub.workingDate(); };
  add(
      QStringLiteral("inspect"), tr("Enter &inspection…"), QKeySequence(Qt::CTRL | Qt::Key_I),
      [this, today] {
        apiary::Inspection probe;
        probe.hive = hive();
        probe.colony = named();
        probe.date = today();
        probe.seams = 1;
        return m_hub.whyNot(*session::recordInspection(probe, {}, {}));
      },
      [this] { inspect(); });
  add(
      QStringLiteral("feed"), tr("&Feed…"), {},
      [this, today] {
        auto probe = event(EventKind::Fed, today());
        probe.what = apiary::Goods::Fondant;
        return whyNoEvent(probe);
      },
      [this] { feed(); });
  add(
      QStringLiteral("treat"), tr("&Treat…"), {},
      [this, today] {
        auto probe = event(EventKind::Treated, today());
        probe.method = "probe";
        return whyNoEvent(probe);
      },
      [this] { treat(); });
  add(
      QStringLiteral("note"), tr("&Note…"), {},
      [this, today] { return whyNoEvent(event(EventKind::Note, today())); }, [this] { note(); });
  add(
      QStringLiteral("wash"), tr("&Mite count…"), {},
      [this, today] {
        apiary::Wash probe;
        probe.hive = hive();
        probe.colony = named();
        probe.date = today();
        probe.bees = 300;
        return m_hub.whyNot(*session::recordWash(probe));
      },
      [this] { wash(); });
  add(
      QStringLiteral("addBox"), tr("Add &box…"), {},
      [this, today] {
        const auto now = state(today());
        return m_hub.whyNot(*session::changeStack(
            hive(), today(), withBox(now, BoxSpot::Top, usualBox(now, apiary::BoxRole::Super)),
            EventKind::BoxAdded));
      },
      [this] { addBox(); });
  add(
      QStringLiteral("reverse"), tr("&Reverse boxes…"), {},
      [this, today] {
        const auto now = state(today());
        const auto turned = reversedChambers(now, colony());
        if (!turned) {
          return tr("There is nothing to reverse: it takes two chambers of the same colony.");
        }
        return m_hub.whyNot(*session::changeStack(hive(), today(), *turned, EventKind::Reversed));
      },
      [this] { reverse(); });
  add(
      QStringLiteral("takeOff"), tr("Take &off upper colony…"), {},
      [this, today] {
        return upper(today()) ? QString()
                              : tr("Only one colony lives here: there is none to take off.");
      },
      [this] { takeOff(); });
  add(
      QStringLiteral("queen"), tr("Seen &laying, cells out…"), {},
      [this, today] { return whyNoEvent(event(EventKind::QueenSeenLaying, today())); },
      [this] { queen(); });
  add(
      QStringLiteral("overrule"), tr("Overrule &judgement…"), {},
      [this, today] {
        if (!colony()) return tr("No colony lives here: there is nothing to judge.");
        return m_hub.whyNot(*session::overruleVerdict(hive(), *colony(), today(),
                                                      apiary::VerdictCode::Fair, "probe"));
      },
      [this] { overrule(); });
  add(
      QStringLiteral("death"), tr("&Died…"), {},
      [this, today] {
        if (!colony()) return tr("No colony lives here.");
        return m_hub.whyNot(*session::recordDeath(hive(), *colony(), today(), "probe"));
      },
      [this] { death(); });
  refresh();
}

void HiveActions::add(const QString& name, const QString& text, const QKeySequence& key,
                      std::function<QString()> whyNot, std::function<void()> run) {
  auto* action = new QAction(text, this);
  action->setObjectName(name);
  action->setShortcut(key);
  action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
  WorkActions::add(action, std::move(whyNot), std::move(run));
  m_window.addAction(action);
}

void HiveActions::inspect() {
  InspectionForm form(m_hub, hive(), colony(), &m_window);
  if (task()) form.forTask(task()->task);
  m_hub.dialogs().run(form);
}

std::optional<base::ColonyId> HiveActions::colony() const {
  const auto now = state(m_hub.workingDate());
  const auto& chosen = m_hub.selection().colony;
  if (chosen && now.colony(*chosen)) return chosen;
  if (now.colonies.empty()) return std::nullopt;
  return now.colonies.front().colony;
}

std::optional<base::ColonyId> HiveActions::named() const {
  return state(m_hub.workingDate()).stacked() ? colony() : std::nullopt;
}

apiary::Event HiveActions::event(EventKind kind, base::Date day) const {
  apiary::Event e;
  e.kind = kind;
  e.date = day;
  e.hive = hive();
  e.colony = named();
  return e;
}

QString HiveActions::whyNoEvent(apiary::Event probe) const {
  return m_hub.whyNot(*session::recordEvent(std::move(probe)));
}

std::optional<base::ColonyId> HiveActions::upper(base::Date day) const {
  const auto now = state(day);
  if (!now.stacked()) return std::nullopt;
  for (const auto& c : now.colonies) {
    if (c.place == apiary::ColonyPlace::OverExcluder ||
        c.place == apiary::ColonyPlace::OverDoubleScreen ||
        c.place == apiary::ColonyPlace::OverBoard) {
      return c.colony;
    }
  }
  return std::nullopt;
}

}  // namespace outyard::hive
