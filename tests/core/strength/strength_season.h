// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/apiary/season.h"

/// A small season for the tests of this room: yard Y at 44 degrees north with a flow table, hive H
/// with one colony of the same name. Records are added with add().
namespace outyard::strength::test {

inline base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

struct TestSeason {
  apiary::Season season;
  int ids = 0;

  template <class T>
  T add(T record) {
    if constexpr (std::is_base_of_v<apiary::RecordHead, T>) {
      if (record.record.blank()) record.record = base::RecordId("r" + std::to_string(++ids));
    }
    const apiary::Row row = apiary::toRow(record);
    season.apply({apiary::Change{row.table, apiary::rowKey(row), std::nullopt, row}});
    return record;
  }

  void hive(const char* name, const char* frameType = "langstroth_deep", int boxes = 1) {
    apiary::Hive h;
    h.hive = base::HiveId(name);
    h.yard = base::YardId("Y");
    add(h);
    apiary::Place p;
    p.hive = h.hive;
    p.yard = h.yard;
    p.fromDate = day("2025-01-01");
    add(p);
    apiary::ColonyStay c;
    c.colony = base::ColonyId(name);
    c.hive = h.hive;
    c.fromDate = day("2025-01-01");
    add(c);
    for (int i = 1; i <= boxes; ++i) {
      apiary::Box b;
      b.hive = h.hive;
      b.date = day("2025-01-01");
      b.position = i;
      b.frameType = frameType;
      add(b);
    }
  }

  explicit TestSeason(const char* frameType = "langstroth_deep", double latitude = 44,
                      int boxes = 1) {
    apiary::Yard y;
    y.yard = base::YardId("Y");
    y.latitude = latitude;
    add(y);
    hive("H", frameType, boxes);
  }

  /// Pollen from season day 85 (26 March) to 273, north of the equator.
  void pollen() {
    apiary::Flow f;
    f.yard = base::YardId("Y");
    f.fromDay = 85;
    f.toDay = 273;
    f.pollen = 2;
    add(f);
  }

  static apiary::Inspection look(const char* iso, const char* hive = "H") {
    apiary::Inspection i;
    i.hive = base::HiveId(hive);
    i.date = day(iso);
    return i;
  }
  static apiary::Event event(apiary::EventKind kind, const char* iso, const char* hive = "H") {
    apiary::Event e;
    e.kind = kind;
    e.hive = base::HiveId(hive);
    e.date = day(iso);
    return e;
  }
  static apiary::CombSide side(const apiary::Inspection& i, int box, int slot,
                               apiary::FrameSide face) {
    apiary::CombSide s;
    s.inspection = i.record;
    s.hive = i.hive;
    s.date = i.date;
    s.box = box;
    s.slot = slot;
    s.side = face;
    return s;
  }
};

}  // namespace outyard::strength::test
