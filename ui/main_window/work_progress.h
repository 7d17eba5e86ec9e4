// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QProgressDialog>
#include <QString>
#include <QWidget>
#include <atomic>
#include <functional>
#include <optional>
#include <type_traits>

#include "core/base/progress.h"

namespace outyard::main_window {

/// Long work with a bar and a button to stop it, which come up only when it takes long. The window
/// is repainted, and locked, meanwhile.
class WorkProgress : public base::Progress {
 public:
  WorkProgress(const QString& label, QWidget* parent);
  /// Runs the work on a thread of its own and comes back when it is done; what it throws is thrown
  /// here. The work must not touch what the window draws with; reading the season is safe, since
  /// nobody can change it while the window is locked.
  template <typename Work>
  std::invoke_result_t<Work> besideWindow(Work work) {
    std::optional<std::invoke_result_t<Work>> out;
    runBeside([&] { out.emplace(work()); });
    return *std::move(out);
  }
  /// May be told on any thread.
  void report(double fraction) override;
  /// May be asked from any thread.
  [[nodiscard]] bool cancelled() const override { return m_stopped; }
  [[nodiscard]] QProgressDialog& dialog() { return m_dialog; }

 private:
  void runBeside(const std::function<void()>& work);
  void showValue(int value);
  QProgressDialog m_dialog;
  std::atomic<bool> m_stopped = false;
};

}  // namespace outyard::main_window
