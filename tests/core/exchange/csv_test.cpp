// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/csv.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/random.h"

namespace outyard::exchange {
namespace {

using Records = std::vector<std::vector<std::string>>;

Records read(std::string_view text, std::vector<CsvFault>* faults = nullptr) {
  CsvReader reader(text);
  Records out;
  while (reader.next()) {
    auto& record = out.emplace_back();
    for (const auto& f : reader.fields()) record.emplace_back(f.text);
  }
  if (faults) {
    *faults = reader.faults();
  } else {
    EXPECT_TRUE(reader.faults().empty());
  }
  return out;
}

// The grammar of RFC 4180, section 2; the byte order mark and LF line ends are ours.
TEST(Csv, ReadsTheGrammar) {
  struct Case {
    std::string_view text;
    Records records;
  };
  const std::vector<Case> cases{
      {"", {}},
      {"\xEF\xBB\xBF", {}},
      {"a", {{"a"}}},
      {"a,b\n", {{"a", "b"}}},
      {"a,b\r\nc,d\r\n", {{"a", "b"}, {"c", "d"}}},
      {"a,b\nc,d", {{"a", "b"}, {"c", "d"}}},
      {"\xEF\xBB\xBF"
       "a,b\n",
       {{"a", "b"}}},
      {",\n", {{"", ""}}},
      {"a,", {{"a", ""}}},
      {"\n", {{""}}},
      {"\"a\",\"b\"\n", {{"a", "b"}}},
      {"\"a,b\",c\n", {{"a,b", "c"}}},
      {"\"a\"\"b\"\n", {{"a\"b"}}},
      {"\"\"\"\"\n", {{"\""}}},
      {"\"\",x\n", {{"", "x"}}},
      {"\"two\nlines\",x\n", {{"two\nlines", "x"}}},
      {"\"two\r\nlines\",x\r\n", {{"two\nlines", "x"}}},
      {"\"a\rb\"\n", {{"a\rb"}}},
      {" a , b \n", {{" a ", " b "}}},
      {"Kr\xC3\xA4hwinkel\n", {{"Kr\xC3\xA4hwinkel"}}},
  };
  for (const auto& c : cases) EXPECT_EQ(read(c.text), c.records) << c.text;
}

TEST(Csv, TellsLineCharacterAndFieldOfFaults) {
  struct Case {
    std::string text;
    const char* key;
    std::size_t line, column, field;
  };
  const std::vector<Case> cases{
      {"a,b\nx,y \"z\"\n", "exchange.stray_quote", 2, 5, 1},
      {"a,b\n\"x\"y,z\n", "exchange.text_after_quote", 2, 4, 0},
      {"a,b\nx,\"y\nz", "exchange.unclosed_quote", 2, 3, 1},
      {"a,b\nx,y\rz\n", "exchange.stray_return", 2, 4, 1},
      {std::string("a,b\nx,y\0z\n", 10), "exchange.nul_byte", 2, 4, 1},
      {std::string("a,b\nx,\"y\0z\"\n", 12), "exchange.nul_byte", 2, 5, 1},
      {"a,b\nx,K\xF6nig\n", "exchange.not_utf8", 2, 4, 1},
      {"\xC3\xA4,\xC3\xA4\"\n", "exchange.stray_quote", 1, 4, 1},
      {"a,\"1\n2\n3\",b\nc,d\"\n", "exchange.stray_quote", 4, 4, 1},
      {"a\n" + std::string(kLongestField + 1, 'x') + "\n", "exchange.field_too_long", 2, 1, 0},
      {std::string("\xFF\xFE") + 'a', "exchange.utf16", 1, 1, 0},
  };
  for (const auto& c : cases) {
    std::vector<CsvFault> faults;
    read(c.text, &faults);
    ASSERT_EQ(faults.size(), 1U) << c.key;
    EXPECT_EQ(faults[0].what.key, c.key);
    EXPECT_EQ(faults[0].line, c.line) << c.key;
    EXPECT_EQ(faults[0].column, c.column) << c.key;
    EXPECT_EQ(faults[0].field, c.field) << c.key;
  }
}

TEST(Csv, GoesOnBehindAFault) {
  std::vector<CsvFault> faults;
  const auto records = read("a\nx\"\ny\nz\"\n", &faults);
  EXPECT_EQ(records.size(), 4U);
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[1].line, 4U);
}

TEST(Csv, AFieldOfExactlyTheLimitIsRead) {
  const std::string longest(kLongestField, 'x');
  EXPECT_EQ(read(longest + "\n")[0][0].size(), kLongestField);
}

TEST(Csv, WritesQuotesOnlyWhereNeeded) {
  std::string out;
  CsvWriter w(out);
  for (const char* f : {"plain", "", "a,b", "a\"b", "two\nlines", "two\r\nlines", " kept "}) {
    w.field(f);
  }
  w.endRecord();
  w.field("next");
  w.endRecord();
  EXPECT_EQ(out, "plain,,\"a,b\",\"a\"\"b\",\"two\nlines\",\"two\nlines\", kept \nnext\n");
}

TEST(Csv, RandomRecordsComeBack) {
  constexpr std::uint64_t kSeed = 20260425;
  SCOPED_TRACE(kSeed);
  base::Random random(kSeed);
  const std::vector<std::string> bits{"a", ",", "\"", "\n", " ", "\xC3\xBC", "7", "", "\t"};
  for (int round = 0; round < 500; ++round) {
    Records records;
    std::string text;
    CsvWriter w(text);
    for (std::uint64_t r = 0; r < 1 + random.below(4); ++r) {
      auto& record = records.emplace_back(2 + random.below(4));
      for (auto& field : record) {
        for (std::uint64_t n = random.below(6); n > 0; --n) {
          field += bits[random.below(bits.size())];
        }
        w.field(field);
      }
      w.endRecord();
    }
    ASSERT_EQ(read(text), records) << text;
  }
}

/// Whatever the bytes are: the reader ends, and every record or fault has its place.
TEST(Csv, AnyBytesAreReadToTheEnd) {
  constexpr std::uint64_t kSeed = 7;
  SCOPED_TRACE(kSeed);
  base::Random random(kSeed);
  const std::string alphabet("ab,,\"\"\n\r\xC3\xA4\0\xFF", 13);
  for (int round = 0; round < 2000; ++round) {
    std::string text;
    for (std::uint64_t n = random.below(60); n > 0; --n) {
      text += alphabet[random.below(alphabet.size())];
    }
    CsvReader reader(text);
    std::size_t records = 0;
    while (reader.next()) {
      ASSERT_LE(++records, text.size() + 1);
      ASSERT_FALSE(reader.fields().empty());
    }
    for (const auto& f : reader.faults()) {
      ASSERT_GE(f.line, 1U);
      ASSERT_LE(f.line, 61U);
      ASSERT_LE(f.column, 61U);
    }
  }
}

}  // namespace
}  // namespace outyard::exchange
