// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/forecast_status.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QTimer>
#include <QToolButton>

#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/session_model.h"

namespace outyard::widgets {

ForecastStatus::ForecastStatus(SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_label(new QLabel),
      m_bar(new QProgressBar),
      m_stop(new QToolButton),
      m_all(new QAction(tr("&Work out all forecasts"), this)),
      m_cancel(new QAction(tr("S&top the forecasts"), this)),
      m_begin(new QTimer(this)),
      m_look(new QTimer(this)) {
  setObjectName(QStringLiteral("forecastStatus"));
  m_label->setObjectName(QStringLiteral("forecastLabel"));
  m_bar->setRange(0, 100);
  m_bar->setFixedWidth(110);
  m_bar->setTextVisible(false);
  m_bar->setAccessibleName(tr("Forecasts worked out, per cent"));
  m_all->setObjectName(QStringLiteral("forecastAll"));
  m_all->setStatusTip(tr("Every colony of every yard, beside your work"));
  m_cancel->setObjectName(QStringLiteral("forecastStop"));
  m_stop->setDefaultAction(m_cancel);
  m_stop->setText(tr("Stop"));
  m_stop->setToolTip(tr("Stop working out forecasts; what is ready is kept"));
  m_stop->setAccessibleName(tr("Stop the forecasts"));
  m_stop->setAutoRaise(true);
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(6, 0, 6, 0);
  layout->addWidget(m_label);
  layout->addWidget(m_bar);
  layout->addWidget(m_stop);
  // The window is drawn before the work begins.
  constexpr int kBeginMs = 800, kLookMs = 150;
  m_begin->setSingleShot(true);
  m_begin->setInterval(kBeginMs);
  // A recompute that takes less than this shows no bar: it would only flicker.
  m_look->setSingleShot(true);
  m_look->setInterval(kLookMs);
  auto& desk = m_hub.forecasts();
  connect(m_begin, &QTimer::timeout, this, [this] {
    m_hub.forecasts().wantAll();
    refresh();
  });
  connect(m_look, &QTimer::timeout, this, &ForecastStatus::refresh);
  connect(&m_hub, &SeasonHub::seasonReplaced, this, [this] {
    if (m_hub.isOpen()) m_begin->start();
    refresh();
  });
  connect(&m_hub, &SeasonHub::changed, m_look, qOverload<>(&QTimer::start));
  connect(&desk, &ForecastDesk::progressed, this, [this](int percent) {
    m_percent = percent;
    refresh();
  });
  connect(&desk, &ForecastDesk::settled, this, &ForecastStatus::refresh);
  connect(m_all, &QAction::triggered, this, [this] {
    m_hub.forecasts().wantAll();
    refresh();
  });
  connect(m_cancel, &QAction::triggered, this, [this] { m_hub.forecasts().cancel(); });
  if (m_hub.isOpen()) m_begin->start();
  refresh();
}

QList<QAction*> ForecastStatus::actions() const {
  return {m_all, m_cancel};
}

void ForecastStatus::refresh() {
  const auto& desk = m_hub.forecasts();
  const bool busy = desk.running();
  if (busy) {
    m_label->setText(tr("Forecasts: %1 of %2 yards").arg(desk.ready()).arg(desk.goal()));
    m_bar->setValue(m_percent);
  } else {
    m_percent = 0;
  }
  m_label->setVisible(busy);
  m_bar->setVisible(busy);
  m_stop->setVisible(busy);
  m_cancel->setEnabled(busy);
  m_all->setEnabled(m_hub.isOpen());
}

}  // namespace outyard::widgets
