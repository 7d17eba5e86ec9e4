// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/sheet/map_drawing.h"
#include "tests/support/season_builder.h"

namespace outyard::sheet {
namespace {

struct MapPictures : testing::Test {
  MapPictures() {
    b.yard("TR");
    b.hive("TR-01", "TR", 2, 2).hive("TR-02", "TR", 12, 8);
  }
  void picture(const char* file, double x, double y, double x2, double y2) {
    apiary::Feature f;
    f.feature = file;
    f.yard = base::YardId{"TR"};
    f.kind = apiary::FeatureKind::Picture;
    f.xM = x;
    f.yM = y;
    f.x2M = x2;
    f.y2M = y2;
    f.file = file;
    b.put(f);
  }
  MapDrawing draw() {
    const auto day = tests::day("2026-04-25");
    hives = apiary::yardOn(b.season(), base::YardId{"TR"}, day);
    MapInput input;
    input.season = &b.season();
    input.yard = base::YardId{"TR"};
    input.day = day;
    input.hives = &hives;
    input.judgements = &judgements;
    input.word = [](const base::Message& m) { return m.key; };
    input.text = &measure;
    return mapDrawing(input);
  }
  struct Even : TextMeasurer {
    [[nodiscard]] double widthMm(const std::string& text, double size, bool) const override {
      return 0.5 * size * static_cast<double>(text.size());
    }
  } measure;
  tests::SeasonBuilder b;
  std::vector<apiary::HiveState> hives;
  std::vector<strength::Judgement> judgements;
};

TEST_F(MapPictures, LieToScaleUnderTheHives) {
  picture("ground.png", 0, 0, 20, 10);
  const MapDrawing map = draw();
  ASSERT_EQ(map.pictures.size(), 1U);
  const auto& p = map.pictures[0];
  EXPECT_EQ(p.file, "ground.png");
  EXPECT_NEAR(p.widthMm, 20 * map.mmPerMetre, 1e-9);
  EXPECT_NEAR(p.heightMm, 10 * map.mmPerMetre, 1e-9);
  // TR-01 stands 2 m east and 2 m north of its lower left corner.
  for (const auto& spot : map.spots) {
    if (spot.hives.front() != base::HiveId{"TR-01"}) continue;
    EXPECT_NEAR(spot.centre.x, p.corner.x + 2 * map.mmPerMetre, 1e-6);
    EXPECT_NEAR(spot.centre.y, p.corner.y + p.heightMm - 2 * map.mmPerMetre, 1e-6);
  }
  EXPECT_EQ(map.groundShapes, 1U);
  EXPECT_GT(map.shapes.size(), map.groundShapes);
}

TEST_F(MapPictures, CornersMayStandInAnyOrderAndPicturesNeverChangeTheScale) {
  const double before = draw().mmPerMetre;
  picture("a.png", 20, 10, 0, 0);
  picture("far.png", 4000, 4000, 4010, 4010);
  picture("huge.png", -500, -500, 500, 500);
  const MapDrawing map = draw();
  EXPECT_EQ(map.mmPerMetre, before);
  ASSERT_EQ(map.pictures.size(), 2U);  // the far one does not show
  for (const auto& p : map.pictures) {
    EXPECT_GT(p.widthMm, 0);
    EXPECT_GT(p.heightMm, 0);
  }
}

TEST_F(MapPictures, AYardWithoutPlacesHasNone) {
  tests::SeasonBuilder empty;
  empty.yard("TR");
  b = empty;
  picture("ground.png", 0, 0, 20, 10);
  EXPECT_TRUE(draw().pictures.empty());
}

}  // namespace
}  // namespace outyard::sheet
