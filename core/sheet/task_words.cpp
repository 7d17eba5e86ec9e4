// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <cmath>

#include "core/base/quantity.h"
#include "core/base/text.h"
#include "core/sheet/hive_lines.h"

namespace outyard::sheet {

namespace {

using apiary::Method;
using apiary::Unit;
using base::message;

struct KindWord {
  std::string_view kind;
  base::Message what;
};

const std::vector<KindWord>& kindWords() {
  static const std::vector<KindWord> kWords{
      {"open", message("sheet.task.open")},
      {"look", message("sheet.task.look")},
      {"box_added", message("sheet.task.box_added")},
      {"box_removed", message("sheet.task.box_removed")},
      {"reversed", message("sheet.task.reversed")},
      {"frames_moved", message("sheet.task.frames_moved")},
      {"frames_given", message("sheet.task.frames_given")},
      {"frames_taken", message("sheet.task.frames_taken")},
      {"bees_shaken", message("sheet.task.bees_shaken")},
      {"stacked", message("sheet.task.stacked")},
      {"unstacked", message("sheet.task.unstacked")},
      {"united", message("sheet.task.united")},
      {"split", message("sheet.task.split")},
      {"places_changed", message("sheet.task.places_changed")},
      {"queen_introduced", message("sheet.task.queen_introduced")},
      {"queen_cell_given", message("sheet.task.queen_cell_given")},
      {"queen_marked", message("sheet.task.queen_marked")},
      {"queen_removed", message("sheet.task.queen_removed")},
      {"cells_removed", message("sheet.task.cells_removed")},
      {"excluder_on", message("sheet.task.excluder_on")},
      {"excluder_off", message("sheet.task.excluder_off")},
      {"paper_open", message("sheet.task.paper_open")},
      {"fed", message("sheet.task.fed")},
      {"treated", message("sheet.task.treated")},
      {"treatment_off", message("sheet.task.treatment_off")},
      {"supered", message("sheet.task.supered")},
      {"harvested", message("sheet.task.harvested")},
      {"wrapped", message("sheet.task.wrapped")},
      {"unwrapped", message("sheet.task.unwrapped")},
      {"moved", message("sheet.task.moved")},
  };
  return kWords;
}

std::string amountText(const SheetContext& context, double amount, Unit unit) {
  switch (unit) {
    case Unit::Kg:
      return massText(context, amount);
    case Unit::L:
      if (context.in.usUnits) {
        const double gallons = base::inUsGallons({amount});
        return context.word(message("sheet.amount.gallons", oneDecimal(gallons)));
      }
      return context.word(message("sheet.amount.litres", oneDecimal(amount)));
    case Unit::Frames:
      return context.word(message("sheet.amount.combs", oneDecimal(amount)));
    case Unit::Boxes:
      return context.word(message("sheet.amount.boxes", oneDecimal(amount)));
    case Unit::Bees:
      break;
  }
  return context.word(message("sheet.amount.bees", std::round(amount / 100) * 100));
}

}  // namespace

double oneDecimal(double value) {
  return std::round(value * 10) / 10;
}

std::string shortDate(const SheetContext& context, base::Date date) {
  static const std::vector<base::Message> kMonths{
      message("sheet.month.1"),  message("sheet.month.2"),  message("sheet.month.3"),
      message("sheet.month.4"),  message("sheet.month.5"),  message("sheet.month.6"),
      message("sheet.month.7"),  message("sheet.month.8"),  message("sheet.month.9"),
      message("sheet.month.10"), message("sheet.month.11"), message("sheet.month.12")};
  if (date.year() != context.in.date.year()) return context.word(message("sheet.date", date.iso()));
  return context.word(message("sheet.date.short", date.day(),
                              kMonths.at(static_cast<std::size_t>(date.month() - 1))));
}

std::string massText(const SheetContext& context, double kg) {
  if (context.in.usUnits) {
    return context.word(message("sheet.amount.pounds", std::round(base::inPounds({kg}))));
  }
  return context.word(message("sheet.amount.kilograms", kg < 10 ? oneDecimal(kg) : std::round(kg)));
}

std::string shortened(const std::string& name, std::size_t letters) {
  if (base::codePoints(name) <= letters) return name;
  std::size_t at = 0;
  for (std::size_t n = 0; n + 1 < letters && at < name.size(); ++n) {
    ++at;
    while (at < name.size() && (static_cast<unsigned char>(name[at]) & 0xC0U) == 0x80U) ++at;
  }
  return name.substr(0, at) + "\u2026";
}

std::string hiveReference(const SheetContext& context, const base::HiveId& hive) {
  constexpr std::size_t kNameLetters = 16;
  const std::string name = shortened(hive.str(), kNameLetters);
  const auto line = context.firstLine.find(hive);
  if (line != context.firstLine.end()) {
    return context.word(message("sheet.ref.line", name, line->second));
  }
  const apiary::HiveState state = apiary::hiveOn(context.season(), hive, context.in.date);
  const apiary::Yard* yard = context.season().yard(state.yard);
  const std::string place = yard && !yard->name.empty() ? yard->name : state.yard.str();
  return context.word(message("sheet.ref.yard", name, shortened(place, kNameLetters)));
}

std::vector<const apiary::Task*> tasksOn(const apiary::Season& season, base::Date day) {
  std::vector<const apiary::Task*> due;
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    if (task.state != apiary::TaskState::Planned) continue;
    bool today = false;
    if (task.plannedOn) {
      today = *task.plannedOn == day;
    } else if (task.earliest || task.latest) {
      // what is overdue stays to be done
      today = !task.earliest || *task.earliest <= day;
    } else if (task.dueOn) {
      constexpr int kDaysAhead = 3;
      today = *task.dueOn <= day.plusDays(kDaysAhead);
    }
    if (today) due.push_back(&task);
  }
  return due;
}

std::string taskText(const SheetContext& context, const apiary::Task& task) {
  base::Message kind = message("sheet.task.other");
  for (const KindWord& word : kindWords()) {
    if (word.kind == task.kind) kind = word.what;
  }
  std::string text = context.word(kind);
  if (task.amount && task.unit) {
    text = context.word(
        message("sheet.task.amount", text, amountText(context, *task.amount, *task.unit)));
  }
  if (task.otherHive) {
    text = context.word(message("sheet.task.with", text, hiveReference(context, *task.otherHive)));
  }
  if (!task.why.empty()) text = context.word(message("sheet.task.why", text, task.why));
  return text;
}

std::string optionText(const SheetContext& context, const planning::BoostOption& option,
                       const std::string& card) {
  const std::string donor =
      option.donorHive ? hiveReference(context, *option.donorHive) : std::string();
  const double combs = oneDecimal(option.framesMoved);
  std::string text;
  switch (option.method) {
    case Method::Leave:
      return context.word(message("sheet.do.leave"));
    case Method::Room:
      return context.word(message("sheet.do.room"));
    case Method::Feed:
      return context.word(message("sheet.do.feed"));
    case Method::SealedFrames:
      text = context.word(message("sheet.do.sealed_frames", donor, combs));
      break;
    case Method::NurseBees:
      text = context.word(message("sheet.do.nurse_bees", donor));
      break;
    case Method::Stack:
      text = context.word(message("sheet.do.stack", donor));
      break;
    case Method::ChangePlaces:
      text = context.word(message("sheet.do.change_places", donor));
      break;
    case Method::Unite:
      text = context.word(message("sheet.do.unite", donor));
      break;
  }
  return card.empty() ? text : context.word(message("sheet.do.with_card", text, card));
}

}  // namespace outyard::sheet
