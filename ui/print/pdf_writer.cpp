// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/pdf_writer.h"

#include <QGuiApplication>
#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <optional>
#include <stdexcept>
#include <thread>
#include <utility>

#include "ui/print/pdf_file.h"

namespace outyard::print {

namespace {

void needApplication() {
  if (!qobject_cast<QGuiApplication*>(QCoreApplication::instance())) {
    throw std::logic_error("a PDF needs a QGuiApplication");
  }
}

base::Failure noPages(const QString& path) {
  return base::fail(base::message("sheet.pdf_no_pages", path.toStdString()));
}

base::Failure stopped() {
  return base::fail(base::message("sheet.pdf_stopped"));
}

/// Writes documents on a thread of its own, in the order they come.
class PageWriter {
 public:
  explicit PageWriter(const QString& path) : m_thread([this, path] { run(path); }) {}
  /// Without finish the file is left as it was.
  ~PageWriter() { end(false); }
  PageWriter(const PageWriter&) = delete;
  PageWriter& operator=(const PageWriter&) = delete;

  /// Waits while some documents are waiting already; false once the file cannot be written.
  bool add(sheet::SheetDocument document) {
    constexpr std::size_t kWaiting = 4;
    std::unique_lock lock(m_mutex);
    m_changed.wait(lock, [&] { return m_gaveUp || m_waiting.size() < kWaiting; });
    if (m_gaveUp) return false;
    m_waiting.push_back(std::move(document));
    m_changed.notify_all();
    return true;
  }
  /// Writes what is waiting and puts the file into its place.
  base::Result<void> finish() {
    end(true);
    if (m_bug) std::rethrow_exception(m_bug);
    return m_result;
  }

 private:
  enum class State { Open, Finish, Drop };

  void end(bool whole) {
    {
      const std::lock_guard lock(m_mutex);
      if (m_state == State::Open) m_state = whole ? State::Finish : State::Drop;
      m_changed.notify_all();
    }
    if (m_thread.joinable()) m_thread.join();
  }

  std::optional<sheet::SheetDocument> next() {
    std::unique_lock lock(m_mutex);
    m_changed.wait(lock, [&] { return m_state != State::Open || !m_waiting.empty(); });
    if (m_state == State::Drop || m_waiting.empty()) return std::nullopt;
    sheet::SheetDocument document = std::move(m_waiting.front());
    m_waiting.pop_front();
    m_changed.notify_all();
    return document;
  }

  void run(const QString& path) {
    try {
      PdfFile file(path);
      while (const auto document = next()) {
        for (const sheet::SheetPage& page : document->pages) {
          m_result = file.add(page, document->title);
          if (!m_result) return giveUp();
        }
      }
      const std::unique_lock lock(m_mutex);
      if (m_state == State::Finish) m_result = file.commit();
    } catch (...) {
      m_bug = std::current_exception();
      giveUp();
    }
  }

  void giveUp() {
    const std::lock_guard lock(m_mutex);
    m_gaveUp = true;
    m_changed.notify_all();
  }

  std::mutex m_mutex;
  std::condition_variable m_changed;
  std::deque<sheet::SheetDocument> m_waiting;
  State m_state = State::Open;
  bool m_gaveUp = false;
  base::Result<void> m_result;  ///< read after the thread has ended
  std::exception_ptr m_bug;     ///< the same
  std::thread m_thread;
};

}  // namespace

base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path,
                            base::Progress& progress) {
  needApplication();
  if (document.pages.empty()) return noPages(path);
  PdfFile file(path);
  const auto pages = static_cast<double>(document.pages.size());
  double done = 0;
  for (const sheet::SheetPage& page : document.pages) {
    if (progress.cancelled()) return stopped();
    const auto added = file.add(page, document.title);
    if (!added) return added.failure();
    progress.report(++done / pages);
  }
  if (progress.cancelled()) return stopped();
  return file.commit();
}

base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path) {
  base::Progress quiet;
  return writePdf(document, path, quiet);
}

base::Result<SheetsOnPaper> writeSheets(std::size_t count, const MakeSheet& make,
                                        const QString& path, base::Progress& progress) {
  needApplication();
  if (count == 0) return noPages(path);
  SheetsOnPaper out;
  PageWriter writer(path);
  for (std::size_t i = 0; i < count; ++i) {
    if (progress.cancelled()) return stopped();
    auto made = make(i);
    if (!made) return made.failure();
    if (made->document.pages.empty()) return noPages(path);
    out.pages += made->document.pages.size();
    sheet::SheetDocument document = std::move(made->document);
    made->document = {};
    made->document.title = document.title;
    made->document.sheetNumber = document.sheetNumber;
    out.sheets.push_back(std::move(*made));
    if (!writer.add(std::move(document))) break;
    progress.report(static_cast<double>(i + 1) / static_cast<double>(count + 1));
  }
  if (progress.cancelled()) return stopped();
  const auto written = writer.finish();
  if (!written) return written.failure();
  progress.report(1);
  return out;
}

}  // namespace outyard::print
