// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabWidget>
#include <QTableView>
#include <QTextBrowser>
#include <QTimer>
#include <algorithm>

#include "core/base/random.h"
#include "core/planning/printed_plan.h"
#include "core/session/commands.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/pairs/overrule_dialog.h"
#include "ui/pairs/pair_chart.h"
#include "ui/pairs/pairs_map.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_notes.h"
#include "ui/pairs/pairs_place.h"
#include "ui/pairs/pairs_when.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/plan_room.h"
#include "ui/pairs/review_dialog.h"
#include "ui/pairs/stacks_dialog.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"

// What PairsPlace shows of a plan, and what can be done about it.
namespace outyard::pairs {
namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::optional<base::ColonyId> colonyAt(const QTableView* table, const TextTable& model) {
  const auto index = table->currentIndex();
  if (!index.isValid() || index.row() >= model.rowCount()) return std::nullopt;
  return model.line(index.row()).colony;
}

void goTo(QTableView* table, const TextTable& model, const std::optional<base::ColonyId>& colony) {
  int row = colony ? model.rowOf(*colony) : -1;
  if (row < 0 && model.rowCount() > 0) row = 0;
  if (row >= 0) table->setCurrentIndex(model.index(row, 0));
}

/// Widens columns to what stands in them; the last one takes the rest as it is.
void growColumns(QTableView* table) {
  const int most = table->fontMetrics().averageCharWidth() * 44;
  for (int column = 0; column + 1 < table->model()->columnCount(); ++column) {
    const int before = table->columnWidth(column);
    table->resizeColumnToContents(column);
    table->setColumnWidth(column, std::max(before, std::min(table->columnWidth(column), most)));
  }
}

bool acts(const planning::BoostPlan& plan) {
  return std::any_of(plan.chosen.begin(), plan.chosen.end(), [&](const std::string& id) {
    const auto* o = plan.option(id);
    return o && !planning::isVisit(*o) && o->method != apiary::Method::Leave;
  });
}

std::set<std::string> pairIds(const planning::BoostPlan& plan) {
  std::set<std::string> out;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (o && !planning::isVisit(*o)) out.insert(id);
  }
  return out;
}

}  // namespace

void PairsPlace::showPlan() {
  const auto* made = plan();
  if (!made) {
    m_noPairs->clear();
    m_firstDay->setVisible(false);
    m_sum->clear();
    showSentence(adapt::words(m_outcome->failure) +
                 (m_pins.empty() && m_forbids.empty()
                      ? QString()
                      : QStringLiteral("\n\n") +
                            tr("Let go of all pins in the menu of the place to begin again.")));
    showAccepted();
    return;
  }
  const auto needed = colonyAt(m_needTable, *m_needs);
  const auto paired = colonyAt(m_pairTable, *m_pairs);
  m_filling = true;
  m_needs->setLines(needLines(*made));
  m_gives->setLines(giveLines(*made));
  m_barred->setLines(barredLines(*made));
  m_pairs->setLines(pairLines(*made));
  m_map->setPlan(m_outcome, m_season);
  goTo(m_needTable, *m_needs, needed);
  goTo(m_pairTable, *m_pairs, paired);
  m_filling = false;
  showLater();
  m_pages->setCurrentIndex(1);

  showNotes();
  showSum();
  showChosenPair();
  showAccepted();
}

void PairsPlace::showLater() {
  if (m_laterDue) return;
  m_laterDue = true;
  QTimer::singleShot(0, this, [this] {
    m_laterDue = false;
    if (!plan()) return;
    for (auto* table : findChildren<QTableView*>()) growColumns(table);
    m_when->setHtml(whenHtml(*m_outcome, m_prices, *m_season));
  });
}

void PairsPlace::showNotes() {
  const auto* made = plan();
  m_needSum->setText(needSum(*made));
  QStringList notes = planNotes(*m_outcome, *m_season);
  if (const QString empty = emptySentence(); !empty.isEmpty()) notes.prepend(empty);
  if (!m_outcome->droppedPins.empty()) {
    notes << (m_outcome->droppedPins.size() == 1
                  ? tr("One pinned pair is no longer possible and was let go.")
                  : tr("%1 pinned pairs are no longer possible and were let go.")
                        .arg(m_outcome->droppedPins.size()));
  }
  m_noPairs->setText(notes.join(u'\n'));
  m_noPairs->setVisible(!notes.isEmpty());
  const auto day = firstWarmDay(*m_outcome);
  m_firstDay->setVisible(day.has_value());
  if (day) {
    m_firstDay->setText(tr("&Plan for %1").arg(adapt::dateText(*day)));
    m_firstDay->setToolTip(
        tr("Moves the day of the work to the first one on which the weather lets more be done"));
  }
}

void PairsPlace::goToFirstDay() {
  if (!plan()) return;
  if (const auto day = firstWarmDay(*m_outcome)) m_date->setDate(adapt::toQDate(*day));
}

void PairsPlace::showSum() {
  const auto* made = plan();
  QString sum;
  if (m_pairs->rowCount() > 0 && !acts(*made)) {
    sum = tr("Nothing that is possible on this day would do more good than leaving all as it is.");
  } else if (m_pairs->rowCount() > 0) {
    sum = tr("Over leaving all as it is, the plan is worth %1")
              .arg(worthText(made->objective, made->problem));
    sum += made->optimal
               ? tr(" (proven best).")
               : tr(" (at most %1 % under the best).").arg(adapt::roundNumber(made->gap * 100));
    if (m_outcome->greedy) {
      const double less = made->objective - *m_outcome->greedy;
      sum += less < 0.005 ? tr(" Pairing one after the other, best first, comes to the same.")
                          : tr(" Pairing one after the other, best first, would gain %1 less.")
                                .arg(worthText(less, made->problem));
    }
    if (m_outcome->thumb) {
      sum += tr(" The weakest with the strongest would gain %1 less.")
                 .arg(worthText(std::max(0.0, made->objective - *m_outcome->thumb), made->problem));
    }
  }
  for (const auto& more : m_prices) {
    sum += tr(" One more %1 would add %2.")
               .arg(gearText(more.item), worthText(more.worth, made->problem));
  }
  if (!sum.isEmpty()) sum += u' ';
  if (made->problem.basis == "forecast") {
    std::vector<base::Message> notes;
    const auto figures = planning::boostFigures(*m_season, notes);
    sum += tr("By forecast to %1; usable from %2 seams with brood on %3 combs.")
               .arg(adapt::dateText(made->problem.target), adapt::roundNumber(figures.usableSeams),
                    adapt::roundNumber(figures.usableBroodCombs));
  } else {
    sum += tr("From what was last seen, not a forecast.");
  }
  m_sum->setText(sum);
}

void PairsPlace::showChosenPair() {
  if (m_filling) return;  // shown once, when all lines stand
  const auto* made = plan();
  const auto needed = colonyAt(m_needTable, *m_needs);
  const auto* judged = made && needed ? judgementOf(made->problem, *needed) : nullptr;
  if (judged) {
    QString text = tr("%1: %2. %3")
                       .arg(colonyText(judged->colony, judged->hive),
                            widgets::verdictText(judged->verdict), sentences(judged->evidence));
    if (judged->ruleVerdict) {
      text += u' ' + tr("The rules say %1; overruled because %2.")
                         .arg(widgets::verdictText(*judged->ruleVerdict), qs(judged->overruledWhy));
    }
    if (!judged->wouldChange.empty()) {
      text += u'\n' + tr("What would change it: %1").arg(sentences(judged->wouldChange));
    }
    m_evidence->setText(text);
  } else {
    m_evidence->setText(tr("Choose a colony to read its evidence."));
  }
  m_overrule->setEnabled(judged != nullptr);
  m_overruleAction->setEnabled(judged != nullptr);

  const auto* option = chosenOption();
  const auto paired = colonyAt(m_pairTable, *m_pairs);
  showCourses();
  m_map->choose(paired);
  if (made && paired) {
    const auto yard = made->problem.yardOf.find(paired->str());
    if (yard != made->problem.yardOf.end()) m_map->setYard(yard->second);
  } else if (made && !made->problem.request.yards.empty()) {
    m_map->setYard(made->problem.request.yards.front());
  }
  const auto* second = made && paired ? made->secondBest(*paired) : nullptr;
  const bool pinned = option && m_pins.count(option->id) > 0;
  m_pinAction->setText(pinned ? tr("Let go of this (P)") : tr("Pin this (P)"));
  m_pinAction->setEnabled(option != nullptr);
  m_forbidAction->setEnabled(option != nullptr && second != nullptr);
  m_forbidAction->setToolTip(second || !option ? tr("Forbid this (F)")
                                               : tr("Nothing else is left for this colony."));
  m_secondAction->setEnabled(second != nullptr);
  bool barred = false;
  for (const auto& o : made ? made->problem.options : std::vector<planning::BoostOption>{}) {
    if (paired && o.colony == *paired && m_forbids.count(o.id) > 0) barred = true;
  }
  m_allowAction->setEnabled(barred);
  m_freeAction->setEnabled(!m_pins.empty() || !m_forbids.empty());
  if (!option) {
    m_pairDetail->setText(made && m_pairs->rowCount() == 0 ? QString()
                                                           : tr("Choose a line of the plan."));
    return;
  }
  QString html = QStringLiteral("<b>%1: %2</b>")
                     .arg(colonyText(option->colony, option->hive).toHtmlEscaped(),
                          optionText(*option).toHtmlEscaped());
  if (option->gain.high > 0) {
    html += QStringLiteral("<br>") +
            (option->chance ? tr("Then about %1 bees more on the target day (8 of 10 fall within).")
                            : tr("Gains %1 bees that cover brood (8 of 10 fall within)."))

                .arg(gainText(*option))
                .toHtmlEscaped();
  }
  const auto row = m_pairTable->currentIndex().row();
  html += QStringLiteral("<p style='margin:4px 0'>%1</p>")
              .arg(m_pairs->line(row).cells.last().toHtmlEscaped());
  if (second) {
    QString line =
        tr("Instead %1 would bring %2 bees more.").arg(optionText(*second), gainText(*second));
    if (second->method == apiary::Method::Leave) line.clear();
    const QStringList against = PlanRoom(*made).against(*second);
    if (!against.isEmpty()) {
      line += (line.isEmpty() ? QString() : QStringLiteral(" ")) +
              tr("Against it stands: %1.").arg(against.join(QStringLiteral("; ")));
    }
    if (!line.isEmpty()) {
      html += QStringLiteral("<p style='margin:4px 0'>%1</p>").arg(line.toHtmlEscaped());
    }
  }
  for (const auto& caution : option->cautions) {
    html += QStringLiteral("<p style='margin:4px 0'>%1</p>")
                .arg(tr("Caution: %1").arg(adapt::words(caution)).toHtmlEscaped());
  }
  m_pairDetail->setHtml(html);
}

void PairsPlace::showCourses() {
  const auto* option = chosenOption();
  const QString kWork = QStringLiteral("pair course");
  m_hub.forecasts().abandon(kWork);
  if (!option || !plan()) {
    m_chart->clear(tr("Choose a line of the plan to see the courses of both colonies."));
    return;
  }
  m_chart->clear(tr("Working the courses out…"));
  m_hub.forecasts().beside(kWork, [this, one = *option, outcome = m_outcome](
                                      const apiary::Season& season, base::Progress& progress) {
    std::vector<base::Message> notes;
    auto course = planning::pairCourse(season, outcome->plan->problem, one,
                                       planning::boostFigures(season, notes), progress);
    return [this, one, course = std::move(course)] {
      const auto* still = chosenOption();
      if (!still || still->id != one.id) return;
      if (!course) {
        m_chart->clear(tr("These colonies cannot be forecast: look at them first."));
        return;
      }
      m_chart->show(*course, colonyText(one.colony, one.hive),
                    one.donorHive ? colonyText(*one.donorColony, *one.donorHive) : QString());
    };
  });
}

const planning::BoostOption* PairsPlace::chosenOption() const {
  const auto* made = plan();
  const auto colony = colonyAt(m_pairTable, *m_pairs);
  return made && colony ? made->chosenFor(*colony) : nullptr;
}

void PairsPlace::pin() {
  const auto* option = chosenOption();
  if (!option) return;
  if (m_pins.erase(option->id) == 0) m_pins.insert(option->id);
  again();
}

void PairsPlace::forbid() {
  const auto* option = chosenOption();
  if (!option || !plan()->secondBest(option->colony)) return;
  m_pins.erase(option->id);
  m_forbids.insert(option->id);
  again();
}

void PairsPlace::takeSecond() {
  const auto* option = chosenOption();
  const auto* second = option ? plan()->secondBest(option->colony) : nullptr;
  if (!second) return;
  m_pins.erase(option->id);
  m_pins.insert(second->id);
  again();
}

void PairsPlace::allowAgain() {
  const auto* option = chosenOption();
  if (!option) return;
  for (const auto& o : plan()->problem.options) {
    if (o.colony == option->colony) m_forbids.erase(o.id);
  }
  again();
}

void PairsPlace::letAllGo() {
  m_pins.clear();
  m_forbids.clear();
  again();
}

void PairsPlace::overrule() {
  const auto* made = plan();
  const auto colony = colonyAt(m_needTable, *m_needs);
  const auto* judged = made && colony ? judgementOf(made->problem, *colony) : nullptr;
  if (!judged) return;
  OverruleDialog dialog(m_hub, *judged, std::min(made->problem.request.date, m_hub.workingDate()),
                        this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

const apiary::Plan* PairsPlace::acceptedTwin() const {
  const auto* made = plan();
  if (!made) return nullptr;
  const auto wanted = pairIds(*made);
  const auto& season = m_hub.season();
  const apiary::Plan* twin = nullptr;
  for (const auto& [key, kept] : season.table<apiary::Plan>()) {
    if (kept.date != made->problem.request.date) continue;
    if (planning::printedOnly(season, kept)) continue;  // a sheet shows it, nobody took it up
    std::set<std::string> rows;
    for (const auto& [rowKey, row] : season.table<apiary::PlanRow>()) {
      if (row.plan == kept.plan) rows.insert(row.option);
    }
    if (rows == wanted && (!twin || twin->acceptedAt < kept.acceptedAt)) twin = &kept;
  }
  return twin;
}

QString PairsPlace::whyNotAccept() const {
  const auto* made = plan();
  if (!made || busy()) return tr("The plan is not worked out yet.");
  if (!acts(*made)) return tr("The plan asks for no work: there is nothing to accept.");
  if (acceptedTwin()) return tr("This plan was accepted already.");
  base::SeededIds ids(1);
  const auto kept = planning::accept(*made, ids, m_hub.clock().nowUtc(), adapt::wordsUtf8);
  return m_hub.whyNot(*session::acceptPlan(kept.plan, kept.rows, kept.tasks));
}

void PairsPlace::showAccepted() {
  const QString why = whyNotAccept();
  m_accept->setEnabled(why.isEmpty());
  m_accept->setToolTip(why.isEmpty() ? tr("Keeps the plan and plans its tasks; can be undone")
                                     : why);
  m_acceptAction->setEnabled(why.isEmpty());
  QString text;
  if (const auto* twin = acceptedTwin()) {
    int tasks = 0;
    for (const auto& [key, task] : m_hub.season().table<apiary::Task>()) {
      if (task.plan == twin->plan) ++tasks;
    }
    text = tasks == 1 ? tr("Accepted: 1 task is planned. Undo takes it back.")
                      : tr("Accepted: %1 tasks are planned. Undo takes them back.").arg(tasks);
  }
  m_accepted->setText(text);
  m_accepted->setVisible(!text.isEmpty());
}

void PairsPlace::accept() {
  if (!whyNotAccept().isEmpty()) return;
  base::SystemIds ids;
  auto kept = planning::accept(*plan(), ids, m_hub.clock().nowUtc(), adapt::wordsUtf8);
  m_hub.execute(
      session::acceptPlan(std::move(kept.plan), std::move(kept.rows), std::move(kept.tasks)), this);
}

QList<QAction*> PairsPlace::menuActions() const {
  auto* line = new QAction(const_cast<PairsPlace*>(this));
  line->setSeparator(true);
  auto* after = new QAction(const_cast<PairsPlace*>(this));
  after->setSeparator(true);
  return QList<QAction*>{m_acceptAction, m_exportAction, line,
                         m_pinAction,    m_forbidAction, m_secondAction,
                         m_allowAction,  m_freeAction,   m_overruleAction} +
         m_pairTable->findChild<widgets::ListFile*>()->actions() +
         QList<QAction*>{after, m_stacksAction, m_reviewAction};
}

void PairsPlace::makeAfterwards(QHBoxLayout& to) {
  const auto add = [&](QAction*& action, const QString& name, const QString& text,
                       const QString& tip, void (PairsPlace::*open)()) {
    action = makeAction(
        name + QStringLiteral("Action"), text, {}, [this, open] { (this->*open)(); }, nullptr);
    auto* button = new QPushButton(text, this);
    button->setObjectName(name + QStringLiteral("Button"));
    button->setToolTip(tip);
    connect(button, &QPushButton::clicked, this, open);
    to.insertWidget(to.count() - 1, button, 0, Qt::AlignBottom);
  };
  add(m_stacksAction, QStringLiteral("stacks"), tr("Stacks made…"),
      tr("Stacks that were recorded, their next steps, and recording them"),
      &PairsPlace::showStacks);
  add(m_reviewAction, QStringLiteral("review"), tr("How plans turned out…"),
      tr("What accepted plans promised, and what was then seen"), &PairsPlace::showReview);
}

void PairsPlace::begin(const QString& task) {
  if (task == QStringLiteral("stacks")) showStacks();
  if (task == QStringLiteral("review")) showReview();
}

void PairsPlace::showStacks() {
  StacksDialog dialog(m_hub, this);
  if (m_hub.selection().hive) dialog.choose(*m_hub.selection().hive);
  m_hub.dialogs().run(dialog);
}

void PairsPlace::showReview() {
  ReviewDialog dialog(m_hub, this);
  m_hub.dialogs().run(dialog);
}

}  // namespace outyard::pairs
