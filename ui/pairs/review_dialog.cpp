// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/review_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QScreen>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>
#include <cmath>

#include "ui/adapt/words.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_words.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"

namespace outyard::pairs {
namespace {

using planning::PlanFate;

QString work() {
  return QStringLiteral("plan review");
}

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString seamsText(const std::optional<planning::Promised>& promised) {
  if (!promised) return {};
  const auto w = promised->seams.whole();
  return w.low == w.high ? ReviewDialog::tr("%1 seams").arg(w.low)
                         : ReviewDialog::tr("%1–%2 seams").arg(w.low).arg(w.high);
}

QString halves(double seams) {
  return QLocale().toString(std::round(seams * 2) / 2);
}

QString outcomeText(const planning::ReviewedRow& r) {
  switch (r.fate) {
    case PlanFate::Seen:
      return r.within                                    ? ReviewDialog::tr("as promised")
             : r.seen->bees.median < r.with->bees.median ? ReviewDialog::tr("fewer")
                                                         : ReviewDialog::tr("more");
    case PlanFate::Died:
      return ReviewDialog::tr("died");
    case PlanFate::NotMade:
      return ReviewDialog::tr("not made");
    case PlanFate::NotLooked:
      return ReviewDialog::tr("not looked at");
    case PlanFate::Unknown:
      return ReviewDialog::tr("promise unknown");
    case PlanFate::Waiting:
      break;
  }
  return ReviewDialog::tr("to come");
}

QString percentText(double share) {
  return ReviewDialog::tr("%1 %").arg(std::lround(share * 100));
}

TextTable::Line lineOf(const planning::ReviewedRow& r) {
  TextTable::Line line;
  const QString how =
      r.otherHive ? ReviewDialog::tr("%1, %2").arg(methodText(r.method), qs(r.otherHive->str()))
                  : methodText(r.method);
  line.cells = {
      adapt::dateText(r.plannedOn),
      colonyText(r.colony, r.hive),
      how,
      r.madeOn && r.method != apiary::Method::Leave ? adapt::dateText(*r.madeOn) : QString(),
      adapt::dateText(r.day),
      seamsText(r.with),
      seamsText(r.without),
      r.seen ? ReviewDialog::tr("%1 seams").arg(halves(r.seen->seams)) : QString(),
      outcomeText(r)};
  line.strong = r.fate == PlanFate::Seen || r.fate == PlanFate::Died;
  line.hive = r.hive;
  return line;
}

}  // namespace

ReviewDialog::ReviewDialog(widgets::SeasonHub& hub, QWidget* parent) : QDialog(parent), m_hub(hub) {
  setObjectName(QStringLiteral("reviewDialog"));
  setWindowTitle(tr("How plans turned out"));
  // In letters, so that a large font widens it too, as far as the screen goes.
  const int letters = fontMetrics().averageCharWidth() * 176;
  const QSize room = screen()->availableGeometry().size() - QSize(40, 60);
  resize(QSize(letters, fontMetrics().lineSpacing() * 38).boundedTo(room));
  auto* all = new QVBoxLayout(this);
  m_pages = new QStackedWidget(this);
  m_sentence = new QLabel(m_pages);
  m_sentence->setObjectName(QStringLiteral("reviewSentence"));
  m_sentence->setAlignment(Qt::AlignCenter);
  m_sentence->setWordWrap(true);
  m_pages->addWidget(m_sentence);
  auto* page = new QWidget(m_pages);
  auto* layout = new QVBoxLayout(page);
  layout->setContentsMargins(0, 0, 0, 0);
  m_sum = new QLabel(page);
  m_sum->setObjectName(QStringLiteral("reviewSum"));
  m_sum->setWordWrap(true);
  layout->addWidget(m_sum);
  m_model =
      new TextTable({tr("Planned for"), tr("Colony"), tr("What"), tr("Made on"), tr("For the day"),
                     tr("Promised"), tr("Without it"), tr("Seen"), tr("Outcome")},
                    this);
  m_table = new QTableView(page);
  m_table->setObjectName(QStringLiteral("review"));
  m_table->setAccessibleName(tr("Plans, what they promised and what was seen"));
  m_table->setModel(m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setTabKeyNavigation(false);
  m_table->setAlternatingRowColors(true);
  m_table->setShowGrid(false);
  m_table->setWordWrap(false);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 7);
  auto* header = m_table->horizontalHeader();
  header->setHighlightSections(false);
  header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  header->setStretchLastSection(true);
  const int letter = fontMetrics().averageCharWidth();
  const int widths[] = {17, 17, 27, 17, 17, 14, 14, 12};
  for (int i = 0; i < 8; ++i) m_table->setColumnWidth(i, widths[i] * letter);
  layout->addWidget(m_table, 1);
  m_detail = new QLabel(page);
  m_detail->setObjectName(QStringLiteral("reviewDetail"));
  m_detail->setAccessibleName(tr("The chosen plan"));
  m_detail->setWordWrap(true);
  m_detail->setTextFormat(Qt::RichText);
  m_detail->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  m_detail->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  m_detail->setMinimumHeight(fontMetrics().lineSpacing() * 7);
  layout->addWidget(m_detail);
  m_pages->addWidget(page);
  all->addWidget(m_pages, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  m_file = new widgets::ListFile(
      m_hub, m_table, [this] { return tr("How plans turned out"); },
      [this] { return m_sum->text(); });
  m_pdf = buttons->addButton(tr("Save as &PDF…"), QDialogButtonBox::ActionRole);
  m_csv = buttons->addButton(tr("Save as &CSV…"), QDialogButtonBox::ActionRole);
  connect(m_pdf, &QPushButton::clicked, m_file, &widgets::ListFile::savePdf);
  connect(m_csv, &QPushButton::clicked, m_file, &widgets::ListFile::saveCsv);
  all->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &ReviewDialog::showChosen);
  connect(&m_hub, &widgets::SeasonHub::changed, this, &ReviewDialog::again);
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, &ReviewDialog::again);
  again();
}

ReviewDialog::~ReviewDialog() {
  m_hub.forecasts().abandon(work());
}

void ReviewDialog::again() {
  m_hub.forecasts().abandon(work());
  if (!m_hub.isOpen()) {
    take({});
    return;
  }
  m_busy = true;
  m_sentence->setText(tr("Working out what was promised…"));
  m_pages->setCurrentIndex(0);
  m_hub.forecasts().beside(work(), [this, today = m_hub.workingDate()](const apiary::Season& season,
                                                                       base::Progress& progress) {
    auto review = planning::reviewPlans(season, today, progress);
    return [this, review = std::move(review)] { take(review); };
  });
}

void ReviewDialog::take(planning::PlanReview review) {
  m_busy = false;
  m_review = std::move(review);
  std::vector<TextTable::Line> lines;
  for (const auto& r : m_review.rows) lines.push_back(lineOf(r));
  m_model->setLines(std::move(lines));
  m_pdf->setEnabled(!m_review.rows.empty());
  m_csv->setEnabled(!m_review.rows.empty());
  if (m_review.rows.empty()) {
    m_sentence->setText(
        tr("No plan has been accepted yet. Accept one in Pairs; once its colonies "
           "are looked at near the target day, what was promised stands here "
           "beside what was seen."));
    m_pages->setCurrentIndex(0);
    return;
  }
  QString sum = adapt::words(planning::reviewSum(m_review));
  if (m_review.donors > 0) {
    sum +=
        u' ' + tr("Donors: %1 of %2 as promised.").arg(m_review.donorsWithin).arg(m_review.donors);
  }
  m_sum->setText(sum);
  m_pages->setCurrentIndex(1);
  m_table->setCurrentIndex(m_model->index(0, 0));
  showChosen();
}

void ReviewDialog::showChosen() {
  const int row = m_table->currentIndex().row();
  if (row < 0 || static_cast<std::size_t>(row) >= m_review.rows.size()) {
    m_detail->clear();
    return;
  }
  const auto& r = m_review.rows[static_cast<std::size_t>(row)];
  QString html =
      QStringLiteral("<b>%1</b>")
          .arg(tr("%1: %2")
                   .arg(colonyText(r.colony, r.hive), adapt::words(planning::reviewText(r)))
                   .toHtmlEscaped());
  const auto add = [&](const QString& text) {
    html += QStringLiteral("<br>") + text.toHtmlEscaped();
  };
  if (r.without) {
    add(tr("Without the boost %1 were forecast for %2.")
            .arg(seamsText(r.without), adapt::dateText(r.day)));
  }
  if (r.chance && r.method != apiary::Method::Unite) {
    add(tr("Chance to be usable that day, as promised: %1 instead of %2.")
            .arg(percentText(r.chance->receiverWith), percentText(r.chance->receiverWithout)));
  }
  if (r.with && r.seen && r.seen->combs) {
    const auto w = r.with->combs.whole();
    add(tr("Brood: promised on %1–%2 combs, seen on %3.")
            .arg(w.low)
            .arg(w.high)
            .arg(*r.seen->combs));
  }
  if (r.donor && r.donorWith && r.donorSeen) {
    add(tr("Donor %1: promised %2 on %3, seen %4 seams.")
            .arg(qs(r.donor->str()), seamsText(r.donorWith), adapt::dateText(r.donorSeen->date),
                 halves(r.donorSeen->seams)));
  }
  if (!r.meanwhile.empty()) {
    QStringList list;
    for (const auto kind : r.meanwhile) list << widgets::eventText(kind);
    add(tr("Since the plan, and not in it: %1.").arg(list.join(QStringLiteral(", "))));
  }
  m_detail->setText(html);
}

}  // namespace outyard::pairs
