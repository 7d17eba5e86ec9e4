// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/group_course.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/forecast/expected.h"
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

}  // namespace

std::shared_ptr<CourseData> groupCourse(
    const apiary::Season& season, const std::optional<base::YardId>& yard, const QString& title,
    const std::vector<const forecast::ColonyForecast*>& forecasts, base::Date today,
    const adapt::Units& units) {
  if (forecasts.empty()) return nullptr;
  auto course = std::make_shared<CourseData>();
  course->title = title;
  course->today = course->first = today;
  course->lanes = emptyLanes(units);
  course->temperatureUnit = units.temperatureUnit();
  const auto days = sumOf(forecasts);
  if (days.empty()) return nullptr;
  course->last = days.back().date;
  addDays(course->lanes, days, units, &Series::ahead);
  if (yard) course->weather = weatherCourse(season, *yard, today, course->last, today, units);
  // The dots of single colonies mean nothing for a sum: it counts as looked at.
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
                              adapt::Units::from(m_hub.settings()));
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
