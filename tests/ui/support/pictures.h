// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QDir>
#include <QLabel>
#include <QPixmap>
#include <QTest>
#include <QWidget>

#include "ui/adapt/settings.h"
#include "ui/widgets/theme.h"

namespace outyard::tests {

/// Shows the widget at the given size and, where OUTYARD_PICTURES names a folder, keeps a picture.
inline QImage picture(QWidget& widget, const QString& name, QSize size = {1280, 800}) {
  widget.resize(size);
  widget.show();
  QTest::qWait(20);
  const QImage image = widget.grab().toImage();
  const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
  if (!folder.isEmpty()) image.save(QDir(folder).filePath(name + QStringLiteral(".png")));
  return image;
}

/// Every label and button that can be seen has room for its words.
inline void expectNothingCut(const QWidget& top) {
  for (const auto* label : top.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty()) continue;
    if (label->wordWrap()) {
      EXPECT_LE(label->heightForWidth(label->width()), label->height() + 1)
          << label->text().toStdString();
    } else {
      EXPECT_LE(label->sizeHint().width(), label->width() + 1) << label->text().toStdString();
    }
  }
  for (const auto* button : top.findChildren<QAbstractButton*>()) {
    if (!button->isVisible() || button->text().isEmpty()) continue;
    EXPECT_LE(button->minimumSizeHint().width(), button->width() + 1)
        << button->text().toStdString();
  }
}

}  // namespace outyard::tests
