// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/weather_file.h"

#include <cstdio>

#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

using apiary::WeatherDay;
using apiary::WeatherKind;
using base::YardId;

apiary::Season yards() {
  return imported({{"yards.csv", "yard,latitude,longitude\nTR,45,-97\nAB,45.1,-97\n"}});
}

ImportResult read(const apiary::Season& season, const std::string& text, WeatherAsk ask = {}) {
  ask.yard = YardId("TR");
  base::Progress quiet;
  return planWeatherImport(season, "w.csv", text, ask, quiet);
}
std::vector<WeatherDay> days(const ImportResult& r) {
  EXPECT_TRUE(r.ok()) << allFaults(r);
  std::vector<WeatherDay> out;
  for (const auto& c : r.changes) {
    if (c.after) out.push_back(apiary::fromRow<WeatherDay>(*c.after));
  }
  return out;
}
bool noted(const ImportResult& r, const std::string& key) {
  return std::any_of(r.notes.begin(), r.notes.end(), [&](const auto& m) { return m.key == key; });
}

/// One line of a .dly file: the layout of the data set's readme.txt, section III (from memory).
std::string fixedLine(const std::string& month, const std::string& element,
                      const std::vector<std::string>& cells) {
  std::string out = "USC00390001" + month + element;
  for (std::size_t d = 0; d < 31; ++d) {
    out += d < cells.size() ? cells[d] : std::string("-9999   ");
  }
  return out + "\n";
}

TEST(WeatherFile, LayoutShowsInTheFirstLine) {
  EXPECT_EQ(layoutOf("date,tmin_c,tmax_c\n"), WeatherLayout::Own);
  EXPECT_EQ(layoutOf("\"STATION\",\"DATE\",\"PRCP\",\"TMAX\",\"TMIN\"\n"), WeatherLayout::Table);
  EXPECT_EQ(layoutOf("USW00014936,20240101,TMAX,-11,,,W,2400\n"), WeatherLayout::Elements);
  EXPECT_EQ(layoutOf("ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n"),
            WeatherLayout::Elements);
  EXPECT_EQ(layoutOf(fixedLine("202404", "TMAX", {})), WeatherLayout::Fixed);
  EXPECT_EQ(layoutOf(""), WeatherLayout::Own);
}

TEST(WeatherFile, TableInTenthsWithFlags) {
  const auto r = read(
      yards(),
      "\"STATION\",\"DATE\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\","
      "\"TMAX_ATTRIBUTES\",\"TMIN\",\"TMIN_ATTRIBUTES\"\n"
      "\"USW00014936\",\"2024-04-10\",\"A, B\",\"   25\",\",,W\",\"  178\",\",,W\","
      "\"   -6\",\",,W\"\n"
      "\"USW00014936\",\"2024-04-11\",\"A, B\",,,\"  902\",\",X,W\",\"   11\",\",,W\"\n"
      "\"USW00014936\",\"2024-04-13\",\"A, B\",\"0\",\",,W\",\"  150\",\",,W\",\"20\",\"H,,S\"\n");
  const auto d = days(r);
  ASSERT_EQ(d.size(), 2U);
  EXPECT_EQ(d[0].date.iso(), "2024-04-10");
  EXPECT_DOUBLE_EQ(d[0].tminC, -0.6);
  EXPECT_DOUBLE_EQ(d[0].tmaxC, 17.8);
  EXPECT_DOUBLE_EQ(d[0].rainMm.value(), 2.5);
  EXPECT_EQ(d[0].kind, WeatherKind::Observed);
  EXPECT_DOUBLE_EQ(d[1].tminC, 2.0);  // its attribute H is a measurement flag, no fault
  EXPECT_TRUE(noted(r, "exchange.weather_flagged"));
  EXPECT_TRUE(noted(r, "exchange.weather_halved"));
  EXPECT_TRUE(noted(r, "exchange.weather_gaps"));
}

TEST(WeatherFile, UnitsAreToldByTheFiguresOrAskedFor) {
  const std::string head = "STATION,DATE,PRCP,TMAX,TMIN\n";
  const auto metric = days(read(yards(), head + "USW00014936,2024-04-10,2.5,17.8,-0.6\n"));
  ASSERT_EQ(metric.size(), 1U);
  EXPECT_DOUBLE_EQ(metric[0].tmaxC, 17.8);
  // Degrees F: 64 F = 17.78 C, 31 F = -0.56 C; 0.10 inch = 2.54 mm (exact definitions).
  const auto us = days(read(yards(), head + "USW00014936,2024-04-10,0.10,64,31\n"));
  ASSERT_EQ(us.size(), 1U);
  EXPECT_NEAR(us[0].tmaxC, 17.78, 1e-9);
  EXPECT_NEAR(us[0].tminC, -0.56, 1e-9);
  EXPECT_NEAR(us[0].rainMm.value(), 2.54, 1e-9);
  const std::string unclear = head + "USW00014936,2024-04-10,0,64,31\n";
  EXPECT_EQ(allFaults(read(yards(), unclear)), "w.csv:1 exchange.weather_units\n");
  WeatherAsk ask;
  ask.units = WeatherUnits::Tenths;
  EXPECT_DOUBLE_EQ(days(read(yards(), unclear, ask)).at(0).tmaxC, 6.4);
}

TEST(WeatherFile, ElementsAndFixedSayTheSame) {
  const auto a = read(yards(),
                      "USW00014936,20240410,TMAX,178,,,W,2400\nUSW00014936,20240410,TMIN,-6,,,W,\n"
                      "USW00014936,20240410,PRCP,25,,,W,\nUSW00014936,20240410,SNOW,0,,,W,\n"
                      "USW00014936,20240411,TMAX,500,,I,W,\nUSW00014936,20240411,TMIN,10,,,W,\n");
  ASSERT_EQ(days(a).size(), 1U);
  std::vector<std::string> tmax(31, "-9999   "), tmin(31, "-9999   "), rain(31, "-9999   ");
  tmax[9] = "  178  W";
  tmin[9] = "   -6  W";
  rain[9] = "   25  W";
  tmax[10] = "  500 IW";
  tmin[10] = "   10  W";
  const auto b =
      read(yards(), fixedLine("202404", "TMAX", tmax) + fixedLine("202404", "TMIN", tmin) +
                        fixedLine("202404", "PRCP", rain));
  EXPECT_EQ(days(a), days(b));
  EXPECT_TRUE(noted(b, "exchange.weather_flagged"));
  EXPECT_FALSE(noted(b, "exchange.weather_gaps"));
}

TEST(WeatherFile, WhatIsWrongIsNamedWithItsLine) {
  const std::string head = "STATION,DATE,PRCP,TMAX,TMIN\n";
  const auto season = yards();
  EXPECT_EQ(
      allFaults(read(season, head + "A,2024-04-10,0.5,17.8,-0.6\nB,2024-04-10,0.5,17.8,1.0\n")),
      "w.csv:3: STATION exchange.weather_stations\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-31,0.5,17.8,-0.6\n")),
            "w.csv:2: DATE exchange.weather_date\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,warm,-0.6\n")),
            "w.csv:2: TMAX exchange.weather_number\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,7.8,9.6\n")),
            "w.csv:2: TMIN exchange.weather_min_over_max\n");
  WeatherAsk metric;
  metric.units = WeatherUnits::Metric;
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,7.8,-60.1\n", metric)),
            "w.csv:2: TMIN exchange.weather_impossible\n");
  // One wrong figure in a long file does not turn its units.
  std::string longer = head;
  for (base::Date d = day("2024-01-01"); d <= day("2024-03-31"); d = d.plusDays(1)) {
    longer += "A," + d.iso() + (d == day("2024-02-02") ? ",0.5,602.5,1.1\n" : ",0.5,7.8,1.1\n");
  }
  EXPECT_EQ(allFaults(read(season, longer)), "w.csv:1 exchange.weather_units\n");
  EXPECT_EQ(allFaults(read(season, longer, metric)),
            "w.csv:34: TMAX exchange.weather_impossible\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,7.8,1.1\nA,2024-04-10,0.5,7.8,1.1\n")),
            "w.csv:3: TMIN exchange.weather_twice\nw.csv:3: TMAX exchange.weather_twice\nw.csv:3: "
            "PRCP exchange.weather_twice\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,7.8\n")),
            "w.csv:2 exchange.line_short\n");
  EXPECT_EQ(allFaults(read(season, head + "A,2024-04-10,0.5,,\n")),
            "w.csv exchange.weather_no_days\n");
  EXPECT_EQ(allFaults(read(season, "STATION,DATE,PRCP\nA,2024-04-10,0.5\n")),
            "w.csv:1: TMAX exchange.weather_no_column\nw.csv:1: TMIN exchange.weather_no_column\n");
  EXPECT_EQ(allFaults(read(season, head)), "w.csv exchange.weather_no_days\n");
  std::vector<std::string> cells(31, "  100  W");  // April has no 31st
  const auto fixed =
      read(season, fixedLine("202404", "TMAX", cells) + fixedLine("202404", "TMIN", cells));
  EXPECT_EQ(allFaults(fixed),
            "w.csv:1: TMAX exchange.weather_no_such_day\nw.csv:2: TMIN "
            "exchange.weather_no_such_day\n");
  EXPECT_EQ(allFaults(read(season, "USC00390001202404TMAX\nUSC003900012\n")),
            "w.csv:2 exchange.weather_fixed_short\n");
  EXPECT_TRUE(read(season, head + "A,2024-04-10,0.5,7.8,9.6\n").changes.empty());
}

TEST(WeatherFile, OnlyTheDaysAskedFor) {
  WeatherAsk ask;
  ask.from = day("2024-04-11");
  ask.to = day("2024-04-11");
  const std::string text =
      "STATION,DATE,PRCP,TMAX,TMIN\nA,2024-04-10,0.5,7.8,1.1\nA,2024-04-11,0.5,8.8,1.1\n"
      "A,2024-04-12,0.5,9.8,1.1\n";
  ASSERT_EQ(days(read(yards(), text, ask)).size(), 1U);
  const auto own = read(yards(), "date,tmin_c,tmax_c\n2024-04-10,1,8\n2024-04-11,2,9\n", ask);
  ASSERT_EQ(days(own).size(), 1U);
  EXPECT_EQ(days(own)[0].date, day("2024-04-11"));
}

TEST(WeatherFile, UsualWeatherIsTheMeanOfTheDaysAround) {
  std::string text = "date,tmin_c,tmax_c,rain_mm\n";
  for (base::Date d = day("2015-01-01"); d <= day("2021-12-31"); d = d.plusDays(1)) {
    // Straight through the year: then a day's mean over the days around is its own value.
    const double t = 0.1 * d.dayOfYear();
    char line[80];
    std::snprintf(line, sizeof line, "%s,%.3f,%.3f,2\n", d.iso().c_str(), t - 5, t + 5);
    text += line;
  }
  WeatherAsk ask;
  ask.normals = true;
  auto season = yards();
  WeatherDay old;
  old.yard = YardId("TR");
  old.date = day("2025-06-01");
  old.kind = WeatherKind::Normal;
  const auto oldRow = apiary::toRow(old);
  season.apply({{apiary::TableId::Weather, apiary::rowKey(oldRow), std::nullopt, oldRow}});
  const auto r = read(season, text, ask);
  ASSERT_TRUE(r.ok()) << allFaults(r);
  season.apply(r.changes);
  EXPECT_EQ(season.table<WeatherDay>().size(), 366U);  // the old row went
  for (const auto& [key, w] : season.table<WeatherDay>()) {
    EXPECT_EQ(w.kind, WeatherKind::Normal);
    if (w.date == day("2000-05-20")) {
      EXPECT_NEAR((w.tminC + w.tmaxC) / 2, 0.1 * 140, 0.11);
      EXPECT_DOUBLE_EQ(w.rainMm.value(), 2);
    }
  }
  const auto few = read(yards(), text.substr(0, text.find("2017-01-01")), ask);
  EXPECT_EQ(allFaults(few), "w.csv exchange.weather_few_years\n");
}

}  // namespace
}  // namespace outyard::exchange::testing
