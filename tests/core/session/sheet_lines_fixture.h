// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/session/sheet_entry.h"
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {

inline std::string plainWord(const base::Message& m) {
  std::string out = m.key.substr(m.key.rfind('.') + 1);
  for (const auto& arg : m.args) {
    if (const auto* text = std::get_if<std::string>(&arg)) out += "|" + *text;
  }
  return out;
}

/// A sheet of the yard TR: TR-01 to TR-06 with colonies, TR-07 empty, TR-08 dead since March.
class SheetLinesTest : public CommandsTest {
 protected:
  void SetUp() override {
    tests::SeasonBuilder b;
    b.yard("TR").yard("MB");
    for (int i = 1; i <= 6; ++i) {
      b.livingHive("TR-0" + std::to_string(i), "TR", 2.0 * i, 3, i > 4 ? 2 : 1);
    }
    b.hive("TR-07", "TR", 16, 3).hive("TR-08", "TR", 18, 3);
    apiary::ColonyStay gone;
    static_cast<apiary::RecordHead&>(gone) = b.head();
    gone.colony = ColonyId{"TR-08"};
    gone.hive = HiveId{"TR-08"};
    gone.fromDate = tests::day("2025-04-01");
    gone.toDate = tests::day("2026-03-10");
    b.put(gone);
    apiary::Event died;
    static_cast<apiary::RecordHead&>(died) = b.head();
    died.kind = apiary::EventKind::Died;
    died.date = tests::day("2026-03-10");
    died.hive = HiveId{"TR-08"};
    died.colony = ColonyId{"TR-08"};
    died.detail = "cause not known";
    b.put(died);
    b.livingHive("MB-01", "MB", 2, 2).hive("MB-03", "MB", 6, 2);
    apiary::SheetRow sheet;
    sheet.sheet = base::SheetId{"26-0148"};
    sheet.yard = YardId{"TR"};
    sheet.date = d;
    sheet.madeAt = "2026-04-24T19:00:00Z";
    b.put(sheet);
    for (int i = 1; i <= 8; ++i) {
      apiary::SheetLine line;
      line.sheet = sheet.sheet;
      line.line = i;
      line.hive = HiveId{"TR-0" + std::to_string(i)};
      if (i < 7) line.colony = ColonyId{line.hive.str()};
      b.put(line);
    }
    open(b.take());
    again();
  }
  void again() { m_sheet = blankEntry(season(), base::SheetId{"26-0148"}).value(); }
  EntryLine& line(int number) { return m_sheet.lines.at(static_cast<std::size_t>(number - 1)); }
  std::string& cell(int number, EntryColumn column) { return line(number).at(column); }
  EntryReading read() const { return readSheet(season(), m_sheet, plainWord); }
  void enter() { mustDo(enterSheet(read())); }
  std::vector<const apiary::Event*> events(const char* hive, apiary::EventKind kind) const {
    std::vector<const apiary::Event*> out;
    for (const auto* e : season().journal<apiary::Event>(HiveId{hive})) {
      if (e->kind == kind) out.push_back(e);
    }
    return out;
  }
  std::string faultOf() const {
    const auto reading = read();
    return reading.faults.empty() ? "" : reading.faults.front().what.key;
  }

  EntrySheet m_sheet;
};

}  // namespace outyard::session
