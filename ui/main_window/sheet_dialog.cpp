// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/sheet_dialog.h"

#include <QComboBox>
#include <QCompleter>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/adapt/system_clock.h"

namespace outyard::main_window {
namespace {

QDialogButtonBox* buttons(QDialog& dialog, const QString& ok) {
  auto* box = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  box->button(QDialogButtonBox::Ok)->setText(ok);
  QObject::connect(box, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
  QObject::connect(box, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
  return box;
}

}  // namespace

SheetDialog::SheetDialog(widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent),
      m_yard(new QComboBox),
      m_paper(new QComboBox),
      m_date(new QDateEdit(adapt::toQDate(hub.workingDate()))) {
  setWindowTitle(tr("Print yard sheet"));
  m_yard->setObjectName(QStringLiteral("sheetYard"));
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    m_yard->addItem(QString::fromStdString(yard.name.empty() ? yard.yard.str() : yard.name),
                    QString::fromStdString(yard.yard.str()));
  }
  if (const auto chosen = hub.selection().yard) {
    m_yard->setCurrentIndex(m_yard->findData(QString::fromStdString(chosen->str())));
  }
  m_date->setObjectName(QStringLiteral("sheetDate"));
  m_date->setCalendarPopup(true);
  m_date->setDisplayFormat(QStringLiteral("d MMM yyyy"));
  m_paper->setObjectName(QStringLiteral("sheetPaper"));
  m_paper->addItem(tr("A4"), false);
  m_paper->addItem(tr("Letter"), true);
  m_paper->setCurrentIndex(hub.settings().get(adapt::desk::kLetterPaper) ? 1 : 0);
  auto* form = new QFormLayout;
  form->addRow(tr("&Yard"), m_yard);
  form->addRow(tr("&Day of the visit"), m_date);
  form->addRow(tr("&Paper"), m_paper);
  auto* note = new QLabel(
      tr("The sheet is saved as a PDF and kept in the season, so that its lines can be typed back "
         "in the same order."));
  note->setWordWrap(true);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note);
  layout->addStretch(1);
  layout->addWidget(buttons(*this, tr("Save as PDF…")));
  setMinimumWidth(400);
}

base::YardId SheetDialog::yard() const {
  return base::YardId{m_yard->currentData().toString().toStdString()};
}

base::Date SheetDialog::date() const {
  return adapt::fromQDate(m_date->date());
}

bool SheetDialog::letterPaper() const {
  return m_paper->currentData().toBool();
}

FindDialog::FindDialog(const widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent), m_number(new QLineEdit) {
  setWindowTitle(tr("Find hive"));
  m_number->setObjectName(QStringLiteral("findNumber"));
  m_number->setPlaceholderText(tr("for instance TR-07, or only its end"));
  QStringList numbers;
  for (const auto& [key, hive] : hub.season().table<apiary::Hive>()) {
    numbers << QString::fromStdString(hive.hive.str());
  }
  auto* completer = new QCompleter(numbers, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  m_number->setCompleter(completer);
  auto* form = new QFormLayout;
  form->addRow(tr("&Number of the hive"), m_number);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addStretch(1);
  layout->addWidget(buttons(*this, tr("Find")));
  setMinimumWidth(380);
}

QString FindDialog::number() const {
  return m_number->text().trimmed();
}

}  // namespace outyard::main_window
