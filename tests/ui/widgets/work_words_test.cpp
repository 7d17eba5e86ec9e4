// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/work_words.h"

#include <gtest/gtest.h>

#include "tests/support/season_builder.h"
#include "ui/widgets/day_words.h"

namespace outyard::widgets {
namespace {

using tests::day;

TEST(WorkWords, NamesAmountsAndPartners) {
  const adapt::Units metric;
  const adapt::Units us(adapt::MassUnit::Pound, adapt::TemperatureUnit::Fahrenheit,
                        adapt::LengthUnit::Foot);
  planning::DueTask t;
  t.rule = "planned";
  t.kind = "fed";
  t.hive = base::HiveId{"TR-01"};
  t.amount = 4;
  t.unit = apiary::Unit::L;
  t.what = apiary::Goods::Syrup11;
  EXPECT_TRUE(workText(t, metric).startsWith(workName(t) + QStringLiteral(", 4\u00A0l ")));
  EXPECT_TRUE(workText(t, us).contains(QStringLiteral("1.1\u00A0gal")));
  t.kind = "united";
  t.amount.reset();
  t.otherHive = base::HiveId{"TR-02"};
  EXPECT_TRUE(workText(t, metric).endsWith(QStringLiteral(" with TR-02")));
  t.plannedWhy = "few bees, good queen";
  EXPECT_EQ(reasonText(t), QStringLiteral("few bees, good queen"));
}

TEST(WorkWords, GearByItsNameAndACount) {
  EXPECT_EQ(itemText("treatment"), QStringLiteral("mite treatment, doses"));
  EXPECT_TRUE(itemText("super:zander").startsWith(QStringLiteral("super, ")));
  EXPECT_FALSE(itemText("syrup_1_1").contains(u'_'));
  EXPECT_EQ(itemText("rope_of_mine"), QStringLiteral("rope of mine"));
  EXPECT_EQ(countText(12.5, apiary::Unit::Kg, adapt::Units()), QStringLiteral("12.5\u00A0kg"));
  EXPECT_EQ(countText(3, std::nullopt, adapt::Units()), QStringLiteral("3"));
}

TEST(DayWords, WetIsSaidAndUnknownStaysUnknown) {
  planning::YardDay d;
  d.date = day("2026-04-25");
  EXPECT_EQ(dayWords(d, adapt::Units()), QStringLiteral("Sat 25 Apr: no weather known"));
  d.tmaxC = 9;
  EXPECT_EQ(warmthOf(d), Warmth::Shut);
  EXPECT_TRUE(dayWords(d, adapt::Units()).endsWith(QStringLiteral("rain not known")));
  d.rainMm = 4;
  EXPECT_TRUE(isWet(d));
  EXPECT_TRUE(dayWords(d, adapt::Units()).endsWith(QStringLiteral("4 mm of rain")));
}

}  // namespace
}  // namespace outyard::widgets
