// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/work_progress.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QThread>
#include <QTimer>
#include <atomic>
#include <stdexcept>

namespace outyard::main_window {
namespace {

TEST(WorkProgress, TheWindowGoesOnWhileTheWorkRunsOnAnotherThread) {
  WorkProgress progress(QStringLiteral("Working"), nullptr);
  int ticks = 0;
  QTimer timer;
  QObject::connect(&timer, &QTimer::timeout, [&] { ++ticks; });
  timer.start(5);
  const QThread* window = QThread::currentThread();
  const int answer = progress.besideWindow([&] {
    EXPECT_NE(QThread::currentThread(), window);
    QThread::msleep(150);
    return 42;
  });
  EXPECT_EQ(answer, 42);
  EXPECT_GE(ticks, 2);
}

TEST(WorkProgress, IsShownWhereItTakesLongAndCanBeStopped) {
  WorkProgress progress(QStringLiteral("Working"), nullptr);
  bool seen = false;
  QTimer timer;
  QObject::connect(&timer, &QTimer::timeout, [&] {
    if (!progress.dialog().isVisible() || progress.dialog().value() <= 0) return;
    seen = true;
    progress.dialog().findChild<QPushButton*>()->click();
  });
  timer.start(20);
  std::atomic<int> rounds{0};
  const bool stopped = progress.besideWindow([&] {
    for (; rounds < 1000 && !progress.cancelled(); ++rounds) {
      progress.report(0.5);
      QThread::msleep(10);
    }
    return progress.cancelled();
  });
  EXPECT_TRUE(seen);
  EXPECT_TRUE(stopped);
  EXPECT_LT(rounds, 1000);
}

TEST(WorkProgress, QuickWorkShowsNothing) {
  WorkProgress progress(QStringLiteral("Working"), nullptr);
  progress.besideWindow([&] {
    progress.report(1);
    return 0;
  });
  EXPECT_FALSE(progress.dialog().isVisible());
}

TEST(WorkProgress, WhatTheWorkThrowsIsThrownHere) {
  WorkProgress progress(QStringLiteral("Working"), nullptr);
  EXPECT_THROW(progress.besideWindow([]() -> int { throw std::logic_error("a bug"); }),
               std::logic_error);
}

}  // namespace
}  // namespace outyard::main_window
