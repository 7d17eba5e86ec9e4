// SPDX-License-Identifier: GPL-3.0-or-later
// Hives that were not on the list of a sheet: who they are, where they stand, whence they came.
#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/base/text.h"
#include "core/session/sheet_entry_parts.h"
#include "core/strength/frame_table.h"

namespace outyard::session {

using apiary::ColonyOrigin;
using apiary::HiveState;
using base::message;

namespace {

constexpr double kApartM = 1;      ///< from hive to hive on the drawing
constexpr double kTooNearM = 0.8;  ///< two hives nearer than this stand in one place
constexpr double kEdgeM = 0.5;     ///< kept free at the edge of the drawn ground
constexpr const char* kUsualBox = "langstroth_deep";

/// The hive that the number means: as written, else the one that differs in case and accents only.
std::optional<HiveId> knownHive(const apiary::Season& season, const std::string& number) {
  if (season.hive(HiveId{number})) return HiveId{number};
  const std::string wanted = base::folded(number);
  for (const auto& [key, hive] : season.table<apiary::Hive>()) {
    if (base::folded(key) == wanted) return hive.hive;
  }
  return std::nullopt;
}

bool saysSomething(const EntryLine& line) {
  return std::any_of(line.typed.begin(), line.typed.begin() + kColonyColumns,
                     [](const std::string& text) { return !text.empty(); });
}
/// Something that only bees can be asked for.
bool saysOfBees(const EntryLine& line) {
  for (std::size_t i = 0; i < kColonyColumns; ++i) {
    const auto column = kAllEntryColumns[i];
    if (takesWords(column) || line.typed[i].empty()) continue;
    if (column != EntryColumn::Seams || line.typed[i] != ".") return true;
  }
  return false;
}

std::optional<ColonyOrigin> originOf(const std::string& key) {
  if (key == "s") return ColonyOrigin::Swarm;
  if (key == "b") return ColonyOrigin::Bought;
  if (key == "p") return ColonyOrigin::Split;
  return std::nullopt;
}

/// A colony of the hive's name; where that name is taken, with the next free number.
ColonyId freeColony(const apiary::Season& season, const HiveId& hive) {
  std::string name = hive.str();
  for (int n = 2; !season.stays(ColonyId{name}).empty(); ++n) {
    name = hive.str() + '-' + std::to_string(n);
  }
  return ColonyId{name};
}

/// Reads the number and the origin of one blank line.
class NewcomerReader {
 public:
  NewcomerReader(const apiary::Season& season, const EntrySheet& sheet, const EntryLine& line)
      : m_season(season), m_sheet(sheet), m_line(line), m_day(sheet.head.date) {}

  NewcomerRead read() {
    const std::string& number = m_line.at(EntryColumn::Hive);
    if (number.empty())
      return fault(EntryColumn::Hive, message("session.entry.number_missing", m_line.line));
    const auto known = knownHive(m_season, number);
    if (const EntryLine* other = sameOn(known.value_or(HiveId{number}))) {
      return fault(EntryColumn::Hive,
                   message("session.entry.number_on_sheet", m_line.line, number, other->line));
    }
    return known ? ofKnown(*known) : ofNew(number);
  }

 private:
  static NewcomerRead fault(EntryColumn column, base::Message what) {
    return {std::nullopt, CellFault{0, column, std::move(what)}};
  }
  NewcomerRead origin(base::Message what) { return fault(EntryColumn::Origin, std::move(what)); }
  [[nodiscard]] const std::string& key() const { return m_line.at(EntryColumn::Origin); }

  /// The line of this sheet that is for the same hive. Bees that came into one that stood empty or
  /// dead may be told on a blank line too.
  [[nodiscard]] const EntryLine* sameOn(const HiveId& hive) const {
    for (const EntryLine& other : m_sheet.lines) {
      if (other.line == m_line.line) continue;
      if (other.kind == LineKind::Blank && !other.entered) {
        if (other.line > m_line.line || other.blank()) continue;
        const std::string number = cleaned(other).at(EntryColumn::Hive);
        if (base::folded(number) == base::folded(hive.str())) return &other;
        continue;
      }
      const bool told =
          other.kind == LineKind::Colony || cleaned(other).at(EntryColumn::BeesIn) == "y";
      if (other.hive == hive && (told || key().empty())) return &other;
    }
    return nullptr;
  }

  NewcomerRead ofKnown(const HiveId& hive) {
    Newcomer who;
    who.line = m_line.line;
    who.hive = hive;
    const auto places = m_season.journal<apiary::Place>(hive);
    if (!places.empty() && m_day < places.front()->fromDate) {
      return fault(EntryColumn::Hive, message("session.before_first_place", hive.str(),
                                              places.front()->fromDate.iso(), m_day.iso()));
    }
    const HiveState state = apiary::hiveOn(m_season, hive, m_day);
    if (!state.present) {
      return fault(EntryColumn::Hive, message("session.hive_gone", hive.str(), m_day.iso()));
    }
    if (state.colonies.size() > 1) {
      return fault(EntryColumn::Hive,
                   message("session.entry.two_colonies", m_line.line, hive.str()));
    }
    const bool here = state.yard == m_sheet.yard;
    if (!here && key() != "m") {
      return origin(
          message("session.entry.stands_elsewhere", m_line.line, hive.str(), state.yard.str()));
    }
    if (here && key() == "m") {
      return origin(message("session.entry.stands_here", m_line.line, hive.str()));
    }
    if (!here) {
      Spot spot;
      spot.hive = hive;
      who.movedTo = spot;
    }
    if (!state.colonies.empty()) {
      if (originOf(key())) {
        return origin(message("session.entry.lives_there", m_line.line, hive.str(),
                              state.colonies.front().colony.str()));
      }
      who.colony = state.colonies.front().colony;
    } else if (const auto origin = originOf(key())) {
      who.comes = true;
      who.origin = origin;
      who.colony = freeColony(m_season, hive);
    } else if (saysOfBees(m_line) &&
               (!m_season.journal<apiary::ColonyStay>(hive).empty() || !here)) {
      return here ? this->origin(message("session.entry.bees_whence", m_line.line, hive.str()))
                  : this->origin(message("session.entry.moved_empty", m_line.line, hive.str()));
    }
    if (!who.comes && !who.movedTo && !saysSomething(m_line)) {
      return fault(EntryColumn::Hive,
                   message("session.entry.number_alone", m_line.line, hive.str()));
    }
    return {std::move(who), std::nullopt};
  }

  NewcomerRead ofNew(const std::string& number) {
    if (key() == "m") return origin(message("session.entry.moved_unknown", m_line.line, number));
    const auto from = originOf(key());
    if (!from) return origin(message("session.entry.new_whence", m_line.line, number));
    Newcomer who;
    who.line = m_line.line;
    who.hive = HiveId{number};
    who.comes = true;
    who.origin = from;
    who.colony = freeColony(m_season, who.hive);
    apiary::Hive hive;
    hive.hive = who.hive;
    hive.yard = m_sheet.yard;
    who.made = std::move(hive);
    who.boxes = usualBoxes();
    return {std::move(who), std::nullopt};
  }

  /// One chamber as most hives of the yard stand on, else of the season.
  [[nodiscard]] std::vector<BoxState> usualBoxes() const {
    std::map<std::string, int> here, anywhere;
    for (const HiveState& hive : apiary::yardOn(m_season, m_sheet.yard, m_day)) {
      if (!hive.boxes.empty()) ++here[hive.boxes.front().frameType];
    }
    if (here.empty()) {
      for (const auto& [key, box] : m_season.table<apiary::Box>()) {
        if (box.position == 1) ++anywhere[box.frameType];
      }
    }
    const auto& used = here.empty() ? anywhere : here;
    const auto most = std::max_element(
        used.begin(), used.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    BoxState box;
    box.frameType = most == used.end() ? kUsualBox : most->first;
    if (const auto figures = strength::figuresFor(m_season, box.frameType)) {
      box.frames = figures->framesPerBox;
    }
    return {box};
  }

  const apiary::Season& m_season;
  const EntrySheet& m_sheet;
  const EntryLine& m_line;
  Date m_day;
};

struct Spots {
  std::vector<std::pair<double, double>> taken;
  double lastX = 0, lastY = kApartM;
  std::optional<double> entranceDeg;

  [[nodiscard]] bool free(double x, double y) const {
    return std::none_of(taken.begin(), taken.end(), [&](const auto& at) {
      return std::hypot(at.first - x, at.second - y) < kTooNearM;
    });
  }
};

}  // namespace

NewcomerRead readNewcomer(const apiary::Season& season, const EntrySheet& sheet,
                          const EntryLine& line) {
  NewcomerRead read = NewcomerReader(season, sheet, line).read();
  if (read.fault) read.fault->line = line.line;
  return read;
}

Newcomer movedIn(const apiary::Season& season, const EntryLine& line) {
  Newcomer who;
  who.line = line.line;
  who.hive = line.hive;
  who.comes = true;
  who.origin = ColonyOrigin::Swarm;
  who.colony = freeColony(season, line.hive);
  return who;
}

void placeNewcomers(const apiary::Season& season, const EntrySheet& sheet, EntryReading& out) {
  Spots spots;
  for (const HiveState& hive : apiary::yardOn(season, sheet.yard, sheet.head.date)) {
    if (!hive.xM || !hive.yM) continue;
    spots.taken.emplace_back(*hive.xM, *hive.yM);
    if (spots.taken.size() == 1 || *hive.xM > spots.lastX) {
      spots.lastX = *hive.xM;
      spots.lastY = *hive.yM;
      spots.entranceDeg = hive.entranceDeg;
    }
  }
  const apiary::Yard* yard = season.yard(sheet.yard);
  const auto wide = yard ? yard->widthM : std::nullopt;
  // Beside the last hive of the row; where the ground ends there, in a row of its own behind it.
  const auto next = [&] {
    double x = spots.lastX + kApartM, y = spots.lastY;
    while (!spots.free(x, y) || (wide && x > *wide - kEdgeM)) {
      x += kApartM;
      if (!wide || x <= *wide - kEdgeM) continue;
      x = kApartM;
      y += kApartM;
    }
    spots.taken.emplace_back(x, y);
    spots.lastX = x;
    spots.lastY = y;
    return std::pair(x, y);
  };
  for (Newcomer& who : out.newcomers) {
    if (who.movedTo) {
      std::tie(who.movedTo->xM, who.movedTo->yM) = next();
      out.report.movedIn.push_back(who.hive);
    }
    if (!who.made) continue;
    const auto [x, y] = next();
    who.made->xM = x;
    who.made->yM = y;
    who.made->entranceDeg = spots.entranceDeg;
    out.report.newHives.push_back(who.hive);
  }
}

}  // namespace outyard::session
