// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/weather_import.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/adapt/system_clock.h"

namespace outyard::main_window {

WeatherImportDialog::WeatherImportDialog(widgets::SeasonHub& hub, const QString& fileName,
                                         QWidget* parent)
    : QDialog(parent),
      m_yard(new QComboBox),
      m_units(new QComboBox),
      m_since(new QCheckBox(tr("Only days &since"))),
      m_usual(new QCheckBox(tr("Make the yard's &usual weather of the file's years"))),
      m_from(new QDateEdit) {
  setWindowTitle(tr("Import weather"));
  m_yard->setObjectName(QStringLiteral("weatherYard"));
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    const QString id = QString::fromStdString(yard.yard.str());
    m_yard->addItem(yard.name.empty()
                        ? id
                        : QStringLiteral("%1 (%2)").arg(QString::fromStdString(yard.name), id),
                    id);
  }
  if (const auto chosen = hub.selection().yard) {
    const int at = m_yard->findData(QString::fromStdString(chosen->str()));
    if (at >= 0) m_yard->setCurrentIndex(at);
  }
  m_units->setObjectName(QStringLiteral("weatherUnits"));
  m_units->addItem(tr("As the file shows"), -1);
  m_units->addItem(tr("Tenths of a degree C and of a mm"),
                   static_cast<int>(exchange::WeatherUnits::Tenths));
  m_units->addItem(tr("Degrees C and mm"), static_cast<int>(exchange::WeatherUnits::Metric));
  m_units->addItem(tr("Degrees F and inches"), static_cast<int>(exchange::WeatherUnits::Us));
  m_units->setToolTip(tr("Our own columns are always degrees C and mm"));
  m_since->setObjectName(QStringLiteral("weatherSince"));
  m_since->setChecked(true);
  m_from->setObjectName(QStringLiteral("weatherFrom"));
  m_from->setAccessibleName(tr("First day"));
  m_from->setDisplayFormat(QStringLiteral("d MMM yyyy"));
  m_from->setCalendarPopup(true);
  // The forecast looks back to the first of January of the year before.
  m_from->setDate(QDate(hub.workingDate().year() - 1, 1, 1));
  m_usual->setObjectName(QStringLiteral("weatherUsual"));
  m_usual->setToolTip(
      tr("The mean of each day and of the week before and after it over all years; "
         "five years or more"));
  connect(m_since, &QCheckBox::toggled, m_from, &QWidget::setEnabled);
  connect(m_usual, &QCheckBox::toggled, this, [this](bool usual) {
    m_since->setEnabled(!usual);
    m_from->setEnabled(!usual && m_since->isChecked());
  });

  auto* file = new QLabel(fileName);
  file->setTextFormat(Qt::PlainText);
  auto* form = new QFormLayout;
  form->addRow(tr("File"), file);
  form->addRow(tr("Weather of &yard"), m_yard);
  form->addRow(tr("U&nits"), m_units);
  form->addRow(m_since, m_from);
  form->addRow(m_usual);
  auto* note = new QLabel(
      tr("Read are our own columns (date, tmin_c, tmax_c, rain_mm, …) and stations of NOAA's "
         "GHCN-Daily, as CSV or .dly. Days that failed the network's checks are left out. Take the "
         "station that is nearest in distance and in height."));
  note->setWordWrap(true);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  box->button(QDialogButtonBox::Ok)->setText(tr("&Import"));
  box->button(QDialogButtonBox::Ok)->setEnabled(m_yard->count() > 0);
  connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note);
  layout->addStretch(1);
  layout->addWidget(box);
  setMinimumWidth(460);
}

exchange::WeatherAsk WeatherImportDialog::ask() const {
  exchange::WeatherAsk ask;
  ask.yard = base::YardId(m_yard->currentData().toString().toStdString());
  const int units = m_units->currentData().toInt();
  if (units >= 0) ask.units = static_cast<exchange::WeatherUnits>(units);
  ask.normals = m_usual->isChecked();
  if (!ask.normals && m_since->isChecked()) ask.from = adapt::fromQDate(m_from->date());
  return ask;
}

}  // namespace outyard::main_window
