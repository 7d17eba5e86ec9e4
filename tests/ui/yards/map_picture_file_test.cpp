// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/yards/map_file.h"

namespace outyard::yards {
namespace {

using tests::Desk;

int reddish(const QString& file) {
  const QImage image(file);
  EXPECT_FALSE(image.isNull());
  int n = 0;
  for (int y = 0; y < image.height(); y += 4) {
    for (int x = 0; x < image.width(); x += 4) {
      const QColor c = image.pixelColor(x, y);
      n += c.red() > c.green() + 60 && c.red() > c.blue() + 60;
    }
  }
  return n;
}

TEST(MapPictureFile, ThePictureOfTheGroundIsSavedWithTheMap) {
  Desk desk(tests::smallSeason());
  QDir(desk.folder.path()).mkdir(QStringLiteral("pictures"));
  QImage ground(40, 20, QImage::Format_RGB32);
  ground.fill(QColor(220, 20, 20));
  ASSERT_TRUE(ground.save(desk.folder.filePath(QStringLiteral("pictures/ground.png"))));
  const base::YardId yard{"TR"};
  const QString file = desk.folder.filePath(QStringLiteral("map.png"));
  ASSERT_EQ(writeMap(desk.hub, yard, file), QString());
  EXPECT_EQ(reddish(file), 0);

  apiary::Feature f;
  f.feature = "ground";
  f.yard = yard;
  f.kind = apiary::FeatureKind::Picture;
  f.xM = 0;
  f.yM = 0;
  f.x2M = 18;
  f.y2M = 9;
  f.file = "ground.png";
  ASSERT_TRUE(desk.hub.execute(session::addFeature(f)));
  ASSERT_EQ(writeMap(desk.hub, yard, file), QString());
  const int shown = reddish(file);
  EXPECT_GT(shown, 1000);
  // SVG and PDF carry it too, and are larger for it.
  for (const char* name : {"map.svg", "map.pdf"}) {
    const QString other = desk.folder.filePath(QLatin1String(name));
    ASSERT_EQ(writeMap(desk.hub, yard, other), QString());
    QFile bytes(other);
    ASSERT_TRUE(bytes.open(QIODevice::ReadOnly));
    const QByteArray all = bytes.readAll();
    EXPECT_TRUE(all.contains("image/png") || all.contains("/Subtype /Image")) << name;
  }
  // A lost file leaves the plain ground.
  ASSERT_TRUE(QFile::remove(desk.folder.filePath(QStringLiteral("pictures/ground.png"))));
  ASSERT_EQ(writeMap(desk.hub, yard, file), QString());
  EXPECT_EQ(reddish(file), 0);
}

}  // namespace
}  // namespace outyard::yards
