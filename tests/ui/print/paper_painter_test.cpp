// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_painter.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "tests/core/sheet/sheet_fixture.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/paint_order.h"
#include "ui/print/painter.h"

namespace outyard::print {
namespace {

using sheet::Hatch;
using sheet::Ink;
namespace fixture = sheet::fixture;

using Box = PaintOrder::Box;
using Touching = PaintOrder::Touching;

std::size_t place(PaintOrder& order, std::size_t look, const Box& box,
                  Touching touching = Touching::Apart, std::size_t notBefore = 0) {
  return order.place(look, std::array<Box, 1>{box}, touching, notBefore);
}

TEST(PaintOrder, GathersWhatLooksAlikeAndLiesApart) {
  PaintOrder order(100, 100);
  EXPECT_EQ(place(order, 7, {0, 0, 10, 10}), 0U);
  EXPECT_EQ(place(order, 8, {2, 2, 4, 4}), 1U);
  EXPECT_EQ(place(order, 7, {20, 0, 30, 10}), 0U);
  EXPECT_EQ(place(order, 8, {22, 2, 24, 4}), 1U);
  EXPECT_EQ(order.batches(), 2U);
}

TEST(PaintOrder, WhatCoversStaysAboveWhatItCovers) {
  PaintOrder order(100, 100);
  EXPECT_EQ(place(order, 1, {0, 0, 10, 10}), 0U);
  EXPECT_EQ(place(order, 2, {5, 5, 15, 15}), 1U);
  // looks like the first, lies over the second
  EXPECT_EQ(place(order, 1, {12, 12, 20, 20}), 2U);
  // touches only the last: above it, beside nothing else of its look
  EXPECT_EQ(place(order, 2, {20, 20, 25, 25}), 3U);
  // far outside of the page, and larger than it
  EXPECT_EQ(place(order, 1, {-500, -500, -400, -400}), 0U);
  EXPECT_EQ(place(order, 2, {-1000, -1000, 1000, 1000}), 4U);
}

TEST(PaintOrder, OnlyWhatMayTouchSharesABatchWithItsNeighbour) {
  PaintOrder order(100, 100);
  EXPECT_EQ(place(order, 1, {0, 0, 10, 10}), 0U);
  EXPECT_EQ(place(order, 1, {10, 0, 20, 10}), 1U);
  EXPECT_EQ(place(order, 2, {50, 0, 60, 10}, Touching::Together), 2U);
  EXPECT_EQ(place(order, 2, {55, 0, 65, 10}, Touching::Together), 2U);
  EXPECT_EQ(place(order, 1, {90, 90, 91, 91}, Touching::Apart, 1), 1U);
}

/// Both painters on paper of so many dots to a millimetre.
struct Pair {
  QImage common, paper;
  /// Dots of either one that nothing near them in the other resembles. A dot of play: on a grid of
  /// dots letters of another size stand up to half a dot apart.
  [[nodiscard]] int different() const {
    return strangers(common, paper) + strangers(paper, common);
  }
  static int strangers(const QImage& in, const QImage& other) {
    int count = 0;
    for (int y = 1; y + 1 < in.height(); ++y) {
      for (int x = 1; x + 1 < in.width(); ++x) {
        const int grey = qGray(in.pixel(x, y));
        int nearest = 255;
        for (int dot = 0; dot < 9; ++dot) {
          const int there = qGray(other.pixel(x + dot % 3 - 1, y + dot / 3 - 1));
          nearest = std::min(nearest, std::abs(grey - there));
        }
        count += nearest > 64 ? 1 : 0;
      }
    }
    return count;
  }
  [[nodiscard]] int inked() const {
    int count = 0;
    for (int y = 0; y < common.height(); ++y) {
      for (int x = 0; x < common.width(); ++x) count += qGray(common.pixel(x, y)) < 128 ? 1 : 0;
    }
    return count;
  }
};

Pair painted(const sheet::SheetPage& page, double dots) {
  Pair pair;
  const QSize size(static_cast<int>(page.widthMm * dots), static_cast<int>(page.heightMm * dots));
  const QRectF target(0, 0, page.widthMm * dots, page.heightMm * dots);
  for (QImage* image : {&pair.common, &pair.paper}) {
    *image = QImage(size, QImage::Format_RGB32);
    image->fill(Qt::white);
    QPainter painter(image);
    if (image == &pair.common) {
      paintPage(painter, target, page, Palette::paper());
    } else {
      PaperPainter(painter, Palette::paper()).page(target, page);
    }
  }
  return pair;
}

sheet::Shapes everyShape() {
  sheet::Shapes shapes;
  const std::array<Hatch, 7> hatches{Hatch::None,       Hatch::Diagonal, Hatch::Dots,
                                     Hatch::Horizontal, Hatch::Cross,    Hatch::Dense,
                                     Hatch::Vertical};
  for (std::size_t i = 0; i < hatches.size(); ++i) {
    const double x = 4 + 13 * static_cast<double>(i);
    sheet::RectShape rect{{x, 4}, 10, 8, i % 2 == 0 ? 0.0 : 2.0};
    rect.fill = i % 3 == 0 ? Ink::Honey : Ink::Eggs;
    rect.hatch = hatches[i];
    // Dashes around corners are left out: on dots the common painter measures curves in
    // millimetres.
    rect.stroke = {Ink::WoodEdge, 0.5, i % 4 == 2};
    shapes.emplace_back(rect);
    sheet::RectShape frame{{x + 2, 6}, 10, 8, i % 2 == 0 ? 1.5 : 0.0};  // over the next one
    frame.stroke = {Ink::Line, 0.3};
    shapes.emplace_back(frame);
    sheet::PolygonShape polygon{{{x, 20}, {x + 9, 22}, {x + 6, 30}, {x + 1, 27}}};
    polygon.fill = i == 3 ? Ink::None : Ink::Wood;
    polygon.hatch = hatches[i];
    polygon.stroke = {i == 4 ? Ink::None : Ink::Text, 0.6};
    polygon.closed = i != 5;
    shapes.emplace_back(polygon);
    sheet::EllipseShape ellipse{{x + 5, 29}, 5, 3};  // over the polygon
    ellipse.fill = i % 2 == 0 ? Ink::SealedBrood : Ink::None;
    ellipse.stroke = {Ink::Text, 0.4, i == 2};
    shapes.emplace_back(ellipse);
    shapes.emplace_back(sheet::LineShape{{x, 40},
                                         {x + 11, 36 + 2 * static_cast<double>(i)},
                                         {Ink::Text, 0.2 + 0.1 * static_cast<double>(i), i > 3}});
  }
  const std::array<const char*, 4> words{
      "office: wedge 0123", "\u05DB\u05D5\u05D5\u05E8\u05EA \u05D4\u05D3\u05D1\u2026 12",
      "\u0645\u0644\u0627\u062D\u0638\u0629 \u0637\u0648\u064A\u0644\u0629", "Ga\u0308rten AVATAR"};
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (const sheet::Align align :
         {sheet::Align::Left, sheet::Align::Centre, sheet::Align::Right}) {
      sheet::TextShape text;
      text.text = words[i];
      text.sizeMm = 3 + static_cast<double>(i);
      text.align = align;
      text.bold = i % 2 == 1;
      text.italic = i == 3;
      text.at = {50, 52 + 8 * static_cast<double>(i)};
      if (align == sheet::Align::Left) text.at.x = 80;
      if (align == sheet::Align::Right) text.at.x = 20;
      shapes.emplace_back(text);
    }
  }
  sheet::RectShape over{{78, 48}, 8, 6};  // hides the beginning of a text
  over.fill = Ink::Paper;
  over.stroke.ink = Ink::None;
  shapes.emplace_back(over);
  return shapes;
}

TEST(PaperPainter, DrawsWhatTheCommonPainterDraws) {
  sheet::SheetPage page{160, 90, everyShape()};
  const Pair same = painted(page, 12);
  EXPECT_GT(same.inked(), 50000);
  EXPECT_LT(same.different(), same.inked() / 500);
  // and a hair that is missing is noticed
  Pair other = same;
  page.shapes.pop_back();
  other.common = painted(page, 12).common;
  EXPECT_GT(other.different(), same.inked() / 200);
}

TEST(PaperPainter, DrawsTheSheetAsTheCommonPainterDoes) {
  for (const bool longText : {false, true}) {
    fixture::Wish wish;
    wish.hives = 14;
    wish.boosts = 2;
    wish.longText = longText;
    wish.rightToLeft = longText;
    const FontMeasurer measurer;
    const fixture::MadeYard yard = fixture::makeYard(wish);
    auto input = yard.input(sheet::Paper::A4, measurer, adapt::wordsUtf8);
    input.largeType = longText;
    const sheet::YardSheet made = sheet::layoutJudgedSheet(input, yard.judgements);
    for (std::size_t i = 0; i < 2; ++i) {
      const sheet::SheetPage& page = made.document.pages.at(i);
      const Pair pair = painted(page, 6);
      EXPECT_GT(pair.inked(), 1000);
      EXPECT_LT(pair.different(), pair.inked() / 100);
    }
  }
}

TEST(PaperPainter, FitsThePageIntoItsTargetAndLeavesThePainterAsItWas) {
  sheet::SheetPage page{100, 50, {}};
  sheet::RectShape black{{0, 0}, 100, 50};
  black.fill = Ink::Text;
  page.shapes.emplace_back(black);
  QImage image(200, 200, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setPen(Qt::red);
  PaperPainter(painter, Palette::paper()).page(QRectF(20, 20, 100, 100), page);
  EXPECT_EQ(painter.pen().color(), QColor(Qt::red));
  EXPECT_TRUE(painter.transform().isIdentity());
  painter.end();
  EXPECT_EQ(qGray(image.pixel(21, 46)), 0);  // in the middle of its target, twice as wide as tall
  EXPECT_EQ(qGray(image.pixel(118, 93)), 0);
  EXPECT_EQ(qGray(image.pixel(70, 40)), 255);
  EXPECT_EQ(qGray(image.pixel(70, 100)), 255);
  EXPECT_EQ(qGray(image.pixel(125, 70)), 255);
}

}  // namespace
}  // namespace outyard::print
