// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/inspection_fields.h"

#include <QCoreApplication>
#include <QLocale>
#include <array>
#include <stdexcept>

#include "core/apiary/validate.h"
#include "core/base/text.h"
#include "ui/adapt/words.h"

namespace outyard::hive {
namespace {

constexpr char kContext[] = "InspectionForm";

QString tr(const char* text) {
  return QCoreApplication::translate(kContext, text);
}

#define F(text) QT_TRANSLATE_NOOP("InspectionForm", text)

constexpr std::array kFields{
    FormField{"date", F("Date"), F("When"), FieldWidget::Text, FieldUnit::None,
              F("year-month-day")},
    FormField{"time", F("Time"), "", FieldWidget::Text, FieldUnit::None, F("hours:minutes")},
    FormField{"air_c", F("Air"), "", FieldWidget::Text, FieldUnit::Temperature, ""},
    FormField{"seams", F("Seams of bees, from above"), F("Bees"), FieldWidget::Text,
              FieldUnit::None, F("seams, quarters count")},
    FormField{"bee_frames", F("Full frames of bees"), "", FieldWidget::Text, FieldUnit::None,
              F("frames, both sides full")},
    FormField{"frames_with_bees", F("Frames with bees (quick count)"), "", FieldWidget::Text,
              FieldUnit::None, F("frames")},
    FormField{"frames_with_brood", F("Combs with brood"), F("Brood"), FieldWidget::Text,
              FieldUnit::None, F("combs")},
    FormField{"sealed_brood_frames", F("Sealed brood, full frames"), "", FieldWidget::Text,
              FieldUnit::None, F("frames")},
    FormField{"open_brood_frames", F("Eggs and open brood, full frames"), "", FieldWidget::Text,
              FieldUnit::None, F("frames")},
    FormField{"eggs_seen", F("Eggs seen"), "", FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"pattern", F("Brood pattern"), "", FieldWidget::Text, FieldUnit::None,
              F("1 scattered to 5 solid")},
    FormField{"drone_brood", F("Drone brood"), "", FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"queen_seen", F("Queen seen"), F("Queen"), FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"queen_cells", F("Queen cells"), "", FieldWidget::Text, FieldUnit::None, F("cells")},
    FormField{"cell_kind", F("Kind of cells"), "", FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"honey_kg", F("Stores, all of them"), F("Food and combs"), FieldWidget::Text,
              FieldUnit::Mass, ""},
    FormField{"pollen_frames", F("Pollen, full frames"), "", FieldWidget::Text, FieldUnit::None,
              F("frames")},
    FormField{"empty_comb_frames", F("Empty comb, frames"), "", FieldWidget::Text, FieldUnit::None,
              F("frames")},
    FormField{"weight_kg", F("Weight, whole hive"), "", FieldWidget::Text, FieldUnit::Mass, ""},
    FormField{"temper", F("Temper"), F("The rest"), FieldWidget::Text, FieldUnit::None,
              F("1 to 5")},
    FormField{"disease", F("Health"), "", FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"drones_seen", F("Drones seen"), "", FieldWidget::Choice, FieldUnit::None, ""},
    FormField{"reader", F("Who looked"), "", FieldWidget::Text, FieldUnit::None, ""},
    FormField{"notes", F("Notes"), "", FieldWidget::Notes, FieldUnit::None, ""},
};

const apiary::ColumnSpec& specOf(const char* column) {
  const auto& spec = apiary::tableSpec(apiary::TableId::Inspections);
  const int index = spec.columnIndex(column);
  if (index < 0) throw std::logic_error("no such column of an inspection");
  return spec.columns[static_cast<std::size_t>(index)];
}

double toShown(FieldUnit unit, double value, const adapt::Units& units) {
  switch (unit) {
    case FieldUnit::Mass:
      return units.shown(base::Mass{value});
    case FieldUnit::Temperature:
      return units.shown(base::Temperature{value});
    case FieldUnit::None:
      break;
  }
  return value;
}

double fromShown(FieldUnit unit, double value, const adapt::Units& units) {
  switch (unit) {
    case FieldUnit::Mass:
      return units.massFrom(value).value;
    case FieldUnit::Temperature:
      return units.temperatureFrom(value).value;
    case FieldUnit::None:
      break;
  }
  return value;
}

QString unitText(FieldUnit unit, const adapt::Units& units) {
  switch (unit) {
    case FieldUnit::Mass:
      return units.massUnit();
    case FieldUnit::Temperature:
      return units.temperatureUnit();
    case FieldUnit::None:
      break;
  }
  return {};
}

bool isNumber(const apiary::ColumnSpec& spec) {
  return spec.type == apiary::ColumnType::Real || spec.type == apiary::ColumnType::Integer;
}

}  // namespace

std::span<const FormField> formFields() {
  return kFields;
}

QString fieldLabel(const FormField& field, const adapt::Units& units) {
  const QString label = tr(field.label);
  const QString unit = unitText(field.unit, units);
  return unit.isEmpty() ? label : QStringLiteral("%1 (%2)").arg(label, unit);
}

QString fieldHint(const FormField& field) {
  return *field.hint ? tr(field.hint) : QString();
}

std::vector<Choice> choicesFor(const FormField& field) {
  const std::string column = field.column;
  const QString none = tr(QT_TRANSLATE_NOOP("InspectionForm", "not recorded"));
  if (column == "drone_brood") {
    return {{none, ""},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "0: none")), "0"},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "1: a little")), "1"},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "2: some")), "2"},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "3: much")), "3"}};
  }
  if (column == "cell_kind") {
    return {{none, ""},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "cups only")), "cups"},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "charged")), "charged"},
            {tr(QT_TRANSLATE_NOOP("InspectionForm", "sealed")), "sealed"}};
  }
  if (column == "disease") {
    return {
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "nothing noted")), ""},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "American foul brood suspected")), "suspect_afb"},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "European foul brood suspected")), "suspect_efb"},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "chalkbrood")), "chalkbrood"},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "sacbrood")), "sacbrood"},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "nosema")), "nosema"},
        {tr(QT_TRANSLATE_NOOP("InspectionForm", "other")), "other"}};
  }
  return {{tr(QT_TRANSLATE_NOOP("InspectionForm", "not looked")), ""},
          {tr(QT_TRANSLATE_NOOP("InspectionForm", "yes")), "1"},
          {tr(QT_TRANSLATE_NOOP("InspectionForm", "no")), "0"}};
}

Typed parseTyped(const FormField& field, const QString& text, const adapt::Units& units) {
  apiary::ColumnSpec spec = specOf(field.column);
  QString clean = text.trimmed();
  if (isNumber(spec)) {
    // People type the comma where their country writes it; thousands are never typed here.
    if (clean.count(u',') == 1 && !clean.contains(u'.')) clean.replace(u',', u'.');
    spec.min = toShown(field.unit, spec.min, units);
    spec.max = toShown(field.unit, spec.max, units);
  }
  const auto parsed = apiary::parseValue(spec, clean.toStdString());
  if (!parsed) return {{}, adapt::words(parsed.failure())};
  Typed out{parsed.value(), {}};
  if (auto* real = std::get_if<double>(&out.value)) *real = fromShown(field.unit, *real, units);
  return out;
}

QString typedText(const FormField& field, const apiary::Value& value, const adapt::Units& units) {
  if (const auto* real = std::get_if<double>(&value)) {
    const double shown = toShown(field.unit, *real, units);
    // A converted number is rounded to what a scale can read; SI stays exact.
    if (shown != *real) return QString::number(shown, 'g', 6);
    return QString::fromStdString(base::shortest(shown));
  }
  return QString::fromStdString(apiary::valueText(value));
}

QString shownText(const FormField& field, const apiary::Value& value, const adapt::Units& units) {
  if (std::holds_alternative<std::monostate>(value)) return {};
  if (field.widget == FieldWidget::Choice) {
    const std::string code = apiary::valueText(value);
    for (const Choice& choice : choicesFor(field)) {
      if (choice.code == code) return choice.text;
    }
  }
  if (const auto* real = std::get_if<double>(&value)) {
    const QString unit = unitText(field.unit, units);
    const QString number = QLocale().toString(toShown(field.unit, *real, units), 'g', 5);
    return unit.isEmpty() ? number : QStringLiteral("%1 %2").arg(number, unit);
  }
  return QString::fromStdString(apiary::valueText(value));
}

apiary::Value valueOf(const apiary::Inspection& inspection, const char* column) {
  for (const auto& c : apiary::columnsOf<apiary::Inspection>()) {
    if (c.spec.name == column) return c.get(inspection);
  }
  throw std::logic_error("no such column of an inspection");
}

void setValue(apiary::Inspection& inspection, const char* column, const apiary::Value& value) {
  for (const auto& c : apiary::columnsOf<apiary::Inspection>()) {
    if (c.spec.name == column) {
      c.set(inspection, value);
      return;
    }
  }
  throw std::logic_error("no such column of an inspection");
}

#undef F

}  // namespace outyard::hive
