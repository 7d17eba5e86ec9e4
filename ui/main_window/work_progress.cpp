// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/work_progress.h"

#include <QCoreApplication>
#include <QThread>
#include <algorithm>
#include <cmath>

namespace outyard::main_window {

namespace {
constexpr int kSteps = 1000;
}  // namespace

WorkProgress::WorkProgress(const QString& label, QWidget* parent)
    : m_dialog(label, QCoreApplication::translate("WorkProgress", "&Stop"), 0, kSteps, parent) {
  m_dialog.setObjectName(QStringLiteral("workProgress"));
  m_dialog.setWindowModality(Qt::WindowModal);
  m_dialog.setMinimumDuration(600);
  QObject::connect(&m_dialog, &QProgressDialog::canceled, &m_dialog, [this] { m_stopped = true; });
  m_dialog.setValue(0);
}

void WorkProgress::report(double fraction) {
  if (QThread::currentThread() != m_dialog.thread() || m_stopped) return;
  const int value = static_cast<int>(std::lround(std::clamp(fraction, 0.0, 1.0) * kSteps));
  if (value > m_dialog.value()) m_dialog.setValue(value);
}

}  // namespace outyard::main_window
