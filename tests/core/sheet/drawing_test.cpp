// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

#include "core/sheet/map_drawing.h"
#include "core/sheet/marks.h"
#include "core/sheet/walking_order.h"
#include "tests/core/sheet/sheet_fixture.h"

namespace outyard::sheet {
namespace {

struct Bounds {
  double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
  void reach(Point p) {
    x0 = std::min(x0, p.x);
    x1 = std::max(x1, p.x);
    y0 = std::min(y0, p.y);
    y1 = std::max(y1, p.y);
  }
};

Bounds boundsOf(const Shapes& shapes) {
  Bounds b;
  for (const Shape& shape : shapes) {
    if (const auto* l = std::get_if<LineShape>(&shape)) {
      b.reach(l->from);
      b.reach(l->to);
    } else if (const auto* r = std::get_if<RectShape>(&shape)) {
      b.reach(r->corner);
      b.reach({r->corner.x + r->widthMm, r->corner.y + r->heightMm});
    } else if (const auto* p = std::get_if<PolygonShape>(&shape)) {
      for (const Point& at : p->points) b.reach(at);
    } else if (const auto* e = std::get_if<EllipseShape>(&shape)) {
      b.reach({e->centre.x - e->rxMm, e->centre.y - e->ryMm});
      b.reach({e->centre.x + e->rxMm, e->centre.y + e->ryMm});
    }
  }
  return b;
}

int filled(const Shapes& shapes, Ink ink) {
  int n = 0;
  for (const Shape& shape : shapes) {
    if (const auto* r = std::get_if<RectShape>(&shape)) n += r->fill == ink ? 1 : 0;
    if (const auto* p = std::get_if<PolygonShape>(&shape)) n += p->fill == ink ? 1 : 0;
  }
  return n;
}

int stroked(const Shapes& shapes, Ink ink) {
  int n = 0;
  for (const Shape& shape : shapes) {
    if (const auto* r = std::get_if<RectShape>(&shape)) n += r->stroke.ink == ink ? 1 : 0;
  }
  return n;
}

MarkInput upright() {
  MarkInput in;
  in.entranceDeg = 180;
  return in;
}

TEST(Transformed, ScalesThenTurnsClockwiseThenMoves) {
  const Shapes line{LineShape{{1, 0}, {2, 0}, {Ink::Line, 0.2}}};
  const Shapes moved = transformed(line, {10, 20}, 90, 3);
  const auto& l = std::get<LineShape>(moved.front());
  // y points downwards: a clockwise quarter takes right to down
  EXPECT_NEAR(l.from.x, 10, 1e-12);
  EXPECT_NEAR(l.from.y, 23, 1e-12);
  EXPECT_NEAR(l.to.y, 26, 1e-12);
  EXPECT_NEAR(l.stroke.widthMm, 0.6, 1e-12);
}

TEST(Transformed, FourQuartersComeBackAndTextStaysUpright) {
  Shapes shapes{RectShape{{1, 2}, 3, 4, 0, Ink::Wood}};
  TextShape text;
  text.at = {5, 0};
  text.text = "1";
  shapes.emplace_back(text);
  Shapes turned = shapes;
  for (int i = 0; i < 4; ++i) turned = transformed(turned, {0, 0}, 90);
  const Bounds a = boundsOf(shapes), b = boundsOf(turned);
  EXPECT_NEAR(a.x0, b.x0, 1e-9);
  EXPECT_NEAR(a.y1, b.y1, 1e-9);
  const auto& back = std::get<TextShape>(turned.back());
  EXPECT_NEAR(back.at.x, 5, 1e-9);
  EXPECT_EQ(back.text, "1");
  EXPECT_EQ(back.sizeMm, text.sizeMm);
}

TEST(HiveMark, FillsAsManySeamsAsWereSeen) {
  for (int seams = 0; seams <= 10; ++seams) {
    MarkInput in = upright();
    in.seams = seams;
    EXPECT_EQ(filled(hiveMark(in), Ink::Bees), seams);
  }
  MarkInput in = upright();
  in.seams = 4.5;  // the fifth is drawn, shorter
  EXPECT_EQ(filled(hiveMark(in), Ink::Bees), 5);
  in.seams = 30;
  EXPECT_EQ(filled(hiveMark(in), Ink::Bees), 10);
}

TEST(HiveMark, SeamsSitWhereTheClusterIs) {
  MarkInput in = upright();
  in.seams = 2;
  const auto middle = [](const MarkInput& mark) {
    double sum = 0;
    int n = 0;
    for (const Shape& shape : hiveMark(mark)) {
      const auto* r = std::get_if<RectShape>(&shape);
      if (r && r->fill == Ink::Bees) {
        sum += r->corner.x + r->widthMm / 2;
        ++n;
      }
    }
    return sum / n;
  };
  in.clusterAt = 0;
  EXPECT_LT(middle(in), -3);
  in.clusterAt = 1;
  EXPECT_GT(middle(in), 3);
  in.clusterAt = 0.5;
  EXPECT_LT(std::abs(middle(in)), 0.8);
}

TEST(HiveMark, NotCountedIsNotZero) {
  MarkInput unknown = upright(), none = upright();
  none.seams = 0;
  EXPECT_NE(hiveMark(unknown).size(), hiveMark(none).size());
  EXPECT_EQ(filled(hiveMark(none), Ink::Bees), 0);
}

TEST(HiveMark, EveryStateDiffersWithoutColour) {
  // compared by the shapes alone, with all inks made one
  std::set<std::string> seen;
  const auto signature = [](const MarkInput& in) {
    std::string text;
    for (const Shape& shape : hiveMark(in)) {
      text += std::to_string(shape.index());
      if (const auto* r = std::get_if<RectShape>(&shape)) {
        text += r->stroke.dashed ? 'd' : 's';
        text += std::to_string(std::lround(r->heightMm * 100));
        text += std::to_string(std::lround(r->stroke.widthMm * 100));
      }
      text += ';';
    }
    return text;
  };
  MarkInput in = upright();
  in.seams = 6;
  seen.insert(signature(in));
  in.expectedSeams = 8;
  seen.insert(signature(in));
  in.expectedSeams.reset();
  in.seenThisYear = false;
  seen.insert(signature(in));
  in.seenThisYear = true;
  in.dead = true;
  seen.insert(signature(in));
  in.dead = false;
  in.empty = true;
  seen.insert(signature(in));
  in.empty = false;
  in.stacked = true;
  seen.insert(signature(in));
  in.stacked = false;
  in.wrapped = true;
  seen.insert(signature(in));
  EXPECT_EQ(seen.size(), 7U);
}

TEST(HiveMark, ExpectedIsOutlinedAndStaysInTheBox) {
  MarkInput in = upright();
  in.seams = 5;
  in.expectedSeams = 7;
  const Shapes mark = hiveMark(in);
  EXPECT_EQ(stroked(mark, Ink::BeesExpected), 7);
  const Bounds b = boundsOf(mark);
  EXPECT_GE(b.x0, -kMarkWidthMm / 2);
  EXPECT_LE(b.x1, kMarkWidthMm / 2);
  EXPECT_GE(b.y0, -kMarkHeightMm / 2 - 1e-9);
  EXPECT_LE(b.y1, kMarkHeightMm / 2 + 1e-9);
}

TEST(HiveMark, TurnsWithTheEntrance) {
  MarkInput in = upright();
  const auto notch = [](const MarkInput& mark) {
    for (const Shape& shape : hiveMark(mark)) {
      const auto* p = std::get_if<PolygonShape>(&shape);
      if (!p || p->points.size() != 4 || p->fill != Ink::Text) continue;
      return p->points[2];
    }
    return Point{};
  };
  EXPECT_GT(notch(in).y, 4);  // south is down
  in.entranceDeg = 270;
  EXPECT_LT(notch(in).x, -4);  // west is left
  in.entranceDeg = 0;
  EXPECT_LT(notch(in).y, -4);
}

TEST(MarkInputFrom, TakesSeamsBoxAndBeeYear) {
  fixture::MadeYard y = fixture::makeYard({});
  const auto hive = apiary::hiveOn(y.season, base::HiveId("TR-02"), y.date);
  MarkInput in = markInput(y.season, hive, y.judgements, y.date);
  EXPECT_EQ(in.frames, 10);
  EXPECT_EQ(in.seams, 9);
  EXPECT_TRUE(in.seenThisYear);
  EXPECT_FALSE(in.stacked);
  // the same look is last autumn's from the next New Year on
  EXPECT_FALSE(markInput(y.season, hive, {}, fixture::day("2027-01-05")).seenThisYear);
  const auto two = apiary::hiveOn(y.season, base::HiveId("TR-10"), y.date);
  in = markInput(y.season, two, y.judgements, y.date);
  EXPECT_TRUE(in.stacked);
  EXPECT_EQ(in.upperSeams, 2.5);
}

TEST(MarkLetters, StandInAFixedOrderAndOnlyOnce) {
  apiary::HiveState hive;
  hive.hive = base::HiveId("A");
  hive.status = apiary::HiveStatus::Live;
  hive.colonies.resize(2);
  strength::Judgement a, b;
  a.hive = b.hive = hive.hive;
  a.verdict = apiary::VerdictCode::SmallSound;
  b.verdict = apiary::VerdictCode::Queenless;
  EXPECT_EQ(markLetters(hive, {a, b}), "QB2");
  b.verdict = apiary::VerdictCode::SmallSound;
  EXPECT_EQ(markLetters(hive, {a, b}), "B2");
  hive.colonies.resize(1);
  a.verdict = apiary::VerdictCode::Fair;
  EXPECT_EQ(markLetters(hive, {a}), "");
  const std::map<apiary::VerdictCode, std::string> letters{
      {apiary::VerdictCode::Sick, "S"},          {apiary::VerdictCode::QueenSuspect, "Q"},
      {apiary::VerdictCode::DroneLayer, "Q"},    {apiary::VerdictCode::LayingWorkers, "Q"},
      {apiary::VerdictCode::NotEnoughSeen, "N"}, {apiary::VerdictCode::TooEarly, "N"},
      {apiary::VerdictCode::TooSmall, "W"},      {apiary::VerdictCode::Strong, "R"}};
  for (const auto& [verdict, letter] : letters) {
    a.verdict = verdict;
    EXPECT_EQ(markLetters(hive, {a}), letter);
  }
}

double sum(const CombFace& f) {
  return f.eggs + f.open + f.sealed + f.drone + f.pollen + f.nectar + f.honey + f.empty + f.undrawn;
}

TEST(CombFaceOf, EighthsOfAWholeFaceSumToEight) {
  for (const double total : {99.0, 100.0, 101.0}) {
    apiary::CombSide side;
    side.honeyPct = 33;
    side.pollenPct = 7;
    side.sealedPct = 41;
    side.emptyPct = total - 81;
    EXPECT_NEAR(sum(combFace(side)), 8, 1e-9) << total;
  }
}

TEST(CombFaceOf, WhatWasNotRecordedStaysUnknown) {
  apiary::CombSide side;
  EXPECT_FALSE(combFace(side).known);
  side.honeyPct = 50;
  const CombFace face = combFace(side);
  EXPECT_TRUE(face.known);
  EXPECT_NEAR(sum(face), 4, 1e-12);
  side.honeyPct = 0;  // zero was looked at
  EXPECT_TRUE(combFace(side).known);
}

TEST(CombFaceShapes, EveryCellIsUsedAndFoodIsAbove) {
  apiary::CombSide side;
  side.honeyPct = 30;
  side.pollenPct = 10;
  side.sealedPct = 45;
  side.openPct = 15;
  const Shapes shapes = combFaceShapes(combFace(side), 9, 18, 2, 4);
  double honeyLowest = 0, broodHighest = 18;
  int cells = 0;
  for (const Shape& shape : shapes) {
    const auto& r = std::get<RectShape>(shape);
    if (r.fill == Ink::None) continue;
    ++cells;
    if (r.fill == Ink::Honey) honeyLowest = std::max(honeyLowest, r.corner.y);
    if (r.fill == Ink::SealedBrood) broodHighest = std::min(broodHighest, r.corner.y);
  }
  EXPECT_EQ(cells, 8);
  EXPECT_LT(honeyLowest, broodHighest);
  // 2.4, 0.8, 3.6, 1.2 eighths: by largest remainder 2, 1, 4, 1
  EXPECT_EQ(filled(shapes, Ink::Honey), 2);
  EXPECT_EQ(filled(shapes, Ink::Pollen), 1);
  EXPECT_EQ(filled(shapes, Ink::SealedBrood), 4);
  EXPECT_EQ(filled(shapes, Ink::OpenBrood), 1);
}

TEST(StackDrawingOf, DrawsBoxesBottomUpAndBlankWhereNothingWasSeen) {
  fixture::MadeYard y = fixture::makeYard({});
  const auto hive = apiary::hiveOn(y.season, base::HiveId("TR-10"), y.date);
  const StackDrawing d = stackDrawing(y.season, hive, y.date);
  ASSERT_EQ(d.boxes.size(), 3U);
  EXPECT_GT(d.boxes[0].corner.y, d.boxes[1].corner.y);
  EXPECT_GT(d.boxes[1].corner.y, d.boxes[2].corner.y);
  EXPECT_LE(boundsOf(d.shapes).y1, 1e-9);
  EXPECT_NEAR(-boundsOf(d.shapes).y0, d.heightMm, 1e-9);
  EXPECT_EQ(filled(d.shapes, Ink::SealedBrood), 0);
  EXPECT_EQ(filled(d.shapes, Ink::Comb), 0);
}

TEST(StackDrawingOf, ShowsTheCombsOfTheLastLook) {
  fixture::MadeYard y = fixture::makeYard({});
  const base::HiveId id("TR-02");
  auto hive = apiary::hiveOn(y.season, id, y.date);
  apiary::CombSide side;
  side.inspection = hive.colonies.front().lastInspection->record;
  side.hive = id;
  side.date = hive.colonies.front().lastInspection->date;
  side.box = 2;
  side.slot = 4;
  side.side = apiary::FrameSide::B;
  side.sealedPct = 100;
  y.season.apply({fixture::added(side)});
  hive = apiary::hiveOn(y.season, id, y.date);
  const StackDrawing d = stackDrawing(y.season, hive, y.date);
  ASSERT_EQ(d.boxes.size(), 2U);
  EXPECT_EQ(filled(d.shapes, Ink::SealedBrood), 8);
  for (const Shape& shape : d.shapes) {
    const auto* r = std::get_if<RectShape>(&shape);
    if (!r || r->fill != Ink::SealedBrood) continue;
    EXPECT_GT(r->corner.y, d.boxes[1].corner.y);
    EXPECT_LT(r->corner.y, d.boxes[1].corner.y + d.boxes[1].heightMm);
  }
  // a stack set up anew since then is not drawn with the old combs
  apiary::Box box;
  box.record = base::RecordId("later");
  box.hive = id;
  box.date = fixture::day("2026-04-28");
  box.frameType = "dadant_brood";
  box.frames = 11;
  apiary::Box upper = box;
  upper.record = base::RecordId("later2");
  upper.position = 2;
  y.season.apply({fixture::added(box), fixture::added(upper)});
  hive = apiary::hiveOn(y.season, id, y.date);
  EXPECT_EQ(filled(stackDrawing(y.season, hive, y.date).shapes, Ink::SealedBrood), 0);
}

MapDrawing mapOf(const fixture::MadeYard& y, const std::vector<apiary::HiveState>& hives,
                 double width, double height) {
  static const fixture::PlainMeasurer kMeasurer;
  MapInput in;
  in.season = &y.season;
  in.yard = y.yard;
  in.day = y.date;
  in.hives = &hives;
  in.judgements = &y.judgements;
  int n = 0;
  for (const auto& h : hives) in.labels[h.hive] = std::to_string(++n);
  in.widthMm = width;
  in.heightMm = height;
  in.word = fixture::plainWord;
  in.text = &kMeasurer;
  return mapDrawing(in);
}

TEST(Map, EveryHiveIsThereOnceAndInside) {
  for (const int count : {1, 12, 60, 300}) {
    fixture::Wish wish;
    wish.hives = count;
    const fixture::MadeYard y = fixture::makeYard(wish);
    const auto hives = apiary::yardOn(y.season, y.yard, y.date);
    const MapDrawing map = mapOf(y, hives, 116, 95);
    std::set<base::HiveId> seen;
    for (const auto& spot : map.spots) {
      EXPECT_GE(spot.centre.x, 0);
      EXPECT_LE(spot.centre.x, 116);
      EXPECT_GE(spot.centre.y, 0);
      EXPECT_LE(spot.centre.y, 95);
      for (const auto& hive : spot.hives) EXPECT_TRUE(seen.insert(hive).second);
    }
    EXPECT_EQ(seen.size(), static_cast<std::size_t>(count));
    const Bounds b = boundsOf(map.shapes);
    EXPECT_GE(b.x0, -1e-9);
    EXPECT_LE(b.x1, 116 + 1e-9);
    EXPECT_GE(b.y0, -1e-9);
    EXPECT_LE(b.y1, 95 + 1e-9);
  }
}

TEST(Map, SingleMarksKeepTheirDistanceAndNearlyTheirPlace) {
  fixture::Wish wish;
  wish.hives = 12;
  const fixture::MadeYard y = fixture::makeYard(wish);
  const auto hives = apiary::yardOn(y.season, y.yard, y.date);
  const MapDrawing map = mapOf(y, hives, 116, 95);
  EXPECT_EQ(map.spots.size(), 12U);
  for (std::size_t i = 0; i < map.spots.size(); ++i) {
    for (std::size_t k = i + 1; k < map.spots.size(); ++k) {
      const double dx = std::abs(map.spots[i].centre.x - map.spots[k].centre.x);
      const double dy = std::abs(map.spots[i].centre.y - map.spots[k].centre.y);
      EXPECT_TRUE(dx >= kMapMarkMm || dy >= kMapMarkMm);
    }
  }
  // west is left, south is down
  std::map<base::HiveId, Point> at;
  for (const auto& spot : map.spots) at[spot.hives.front()] = spot.centre;
  EXPECT_LT(at[base::HiveId("TR-01")].x, at[base::HiveId("TR-02")].x);
  EXPECT_GT(at[base::HiveId("TR-01")].y, at[base::HiveId("TR-05")].y);
}

TEST(Map, HivesWithoutAPlaceAreNamed) {
  apiary::HiveState hive;
  hive.hive = base::HiveId("X");
  const fixture::MadeYard y = fixture::makeYard({});
  const MapDrawing map = mapOf(y, {hive}, 100, 80);
  ASSERT_EQ(map.unplaced.size(), 1U);
  EXPECT_EQ(map.unplaced.front(), hive.hive);
  EXPECT_TRUE(map.spots.empty());
}

TEST(WalkingOrder, NumbersInNamesCountAsNumbers) {
  EXPECT_TRUE(naturalLess("TR-2", "TR-10"));
  EXPECT_FALSE(naturalLess("TR-10", "TR-2"));
  EXPECT_TRUE(naturalLess("A9", "B1"));
  EXPECT_TRUE(naturalLess("A", "A1"));
  EXPECT_FALSE(naturalLess("A1", "A1"));
  EXPECT_NE(naturalLess("A1", "A01"), naturalLess("A01", "A1"));
}

TEST(WalkingOrder, DeadFirstSuspectsLastAndAShortWay) {
  fixture::Wish wish;
  wish.dead = 2;
  const fixture::MadeYard y = fixture::makeYard(wish);
  const auto hives = apiary::yardOn(y.season, y.yard, y.date);
  const auto walk = walkingOrder(y.season, y.yard, hives, y.judgements);
  ASSERT_EQ(walk.size(), hives.size());
  EXPECT_EQ(walk[0]->status, apiary::HiveStatus::Dead);
  EXPECT_EQ(walk[1]->status, apiary::HiveStatus::Dead);
  EXPECT_EQ(walk.back()->hive, y.sick.front());
  double way = 0;
  for (std::size_t i = 3; i + 1 < walk.size(); ++i) {
    way += std::hypot(*walk[i]->xM - *walk[i - 1]->xM, *walk[i]->yM - *walk[i - 1]->yM);
  }
  // rows of hives 2.6 m apart and 3.1 m between rows: going along them is about 110 m
  EXPECT_LT(way, 37 * 3.6);
}

}  // namespace
}  // namespace outyard::sheet
