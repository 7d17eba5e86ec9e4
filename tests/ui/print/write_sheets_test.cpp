// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QByteArray>
#include <QFile>
#include <QTemporaryDir>
#include <algorithm>
#include <stdexcept>
#include <thread>
#include <vector>

#include "core/sheet/document.h"
#include "tests/core/sheet/sheet_fixture.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/pdf_writer.h"

namespace outyard::print {
namespace {

namespace fixture = sheet::fixture;

/// Yards of different size and script, each with a number of its own.
std::vector<fixture::MadeYard> someYards() {
  std::vector<fixture::MadeYard> yards;
  for (const int hives : {12, 1, 25, 3, 40, 7, 18}) {
    fixture::Wish wish;
    wish.hives = hives;
    wish.boosts = hives % 3;
    wish.longText = hives == 3 || hives == 7;
    wish.rightToLeft = hives == 7;
    yards.push_back(fixture::makeYard(wish));
  }
  return yards;
}

sheet::YardSheet laidOut(const fixture::MadeYard& yard, std::size_t number,
                         const FontMeasurer& measurer) {
  auto input = yard.input(number % 2 == 0 ? sheet::Paper::A4 : sheet::Paper::Letter, measurer,
                          adapt::wordsUtf8);
  input.sheetNumber = "26-" + std::to_string(100 + number);
  input.largeType = number == 3;
  return sheet::layoutJudgedSheet(input, yard.judgements);
}

/// The file without the moment at which it was written.
QByteArray bytesOf(const QString& path) {
  QFile file(path);
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  QByteArray bytes = file.readAll();
  const qsizetype date = bytes.indexOf("/CreationDate");
  EXPECT_GT(date, 0);
  return bytes.remove(date, bytes.indexOf('\n', date) - date);
}

class Watch : public base::Progress {
 public:
  explicit Watch(int stopAfter = -1) : m_stopAfter(stopAfter) {}
  void report(double fraction) override {
    EXPECT_GE(fraction, m_last);
    EXPECT_LE(fraction, 1);
    EXPECT_EQ(std::this_thread::get_id(), m_thread);
    m_last = fraction;
    ++m_reports;
  }
  [[nodiscard]] bool cancelled() const override {
    return m_stopAfter >= 0 && m_reports >= m_stopAfter;
  }
  [[nodiscard]] double last() const { return m_last; }
  [[nodiscard]] int reports() const { return m_reports; }

 private:
  int m_stopAfter;
  int m_reports = 0;
  double m_last = 0;
  std::thread::id m_thread = std::this_thread::get_id();
};

TEST(WriteSheets, OnTwoThreadsMakesTheFileThatOneMakesSheetBySheet) {
  const auto yards = someYards();
  QTemporaryDir folder;
  const QString one = folder.filePath(QStringLiteral("one.pdf"));
  const QString two = folder.filePath(QStringLiteral("two.pdf"));
  std::vector<sheet::YardSheet> sheets;
  std::size_t pages = 0;
  for (std::size_t i = 0; i < yards.size(); ++i) {
    const FontMeasurer measurer;
    sheets.push_back(laidOut(yards[i], i, measurer));
    pages += sheets.back().document.pages.size();
  }
  ASSERT_TRUE(writePdf(sheet::joined(sheets), one));

  const FontMeasurer measurer;
  Watch watch;
  const auto written = writeSheets(
      yards.size(),
      [&](std::size_t i) -> base::Result<sheet::YardSheet> {
        return laidOut(yards[i], i, measurer);
      },
      two, watch);
  ASSERT_TRUE(written);
  EXPECT_EQ(written->pages, pages);
  EXPECT_EQ(watch.last(), 1);
  EXPECT_GE(watch.reports(), static_cast<int>(yards.size()));
  EXPECT_EQ(bytesOf(one), bytesOf(two));
  ASSERT_EQ(written->sheets.size(), sheets.size());
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    EXPECT_EQ(written->sheets[i].document.sheetNumber, sheets[i].document.sheetNumber);
    EXPECT_EQ(written->sheets[i].document.title, sheets[i].document.title);
    ASSERT_EQ(written->sheets[i].lines.size(), sheets[i].lines.size());
    for (std::size_t l = 0; l < sheets[i].lines.size(); ++l) {
      EXPECT_EQ(written->sheets[i].lines[l].hive, sheets[i].lines[l].hive);
    }
  }
}

TEST(WriteSheets, TwoFilesAtATimeAreTheSameAsOneAfterTheOther) {
  const auto yards = someYards();
  QTemporaryDir folder;
  const auto file = [&](const char* kind, std::size_t i) {
    return folder.filePath(QStringLiteral("%1 %2.pdf").arg(QLatin1String(kind)).arg(i));
  };
  const auto write = [&](const char* kind, std::size_t i) {
    const FontMeasurer measurer;
    return writePdf(laidOut(yards[i], i, measurer).document, file(kind, i)).ok();
  };
  for (std::size_t i = 0; i < yards.size(); ++i) ASSERT_TRUE(write("one", i));
  std::vector<char> done(yards.size(), 0);
  const auto half = [&](std::size_t from) {
    for (std::size_t i = from; i < yards.size(); i += 2) done[i] = write("two", i) ? 1 : 0;
  };
  std::thread odd(half, 1);
  half(0);
  odd.join();
  for (std::size_t i = 0; i < yards.size(); ++i) {
    ASSERT_EQ(done[i], 1);
    EXPECT_EQ(bytesOf(file("one", i)), bytesOf(file("two", i))) << i;
  }
}

class WriteSheetsEnds : public testing::Test {
 protected:
  WriteSheetsEnds() {
    QFile old(path());
    EXPECT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("old");
  }
  [[nodiscard]] QString path() const { return m_folder.filePath(QStringLiteral("old.pdf")); }
  [[nodiscard]] QByteArray kept() const {
    QFile old(path());
    EXPECT_TRUE(old.open(QIODevice::ReadOnly));
    return old.readAll();
  }
  MakeSheet make() {
    return [this](std::size_t i) -> base::Result<sheet::YardSheet> {
      ++m_made;
      if (i == m_failsAt) return base::fail(base::message("check.unknown_yard", std::string("X")));
      if (i == m_throwsAt) throw std::logic_error("bug");
      return laidOut(m_yard, i, m_measurer);
    };
  }
  QTemporaryDir m_folder;
  fixture::MadeYard m_yard = fixture::makeYard({.hives = 2});
  FontMeasurer m_measurer;
  std::size_t m_failsAt = 999, m_throwsAt = 999;
  int m_made = 0;
};

TEST_F(WriteSheetsEnds, StoppingLeavesTheOldFile) {
  Watch watch(3);
  const auto written = writeSheets(20, make(), path(), watch);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.failure().messages.front().key, "sheet.pdf_stopped");
  EXPECT_EQ(m_made, 3);
  EXPECT_EQ(kept(), "old");
  Watch pages(2);
  const auto stopped = writePdf(laidOut(m_yard, 0, m_measurer).document, path(), pages);
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.failure().messages.front().key, "sheet.pdf_stopped");
  EXPECT_EQ(kept(), "old");
}

TEST_F(WriteSheetsEnds, ASheetThatFailsOrABugLeavesTheOldFile) {
  base::Progress quiet;
  m_failsAt = 5;
  const auto written = writeSheets(20, make(), path(), quiet);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.failure().messages.front().key, "check.unknown_yard");
  EXPECT_EQ(m_made, 6);
  EXPECT_EQ(kept(), "old");
  m_failsAt = 999;
  m_throwsAt = 2;
  EXPECT_THROW((void)writeSheets(20, make(), path(), quiet), std::logic_error);
  EXPECT_EQ(kept(), "old");
}

TEST_F(WriteSheetsEnds, AFolderThatIsNotThereEndsTheWorkEarly) {
  base::Progress quiet;
  const auto written = writeSheets(
      200, make(), m_folder.filePath(QStringLiteral("missing/folder/sheets.pdf")), quiet);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.failure().messages.front().key, "sheet.pdf_not_written");
  EXPECT_LT(m_made, 200);
  EXPECT_FALSE(writeSheets(0, make(), path(), quiet));
  EXPECT_EQ(kept(), "old");
}

}  // namespace
}  // namespace outyard::print
