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

/// The answers that the paper prints as words.
QString answerWord(EntryColumn column, const QString& key) {
  struct Word {
    EntryColumn column;
    QStringView key;
    const char* text;
  };
  static const Word kWords[] = {
      {EntryColumn::Cause, u"s", T("starved")}, {EntryColumn::Cause, u"q", T("queenless")},
      {EntryColumn::Cause, u"m", T("mites")},   {EntryColumn::Cause, u"u", T("unknown")},
      {EntryColumn::Combs, u"s", T("stored")},  {EntryColumn::Combs, u"m", T("melted")},
      {EntryColumn::Combs, u"b", T("burnt")},   {EntryColumn::Combs, u"l", T("left")},
      {EntryColumn::Origin, u"s", T("swarm")},  {EntryColumn::Origin, u"b", T("bought")},
      {EntryColumn::Origin, u"p", T("split")},  {EntryColumn::Origin, u"m", T("moved here")},
      {EntryColumn::Closed, u"y", T("yes")},    {EntryColumn::Closed, u"n", T("no")},
      {EntryColumn::BeesIn, u"y", T("yes")},    {EntryColumn::BeesIn, u"n", T("no")}};
  for (const Word& word : kWords) {
    if (word.column == column && word.key == key) return tr(word.text);
  }
  return {};
}

QString names(const std::vector<base::HiveId>& hives) {
  QStringList out;
  for (const base::HiveId& hive : hives) out << name(hive);
  return out.join(QStringLiteral(", "));
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
    case EntryColumn::Cause:
      return tr(T("Cause"));
    case EntryColumn::Combs:
      return tr(T("Combs"));
    case EntryColumn::Closed:
      return tr(T("Closed"));
    case EntryColumn::BeesIn:
      return tr(T("Bees in it"));
    case EntryColumn::Hive:
      return tr(T("Hive"));
    case EntryColumn::Origin:
      return tr(T("Came as"));
  }
  return {};
}

QString cellLabel(EntryColumn column) {
  switch (column) {
    case EntryColumn::Cause:
      return tr(T("cause"));
    case EntryColumn::Combs:
      return tr(T("combs"));
    case EntryColumn::Closed:
      return tr(T("closed"));
    case EntryColumn::BeesIn:
      return tr(T("bees in it"));
    case EntryColumn::Hive:
      return tr(T("new hive"));
    case EntryColumn::Origin:
      return tr(T("came as"));
    default:
      return {};
  }
}

QString columnKeys(EntryColumn column) {
  switch (column) {
    case EntryColumn::Seams:
      return tr(
          T("Seams of bees: 0 to 9, + ten or more, . not opened, = lid lifted and looks about "
            "right, x found dead; F2 types any other figure"));
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
    case EntryColumn::Cause:
      return tr(
          T("Cause of death: s starved, q queenless, m mites, u unknown, . not looked at. "
            "Backspace in an empty cell takes an x back"));
    case EntryColumn::Combs:
      return tr(T("What became of the combs: s stored, m melted, b burnt, l left in the hive"));
    case EntryColumn::Closed:
      return tr(T("Entrance closed: y yes, n no"));
    case EntryColumn::BeesIn:
      return tr(
          T("Bees in the empty hive: y they live in it (a colony from this day), n none, . not "
            "looked at"));
    case EntryColumn::Hive:
      return tr(
          T("A hive that was not on the list: type its number, Enter goes on. A number that is not "
            "known yet makes a new hive in this yard"));
    case EntryColumn::Origin:
      return tr(
          T("What it came as: s swarm, b bought, p split, m moved here from another yard; empty "
            "for a hive of this yard"));
  }
  return {};
}

bool takesOneKey(EntryColumn column) {
  return column != EntryColumn::Weight && !session::takesWords(column);
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
      return among(u"0123456789.=x");
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
    case EntryColumn::Cause:
      return among(u"sqmu.");
    case EntryColumn::Combs:
      return among(u"smbl");
    case EntryColumn::Closed:
      return among(u"yn");
    case EntryColumn::BeesIn:
      return among(u"yn.");
    case EntryColumn::Origin:
      return among(u"sbpm");
    case EntryColumn::Hive:
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
  if (const QString word = answerWord(column, small); !word.isEmpty()) return word;
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

QString boostText(const apiary::PlanRow& row, const base::HiveId& at) {
  if (at != row.hive) return adapt::words(base::message("sheet.do.donor", row.hive.str()));
  const std::string donor = row.donorHive ? row.donorHive->str() : std::string();
  switch (row.method.value_or(apiary::Method::Leave)) {
    case apiary::Method::Room:
      return adapt::words(base::message("sheet.do.room"));
    case apiary::Method::Feed:
      return adapt::words(base::message("sheet.do.feed"));
    case apiary::Method::SealedFrames:
      return adapt::words(
          base::message("sheet.do.sealed_frames", donor, row.framesMoved.value_or(1)));
    case apiary::Method::NurseBees:
      return adapt::words(base::message("sheet.do.nurse_bees", donor));
    case apiary::Method::Stack:
      return adapt::words(base::message("sheet.do.stack", donor));
    case apiary::Method::ChangePlaces:
      return adapt::words(base::message("sheet.do.change_places", donor));
    case apiary::Method::Unite:
      return adapt::words(base::message("sheet.do.unite", donor));
    case apiary::Method::Leave:
      break;
  }
  return adapt::words(base::message("sheet.do.leave"));
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
  count(T("Boosts done as printed, accepted and recorded: %1."), r.boostsDone);
  const auto list = [&](const char* what, const std::vector<base::HiveId>& hives) {
    if (!hives.empty()) lines << tr(what).arg(names(hives));
  };
  list(T("Found dead: %1."), r.deaths);
  list(T("Cause or combs of a death said: %1."), r.deathSaid);
  list(T("Combs taken out: %1."), r.cleared);
  list(T("Bees in a hive that stood empty, a colony from this day: %1."), r.beesIn);
  list(T("New hives, drawn beside the last of the row; drag them to where they stand: %1."),
       r.newHives);
  list(T("Moved here from another yard: %1."), r.movedIn);
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
  if (!r.fedNoAmount.empty()) {
    lines << QString()
          << tr(T("Feed set done, but not how much and what: record it on the page of %1."))
                 .arg(names(r.fedNoAmount));
  }
  if (!r.keepApart.empty()) {
    lines << QString()
          << tr(T("Cause not known: %1. Keep these combs apart and give them to no other hive; at "
                  "any sign of foul brood call the bee inspector first."))
                 .arg(names(r.keepApart));
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
