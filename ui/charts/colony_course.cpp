// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/colony_course.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/forecast/day_length.h"
#include "core/forecast/history.h"
#include "core/forecast/weather.h"
#include "core/planning/boost_weather.h"
#include "core/strength/measures.h"
#include "ui/adapt/words.h"

namespace outyard::charts {
namespace {

using base::Date;
using sheet::Ink;

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

constexpr std::size_t kBees = 0, kBrood = 1, kStores = 2, kMites = 3;
constexpr int kPastDays = 420;
constexpr int kLooksCounted = 40;

SeenPoint pointOf(Date date, const strength::Estimate& e, double scale = 1) {
  return {date, e.low * scale, e.median * scale, e.high * scale, false, {}};
}

/// A wash counts few bees of many: its error is that of a share (Wilson's interval, as the sheet of
/// the hive gives it).
SeenPoint washPoint(Date date, double per100, double bees) {
  const int mites = static_cast<int>(std::lround(per100 * bees / 100));
  const auto error = strength::wilson(mites, static_cast<int>(std::lround(bees)));
  return {date, 100 * error.low, per100, 100 * error.high, false, {}};
}

QString surpriseWords(const forecast::Surprise& s) {
  const QString seen = adapt::roundNumber(s.seen), expected = adapt::roundNumber(s.expected);
  if (s.bees && s.fewer) {
    return Course::tr(
               "far fewer bees than expected (%1 against %2): swarmed, robbed, queen lost "
               "or mistyped?")
        .arg(seen, expected);
  }
  if (s.bees) {
    return Course::tr(
               "far more bees than expected (%1 against %2): united, drifted in, or "
               "mistyped?")
        .arg(seen, expected);
  }
  if (s.stores) {
    return (s.fewer ? Course::tr("far less stores than expected (%1 kg against %2 kg): robbed, "
                                 "starving or mistyped?")
                    : Course::tr("far more stores than expected (%1 kg against %2 kg): fed, a "
                                 "flow, or mistyped?"))
        .arg(seen, expected);
  }
  if (s.fewer) {
    return Course::tr(
               "far less brood than expected (%1 against %2 cells): queen lost, swarmed or "
               "mistyped?")
        .arg(seen, expected);
  }
  return Course::tr(
             "far more brood than expected (%1 against %2 cells): mistyped, or another "
             "queen?")
      .arg(seen, expected);
}

void addLooks(CourseData& data, const forecast::History& history, double massScale) {
  auto& bees = data.lanes[kBees].series[0];
  auto& sealed = data.lanes[kBrood].series[0];
  auto& brood = data.lanes[kBrood].series[1];
  auto& stores = data.lanes[kStores].series[0];
  auto& mites = data.lanes[kMites].series[0];
  for (const auto& look : history.looks) {
    if (look.date < data.first || look.date > data.today) continue;
    data.looks.push_back(look.date);
    if (look.bees) bees.seen.push_back(pointOf(look.date, *look.bees));
    if (look.sealed) sealed.seen.push_back(pointOf(look.date, *look.sealed));
    if (look.brood) brood.seen.push_back(pointOf(look.date, *look.brood));
    if (look.honeyKg) stores.seen.push_back(pointOf(look.date, *look.honeyKg, massScale));
    if (look.mitesPer100 && look.washBees > 0) {
      mites.seen.push_back(washPoint(look.date, *look.mitesPer100, look.washBees));
    }
  }
}

void markSurprises(CourseData& data, const std::vector<forecast::Surprise>& surprises) {
  for (const auto& s : surprises) {
    if (s.date < data.first) continue;
    const QString words = surpriseWords(s);
    bool found = false;
    const auto mark = [&](std::vector<SeenPoint>& points) {
      for (auto& p : points) {
        if (p.date != s.date || found) continue;
        p.surprise = found = true;
        p.words = words;
      }
    };
    if (s.bees) {
      mark(data.lanes[kBees].series[0].seen);
    } else if (s.stores) {
      mark(data.lanes[kStores].series[0].seen);
    } else {
      mark(data.lanes[kBrood].series[0].seen);
      mark(data.lanes[kBrood].series[1].seen);
    }
    data.remarks << Course::tr("%1: %2").arg(adapt::dateText(s.date), words);
  }
}

/// How often the band held by how long nobody had looked; only when looks lay differently far
/// apart.
void addTrustByLead(CourseData& data, const forecast::ColonyForecast& f, int count) {
  struct Span {
    int most;
    int looks = 0, within = 0;
  };
  std::array<Span, 3> spans{Span{14}, Span{42}, Span{100000}};
  for (auto c = f.checks.end() - count; c != f.checks.end(); ++c) {
    auto& span = *std::find_if(spans.begin(), spans.end(),
                               [&](const Span& s) { return c->daysSince <= s.most; });
    ++span.looks;
    span.within += c->within() ? 1 : 0;
  }
  const auto some = std::count_if(spans.begin(), spans.end(), [](auto& s) { return s.looks > 0; });
  if (some < 2) return;
  const QStringList names{Course::tr("within two weeks of the look before %1 of %2"),
                          Course::tr("three to six weeks after it %1 of %2"),
                          Course::tr("later %1 of %2")};
  QStringList parts;
  for (std::size_t k = 0; k < spans.size(); ++k) {
    if (spans[k].looks == 0) continue;
    parts << names[static_cast<qsizetype>(k)].arg(spans[k].within).arg(spans[k].looks);
  }
  //: The list of spans, such as "within two weeks of the look before 5 of 6".
  data.remarks
      << Course::tr("By how long nobody had looked: %1.").arg(parts.join(QStringLiteral(", ")));
}

void addTrust(CourseData& data, const forecast::ColonyForecast& f) {
  const int count = std::min(kLooksCounted, static_cast<int>(f.checks.size()));
  if (count == 0) {
    data.remarks << Course::tr("Looked at too seldom to tell how often the band holds here.");
    return;
  }
  const auto within = std::count_if(f.checks.end() - count, f.checks.end(),
                                    [](const auto& c) { return c.within(); });
  data.remarks << Course::tr("Of the last %1 looks %2 fell within the band (about 4 in 5 should).")
                      .arg(count)
                      .arg(within);
  addTrustByLead(data, f, count);
  const auto& last = f.checks.back();
  const double ratio = last.expected.median > 0 ? last.seen / last.expected.median : 1;
  const QString seen = adapt::roundNumber(last.seen);
  const QString expected = adapt::band(last.expected.median, last.expected.low, last.expected.high);
  if (ratio > 1.05 || ratio < 0.95) {
    data.remarks << (ratio > 1
                         ? Course::tr("The look of %1 moved it up: %2 bees seen, %3 expected.")
                         : Course::tr("The look of %1 moved it down: %2 bees seen, %3 "
                                      "expected."))
                        .arg(adapt::dateText(last.date), seen, expected);
  } else {
    data.remarks << Course::tr("The look of %1 was as expected: %2 bees seen, %3 expected.")
                        .arg(adapt::dateText(last.date), seen, expected);
  }
}

/// Late in the year mites decide who winters: when no treatment is in the journal since midsummer,
/// that is said, and the band holds both those who treated and those who did not.
void addTreatment(CourseData& data, const forecast::History& history, double latitude) {
  const int day = forecast::northernDay(latitude, data.today.dayOfYear());
  constexpr int kMidsummer = 182, kFrom = 213;
  const bool late = day >= kFrom || day < 60;
  if (!late) return;
  const int since = day >= kFrom ? day - kMidsummer : day + 365 - kMidsummer;
  const Date midsummer = data.today.plusDays(-since);
  const bool treated =
      std::any_of(history.actions.begin(), history.actions.end(), [&](const forecast::Action& a) {
        return a.kind == forecast::Action::Kind::Treated && a.date >= midsummer;
      });
  if (treated) return;
  data.remarks << Course::tr(
                      "No treatment is recorded since %1. Most keepers treat: the band holds "
                      "colonies that were treated and some that mites take. Enter the "
                      "treatment, or wash 300 bees, to narrow it.")
                      .arg(adapt::dateText(midsummer));
}

}  // namespace

std::vector<Lane> emptyLanes(const adapt::Units& units, LaneSet set) {
  const QString cells = Course::tr("cells");
  std::vector<Lane> lanes(4);
  lanes[kBees] = {Course::tr("Bees"), Course::tr("on the combs"), 0, 4.6, {}};
  lanes[kBees].series.push_back({Course::tr("bees"), {}, Ink::Bees, false, {}, {}, {}, {}});
  lanes[kBrood] = {Course::tr("Brood"), cells, 0, 3.0, {}};
  lanes[kBrood].series.push_back(
      {Course::tr("sealed brood"), cells, Ink::SealedBrood, false, {}, {}, {}, {}});
  lanes[kBrood].series.push_back(
      {Course::tr("all brood"), cells, Ink::SealedBrood, true, {}, {}, {}, {}});
  lanes[kStores] = {Course::tr("Stores"), units.massUnit(), 1, 2.0, {}};
  lanes[kStores].series.push_back(
      {Course::tr("stores"), units.massUnit(), Ink::Accent, false, {}, {}, {}, {}});
  if (set == LaneSet::Colony) {
    lanes[kMites] = {Course::tr("Mites"), Course::tr("on 100 bees"), 1, 1.6, {}};
  } else {
    lanes[kMites] = {Course::tr("Mites"), Course::tr("in all colonies"), 0, 1.6, {}};
  }
  lanes[kMites].series.push_back({Course::tr("mites"), {}, Ink::Alarm, false, {}, {}, {}, {}});
  return lanes;
}

void addDays(std::vector<Lane>& lanes, const std::vector<forecast::ForecastDay>& days,
             const adapt::Units& units, Band Series::*where, LaneSet set) {
  const double mass = units.shown(base::Mass{1.0});
  const auto add = [](Band& to, Date date, const forecast::Band& from, double scale) {
    to.push_back({date, from.low * scale, from.median * scale, from.high * scale});
  };
  for (const auto& d : days) {
    add(lanes[kBees].series[0].*where, d.date, d.seen, 1);
    add(lanes[kBrood].series[0].*where, d.date, d.sealed, 1);
    add(lanes[kBrood].series[1].*where, d.date, d.brood, 1);
    add(lanes[kStores].series[0].*where, d.date, d.honeyKg, mass);
    add(lanes[kMites].series[0].*where, d.date, set == LaneSet::Colony ? d.mitesPer100 : d.mites,
        1);
  }
}

std::vector<WeatherPoint> weatherCourse(const apiary::Season& season, const base::YardId& yard,
                                        Date from, Date to, Date today, const adapt::Units& units) {
  std::vector<base::Message> notes;
  const auto figures = planning::boostFigures(season, notes);
  // Flight from 13 C on a day that is mostly dry: common practice, no source.
  constexpr double kFlightC = 13, kFlightRainMm = 2;
  const planning::YardWeather rows(season, yard);
  forecast::WeatherAsk ask{yard, from, to.plusDays(1), today, false, 1};
  const auto usual = forecast::WeatherPaths::of(season, ask);
  std::vector<WeatherPoint> out;
  const auto shown = [&](double c) { return units.shown(base::Temperature{c}); };
  for (Date d = from; d <= to; d = d.plusDays(1)) {
    WeatherPoint w;
    w.date = d;
    double tmin = 0, tmax = 0;
    const auto known = rows.on(d);
    const bool known1 = known && known->kind != apiary::WeatherKind::Normal &&
                        (d <= today || known->kind == apiary::WeatherKind::Forecast);
    if (known1) {
      tmin = known->tminC;
      tmax = known->tmaxC;
      w.rainMm = known->rainMm;
      w.kind = known->kind == apiary::WeatherKind::Observed ? WeatherPoint::Kind::Observed
                                                            : WeatherPoint::Kind::Forecast;
    } else {
      // The middle of the scenarios of the day.
      std::vector<double> lows, highs, rains;
      for (int s = 0; s < forecast::kBlock; ++s) {
        const auto& day = usual.at(d - from, s);
        lows.push_back(day.tminC);
        highs.push_back(day.tmaxC);
        rains.push_back(day.rainMm);
      }
      const auto middle = [](std::vector<double>& v) {
        std::nth_element(v.begin(), v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2), v.end());
        return v[v.size() / 2];
      };
      tmin = middle(lows);
      tmax = middle(highs);
      w.rainMm = middle(rains);
    }
    const double rain = w.rainMm.value_or(0);
    w.flight = tmax >= kFlightC && rain <= kFlightRainMm;
    w.opens = tmax >= figures.combMinC && rain <= figures.dryMm;
    w.tmin = shown(tmin);
    w.tmax = shown(tmax);
    out.push_back(w);
  }
  return out;
}

std::vector<forecast::ForecastDay> sumOf(
    const std::vector<const forecast::ColonyForecast*>& colonies) {
  constexpr double kShared = 0.4;
  std::map<Date, int> days;
  for (const auto* f : colonies) {
    for (const auto& d : f->days) ++days[d.date];
  }
  std::vector<forecast::ForecastDay> out;
  for (const auto& [date, count] : days) {
    if (count != static_cast<int>(colonies.size())) continue;
    forecast::ForecastDay sum;
    sum.date = date;
    const auto add = [&, day = date](forecast::Band forecast::ForecastDay::*field) {
      double below = 0, above = 0, below2 = 0, above2 = 0;
      forecast::Band& to = sum.*field;
      for (const auto* f : colonies) {
        const auto it = std::lower_bound(f->days.begin(), f->days.end(), day,
                                         [](const auto& d, Date w) { return d.date < w; });
        const forecast::Band& b = (*it).*field;
        to.median += b.median;
        const double down = b.median - b.low, up = b.high - b.median;
        below += down;
        above += up;
        below2 += down * down;
        above2 += up * up;
      }
      to.low = to.median - std::sqrt(kShared * below * below + (1 - kShared) * below2);
      to.high = to.median + std::sqrt(kShared * above * above + (1 - kShared) * above2);
    };
    add(&forecast::ForecastDay::bees);
    add(&forecast::ForecastDay::seen);
    add(&forecast::ForecastDay::sealed);
    add(&forecast::ForecastDay::brood);
    add(&forecast::ForecastDay::honeyKg);
    add(&forecast::ForecastDay::mites);
    out.push_back(sum);
  }
  return out;
}

std::shared_ptr<CourseData> colonyCourse(const apiary::Season& season, const CourseAsk& ask,
                                         base::Progress& progress) {
  const auto history = forecast::historyOf(season, ask.colony, ask.today);
  const auto hive = apiary::hiveOfColony(season, ask.colony, ask.today);
  if (!history || !hive) return nullptr;
  forecast::ForecastAsk f;
  f.from = ask.today;
  f.to = ask.today.plusDays(ask.daysAhead);
  f.stepDays = ask.stepDays;
  f.pastFrom = std::max(history->start, ask.today.plusDays(-kPastDays));
  const auto found = forecast::forecastColonies(season, {ask.colony}, f, 1, progress);
  if (found.empty() || progress.cancelled()) return nullptr;
  auto data = std::make_shared<CourseData>();
  data->title = ask.title;
  data->today = ask.today;
  data->first = *f.pastFrom;
  data->last = f.to;
  data->lanes = emptyLanes(ask.units);
  data->temperatureUnit = ask.units.temperatureUnit();
  addDays(data->lanes, found.front().past, ask.units, &Series::past);
  if (!found.front().days.empty()) {
    // The past reaches to today, so that the two meet.
    addDays(data->lanes, {found.front().days.front()}, ask.units, &Series::past);
  }
  addDays(data->lanes, found.front().days, ask.units, &Series::ahead);
  addLooks(*data, *history, ask.units.shown(base::Mass{1.0}));
  data->weather = weatherCourse(season, apiary::hiveOn(season, *hive, ask.today).yard, data->first,
                                data->last, ask.today, ask.units);
  data->ticks = ask.ticks;
  std::sort(data->ticks.begin(), data->ticks.end(),
            [](const Tick& a, const Tick& b) { return a.date < b.date; });
  addTrust(*data, found.front());
  const auto* yard = season.yard(apiary::hiveOn(season, *hive, ask.today).yard);
  addTreatment(*data, *history, yard ? yard->latitude.value_or(45) : 45);
  markSurprises(*data, found.front().surprises);
  if (ask.trial != Trial::AsItIs) addTrial(*data, season, ask, progress);
  if (progress.cancelled()) return nullptr;
  return data;
}

}  // namespace outyard::charts
