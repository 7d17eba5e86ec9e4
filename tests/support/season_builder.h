// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/apiary/season.h"
#include "core/apiary/state.h"
#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/base/result.h"
#include "core/session/store.h"

/// Small invented seasons for tests: header-only, no Qt.
namespace outyard::tests {

inline base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

/// Writes rows straight into a season, with their state rows, without the checks of the verbs.
class SeasonBuilder {
 public:
  explicit SeasonBuilder(std::uint64_t seed = 1) : m_ids(seed) {}

  template <class T>
  SeasonBuilder& put(const T& row) {
    const apiary::Row after = apiary::toRow(row);
    const std::string key = apiary::rowKey(after);
    m_season.apply({{after.table, key, m_season.row(after.table, key), after}});
    return *this;
  }
  [[nodiscard]] apiary::RecordHead head() {
    apiary::RecordHead h;
    h.record = base::RecordId{m_ids.next()};
    h.enteredAt = "2026-01-01T08:00:00Z";
    return h;
  }

  SeasonBuilder& yard(const std::string& id) {
    apiary::Yard y;
    y.yard = base::YardId{id};
    y.name = "Yard " + id;
    y.latitude = 44.0;
    y.longitude = -72.5;
    y.widthM = 40;
    y.lengthM = 20;
    return put(y);
  }
  /// A hive with a place and a stack of chambers (ten deep frames each), without bees.
  SeasonBuilder& hive(const std::string& id, const std::string& yard, double xM = 1, double yM = 1,
                      int chambers = 1, const char* from = "2025-04-01") {
    apiary::Hive h;
    h.hive = base::HiveId{id};
    h.yard = base::YardId{yard};
    h.xM = xM;
    h.yM = yM;
    h.entranceDeg = 180;
    put(h);
    apiary::Place p;
    static_cast<apiary::RecordHead&>(p) = head();
    p.hive = h.hive;
    p.yard = h.yard;
    p.xM = xM;
    p.yM = yM;
    p.entranceDeg = 180;
    p.fromDate = day(from);
    p.how = apiary::PlaceHow::Placed;
    put(p);
    for (int i = 1; i <= chambers; ++i) box(id, from, i);
    return *this;
  }
  SeasonBuilder& box(const std::string& hive, const char* date, int position,
                     apiary::BoxRole role = apiary::BoxRole::Chamber,
                     std::optional<std::string> colony = std::nullopt,
                     std::optional<apiary::Beneath> beneath = std::nullopt) {
    apiary::Box b;
    static_cast<apiary::RecordHead&>(b) = head();
    b.hive = base::HiveId{hive};
    b.date = day(date);
    b.position = position;
    b.frameType = "langstroth_deep";
    b.frames = 10;
    b.role = role;
    if (colony) b.colony = base::ColonyId{*colony};
    b.beneath = beneath;
    return put(b);
  }
  SeasonBuilder& queen(const std::string& id, int year = 2025, const std::string& line = "A") {
    apiary::Queen q;
    q.queen = base::QueenId{id};
    q.line = line;
    q.year = year;
    return put(q);
  }
  SeasonBuilder& colony(const std::string& hive, const std::string& colony,
                        const char* from = "2025-04-01",
                        apiary::ColonyPlace place = apiary::ColonyPlace::Main,
                        std::optional<std::string> queen = std::nullopt) {
    apiary::ColonyStay s;
    static_cast<apiary::RecordHead&>(s) = head();
    s.colony = base::ColonyId{colony};
    s.hive = base::HiveId{hive};
    s.place = place;
    if (queen) s.queen = base::QueenId{*queen};
    s.fromDate = day(from);
    return put(s);
  }
  /// A hive in which a colony of its own name lives.
  SeasonBuilder& livingHive(const std::string& id, const std::string& yard, double xM = 1,
                            double yM = 1, int chambers = 1) {
    return hive(id, yard, xM, yM, chambers).colony(id, id);
  }
  /// A look; change what it saw through the function.
  template <class F>
  SeasonBuilder& inspection(const std::string& hive, const char* date, F fill) {
    apiary::Inspection i;
    static_cast<apiary::RecordHead&>(i) = head();
    i.hive = base::HiveId{hive};
    i.date = day(date);
    fill(i);
    return put(i);
  }

  [[nodiscard]] const apiary::Season& season() const { return m_season; }
  [[nodiscard]] apiary::Season take() { return std::move(m_season); }

 private:
  apiary::Season m_season;
  base::SeededIds m_ids;
};

/// Two yards: TR with six living hives (TR-01 to TR-04 one chamber, TR-05 and TR-06 two) and an
/// empty one (TR-07), MB with two living hives and one that was never settled (MB-03).
inline apiary::Season smallSeason() {
  SeasonBuilder b;
  b.yard("TR").yard("MB");
  b.queen("Q1").queen("Q2", 2024, "B");
  for (int i = 1; i <= 6; ++i) {
    b.hive("TR-0" + std::to_string(i), "TR", 2.0 * i, 3, i > 4 ? 2 : 1);
  }
  b.colony("TR-01", "TR-01", "2025-04-01", apiary::ColonyPlace::Main, "Q1");
  b.colony("TR-02", "TR-02", "2025-04-01", apiary::ColonyPlace::Main, "Q2");
  for (int i = 3; i <= 6; ++i) b.colony("TR-0" + std::to_string(i), "TR-0" + std::to_string(i));
  b.hive("TR-07", "TR", 16, 3);
  b.livingHive("MB-01", "MB", 2, 2).livingHive("MB-02", "MB", 4, 2);
  b.hive("MB-03", "MB", 6, 2);
  return b.take();
}

/// A store in memory that can be told to refuse.
class MemoryStore : public session::SeasonStore {
 public:
  explicit MemoryStore(apiary::Season season) : m_season(std::move(season)) {}
  base::Result<apiary::Season> load() override { return m_season; }
  base::Result<void> commit(const apiary::ChangeList& changes) override {
    if (refuse) return base::fail(base::message("test.refused"));
    ++commits;
    m_season.apply(changes);
    return {};
  }
  [[nodiscard]] const apiary::Season& kept() const { return m_season; }

  bool refuse = false;
  int commits = 0;

 private:
  apiary::Season m_season;
};

/// All rows of all tables, for comparing one season with another.
inline std::vector<apiary::Row> allRows(const apiary::Season& season) {
  std::vector<apiary::Row> out;
  for (const auto& spec : apiary::tableSpecs()) {
    const auto rows = season.rows(spec.id);
    out.insert(out.end(), rows.begin(), rows.end());
  }
  return out;
}

/// The keys of a failure's messages.
template <class T>
std::vector<std::string> keysOf(const base::Result<T>& result) {
  std::vector<std::string> out;
  if (!result.ok()) {
    for (const auto& m : result.failure().messages) out.push_back(m.key);
  }
  return out;
}

}  // namespace outyard::tests
