// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_panel.h"

#include <QAction>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QStackedWidget>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>
#include <atomic>

#include "ui/charts/course_files.h"
#include "ui/charts/course_table.h"
#include "ui/charts/course_view.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::charts {
namespace {

/// Two panels never take each other's work away.
QString workName() {
  static std::atomic<int> next{0};
  return QStringLiteral("course %1").arg(++next);
}

constexpr QSize kFileSize{1120, 640};

}  // namespace

CoursePanel::CoursePanel(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_name(workName()),
      m_view(new CourseView),
      m_model(new CourseTable(this)),
      m_table(new QTableView),
      m_pages(new QStackedWidget),
      m_trial(new QComboBox),
      m_words(new QLabel),
      m_remarks(new QLabel),
      m_trialName(new QLabel(tr("&Try it:"))) {
  setObjectName(QStringLiteral("coursePanel"));
  m_trial->setObjectName(QStringLiteral("courseTrial"));
  m_trial->setAccessibleName(tr("Try it: what would happen if"));
  m_trial->setToolTip(tr("Shows a second band beside the first; nothing is recorded"));
  for (const Trial trial : kTrials) {
    m_trial->addItem(trialText(trial), static_cast<int>(trial));
  }
  m_trialName->setBuddy(m_trial);
  m_table->setModel(m_model);
  m_table->setObjectName(QStringLiteral("courseTable"));
  m_table->setAccessibleName(tr("The course as a table"));
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setAlternatingRowColors(true);
  m_table->setShowGrid(false);
  m_table->setTabKeyNavigation(false);
  m_table->verticalHeader()->hide();
  m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  m_words->setObjectName(QStringLiteral("courseWords"));
  m_words->setWordWrap(true);
  m_words->setTextFormat(Qt::PlainText);
  m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  m_words->setMinimumHeight(2 * fontMetrics().height() + 4);  // so that the chart never jumps
  m_words->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_remarks->setObjectName(QStringLiteral("courseRemarks"));
  m_remarks->setWordWrap(true);
  m_remarks->setTextFormat(Qt::PlainText);
  m_remarks->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  m_remarks->setAccessibleName(tr("What is to be said of the course"));
  m_remarks->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  makeActions();
  auto* top = new QHBoxLayout;
  top->addWidget(m_trialName);
  top->addWidget(m_trial);
  top->addStretch(1);
  for (QAction* action : {m_farther, m_nearer, m_season, m_soon, m_asTable, m_save}) {
    auto* button = new QToolButton;
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setAccessibleName(action->text().remove(u'&'));
    button->setFocusPolicy(Qt::TabFocus);
    top->addWidget(button);
  }
  m_pages->addWidget(m_view);
  m_pages->addWidget(m_table);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->setSpacing(4);
  all->addLayout(top);
  all->addWidget(m_pages, 1);
  all->addWidget(m_words);
  all->addWidget(m_remarks);
  connect(m_trial, &QComboBox::currentIndexChanged, this, [this] {
    m_ask.trial = static_cast<Trial>(m_trial->currentData().toInt());
    if (m_ofColony) recompute();
  });
  connect(m_view, &CourseView::wordsChanged, this, [this](const QString& words) {
    m_pointed = words;
    refreshWords();
  });
  refreshWords();
}

CoursePanel::~CoursePanel() {
  m_hub.forecasts().abandon(m_name);
}

void CoursePanel::makeActions() {
  const auto make = [this](const QString& text, const QString& tip, const char* name, auto slot) {
    auto* action = new QAction(text, this);
    action->setToolTip(tip);
    action->setStatusTip(tip);
    action->setObjectName(QLatin1String(name));
    connect(action, &QAction::triggered, this, slot);
    return action;
  };
  m_nearer = make(tr("Nearer"), tr("Fewer days, larger (+ or the wheel)"), "courseNearer",
                  [this] { m_view->zoom(1.5); });
  m_farther = make(tr("Farther"), tr("More days (− or the wheel)"), "courseFarther",
                   [this] { m_view->zoom(1 / 1.5); });
  m_season = make(tr("Season"), tr("The whole season (Home)"), "courseSeason",
                  [this] { m_view->showSeason(); });
  m_soon = make(tr("Next six weeks"), tr("From a week ago to six weeks ahead (End)"), "courseSoon",
                [this] {
                  if (!m_data) return;
                  m_view->showDays(m_data->today.plusDays(-7), m_data->today.plusDays(42));
                });
  m_asTable =
      make(tr("As a table"), tr("The same figures as lines of a table"), "courseAsTable",
           [this](bool table) {
             m_pages->setCurrentIndex(table ? 1 : 0);
             if (table && m_data) {
               const int row = m_model->rowNear(m_data->today);
               m_table->selectRow(row);
               m_table->scrollTo(m_model->index(row, 0), QAbstractItemView::PositionAtCenter);
             }
           });
  m_asTable->setCheckable(true);
  m_save = make(tr("Save the course…"), tr("As a drawing (SVG, PNG, PDF) or as a table (CSV)"),
                "courseSave", [this] { save(); });
}

QList<QAction*> CoursePanel::actions() const {
  return {m_nearer, m_farther, m_season, m_soon, m_asTable, m_save};
}

bool CoursePanel::showsTable() const {
  return m_asTable->isChecked();
}

void CoursePanel::showColony(const base::ColonyId& colony, const QString& title,
                             std::vector<Tick> ticks) {
  const bool other = !m_ofColony || m_ask.colony != colony;
  m_ofColony = true;
  m_trial->show();
  m_trialName->show();
  m_ask.colony = colony;
  m_ask.title = title;
  m_ask.ticks = std::move(ticks);
  if (other) {
    m_data.reset();
    m_view->setData(nullptr, tr("Being worked out…"));
    m_model->setData(nullptr);
  }
  recompute();
}

void CoursePanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (m_waiting) recompute();
}

void CoursePanel::recompute() {
  // A panel that nobody sees takes no time from the others.
  m_waiting = !isVisible();
  if (m_waiting) return;
  if (!m_hub.isOpen()) {
    clear(tr("No season is open."));
    return;
  }
  m_ask.today = m_hub.workingDate();
  m_ask.units = adapt::Units::from(m_hub.settings());
  m_working = true;
  refreshWords();
  m_hub.forecasts().beside(
      m_name,
      [this, ask = m_ask](const apiary::Season& season,
                          base::Progress& progress) -> widgets::SideResult {
        std::shared_ptr<const CourseData> course = colonyCourse(season, ask, progress);
        if (!course && progress.cancelled()) return {};
        return [this, course = std::move(course)] {
          m_working = false;
          if (course) {
            take(course);
          } else {
            clear(tr("No colony lives here today: there is nothing to expect."));
          }
        };
      });
}

void CoursePanel::showCourse(std::shared_ptr<const CourseData> course) {
  m_hub.forecasts().abandon(m_name);
  m_ofColony = m_working = false;
  m_trial->hide();
  m_trialName->hide();
  take(std::move(course));
}

void CoursePanel::take(std::shared_ptr<const CourseData> course) {
  m_data = std::move(course);
  m_view->setData(m_data);
  m_model->setData(m_data);
  constexpr int kMostPx = 260;
  m_table->resizeColumnsToContents();
  for (int c = 0; c < m_model->columnCount(); ++c) {
    m_table->setColumnWidth(c, std::min(m_table->columnWidth(c), kMostPx));
  }
  m_remarks->setText(m_data->remarks.join(u'\n'));
  m_remarks->setVisible(!m_data->remarks.isEmpty());
  for (QAction* action : actions()) action->setEnabled(true);
  refreshWords();
  Q_EMIT shown();
}

void CoursePanel::clear(const QString& why) {
  m_hub.forecasts().abandon(m_name);
  m_working = m_waiting = m_ofColony = false;
  m_data.reset();
  m_view->setData(nullptr, why);
  m_model->setData(nullptr);
  m_remarks->clear();
  m_remarks->hide();
  for (QAction* action : actions()) action->setEnabled(false);
  m_pointed.clear();
  m_words->setText(why);
}

void CoursePanel::setTrial(Trial trial) {
  m_trial->setCurrentIndex(m_trial->findData(static_cast<int>(trial)));
}

void CoursePanel::refreshWords() {
  if (!m_pointed.isEmpty()) {
    m_words->setText(m_pointed);
  } else if (m_working) {
    m_words->setText(tr("Being worked out…"));
  } else {
    m_words->setText(
        tr("Point at a day to read it, or press Ctrl and an arrow key. The wheel or + and − zoom, "
           "dragging or the arrows move along. The band holds 4 of 5 looks; dotted: not looked at "
           "for five weeks."));
  }
}

void CoursePanel::printTo(QPagedPaintDevice& device) const {
  if (m_data) printCourse(device, *m_data, m_view->from(), m_view->to());
}

void CoursePanel::save() {
  if (!m_data) return;
  QString name = m_data->title;
  name.replace(u'/', u'-');
  const QString file =
      m_hub.dialogs().saveFile(this, tr("Save the course"),
                               tr("Drawing (*.svg);;Picture (*.png);;Page (*.pdf);;Table (*.csv)"),
                               name + QStringLiteral(".svg"));
  if (file.isEmpty()) return;
  const QString fault = saveCourse(file, *m_data, m_view->from(), m_view->to(), kFileSize);
  if (!fault.isEmpty()) m_hub.dialogs().failure(this, tr("The course was not saved"), fault);
}

}  // namespace outyard::charts
