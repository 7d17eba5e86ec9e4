// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/words.h"

#include <gtest/gtest.h>

#include <QLocale>
#include <QRegularExpression>
#include <set>

#include "core/apiary/codes.h"
#include "core/base/log.h"
#include "ui/adapt/catalogue.h"

namespace outyard::adapt {
namespace {

using base::message;

std::vector<CatalogueEntry> allEntries() {
  std::vector<CatalogueEntry> all;
  for (const auto list : everyCatalogue()) {
    all.insert(all.end(), list.begin(), list.end());
  }
  return all;
}

class WordsTest : public testing::Test {
 protected:
  void SetUp() override { QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates)); }
  void TearDown() override {
    QLocale::setDefault(QLocale::system());
    base::setLogSink({});
  }
};

TEST_F(WordsTest, EveryKeyStandsOnceAndSaysSomething) {
  std::set<std::string> seen;
  for (const auto& entry : allEntries()) {
    const std::string key(entry.key);
    EXPECT_TRUE(seen.insert(key).second) << key << " stands twice";
    EXPECT_TRUE(hasWords(key));
    EXPECT_FALSE(words(base::Message{key, {}}).trimmed().isEmpty()) << key;
  }
  EXPECT_GT(seen.size(), 100U);
}

TEST_F(WordsTest, EveryArgumentOfEveryKeyIsPutIn) {
  static const QRegularExpression left(QStringLiteral("%[1-9n]"));
  for (const auto& entry : allEntries()) {
    base::Message full{std::string(entry.key), {}};
    for (int i = 0; i < 9; ++i) full.args.emplace_back(std::int64_t{3});
    EXPECT_FALSE(words(full).contains(left)) << words(full).toStdString();
  }
}

template <class E>
void expectNames(const char* set) {
  for (const auto code : apiary::allCodes<E>()) {
    EXPECT_TRUE(hasWords(std::string("code.") + set + "." + std::string(code))) << set << code;
  }
}

TEST_F(WordsTest, CodesThatTheWindowShowsHaveNames) {
  expectNames<apiary::VerdictCode>("verdict");
  expectNames<apiary::Method>("method");
  expectNames<apiary::EventKind>("event");
  expectNames<apiary::Beneath>("beneath");
  expectNames<apiary::StandKind>("stand");
}

TEST_F(WordsTest, AnUnknownKeyIsShownAndLogged) {
  std::string logged;
  base::setLogSink([&](const std::string& line) { logged = line; });
  EXPECT_EQ(words(base::Message{"nobody.wrote_this", {}}), QStringLiteral("nobody.wrote_this"));
  EXPECT_NE(logged.find("nobody.wrote_this"), std::string::npos);
  EXPECT_FALSE(hasWords("nobody.wrote_this"));
}

TEST_F(WordsTest, AFailureIsALineForEachMessage) {
  const base::Failure failure{{base::Message{"a.b", {}}, base::Message{"c.d", {}}}};
  EXPECT_EQ(words(failure), QStringLiteral("a.b\nc.d"));
}

TEST_F(WordsTest, EstimatesHaveTwoFigures) {
  const std::pair<double, const char*> cases[] = {
      {0, "0"},         {3.46, "3.5"},         {7, "7"},
      {12, "12"},       {14321, "14,000"},     {9960, "10,000"},
      {99.6, "100"},    {0.0346, "0.035"},     {-2345, "−2,300"},
      {-0.14, "−0.14"}, {1234567, "1,200,000"}};
  for (const auto& [value, text] : cases) {
    EXPECT_EQ(roundNumber(value).toStdString(), text) << value;
  }
  EXPECT_EQ(band(9012, 7188, 11020), QStringLiteral("9,000 (7,200–11,000)"));
  EXPECT_EQ(band(7700, -280, 14000), QStringLiteral("7,700 (−280 to 14,000)"));
  EXPECT_EQ(fromTo(-3, -1), QStringLiteral("−3 to −1"));
  EXPECT_EQ(fromTo(2, 2), QStringLiteral("2"));
}

TEST_F(WordsTest, NumbersFollowTheLocale) {
  QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
  EXPECT_EQ(roundNumber(14321), QStringLiteral("14.000"));
  EXPECT_EQ(roundNumber(3.46), QStringLiteral("3,5"));
}

TEST_F(WordsTest, DatesCannotBeMisread) {
  EXPECT_EQ(dateText(base::Date::fromYmd(2026, 4, 25).value()), QStringLiteral("25 Apr 2026"));
  EXPECT_EQ(dateText(base::Date::fromYmd(2026, 1, 3).value()), QStringLiteral("3 Jan 2026"));
}

}  // namespace
}  // namespace outyard::adapt
