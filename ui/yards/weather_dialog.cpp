// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/weather_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <set>

#include "core/forecast/weather.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/yards/dialog_parts.h"

namespace outyard::yards {
namespace {

using apiary::WeatherDay;
using apiary::WeatherKind;

constexpr int kMostRows = 800;  ///< more are in the season, yet nobody reads them here
enum Column { kDate, kKind, kMin, kMax, kRain, kWind, kIssued, kColumns };

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}
QString kindText(WeatherKind kind) {
  switch (kind) {
    case WeatherKind::Observed:
      return WeatherDialog::tr("observed");
    case WeatherKind::Forecast:
      return WeatherDialog::tr("forecast");
    case WeatherKind::Normal:
      break;
  }
  return WeatherDialog::tr("usual");
}

}  // namespace

WeatherDialog::WeatherDialog(widgets::SeasonHub& hub, base::YardId yard, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_yard(std::move(yard)),
      m_which(new QComboBox),
      m_kind(new QComboBox),
      m_table(new QTableWidget(0, kColumns)),
      m_date(dateField(hub.workingDate(), "weatherDate")),
      m_issued(dateField(hub.workingDate(), "weatherIssued")),
      m_min(new QDoubleSpinBox),
      m_max(new QDoubleSpinBox),
      m_rain(new QDoubleSpinBox),
      m_wind(new QDoubleSpinBox),
      m_form(new QFormLayout),
      m_about(noteLabel("weatherAbout")),
      m_why(noteLabel("weatherWhy")),
      m_enter(new QPushButton(tr("&Enter day"))),
      m_takeOut(new QPushButton(tr("Ta&ke out"))) {
  setWindowTitle(tr("Weather of %1").arg(qs(m_yard.str())));
  const auto units = adapt::Units::from(hub.settings());
  m_which->setObjectName(QStringLiteral("weatherWhich"));
  m_which->setAccessibleName(tr("Shown"));
  m_which->addItem(tr("Observed days and forecasts"), false);
  m_which->addItem(tr("Usual weather"), true);
  m_table->setObjectName(QStringLiteral("weatherTable"));
  m_table->setAccessibleName(tr("Days of weather"));
  m_table->setHorizontalHeaderLabels({tr("Day"), tr("Kind"),
                                      tr("Lowest, %1").arg(units.temperatureUnit()),
                                      tr("Highest, %1").arg(units.temperatureUnit()),
                                      tr("Rain, mm"), tr("Wind, m/s"), tr("Issued")});
  m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  m_table->horizontalHeader()->setStretchLastSection(true);
  m_table->verticalHeader()->setVisible(false);
  m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setMinimumSize(600, 300);

  makeFields(m_form);
  auto* fields = new QGroupBox(tr("A day by hand"));
  auto* fieldLayout = new QVBoxLayout(fields);
  fieldLayout->addLayout(m_form);
  fieldLayout->addWidget(m_why);
  fieldLayout->addWidget(m_enter, 0, Qt::AlignLeft);
  fieldLayout->addStretch(1);
  m_enter->setObjectName(QStringLiteral("weatherEnter"));
  m_takeOut->setObjectName(QStringLiteral("weatherTakeOut"));
  m_takeOut->setAutoDefault(false);
  m_enter->setDefault(true);

  auto* left = new QVBoxLayout;
  left->addWidget(m_which, 0, Qt::AlignLeft);
  left->addWidget(m_table, 1);
  left->addWidget(m_takeOut, 0, Qt::AlignLeft);
  auto* columns = new QHBoxLayout;
  columns->addLayout(left, 1);
  columns->addWidget(fields);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Close);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::accept);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(m_about);
  layout->addLayout(columns, 1);
  layout->addWidget(box);

  connect(m_which, &QComboBox::currentIndexChanged, this, [this] { fill(); });
  connect(m_enter, &QPushButton::clicked, this, &WeatherDialog::enter);
  connect(m_takeOut, &QPushButton::clicked, this, &WeatherDialog::takeOut);
  connect(m_table, &QTableWidget::itemSelectionChanged, this, [this] {
    const auto rows = chosen();
    if (rows.size() == 1) show(rows.front());
    refresh();
  });
  fill();
  m_date->setFocus();
}

void WeatherDialog::makeFields(QFormLayout* form) {
  const auto units = adapt::Units::from(m_hub.settings());
  m_kind->setObjectName(QStringLiteral("weatherKind"));
  for (const auto kind : {WeatherKind::Observed, WeatherKind::Forecast, WeatherKind::Normal}) {
    m_kind->addItem(kindText(kind), static_cast<int>(kind));
  }
  const auto degrees = [&](QDoubleSpinBox* field, const char* name, double celsius) {
    field->setObjectName(QLatin1String(name));
    field->setRange(units.shown(base::Temperature{-60}), units.shown(base::Temperature{60}));
    field->setDecimals(1);
    field->setSuffix(u' ' + units.temperatureUnit());
    field->setValue(units.shown(base::Temperature{celsius}));
  };
  degrees(m_min, "weatherMin", 5);
  degrees(m_max, "weatherMax", 15);
  // One below nothing says that it was not measured.
  m_rain->setObjectName(QStringLiteral("weatherRain"));
  m_rain->setRange(-0.5, 2000);
  m_rain->setDecimals(1);
  m_rain->setSuffix(tr(" mm"));
  m_rain->setSpecialValueText(tr("not measured"));
  m_rain->setValue(-0.5);
  m_wind->setObjectName(QStringLiteral("weatherWind"));
  m_wind->setRange(-0.5, 120);
  m_wind->setDecimals(1);
  m_wind->setSuffix(tr(" m/s"));
  m_wind->setSpecialValueText(tr("not measured"));
  m_wind->setValue(-0.5);
  form->addRow(tr("&Kind"), m_kind);
  form->addRow(tr("&Day"), m_date);
  form->addRow(tr("&Issued on"), m_issued);
  form->addRow(tr("&Lowest"), m_min);
  form->addRow(tr("&Highest"), m_max);
  form->addRow(tr("&Rain"), m_rain);
  form->addRow(tr("&Wind"), m_wind);
  connect(m_kind, &QComboBox::currentIndexChanged, this, [this] { refresh(); });
  for (auto* field : {m_date, m_issued}) {
    connect(field, &QDateEdit::dateChanged, this, [this] { refresh(); });
  }
  for (auto* field : {m_min, m_max, m_rain, m_wind}) {
    connect(field, &QDoubleSpinBox::valueChanged, this, [this] { refresh(); });
  }
}

void WeatherDialog::fill() {
  const bool usual = m_which->currentData().toBool();
  m_days.clear();
  int all = 0;
  for (const auto& [key, w] : m_hub.season().table<WeatherDay>()) {
    if (w.yard != m_yard) continue;
    ++all;
    if ((w.kind == WeatherKind::Normal) == usual) m_days.push_back(w);
  }
  std::sort(m_days.begin(), m_days.end(), [usual](const auto& a, const auto& b) {
    const auto key = [](const WeatherDay& w) { return std::tuple(w.date, w.issued, w.kind); };
    return usual ? key(a) < key(b) : key(a) > key(b);  // the newest first
  });
  const auto rows = std::min<std::size_t>(m_days.size(), kMostRows);
  QString about;
  const auto source = forecast::weatherSource(m_hub.season(), m_yard);
  if (all == 0) {
    about = source ? tr("Nothing is recorded here: the forecast takes the weather of %1.")
                         .arg(qs(source->str()))
                   : tr("Nothing is recorded here or within 30 km: the forecast takes what is "
                        "usual for the latitude. Type days in, or import a file from the File "
                        "menu.");
  } else if (m_days.size() > rows) {
    about = tr("The latest %1 of %2 days are shown.")
                .arg(QLocale().toString(static_cast<int>(rows)),
                     QLocale().toString(static_cast<int>(m_days.size())));
  }
  showNote(*m_about, about);
  m_days.resize(rows);
  const auto units = adapt::Units::from(m_hub.settings());
  const QLocale locale;
  m_table->setRowCount(static_cast<int>(rows));
  for (std::size_t i = 0; i < rows; ++i) {
    const WeatherDay& w = m_days[i];
    const auto number = [&](double v) { return locale.toString(v, 'f', 1); };
    const QStringList texts{adapt::dateText(w.date),
                            kindText(w.kind),
                            number(units.shown(base::Temperature{w.tminC})),
                            number(units.shown(base::Temperature{w.tmaxC})),
                            w.rainMm ? number(*w.rainMm) : QString(),
                            w.windMs ? number(*w.windMs) : QString(),
                            w.issued ? adapt::dateText(*w.issued) : QString()};
    for (int column = 0; column < kColumns; ++column) {
      auto* item = new QTableWidgetItem(texts[column]);
      if (column >= kMin && column <= kWind) {
        item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      }
      m_table->setItem(static_cast<int>(i), column, item);
    }
  }
  refresh();
}

void WeatherDialog::show(const WeatherDay& day) {
  const auto units = adapt::Units::from(m_hub.settings());
  m_kind->setCurrentIndex(m_kind->findData(static_cast<int>(day.kind)));
  m_date->setDate(adapt::toQDate(day.date));
  if (day.issued) m_issued->setDate(adapt::toQDate(*day.issued));
  m_min->setValue(units.shown(base::Temperature{day.tminC}));
  m_max->setValue(units.shown(base::Temperature{day.tmaxC}));
  m_rain->setValue(day.rainMm.value_or(-0.5));
  m_wind->setValue(day.windMs.value_or(-0.5));
}

WeatherDay WeatherDialog::typed() const {
  const auto units = adapt::Units::from(m_hub.settings());
  WeatherDay w;
  w.yard = m_yard;
  w.kind = static_cast<WeatherKind>(m_kind->currentData().toInt());
  w.date = adapt::fromQDate(m_date->date());
  w.tminC = units.temperatureFrom(m_min->value()).value;
  w.tmaxC = units.temperatureFrom(m_max->value()).value;
  if (m_rain->value() >= 0) w.rainMm = m_rain->value();
  if (m_wind->value() >= 0) w.windMs = m_wind->value();
  if (w.kind == WeatherKind::Forecast) w.issued = adapt::fromQDate(m_issued->date());
  return w;
}

std::vector<WeatherDay> WeatherDialog::chosen() const {
  std::set<int> rows;
  for (const auto* item : m_table->selectedItems()) rows.insert(item->row());
  std::vector<WeatherDay> out;
  for (const int row : rows) out.push_back(m_days.at(static_cast<std::size_t>(row)));
  return out;
}

void WeatherDialog::refresh() {
  const WeatherDay day = typed();
  m_form->setRowVisible(m_issued, day.kind == WeatherKind::Forecast);
  const QString why = m_hub.whyNot(*session::recordWeather({day}));
  showNote(*m_why, why);
  m_enter->setEnabled(why.isEmpty());
  m_takeOut->setEnabled(!chosen().empty());
}

void WeatherDialog::enter() {
  const WeatherDay day = typed();
  if (!m_hub.execute(session::recordWeather({day}), this)) return;
  m_which->setCurrentIndex(day.kind == WeatherKind::Normal ? 1 : 0);
  fill();
  // The next day is what is typed next.
  m_date->setDate(m_date->date().addDays(1));
  m_date->setFocus();
}

void WeatherDialog::takeOut() {
  const auto rows = chosen();
  if (rows.empty()) return;
  m_table->clearSelection();
  if (m_hub.execute(session::removeWeather(rows), this)) fill();
}

}  // namespace outyard::yards
