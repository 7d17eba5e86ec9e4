// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/work_progress.h"

#include <QCoreApplication>
#include <QEventLoop>
#include <QThread>
#include <QTimer>
#include <algorithm>
#include <cmath>
#include <exception>
#include <memory>

namespace outyard::main_window {

namespace {
constexpr int kSteps = 1000;
constexpr int kShownAfterMs = 600;
}  // namespace

WorkProgress::WorkProgress(const QString& label, QWidget* parent)
    : m_dialog(label, QCoreApplication::translate("WorkProgress", "&Stop"), 0, kSteps, parent) {
  m_dialog.setObjectName(QStringLiteral("workProgress"));
  m_dialog.setWindowModality(Qt::WindowModal);
  m_dialog.setMinimumDuration(kShownAfterMs);
  QObject::connect(&m_dialog, &QProgressDialog::canceled, &m_dialog, [this] { m_stopped = true; });
  m_dialog.setValue(0);
}

void WorkProgress::report(double fraction) {
  const int value = static_cast<int>(std::lround(std::clamp(fraction, 0.0, 1.0) * kSteps));
  if (QThread::currentThread() == m_dialog.thread()) {
    showValue(value);
  } else {
    QMetaObject::invokeMethod(
        &m_dialog, [this, value] { showValue(value); }, Qt::QueuedConnection);
  }
}

void WorkProgress::showValue(int value) {
  // The last step would put the dialog away while the work still ends.
  value = std::min(value, kSteps - 1);
  if (!m_stopped && value > m_dialog.value()) m_dialog.setValue(value);
}

void WorkProgress::runBeside(const std::function<void()>& work) {
  std::exception_ptr thrown;
  const std::unique_ptr<QThread> thread(QThread::create([&] {
    try {
      work();
    } catch (...) {
      thrown = std::current_exception();
    }
  }));
  QEventLoop loop;
  QObject::connect(thread.get(), &QThread::finished, &loop, &QEventLoop::quit);
  bool shown = false;
  QTimer::singleShot(kShownAfterMs, &loop, [&] {
    shown = true;
    loop.quit();
  });
  thread->start();
  // Until the dialog is there to lock the window, nothing that is clicked or typed reaches it.
  loop.exec(QEventLoop::ExcludeUserInputEvents);
  if (shown && !thread->isFinished()) {
    QObject::connect(&m_dialog, &QProgressDialog::canceled, &loop, &QEventLoop::quit);
    m_dialog.show();
    loop.exec();
    // Stopped: the dialog is gone, the work may need a moment to end.
    if (!thread->isFinished()) loop.exec(QEventLoop::ExcludeUserInputEvents);
  }
  thread->wait();
  if (thrown) std::rethrow_exception(thrown);
}

}  // namespace outyard::main_window
