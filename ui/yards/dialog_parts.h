// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/base/date.h"

class QDateEdit;
class QDialog;
class QDialogButtonBox;
class QLabel;

namespace outyard::yards {

/// A date field with a calendar, four-digit years and the civil day as it is.
QDateEdit* dateField(base::Date date, const char* objectName);
/// A wrapped line for a note, a caution or the reason why not.
QLabel* noteLabel(const char* objectName);
/// Shows the note, or hides its line when there is nothing to say.
void showNote(QLabel& label, const QString& text);
/// Lets the dialog grow with its wrapped notes: a window that is already open does not do so by
/// itself, and would cut them.
void fitHeight(QDialog& dialog);
/// Names the first button by what it does.
void nameButtons(QDialogButtonBox& box, const QString& ok);

}  // namespace outyard::yards
