// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"

#include <gtest/gtest.h>

#include "core/base/quantity.h"
#include "core/base/random.h"

namespace outyard::base {
namespace {

TEST(Text, NormalisesToNfcAndTrims) {
  EXPECT_EQ(normalised("  Tamarack  "), "Tamarack");
  // e + combining acute becomes one code point (Unicode Standard Annex 15).
  EXPECT_EQ(normalised("Pre\u0301"), "Pr\u00e9");
  EXPECT_EQ(normalised(""), "");
  EXPECT_FALSE(normalised("caf\xe9"));                    // Latin-1
  EXPECT_FALSE(normalised(std::string_view("a\0b", 3)));  // NUL
  EXPECT_FALSE(validUtf8("\xc0\x80"));                    // overlong
}

TEST(Text, ShortestReadsBackTheSame) {
  EXPECT_EQ(shortest(0.1), "0.1");
  EXPECT_EQ(shortest(12), "12");
  EXPECT_EQ(shortest(-0.0), "0");
  EXPECT_EQ(shortest(1500000), "1500000");
  Random random(7);
  for (int i = 0; i < 2000; ++i) {
    const double v = (random.uniform() - 0.5) * 1e6;
    EXPECT_EQ(parseNumber(shortest(v)), v);
  }
}

TEST(Text, RefusesWhatIsNotANumber) {
  for (const char* bad : {"", "1,5", "nan", "inf", "1e", "12 ", "0x10", "--1", "1.5.2"}) {
    EXPECT_FALSE(parseNumber(bad)) << bad;
  }
  EXPECT_EQ(parseNumber("-3.25"), -3.25);
  EXPECT_EQ(parseInteger("+7"), 7);
  EXPECT_FALSE(parseInteger("7.0"));
  EXPECT_FALSE(parseInteger("99999999999999999999"));
}

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};

TEST(Quantity, UnlikeThingsDoNotAdd) {
  static_assert(Adds<Mass, Mass>);
  static_assert(!Adds<Mass, Length>);
  static_assert(!Adds<Temperature, Volume>);
  EXPECT_DOUBLE_EQ(inPounds(Mass{45.359237}), 100);
  EXPECT_DOUBLE_EQ(inFahrenheit(Temperature{14}), 57.2);
  EXPECT_DOUBLE_EQ(fromFahrenheit(57.2).value, 14);
  EXPECT_DOUBLE_EQ(inFeet(Length{0.3048}), 1);
}

TEST(Random, IsTheSameEverywhere) {
  // First outputs of xoshiro256++ after splitmix64 seeding with 1, our own last values.
  Random a(1), b(1);
  for (int i = 0; i < 100; ++i) EXPECT_EQ(a.next(), b.next());
  double sum = 0, squares = 0;
  Random c(42);
  constexpr int kDraws = 200000;
  for (int i = 0; i < kDraws; ++i) {
    const double v = c.normal();
    sum += v;
    squares += v * v;
  }
  EXPECT_NEAR(sum / kDraws, 0, 0.01);
  EXPECT_NEAR(squares / kDraws, 1, 0.02);
  EXPECT_LT(c.below(10), 10U);
  SeededIds ids(3), again(3);
  const std::string id = ids.next();
  EXPECT_EQ(id.size(), 32U);
  EXPECT_EQ(id, again.next());
  EXPECT_NE(id, ids.next());
}

}  // namespace
}  // namespace outyard::base
