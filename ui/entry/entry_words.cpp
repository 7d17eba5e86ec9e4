// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <string_view>

#include "ui/adapt/words.h"

namespace outyard::entry {
namespace {

using session::EntryColumn;

QString tr(const char* text) {
  return QCoreApplication::translate("SheetEntry", text);
}
#define T(text) QT_TRANSLATE_NOOP("SheetEntry", text)

QString name(const base::HiveId& hive) {
  return QString::fromStdString(hive.str());
}

QString amountText(const apiary::Task& task, const adapt::Units& units) {
  if (!task.amount || !task.unit) return {};
  const QString number = QLocale().toString(*task.amount, 'g', 4);
  switch (*task.unit) {
    case apiary::Unit::Kg:
      return units.text(base::Mass{*task.amount}, 1);
    case apiary::Unit::L:
      return tr(T("%1 l")).arg(number);
    case apiary::Unit::Frames:
      return tr(T("%1 comb(s)")).arg(number);
    case apiary::Unit::Boxes:
      return tr(T("%1 box(es)")).arg(number);
    case apiary::Unit::Bees:
      return tr(T("%1 bees")).arg(adapt::roundNumber(*task.amount));
  }
  return {};
}

}  // namespace

QString columnHead(EntryColumn column, const QString& massUnit) {
  switch (column) {
    case EntryColumn::Seams:
      return tr(T("Seams"));
    case EntryColumn::Brood:
      return tr(T("Brood"));
    case EntryColumn::Eggs:
      return tr(T("Eggs"));
    case EntryColumn::Queen:
      return tr(T("Queen"));
    case EntryColumn::Cells:
      return tr(T("Cells"));
    case EntryColumn::Stores:
      return tr(T("Stores"));
    case EntryColumn::Weight:
      return massUnit;
    case EntryColumn::Sick:
      return tr(T("Sick"));
    case EntryColumn::Temper:
      return tr(T("Temper"));
    case EntryColumn::Drones:
      return tr(T("Drones"));
    case EntryColumn::NotDone:
      return tr(T("Not done: why"));
    case EntryColumn::Note:
      return tr(T("Note"));
  }
  return {};
}

QString columnKeys(EntryColumn column) {
  switch (column) {
    case EntryColumn::Seams:
      return tr(
          T("Seams of bees: 0 to 9, + ten or more, . not opened, = lid lifted and looks about "
            "right; F2 types any other figure"));
    case EntryColumn::Brood:
      return tr(T("Combs with brood: 0 to 7, + eight or more; F2 types any other figure"));
    case EntryColumn::Eggs:
      return tr(T("Eggs: y yes, n no"));
    case EntryColumn::Queen:
      return tr(T("Queen: m marked, u unmarked, v virgin, - not seen"));
    case EntryColumn::Cells:
      return tr(T("Queen cells: 0 none, u cups, c charged, s sealed"));
    case EntryColumn::Stores:
      return tr(T("Stores: l low, m medium, h heavy"));
    case EntryColumn::Weight:
      return tr(T("Weight of the whole hive: type the figure, Enter goes on"));
    case EntryColumn::Sick:
      return tr(T("Sick: y when circled"));
    case EntryColumn::Temper:
      return tr(T("Temper: 1 calm to 5 stinging"));
    case EntryColumn::Drones:
      return tr(T("Drones: y seen, n none"));
    case EntryColumn::NotDone:
      return tr(T("Why it was not done: type it, Enter goes to the next line"));
    case EntryColumn::Note:
      return tr(T("Free line: type it, Enter goes to the next line"));
  }
  return {};
}

bool takesOneKey(EntryColumn column) {
  return column != EntryColumn::Weight && column != EntryColumn::NotDone &&
         column != EntryColumn::Note;
}

std::optional<QString> oneKey(EntryColumn column, QChar key) {
  const QChar small = key.toLower();
  const auto among = [&](QStringView letters) -> std::optional<QString> {
    if (!letters.contains(small)) return std::nullopt;
    return QString(small);
  };
  switch (column) {
    case EntryColumn::Seams:
      if (key == u'+') return QStringLiteral("10+");
      return among(u"0123456789.=");
    case EntryColumn::Brood:
      if (key == u'+') return QStringLiteral("8+");
      return among(u"0123456789");
    case EntryColumn::Eggs:
    case EntryColumn::Drones:
    case EntryColumn::Sick:
      return among(u"yn");
    case EntryColumn::Queen:
      return among(u"muv-");
    case EntryColumn::Cells:
      return among(u"0ucs");
    case EntryColumn::Stores:
      return among(u"lmh");
    case EntryColumn::Temper:
      return among(u"12345");
    case EntryColumn::Weight:
    case EntryColumn::NotDone:
    case EntryColumn::Note:
      break;
  }
  return std::nullopt;
}

QString cellText(EntryColumn column, const QString& typed) {
  const QString small = typed.trimmed().toLower();
  if (column == EntryColumn::Cells) {
    if (small == u"u") return tr(T("cups"));
    if (small == u"c") return tr(T("charged"));
    if (small == u"s") return tr(T("sealed"));
  }
  if (column == EntryColumn::Queen && small == u"-") return QStringLiteral("\u2013");
  return takesOneKey(column) ? typed.toUpper() : typed;
}

QString taskText(const apiary::Task& task, const adapt::Units& units) {
  const base::Message known{"sheet.task." + task.kind, {}};
  QString text =
      adapt::words(adapt::hasWords(known.key) ? known : base::message("sheet.task.other"));
  const QString amount = amountText(task, units);
  if (!amount.isEmpty()) text = tr(T("%1, %2")).arg(text, amount);
  if (task.otherHive) text = tr(T("%1: %2")).arg(text, name(*task.otherHive));
  return text;
}

QString reportText(const apiary::Season& season, const session::EntryReading& reading,
                   const adapt::Units& units) {
  const session::EntryReport& r = reading.report;
  QStringList lines;
  const auto count = [&](const char* what, int n) {
    if (n > 0) lines << tr(what).arg(n);
  };
  count(T("Looks recorded: %1."), r.looks);
  count(T("Of these by the lid alone, about as printed (a wide reading): %1."), r.glances);
  count(T("Hives not opened: %1."), r.notOpened);
  count(T("Notes kept: %1."), r.notes);
  count(T("Tasks ticked off: %1."), r.tasksDone);
  count(T("Lines left empty: %1. The sheet can be taken up again."), r.blank);
  if (!r.needDialog.empty()) {
    lines << QString()
          << tr(T("Still to be said on the hive's own page, since the stack, the "
                  "product or the combs are not on the sheet:"));
    for (const base::TaskId& id : r.needDialog) {
      const auto* task = season.find<apiary::Task>(id.str());
      if (!task) continue;
      lines << QStringLiteral("\u2022 %1: %2")
                   .arg(task->hive ? name(*task->hive) : QString(), taskText(*task, units));
    }
  }
  if (!r.sick.empty()) {
    QStringList hives;
    for (const auto& [line, hive] : r.sick) hives << name(hive);
    lines << QString()
          << tr(T("Sick: %1. The sheet names no disease and this program finds none: call the bee "
                  "inspector, who decides. Until then move no bees, combs, honey or tools out of "
                  "this yard."))
                 .arg(hives.join(QStringLiteral(", ")));
  }
  return lines.join(u'\n');
}

#undef T

}  // namespace outyard::entry
