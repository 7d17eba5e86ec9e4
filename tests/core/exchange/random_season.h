// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/apiary/season.h"
#include "core/apiary/validate.h"
#include "core/base/random.h"

namespace outyard::exchange::testing {

/// A season of chance with rows in every table and a value in every column somewhere, sound by
/// apiary::checkSeason. Cells are filled from the schema, so that a new column is in at once.
class RandomSeason {
 public:
  RandomSeason(std::uint64_t seed, int hives) : m_random(seed), m_ids(seed) {
    grounds();
    for (int i = 0; i < hives; ++i) makeHive(i);
    for (const auto& h : std::vector<apiary::Hive>(m_hives)) journal(h);
    for (std::size_t i = 0; i + 1 < m_hives.size(); i += 4) joint(m_hives[i], m_hives[i + 1]);
    desk();
  }
  [[nodiscard]] const apiary::Season& season() const { return m_season; }

 private:
  using Value = apiary::Value;

  // --- one row from the schema ---------------------------------------------------------------
  std::string text() {
    static const std::vector<std::string> bits{
        "brood", " ", ",", "\"", "\n", "7", "K\xC3\xB6nigin", "\xE2\x80\x93", "=1+1", "#", ";"};
    std::string out = "x";
    for (std::uint64_t n = m_random.below(6); n > 0; --n) out += bits[m_random.below(bits.size())];
    return out + "y";
  }
  base::Date date() {
    return base::Date::fromYmd(2026, 1, 1).value().plusDays(static_cast<int>(m_random.below(200)));
  }
  std::string someKey(apiary::TableId table) {
    const auto rows = m_season.rows(table);
    return rows.empty() ? std::string{} : apiary::rowKey(rows[m_random.below(rows.size())]);
  }
  Value value(const apiary::TableSpec& table, const apiary::ColumnSpec& c) {
    // What a table is named by is new; elsewhere the same column refers to it.
    const bool own = c.key && c.name + "s" == table.name;
    if (own) return text() + m_ids.next().substr(0, 4);
    const auto reference = [&](apiary::TableId target) {
      const std::string key = someKey(target);
      return key.empty() ? Value{} : Value{key};
    };
    if (c.name == "yard" || c.name == "other_yard") return reference(apiary::TableId::Yards);
    if (c.name == "hive" || c.name == "other_hive" || c.name == "donor_hive") {
      return reference(apiary::TableId::Hives);
    }
    if (c.name == "queen") return reference(apiary::TableId::Queens);
    if (c.name == "task") return reference(apiary::TableId::Tasks);
    if (c.name == "plan") return reference(apiary::TableId::Plans);
    if (c.name == "visit") return reference(apiary::TableId::Visits);
    if (c.name == "sheet") return reference(apiary::TableId::Sheets);
    if (c.name == "frame_type") {
      const auto shipped = apiary::shippedFrameTypes();
      return std::string(shipped[m_random.below(shipped.size())]);
    }
    if (c.name == "entered_at") return std::string("2026-04-25T18:00:00Z");
    switch (c.type) {
      case apiary::ColumnType::Integer:
        return static_cast<std::int64_t>(c.min) +
               static_cast<std::int64_t>(
                   m_random.below(static_cast<std::uint64_t>(std::max(1.0, c.max - c.min + 1))));
      case apiary::ColumnType::Real:
        return chance(0.3)
                   ? std::max(c.min, std::floor(c.min + (c.max - c.min) * m_random.uniform()))
                   : c.min + (c.max - c.min) * m_random.uniform();
      case apiary::ColumnType::Date:
        return date().iso();
      case apiary::ColumnType::Time:
        return base::TimeOfDay::fromHm(static_cast<int>(m_random.below(24)),
                                       static_cast<int>(m_random.below(60)))
            ->text();
      case apiary::ColumnType::Flag:
        return static_cast<std::int64_t>(m_random.below(2));
      case apiary::ColumnType::Code:
        return std::string(c.codes[m_random.below(c.codes.size())]);
      case apiary::ColumnType::Text:
        break;
    }
    return text();
  }
  bool chance(double p) { return m_random.uniform() < p; }

  template <class T>
  T any() {
    const auto& spec = apiary::tableSpec(apiary::TableOf<T>::kId);
    apiary::Row row{spec.id, {}};
    for (const auto& c : spec.columns) {
      row.values.push_back(c.required || chance(0.6) ? value(spec, c) : Value{});
    }
    T out = apiary::fromRow<T>(row);
    if constexpr (std::is_base_of_v<apiary::RecordHead, T>) {
      out.record = base::RecordId(m_ids.next());
      out.supersedes.reset();
      out.isVoid = false;
    }
    return out;
  }
  template <class T>
  void put(const T& record) {
    apiary::Row row = apiary::toRow(record);
    const std::string key = apiary::rowKey(row);
    if (!m_season.find<T>(key)) {
      m_season.apply({{row.table, key, std::nullopt, std::move(row)}});
    }
  }
  /// A record, and now and then one that supersedes it or takes it back.
  template <class T>
  void keep(const T& record) {
    put(record);
    if (!chance(0.2)) return;
    T next = record;
    next.record = base::RecordId(m_ids.next());
    next.supersedes = record.record;
    next.isVoid = chance(0.5);
    put(next);
  }

  template <class T>
  void correct(const T& old, T next) {
    next.supersedes = old.record;
    next.record = base::RecordId(m_ids.next());
    put(next);
  }
  /// A record that was entered by mistake and withdrawn.
  template <class T>
  void takeBack(T never) {
    never.record = base::RecordId(m_ids.next());
    never.supersedes.reset();
    put(never);
    T gone = never;
    gone.isVoid = true;
    correct(never, gone);
  }

  // --- the season ----------------------------------------------------------------------------
  void grounds() {
    for (int i = 0; i < 4; ++i) put(any<apiary::Yard>());
    for (int i = 0; i < 8; ++i) put(any<apiary::Queen>());
    for (int i = 0; i < 12; ++i) put(any<apiary::FrameType>());
    for (int i = 0; i < 6; ++i) put(any<apiary::Visit>());
    for (int i = 0; i < 6; ++i) put(any<apiary::SheetRow>());
    for (int i = 0; i < 6; ++i) put(any<apiary::Plan>());
    for (int i = 0; i < 10; ++i) put(any<apiary::Stand>());
    for (int i = 0; i < 10; ++i) put(any<apiary::Feature>());
  }

  void makeHive(int n) {
    auto hive = any<apiary::Hive>();
    hive.hive = base::HiveId("H-" + std::to_string(n));
    hive.status.reset();
    std::vector<apiary::Place> places;
    for (int i = 0; i < 1 + static_cast<int>(m_random.below(2)); ++i) {
      auto p = any<apiary::Place>();
      p.hive = hive.hive;
      p.fromDate = base::Date::fromYmd(2024 + i, 5, 1).value();
      places.push_back(p);
    }
    const apiary::Place& now = places.back();
    hive.yard = now.yard;
    hive.xM = now.xM;
    hive.yM = now.yM;
    hive.entranceDeg = now.entranceDeg;
    hive.stand = now.stand;
    put(hive);
    for (const auto& p : places) put(p);
    correct(places.back(), places.back());
    takeBack(places.back());
    m_hives.push_back(hive);

    auto past = any<apiary::ColonyStay>();
    past.colony = base::ColonyId("old of " + hive.hive.str());
    past.hive = hive.hive;
    past.place = apiary::ColonyPlace::Main;
    past.fromDate = base::Date::fromYmd(2024, 5, 1).value();
    past.toDate = base::Date::fromYmd(2025, 3, 1).value();
    keep(past);
    auto stay = any<apiary::ColonyStay>();
    stay.colony = base::ColonyId("col-" + std::to_string(n));
    stay.hive = hive.hive;
    if (stay.place) stay.place = apiary::ColonyPlace::Main;
    stay.fromDate = base::Date::fromYmd(2025, 5, 1).value();
    stay.toDate.reset();
    put(stay);
    for (const int year : {2025, 2026}) {
      for (int k = 1; k <= 1 + static_cast<int>(m_random.below(3)); ++k) {
        auto b = any<apiary::Box>();
        b.hive = hive.hive;
        b.date = base::Date::fromYmd(year, 2, 1).value();
        b.position = k;
        if (b.colony) b.colony = stay.colony;
        put(b);
        if (chance(0.2)) {
          auto better = b;
          better.frames = 8;
          correct(b, better);
        }
        auto never = b;
        never.position = 11;
        if (k == 1 && chance(0.3)) takeBack(never);
      }
    }
  }

  [[nodiscard]] base::ColonyId colonyOf(const apiary::Hive& hive) const {
    return m_season.journal<apiary::ColonyStay>(hive.hive).back()->colony;
  }

  void journal(const apiary::Hive& hive) {
    const base::ColonyId colony = colonyOf(hive);
    const auto ours = [&](auto r) {
      r.hive = hive.hive;
      if constexpr (requires { r.colony; }) {
        if (r.colony) r.colony = colony;
      }
      return r;
    };
    for (int i = 0; i < 6; ++i) {
      const auto look = ours(any<apiary::Inspection>());
      keep(look);
      for (int k = 0; k < 4; ++k) {
        auto side = any<apiary::CombSide>();
        side.inspection = look.record;
        side.hive = hive.hive;
        side.date = look.date;
        if (side.colony) side.colony = colony;
        share(side);
        put(side);
      }
      auto seams = any<apiary::SeamCount>();
      seams.inspection = look.record;
      seams.hive = hive.hive;
      seams.date = look.date;
      put(seams);
    }
    for (int i = 0; i < 3; ++i) {
      auto wash = ours(any<apiary::Wash>());
      wash.mites = std::min(wash.mites, wash.bees);
      keep(wash);
    }
    for (int i = 0; i < 12; ++i) {
      auto e = ours(any<apiary::Event>());
      switch (e.kind) {
        case apiary::EventKind::Stacked:
        case apiary::EventKind::Unstacked:
        case apiary::EventKind::United:
        case apiary::EventKind::Split:
        case apiary::EventKind::Installed:
        case apiary::EventKind::Died:
        case apiary::EventKind::Moved:
        case apiary::EventKind::PlacesChanged:
        case apiary::EventKind::QueenIntroduced:
        case apiary::EventKind::QueenLost:
        case apiary::EventKind::QueenRemoved:
        case apiary::EventKind::Swarmed:
        case apiary::EventKind::Sold:
        case apiary::EventKind::Bought:
        case apiary::EventKind::Lost:
          continue;  // these come with their state rows, below
        default:
          keep(e);
      }
    }
    for (int i = 0; i < 2; ++i) keep(ours(any<apiary::FrameMove>()));
  }

  /// Contents of one side as shares that fit on it.
  static void share(apiary::CombSide& s) {
    for (auto* part : {&s.eggsPct, &s.openPct, &s.sealedPct, &s.dronePct, &s.pollenPct,
                       &s.nectarPct, &s.honeyPct, &s.emptyPct}) {
      if (*part) *part = **part / 9;
    }
    if (s.undrawnPct) s.undrawnPct = *s.undrawnPct / 9;
    const bool all = s.eggsPct && s.openPct && s.sealedPct && s.dronePct && s.pollenPct &&
                     s.nectarPct && s.honeyPct && s.emptyPct && s.undrawnPct;
    if (all) s.undrawnPct.reset();
  }

  /// A colony that dies, one that is set over another, one that moves: events with their rows.
  void joint(const apiary::Hive& weak, const apiary::Hive& donor) {
    const base::Date then = base::Date::fromYmd(2026, 9, 1).value();
    const base::ColonyId up = colonyOf(weak), below = colonyOf(donor);
    const auto event = [&](apiary::EventKind kind, const apiary::Hive& hive) {
      auto e = any<apiary::Event>();
      e.kind = kind;
      e.hive = hive.hive;
      e.date = then;
      e.colony.reset();
      e.otherHive.reset();
      e.otherYard.reset();
      e.otherColony.reset();
      return e;
    };
    auto stay = *m_season.stays(up).back();
    stay.supersedes = stay.record;
    stay.record = base::RecordId(m_ids.next());
    stay.toDate = then;
    put(stay);
    if (chance(0.4)) {
      auto died = event(apiary::EventKind::Died, weak);
      died.colony = up;
      put(died);
      return;
    }
    auto stacked = event(apiary::EventKind::Stacked, weak);
    stacked.colony = up;
    stacked.otherHive = donor.hive;
    stacked.otherColony = below;
    put(stacked);
    auto over = any<apiary::ColonyStay>();
    over.colony = up;
    over.hive = donor.hive;
    over.place = apiary::ColonyPlace::OverExcluder;
    over.fromDate = then;
    over.toDate.reset();
    put(over);
    for (int k = 1; k <= 2; ++k) {
      auto b = any<apiary::Box>();
      b.hive = donor.hive;
      b.date = then;
      b.position = k;
      b.colony = k == 1 ? below : up;
      put(b);
    }
    auto moved = event(apiary::EventKind::Moved, donor);
    moved.otherYard = base::YardId(someKey(apiary::TableId::Yards));
    put(moved);
    auto place = any<apiary::Place>();
    place.hive = donor.hive;
    place.yard = *moved.otherYard;
    place.fromDate = then;
    place.how = apiary::PlaceHow::Moved;
    put(place);
    apiary::Hive hive = donor;
    hive.yard = place.yard;
    hive.xM = place.xM;
    hive.yM = place.yM;
    hive.entranceDeg = place.entranceDeg;
    hive.stand = place.stand;
    m_season.apply(
        {{apiary::TableId::Hives, hive.hive.str(), apiary::toRow(donor), apiary::toRow(hive)}});
  }

  void desk() {
    for (int i = 0; i < 30; ++i) {
      auto t = any<apiary::Task>();
      t.task = base::TaskId("t" + std::to_string(i));
      if (t.earliest && t.latest && *t.latest < *t.earliest) std::swap(t.earliest, t.latest);
      put(t);
    }
    for (int i = 0; i < 60; ++i) {
      auto w = any<apiary::WeatherDay>();
      if (w.tminC > w.tmaxC) std::swap(w.tminC, w.tmaxC);
      put(w);
    }
    for (int i = 0; i < 20; ++i) put(any<apiary::Flow>());
    for (int i = 0; i < 20; ++i) put(any<apiary::GearCount>());
    for (int i = 0; i < 5; ++i) put(any<apiary::Setting>());
    for (int i = 0; i < 20; ++i) put(any<apiary::PlanRow>());
    for (int i = 0; i < 20; ++i) put(any<apiary::SheetLine>());
    // Records that name a task, now that there are some.
    for (const auto& hive : m_hives) {
      auto note = any<apiary::Event>();
      note.kind = apiary::EventKind::Note;
      note.hive = hive.hive;
      note.colony.reset();
      put(note);
      auto move = any<apiary::FrameMove>();
      move.hive = hive.hive;
      put(move);
    }
    if (chance(0.5)) put(apiary::Setting{"working_date", "2026-10-01", "chosen by hand"});
  }

  base::Random m_random;
  base::SeededIds m_ids;
  apiary::Season m_season;
  std::vector<apiary::Hive> m_hives;
};

}  // namespace outyard::exchange::testing
