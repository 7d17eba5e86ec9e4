// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QProgressDialog>
#include <QString>
#include <QWidget>
#include <atomic>

#include "core/base/progress.h"

namespace outyard::main_window {

/// Work on the window's own thread with a bar and a button to stop it, which come up only when it
/// takes long. The window is repainted, and locked, while it is told of progress.
class WorkProgress : public base::Progress {
 public:
  WorkProgress(const QString& label, QWidget* parent);
  /// Counts only when told on the window's thread.
  void report(double fraction) override;
  /// May be asked from any thread.
  [[nodiscard]] bool cancelled() const override { return m_stopped; }
  [[nodiscard]] QProgressDialog& dialog() { return m_dialog; }

 private:
  QProgressDialog m_dialog;
  std::atomic<bool> m_stopped = false;
};

}  // namespace outyard::main_window
