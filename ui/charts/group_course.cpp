// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/group_course.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPointer>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/apiary/state.h"
#include "core/forecast/expected.h"
#include "core/forecast/history.h"
#include "ui/charts/course_panel.h"
#include "ui/charts/course_view.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::charts {
namespace {

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

constexpr int kSmallDays = 120;
constexpr int kPastStep = 14, kPastSteps = 26, kLookHolds = 35;
/// Of the errors of many looks so much is shared (one reader, one way of looking); as in sumOf.
constexpr double kShared = 0.4;

/// Sums one quantity of the colonies of one day.
struct Sum {
  int seen = 0;
  double median = 0, below = 0, above = 0, below2 = 0, above2 = 0;
  void add(const strength::Estimate& e) {
    const double down = e.median - e.low, up = e.high - e.median;
    ++seen;
    median += e.median;
    below += down;
    above += up;
    below2 += down * down;
    above2 += up * up;
  }
  void into(Band& band, base::Date day, int living) const {
    if (seen == 0 || 2 * seen < living) return;
    const double scale = static_cast<double>(living) / seen;
    const auto width = [&](double sum, double squares) {
      return scale * std::sqrt(kShared * sum * sum + (1 - kShared) * squares);
    };
    band.push_back({day, std::max(0.0, scale * median - width(below, below2)), scale * median,
                    scale * median + width(above, above2)});
  }
};

/// The past and today's sum as one band, so that past and future meet.
void addPast(CourseData& course, const PastSum& past, const adapt::Units& units) {
  const double mass = units.shown(base::Mass{1.0});
  const auto put = [&](Series& series, const Band& from, double scale) {
    if (from.empty() || series.ahead.empty()) return;
    for (const auto& p : from) {
      series.past.push_back({p.date, p.low * scale, p.median * scale, p.high * scale});
    }
    series.past.push_back(series.ahead.front());
    course.first = std::min(course.first, from.front().date);
  };
  put(course.lanes[0].series[0], past.bees, 1);
  put(course.lanes[1].series[0], past.sealed, 1);
  put(course.lanes[1].series[1], past.brood, 1);
  put(course.lanes[2].series[0], past.honeyKg, mass);
}

}  // namespace

PastSum pastSum(const apiary::Season& season, const std::optional<base::YardId>& yard,
                base::Date today, base::Progress& progress) {
  std::map<base::ColonyId, std::vector<const apiary::ColonyStay*>> colonies;
  for (const auto& [key, hive] : season.table<apiary::Hive>()) {
    for (const auto* stay : season.journal<apiary::ColonyStay>(hive.hive)) {
      colonies[stay->colony].push_back(stay);
    }
  }
  struct Day {
    int living = 0;
    Sum bees, sealed, brood, honeyKg;
  };
  std::vector<Day> days(kPastSteps);
  const auto dateOf = [&](int k) { return today.plusDays(-kPastStep * (kPastSteps - k)); };
  for (const auto& [colony, stays] : colonies) {
    if (progress.cancelled()) return {};
    std::optional<forecast::History> history;
    for (int k = 0; k < kPastSteps; ++k) {
      const base::Date date = dateOf(k);
      const auto lives = std::find_if(stays.begin(), stays.end(), [&](const auto* s) {
        return s->fromDate <= date && (!s->toDate || date < *s->toDate);
      });
      if (lives == stays.end()) continue;
      if (yard && apiary::hiveOn(season, (*lives)->hive, date).yard != *yard) continue;
      if (!history) history = forecast::historyOf(season, colony, today);
      if (!history) break;
      Day& day = days[static_cast<std::size_t>(k)];
      ++day.living;
      const strength::Estimate *bees = nullptr, *sealed = nullptr, *brood = nullptr,
                               *honey = nullptr;
      for (const auto& look : history->looks) {
        if (look.date > date || date - look.date > kLookHolds) continue;
        const auto latest = [](const strength::Estimate*& to, const auto& from) {
          if (from) to = &*from;
        };
        latest(bees, look.bees);
        latest(sealed, look.sealed);
        latest(brood, look.brood);
        latest(honey, look.honeyKg);
      }
      if (bees) day.bees.add(*bees);
      if (sealed) day.sealed.add(*sealed);
      if (brood) day.brood.add(*brood);
      if (honey) day.honeyKg.add(*honey);
    }
  }
  PastSum out;
  for (int k = 0; k < kPastSteps; ++k) {
    const Day& day = days[static_cast<std::size_t>(k)];
    day.bees.into(out.bees, dateOf(k), day.living);
    day.sealed.into(out.sealed, dateOf(k), day.living);
    day.brood.into(out.brood, dateOf(k), day.living);
    day.honeyKg.into(out.honeyKg, dateOf(k), day.living);
  }
  return out;
}

std::shared_ptr<CourseData> groupCourse(
    const apiary::Season& season, const std::optional<base::YardId>& yard, const QString& title,
    const std::vector<const forecast::ColonyForecast*>& forecasts, base::Date today,
    const adapt::Units& units, const PastSum& past) {
  if (forecasts.empty()) return nullptr;
  auto course = std::make_shared<CourseData>();
  course->title = title;
  course->today = course->first = today;
  course->lanes = emptyLanes(units, LaneSet::Sum);
  course->temperatureUnit = units.temperatureUnit();
  const auto days = sumOf(forecasts);
  if (days.empty()) return nullptr;
  course->last = days.back().date;
  addDays(course->lanes, days, units, &Series::ahead, LaneSet::Sum);
  addPast(*course, past, units);
  if (yard) {
    course->weather = weatherCourse(season, *yard, course->first, course->last, today, units);
  }
  // Dotted before today where fewer than half were looked at; the dots of single colonies mean
  // nothing for the sum that is expected: it counts as looked at.
  for (const auto& p : past.bees) course->looks.push_back(p.date);
  for (base::Date d = today; d <= course->last; d = d.plusDays(kUnseenDays)) {
    course->looks.push_back(d);
  }
  course->looks.push_back(course->last);
  //: Number of colonies.
  course->remarks << Course::tr(
                         "The sum of %1 colonies as they are, without what is planned. "
                         "Two parts in five of the bands are taken as shared (weather, "
                         "flow).")
                         .arg(forecasts.size());
  if (!past.empty()) {
    course->remarks << Course::tr(
        "Before today: the sum of what was seen, each colony by its last look of five weeks, "
        "brought up to all that lived there; dotted where fewer than half were looked at.");
  }
  return course;
}

GroupCourseDialog::GroupCourseDialog(widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_which(new QComboBox),
      m_how(new QComboBox),
      m_pages(new QStackedWidget),
      m_panel(new CoursePanel(hub)),
      m_small(new SmallCourses),
      m_area(new QScrollArea),
      m_note(new QLabel) {
  setWindowTitle(tr("Course of a yard"));
  setObjectName(QStringLiteral("groupCourse"));
  resize(980, 680);
  m_which->setObjectName(QStringLiteral("groupWhich"));
  m_which->setAccessibleName(tr("Yard"));
  m_which->addItem(tr("All yards"));
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    m_which->addItem(yard.name.empty() ? qs(key) : qs(yard.name), qs(key));
  }
  m_how->setObjectName(QStringLiteral("groupHow"));
  m_how->setAccessibleName(tr("Sum or each hive"));
  m_how->addItem(tr("Sum of the colonies"));
  m_how->addItem(tr("Each hive beside the others"));
  m_area->setWidgetResizable(true);
  m_area->setWidget(m_small);
  m_area->setFrameShape(QFrame::NoFrame);
  m_pages->addWidget(m_panel);
  m_pages->addWidget(m_area);
  m_note->setObjectName(QStringLiteral("groupNote"));
  m_note->setWordWrap(true);
  m_note->setMinimumHeight(2 * fontMetrics().height() + 2);
  m_note->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  auto* top = new QHBoxLayout;
  top->addWidget(m_which);
  top->addWidget(m_how);
  top->addStretch(1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* all = new QVBoxLayout(this);
  all->addLayout(top);
  all->addWidget(m_pages, 1);
  all->addWidget(m_note);
  all->addWidget(buttons);
  connect(m_which, &QComboBox::currentIndexChanged, this, &GroupCourseDialog::refresh);
  connect(m_how, &QComboBox::currentIndexChanged, this, [this](int index) {
    m_pages->setCurrentIndex(index);
    refresh();
  });
  connect(m_small, &SmallCourses::chosenChanged, m_note, &QLabel::setText);
  connect(m_small, &SmallCourses::opened, this, [this](const base::HiveId& hive) {
    m_hub.selectHive(hive);
    accept();
  });
  connect(&hub.forecasts(), &widgets::ForecastDesk::updated, this, &GroupCourseDialog::refresh);
  showYard(hub.selection().yard);
}

void GroupCourseDialog::showYard(const std::optional<base::YardId>& yard) {
  m_which->setCurrentIndex(yard ? std::max(0, m_which->findData(qs(yard->str()))) : 0);
  refresh();
}

const PastSum& GroupCourseDialog::past(const std::optional<base::YardId>& yard) {
  const std::pair wanted{yard ? yard->str() : std::string(), m_hub.season().revision()};
  if (m_pastOf == wanted) return m_past;
  m_past = {};
  m_pastOf = wanted;
  m_hub.forecasts().beside(
      QStringLiteral("groupPast"),
      [yard, wanted, today = m_hub.workingDate(), self = QPointer<GroupCourseDialog>(this)](
          const apiary::Season& season, base::Progress& progress) -> widgets::SideResult {
        PastSum found = pastSum(season, yard, today, progress);
        if (progress.cancelled()) return {};
        return [self, wanted, found = std::move(found)]() mutable {
          if (!self || self->m_pastOf != wanted) return;
          self->m_past = std::move(found);
          self->refresh();
        };
      });
  return m_past;
}

void GroupCourseDialog::refresh() {
  const QString key = m_which->currentData().toString();
  std::optional<base::YardId> chosen;
  if (!key.isEmpty()) chosen = base::YardId(key.toStdString());
  auto& desk = m_hub.forecasts();
  std::vector<const forecast::ColonyForecast*> all;
  int missing = 0;
  std::vector<base::YardId> yards;
  for (const auto& [id, yard] : m_hub.season().table<apiary::Yard>()) {
    if (!chosen || *chosen == yard.yard) yards.push_back(yard.yard);
  }
  for (const auto& yard : yards) {
    if (!desk.isFresh(yard)) {
      ++missing;
      continue;
    }
    for (const auto* f : desk.ofYard(yard)) all.push_back(f);
  }
  if (missing > 0) {
    if (chosen) {
      desk.want(*chosen);
    } else {
      desk.wantAll();
    }
  }
  const base::Date today = m_hub.workingDate();
  m_note->setText(missing > 0 ? tr("%n yard(s) are being worked out.", nullptr, missing)
                              : QString());
  if (m_how->currentIndex() == 0) {
    auto course = groupCourse(m_hub.season(), chosen, m_which->currentText(), all, today,
                              adapt::Units::from(m_hub.settings()), past(chosen));
    if (course) {
      m_panel->showCourse(std::move(course));
    } else {
      m_panel->clear(missing > 0 ? tr("Being worked out…")
                                 : tr("No colony lives here today: there is nothing to expect."));
    }
    return;
  }
  std::vector<SmallCourse> small;
  for (const auto* f : all) {
    SmallCourse one{f->hive, f->colony, qs(f->colony.str()), emptyLanes({})[0].series[0]};
    for (const auto& d : f->days) {
      if (d.date <= today.plusDays(kSmallDays)) {
        one.bees.ahead.push_back({d.date, d.seen.low, d.seen.median, d.seen.high});
      }
    }
    small.push_back(std::move(one));
  }
  std::sort(small.begin(), small.end(), [](const auto& a, const auto& b) {
    return QString::localeAwareCompare(a.name, b.name) < 0;
  });
  m_small->setCourses(std::move(small), today, today.plusDays(kSmallDays), today);
  if (missing == 0 && m_small->count() > 0) {
    m_note->setText(tr("Bees on the combs, today to %1 weeks ahead, all on one scale. Arrows "
                       "choose a hive, Enter opens it.")
                        .arg(kSmallDays / 7));
  }
}

}  // namespace outyard::charts
