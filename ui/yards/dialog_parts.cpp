// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/dialog_parts.h"

#include <QCoreApplication>
#include <QDateEdit>
#include <QDialog>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLayout>
#include <QPushButton>

#include "ui/adapt/system_clock.h"

namespace outyard::yards {

QDateEdit* dateField(base::Date date, const char* objectName) {
  auto* field = new QDateEdit(adapt::toQDate(date));
  field->setObjectName(QLatin1String(objectName));
  field->setCalendarPopup(true);
  // The locale's short date can hide the century; this one cannot be misread.
  field->setDisplayFormat(QCoreApplication::translate("Dates", "d MMM yyyy"));
  return field;
}

QLabel* noteLabel(const char* objectName) {
  auto* label = new QLabel;
  label->setObjectName(QLatin1String(objectName));
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

void showNote(QLabel& label, const QString& text) {
  label.setText(text);
  label.setVisible(!text.isEmpty());
}

void fitHeight(QDialog& dialog) {
  auto* layout = dialog.layout();
  layout->invalidate();
  const int width = dialog.isVisible() ? dialog.width() : dialog.minimumWidth();
  dialog.setMinimumHeight(layout->hasHeightForWidth() ? layout->totalHeightForWidth(width)
                                                      : layout->totalSizeHint().height());
}

void nameButtons(QDialogButtonBox& box, const QString& ok) {
  auto* button = box.button(QDialogButtonBox::Ok);
  button->setText(ok);
  button->setDefault(true);
}

}  // namespace outyard::yards
