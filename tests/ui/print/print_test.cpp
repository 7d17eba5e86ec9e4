// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QColor>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <algorithm>

#include "tests/core/sheet/sheet_checks.h"
#include "tests/core/sheet/sheet_fixture.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/painter.h"
#include "ui/print/pdf_writer.h"

namespace outyard::print {
namespace {

using sheet::Ink;
using sheet::Paper;
namespace fixture = sheet::fixture;

sheet::YardSheet laidOut(const fixture::Wish& wish, Paper paper) {
  const FontMeasurer measurer;
  const fixture::MadeYard y = fixture::makeYard(wish);
  return sheet::layoutJudgedSheet(y.input(paper, measurer, adapt::wordsUtf8), y.judgements);
}

QString pdfText(const QString& path) {
  const QString program = QStandardPaths::findExecutable(QStringLiteral("pdftotext"));
  if (program.isEmpty()) return {};
  QProcess run;
  run.start(program, {QStringLiteral("-layout"), path, QStringLiteral("-")});
  run.waitForFinished(30000);
  return QString::fromUtf8(run.readAllStandardOutput());
}

TEST(FontMeasurer, WidthGrowsWithTextSizeAndWeight) {
  const FontMeasurer m;
  EXPECT_EQ(m.widthMm("", 3, false), 0);
  EXPECT_NEAR(m.widthMm("TR-01", 6, false), 2 * m.widthMm("TR-01", 3, false), 1e-9);
  EXPECT_GT(m.widthMm("TR-01", 3, true), m.widthMm("TR-01", 3, false));
  EXPECT_GT(m.widthMm("TR-011", 3, false), m.widthMm("TR-01", 3, false));
  // the second answer comes from memory
  EXPECT_EQ(m.widthMm("TR-01", 3, true), m.widthMm("TR-01", 3, true));
}

TEST(FontMeasurer, PaintsAsWideAsItMeasures) {
  const FontMeasurer m;
  const std::string words = "brood combs 0123456789";
  const double size = 4, dots = 20;  // pixels to a millimetre
  QImage image(1600, 200, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.scale(dots, dots);
  sheet::TextShape text;
  text.at = {2, 6};
  text.text = words;
  text.sizeMm = size;
  paintShapes(painter, {text}, Palette::paper());
  painter.end();
  int left = image.width(), right = 0;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      if (qGray(image.pixel(x, y)) > 128) continue;
      left = std::min(left, x);
      right = std::max(right, x);
    }
  }
  EXPECT_NEAR((right - left) / dots, m.widthMm(words, size, false), 0.8);
}

TEST(SheetOnPaper, NothingOverlapsInTheRealFontAndWords) {
  const FontMeasurer m;
  for (const int hives : {1, 40, 300}) {
    for (const bool longText : {false, true}) {
      fixture::Wish wish;
      wish.hives = hives;
      wish.boosts = 4;
      wish.longText = longText;
      wish.rightToLeft = longText && hives == 40;
      const sheet::YardSheet made = laidOut(wish, hives == 40 ? Paper::Letter : Paper::A4);
      int number = 0;
      for (const sheet::SheetPage& page : made.document.pages) {
        ++number;
        EXPECT_EQ(fixture::textFault(page, m), "") << hives << " hives, page " << number;
        EXPECT_EQ(fixture::shapeFault(page), "") << hives << " hives, page " << number;
      }
    }
  }
}

TEST(SheetOnPaper, SixtyHivesFitSevenPages) {
  for (const Paper paper : {Paper::A4, Paper::Letter}) {
    fixture::Wish wish;
    wish.hives = 60;
    EXPECT_LE(laidOut(wish, paper).document.pages.size(), 7U);
    // with boosts seven pages of lines and cards, and the loose load list
    wish.boosts = 3;
    EXPECT_LE(laidOut(wish, paper).document.pages.size(), 8U);
  }
}

TEST(SheetOnPaper, EveryKeyHasWords) {
  fixture::Wish wish;
  wish.boosts = 4;
  const fixture::MadeYard y = fixture::makeYard(wish);
  const FontMeasurer m;
  for (const bool us : {false, true}) {
    sheet::YardSheetInput in = y.input(Paper::A4, m, [](const base::Message& message) {
      EXPECT_TRUE(adapt::hasWords(message.key)) << message.key;
      return adapt::wordsUtf8(message);
    });
    in.usUnits = us;
    layoutJudgedSheet(in, y.judgements);
  }
}

TEST(Pdf, HoldsThePagesTheNamesAndTheTitle) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("sheet.pdf"));
  fixture::Wish wish;
  wish.hives = 12;
  wish.boosts = 1;
  const sheet::YardSheet made = laidOut(wish, Paper::A4);
  const auto written = writePdf(made.document, path);
  ASSERT_TRUE(written.ok());
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray bytes = file.readAll();
  EXPECT_TRUE(bytes.startsWith("%PDF-"));
  EXPECT_TRUE(bytes.contains("/Title"));
  // vector and small: no page became a picture
  EXPECT_LT(bytes.size(), 600 * 1024);
  EXPECT_FALSE(bytes.contains("/Subtype /Image"));
  const QString text = pdfText(path);
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  for (const sheet::SheetLineInfo& line : made.lines) {
    EXPECT_TRUE(text.contains(QString::fromStdString(line.hive.str()))) << line.hive.str();
  }
  EXPECT_TRUE(text.contains(QStringLiteral("Tamarack Row")));
  EXPECT_TRUE(text.contains(QStringLiteral("26-0148")));
  EXPECT_EQ(text.count(QChar(u'\f')), static_cast<qsizetype>(made.document.pages.size()));
}

TEST(Pdf, KeepsTheOldFileWhenItCannotWrite) {
  fixture::Wish wish;
  wish.hives = 1;
  const sheet::YardSheet made = laidOut(wish, Paper::Letter);
  QTemporaryDir folder;
  const auto nowhere =
      writePdf(made.document, folder.filePath(QStringLiteral("missing/folder/sheet.pdf")));
  ASSERT_FALSE(nowhere.ok());
  EXPECT_TRUE(adapt::words(nowhere.failure()).contains(QStringLiteral("sheet.pdf")));
  const QString path = folder.filePath(QStringLiteral("old.pdf"));
  {
    QFile old(path);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("old");
  }
  EXPECT_FALSE(writePdf({}, path).ok());
  EXPECT_EQ(QFileInfo(path).size(), 3);
}

TEST(Grey, TextKeepsItsContrastOnACopier) {
  // WCAG 2.1, 1.4.3: 4.5 to 1. Measured on the rendered page: the darkest dot of each line of text
  // against the lightest around it.
  fixture::Wish wish;
  wish.boosts = 2;
  const FontMeasurer m;
  const sheet::YardSheet made = laidOut(wish, Paper::A4);
  constexpr double kDpi = 200;
  const double dots = kDpi / 25.4;
  int texts = 0;
  for (std::size_t p = 0; p < 3; ++p) {
    const sheet::SheetPage& page = made.document.pages[p];
    const QImage image = renderPage(page, kDpi).convertToFormat(QImage::Format_Grayscale8);
    for (const fixture::TextBox& box : fixture::textBoxes(page, m)) {
      int dark = 255, light = 0;
      for (int y = static_cast<int>(box.y0 * dots); y < box.y1 * dots; ++y) {
        for (int x = static_cast<int>(box.x0 * dots); x < box.x1 * dots; ++x) {
          if (!image.valid(x, y)) continue;
          const int grey = qGray(image.pixel(x, y));
          dark = std::min(dark, grey);
          light = std::max(light, grey);
        }
      }
      EXPECT_GE(contrast(QColor(dark, dark, dark), QColor(light, light, light)), 4.5)
          << box.text->text;
      ++texts;
    }
  }
  EXPECT_GT(texts, 300);
}

TEST(Palettes, TextStandsOutOnEveryGround) {
  for (const Palette* palette : {&Palette::paper(), &Palette::light(), &Palette::dark()}) {
    for (const Ink text : {Ink::Text, Ink::FaintText, Ink::Accent, Ink::Warning, Ink::Alarm}) {
      for (const Ink ground : {Ink::Paper, Ink::Ground}) {
        EXPECT_GE(contrast(palette->colour(text), palette->colour(ground)), 4.5)
            << "ink " << static_cast<int>(text) << " on " << static_cast<int>(ground);
      }
    }
    // WCAG 2.1, 1.4.11: 3 to 1 for what must be seen without being read
    for (const Ink mark : {Ink::Bees, Ink::BeesExpected, Ink::WoodEdge, Ink::Line}) {
      EXPECT_GE(contrast(palette->colour(mark), palette->colour(Ink::Paper)), 3.0)
          << "ink " << static_cast<int>(mark);
    }
    // hatches stand out from what they lie on
    for (const Ink fill : {Ink::Honey, Ink::Pollen, Ink::OpenBrood, Ink::Eggs, Ink::DroneBrood}) {
      EXPECT_GE(contrast(palette->hatch(fill), palette->colour(fill)), 2.5)
          << "ink " << static_cast<int>(fill);
    }
  }
}

TEST(Palettes, PaperIsGreyOnly) {
  for (std::size_t i = 1; i < Palette::kInks; ++i) {
    const QColor c = Palette::paper().colour(static_cast<Ink>(i));
    EXPECT_EQ(c.red(), c.green());
    EXPECT_EQ(c.green(), c.blue());
  }
}

TEST(Palettes, FollowTheBackground) {
  EXPECT_EQ(&Palette::forBackground(Qt::white), &Palette::light());
  EXPECT_EQ(&Palette::forBackground(QColor(30, 30, 30)), &Palette::dark());
}

TEST(Contrast, AgreesWithTheStandardsExtremes) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);  // WCAG 2.1, definition
  EXPECT_NEAR(contrast(Qt::white, Qt::white), 1, 1e-9);
}

TEST(PaintShapes, LeavesThePainterAsItWas) {
  QImage image(100, 100, QImage::Format_RGB32);
  QPainter painter(&image);
  painter.setPen(Qt::red);
  painter.setBrush(Qt::green);
  const QTransform before = painter.transform();
  sheet::MarkInput mark;
  mark.entranceDeg = 200;
  mark.seams = 5;
  paintShapes(painter, hiveMark(mark), Palette::light());
  EXPECT_EQ(painter.pen().color(), QColor(Qt::red));
  EXPECT_EQ(painter.brush().color(), QColor(Qt::green));
  EXPECT_EQ(painter.transform(), before);
}

/// Dark dots in a square of 20 mm that is filled with the hatch, and outside of it.
std::pair<int, int> hatchDots(sheet::Hatch hatch, bool turned) {
  QImage image(400, 400, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.scale(10, 10);
  sheet::RectShape square{{-10, -10}, 20, 20};
  square.fill = Ink::Eggs;
  square.hatch = hatch;
  square.stroke.ink = Ink::None;
  paintShapes(painter, sheet::transformed({square}, {20, 20}, turned ? 360 - 90 : 0),
              Palette::paper());
  painter.end();
  int in = 0, out = 0;
  for (int y = 0; y < 400; ++y) {
    for (int x = 0; x < 400; ++x) {
      if (qGray(image.pixel(x, y)) > 200) continue;
      const bool inside = x >= 99 && x <= 300 && y >= 99 && y <= 300;
      (inside ? in : out) += 1;
    }
  }
  return {in, out};
}

TEST(PaintShapes, HatchesFillTheirShapeAndNoMore) {
  using sheet::Hatch;
  for (const Hatch hatch : {Hatch::Diagonal, Hatch::Dots, Hatch::Horizontal, Hatch::Cross,
                            Hatch::Dense, Hatch::Vertical}) {
    for (const bool turned : {false, true}) {
      const auto [in, out] = hatchDots(hatch, turned);
      EXPECT_GT(in, 1500) << static_cast<int>(hatch);
      EXPECT_EQ(out, 0) << static_cast<int>(hatch) << (turned ? " turned" : "");
    }
  }
  EXPECT_EQ(hatchDots(Hatch::None, false).first, 0);
}

TEST(RenderPage, HasThePapersProportions) {
  const sheet::SheetPage page{215.9, 279.4, {}};
  const QImage image = renderPage(page, 100);
  EXPECT_EQ(image.size(), QSize(850, 1100));
  EXPECT_EQ(image.pixelColor(5, 5), QColor(Qt::white));
}

}  // namespace
}  // namespace outyard::print
