// SPDX-License-Identifier: GPL-3.0-or-later
// What the place is made of.
#include <QAction>
#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>
#include <QVBoxLayout>

#include "ui/calendar/calendar_place.h"

namespace outyard::calendar {

namespace {

constexpr int kWeeksShown = 30;

}  // namespace

void CalendarPlace::makeHead(QVBoxLayout& to) {
  auto* line = new QHBoxLayout;
  auto* firstName = new QLabel(tr("&From the week of"));
  m_first = new QDateEdit;
  m_first->setObjectName(QStringLiteral("first"));
  m_first->setCalendarPopup(true);
  m_first->setDisplayFormat(QStringLiteral("d MMM yyyy"));
  m_first->setDateRange(QDate(1900, 1, 1), QDate(2190, 12, 31));
  m_first->setKeyboardTracking(false);
  m_first->setToolTip(tr("The first week that the calendar shows"));
  firstName->setBuddy(m_first);
  auto* weeksName = new QLabel(tr("&Weeks"));
  m_weeks = new QSpinBox;
  m_weeks->setObjectName(QStringLiteral("weeks"));
  m_weeks->setRange(4, 53);
  m_weeks->setValue(kWeeksShown);
  m_weeks->setKeyboardTracking(false);
  m_weeks->setToolTip(tr("How many weeks the calendar shows, 4 to 53"));
  weeksName->setBuddy(m_weeks);
  m_say = new QLabel;
  m_say->setObjectName(QStringLiteral("calendarSay"));
  m_progress = new QProgressBar;
  m_progress->setAccessibleName(tr("How far the calendar is worked out"));
  m_progress->setMaximumWidth(160);
  m_stop = new QPushButton(tr("&Stop"));
  m_stop->setObjectName(QStringLiteral("stop"));
  m_stop->setToolTip(tr("Stop working the calendar out"));
  connect(m_stop, &QPushButton::clicked, this, &CalendarPlace::stop);
  line->addWidget(firstName);
  line->addWidget(m_first);
  line->addSpacing(12);
  line->addWidget(weeksName);
  line->addWidget(m_weeks);
  line->addSpacing(12);
  line->addWidget(m_say, 1);
  line->addWidget(m_progress);
  line->addWidget(m_stop);
  to.addLayout(line);
}

void CalendarPlace::makeSide(QVBoxLayout& to) {
  m_cellHead = new QLabel;
  m_cellHead->setObjectName(QStringLiteral("cellHead"));
  m_cellHead->setWordWrap(true);
  QFont bold = font();
  bold.setBold(true);
  m_cellHead->setFont(bold);
  m_cell = new QLabel;
  m_cell->setObjectName(QStringLiteral("cellWords"));
  m_cell->setAccessibleName(tr("What stands in the chosen week"));
  m_hours = new QLabel;
  m_hours->setObjectName(QStringLiteral("weekHours"));
  m_change = new QLabel;
  m_change->setObjectName(QStringLiteral("changeWords"));
  m_change->setAccessibleName(tr("What the other dates would do"));
  for (auto* label : {m_cell, m_hours, m_change}) {
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  }
  m_open = new QPushButton(tr("Show the &yard"));
  m_open->setObjectName(QStringLiteral("openYard"));
  m_open->setToolTip(tr("Go to the yard of the chosen week"));
  connect(m_open, &QPushButton::clicked, this, [this] {
    if (const auto yard = yardAtCursor()) openYard(*yard);
  });
  auto* whatHead = new QLabel(tr("What if the dates were others?"));
  whatHead->setFont(bold);
  m_what = new QComboBox;
  m_what->setObjectName(QStringLiteral("what"));
  m_what->setAccessibleName(tr("What to shift"));
  m_what->setToolTip(tr("The planned work of the yard with its visits, or one of its flows"));
  m_what->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_days = new QSpinBox;
  m_days->setObjectName(QStringLiteral("days"));
  m_days->setRange(-60, 60);
  m_days->setValue(7);
  m_days->setSuffix(tr(" days"));
  m_days->setAccessibleName(tr("Days later"));
  m_days->setToolTip(tr("Days later; below zero: earlier"));
  m_try = new QPushButton(tr("&Try it"));
  m_try->setObjectName(QStringLiteral("try"));
  m_try->setToolTip(tr("See hours and readiness with these dates; nothing is kept yet"));
  m_keep = new QPushButton(tr("&Keep"));
  m_keep->setObjectName(QStringLiteral("keep"));
  m_keep->setToolTip(tr("Keep the dates that were tried, as one step that can be undone"));
  m_letGo = new QPushButton(tr("&Let go"));
  m_letGo->setObjectName(QStringLiteral("letGo"));
  m_letGo->setToolTip(tr("Back to the dates as they stand"));
  connect(m_try, &QPushButton::clicked, this, &CalendarPlace::tryDates);
  connect(m_keep, &QPushButton::clicked, this, &CalendarPlace::keepDates);
  connect(m_letGo, &QPushButton::clicked, this, &CalendarPlace::letGo);
  // A week in spring can hold more than a small window shows.
  auto* words = new QWidget;
  auto* list = new QVBoxLayout(words);
  list->setContentsMargins(0, 0, 4, 0);
  list->addWidget(m_cellHead);
  list->addWidget(m_cell);
  list->addWidget(m_hours);
  list->addStretch(1);
  auto* area = new QScrollArea;
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  area->setWidget(words);
  area->viewport()->setAutoFillBackground(false);
  words->setAutoFillBackground(false);
  to.addWidget(area, 1);
  to.addWidget(m_open, 0, Qt::AlignLeft);
  to.addSpacing(fontMetrics().height());
  to.addWidget(whatHead);
  to.addWidget(m_what);
  auto* line = new QHBoxLayout;
  line->addWidget(m_days);
  line->addWidget(m_try);
  line->addStretch();
  to.addLayout(line);
  to.addWidget(m_change);
  auto* last = new QHBoxLayout;
  last->addWidget(m_keep);
  last->addWidget(m_letGo);
  last->addStretch();
  to.addLayout(last);
}

void CalendarPlace::makeActions() {
  m_againAction = new QAction(tr("Work the calendar out again"), this);
  connect(m_againAction, &QAction::triggered, this, [this] { again(); });
  m_tableAction = new QAction(tr("Calendar as a table"), this);
  m_tableAction->setCheckable(true);
  connect(m_tableAction, &QAction::toggled, this, &CalendarPlace::showAsTable);
  m_svgAction = new QAction(tr("Save calendar as SVG…"), this);
  connect(m_svgAction, &QAction::triggered, this, &CalendarPlace::saveSvg);
}

}  // namespace outyard::calendar
