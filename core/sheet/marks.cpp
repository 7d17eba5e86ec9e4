// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/marks.h"

#include <algorithm>
#include <cmath>

namespace outyard::sheet {

namespace {

using apiary::VerdictCode;

constexpr double kNotchMm = 1.1;  ///< how far the entrance board stands out of the box
constexpr double kTierGapMm = 0.9;

/// One box from above: `frames` seams side by side between the walls.
struct Tier {
  double top = 0, height = 0;
  std::optional<double> seams, expected;
  double width = 0;  ///< of the band of what is expected
};

/// The outline of what is expected: firm while the band is narrow, then thinner and broken, so
/// that it fades without a colour.
Stroke expectedStroke(double width) {
  if (width <= 0.5) return {Ink::BeesExpected, 0.34};
  if (width <= 1.0) return {Ink::BeesExpected, 0.22};
  return {Ink::FaintText, 0.16, true};
}

struct Slots {
  int first = 0;
  double count = 0;
};

/// Which seams are full when the cluster of `seams` sits at `at`.
Slots slotsOf(double seams, double at, int frames) {
  Slots s;
  s.count = std::clamp(seams, 0.0, static_cast<double>(frames));
  const int whole = static_cast<int>(std::ceil(s.count - 1e-9));
  const double centre = std::clamp(at, 0.0, 1.0) * (frames - 1);
  s.first = static_cast<int>(std::lround(centre - (whole - 1) / 2.0));
  s.first = std::clamp(s.first, 0, std::max(0, frames - whole));
  return s;
}

/// A cluster is a ball: its outer seams are shorter than the middle ones.
double lengthShare(double index, double count) {
  if (count <= 1) return 0.62;
  const double t = (index - (count - 1) / 2) / (count / 2);
  return 1.0 - 0.34 * t * t;
}

void drawTier(Shapes& out, const MarkInput& in, const Tier& tier, bool faded) {
  const double half = kMarkWidthMm / 2;
  const bool dashed = in.empty || !in.seenThisYear;
  RectShape box{{-half + 0.15, tier.top}, kMarkWidthMm - 0.3, tier.height, 0.5};
  box.fill = in.dead || in.empty ? Ink::Paper : Ink::Wood;
  box.stroke = {in.dead || in.empty ? Ink::Line : Ink::WoodEdge, in.wrapped ? 0.6 : 0.3, dashed};
  out.emplace_back(box);
  if (!tier.seams && !tier.expected && !in.dead && !in.empty) {
    // Not counted is not zero: the lid is on, no seam can be seen.
    RectShape lid{{-half + 1.1, tier.top + 0.9}, kMarkWidthMm - 2.2, tier.height - 1.8, 0.3};
    lid.stroke = {Ink::WoodEdge, 0.15};
    out.emplace_back(lid);
    return;
  }
  const int frames = std::max(1, in.frames);
  const double inner = kMarkWidthMm - 1.5;
  const double pitch = inner / frames;
  const double full = tier.height - 1.1;
  const double middle = tier.top + tier.height / 2;
  const double left = -inner / 2;
  const auto slot = [&](int index, double share, double width) {
    const double height = full * share;
    return RectShape{{left + pitch * (index + 0.5) - width / 2, middle - height / 2},
                     width,
                     height,
                     std::min(0.25, width / 2)};
  };
  const bool fist = tier.seams && *tier.seams > 0;
  const Slots seen = fist ? slotsOf(*tier.seams, in.clusterAt, frames) : Slots{};
  const Slots wide = tier.expected ? slotsOf(*tier.expected, in.clusterAt, frames) : Slots{};
  for (int i = 0; i < frames; ++i) {
    RectShape bare = slot(i, 1.0, pitch * 0.56);
    bare.fill = Ink::Paper;
    bare.stroke = {Ink::FaintLine, 0.1};
    if (!in.dead && !in.empty) out.emplace_back(bare);
    const double inWide = i - wide.first;
    if (tier.expected && inWide >= 0 && inWide < wide.count && !in.dead) {
      // A little wider than the filled seams, so that it shows around them where bees grow fewer.
      RectShape outline = slot(i, lengthShare(inWide, wide.count), pitch * 0.76);
      outline.stroke = expectedStroke(tier.width);
      out.emplace_back(outline);
    }
    const double inSeen = i - seen.first;
    if (fist && inSeen >= 0 && inSeen < seen.count && !in.dead && !in.empty) {
      const double whole = std::ceil(seen.count - 1e-9);
      // A seam begun but not full is drawn shorter, at the edge of the cluster.
      const double part = std::min(1.0, seen.count - inSeen);
      RectShape bees = slot(i, lengthShare(inSeen, whole) * std::max(0.3, part), pitch * 0.62);
      bees.fill = faded ? Ink::None : Ink::Bees;
      bees.stroke = {faded ? Ink::BeesExpected : Ink::Bees, faded ? 0.18 : 0.0, faded};
      if (!faded) bees.stroke.ink = Ink::None;
      out.emplace_back(bees);
    }
  }
}

/// First day of the bee year that holds the day: 1 January north, 1 July south of the equator
/// (what was seen before it was seen in the last autumn or earlier).
base::Date beeYearStart(const apiary::Yard* yard, base::Date day) {
  const bool south = yard && yard->latitude && *yard->latitude < 0;
  if (!south) return base::Date::fromYmd(day.year(), 1, 1).value();
  const base::Date july = base::Date::fromYmd(day.year(), 7, 1).value();
  return day >= july ? july : base::Date::fromYmd(day.year() - 1, 7, 1).value();
}

std::optional<double> seamsOf(const apiary::ColonyState& colony,
                              const std::vector<strength::Judgement>& judgements) {
  for (const strength::Judgement& j : judgements) {
    if (j.colony == colony.colony && j.strength && j.strength->seams) return j.strength->seams;
  }
  if (colony.lastInspection) return colony.lastInspection->seams;
  return std::nullopt;
}

/// Centre of the bees over the slots of the last counted combs; 0.5 when none were counted.
double clusterPlace(const apiary::Season& season, const apiary::ColonyState& colony, int frames) {
  if (!colony.lastInspection || frames < 2) return 0.5;
  double bees = 0, moment = 0;
  for (const apiary::CombSide* side : season.combSides(colony.lastInspection->record)) {
    const double weight = side->beesPct.value_or(0);
    const double slot = side->slot - 1 + (side->side == apiary::FrameSide::A ? -0.25 : 0.25);
    bees += weight;
    moment += weight * slot;
  }
  return bees > 0 ? std::clamp(moment / bees / (frames - 1), 0.0, 1.0) : 0.5;
}

char letterOf(VerdictCode verdict) {
  switch (verdict) {
    case VerdictCode::Sick:
      return 'S';
    case VerdictCode::QueenSuspect:
    case VerdictCode::Queenless:
    case VerdictCode::DroneLayer:
    case VerdictCode::LayingWorkers:
      return 'Q';
    case VerdictCode::SmallSound:
      return 'B';
    case VerdictCode::TooEarly:
    case VerdictCode::NotEnoughSeen:
      return 'N';
    case VerdictCode::TooSmall:
      return 'W';
    case VerdictCode::Strong:
      return 'R';
    case VerdictCode::Fair:
      break;
  }
  return 0;
}

}  // namespace

Shapes hiveMark(const MarkInput& input) {
  Shapes out;
  const double top = -kMarkHeightMm / 2;
  const double bottom = kMarkHeightMm / 2 - kNotchMm;
  // The entrance board first: the box covers its upper edge.
  PolygonShape notch;
  notch.points = {{-1.9, bottom - 0.1},
                  {1.9, bottom - 0.1},
                  {1.2, bottom + kNotchMm},
                  {-1.2, bottom + kNotchMm}};
  notch.fill = input.empty ? Ink::Paper : Ink::Text;
  notch.stroke = {Ink::Line, 0.15};
  if (input.stacked && !input.dead && !input.empty) {
    const double tier = (bottom - top - kTierGapMm) / 2;
    out.emplace_back(notch);
    drawTier(out, input,
             {top, tier, input.upperSeams, input.upperExpected, input.upperExpectedWidth},
             !input.seenThisYear);
    drawTier(out, input,
             {bottom - tier, tier, input.seams, input.expectedSeams, input.expectedWidth},
             !input.seenThisYear);
    const double bar = top + tier + kTierGapMm / 2;
    const double half = kMarkWidthMm / 2;
    out.emplace_back(LineShape{{-half, bar}, {half, bar}, {Ink::Text, 0.5}});
  } else {
    out.emplace_back(notch);
    drawTier(out, input, {top, bottom - top, input.seams, input.expectedSeams, input.expectedWidth},
             !input.seenThisYear);
  }
  if (input.dead) {
    const double half = kMarkWidthMm / 2 - 0.9;
    const Stroke stroke{Ink::Line, 0.4};
    out.emplace_back(LineShape{{-half, top + 0.7}, {half, bottom - 0.7}, stroke});
    out.emplace_back(LineShape{{half, top + 0.7}, {-half, bottom - 0.7}, stroke});
  }
  const double turn = input.entranceDeg - 180;
  return turn == 0 ? out : transformed(out, {0, 0}, turn);
}

MarkInput markInput(const apiary::Season& season, const apiary::HiveState& hive,
                    const std::vector<strength::Judgement>& judgements, base::Date day) {
  MarkInput in;
  in.dead = hive.status == apiary::HiveStatus::Dead;
  in.empty = hive.status == apiary::HiveStatus::Empty;
  in.entranceDeg = hive.entranceDeg.value_or(180);
  in.wrapped = hive.wrapped;
  for (const apiary::BoxState& box : hive.boxes) {
    if (box.role == apiary::BoxRole::Chamber && box.frames > 0) {
      in.frames = box.frames;
      break;
    }
  }
  if (hive.colonies.empty()) return in;
  const apiary::ColonyState& main = hive.colonies.front();
  in.seams = seamsOf(main, judgements);
  in.clusterAt = clusterPlace(season, main, in.frames);
  in.stacked = hive.stacked();
  if (in.stacked) in.upperSeams = seamsOf(hive.colonies[1], judgements);
  const base::Date start = beeYearStart(season.yard(hive.yard), day);
  in.seenThisYear =
      std::any_of(hive.colonies.begin(), hive.colonies.end(), [&](const apiary::ColonyState& c) {
        return c.lastInspection && c.lastInspection->date >= start;
      });
  return in;
}

void addExpected(MarkInput& mark, const apiary::HiveState& hive, const ExpectedLooks& expected) {
  if (hive.status != apiary::HiveStatus::Live || hive.colonies.empty()) return;
  const auto main = expected.find(hive.colonies.front().colony);
  if (main != expected.end()) {
    mark.expectedSeams = main->second.seams.median;
    mark.expectedWidth = main->second.width;
  }
  if (!hive.stacked()) return;
  const auto upper = expected.find(hive.colonies[1].colony);
  if (upper == expected.end()) return;
  mark.upperExpected = upper->second.seams.median;
  mark.upperExpectedWidth = upper->second.width;
}

std::string markLetters(const apiary::HiveState& hive,
                        const std::vector<strength::Judgement>& judgements) {
  std::string present;
  for (const strength::Judgement& j : judgements) {
    if (j.hive != hive.hive || hive.status != apiary::HiveStatus::Live) continue;
    if (const char letter = letterOf(j.verdict)) present += letter;
  }
  if (hive.stacked()) present += '2';
  std::string letters;
  for (const char letter : std::string("SQB2NWR")) {
    if (present.find(letter) != std::string::npos) letters += letter;
  }
  return letters;
}

}  // namespace outyard::sheet
