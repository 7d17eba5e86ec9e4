// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractTextDocumentLayout>
#include <QAction>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPushButton>
#include <QSaveFile>
#include <QStackedWidget>
#include <QTabWidget>
#include <QTableView>
#include <QTextBrowser>
#include <QTextDocument>
#include <algorithm>

#include "core/base/random.h"
#include "core/session/commands.h"
#include "ui/adapt/words.h"
#include "ui/pairs/overrule_dialog.h"
#include "ui/pairs/pair_chart.h"
#include "ui/pairs/pairs_map.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_place.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/review_dialog.h"
#include "ui/pairs/stacks_dialog.h"
#include "ui/print/painter.h"
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
  m_needs->setLines(needLines(*made));
  m_gives->setLines(giveLines(*made));
  m_barred->setLines(barredLines(*made));
  m_pairs->setLines(pairLines(*made));
  m_map->setPlan(m_outcome, m_season);
  goTo(m_needTable, *m_needs, needed);
  goTo(m_pairTable, *m_pairs, paired);
  m_when->setHtml(whenHtml(*m_outcome, *m_season));
  m_pages->setCurrentIndex(1);

  QStringList notes;
  if (const QString empty = emptySentence(); !empty.isEmpty()) notes << empty;
  if (!m_outcome->droppedPins.empty()) {
    notes << (m_outcome->droppedPins.size() == 1
                  ? tr("One pinned pair is no longer possible and was let go.")
                  : tr("%1 pinned pairs are no longer possible and were let go.")
                        .arg(m_outcome->droppedPins.size()));
  }
  for (const auto& note : made->problem.notes) notes << adapt::words(note);
  m_noPairs->setText(notes.join(QStringLiteral("\n")));
  m_noPairs->setVisible(!notes.isEmpty());

  QString sum;
  if (m_pairs->rowCount() > 0) {
    sum = tr("Over leaving all as it is, the plan is worth %1")
              .arg(worthText(made->objective, made->problem));
    sum += made->optimal
               ? tr(" (proven best).")
               : tr(" (at most %1 % under the best).").arg(adapt::roundNumber(made->gap * 100));
    if (m_outcome->greedy) {
      const double less = made->objective - *m_outcome->greedy;
      sum += less < 0.001 ? tr(" Pairing one after the other, best first, comes to the same.")
                          : tr(" Pairing one after the other, best first, would gain %1 less.")
                                .arg(worthText(less, made->problem));
    }
    for (const auto& more : m_outcome->oneMore) {
      sum += tr(" One more %1 would add %2.")
                 .arg(gearText(more.item), worthText(more.worth, made->problem));
    }
    sum += u' ';
  }
  m_sum->setText(sum +
                 (made->problem.basis == "forecast"
                      ? tr("By forecast to %1; usable means what the figures of this outfit say.")
                            .arg(adapt::dateText(made->problem.target))
                      : tr("From what was last seen, not a forecast.")));
  showChosenPair();
  showAccepted();
}

void PairsPlace::showChosenPair() {
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
  for (const auto& caution : option->cautions) {
    html += QStringLiteral("<p style='margin:4px 0'>%1</p>")
                .arg(tr("Caution: %1").arg(adapt::words(caution)).toHtmlEscaped());
  }
  if (second) {
    html += QStringLiteral("<p style='margin:4px 0'>%1</p>")
                .arg(tr("Second best: %1, %2 bees more.")
                         .arg(optionText(*second), gainText(*second))
                         .toHtmlEscaped());
  }
  m_pairDetail->setText(html);
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
  m_hub.forecasts().beside(kWork, [this, one = *option, problem = plan()->problem](
                                      const apiary::Season& season, base::Progress& progress) {
    std::vector<base::Message> notes;
    auto course =
        planning::pairCourse(season, problem, one, planning::boostFigures(season, notes), progress);
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

bool PairsPlace::exportCsv(const QString& path) {
  if (!plan()) return false;
  // Through a temporary file: a full disk leaves an older table as it was.
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return false;
  const QByteArray bytes = planCsv(*plan()).toUtf8();
  return file.write(bytes) == bytes.size() && file.commit();
}

void PairsPlace::exportTable() {
  if (!plan()) {
    m_hub.dialogs().inform(this, tr("Nothing to export"), tr("There is no plan yet."));
    return;
  }
  const QString suggestion = tr("pairs-%1.csv").arg(qs(plan()->problem.request.date.iso()));
  const QString path = m_hub.dialogs().saveFile(this, tr("Export the table of pairs"),
                                                tr("Tables (*.csv)"), suggestion);
  if (path.isEmpty()) return;
  if (!exportCsv(path)) {
    m_hub.dialogs().failure(this, tr("Not written"),
                            tr("The table could not be written to %1. Choose another folder or "
                               "free some space.")
                                .arg(path));
  }
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

void PairsPlace::printTo(QPagedPaintDevice& device) {
  const QSizeF page = device.pageLayout().paintRect(QPageLayout::Point).size();
  QPainter painter(&device);
  // One unit of the painter is a point from here on, on a screen's picture and on paper alike.
  const double scale = painter.device()->logicalDpiX() / 72.0;
  painter.scale(scale, scale);
  QTextDocument text;
  QFont font = text.defaultFont();
  font.setPixelSize(9);
  text.setDefaultFont(font);
  text.setDocumentMargin(0);
  const auto* made = plan();
  if (!made) {
    text.setHtml(m_sentence->text().toHtmlEscaped());
  } else {
    QString html =
        QStringLiteral("<p style='font-size:15px'><b>%1</b></p><p>%2</p>")
            .arg(tr("Pairs for %1 on %2")
                     .arg(m_yard->currentText(), adapt::dateText(made->problem.request.date))
                     .toHtmlEscaped(),
                 m_sum->text().toHtmlEscaped());
    html += QStringLiteral("<table cellpadding='2' cellspacing='0'><tr>");
    for (const QString& head : pairHead()) {
      html += QStringLiteral("<th align='left'>%1</th>").arg(head.toHtmlEscaped());
    }
    html += QStringLiteral("</tr>");
    for (int row = 0; row < m_pairs->rowCount(); ++row) {
      html += QStringLiteral("<tr>");
      for (const QString& cell : m_pairs->line(row).cells) {
        html += QStringLiteral("<td>%1</td>").arg(cell.toHtmlEscaped());
      }
      html += QStringLiteral("</tr>");
    }
    text.setHtml(html + QStringLiteral("</table><br>") + whenHtml(*m_outcome, *m_season));
  }
  text.setPageSize(page);
  QAbstractTextDocumentLayout::PaintContext context;
  context.palette.setColor(QPalette::Text, Qt::black);
  for (int n = 0; n < text.pageCount(); ++n) {
    if (n > 0) device.newPage();
    painter.save();
    painter.translate(0, -n * page.height());
    context.clip = QRectF(0, n * page.height(), page.width(), page.height());
    painter.setClipRect(context.clip);
    text.documentLayout()->draw(&painter, context);
    painter.restore();
  }
}

}  // namespace outyard::pairs
