// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/help_page.h"

#include <gtest/gtest.h>

#include <QTextBlock>
#include <QTextBrowser>
#include <QTextTable>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"

namespace outyard::main_window {
namespace {

TEST(HelpPage, TheCalibrationPageIsThereWithItsTables) {
  HelpPage page(QStringLiteral("calibration"), QStringLiteral("Trust"));
  auto* text = tests::field<QTextBrowser>(page, "helpPage");
  EXPECT_TRUE(text->toPlainText().startsWith(u"How far the forecast can be trusted"));
  int tables = 0;
  for (auto* frame : text->document()->rootFrame()->childFrames()) {
    tables += qobject_cast<QTextTable*>(frame) ? 1 : 0;
  }
  EXPECT_GE(tables, 4);
  EXPECT_FALSE(text->loadResource(QTextDocument::ImageResource,
                                  QUrl(QStringLiteral("calibration_small.svg")))
                   .isNull());
  tests::picture(page, QStringLiteral("help_calibration"), {1080, 720});
}

}  // namespace
}  // namespace outyard::main_window
