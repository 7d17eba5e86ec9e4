// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/bee_looks.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

#include "core/base/text.h"

namespace outyard::strength {
namespace {

using Table = std::vector<std::map<std::string, std::string>>;

/// Reads a plain table (no quotes in these files).
Table tableOf(const char* name) {
  std::ifstream in(std::string(OUTYARD_SOURCE_DIR "/tests/data/") + name);
  Table out;
  std::vector<std::string> head;
  for (std::string line; std::getline(in, line);) {
    std::vector<std::string> cells;
    std::istringstream row(line + ",");
    for (std::string cell; std::getline(row, cell, ',');) cells.push_back(cell);
    if (head.empty()) {
      head = cells;
      continue;
    }
    std::map<std::string, std::string> r;
    for (std::size_t i = 0; i < head.size() && i < cells.size(); ++i) r[head[i]] = cells[i];
    out.push_back(r);
  }
  return out;
}

struct Row {
  double full, counted;
  std::string yard;
};
std::vector<Row> rowsOf(const char* file, const char* full, const char* counted) {
  std::vector<Row> out;
  for (auto& r : tableOf(file)) {
    const auto x = base::parseNumber(r[full]);
    const auto y = base::parseNumber(r[counted]);
    if (x && y) out.push_back({*x, *y, r["yard"]});
  }
  return out;
}
std::vector<std::pair<double, double>> pairs(const std::vector<Row>& rows) {
  std::vector<std::pair<double, double>> out;
  for (const Row& r : rows) out.emplace_back(r.full, r.counted);
  return out;
}

struct Misfit {
  double mean = 0, sd = 0, within = 0;  ///< of log(observed / read back); share in the 80 % band
};
template <class F>
Misfit misfit(const std::vector<Row>& rows, F readBack, double sigma) {
  Misfit m;
  for (const Row& r : rows) {
    const double miss = std::log(r.full / readBack(r.counted));
    m.mean += miss;
    m.sd += miss * miss;
    m.within += std::fabs(miss) <= 1.2816 * sigma ? 1 : 0;
  }
  const auto n = static_cast<double>(rows.size());
  m.mean /= n;
  m.sd = std::sqrt(m.sd / n - m.mean * m.mean);
  m.within /= n;
  return m;
}

// Aurell et al. 2024 (tests/data, trimmed), February 2021: the lines as published with the set.
TEST(QuickCountFit, FebruaryLines) {
  const LineFit any =
      fitLine(pairs(rowsOf("autumn_2020.csv", "frames_bees", "frames_with_any_bees")));
  EXPECT_EQ(any.n, 37);
  EXPECT_NEAR(any.intercept, 2.83, 0.005);
  EXPECT_NEAR(any.slope, 1.08, 0.005);
  EXPECT_NEAR(any.intercept, kQuickFebruary.intercept, 0.01);
  EXPECT_NEAR(any.slope, kQuickFebruary.slope, 0.01);
  EXPECT_NEAR(any.residual, kQuickFebruary.residual, 0.01);
  const LineFit top = fitLine(pairs(rowsOf("autumn_2020.csv", "frames_bees", "top_of_box_count")));
  EXPECT_NEAR(top.intercept, 1.54, 0.005);
  EXPECT_NEAR(top.slope, 0.91, 0.006);
}

// Aurell et al. 2025 (tests/data, trimmed): two of the four yards from which the line
// 4.15 + 1.63 full (n 138, r 0.80) comes. The program uses the line of the two yards that can be
// fitted again here; over the counts that occur the published one tells the same.
TEST(QuickCountFit, EarlySummerLineOfTwoYardsAgreesWithAllFour) {
  const auto rows = rowsOf("splits_2022.csv", "d77_frames_bees", "d72_quick_frames");
  const LineFit fit = fitLine(pairs(rows));
  EXPECT_EQ(fit.n, 71);
  EXPECT_NEAR(fit.r, 0.80, 0.05);
  EXPECT_NEAR(fit.intercept, kQuickEarlySummer.intercept, 0.01);
  EXPECT_NEAR(fit.slope, kQuickEarlySummer.slope, 0.01);
  EXPECT_NEAR(fit.residual, kQuickEarlySummer.residual, 0.05);
  for (const double full : {2.0, 3.0, 4.0, 5.0, 6.0}) {
    const double published = 4.15 + 1.63 * full;
    EXPECT_NEAR(fit.intercept + fit.slope * full, published, 0.08 * published) << full;
  }
}

TEST(QuickCountFit, TooFewOrFlatPointsGiveNoLine) {
  EXPECT_EQ(fitLine({}).slope, 0);
  EXPECT_EQ(fitLine({{1, 2}, {2, 3}}).slope, 0);
  EXPECT_EQ(fitLine({{1, 2}, {1, 3}, {1, 4}}).slope, 0);
}

TEST(QuickCount, ReadsTheObservedFramesBack) {
  const auto summer = rowsOf("splits_2022.csv", "d77_frames_bees", "d72_quick_frames");
  const Misfit s = misfit(
      summer, [](double q) { return fullFramesByLine(q, kQuickEarlySummer); },
      kQuickEarlySummer.sigmaLog);
  EXPECT_LT(std::fabs(s.mean), 0.10);
  EXPECT_LT(s.sd, kQuickEarlySummer.sigmaLog);
  EXPECT_GT(s.within, 0.70);
  EXPECT_LT(s.within, 0.95);
  const auto winter = rowsOf("autumn_2020.csv", "frames_bees", "frames_with_any_bees");
  const Misfit w = misfit(
      winter, [](double q) { return fullFramesByLine(q, kQuickFebruary); },
      kQuickFebruary.sigmaLog);
  EXPECT_LT(std::fabs(w.mean), 0.15);
  EXPECT_GT(w.within, 0.65);
  EXPECT_LT(w.within, 0.95);
}

// Aurell et al. 2025 (tests/data, trimmed): counts above ten frames stand in two boxes and more.
TEST(QuickCount, TallHivesAreReadBoxByBox) {
  std::vector<Row> tall;
  for (const Row& r : rowsOf("splits_2022.csv", "d77_frames_bees", "d72_quick_frames")) {
    if (r.counted > 10) tall.push_back(r);
  }
  ASSERT_GT(tall.size(), 20U);
  const Misfit box = misfit(
      tall, [](double q) { return fullFramesOfQuickCount(q, 150).fullFrames; },
      kQuickEarlySummer.sigmaLog);
  EXPECT_LT(std::fabs(box.mean), 0.10);
  EXPECT_GT(box.within, 0.65);
  double each = 0;
  for (const Row& r : tall) each += r.full / r.counted / static_cast<double>(tall.size());
  EXPECT_NEAR(fullFramesOfQuickCount(20, 150).fullFrames / 20, each, 0.05);
  EXPECT_NEAR(fullFramesOfQuickCount(30, 150).fullFrames,
              3 * fullFramesOfQuickCount(10, 150).fullFrames, 1e-9);
}

/// A line fitted on one yard alone must read the other yard back.
TEST(QuickCount, LeaveOneYardOut) {
  const auto all = rowsOf("splits_2022.csv", "d77_frames_bees", "d72_quick_frames");
  for (const std::string out : {"A", "C"}) {
    std::vector<Row> fitOn, tryOn;
    for (const Row& r : all) (r.yard == out ? tryOn : fitOn).push_back(r);
    ASSERT_GT(tryOn.size(), 20U);
    const LineFit fit = fitLine(pairs(fitOn));
    QuickCountLine line = kQuickEarlySummer;
    line.intercept = fit.intercept;
    line.slope = fit.slope;
    line.residual = fit.residual;
    const Misfit m = misfit(
        tryOn, [&](double q) { return fullFramesByLine(q, line); }, line.sigmaLog);
    EXPECT_LT(std::fabs(m.mean), 0.20) << "yard " << out;
    EXPECT_GT(m.within, 0.65) << "yard " << out;
  }
}

TEST(QuickCount, GrowsWithTheCountAndStaysBelowIt) {
  for (int day = 1; day <= 365; day += 7) {
    double last = 0;
    for (double q = 0; q <= 40; q += 0.5) {
      const QuickCount c = fullFramesOfQuickCount(q, day);
      EXPECT_GE(c.fullFrames, last) << day << ' ' << q;
      EXPECT_LE(c.fullFrames, q) << day << ' ' << q;
      EXPECT_EQ(c.sigmaLog > 0, q > 0);
      last = c.fullFrames;
    }
  }
  EXPECT_EQ(fullFramesOfQuickCount(0, 150).fullFrames, 0);
}

TEST(QuickCount, SeasonsPassIntoEachOther) {
  for (int day = 1; day < 365; ++day) {
    const double a = fullFramesOfQuickCount(10, day).fullFrames;
    const double b = fullFramesOfQuickCount(10, day + 1).fullFrames;
    EXPECT_LT(std::fabs(std::log(a / b)), 0.05) << day;
  }
  // "About 2.6 times too many in early summer."
  EXPECT_NEAR(10.67 / fullFramesOfQuickCount(10.67, 150).fullFrames, 2.8, 0.4);
}

/// Share of the rows whose full frames lie within the 80 % band of their own seam count.
double seamsWithin(const std::vector<Row>& rows, double kFew) {
  double within = 0;
  for (const Row& r : rows) {
    const double rest = 0.30;
    const double sigma = std::hypot(rest, kFew / std::sqrt(r.counted + 1.5));
    within += std::fabs(std::log(r.full / fullFramesOfSeams(r.counted))) <= 1.2816 * sigma ? 1 : 0;
  }
  return within / static_cast<double>(rows.size());
}

// The February counts from the top of the box (Aurell et al. 2024, trimmed) against our relation:
// no gross bias, and the 80 % bands hold about 80 % of them although they scatter by 0.6, twice the
// trade's 20 to 30 %.
TEST(Seams, BandsHoldTheFebruaryCounts) {
  const auto rows = rowsOf("autumn_2020.csv", "frames_bees", "top_of_box_count");
  ASSERT_EQ(rows.size(), 37U);
  Misfit m = misfit(rows, fullFramesOfSeams, 0.4);
  EXPECT_LT(std::fabs(m.mean), 0.15);
  EXPECT_NEAR(m.sd, 0.62, 0.03);
  double within = 0;
  for (const Row& r : rows) {
    const double sigma = seamSigma(r.counted, std::nullopt, apiary::SeamsView::Above, false);
    within += std::fabs(std::log(r.full / fullFramesOfSeams(r.counted))) <= 1.2816 * sigma ? 1 : 0;
  }
  within /= 37;
  EXPECT_GE(within, 0.75);
  EXPECT_LE(within, 0.92);
  EXPECT_NEAR(within, seamsWithin(rows, kFewSeams), 1e-12);
}

/// The one fitted figure, fitted again by maximum likelihood with each colony left out in turn.
TEST(Seams, BandsHoldTheColonyThatWasLeftOut) {
  const auto rows = rowsOf("autumn_2020.csv", "frames_bees", "top_of_box_count");
  const auto fit = [&](std::size_t out) {
    double best = 0, bestLog = -1e300;
    for (double few = 0.2; few <= 2.0; few += 0.01) {
      double log = 0;
      for (std::size_t k = 0; k < rows.size(); ++k) {
        if (k == out) continue;
        const double sigma = std::hypot(0.30, few / std::sqrt(rows[k].counted + 1.5));
        const double z = std::log(rows[k].full / fullFramesOfSeams(rows[k].counted)) / sigma;
        log -= std::log(sigma) + z * z / 2;
      }
      if (log > bestLog) {
        bestLog = log;
        best = few;
      }
    }
    return best;
  };
  EXPECT_NEAR(fit(rows.size()), kFewSeams, 0.06);
  double within = 0;
  for (std::size_t out = 0; out < rows.size(); ++out) within += seamsWithin({rows[out]}, fit(out));
  within /= static_cast<double>(rows.size());
  EXPECT_GE(within, 0.72);
  EXPECT_LE(within, 0.92);
}

// Simpson 1969: 1,400 bees a Langstroth comb in use, colonies with room to spare.
TEST(Seams, FrameInUseAsSimpsonCounted) {
  const double perSeam = fullFramesOfSeams(7.5) / 7.5 * 2 * 880 * 1.30;
  EXPECT_NEAR(perSeam, 1400, 140);
}

TEST(Seams, NoStraightLineButNeverMoreThanFull) {
  double last = 0, lastShare = 0;
  for (double s = 0.25; s <= 40; s += 0.25) {
    const double full = fullFramesOfSeams(s);
    EXPECT_GT(full, last) << s;
    EXPECT_GT(full / s, lastShare) << s;  // a larger cluster fills its seams better
    EXPECT_LT(full, s) << s;
    EXPECT_NEAR(seamsOfFullFrames(full), s, 1e-6);
    last = full;
    lastShare = full / s;
  }
  EXPECT_EQ(fullFramesOfSeams(0), 0);
  EXPECT_EQ(seamsOfFullFrames(0), 0);
}

TEST(Seams, WarmAirReadsTooManyAndLessSurely) {
  using apiary::SeamsView;
  EXPECT_GT(seamTemperatureFactor(0.0, SeamsView::Above), 1.1);
  EXPECT_NEAR(seamTemperatureFactor(13.0, SeamsView::Above), 1, 1e-12);
  EXPECT_LT(seamTemperatureFactor(22.0, SeamsView::Above), 0.9);
  EXPECT_EQ(seamTemperatureFactor(30.0, SeamsView::Above),
            seamTemperatureFactor(25.0, SeamsView::Above));
  EXPECT_EQ(seamTemperatureFactor(25.0, SeamsView::Below), 1);
  EXPECT_EQ(seamTemperatureFactor(std::nullopt, SeamsView::Above), 1);
  EXPECT_GT(seamSigma(6, 22.0, SeamsView::Above, false),
            seamSigma(6, 8.0, SeamsView::Above, false));
  EXPECT_LT(seamSigma(6, 22.0, SeamsView::Both, false),
            seamSigma(6, 22.0, SeamsView::Above, false));
  EXPECT_GT(seamSigma(6, 8.0, SeamsView::Above, true), seamSigma(6, 8.0, SeamsView::Above, false));
  EXPECT_GT(seamSigma(2, 8.0, SeamsView::Above, false), seamSigma(8, 8.0, SeamsView::Above, false));
}

}  // namespace
}  // namespace outyard::strength
