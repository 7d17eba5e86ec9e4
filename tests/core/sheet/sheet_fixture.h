// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "core/sheet/yard_layout.h"
#include "core/sheet/yard_sheet.h"

/// Invented yards for the tests of the sheet.
namespace outyard::sheet::fixture {

inline base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

template <class T>
apiary::Change added(const T& record) {
  const apiary::Row row = apiary::toRow(record);
  return {row.table, apiary::rowKey(row), std::nullopt, row};
}

/// Widths without a font: a letter is six tenths of its size, bold seven.
class PlainMeasurer : public TextMeasurer {
 public:
  [[nodiscard]] double widthMm(const std::string& text, double sizeMm, bool bold) const override {
    return static_cast<double>(base::codePoints(text)) * sizeMm * (bold ? 0.7 : 0.6);
  }
};

/// Text without a catalogue: the last part of the key with its arguments; steps and cautions of
/// the cards are made as long as real ones.
inline std::string plainWord(const base::Message& m) {
  std::string text = m.key.substr(m.key.rfind('.') + 1);
  if (m.key.starts_with("planning.") || m.key.starts_with("sheet.caution.")) {
    text += " as long as the sentences of the guide are, with what to do and why";
  }
  if (text.size() > 4 && m.key.starts_with("sheet.entry.")) text.resize(4);
  for (const auto& arg : m.args) {
    text += ' ';
    if (const auto* s = std::get_if<std::string>(&arg)) text += *s;
    if (const auto* i = std::get_if<std::int64_t>(&arg)) text += std::to_string(*i);
    if (const auto* d = std::get_if<double>(&arg)) text += base::shortest(*d);
    if (const auto* inner = std::get_if<base::Message>(&arg)) text += plainWord(*inner);
  }
  return text;
}

struct Wish {
  int hives = 40;
  int boosts = 0;
  bool longText = false;  ///< very long names, notes, access, letters of several scripts
  bool rightToLeft = false;
  int dead = 1, empty = 1, sick = 1, stacked = 1;
};

struct MadeYard {
  apiary::Season season;
  base::YardId yard{"tamarack"};
  base::Date date = day("2026-05-02");
  std::vector<strength::Judgement> judgements;
  planning::BoostPlan plan;
  std::vector<base::HiveId> dead, sick;

  [[nodiscard]] YardSheetInput input(Paper paper, const TextMeasurer& measurer,
                                     std::function<std::string(const base::Message&)> word) const {
    YardSheetInput in;
    in.season = &season;
    in.yard = yard;
    in.date = date;
    in.sheetNumber = "26-0148";
    in.paper = paper;
    in.plan = plan.chosen.empty() ? nullptr : &plan;
    in.word = std::move(word);
    in.text = &measurer;
    return in;
  }
};

inline std::string hiveName(int i, const Wish& wish) {
  std::string number = std::to_string(i + 1);
  if (number.size() < 2) number.insert(0, "0");
  if (!wish.longText) return "TR-" + number;
  if (wish.rightToLeft) {
    return "\u05DB\u05D5\u05D5\u05E8\u05EA \u05D4\u05D3\u05D1\u05D5\u05E8\u05D9\u05DD "
           "\u05DC\u05D9\u05D3 \u05D4\u05E0\u05D7\u05DC " +
           number;
  }
  if (i % 3 == 0) return std::string(120, 'W') + number;  // one word without a place to break
  return "Ho\u0301hle beim Ga\u0308rtnerha\u0308uschen u\u0308ber\u00A0der Stra\u00DFe " + number;
}

inline std::string longNote(bool rightToLeft) {
  const std::string one =
      rightToLeft
          ? std::string("\u0645\u0644\u0627\u062D\u0638\u0629 \u0637\u0648\u064A\u0644\u0629 ")
          : std::string("Leans to the left, wedge the stand; \u00C5ngstr\u00F6m hedge. ");
  std::string text;
  while (text.size() < 900) text += one;
  return text;
}

inline MadeYard makeYard(const Wish& wish) {
  using apiary::VerdictCode;
  MadeYard y;
  apiary::ChangeList changes;
  apiary::Yard yard;
  yard.yard = y.yard;
  yard.name = wish.longText ? "Tamarack Row beyond the old quarry, upper meadow and the long "
                              "windbreak of spruces at the far end of the second lane"
                            : "Tamarack Row";
  yard.latitude = 44.2;
  yard.access = wish.longText ? longNote(wish.rightToLeft)
                              : "second gate, close it behind you; soft ground after rain";
  if (wish.longText) yard.notes = longNote(wish.rightToLeft);
  changes.push_back(added(yard));
  const auto feature = [&](const char* id, apiary::FeatureKind kind, double x, double z) {
    apiary::Feature f;
    f.feature = id;
    f.yard = y.yard;
    f.kind = kind;
    f.xM = x;
    f.yM = z;
    changes.push_back(added(f));
  };
  feature("gate", apiary::FeatureKind::Gate, -2, -3);
  feature("truck", apiary::FeatureKind::Truck, 6, -3);
  feature("water", apiary::FeatureKind::Water, 22, -2);
  apiary::WeatherDay weather;
  weather.yard = y.yard;
  weather.date = y.date;
  weather.tminC = 5;
  weather.tmaxC = 17;
  weather.rainMm = 0;
  weather.windMs = 3;
  weather.kind = apiary::WeatherKind::Forecast;
  changes.push_back(added(weather));

  const int columns = std::max(4, static_cast<int>(std::ceil(std::sqrt(wish.hives * 1.2))));
  int record = 0;
  const auto head = [&](auto r) {
    r.record = base::RecordId("r" + std::to_string(++record));
    return r;
  };
  for (int i = 0; i < wish.hives; ++i) {
    const bool deadHive = i >= 2 && i < 2 + wish.dead;
    const bool emptyHive = i >= 5 && i < 5 + wish.empty;
    const bool sickHive = i >= 7 && i < 7 + wish.sick;
    const bool twoHive = i >= 9 && i < 9 + wish.stacked;
    apiary::Hive hive;
    hive.hive = base::HiveId(hiveName(i, wish));
    hive.yard = y.yard;
    if (wish.longText) hive.notes = longNote(wish.rightToLeft);
    changes.push_back(added(hive));
    auto place = head(apiary::Place{});
    place.hive = hive.hive;
    place.yard = y.yard;
    place.xM = (i % columns) * 2.6 + (i % 2) * 0.3;
    place.yM = (i / columns) * 3.1;
    place.entranceDeg = 180;
    place.fromDate = day("2025-04-01");
    changes.push_back(added(place));
    const int boxes = 1 + i % 2 + (twoHive ? 1 : 0);
    for (int b = 1; b <= boxes; ++b) {
      auto box = head(apiary::Box{});
      box.hive = hive.hive;
      box.date = day("2025-04-01");
      box.position = b;
      box.frameType = "langstroth_deep";
      box.frames = 10;
      if (twoHive) box.colony = base::ColonyId(hive.hive.str() + (b == boxes ? " up" : ""));
      if (twoHive && b == boxes) box.beneath = apiary::Beneath::Excluder;
      changes.push_back(added(box));
    }
    if (emptyHive) continue;
    for (int c = 0; c < (twoHive ? 2 : 1); ++c) {
      auto stay = head(apiary::ColonyStay{});
      stay.colony = base::ColonyId(hive.hive.str() + (c == 1 ? " up" : ""));
      stay.hive = hive.hive;
      stay.place = c == 1 ? apiary::ColonyPlace::OverExcluder : apiary::ColonyPlace::Main;
      stay.queenYear = 2024 + i % 2;
      stay.queenMarked = i % 3 != 0;
      stay.fromDate = day("2025-04-01");
      if (deadHive) stay.toDate = day("2026-03-03");
      changes.push_back(added(stay));
      auto seen = head(apiary::Inspection{});
      seen.hive = hive.hive;
      if (twoHive) seen.colony = stay.colony;
      seen.date = i % 5 == 4 ? day("2026-04-10") : day("2026-04-25");
      seen.seams = c == 1 ? 2.5 : 2 + (i * 7) % 8;
      seen.framesWithBrood = std::max(1, static_cast<int>(*seen.seams) - 2);
      seen.eggsSeen = i % 6 != 5;
      seen.queenSeen = i % 4 == 0;
      seen.honeyKg = 4.5 + i % 9;
      if (sickHive) seen.disease = apiary::Disease::Chalkbrood;
      changes.push_back(added(seen));
      strength::Judgement j;
      j.colony = stay.colony;
      j.hive = hive.hive;
      j.verdict = *seen.seams >= 7   ? VerdictCode::Strong
                  : *seen.seams <= 3 ? VerdictCode::SmallSound
                                     : VerdictCode::Fair;
      if (i % 6 == 5) j.verdict = VerdictCode::QueenSuspect;
      if (sickHive) j.verdict = VerdictCode::Sick;
      j.daysSinceSeen = y.date - seen.date;
      if (!deadHive) y.judgements.push_back(j);
    }
    auto treated = head(apiary::Event{});
    treated.hive = hive.hive;
    treated.date = day("2026-01-02");
    treated.kind = apiary::EventKind::Treated;
    treated.method = "oxalic";
    changes.push_back(added(treated));
    if (deadHive) {
      auto died = head(apiary::Event{});
      died.hive = hive.hive;
      died.date = day("2026-03-03");
      died.kind = apiary::EventKind::Died;
      changes.push_back(added(died));
      y.dead.push_back(hive.hive);
    }
    if (sickHive) y.sick.push_back(hive.hive);
  }
  y.season.apply(changes);

  y.plan.problem.request.yards = {y.yard};
  y.plan.problem.request.date = y.date;
  y.plan.problem.judgements = y.judgements;
  std::vector<const strength::Judgement*> weak, strong;
  for (const strength::Judgement& j : y.judgements) {
    if (j.verdict == VerdictCode::SmallSound) weak.push_back(&j);
    if (j.verdict == VerdictCode::Strong) strong.push_back(&j);
  }
  const auto pairs = std::min({static_cast<std::size_t>(wish.boosts), weak.size(), strong.size()});
  for (std::size_t i = 0; i < pairs; ++i) {
    for (int k = 0; k < 2; ++k) {  // the second one is plan B
      planning::BoostOption o;
      o.colony = weak[i]->colony;
      o.hive = weak[i]->hive;
      const strength::Judgement& donor = *strong[(i + static_cast<std::size_t>(k)) % strong.size()];
      o.donorColony = donor.colony;
      o.donorHive = donor.hive;
      o.method = k == 0 ? apiary::Method::Stack : apiary::Method::SealedFrames;
      o.framesMoved = k == 0 ? 0 : 2;
      o.net = 4.0 - k;
      o.gain = {4000, 3000, 5000};
      if (k == 0) o.gear = {{"excluder", 1}, {"paper", 1}};
      o.id = std::string(apiary::code(o.method)) + ":" + o.colony.str() + ":" + donor.colony.str() +
             ":1";
      if (k == 0) y.plan.chosen.push_back(o.id);
      y.plan.problem.options.push_back(std::move(o));
    }
  }
  std::sort(y.plan.chosen.begin(), y.plan.chosen.end());
  return y;
}

}  // namespace outyard::sheet::fixture
