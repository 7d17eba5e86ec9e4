// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pair_chart.h"

#include <QAreaSeries>
#include <QChart>
#include <QChartView>
#include <QDateTimeAxis>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QLegendMarker>
#include <QLineSeries>
#include <QPen>
#include <QValueAxis>
#include <algorithm>
#include <cmath>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/print/palette.h"

namespace outyard::pairs {
namespace {

using Bands = std::vector<forecast::Band>;

qreal moment(base::Date day) {
  return static_cast<qreal>(adapt::toQDate(day).startOfDay().toMSecsSinceEpoch());
}

/// Thousands, so that the scale stays short.
qreal thousands(double bees) {
  return bees / 1000;
}

QLineSeries* line(const std::vector<base::Date>& days, const Bands& bands,
                  double forecast::Band::*part, QObject* parent) {
  auto* series = new QLineSeries(parent);
  for (std::size_t i = 0; i < days.size(); ++i) {
    series->append(moment(days[i]), thousands(bands[i].*part));
  }
  return series;
}

/// The next round step that cuts the scale into at most five.
double roundStep(double most) {
  const double raw = std::max(most, 0.5) / 4;
  const double power = std::pow(10, std::floor(std::log10(raw)));
  for (const double step : {1.0, 2.0, 5.0, 10.0}) {
    if (raw <= step * power) return step * power;
  }
  return 10 * power;
}

}  // namespace

PairChart::PairChart(QWidget* parent)
    : QWidget(parent),
      m_why(new QLabel(this)),
      m_left(new QChartView(this)),
      m_right(new QChartView(this)) {
  setObjectName(QStringLiteral("pairChart"));
  setAccessibleName(tr("Courses of both colonies, without and with the plan"));
  m_why->setWordWrap(true);
  m_why->setAlignment(Qt::AlignCenter);
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(m_why, 1);
  for (QChartView* view : {m_left, m_right}) {
    view->setRenderHint(QPainter::Antialiasing);
    view->setFrameShape(QFrame::NoFrame);
    view->setFocusPolicy(Qt::NoFocus);
    layout->addWidget(view, 1);
  }
  clear({});
}

void PairChart::clear(const QString& why) {
  m_course.reset();
  m_why->setText(why);
  m_why->setVisible(true);
  m_left->setVisible(false);
  m_right->setVisible(false);
  setAccessibleDescription(why);
}

void PairChart::show(const planning::PairCourse& course, const QString& receiver,
                     const QString& donor) {
  m_course = course;
  m_receiver = receiver;
  m_donor = donor;
  m_why->setVisible(false);
  m_left->setVisible(true);
  m_right->setVisible(!course.donorWith.empty());
  const auto sentence = [&](const QString& name, const Bands& without, const Bands& with) {
    return tr("%1 on %2: about %3 bees as it is, %4 with the plan.")
        .arg(name, QString::fromStdString(course.days.back().iso()),
             adapt::band(without.back().median, without.back().low, without.back().high),
             adapt::band(with.back().median, with.back().low, with.back().high));
  };
  QString words = sentence(receiver, course.receiverWithout, course.receiverWith);
  if (!course.donorWith.empty()) {
    words += u' ' + sentence(donor, course.donorWithout, course.donorWith);
  }
  setAccessibleDescription(words);
  setToolTip(words);
  draw();
}

void PairChart::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && m_course) draw();
}

void PairChart::draw() {
  const auto& inks = print::Palette::forBackground(palette().color(QPalette::Window));
  const auto fill = [&](QChartView* view, const QString& name, const Bands& without,
                        const Bands& with) {
    auto* chart = new QChart;
    chart->setBackgroundVisible(false);
    chart->setMargins({4, 2, 8, 2});
    chart->setTitle(tr("%1, thousand bees").arg(name));
    QFont bold = font();
    bold.setBold(true);
    chart->setTitleFont(bold);
    chart->setTitleBrush(palette().color(QPalette::WindowText));
    chart->legend()->setAlignment(Qt::AlignBottom);
    chart->legend()->setLabelColor(palette().color(QPalette::WindowText));
    chart->legend()->setFont(font());
    double most = 0;
    for (const Bands* bands : {&without, &with}) {
      for (const auto& b : *bands) most = std::max(most, thousands(b.high));
    }
    auto* days = new QDateTimeAxis(chart);
    days->setFormat(QStringLiteral("d MMM"));
    days->setRange(adapt::toQDate(m_course->days.front()).startOfDay(),
                   adapt::toQDate(m_course->days.back()).startOfDay());
    days->setTickCount(4);
    auto* bees = new QValueAxis(chart);
    const double step = roundStep(most);
    bees->setRange(0, step * std::ceil(most / step));
    bees->setTickType(QValueAxis::TicksDynamic);
    bees->setTickInterval(step);
    bees->setLabelFormat(step < 1 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
    chart->addAxis(days, Qt::AlignBottom);
    chart->addAxis(bees, Qt::AlignLeft);
    for (QAbstractAxis* axis :
         {static_cast<QAbstractAxis*>(days), static_cast<QAbstractAxis*>(bees)}) {
      axis->setLabelsColor(palette().color(QPalette::WindowText));
      axis->setLabelsFont(font());
      axis->setGridLinePen(QPen(inks.colour(sheet::Ink::FaintLine), 1));
      axis->setLinePen(QPen(inks.colour(sheet::Ink::Line), 1));
    }
    struct Arm {
      const Bands* bands;
      QString label;
      QColor colour;
      Qt::PenStyle style;
    };
    const Arm arms[] = {
        {&without, tr("as it is"), inks.colour(sheet::Ink::FaintText), Qt::DashLine},
        {&with, tr("with the plan"), inks.colour(sheet::Ink::Accent), Qt::SolidLine}};
    for (const Arm& arm : arms) {
      auto* band = new QAreaSeries(line(m_course->days, *arm.bands, &forecast::Band::high, chart),
                                   line(m_course->days, *arm.bands, &forecast::Band::low, chart));
      QColor faint = arm.colour;
      faint.setAlphaF(0.18F);
      band->setBrush(faint);
      band->setPen(Qt::NoPen);
      auto* median = line(m_course->days, *arm.bands, &forecast::Band::median, chart);
      median->setPen(QPen(arm.colour, 2, arm.style));
      median->setName(arm.label);
      for (QAbstractSeries* series :
           {static_cast<QAbstractSeries*>(band), static_cast<QAbstractSeries*>(median)}) {
        chart->addSeries(series);
        series->attachAxis(days);
        series->attachAxis(bees);
      }
      for (QLegendMarker* marker : chart->legend()->markers(band)) marker->setVisible(false);
    }
    QChart* before = view->chart();
    view->setChart(chart);
    delete before;
  };
  fill(m_left, m_receiver, m_course->receiverWithout, m_course->receiverWith);
  if (!m_course->donorWith.empty()) {
    fill(m_right, m_donor, m_course->donorWithout, m_course->donorWith);
  }
}

}  // namespace outyard::pairs
