// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/find_dialog.h"

#include <QCompleter>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

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
