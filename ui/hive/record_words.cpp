// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/record_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <array>
#include <cmath>
#include <string>
#include <tuple>
#include <vector>

#include "core/apiary/validate.h"
#include "ui/adapt/words.h"
#include "ui/hive/inspection_fields.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::hive {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(HiveJournal)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString number(double value) {
  return QLocale().toString(value, 'g', 5);
}

QString counted(double value, const QString& one, const QString& many) {
  return QStringLiteral("%1 %2").arg(number(value), value == 1.0 ? one : many);
}

/// The name of a code, as the catalogue has it; a code of the outfit's own stands as it is.
QString codeWord(const char* set, std::string_view code) {
  base::Message message;
  message.key = std::string("code.") + set + "." + std::string(code);
  return adapt::hasWords(message.key) ? adapt::words(message)
                                      : qs(std::string(code)).replace(u'_', u' ');
}

/// Choices of an inspection by their names on the form.
const FormField* formField(const std::string& column) {
  for (const FormField& field : formFields()) {
    if (column == field.column) return &field;
  }
  return nullptr;
}

struct KindName {
  char16_t letter;
  const char* name;
};
constexpr std::array<KindName, kJournalKinds> kKinds{{
    {u'L', QT_TRANSLATE_NOOP("HiveJournal", "look")},
    {u'M', QT_TRANSLATE_NOOP("HiveJournal", "mite count")},
    {u'B', QT_TRANSLATE_NOOP("HiveJournal", "boxes")},
    {u'C', QT_TRANSLATE_NOOP("HiveJournal", "combs and bees moved")},
    {u'S', QT_TRANSLATE_NOOP("HiveJournal", "set over, taken off, joined, divided")},
    {u'Q', QT_TRANSLATE_NOOP("HiveJournal", "queen")},
    {u'F', QT_TRANSLATE_NOOP("HiveJournal", "fed")},
    {u'T', QT_TRANSLATE_NOOP("HiveJournal", "treated")},
    {u'H', QT_TRANSLATE_NOOP("HiveJournal", "harvest")},
    {u'P', QT_TRANSLATE_NOOP("HiveJournal", "place")},
    {u'J', QT_TRANSLATE_NOOP("HiveJournal", "judgement")},
    {u'X', QT_TRANSLATE_NOOP("HiveJournal", "died or gone")},
    {u'N', QT_TRANSLATE_NOOP("HiveJournal", "note and the rest")},
}};

/// How it was done, where the record holds a code for it; else as it was typed.
QString methodWords(const apiary::Event& e) {
  using apiary::EventKind;
  static const std::vector<std::tuple<EventKind, std::string, const char*>> kWords{
      {EventKind::QueenIntroduced, "cage", QT_TRANSLATE_NOOP("HiveJournal", "in a cage")},
      {EventKind::QueenIntroduced, "push_in_cage",
       QT_TRANSLATE_NOOP("HiveJournal", "under a push-in cage")},
      {EventKind::QueenIntroduced, "comb",
       QT_TRANSLATE_NOOP("HiveJournal", "with her comb and bees")},
      {EventKind::QueenIntroduced, "direct", QT_TRANSLATE_NOOP("HiveJournal", "straight in")},
      {EventKind::QueenMarked, "marked", QT_TRANSLATE_NOOP("HiveJournal", "marked")},
      {EventKind::QueenMarked, "clipped", QT_TRANSLATE_NOOP("HiveJournal", "wing clipped")},
      {EventKind::QueenMarked, "marked clipped",
       QT_TRANSLATE_NOOP("HiveJournal", "marked and wing clipped")},
      {EventKind::Swarmed, "prime", QT_TRANSLATE_NOOP("HiveJournal", "prime swarm")},
      {EventKind::Swarmed, "after", QT_TRANSLATE_NOOP("HiveJournal", "after-swarm")},
  };
  for (const auto& [kind, code, text] : kWords) {
    if (e.kind == kind && e.method == code) return Words::tr(text);
  }
  return qs(e.method);
}

}  // namespace

QChar kindLetter(JournalKind kind) {
  return kKinds[static_cast<std::size_t>(kind)].letter;
}

QString kindName(JournalKind kind) {
  return Words::tr(kKinds[static_cast<std::size_t>(kind)].name);
}

JournalKind kindOf(apiary::EventKind kind) {
  using apiary::EventKind;
  switch (kind) {
    case EventKind::BoxAdded:
    case EventKind::BoxRemoved:
    case EventKind::Reversed:
    case EventKind::Supered:
    case EventKind::ExcluderOn:
    case EventKind::ExcluderOff:
    case EventKind::Wrapped:
    case EventKind::Unwrapped:
      return JournalKind::Boxes;
    case EventKind::FramesMoved:
    case EventKind::FramesGiven:
    case EventKind::FramesTaken:
    case EventKind::BeesShaken:
      return JournalKind::Combs;
    case EventKind::Stacked:
    case EventKind::Unstacked:
    case EventKind::United:
    case EventKind::Split:
    case EventKind::PaperOpen:
    case EventKind::Installed:
      return JournalKind::Joined;
    case EventKind::QueenIntroduced:
    case EventKind::QueenLost:
    case EventKind::QueenCellGiven:
    case EventKind::QueenMarked:
    case EventKind::QueenRemoved:
    case EventKind::QueenSeenLaying:
    case EventKind::CellsRemoved:
      return JournalKind::Queen;
    case EventKind::Fed:
      return JournalKind::Fed;
    case EventKind::Treated:
    case EventKind::TreatmentOff:
      return JournalKind::Treated;
    case EventKind::Harvested:
      return JournalKind::Harvest;
    case EventKind::PlacesChanged:
    case EventKind::Moved:
      return JournalKind::Place;
    case EventKind::Verdict:
      return JournalKind::Judgement;
    case EventKind::Died:
    case EventKind::Lost:
    case EventKind::Sold:
    case EventKind::Swarmed:
    case EventKind::Robbed:
    case EventKind::Poisoned:
      return JournalKind::End;
    case EventKind::Bought:
    case EventKind::Bloom:
    case EventKind::Note:
      return JournalKind::Note;
  }
  return JournalKind::Note;
}

QString goodsText(apiary::Goods goods) {
  return codeWord("goods", apiary::code(goods));
}

QString washMethodText(apiary::WashMethod method) {
  return codeWord("wash", apiary::code(method));
}

QString frameTypeText(const apiary::Season& season, const std::string& frameType) {
  const auto* own = season.find<apiary::FrameType>(frameType);
  if (own && !own->name.empty()) return qs(own->name);
  return codeWord("frame_type", frameType);
}

QString amountText(double amount, std::optional<apiary::Unit> unit, const adapt::Units& units) {
  if (!unit) return number(amount);
  switch (*unit) {
    case apiary::Unit::Kg:
      return QStringLiteral("%1 %2").arg(number(units.shown(base::Mass{amount})), units.massUnit());
    case apiary::Unit::L:
      return Words::tr("%1 litres").arg(number(amount));
    case apiary::Unit::Frames:
      return counted(amount, Words::tr("frame"), Words::tr("frames"));
    case apiary::Unit::Boxes:
      return counted(amount, Words::tr("box"), Words::tr("boxes"));
    case apiary::Unit::Bees:
      return counted(amount, Words::tr("bee"), Words::tr("bees"));
  }
  return {};
}

QString inspectionWords(const apiary::Inspection& i, const adapt::Units& units) {
  QStringList parts;
  if (i.disease) {
    const auto* field = formField("disease");
    parts << shownText(*field, apiary::Value{std::string(apiary::code(*i.disease))}, units);
  }
  if (i.seams) parts << counted(*i.seams, Words::tr("seam"), Words::tr("seams"));
  if (i.beeFrames) {
    parts << counted(*i.beeFrames, Words::tr("full frame of bees"),
                     Words::tr("full frames of bees"));
  }
  if (i.framesWithBees) {
    parts << counted(*i.framesWithBees, Words::tr("frame with bees"),
                     Words::tr("frames with bees"));
  }
  if (i.framesWithBrood) {
    parts << (*i.framesWithBrood == 0 ? Words::tr("no brood")
                                      : counted(*i.framesWithBrood, Words::tr("comb with brood"),
                                                Words::tr("combs with brood")));
  }
  if (i.sealedBroodFrames) parts << Words::tr("sealed %1").arg(number(*i.sealedBroodFrames));
  if (i.openBroodFrames) parts << Words::tr("open %1").arg(number(*i.openBroodFrames));
  if (i.eggsSeen) parts << (*i.eggsSeen ? Words::tr("eggs seen") : Words::tr("no eggs seen"));
  if (i.queenSeen) {
    parts << (*i.queenSeen ? Words::tr("queen seen") : Words::tr("queen not seen"));
  }
  if (i.queenCells && *i.queenCells > 0) {
    parts << counted(*i.queenCells, Words::tr("queen cell"), Words::tr("queen cells"));
  }
  if (i.pattern) parts << Words::tr("pattern %1 of 5").arg(*i.pattern);
  if (i.honeyKg) {
    parts << Words::tr("stores %1").arg(amountText(*i.honeyKg, apiary::Unit::Kg, units));
  }
  if (i.weightKg) {
    parts << Words::tr("hive weighs %1").arg(amountText(*i.weightKg, apiary::Unit::Kg, units));
  }
  if (!i.notes.empty()) parts << qs(i.notes);
  return parts.isEmpty() ? Words::tr("looked at, nothing measured")
                         : parts.join(QStringLiteral(", "));
}

QString washWords(const apiary::Wash& w) {
  QString what;
  if (w.bees > 0) {
    what = Words::tr("%1 mites in 100 bees (%2 in %3)")
               .arg(QLocale().toString(100.0 * w.mites / w.bees, 'f', 1))
               .arg(w.mites)
               .arg(w.bees);
  } else {
    what = counted(w.mites, Words::tr("mite"), Words::tr("mites"));
  }
  return w.method ? Words::tr("%1, %2").arg(what, washMethodText(*w.method)) : what;
}

QString eventWords(const apiary::Event& e, const base::HiveId& hive, const adapt::Units& units) {
  QStringList parts;
  parts << widgets::eventText(e.kind);
  if (e.kind == apiary::EventKind::Verdict) {
    // method holds the code of the judgement that a person gave.
    const std::string& code = e.method.empty() ? e.detail : e.method;
    if (const auto verdict = apiary::parseCode<apiary::VerdictCode>(code)) {
      parts << widgets::verdictText(*verdict);
      if (!e.method.empty() && !e.detail.empty()) parts << qs(e.detail);
      return parts.join(QStringLiteral(", "));
    }
  }
  if (e.amount) parts << amountText(*e.amount, e.unit, units);
  if (e.what) parts << goodsText(*e.what);
  if (e.withBees && *e.withBees) parts << Words::tr("with the bees on them");
  if (e.method == "exchange") {
    parts << Words::tr("comb for comb");
  } else if (e.method == "boxes_reordered") {
    parts << Words::tr("boxes in another order");
  } else if (!e.method.empty()) {
    parts << methodWords(e);
  }
  if (!e.dose.empty()) parts << Words::tr("dose %1").arg(qs(e.dose));
  if (!e.batch.empty()) parts << Words::tr("batch %1").arg(qs(e.batch));
  if (e.withdrawalDays) {
    parts << (*e.withdrawalDays == 0
                  ? Words::tr("no waiting period")
                  : Words::tr("waiting period %1")
                        .arg(counted(*e.withdrawalDays, Words::tr("day"), Words::tr("days"))));
  }
  if (e.hive != hive) {
    parts << Words::tr("at %1").arg(qs(e.hive.str()));
  } else if (e.otherHive) {
    parts << Words::tr("other hive %1").arg(qs(e.otherHive->str()));
  }
  if (e.otherYard) parts << Words::tr("yard %1").arg(qs(e.otherYard->str()));
  if (e.queen) parts << Words::tr("queen %1").arg(qs(e.queen->str()));
  if (!e.detail.empty()) parts << qs(e.detail);
  return parts.join(QStringLiteral(", "));
}

QString frameMoveWords(const apiary::FrameMove& m, const base::HiveId& hive) {
  const QString other = m.otherHive ? qs(m.otherHive->str()) : QString();
  const auto place = [](const std::optional<int>& n) {
    return n ? QString::number(*n) : QStringLiteral("?");
  };
  if (m.detail == "to_middle") return Words::tr("Brood put in the middle, side by side");
  if (!m.box && !m.slot && m.otherBox) {
    return m.otherSlot ? Words::tr("Comb %1 of box %2 taken off to the gear heap")
                             .arg(place(m.otherSlot), place(m.otherBox))
                       : Words::tr("Box %1 taken off to the gear heap").arg(place(m.otherBox));
  }
  if (m.otherHive == m.hive) {
    return m.slot ? Words::tr("Comb %1 of box %2 went to box %3, slot %4")
                        .arg(place(m.otherSlot), place(m.otherBox), place(m.box), place(m.slot))
                  : Words::tr("Box %1 went to position %2").arg(place(m.otherBox), place(m.box));
  }
  if (m.box && !m.slot && !m.otherSlot) {
    return m.otherHive ? Words::tr("A box came from %1").arg(other) : Words::tr("A box came in");
  }
  if (m.hive == hive) {
    return m.otherHive ? Words::tr("A comb came from %1").arg(other) : Words::tr("A comb came in");
  }
  return Words::tr("A comb went to %1").arg(qs(m.hive.str()));
}

std::vector<std::pair<QString, QString>> detailOf(const apiary::Row& row,
                                                  const adapt::Units& units) {
  static const std::vector<std::pair<std::string, const char*>> kLabels{
      {"hive", QT_TRANSLATE_NOOP("HiveJournal", "Hive")},
      {"colony", QT_TRANSLATE_NOOP("HiveJournal", "Colony")},
      {"seams_view", QT_TRANSLATE_NOOP("HiveJournal", "Seams counted from")},
      {"brood_frames", QT_TRANSLATE_NOOP("HiveJournal", "Brood in all, full frames")},
      {"sheet", QT_TRANSLATE_NOOP("HiveJournal", "Sheet")},
      {"line", QT_TRANSLATE_NOOP("HiveJournal", "Line of the sheet")},
      {"method", QT_TRANSLATE_NOOP("HiveJournal", "Method")},
      {"bees", QT_TRANSLATE_NOOP("HiveJournal", "Bees in the sample")},
      {"mites", QT_TRANSLATE_NOOP("HiveJournal", "Mites")},
      {"kind", QT_TRANSLATE_NOOP("HiveJournal", "What")},
      {"other_hive", QT_TRANSLATE_NOOP("HiveJournal", "Other hive")},
      {"other_yard", QT_TRANSLATE_NOOP("HiveJournal", "Other yard")},
      {"other_colony", QT_TRANSLATE_NOOP("HiveJournal", "Other colony")},
      {"queen", QT_TRANSLATE_NOOP("HiveJournal", "Queen")},
      {"what", QT_TRANSLATE_NOOP("HiveJournal", "Goods")},
      {"with_bees", QT_TRANSLATE_NOOP("HiveJournal", "With bees")},
      {"amount", QT_TRANSLATE_NOOP("HiveJournal", "Amount")},
      {"unit", QT_TRANSLATE_NOOP("HiveJournal", "Unit")},
      {"dose", QT_TRANSLATE_NOOP("HiveJournal", "Dose")},
      {"batch", QT_TRANSLATE_NOOP("HiveJournal", "Batch")},
      {"detail", QT_TRANSLATE_NOOP("HiveJournal", "Detail")},
      {"withdrawal_days", QT_TRANSLATE_NOOP("HiveJournal", "Waiting period (days)")},
      {"entered_at", QT_TRANSLATE_NOOP("HiveJournal", "Entered (UTC)")},
  };
  std::vector<std::pair<QString, QString>> out;
  const auto& spec = apiary::tableSpec(row.table);
  for (std::size_t k = 0; k < spec.columns.size(); ++k) {
    const auto& column = spec.columns[k];
    const auto& value = row.values.at(k);
    if (std::holds_alternative<std::monostate>(value)) continue;
    if (column.name == "record" || column.name == "supersedes" || column.name == "void") continue;
    QString label, text = qs(apiary::valueText(value));
    if (row.table == apiary::TableId::Inspections) {
      if (const auto* field = formField(column.name)) {
        label = fieldLabel(*field, units);
        text = shownText(*field, value, units);
      }
    }
    for (const auto& [name, words] : kLabels) {
      if (label.isEmpty() && name == column.name) label = Words::tr(words);
    }
    if (label.isEmpty()) label = qs(column.name).replace(u'_', u' ');
    if (column.name == "what") {
      if (const auto goods = apiary::parseCode<apiary::Goods>(apiary::valueText(value))) {
        text = goodsText(*goods);
      }
    } else if (column.name == "kind") {
      if (const auto kind = apiary::parseCode<apiary::EventKind>(apiary::valueText(value))) {
        text = widgets::eventText(*kind);
      }
    } else if (column.type == apiary::ColumnType::Flag && text.size() == 1) {
      text = text == QStringLiteral("1") ? Words::tr("yes") : Words::tr("no");
    } else if (column.type == apiary::ColumnType::Date) {
      if (const auto day = base::Date::parse(text.toStdString())) text = adapt::dateText(*day);
    }
    out.emplace_back(label, text);
  }
  return out;
}

}  // namespace outyard::hive
