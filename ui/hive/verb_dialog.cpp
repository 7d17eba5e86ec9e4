// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/verb_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "core/base/text.h"
#include "ui/adapt/system_clock.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

VerbDialog::VerbDialog(widgets::SeasonHub& hub, const QString& name, const QString& title,
                       const QString& caution, QWidget* parent)
    : QDialog(parent), m_hub(hub) {
  setObjectName(name);
  setWindowTitle(title);
  setMinimumWidth(460);
  auto* all = new QVBoxLayout(this);
  m_form = new QFormLayout;
  m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  all->addLayout(m_form);
  m_date = new QDateEdit(adapt::toQDate(hub.workingDate()), this);
  m_date->setObjectName(QStringLiteral("date"));
  m_date->setAccessibleName(tr("Date"));
  m_date->setCalendarPopup(true);
  //: Day, month, year: see QLocale::toString.
  m_date->setDisplayFormat(tr("d MMM yyyy"));
  m_form->addRow(tr("Date"), m_date);
  connect(m_date, &QDateEdit::dateChanged, this, &VerbDialog::refresh);
  if (!caution.isEmpty()) {
    auto* label = new QLabel(tr("Caution: %1").arg(caution), this);
    label->setObjectName(QStringLiteral("caution"));
    label->setWordWrap(true);
    label->setFrameShape(QFrame::StyledPanel);
    label->setMargin(6);
    all->addWidget(label);
  }
  m_reason = new QLabel(this);
  m_reason->setObjectName(QStringLiteral("whyNot"));
  m_reason->setWordWrap(true);
  all->addWidget(m_reason);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  m_ok->setText(tr("&Record"));
  m_ok->setObjectName(QStringLiteral("record"));
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  all->addWidget(buttons);
}

QComboBox* VerbDialog::addChoice(const QString& name, const QString& label) {
  auto* box = new QComboBox(this);
  box->setObjectName(name);
  box->setAccessibleName(label);
  m_form->addRow(label, box);
  connect(box, &QComboBox::currentIndexChanged, this, &VerbDialog::refresh);
  return box;
}

QLineEdit* VerbDialog::addNumber(const QString& name, const QString& label, double least,
                                 double most, int decimals) {
  auto* edit = addText(name, label);
  m_numbers.push_back({edit, label, least, most, decimals});
  return edit;
}

QLineEdit* VerbDialog::addText(const QString& name, const QString& label, const QString& hint) {
  auto* edit = new QLineEdit(this);
  edit->setObjectName(name);
  edit->setAccessibleName(label);
  edit->setPlaceholderText(hint);
  m_form->addRow(label, edit);
  connect(edit, &QLineEdit::textChanged, this, &VerbDialog::refresh);
  return edit;
}

QPlainTextEdit* VerbDialog::addNotes(const QString& name, const QString& label) {
  auto* edit = new QPlainTextEdit(this);
  edit->setObjectName(name);
  edit->setAccessibleName(label);
  edit->setTabChangesFocus(true);
  edit->setFixedHeight(fontMetrics().lineSpacing() * 5);
  m_form->addRow(label, edit);
  connect(edit, &QPlainTextEdit::textChanged, this, &VerbDialog::refresh);
  return edit;
}

void VerbDialog::addSentence(const QString& text) {
  auto* label = new QLabel(text, this);
  label->setWordWrap(true);
  m_form->addRow(label);
}

base::Date VerbDialog::date() const {
  return adapt::fromQDate(m_date->date());
}

std::optional<double> VerbDialog::number(const QLineEdit* field) {
  QString text = field->text().trimmed();
  if (text.count(u',') == 1 && !text.contains(u'.')) text.replace(u',', u'.');
  return base::parseNumber(text.toStdString());
}

void VerbDialog::setMaker(std::function<session::CommandPtr()> make) {
  m_make = std::move(make);
  refresh();
}

QString VerbDialog::fieldFault() const {
  for (const NumberField& field : m_numbers) {
    if (field.edit->text().trimmed().isEmpty()) continue;
    const auto value = number(field.edit);
    if (!value) return tr("%1: type a number, for instance 4 or 2.5.").arg(field.label);
    if (*value < field.least || *value > field.most) {
      return tr("%1: type a number from %2 to %3.")
          .arg(field.label, QLocale().toString(field.least, 'g', 6),
               QLocale().toString(field.most, 'g', 6));
    }
    if (field.decimals == 0 && *value != std::floor(*value)) {
      return tr("%1: type a whole number.").arg(field.label);
    }
  }
  return {};
}

void VerbDialog::refresh() {
  if (!m_make) return;
  QString why = fieldFault();
  if (why.isEmpty()) {
    const auto command = m_make();
    why = command ? m_hub.whyNot(*command) : tr("Something is still missing above.");
  }
  m_reason->setText(why.isEmpty() ? QString() : tr("Not yet: %1").arg(why));
  m_ok->setEnabled(why.isEmpty());
  m_ok->setToolTip(why);
}

}  // namespace outyard::hive
