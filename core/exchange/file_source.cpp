// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/file_source.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <system_error>

namespace outyard::exchange {
namespace {

namespace fs = std::filesystem;
using base::message;

struct Closer {
  void operator()(std::FILE* f) const { std::fclose(f); }
};
using File = std::unique_ptr<std::FILE, Closer>;

std::string reason(int error) {
  return std::generic_category().message(error);
}

}  // namespace

base::Result<std::string> readFile(const fs::path& path) {
  std::error_code ec;
  if (fs::is_directory(path, ec)) {
    return base::fail(message("exchange.cannot_read", path.string(), reason(EISDIR)));
  }
  const File file(std::fopen(path.c_str(), "rb"));
  if (!file) return base::fail(message("exchange.cannot_read", path.string(), reason(errno)));
  std::string text;
  std::array<char, 1 << 16> buffer{};
  while (true) {
    const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), file.get());
    text.append(buffer.data(), n);
    if (n < buffer.size()) break;
  }
  if (std::ferror(file.get()) != 0) {
    return base::fail(message("exchange.cannot_read", path.string(), reason(errno)));
  }
  return text;
}

base::Result<std::vector<std::string>> FolderSource::list() const {
  std::error_code ec;
  fs::directory_iterator it(m_folder, ec);
  if (ec) return base::fail(message("exchange.cannot_read", m_folder.string(), ec.message()));
  std::vector<std::string> names;
  for (const fs::directory_iterator end; it != end; it.increment(ec)) {
    if (ec) break;
    std::error_code ignored;
    if (it->is_regular_file(ignored)) names.push_back(it->path().filename().string());
  }
  if (ec) return base::fail(message("exchange.cannot_read", m_folder.string(), ec.message()));
  std::sort(names.begin(), names.end());
  return names;
}

base::Result<std::string> FolderSource::read(const std::string& name) const {
  return readFile(m_folder / name);
}

base::Result<std::vector<std::string>> MemorySource::list() const {
  std::vector<std::string> names;
  for (const auto& [name, text] : m_files) names.push_back(name);
  return names;
}

base::Result<std::string> MemorySource::read(const std::string& name) const {
  const auto it = m_files.find(name);
  if (it == m_files.end()) {
    return base::fail(message("exchange.cannot_read", name, reason(ENOENT)));
  }
  return it->second;
}

FolderSink::~FolderSink() {
  std::error_code ignored;
  for (const auto& [temporary, target] : m_pending) fs::remove(temporary, ignored);
}

base::Result<void> FolderSink::write(const std::string& name, const std::string& text) {
  std::error_code ec;
  fs::create_directories(m_folder, ec);
  if (ec) return base::fail(message("exchange.cannot_write", m_folder.string(), ec.message()));
  const fs::path target = m_folder / name;
  const fs::path temporary = m_folder / ("." + name + ".part");
  if (fs::is_directory(target, ec)) {
    return base::fail(message("exchange.cannot_write", target.string(), reason(EISDIR)));
  }
  std::FILE* file = std::fopen(temporary.c_str(), "wb");
  if (!file) {
    return base::fail(message("exchange.cannot_write", target.string(), reason(errno)));
  }
  m_pending.emplace_back(temporary, target);
  // A full disk may show only when the buffer is flushed or the file closed: each is asked.
  int error = 0;
  if (std::fwrite(text.data(), 1, text.size(), file) != text.size()) error = errno;
  if (std::fflush(file) != 0 && error == 0) error = errno;
  if (std::fclose(file) != 0 && error == 0) error = errno;
  if (error != 0) {
    return base::fail(message("exchange.cannot_write", target.string(), reason(error)));
  }
  return {};
}

base::Result<void> FolderSink::commit() {
  while (!m_pending.empty()) {
    const auto& [temporary, target] = m_pending.back();
    std::error_code ec;
    fs::rename(temporary, target, ec);
    if (ec) return base::fail(message("exchange.cannot_write", target.string(), ec.message()));
    m_pending.pop_back();
  }
  return {};
}

base::Result<void> MemorySink::write(const std::string& name, const std::string& text) {
  m_files[name] = text;
  return {};
}

}  // namespace outyard::exchange
