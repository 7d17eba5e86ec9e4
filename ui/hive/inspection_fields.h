// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/apiary/schema.h"
#include "ui/adapt/units.h"

namespace outyard::hive {

/// How one value of an inspection is entered and in which unit it is typed.
enum class FieldWidget { Text, Choice, Notes };
enum class FieldUnit { None, Mass, Temperature };

/// One value of the inspection form. The list below stands in the order of the work at the hive,
/// which is the tab order.
struct FormField {
  const char* column;  ///< of the inspections table; also the object name of its widget
  const char* label;   ///< untranslated, context "InspectionForm"
  const char* group;   ///< untranslated heading that begins here, or empty
  FieldWidget widget = FieldWidget::Text;
  FieldUnit unit = FieldUnit::None;
  const char* hint = "";  ///< unit or scale, in the field while it is empty
};
std::span<const FormField> formFields();

/// Label with its unit, in the user's language: "Stores (kg)".
QString fieldLabel(const FormField& field, const adapt::Units& units);
QString fieldHint(const FormField& field);

/// Names of the values that a choice field offers; the first is "not recorded".
struct Choice {
  QString text;
  std::string code;  ///< as parseValue reads it; empty = not recorded
};
std::vector<Choice> choicesFor(const FormField& field);

/// What came of a typed text: a value, or the sentence that says what is wrong with it.
struct Typed {
  apiary::Value value;
  QString fault;  ///< empty when the value stands
};
/// Type and range by the table's own column. Numbers are typed in the user's unit and with the
/// point or the comma; the value is in the table's unit.
Typed parseTyped(const FormField& field, const QString& text, const adapt::Units& units);

/// A recorded value as it stands in the field (and can be typed again).
QString typedText(const FormField& field, const apiary::Value& value, const adapt::Units& units);
/// The same in words, for "last 3.5": a choice by its name.
QString shownText(const FormField& field, const apiary::Value& value, const adapt::Units& units);

/// Value of one column of an inspection.
apiary::Value valueOf(const apiary::Inspection& inspection, const char* column);
void setValue(apiary::Inspection& inspection, const char* column, const apiary::Value& value);

}  // namespace outyard::hive
