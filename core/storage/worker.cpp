// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/worker.h"

namespace outyard::storage {

Worker::Worker() : m_thread([this] { loop(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard lock(m_mutex);
    m_stop = true;
  }
  m_wake.notify_one();
  m_thread.join();
}

void Worker::post(std::function<void()> work) {
  {
    const std::lock_guard lock(m_mutex);
    m_work.push(std::move(work));
  }
  m_wake.notify_one();
}

void Worker::loop() {
  while (true) {
    std::function<void()> work;
    {
      std::unique_lock lock(m_mutex);
      m_wake.wait(lock, [this] { return m_stop || !m_work.empty(); });
      if (m_work.empty()) return;
      work = std::move(m_work.front());
      m_work.pop();
    }
    work();
  }
}

}  // namespace outyard::storage
