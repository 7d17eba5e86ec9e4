// SPDX-License-Identifier: GPL-3.0-or-later
// The committed calibration page says what the program computes. When this fails after a change of
// the forecast, run `cmake --build build --target calibration_page` and commit the page.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/calibration/checks.h"

namespace outyard::calibration {
namespace {

std::string committed(const std::string& name) {
  std::ifstream in(OUTYARD_SOURCE_DIR "/resources/help/" + name, std::ios::binary);
  EXPECT_TRUE(in) << name;
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Made once: it takes seconds.
const Page& made() {
  static const Page now = page(1);
  return now;
}

TEST(CalibrationPage, IsInStepWithTheProgram) {
  const Page& now = made();
  const std::string text = committed("calibration.md");
  EXPECT_EQ(withoutTwins(text), withoutTwins(now.text));
  EXPECT_NE(text.find("300 made-up small colonies"), std::string::npos);
  EXPECT_EQ(text.find("| fails |"), std::string::npos);
  ASSERT_EQ(now.pictures.size(), 4U);
  for (const auto& [name, svg] : now.pictures) EXPECT_EQ(committed(name), svg) << name;
}

TEST(CalibrationPage, ComparisonSeesAChange) {
  const Page& now = made();
  std::string other = now.text;
  const auto at = other.find("| holds |");
  ASSERT_NE(at, std::string::npos);
  other.replace(at, 9, "| fails |");
  EXPECT_NE(withoutTwins(other), withoutTwins(now.text));
}

}  // namespace
}  // namespace outyard::calibration
