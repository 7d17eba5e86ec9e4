// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/calendar.h"

#include <algorithm>
#include <map>
#include <optional>

#include "core/base/text.h"

namespace outyard::exchange {
namespace {

using base::Date;
using base::message;

constexpr std::size_t kLineOctets = 75;  // RFC 5545, 3.1

/// Text as a value: backslash, semicolon, comma and line ends escaped (RFC 5545, 3.3.11).
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\r') continue;
    if (c == '\n') {
      out += "\\n";
      continue;
    }
    if (c == '\\' || c == ';' || c == ',') out += '\\';
    out += c;
  }
  return out;
}

std::string compact(Date d) {
  std::string s = d.iso();
  std::erase(s, '-');
  return s;
}
std::string compact(std::string utc) {
  std::erase(utc, '-');
  std::erase(utc, ':');
  return utc;
}

class Calendar {
 public:
  Calendar() {
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Outyard//Apiary manager//EN");
    line("CALSCALE:GREGORIAN");
  }
  /// Folded so that no line is longer than 75 octets; a character is never cut.
  void line(const std::string& text) {
    std::size_t at = 0, room = kLineOctets;
    while (at < text.size()) {
      std::size_t end = std::min(text.size(), at + room);
      while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
      if (at > 0) m_text += ' ';
      m_text.append(text, at, end - at);
      m_text += "\r\n";
      at = end;
      room = kLineOctets - 1;
    }
  }
  std::string finish() {
    line("END:VCALENDAR");
    return std::move(m_text);
  }

 private:
  std::string m_text;
};

std::string yardName(const apiary::Season& season, const base::YardId& id) {
  const apiary::Yard* yard = season.yard(id);
  return yard && !yard->name.empty() ? yard->name : id.str();
}

void place(Calendar& c, const apiary::Season& season, const base::YardId& id) {
  c.line("LOCATION:" + escaped(yardName(season, id)));
  const apiary::Yard* yard = season.yard(id);
  if (yard && yard->latitude && yard->longitude) {
    c.line("GEO:" + base::shortest(*yard->latitude) + ';' + base::shortest(*yard->longitude));
  }
}

void visit(Calendar& c, const apiary::Season& season, const apiary::Visit& v,
           const std::string& stamp, const Word& word) {
  c.line("BEGIN:VEVENT");
  c.line("UID:" + escaped("visit-" + v.visit.str()) + "@outyard.invalid");
  c.line("DTSTAMP:" + stamp);
  if (v.time) {
    std::string time = v.time->text();
    std::erase(time, ':');
    c.line("DTSTART:" + compact(v.date) + 'T' + time + "00");
    c.line("DURATION:PT2H");
  } else {
    c.line("DTSTART;VALUE=DATE:" + compact(v.date));
    c.line("DTEND;VALUE=DATE:" + compact(v.date.plusDays(1)));
  }
  c.line("SUMMARY:" + escaped(word(message("exchange.ics_visit", yardName(season, v.yard)))));
  std::string text = v.notes;
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    if (task.visit != v.visit || task.state != apiary::TaskState::Planned) continue;
    if (!text.empty()) text += '\n';
    text += (task.hive ? task.hive->str() + ": " : std::string()) + task.why;
  }
  if (!text.empty()) c.line("DESCRIPTION:" + escaped(text));
  place(c, season, v.yard);
  c.line("END:VEVENT");
}

void writeVisits(Calendar& c, const apiary::Season& season, Date from, std::optional<Date> to,
                 const std::string& stamp, const Word& word) {
  std::vector<const apiary::Visit*> visits;
  for (const auto& [key, v] : season.table<apiary::Visit>()) {
    if (v.date >= from && (!to || v.date <= *to)) visits.push_back(&v);
  }
  std::stable_sort(visits.begin(), visits.end(), [](const auto* a, const auto* b) {
    return std::tie(a->date, a->yard) < std::tie(b->date, b->yard);
  });
  for (const auto* v : visits) visit(c, season, *v, stamp, word);
}

}  // namespace

std::string visitsCalendar(const apiary::Season& season, Date from, Date to,
                           const std::string& nowUtc, const Word& word) {
  Calendar c;
  writeVisits(c, season, from, to, compact(nowUtc), word);
  return c.finish();
}

std::string calendarText(const apiary::Season& season, const planning::DueList& due, Date from,
                         const std::string& nowUtc, const Word& word) {
  const std::string stamp = compact(nowUtc);
  Calendar c;
  writeVisits(c, season, from, std::nullopt, stamp, word);

  std::map<std::pair<Date, base::YardId>, std::vector<const planning::DueTask*>> byDay;
  for (const auto& t : due.tasks) byDay[{t.date, t.yard}].push_back(&t);
  for (const auto& [key, tasks] : byDay) {
    const auto& [date, yard] = key;
    Date last = tasks.front()->latest;
    std::string text;
    for (const auto* t : tasks) {
      last = std::min(last, t->latest);
      if (!text.empty()) text += '\n';
      const std::string name = word(planning::dueName(*t));
      const std::string why = t->plannedWhy.empty() ? word(t->why) : t->plannedWhy;
      text += (t->hive ? t->hive->str() + ": " : std::string()) + name + ". " + why;
    }
    c.line("BEGIN:VEVENT");
    c.line("UID:due-" + escaped(yard.str()) + '-' + compact(date) + "@outyard.invalid");
    c.line("DTSTAMP:" + stamp);
    c.line("DTSTART;VALUE=DATE:" + compact(date));
    c.line("DTEND;VALUE=DATE:" + compact(date.plusDays(1)));
    c.line("SUMMARY:" +
           escaped(word(message("exchange.ics_due", yardName(season, yard), tasks.size()))));
    c.line("DESCRIPTION:" + escaped(word(message("exchange.ics_by", last.iso())) + '\n' + text));
    c.line("TRANSP:TRANSPARENT");
    place(c, season, yard);
    c.line("END:VEVENT");
  }
  return c.finish();
}

}  // namespace outyard::exchange
