// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/date_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QSlider>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QTimer>
#include <QToolButton>
#include <algorithm>
#include <set>

#include "ui/adapt/words.h"
#include "ui/widgets/theme.h"

namespace outyard::yards {
namespace {

constexpr int kWeek = 7;

QToolButton* button(const QString& text, const QString& name, const char* objectName) {
  auto* made = new QToolButton;
  made->setText(text);
  made->setToolTip(name);
  made->setAccessibleName(name);
  made->setObjectName(QLatin1String(objectName));
  return made;
}

}  // namespace

DateBar::DateBar(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_slider(new QSlider(Qt::Horizontal)),
      m_label(new QLabel),
      m_back(button(QStringLiteral("◂"),
                    tr("Earlier day with records; ahead of today, a week earlier"), "dateBack")),
      m_on(button(QStringLiteral("▸"), tr("Later day with records; from today on, a week later"),
                  "dateOn")),
      m_today(button(tr("Today"), tr("Back to the working date"), "dateToday")),
      m_wait(new QTimer(this)) {
  m_slider->setObjectName(QStringLiteral("dateSlider"));
  m_slider->setAccessibleName(tr("Day that the yard is shown on"));
  m_label->setAccessibleName(tr("Shown day"));
  m_label->setMinimumWidth(fontMetrics().horizontalAdvance(
      tr("%1, expected").arg(adapt::dateText(base::Date::fromYmd(2026, 9, 30).value()))));
  m_wait->setSingleShot(true);
  constexpr int kFrameMs = 30;  // a fast drag draws the yard once a frame, not once a day
  m_wait->setInterval(kFrameMs);
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 10);  // the ticks stand below the slider
  layout->addWidget(m_back);
  layout->addWidget(m_slider, 1);
  layout->addWidget(m_on);
  layout->addWidget(m_label);
  layout->addWidget(m_today);
  connect(m_slider, &QSlider::valueChanged, this, [this] {
    if (!m_following) m_wait->start();
  });
  connect(m_wait, &QTimer::timeout, this,
          [this] { m_hub.setShownDate(m_first.plusDays(m_slider->value())); });
  connect(m_back, &QToolButton::clicked, this, [this] { step(-1); });
  connect(m_on, &QToolButton::clicked, this, [this] { step(1); });
  connect(m_today, &QToolButton::clicked, this,
          [this] { m_hub.setShownDate(m_hub.workingDate()); });
  connect(&m_hub, &widgets::SeasonHub::shownDateChanged, this, [this] { showDate(); });
}

void DateBar::refresh() {
  std::set<base::Date> days;
  if (const auto yard = m_hub.selection().yard) {
    for (const auto& hive : m_hub.hives(*yard)) {
      for (const auto* look : m_hub.season().journal<apiary::Inspection>(hive.hive)) {
        days.insert(look->date);
      }
      for (const auto* event : m_hub.season().journal<apiary::Event>(hive.hive)) {
        days.insert(event->date);
      }
    }
  }
  m_days.assign(days.begin(), days.end());
  m_first = m_hub.firstDate();
  m_following = true;
  m_slider->setRange(0, std::max(0, m_hub.workingDate() - m_first) + kDaysAhead);
  m_slider->setPageStep(kWeek);
  m_following = false;
  setEnabled(m_hub.isOpen());
  showDate();
  update();
}

void DateBar::showDate() {
  m_following = true;
  m_slider->setValue(m_hub.shownDate() - m_first);
  m_following = false;
  const bool today = m_hub.showsToday();
  const QString day = adapt::dateText(m_hub.shownDate());
  m_label->setText(today                 ? tr("%1, today").arg(day)
                   : m_hub.showsFuture() ? tr("%1, expected").arg(day)
                                         : day);
  QFont font = m_label->font();
  font.setBold(!today);
  m_label->setFont(font);
  m_today->setEnabled(!today);
  const base::Date shown = m_hub.shownDate();
  m_back->setEnabled(m_hub.showsFuture() || (!m_days.empty() && m_days.front() < shown));
  m_on->setEnabled(shown < m_hub.workingDate().plusDays(kDaysAhead));
}

void DateBar::step(int by) {
  const base::Date shown = m_hub.shownDate();
  if (by < 0 && shown > m_hub.workingDate()) {
    m_hub.setShownDate(std::max(shown.plusDays(-kWeek), m_hub.workingDate()));
  } else if (by < 0) {
    const auto it = std::lower_bound(m_days.begin(), m_days.end(), shown);
    if (it != m_days.begin()) m_hub.setShownDate(*std::prev(it));
  } else if (shown >= m_hub.workingDate()) {
    // Ahead there are no records: a week at a time.
    m_hub.setShownDate(std::min(shown.plusDays(kWeek), m_hub.workingDate().plusDays(kDaysAhead)));
  } else {
    const auto it = std::upper_bound(m_days.begin(), m_days.end(), shown);
    m_hub.setShownDate(it == m_days.end() ? m_hub.workingDate()
                                          : std::min(*it, m_hub.workingDate()));
  }
}

double DateBar::xOf(base::Date day) const {
  QStyleOptionSlider option;
  option.initFrom(m_slider);
  const int handle = m_slider->style()->pixelMetric(QStyle::PM_SliderLength, &option, m_slider);
  const QRect groove = m_slider->geometry();
  const double share = static_cast<double>(day - m_first) / std::max(1, m_slider->maximum());
  return groove.left() + handle / 2.0 + share * (groove.width() - handle);
}

void DateBar::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  const double top = m_slider->geometry().bottom() - 1;
  painter.setPen(QPen(palette().color(QPalette::PlaceholderText), 1));
  for (const base::Date day : m_days) {
    if (day < m_first || day > m_hub.workingDate()) continue;
    painter.drawLine(QPointF(xOf(day), top), QPointF(xOf(day), top + 5));
  }
  // What lies ahead is hatched: nothing of it was seen.
  const QColor ahead = palette().color(QPalette::PlaceholderText);
  painter.setPen(QPen(ahead, 1, Qt::DotLine));
  painter.drawLine(QPointF(xOf(m_hub.workingDate()) + 6, top + 3),
                   QPointF(xOf(m_hub.workingDate().plusDays(kDaysAhead)), top + 3));
  // Today stands out by its shape: a filled triangle under its place.
  const double x = xOf(m_hub.workingDate());
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(palette().color(QPalette::WindowText));
  painter.drawPolygon(
      QPolygonF{QPointF(x, top + 1), QPointF(x - 5, top + 9), QPointF(x + 5, top + 9)});
}

}  // namespace outyard::yards
