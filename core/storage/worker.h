// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <condition_variable>
#include <functional>
#include <future>
#include <memory>
#include <mutex>
#include <queue>
#include <thread>
#include <type_traits>
#include <utility>

namespace outyard::storage {

/// One thread that does what is posted, in order. What must live on one thread (a connection) is
/// made, used and dropped in posted work.
class Worker {
 public:
  Worker();
  /// Finishes what was posted.
  ~Worker();
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  /// Does the work on the thread and waits for its result; exceptions come back to the caller.
  template <class F>
  std::invoke_result_t<F> run(F&& work) {
    auto task =
        std::make_shared<std::packaged_task<std::invoke_result_t<F>()>>(std::forward<F>(work));
    auto result = task->get_future();
    post([task] { (*task)(); });
    return result.get();
  }

 private:
  void post(std::function<void()> work);
  void loop();

  std::mutex m_mutex;
  std::condition_variable m_wake;
  std::queue<std::function<void()>> m_work;
  bool m_stop = false;
  std::thread m_thread;
};

}  // namespace outyard::storage
