// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::CombSide;
using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using apiary::SeamCount;
using apiary::Wash;
using base::message;

namespace {

void checkEntry(Checker& c, const InspectionEntry& entry) {
  const Inspection& i = entry.inspection;
  const auto state = c.standing(i.hive, i.date);
  if (!state) return;
  c.row(i);
  c.sheet(i.sheet);
  if (c.season().journal<ColonyStay>(i.hive).empty()) {
    // The first look at it makes a colony of the hive's name, unless that name is taken.
    if (i.colony && i.colony->str() != i.hive.str()) {
      c.fault(message("session.colony_not_there", i.colony->str(), i.hive.str(), i.date.iso()));
    } else if (!c.season().stays(ColonyId{i.hive.str()}).empty()) {
      c.fault(message("session.colony_elsewhere", i.hive.str()));
    }
  } else {
    c.colony(*state, i.colony, i.date);
  }
  const int boxes = static_cast<int>(state->boxes.size());
  std::set<std::tuple<int, int, apiary::FrameSide>> sides;
  for (CombSide s : entry.sides) {
    s.hive = i.hive;
    s.date = i.date;
    c.row(s);
    if (!sides.insert({s.box, s.slot, s.side}).second) {
      c.fault(message("session.side_twice", i.hive.str(), s.box, s.slot));
    }
    if (boxes > 0 && s.box > boxes) {
      c.fault(message("session.no_such_box", i.hive.str(), s.box, boxes));
    }
  }
  std::set<int> seams;
  for (SeamCount s : entry.seams) {
    s.hive = i.hive;
    s.date = i.date;
    c.row(s);
    if (!seams.insert(s.box).second) {
      c.fault(message("session.seams_twice", i.hive.str(), s.box));
    }
    if (boxes > 0 && s.box > boxes) {
      c.fault(message("session.no_such_box", i.hive.str(), s.box, boxes));
    }
  }
}

/// The colony that left on this very day must be named: from that day on the hive is empty.
std::optional<ColonyId> nameIfLeaving(const ChangeBuilder& b, const HiveId& hive,
                                      const std::optional<ColonyId>& named, Date date) {
  if (named) return named;
  std::optional<ColonyId> left;
  for (const ColonyStay& s : b.journal<ColonyStay>(hive)) {
    if (s.fromDate <= date && (!s.toDate || date < *s.toDate)) return named;
    if (s.toDate && *s.toDate == date) left = s.colony;
  }
  return left;
}

void writeEntry(ChangeBuilder& b, const InspectionEntry& entry,
                const std::optional<base::RecordId>& supersedes) {
  Inspection i = entry.inspection;
  static_cast<apiary::RecordHead&>(i) = b.leadHead();
  i.supersedes = supersedes;
  if (b.journal<ColonyStay>(i.hive).empty()) {
    ColonyStay stay;
    stay.colony = ColonyId{i.hive.str()};
    b.startStay(stay, i.hive, ColonyPlace::Main, i.date);
  }
  i.colony = nameIfLeaving(b, i.hive, i.colony, i.date);
  b.put(i);
  for (CombSide s : entry.sides) {
    s.inspection = i.record;
    s.hive = i.hive;
    s.colony = s.colony ? s.colony : i.colony;
    s.date = i.date;
    b.put(s);
  }
  for (SeamCount s : entry.seams) {
    s.inspection = i.record;
    s.hive = i.hive;
    s.date = i.date;
    b.put(s);
  }
}

Date lastOf(const std::vector<InspectionEntry>& entries) {
  Date last = Date::fromDays(-100000);
  for (const auto& e : entries) last = std::max(last, e.inspection.date);
  return last;
}

/// The record that now stands for the old one; null when it was withdrawn.
const Inspection* countingFor(const apiary::Season& season, const Inspection& old) {
  const Inspection* now = &old;
  while (season.isSuperseded(apiary::TableId::Inspections, now->record)) {
    const Inspection* next = nullptr;
    for (const auto& [key, row] : season.table<Inspection>()) {
      if (row.supersedes == now->record) next = &row;
    }
    if (!next) return nullptr;
    now = next;
  }
  return now->isVoid ? nullptr : now;
}

}  // namespace

CommandPtr recordInspections(std::vector<InspectionEntry> list) {
  const auto entries = std::make_shared<const std::vector<InspectionEntry>>(std::move(list));
  base::Message title =
      entries->size() == 1
          ? message("session.title.inspection", entries->front().inspection.hive.str())
          : message("session.title.inspections", entries->size());
  return verb(
      std::move(title), lastOf(*entries),
      [entries](Checker& c) {
        for (const auto& e : *entries) checkEntry(c, e);
      },
      [entries](ChangeBuilder& b) {
        // Oldest first, so that a colony begins with the first look at it.
        std::vector<const InspectionEntry*> order;
        for (const auto& e : *entries) order.push_back(&e);
        std::stable_sort(order.begin(), order.end(), [](const auto* x, const auto* y) {
          return x->inspection.date < y->inspection.date;
        });
        for (const auto* e : order) writeEntry(b, *e, std::nullopt);
      });
}

CommandPtr recordInspection(Inspection inspection, std::vector<CombSide> sides,
                            std::vector<SeamCount> seams) {
  std::vector<InspectionEntry> one;
  one.push_back({std::move(inspection), std::move(sides), std::move(seams)});
  return recordInspections(std::move(one));
}

CommandPtr correctInspection(base::RecordId old, InspectionEntry entry) {
  return verb(
      message("session.title.correct_inspection", entry.inspection.hive.str()),
      entry.inspection.date,
      [=](Checker& c) {
        const Inspection* row = c.season().find<Inspection>(old.str());
        if (!row) return c.fault(message("session.unknown_record", old.str()));
        if (!countingFor(c.season(), *row)) {
          return c.fault(message("session.record_withdrawn", row->hive.str(), row->date.iso()));
        }
        checkEntry(c, entry);
      },
      [=](ChangeBuilder& b) {
        const Inspection& row = *b.before().find<Inspection>(old.str());
        const Inspection& now = *countingFor(b.before(), row);
        // The same figures again correct nothing.
        Inspection same = entry.inspection;
        static_cast<apiary::RecordHead&>(same) = now;
        const auto sides = b.before().combSides(now.record);
        const auto seams = b.before().seamCounts(now.record);
        if (same == now && entry.sides.empty() && entry.seams.empty() && sides.empty() &&
            seams.empty()) {
          return;
        }
        writeEntry(b, entry, now.record);
      });
}

CommandPtr recordWash(Wash wash) {
  return verb(
      message("session.title.wash", wash.hive.str()), wash.date,
      [=](Checker& c) {
        const auto state = c.standing(wash.hive, wash.date);
        if (!state) return;
        c.row(wash);
        c.colony(*state, wash.colony, wash.date);
      },
      [=](ChangeBuilder& b) {
        Wash row = wash;
        static_cast<apiary::RecordHead&>(row) = b.leadHead();
        row.colony = nameIfLeaving(b, row.hive, row.colony, row.date);
        b.put(row);
      });
}

CommandPtr overruleVerdict(HiveId hive, ColonyId colony, Date date, apiary::VerdictCode verdict,
                           std::string reason) {
  return verb(
      message("session.title.verdict", hive.str()), date,
      [=](Checker& c) {
        const auto state = c.standing(hive, date);
        if (!state) return;
        c.colony(*state, colony, date);
        if (reason.empty()) c.fault(message("session.reason_missing", hive.str()));
        Event e;
        e.hive = hive;
        e.date = date;
        e.kind = EventKind::Verdict;
        e.detail = reason;
        c.row(e);
      },
      [=](ChangeBuilder& b) {
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = EventKind::Verdict;
        e.date = date;
        e.hive = hive;
        e.colony = colony;
        e.method = std::string(apiary::code(verdict));
        e.detail = reason;
        b.put(e);
      });
}

}  // namespace outyard::session
