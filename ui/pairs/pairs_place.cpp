// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_place.h"

#include <QAction>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/pairs/usable_bar.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::pairs {
namespace {

constexpr int kTargetDays = 45;  // the planning default: about the May or June flow

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// Plans, their tasks and the sheets printed from them change nothing that a plan is made from.
bool touchesPlan(const session::Notice& notice) {
  using apiary::TableId;
  return std::any_of(notice.changes.begin(), notice.changes.end(), [](const apiary::Change& c) {
    return c.table != TableId::Plans && c.table != TableId::PlanRows && c.table != TableId::Tasks &&
           c.table != TableId::Visits && c.table != TableId::Sheets &&
           c.table != TableId::SheetLines;
  });
}

}  // namespace

PairsPlace::PairsPlace(widgets::SeasonHub& hub, QWidget* parent) : Place(parent), m_hub(hub) {
  setObjectName(QStringLiteral("pairsPlace"));
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(12, 8, 12, 8);
  makeHead(*all);
  m_pages = new QStackedWidget(this);
  m_sentence = new QLabel(m_pages);
  m_sentence->setObjectName(QStringLiteral("emptySentence"));
  m_sentence->setAlignment(Qt::AlignCenter);
  m_sentence->setWordWrap(true);
  m_pages->addWidget(m_sentence);
  m_steps = new QTabWidget(m_pages);
  m_steps->setObjectName(QStringLiteral("steps"));
  m_pages->addWidget(m_steps);
  makeSteps();
  all->addWidget(m_pages, 1);
  makeFoot(*all);

  connect(&m_runner, &PlanRunner::started, this, [this] {
    m_progress->setValue(0);
    m_progress->setVisible(true);
    m_stop->setVisible(true);
    showAccepted();
  });
  connect(&m_runner, &PlanRunner::progressed, m_progress, &QProgressBar::setValue);
  connect(&m_runner, &PlanRunner::finished, this, &PairsPlace::take);
  connect(&m_runner, &PlanRunner::priced, this, [this](const GearPrices& prices) {
    m_prices = prices;
    if (!plan()) return;
    showSum();
    showLater();
  });
  connect(&m_runner, &PlanRunner::cancelled, this, [this] {
    m_progress->setVisible(false);
    m_stop->setVisible(false);
    if (!m_outcome) showSentence(tr("Stopped. Change a date or choose the yard again to go on."));
    showAccepted();
  });
  connect(&m_hub, &widgets::SeasonHub::changed, this, [this](const session::Notice& notice) {
    if (!touchesPlan(notice)) {
      showAccepted();
      return;
    }
    m_season.reset();
    fillYards();
    again();
  });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] {
    m_runner.cancel();
    m_season.reset();
    const auto old = std::move(m_outcome);
    m_outcome.reset();
    Q_EMIT planChanged(nullptr);
    m_pins.clear();
    m_forbids.clear();
    m_dateTouched = false;
    fillYards();
    again();
  });
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, &PairsPlace::followSelection);
  connect(&m_hub, &widgets::SeasonHub::shownDateChanged, this, [this] {
    if (!m_dateTouched) {
      const QSignalBlocker quiet(m_date), quietTarget(m_target);
      m_date->setDate(adapt::toQDate(m_hub.shownDate()));
      m_target->setDate(m_date->date().addDays(kTargetDays));
      again();
    }
  });
  fillYards();
  showSentence(emptySentence());
  showAccepted();
}

PairsPlace::~PairsPlace() {
  m_hub.forecasts().abandon(QStringLiteral("pair course"));
}

QString PairsPlace::title() const {
  return tr("Pairs");
}

QIcon PairsPlace::icon() const {
  return widgets::ownIcon(QStringLiteral("pairs"), palette());
}

void PairsPlace::takeFocus() {
  m_steps->currentWidget()->setFocus();
}

void PairsPlace::makeHead(QVBoxLayout& to) {
  auto* line = new QHBoxLayout;
  const auto field = [&](const QString& text, QWidget* widget, const QString& name) {
    auto* label = new QLabel(text, this);
    label->setBuddy(widget);
    widget->setObjectName(name);
    QString plain = text;
    widget->setAccessibleName(plain.remove(u'&'));
    line->addWidget(label);
    line->addWidget(widget);
    line->addSpacing(10);
  };
  m_yard = new QComboBox(this);
  m_yard->setMinimumContentsLength(18);
  field(tr("&Yard"), m_yard, QStringLiteral("yard"));
  const auto today = adapt::toQDate(m_hub.shownDate());
  for (QDateEdit** edit : {&m_date, &m_target}) {
    *edit = new QDateEdit(edit == &m_date ? today : today.addDays(kTargetDays), this);
    (*edit)->setCalendarPopup(true);
    //: Day, month, year: see QLocale::toString.
    (*edit)->setDisplayFormat(tr("d MMM yyyy"));
  }
  field(tr("&Done on"), m_date, QStringLiteral("date"));
  field(tr("&Useful by"), m_target, QStringLiteral("target"));
  m_progress = new QProgressBar(this);
  m_progress->setRange(0, 100);
  m_progress->setMaximumWidth(160);
  m_progress->setAccessibleName(tr("Working out the plan"));
  m_progress->setVisible(false);
  m_stop = new QPushButton(tr("Stop"), this);
  m_stop->setVisible(false);
  line->addWidget(m_progress);
  line->addWidget(m_stop);
  line->addStretch();
  to.addLayout(line);
  to.addWidget(new UsableBar(m_hub, this));
  connect(m_stop, &QPushButton::clicked, &m_runner, &PlanRunner::cancel);
  connect(m_yard, &QComboBox::currentIndexChanged, this, [this] {
    const auto chosen = yards();
    if (chosen.size() == 1 && m_hub.selection().yard != chosen.front()) {
      m_hub.selectYard(chosen.front());
    }
    again();
  });
  connect(m_date, &QDateEdit::dateChanged, this, [this](const QDate& date) {
    m_dateTouched = true;
    if (m_target->date() < date) m_target->setDate(date.addDays(kTargetDays));
    again();
  });
  connect(m_target, &QDateEdit::dateChanged, this, [this] { again(); });
}

void PairsPlace::makeFoot(QVBoxLayout& to) {
  auto* line = new QHBoxLayout;
  auto* words = new QVBoxLayout;
  m_sum = new QLabel(this);
  m_sum->setObjectName(QStringLiteral("sum"));
  m_sum->setWordWrap(true);
  words->addWidget(m_sum);
  m_accepted = new QLabel(this);
  m_accepted->setObjectName(QStringLiteral("accepted"));
  m_accepted->setWordWrap(true);
  words->addWidget(m_accepted);
  line->addLayout(words, 1);
  m_accept = new QPushButton(tr("A&ccept plan"), this);
  m_accept->setObjectName(QStringLiteral("accept"));
  line->addWidget(m_accept, 0, Qt::AlignBottom);
  to.addLayout(line);
  connect(m_accept, &QPushButton::clicked, this, &PairsPlace::accept);
  m_acceptAction = makeAction(
      QStringLiteral("acceptAction"), tr("Accept plan"), {}, [this] { accept(); }, nullptr);
  makeAfterwards(*line);
}

void PairsPlace::fillYards() {
  const QSignalBlocker quiet(m_yard);
  const QVariant before = m_yard->currentData();
  m_yard->clear();
  const auto& table = m_hub.season().table<apiary::Yard>();
  if (table.size() > 1) m_yard->addItem(tr("all yards"), QString());
  for (const auto& [key, yard] : table) {
    m_yard->addItem(yard.name.empty() ? qs(key) : qs(yard.name), qs(key));
  }
  int at = before.isValid() ? m_yard->findData(before) : -1;
  if (at < 0 && m_hub.selection().yard) at = m_yard->findData(qs(m_hub.selection().yard->str()));
  m_yard->setCurrentIndex(std::max(at, m_yard->count() > 0 ? 0 : -1));
  m_yard->setEnabled(m_yard->count() > 1);
}

void PairsPlace::followSelection() {
  const auto& yard = m_hub.selection().yard;
  // All yards stay all yards; one yard follows the map.
  if (!yard || m_yard->currentData().toString().isEmpty()) return;
  const int at = m_yard->findData(qs(yard->str()));
  if (at >= 0) m_yard->setCurrentIndex(at);
}

std::vector<base::YardId> PairsPlace::yards() const {
  std::vector<base::YardId> out;
  const std::string chosen = m_yard->currentData().toString().toStdString();
  for (const auto& [key, yard] : m_hub.season().table<apiary::Yard>()) {
    if (chosen.empty() || key == chosen) out.push_back(yard.yard);
  }
  return out;
}

void PairsPlace::again() {
  m_dirty = true;
  if (isVisible()) run();
}

void PairsPlace::showEvent(QShowEvent* event) {
  Place::showEvent(event);
  if (m_dirty) run();
}

void PairsPlace::run() {
  m_dirty = false;
  planning::BoostRequest request;
  request.yards = yards();
  request.date = adapt::fromQDate(m_date->date());
  request.target = adapt::fromQDate(m_target->date());
  request.pins.assign(m_pins.begin(), m_pins.end());
  request.forbids.assign(m_forbids.begin(), m_forbids.end());
  if (!m_hub.isOpen() || request.yards.empty()) {
    m_runner.cancel();
    const auto old = std::move(m_outcome);
    m_outcome.reset();
    Q_EMIT planChanged(nullptr);
    showSentence(emptySentence());
    showAccepted();
    return;
  }
  // The worker gets a copy: nothing that the window changes reaches it.
  if (!m_season || m_season->revision() != m_hub.season().revision()) {
    m_season = std::make_shared<const apiary::Season>(m_hub.season());
  }
  if (!m_outcome) showSentence(tr("Working out who can help whom…"));
  m_runner.start(m_season, std::move(request));
}

void PairsPlace::take(std::shared_ptr<const PlanOutcome> outcome) {
  m_progress->setVisible(false);
  m_stop->setVisible(false);
  if (!m_season || outcome->revision != m_season->revision()) return;  // stale
  const auto old = std::move(m_outcome);
  m_outcome = std::move(outcome);
  m_prices.clear();
  for (const auto& id : m_outcome->droppedPins) m_pins.erase(id);
  showPlan();
  Q_EMIT planChanged(plan());
}

const planning::BoostPlan* PairsPlace::plan() const {
  return m_outcome && m_outcome->plan ? &*m_outcome->plan : nullptr;
}

void PairsPlace::showSentence(const QString& sentence) {
  m_sentence->setText(sentence);
  m_pages->setCurrentIndex(0);
}

QString PairsPlace::emptySentence() const {
  if (!m_hub.isOpen()) return tr("No season is open. Open or make one in the File menu.");
  if (m_hub.season().table<apiary::Yard>().empty()) {
    return tr(
        "This season has no yard yet. Add one under Yards, or read tables in from the File "
        "menu.");
  }
  const auto* made = plan();
  if (!made) return {};
  const auto& judgements = made->problem.judgements;
  if (judgements.empty()) {
    return tr("No colony lives here on %1. Choose another yard or day.")
        .arg(adapt::dateText(made->problem.request.date));
  }
  const auto unseen = std::all_of(judgements.begin(), judgements.end(), [](const auto& j) {
    return j.verdict == apiary::VerdictCode::NotEnoughSeen ||
           j.verdict == apiary::VerdictCode::TooEarly;
  });
  if (unseen) {
    return tr(
        "Nothing has been seen here from which a colony could be judged. Open the hives and "
        "enter what you saw (Ctrl+I in Hive), then the pairs follow.");
  }
  const bool decided = std::any_of(made->problem.options.begin(), made->problem.options.end(),
                                   [](const auto& o) { return !planning::isVisit(o); });
  const bool barred = std::any_of(judgements.begin(), judgements.end(), [](const auto& j) {
    return j.healthBar && j.verdict == apiary::VerdictCode::SmallSound;
  });
  if (!decided && barred) {
    return tr("Small but sound colonies are here, and none may be helped: step 2 says why.");
  }
  if (!decided) {
    return tr("No colony here is small, sound and worth a boost on %1. Step 1 says how each was "
              "judged.")
        .arg(adapt::dateText(made->problem.request.date));
  }
  return {};
}

}  // namespace outyard::pairs
