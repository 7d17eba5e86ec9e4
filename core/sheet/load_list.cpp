// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/quantity.h"
#include "core/planning/boost_gear.h"
#include "core/sheet/sheet_parts.h"
#include "core/strength/frame_table.h"

namespace outyard::sheet {

namespace {

using base::message;

constexpr TextStyle kTitle{5.2, true};
constexpr TextStyle kText{3.1, false};
constexpr TextStyle kHead{2.6, true};
constexpr TextStyle kSmall{2.6, false};
constexpr double kRow = 10, kTick = 6;

struct Typed {
  std::string kind, type;  ///< "chamber", "langstroth_deep"
};
Typed typed(const std::string& item) {
  const std::size_t colon = item.find(':');
  if (colon == std::string::npos) return {item, {}};
  return {item.substr(0, colon), item.substr(colon + 1)};
}

std::string frameTypeName(const SheetContext& context, const std::string& type) {
  const auto* row = context.season().find<apiary::FrameType>(type);
  if (row && !row->name.empty()) return row->name;
  std::string name = type;
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

std::string itemText(const SheetContext& context, const std::string& item) {
  const Typed t = typed(item);
  const std::string type = frameTypeName(context, t.type);
  if (item == "excluder") return context.word(message("sheet.gear.excluder"));
  if (item == "paper") return context.word(message("sheet.gear.paper"));
  if (item == "floor") return context.word(message("sheet.gear.floor"));
  if (item == "cover") return context.word(message("sheet.gear.cover"));
  if (item == "feeder") return context.word(message("sheet.gear.feeder"));
  if (t.kind == "chamber") return context.word(message("sheet.gear.chamber", type));
  if (t.kind == "super") return context.word(message("sheet.gear.super", type));
  if (t.kind == "drawn_comb") return context.word(message("sheet.gear.drawn_comb", type));
  if (t.kind == "foundation") return context.word(message("sheet.gear.foundation", type));
  return item;
}

std::optional<double> itemKg(const SheetContext& context, const std::string& item, double count) {
  const Typed t = typed(item);
  if (t.type.empty()) return std::nullopt;
  const auto figures = strength::figuresFor(context.season(), t.type);
  if (!figures || figures->boxKg <= 0) return std::nullopt;
  if (t.kind == "chamber" || t.kind == "super") return count * figures->boxKg;
  if (t.kind == "drawn_comb" && figures->framesPerBox > 0) {
    return count * figures->boxKg / figures->framesPerBox;
  }
  return std::nullopt;
}

/// Kilograms of a litre of sugar syrup: 50 and 67 % sugar by weight (sugar solutions at 20 degrees
/// C; from memory).
double syrupKg(std::optional<apiary::Goods> what) {
  return what == apiary::Goods::Syrup21 ? 1.33 : 1.23;
}

bool touchesYard(const SheetContext& context, const planning::BoostOption& option) {
  return context.firstLine.contains(option.hive) ||
         (option.donorHive && context.firstLine.contains(*option.donorHive));
}

base::Message feedWord(std::optional<apiary::Goods> what) {
  using apiary::Goods;
  if (what == Goods::Syrup11) return message("sheet.gear.syrup_1_1");
  if (what == Goods::Syrup21) return message("sheet.gear.syrup_2_1");
  if (what == Goods::Fondant) return message("sheet.gear.fondant");
  if (what == Goods::PollenPatty || what == Goods::PollenFeed) {
    return message("sheet.gear.pollen");
  }
  return message("sheet.gear.feed");
}

void addFeed(const SheetContext& context, std::vector<LoadItem>& items) {
  for (const apiary::Task* task : tasksOn(context.season(), context.in.date)) {
    if (task->kind != "fed" || !task->amount || !task->hive) continue;
    if (!context.firstLine.contains(*task->hive)) continue;
    const bool litres = task->unit == apiary::Unit::L;
    if (!litres && task->unit != apiary::Unit::Kg) continue;
    const std::string name = context.word(feedWord(task->what));
    const double shown = [&] {
      if (!context.in.usUnits) return *task->amount;
      return litres ? base::inUsGallons({*task->amount}) : base::inPounds({*task->amount});
    }();
    const base::Message unit = [&] {
      if (context.in.usUnits) {
        return litres ? message("sheet.gear.in_gallons", name)
                      : message("sheet.gear.in_pounds", name);
      }
      return litres ? message("sheet.gear.in_litres", name)
                    : message("sheet.gear.in_kilograms", name);
    }();
    const std::string what = context.word(unit);
    const double kg = litres ? *task->amount * syrupKg(task->what) : *task->amount;
    const auto same =
        std::find_if(items.begin(), items.end(), [&](const LoadItem& i) { return i.what == what; });
    if (same != items.end()) {
      same->needed += shown;
      same->weightKg = same->weightKg.value_or(0) + kg;
    } else {
      items.push_back({what, shown, std::nullopt, kg});
    }
  }
}

/// What goes along on every round.
std::vector<base::Message> usualKit() {
  return {message("sheet.kit.smoker"),  message("sheet.kit.veil"),  message("sheet.kit.tools"),
          message("sheet.kit.allergy"), message("sheet.kit.water"), message("sheet.kit.straps"),
          message("sheet.kit.sheet"),   message("sheet.kit.gate")};
}

struct Columns {
  double what, needed, counted, missing, packed;
};

}  // namespace

std::vector<LoadItem> loadItems(const SheetContext& context) {
  std::map<std::string, double> needed;
  if (context.in.plan) {
    for (const std::string& id : context.in.plan->chosen) {
      const planning::BoostOption* option = context.in.plan->option(id);
      if (!option || !touchesYard(context, *option)) continue;
      for (const auto& [item, count] : option->gear) needed[item] += count;
    }
  }
  std::vector<LoadItem> items;
  for (const auto& [item, count] : needed) {
    if (count <= 0) continue;
    LoadItem load;
    load.what = itemText(context, item);
    load.needed = count;
    const auto hand =
        planning::gearAtHand(context.season(), item, {context.in.yard}, context.in.date);
    if (hand) load.counted = *hand;
    load.weightKg = itemKg(context, item, count);
    items.push_back(std::move(load));
  }
  addFeed(context, items);
  return items;
}

std::size_t drawLoadList(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context,
                         const std::vector<LoadItem>& items, std::size_t from) {
  const double width = frame.contentWidth();
  double y = frame.top + 5;
  const Wrapped title =
      wrapText(canvas.measurer(), context.word(message("sheet.load.title", yardName(context))),
               kTitle, width, 2);
  y = canvas.lines({frame.left, y}, title.lines, kTitle, width, 6.2);
  canvas.text({frame.left, y}, longDate(context, context.in.date), kText, width);
  y += 3;
  const Columns at{frame.left + kTick + 3, frame.right - 78, frame.right - 54, frame.right - 28,
                   frame.left};
  const std::size_t left = items.size() - from;
  const double kitTall = 60;
  const auto most = static_cast<std::size_t>((frame.bottom - y - 8 - kitTall) / kRow);
  const std::size_t count = std::min(left, most);
  TextStyle right = kHead;
  right.align = Align::Right;
  if (count > 0) {
    y += 4;
    const auto head = [&](double x, const base::Message& name) {
      const Wrapped one = wrapText(canvas.measurer(), context.word(name), kHead, 22, 1);
      canvas.lines({x + 22, y}, one.lines, right, 22, 3);
    };
    canvas.text({at.what, y}, context.word(message("sheet.load.what")), kHead, 60);
    head(at.needed, message("sheet.load.needed"));
    head(at.counted, message("sheet.load.counted"));
    head(at.missing, message("sheet.load.missing"));
    y += 1.6;
    canvas.line({frame.left, y}, {frame.right, y}, 0.3);
  } else if (items.empty()) {
    y += 5;
    canvas.text({frame.left, y}, context.word(message("sheet.load.nothing")), kText, width);
    y += 2;
  }
  TextStyle number = kText;
  number.align = Align::Right;
  TextStyle bold = number;
  bold.bold = true;
  for (std::size_t i = from; i < from + count; ++i) {
    const LoadItem& item = items[i];
    canvas.box({at.packed, y + 2}, kTick, kTick, 0.3);
    const double base = y + 6.1;
    const Wrapped what = wrapText(canvas.measurer(), item.what, kText, at.needed - at.what - 2, 2);
    canvas.lines({at.what, what.lines.size() > 1 ? base - 1.8 : base}, what.lines, kText,
                 at.needed - at.what - 2, 3.6);
    const auto put = [&](double x, const std::string& text, const TextStyle& style) {
      const Wrapped one = wrapText(canvas.measurer(), text, style, 23, 1);
      canvas.lines({x + 22, base}, one.lines, style, 23, 3);
    };
    const auto plain = [&](double value) {
      return context.word(message("sheet.load.number", oneDecimal(value)));
    };
    put(at.needed, plain(item.needed), bold);
    put(at.counted,
        item.counted ? plain(*item.counted) : context.word(message("sheet.load.never_counted")),
        number);
    if (item.counted && *item.counted < item.needed) {
      put(at.missing, plain(item.needed - *item.counted), bold);
    }
    y += kRow;
    canvas.line({frame.left, y}, {frame.right, y}, 0.15);
  }
  if (from + count < items.size()) return count;

  y += 7;
  double kg = 0;
  for (const LoadItem& item : items) kg += item.weightKg.value_or(0);
  const auto paragraph = [&](const std::string& text, const TextStyle& style) {
    y = canvas.lines({frame.left, y}, wrapText(canvas.measurer(), text, style, width, 3).lines,
                     style, width, 3.8);
  };
  TextStyle strong = kText;
  strong.bold = true;
  if (kg > 0) paragraph(context.word(message("sheet.load.weight", massText(context, kg))), strong);
  paragraph(context.word(message("sheet.load.caution", massText(context, 40))), kText);
  y += 1.5;
  const std::vector<base::Message> kit = usualKit();
  const double half = width / 2;
  for (std::size_t i = 0; i < kit.size(); ++i) {
    const double x = frame.left + (i % 2 == 0 ? 0 : half);
    canvas.box({x, y}, kTick, kTick, 0.3);
    const Wrapped text =
        wrapText(canvas.measurer(), context.word(kit[i]), kSmall, half - kTick - 5, 2);
    canvas.lines({x + kTick + 2, y + (text.lines.size() > 1 ? 2.6 : 4)}, text.lines, kSmall,
                 half - kTick - 5, 3);
    if (i % 2 == 1) y += kTick + 2;
  }
  return count;
}

}  // namespace outyard::sheet
