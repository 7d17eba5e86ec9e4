// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/calendar.h"

#include <libical/ical.h>

#include <memory>

#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

std::string word(const base::Message& m) {
  std::string out = m.key;
  for (const auto& a : m.args) {
    if (const auto* s = std::get_if<std::string>(&a)) out += ' ' + *s;
    if (const auto* n = std::get_if<std::int64_t>(&a)) out += ' ' + std::to_string(*n);
  }
  return out;
}

struct Freed {
  void operator()(icalcomponent* c) const { icalcomponent_free(c); }
};
using Parsed = std::unique_ptr<icalcomponent, Freed>;

Files files() {
  // Twelve name parts of two bytes each: folding must not cut a character.
  std::string name = "Høje Ås; øvre, ";
  for (int i = 0; i < 12; ++i) name += "Ærøskøbing ";
  return {
      {"yards.csv", "yard,name,latitude,longitude\nTR,\"" + name + "\",45.152,-97.554\nAB,,,\n"},
      {"visits.csv",
       "visit,yard,date,time,notes\nv1,TR,2026-04-28,10:30,\"first line\nsecond; with, signs "
       "\\\"\nv2,AB,2026-04-30,,\nv0,TR,2026-03-01,09:00,past\n"},
      {"hives.csv", "hive,yard\nTR-01,TR\n"},
      {"tasks.csv", "task,kind,hive,visit,why,state\nt1,open,TR-01,v1,see the queen,planned\n"}};
}

planning::DueList due() {
  planning::DueList list;
  list.ask.from = day("2026-04-25");
  list.ask.to = day("2026-05-23");
  for (const char* hive : {"TR-01", "TR-02"}) {
    planning::DueTask t;
    t.rule = "feed";
    t.kind = "fed";
    t.yard = base::YardId("TR");
    t.hive = base::HiveId(hive);
    t.date = t.earliest = day("2026-04-27");
    t.latest = day("2026-05-02");
    t.why = base::message("planning.due.feed", "2026-05-02", 5, 3);
    list.tasks.push_back(t);
  }
  return list;
}

std::string text() {
  return calendarText(imported(files()), due(), day("2026-04-25"), "2026-04-25T07:00:00Z", word);
}

std::string valueOf(icalcomponent* c, icalproperty_kind kind) {
  icalproperty* p = icalcomponent_get_first_property(c, kind);
  if (!p) return {};
  const char* s = icalvalue_as_ical_string(icalproperty_get_value(p));
  return s ? s : "";
}

TEST(Calendar, IsReadBackWholeByLibical) {
  const Parsed calendar(icalparser_parse_string(text().c_str()));
  ASSERT_TRUE(calendar);
  EXPECT_EQ(icalcomponent_isa(calendar.get()), ICAL_VCALENDAR_COMPONENT);
  EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0);
  EXPECT_TRUE(icalrestriction_check(calendar.get()));
  ASSERT_EQ(icalcomponent_count_components(calendar.get(), ICAL_VEVENT_COMPONENT), 3);

  icalcomponent* visit = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
  const icaltimetype start = icalcomponent_get_dtstart(visit);
  EXPECT_EQ(start.year * 10000 + start.month * 100 + start.day, 20260428);
  EXPECT_EQ(start.hour * 100 + start.minute, 1030);
  EXPECT_FALSE(start.is_date);
  EXPECT_FALSE(icaltime_is_utc(start));  // the yard's own clock
  const std::string description = icalcomponent_get_description(visit);
  EXPECT_EQ(description, "first line\nsecond; with, signs \\\nTR-01: see the queen");
  EXPECT_EQ(std::string(icalcomponent_get_location(visit)).substr(0, 17), "Høje Ås; øvre,");
  EXPECT_EQ(valueOf(visit, ICAL_GEO_PROPERTY).substr(0, 6), "45.152");

  icalcomponent* whole = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT);
  EXPECT_TRUE(icalcomponent_get_dtstart(whole).is_date);
  EXPECT_EQ(icalcomponent_get_dtend(whole).day, 1);  // the end is the day after

  icalcomponent* fed = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT);
  EXPECT_EQ(icalcomponent_get_dtstart(fed).day, 27);
  const std::string list = icalcomponent_get_description(fed);
  EXPECT_NE(list.find("TR-01: "), std::string::npos);
  EXPECT_NE(list.find("TR-02: "), std::string::npos);
}

TEST(Calendar, LinesAreShortEndInCrlfAndCutNoCharacter) {
  const std::string all = text();
  std::size_t at = 0;
  while (at < all.size()) {
    const auto end = all.find("\r\n", at);
    ASSERT_NE(end, std::string::npos);
    const std::string line = all.substr(at, end - at);
    EXPECT_LE(line.size(), 75U) << line;
    EXPECT_EQ(line.find('\n'), std::string::npos);
    // A continuation begins with a blank, then a whole character.
    if (line.size() > 1 && line[0] == ' ') {
      EXPECT_NE(static_cast<unsigned char>(line[1]) & 0xC0U, 0x80U);
    }
    at = end + 2;
  }
  EXPECT_EQ(all, text());  // nothing in it depends on the run
}

TEST(Calendar, AnEmptySeasonIsAnEmptyCalendar) {
  const std::string bare = calendarText({}, {}, day("2026-04-25"), "2026-04-25T07:00:00Z", word);
  const Parsed calendar(icalparser_parse_string(bare.c_str()));
  ASSERT_TRUE(calendar);
  EXPECT_EQ(icalcomponent_count_components(calendar.get(), ICAL_ANY_COMPONENT), 0);
}

TEST(GeoJson, PointsAreLongitudeFirstAndTurnedWithTheDrawing) {
  const auto season = imported(
      {{"yards.csv",
        "yard,name,latitude,longitude,width_m,length_m,north_deg\n"
        "TR,\"The "
        "\"\"Ridge\"\"\",45,-97,40,30,0\nTU,turned,45,-97,40,30,90\nNO,nowhere,,,40,30,0\n"},
       {"hives.csv",
        "hive,yard,x_m,y_m,entrance_deg\nT1,TR,20,25,180\nT2,TR,30,15,\nU1,TU,30,15,\nN1,NO,1,1,"
        "\n"},
       {"places.csv",
        "hive,yard,x_m,y_m,entrance_deg,from_date\nT1,TR,20,25,180,2026-01-01\n"
        "T2,TR,30,15,,2026-01-01\nU1,TU,30,15,,2026-01-01\nN1,NO,1,1,,2026-01-01\n"}});
  const std::string text = geoJsonText(season, day("2026-04-25"));
  const auto has = [&](const std::string& part) {
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  };
  has(R"("id":"yard:TR","geometry":{"type":"Point","coordinates":[-97,45]})");
  has(R"("name":"The \"Ridge\"")");
  // 10 m north of the middle: 10 / 111,195 degrees; 10 m east at 45 degrees: 10 / 78,627 degrees.
  has(R"("id":"hive:T1","geometry":{"type":"Point","coordinates":[-97,45.0000899]})");
  has(R"("id":"hive:T2","geometry":{"type":"Point","coordinates":[-96.9998728,45]})");
  // North to the right of the drawing: ten metres to the right are ten metres north.
  has(R"("id":"hive:U1","geometry":{"type":"Point","coordinates":[-97,45.0000899]})");
  has(R"("id":"hive:N1","geometry":null)");
  has(R"("entrance_deg":180)");
}

}  // namespace
}  // namespace outyard::exchange::testing
