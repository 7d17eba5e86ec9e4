// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/visit_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTimeEdit>
#include <QVBoxLayout>

#include "core/session/commands.h"
#include "ui/adapt/system_clock.h"
#include "ui/rounds/rounds_words.h"
#include "ui/widgets/session_model.h"

namespace outyard::rounds {

VisitDialog::VisitDialog(widgets::SeasonHub& hub, base::Date day,
                         const std::optional<base::YardId>& yard, QWidget* parent)
    : QDialog(parent), m_hub(hub) {
  setWindowTitle(tr("New visit"));
  make();
  if (yard) m_yard->setCurrentIndex(m_yard->findData(QString::fromStdString(yard->str())));
  m_day->setDate(adapt::toQDate(day));
  refresh();
}

VisitDialog::VisitDialog(widgets::SeasonHub& hub, const apiary::Visit& visit, QWidget* parent)
    : QDialog(parent), m_hub(hub), m_visit(visit.visit) {
  setWindowTitle(tr("Time and notes of the visit"));
  make();
  m_yard->setCurrentIndex(m_yard->findData(QString::fromStdString(visit.yard.str())));
  m_yard->setEnabled(false);
  m_day->setDate(adapt::toQDate(visit.date));
  m_day->setEnabled(false);
  m_timed->setChecked(visit.time.has_value());
  if (visit.time) m_time->setTime(QTime(visit.time->hour(), visit.time->minute()));
  m_notes->setText(QString::fromStdString(visit.notes));
  refresh();
}

void VisitDialog::make() {
  auto* all = new QVBoxLayout(this);
  auto* form = new QFormLayout;
  m_yard = new QComboBox;
  m_yard->setObjectName(QStringLiteral("visitYard"));
  for (const auto& [key, yard] : m_hub.season().table<apiary::Yard>()) {
    m_yard->addItem(QStringLiteral("%1  %2").arg(QString::fromStdString(key),
                                                 yardName(m_hub.season(), yard.yard)),
                    QString::fromStdString(key));
  }
  m_day = new QDateEdit;
  m_day->setObjectName(QStringLiteral("visitDay"));
  m_day->setCalendarPopup(true);
  m_day->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
  auto* timeLine = new QHBoxLayout;
  m_timed = new QCheckBox(tr("&At"));
  m_timed->setObjectName(QStringLiteral("visitTimed"));
  m_timed->setToolTip(tr("Without a time the visit takes the whole day"));
  m_time = new QTimeEdit(QTime(9, 0));
  m_time->setObjectName(QStringLiteral("visitTime"));
  m_time->setAccessibleName(tr("Time of the visit"));
  timeLine->addWidget(m_timed);
  timeLine->addWidget(m_time);
  timeLine->addStretch();
  m_notes = new QLineEdit;
  m_notes->setObjectName(QStringLiteral("visitNotes"));
  m_notes->setPlaceholderText(tr("gate key, who comes along, what else to do there"));
  m_notes->setMinimumWidth(fontMetrics().averageCharWidth() * 50);
  form->addRow(tr("&Yard"), m_yard);
  form->addRow(tr("&Day"), m_day);
  form->addRow(tr("Time"), timeLine);
  form->addRow(tr("&Notes"), m_notes);
  all->addLayout(form);
  m_fault = new QLabel;
  m_fault->setObjectName(QStringLiteral("visitFault"));
  m_fault->setWordWrap(true);
  all->addWidget(m_fault);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  all->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_yard, &QComboBox::currentIndexChanged, this, &VisitDialog::refresh);
  connect(m_day, &QDateEdit::dateChanged, this, &VisitDialog::refresh);
  connect(m_timed, &QCheckBox::toggled, this, &VisitDialog::refresh);
  connect(m_notes, &QLineEdit::textChanged, this, &VisitDialog::refresh);
}

apiary::Visit VisitDialog::visit() const {
  apiary::Visit out;
  if (m_visit) out.visit = *m_visit;
  out.yard = base::YardId{m_yard->currentData().toString().toStdString()};
  out.date = adapt::fromQDate(m_day->date());
  const QTime time = m_time->time();
  if (m_timed->isChecked()) out.time = base::TimeOfDay::fromHm(time.hour(), time.minute());
  out.notes = m_notes->text().trimmed().toStdString();
  return out;
}

session::CommandPtr VisitDialog::command() const {
  const auto is = visit();
  return m_visit ? session::editVisit(*m_visit, is.time, is.notes) : session::addVisit(is);
}

void VisitDialog::refresh() {
  m_time->setEnabled(m_timed->isChecked());
  const QString fault = m_hub.whyNot(*command());
  m_fault->setText(fault);
  m_fault->setVisible(!fault.isEmpty());
  m_ok->setEnabled(fault.isEmpty());
}

DayDialog::DayDialog(const QString& what, base::Date day, Say say, Say fault, QWidget* parent)
    : QDialog(parent) {
  setWindowTitle(tr("Move to another day"));
  auto* all = new QVBoxLayout(this);
  auto* form = new QFormLayout;
  m_day = new QDateEdit(adapt::toQDate(day));
  m_day->setObjectName(QStringLiteral("moveDay"));
  m_day->setCalendarPopup(true);
  m_day->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
  form->addRow(tr("Move %1 &to").arg(what), m_day);
  all->addLayout(form);
  auto* words = new QLabel;
  words->setObjectName(QStringLiteral("moveWords"));
  words->setWordWrap(true);
  words->setMinimumWidth(fontMetrics().averageCharWidth() * 60);
  all->addWidget(words);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons->button(QDialogButtonBox::Ok)->setText(tr("&Move"));
  all->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  const auto refresh = [this, words, buttons, say = std::move(say), fault = std::move(fault)] {
    const QString why = fault(this->day());
    words->setText(why.isEmpty() ? say(this->day()) : why);
    buttons->button(QDialogButtonBox::Ok)->setEnabled(why.isEmpty());
  };
  connect(m_day, &QDateEdit::dateChanged, this, refresh);
  refresh();
}

base::Date DayDialog::day() const {
  return adapt::fromQDate(m_day->date());
}

}  // namespace outyard::rounds
