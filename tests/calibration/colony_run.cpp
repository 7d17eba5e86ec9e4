// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/calibration/colony_run.h"

#include <algorithm>
#include <fstream>
#include <stdexcept>

#include "core/base/text.h"

namespace outyard::calibration {

using base::Date;
using forecast::Band;
using strength::Estimate;

apiary::Season yardAt(double latitude, const std::optional<Climate>& climate) {
  apiary::Season season;
  apiary::ChangeList changes;
  const auto add = [&](const auto& r) {
    const auto row = apiary::toRow(r);
    changes.push_back({row.table, apiary::rowKey(row), std::nullopt, row});
  };
  apiary::Yard yard;
  yard.yard = base::YardId("Y");
  yard.latitude = latitude;
  add(yard);
  if (climate) {
    for (int d = 0; d < 365; ++d) {
      const Date date = Date::parse("2025-01-01").value().plusDays(d);
      // Months hold in their middle, days between by the straight line.
      const double at = d / 30.4375 - 0.5;
      const int before = at < 0 ? 11 : static_cast<int>(at) % 12;
      const double share = at < 0 ? at + 1 : at - static_cast<int>(at);
      const auto m = [&](int k) { return climate->meanC[static_cast<std::size_t>(k % 12)]; };
      const double mean = m(before) * (1 - share) + m(before + 1) * share;
      apiary::WeatherDay w;
      w.yard = yard.yard;
      w.date = date;
      w.kind = apiary::WeatherKind::Normal;
      w.tminC = mean - climate->halfRangeC;
      w.tmaxC = mean + climate->halfRangeC;
      add(w);
    }
  }
  season.apply(changes);
  return season;
}

double seenOf(double bees) {
  return bees * forecast::Figures::shipped().value("seen_share") * 0.95;
}

Band bandOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const auto at = [&](double p) {
    return values[static_cast<std::size_t>(p * static_cast<double>(values.size() - 1) + 0.5)];
  };
  return {at(0.5), at(0.1), at(0.9)};
}

Run run(const Start& s, int days, const std::vector<Deed>& deeds) {
  using forecast::Action;
  const auto& figures = forecast::Figures::shipped();
  const apiary::Season season = yardAt(s.latitude, s.climate);
  forecast::ForecastAsk ask;
  ask.from = Date::parse(s.date).value();
  ask.to = ask.from.plusDays(days);
  const Date first = Date::fromYmd(ask.from.year() - 1, 1, 1).value();
  const auto weather = yardWeather(season, base::YardId("Y"), first, ask, figures);
  forecast::Look look;
  look.date = ask.from;
  look.bees = Estimate::fromMedian(seenOf(s.bees), 0.1);
  const double read = figures.value("sealed_read");
  if (s.sealed) look.sealed = Estimate::fromMedian(*s.sealed * read, 0.1);
  if (s.open) look.open = Estimate::fromMedian((*s.open + s.eggs.value_or(0)) * read, 0.1);
  if (s.eggs) look.eggs = Estimate::fromMedian(*s.eggs * read, 0.15);
  if (s.honeyKg) look.honeyKg = Estimate::fromMedian(*s.honeyKg, 0.1);
  look.eggsSeen = s.eggsSeen;
  base::Random random(20260425);
  const int start = ask.from - first;
  auto ce = settledEnsemble(figures, forecast::kMembers, s.latitude, ask.from.dayOfYear(), s.origin,
                            &look, weather.drivers, start, random);
  act(ce, {ask.from, Action::Kind::Boxes, s.nestCells, s.superCells}, random);
  assimilate(ce, look, random);
  Run out;
  forecast::Outputs none;
  for (int d = 0; d <= days; ++d) {
    for (const Deed& deed : deeds) {
      if (deed.day == d) act(ce, {ask.from, deed.kind, deed.amount, deed.amount2}, random);
    }
    std::vector<double> bees, eggs, brood, sealed, honey, mites;
    for (int m = 0; m < ce.e.members; ++m) {
      const auto sum = [&](int from, int n) {
        double total = 0;
        for (int k = 0; k < n; ++k) total += static_cast<double>(ce.e.value(from + k)[m]);
        return total;
      };
      using namespace forecast;
      const double egg = sum(state::kEgg, kEggDays), cap = sum(state::kSealed, kSealedDays);
      bees.push_back(sum(state::kYoung, kYoungDays + 3));
      eggs.push_back(egg / 2.911);  // three days of eggs at 0.97 a day
      sealed.push_back(cap);
      brood.push_back(egg + cap + sum(state::kOpen, kOpenDays));
      honey.push_back(static_cast<double>(ce.e.value(state::kHoney)[m]));
      mites.push_back(sum(state::kMites, 1 + kSealedDays));
    }
    out.bees.push_back(bandOf(bees));
    out.eggs.push_back(bandOf(eggs));
    out.brood.push_back(bandOf(brood));
    out.sealed.push_back(bandOf(sealed));
    out.honeyKg.push_back(bandOf(honey));
    out.mites.push_back(bandOf(mites));
    if (d < days) runDays(ce.e, weather.drivers, start + d, start + d + 1, {}, none);
  }
  return out;
}

std::vector<CsvRow> csvRows(const std::string& file) {
  std::ifstream in(std::string(OUTYARD_SOURCE_DIR "/tests/data/") + file);
  if (!in) throw std::runtime_error("no " + file + " in tests/data");
  const auto split = [](const std::string& line) {
    std::vector<std::string> out(1);
    for (const char c : line) {
      if (c == ',') {
        out.emplace_back();
      } else if (c != '\r') {
        out.back() += c;
      }
    }
    return out;
  };
  std::string line;
  std::getline(in, line);
  const auto head = split(line);
  std::vector<CsvRow> rows;
  while (std::getline(in, line)) {
    const auto fields = split(line);
    CsvRow row;
    for (std::size_t i = 0; i < head.size() && i < fields.size(); ++i) {
      row.emplace_back(head[i], fields[i]);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string cell(const CsvRow& row, const std::string& column) {
  for (const auto& [name, value] : row) {
    if (name == column) return value;
  }
  throw std::runtime_error("no column " + column);
}

std::optional<double> number(const CsvRow& row, const std::string& column) {
  const std::string text = cell(row, column);
  const auto v = base::parseNumber(text);
  if (!v) return std::nullopt;
  return *v;
}

}  // namespace outyard::calibration
