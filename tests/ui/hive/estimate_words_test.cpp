// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/estimate_words.h"

#include <gtest/gtest.h>

namespace outyard::hive {
namespace {

using strength::Estimate;
using strength::StrengthEstimate;

QString workings(const StrengthEstimate& e) {
  return workingsText(e, adapt::Units{}).replace(QChar(QChar::Nbsp), u' ');
}

TEST(EstimateWords, NothingKnownSaysNothing) {
  EXPECT_TRUE(workings({}).isEmpty());
}

TEST(EstimateWords, LayingIsToldByEachStageWithItsDays) {
  StrengthEstimate e;
  e.eggCells = Estimate::fromMedian(4500, 0.2);
  e.openCells = Estimate::fromMedian(9000, 0.2);
  e.sealedCells = Estimate::fromMedian(6000, 0.2);
  const QString said = workings(e);
  EXPECT_TRUE(said.contains(u"1,500 in the last 3 days")) << said.toStdString();
  EXPECT_TRUE(said.contains(u"1,000 in the last 9 days")) << said.toStdString();
  EXPECT_TRUE(said.contains(u"500 from 21 to 9 days ago")) << said.toStdString();
  EXPECT_TRUE(said.contains(u"growing"));
  e.eggCells = Estimate::fromMedian(300, 0.2);
  EXPECT_TRUE(workings(e).contains(u"shrinking"));
}

TEST(EstimateWords, ScaleReaderAndFlyingHours) {
  StrengthEstimate e;
  e.weighedKg = 38;
  e.tareKg = 24;
  e.tareSdKg = 3;
  EXPECT_TRUE(workings(e).contains(u"Of 38 kg weighed about 24 kg (give or take 3 kg)"));
  e = {};
  e.readerBias = 1.12;
  EXPECT_TRUE(workings(e).contains(u"12 % too many"));
  e.readerBias = 0.9;
  EXPECT_TRUE(workings(e).contains(u"10 % too few"));
  e.readerBias = 1.001;
  EXPECT_TRUE(workings(e).isEmpty());
  e.inFlyingHours = true;
  EXPECT_TRUE(workings(e).contains(u"flying hours"));
}

}  // namespace
}  // namespace outyard::hive
