// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/queen_dialogs.h"

#include <QComboBox>
#include <QLineEdit>
#include <QWidget>
#include <algorithm>

#include "core/sheet/walking_order.h"
#include "ui/hive/hive_actions.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

// The cautions of these dialogs are common practice of the trade, no source.
namespace outyard::hive {

using apiary::EventKind;

namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::string trimmed(const QLineEdit* field) {
  return field->text().trimmed().toStdString();
}

void addYesNo(QComboBox* box) {
  box->addItem(QueenActions::tr("not told"));
  box->addItem(QueenActions::tr("yes"), true);
  box->addItem(QueenActions::tr("no"), false);
}

std::optional<bool> yesNo(const QComboBox* box) {
  if (box->currentIndex() <= 0) return std::nullopt;
  return box->currentData().toBool();
}

std::optional<int> whole(const QLineEdit* field) {
  const auto value = VerbDialog::number(field);
  return value ? std::optional(static_cast<int>(*value)) : std::nullopt;
}

/// The colour of a queen's year: white 1 and 6, yellow 2 and 7, red 3 and 8, green 4 and 9, blue 5
/// and 0 (common practice, no source).
QString colourOf(int year) {
  switch (year % 5) {
    case 1:
      return QueenActions::tr("white");
    case 2:
      return QueenActions::tr("yellow");
    case 3:
      return QueenActions::tr("red");
    case 4:
      return QueenActions::tr("green");
    default:
      return QueenActions::tr("blue");
  }
}

}  // namespace

QueenActions::~QueenActions() = default;

QueenActions::QueenActions(widgets::SeasonHub& hub, QWidget& window, HiveActions& others)
    : WorkActions(hub, window),
      m_hub(hub),
      m_window(window),
      m_queenMenu(std::make_unique<QMenu>(tr("&Queen"))),
      m_colonyMenu(std::make_unique<QMenu>(tr("&Colony"))) {
  m_queenMenu->setObjectName(QStringLiteral("queenMenu"));
  m_colonyMenu->setObjectName(QStringLiteral("colonyMenu"));
  const auto today = [this] { return m_hub.workingDate(); };
  const auto bees = [this]() -> std::optional<QString> {
    if (!colony()) return tr("No colony lives here.");
    return std::nullopt;
  };
  add(
      *m_queenMenu, "giveQueen", tr("&Give a queen…"),
      [this, today, bees] {
        if (const auto why = bees()) return *why;
        apiary::Queen probe;
        probe.queen = base::QueenId{freshQueen(today()).toStdString()};
        return m_hub.whyNot(
            *session::introduceQueen({hive(), *colony(), today(), probe, {}, {}, {}}));
      },
      [this] { giveQueen(); });
  add(
      *m_queenMenu, "giveCells", tr("Give queen &cells…"),
      [this, today, bees] {
        if (const auto why = bees()) return *why;
        return m_hub.whyNot(*session::giveQueenCells({hive(), colony(), today(), 1, {}, {}, {}}));
      },
      [this] { giveCells(); });
  add(
      *m_queenMenu, "markQueen", tr("&Mark or clip…"),
      [this, today, bees] {
        if (const auto why = bees()) return *why;
        return m_hub.whyNot(*session::markQueen({hive(), *colony(), today(), true, false, {}}));
      },
      [this] { mark(); });
  add(
      *m_queenMenu, "queenGone", tr("&Lost or taken out…"),
      [this, today, bees] {
        if (const auto why = bees()) return *why;
        return m_hub.whyNot(*session::recordQueenGone({hive(), *colony(), today(), false, {}, {}}));
      },
      [this] { queenGone(); });
  m_queenMenu->addSeparator();
  m_queenMenu->addAction(others.named(QStringLiteral("queen")));

  add(
      *m_colonyMenu, "swarmed", tr("&Swarmed…"),
      [this, today, bees] {
        if (const auto why = bees()) return *why;
        return m_hub.whyNot(*session::recordSwarm({hive(), *colony(), today(), true, {}, {}, {}}));
      },
      [this] { swarmed(); });
  for (const auto kind : {EventKind::Robbed, EventKind::Poisoned}) {
    const bool robbed = kind == EventKind::Robbed;
    add(
        *m_colonyMenu, robbed ? "robbed" : "poisoned", robbed ? tr("&Robbed…") : tr("&Poisoned…"),
        [this, today, bees, kind] {
          if (const auto why = bees()) return *why;
          apiary::Event probe;
          probe.kind = kind;
          probe.hive = hive();
          probe.colony = colony();
          probe.date = today();
          return m_hub.whyNot(*session::recordEvent(probe));
        },
        [this, kind] { trouble(kind); });
  }
  m_colonyMenu->addAction(others.named(QStringLiteral("death")));
  m_colonyMenu->addSeparator();
  add(
      *m_colonyMenu, "bought", tr("&Bought, into this hive…"),
      [this, today] {
        return m_hub.whyNot(*session::recordPurchase(
            {hive(), freshColony(hive(), today()), today(), std::nullopt, {}}));
      },
      [this] { bought(); });
  for (const bool sold : {true, false}) {
    add(
        *m_colonyMenu, sold ? "sold" : "lost", sold ? tr("S&old…") : tr("Stolen or &lost…"),
        [this, today, sold] {
          const session::Parting probe{hive(), colony(), today(), {}};
          return m_hub.whyNot(sold ? *session::recordSale(probe) : *session::recordLoss(probe));
        },
        [this, sold] { parting(sold); });
  }
  refresh();
}

void QueenActions::add(QMenu& menu, const char* name, const QString& text,
                       std::function<QString()> whyNot, std::function<void()> run) {
  auto* action = menu.addAction(text);
  action->setObjectName(QString::fromLatin1(name));
  WorkActions::add(action, std::move(whyNot), std::move(run));
}

std::optional<base::ColonyId> QueenActions::colony() const {
  const auto now = state(m_hub.workingDate());
  const auto& chosen = m_hub.selection().colony;
  if (chosen && now.colony(*chosen)) return chosen;
  if (now.colonies.empty()) return std::nullopt;
  return now.colonies.front().colony;
}

const apiary::ColonyState* QueenActions::lives(const apiary::HiveState& state) const {
  const auto who = colony();
  return who ? state.colony(*who) : nullptr;
}

base::ColonyId QueenActions::freshColony(const base::HiveId& hive, base::Date day) const {
  const auto& season = m_hub.season();
  base::ColonyId name{hive.str()};
  const std::string withYear = hive.str() + "/" + std::to_string(day.year());
  for (int n = 1; !season.stays(name).empty(); ++n) {
    name = base::ColonyId{n == 1 ? withYear : withYear + "-" + std::to_string(n)};
  }
  return name;
}

QString QueenActions::freshQueen(base::Date day) const {
  for (int n = 1;; ++n) {
    const QString name = QStringLiteral("%1-%2").arg(day.year()).arg(n, 2, 10, QLatin1Char('0'));
    if (!m_hub.season().queen(base::QueenId{name.toStdString()})) return name;
  }
}

void QueenActions::giveQueen() {
  VerbDialog dialog(
      m_hub, QStringLiteral("giveQueenDialog"), tr("Give %1 a queen").arg(qs(colony()->str())),
      tr("The earlier queen and all cells out first, no eggs or laying workers left. In the cage, "
         "food in its plug, between combs with young bees; let alone for a week, then look for "
         "eggs. Feed when there is no flow."),
      &m_window);
  auto* known = dialog.addChoice(QStringLiteral("known"), tr("Queen"));
  known->addItem(tr("a new one"));
  const auto& season = m_hub.season();
  for (const auto& [key, q] : season.table<apiary::Queen>()) {
    const bool housed = std::any_of(season.table<apiary::ColonyStay>().begin(),
                                    season.table<apiary::ColonyStay>().end(), [&](const auto& row) {
                                      return season.counts(row.second) &&
                                             row.second.queen == q.queen && !row.second.toDate;
                                    });
    if (housed) continue;
    known->addItem(q.line.empty() ? qs(key) : tr("%1, line %2").arg(qs(key), qs(q.line)), qs(key));
  }
  auto* name = dialog.addText(QStringLiteral("name"), tr("Her number or name"));
  name->setText(freshQueen(m_hub.workingDate()));
  auto* year = dialog.addNumber(QStringLiteral("year"), tr("Year"), 1900, 2199, 0);
  year->setText(QString::number(m_hub.workingDate().year()));
  auto* line = dialog.addText(QStringLiteral("line"), tr("Line"));
  auto* mother = dialog.addText(QStringLiteral("mother"), tr("Mother"));
  auto* origin =
      dialog.addText(QStringLiteral("origin"), tr("From"), tr("own graft, split, bought from"));
  auto* marked = dialog.addChoice(QStringLiteral("marked"), tr("Marked"));
  addYesNo(marked);
  auto* clipped = dialog.addChoice(QStringLiteral("clipped"), tr("Wing clipped"));
  addYesNo(clipped);
  auto* how = dialog.addChoice(QStringLiteral("method"), tr("Given"));
  how->addItem(tr("in a cage"), QStringLiteral("cage"));
  how->addItem(tr("under a push-in cage"), QStringLiteral("push_in_cage"));
  how->addItem(tr("with her comb and bees"), QStringLiteral("comb"));
  how->addItem(tr("straight in"), QStringLiteral("direct"));
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  connect(known, &QComboBox::currentIndexChanged, &dialog, [=](int index) {
    for (QWidget* field :
         std::initializer_list<QWidget*>{name, year, line, mother, origin, marked, clipped}) {
      field->setEnabled(index == 0);
    }
  });
  dialog.setMaker([=, this, &dialog] {
    session::QueenGiven g;
    g.hive = hive();
    g.colony = colony().value_or(base::ColonyId{});
    g.date = dialog.date();
    if (known->currentIndex() > 0) {
      g.queen = *m_hub.season().queen(base::QueenId{known->currentData().toString().toStdString()});
    } else {
      g.queen.queen = base::QueenId{trimmed(name)};
      g.queen.year = whole(year);
      g.queen.line = trimmed(line);
      g.queen.mother = trimmed(mother);
      g.queen.origin = trimmed(origin);
      g.queen.marked = yesNo(marked);
      g.queen.clipped = yesNo(clipped);
    }
    g.method = how->currentData().toString().toStdString();
    g.detail = trimmed(detail);
    return session::introduceQueen(g);
  });
  name->setFocus();
  carryOut(dialog);
}

void QueenActions::giveCells() {
  VerbDialog dialog(
      m_hub, QStringLiteral("giveCellsDialog"),
      tr("Give queen cells to %1").arg(qs(colony()->str())),
      tr("Only to bees without a queen, a day after she was taken out. Keep the cell upright and "
         "warm, never shake it. Leave the hive alone until she lays, about two to three weeks."),
      &m_window);
  auto* cells = dialog.addNumber(QStringLiteral("cells"), tr("Cells"), 1, 10, 0);
  cells->setText(QStringLiteral("1"));
  auto* line = dialog.addText(QStringLiteral("line"), tr("Line"));
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog]() -> session::CommandPtr {
    const auto n = whole(cells);
    if (!n) return nullptr;
    const auto named = state(dialog.date()).stacked() ? colony() : std::nullopt;
    return session::giveQueenCells(
        {hive(), named, dialog.date(), *n, trimmed(line), trimmed(detail), std::nullopt});
  });
  carryOut(dialog);
}

void QueenActions::mark() {
  VerbDialog dialog(m_hub, QStringLiteral("markQueenDialog"),
                    tr("Mark the queen of %1").arg(qs(colony()->str())),
                    tr("Hold her by the thorax, over the open hive. Let the paint dry before she "
                       "goes back. A clipped queen does not keep a swarm from going."),
                    &m_window);
  auto* what = dialog.addChoice(QStringLiteral("what"), tr("What"));
  what->addItem(tr("marked"), 1);
  what->addItem(tr("wing clipped"), 2);
  what->addItem(tr("marked and wing clipped"), 3);
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Colour, number"));
  const auto now = state(m_hub.workingDate());
  if (const auto* c = lives(now); c && c->queenYear) detail->setText(colourOf(*c->queenYear));
  dialog.setMaker([=, this, &dialog] {
    const int bits = what->currentData().toInt();
    return session::markQueen({hive(), colony().value_or(base::ColonyId{}), dialog.date(),
                               (bits & 1) != 0, (bits & 2) != 0, trimmed(detail)});
  });
  carryOut(dialog);
}

void QueenActions::queenGone() {
  VerbDialog dialog(
      m_hub, QStringLiteral("queenGoneDialog"), tr("Queen of %1 gone").arg(qs(colony()->str())),
      tr("Not seen is not gone: look for eggs, and give a test comb with eggs when in doubt. A "
         "colony without a queen is given one, or united, before its workers lay."),
      &m_window);
  auto* how = dialog.addChoice(QStringLiteral("how"), tr("What"));
  how->addItem(widgets::eventText(EventKind::QueenLost), false);
  how->addItem(widgets::eventText(EventKind::QueenRemoved), true);
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    return session::recordQueenGone({hive(), colony().value_or(base::ColonyId{}), dialog.date(),
                                     how->currentData().toBool(), trimmed(detail), std::nullopt});
  });
  carryOut(dialog);
}

void QueenActions::swarmed() {
  VerbDialog dialog(
      m_hub, QStringLiteral("swarmedDialog"), tr("Swarm from %1").arg(qs(colony()->str())),
      tr("With a prime swarm go the old queen and about half of the bees. Never climb alone for a "
         "swarm, nor near power lines; veil on. Hive it in the evening. Break cells down to one or "
         "two, or an after-swarm may follow."),
      &m_window);
  auto* which = dialog.addChoice(QStringLiteral("which"), tr("Which"));
  which->addItem(tr("prime swarm, with the old queen"), false);
  which->addItem(tr("after-swarm, with a young queen"), true);
  auto* caught = dialog.addChoice(QStringLiteral("caught"), tr("Hived in"));
  caught->addItem(tr("not caught"));
  auto standing =
      apiary::yardOn(m_hub.season(), state(m_hub.workingDate()).yard, m_hub.workingDate());
  std::sort(standing.begin(), standing.end(), [](const auto& a, const auto& b) {
    return sheet::naturalLess(a.hive.str(), b.hive.str());
  });
  for (const auto& other : standing) {
    if (other.status == apiary::HiveStatus::Empty && !other.boxes.empty()) {
      caught->addItem(qs(other.hive.str()), qs(other.hive.str()));
    }
  }
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    session::Swarm s;
    s.hive = hive();
    s.colony = colony().value_or(base::ColonyId{});
    s.date = dialog.date();
    s.after = which->currentData().toBool();
    if (caught->currentIndex() > 0) {
      s.caughtIn = base::HiveId{caught->currentData().toString().toStdString()};
      s.swarmColony = freshColony(*s.caughtIn, s.date);
    }
    s.detail = trimmed(detail);
    return session::recordSwarm(s);
  });
  carryOut(dialog);
}

void QueenActions::trouble(EventKind kind) {
  const bool robbed = kind == EventKind::Robbed;
  VerbDialog dialog(
      m_hub, robbed ? QStringLiteral("robbedDialog") : QStringLiteral("poisonedDialog"),
      robbed ? tr("Robbing at %1").arg(qs(hive().str()))
             : tr("Poisoning at %1").arg(qs(hive().str())),
      robbed
          ? tr("Close the entrance now to a finger's width, all other small ones too; no open "
               "honey, no feed by day. Robbing is how foul brood spreads: look at both sides, "
               "and at any sign of it call the bee inspector.")
          : tr("Gloves: the dead bees may carry the poison. Keep a cup of them frozen, with date "
               "and pictures, and report it to the authority the same day. No honey from this "
               "hive until it is clear."),
      &m_window);
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("What you saw"));
  dialog.setMaker([=, this, &dialog] {
    apiary::Event e;
    e.kind = kind;
    e.hive = hive();
    if (state(dialog.date()).stacked()) e.colony = colony();
    e.date = dialog.date();
    e.detail = trimmed(detail);
    return session::recordEvent(e);
  });
  carryOut(dialog);
}

void QueenActions::bought() {
  VerbDialog dialog(
      m_hub, QStringLiteral("boughtDialog"), tr("Colony bought, into %1").arg(qs(hive().str())),
      tr("Ask for the health certificate, and look at every brood comb before it comes beside your "
         "own. Better apart for some weeks. Moved at night or early, screened and strapped."),
      &m_window);
  auto* name = dialog.addText(QStringLiteral("colony"), tr("Name of the colony"));
  name->setText(qs(freshColony(hive(), m_hub.workingDate()).str()));
  auto* queen = dialog.addText(QStringLiteral("queen"), tr("Its queen"), tr("number or name"));
  auto* year = dialog.addNumber(QStringLiteral("year"), tr("Her year"), 1900, 2199, 0);
  auto* line = dialog.addText(QStringLiteral("line"), tr("Her line"));
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("From whom, and remark"));
  dialog.setMaker([=, this, &dialog] {
    session::Purchase p;
    p.hive = hive();
    p.colony = base::ColonyId{trimmed(name)};
    p.date = dialog.date();
    if (!trimmed(queen).empty()) {
      apiary::Queen q;
      q.queen = base::QueenId{trimmed(queen)};
      q.year = whole(year);
      q.line = trimmed(line);
      p.queen = q;
    }
    p.detail = trimmed(detail);
    return session::recordPurchase(p);
  });
  carryOut(dialog);
}

void QueenActions::parting(bool sold) {
  VerbDialog dialog(
      m_hub, sold ? QStringLiteral("soldDialog") : QStringLiteral("lostDialog"),
      sold ? tr("Sell %1").arg(qs(hive().str())) : tr("%1 stolen or lost").arg(qs(hive().str())),
      sold ? tr("Only healthy bees change hands; most places ask for a certificate. Say which "
                "treatments were given and when. Full boxes weigh up to 40 kg: lift with two.")
           : tr("After a flood or fire, look at the ground before you step on it. Report theft to "
                "the police with the hive's number."),
      &m_window);
  auto* what = dialog.addChoice(QStringLiteral("what"), tr("What went"));
  what->addItem(tr("the hive with all that is in it"), true);
  if (colony()) what->addItem(tr("the bees only, the boxes are still here"), false);
  auto* detail =
      dialog.addText(QStringLiteral("detail"), sold ? tr("To whom, and remark") : tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    session::Parting p;
    p.hive = hive();
    if (!what->currentData().toBool()) p.colony = colony();
    p.date = dialog.date();
    p.detail = trimmed(detail);
    return sold ? session::recordSale(p) : session::recordLoss(p);
  });
  carryOut(dialog);
}

}  // namespace outyard::hive
