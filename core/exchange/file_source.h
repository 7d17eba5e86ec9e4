// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <filesystem>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"

/// Where exchange tables come from and go to: a folder, or memory (tests, the compiled-in sample).
namespace outyard::exchange {

class FileSource {
 public:
  virtual ~FileSource() = default;
  /// Names of the files, without sub-folders, in order.
  [[nodiscard]] virtual base::Result<std::vector<std::string>> list() const = 0;
  [[nodiscard]] virtual base::Result<std::string> read(const std::string& name) const = 0;
  /// What a message calls it.
  [[nodiscard]] virtual std::string place() const = 0;
};

class FolderSource : public FileSource {
 public:
  explicit FolderSource(std::filesystem::path folder) : m_folder(std::move(folder)) {}
  [[nodiscard]] base::Result<std::vector<std::string>> list() const override;
  [[nodiscard]] base::Result<std::string> read(const std::string& name) const override;
  [[nodiscard]] std::string place() const override { return m_folder.string(); }

 private:
  std::filesystem::path m_folder;
};

class MemorySource : public FileSource {
 public:
  explicit MemorySource(std::map<std::string, std::string> files) : m_files(std::move(files)) {}
  [[nodiscard]] base::Result<std::vector<std::string>> list() const override;
  [[nodiscard]] base::Result<std::string> read(const std::string& name) const override;
  [[nodiscard]] std::string place() const override { return "memory"; }

 private:
  std::map<std::string, std::string> m_files;
};

/// Reads one file as bytes.
base::Result<std::string> readFile(const std::filesystem::path& path);

class FileSink {
 public:
  virtual ~FileSink() = default;
  virtual base::Result<void> write(const std::string& name, const std::string& text) = 0;
  /// Makes all that was written stand; before it nothing of the old is touched.
  virtual base::Result<void> commit() = 0;
};

/// Writes into temporary files beside their targets and renames all of them on commit. The folder
/// is made if missing. Without a commit the temporaries are removed.
class FolderSink : public FileSink {
 public:
  explicit FolderSink(std::filesystem::path folder) : m_folder(std::move(folder)) {}
  FolderSink(const FolderSink&) = delete;
  FolderSink& operator=(const FolderSink&) = delete;
  ~FolderSink() override;
  base::Result<void> write(const std::string& name, const std::string& text) override;
  base::Result<void> commit() override;

 private:
  std::filesystem::path m_folder;
  std::vector<std::pair<std::filesystem::path, std::filesystem::path>> m_pending;
};

class MemorySink : public FileSink {
 public:
  base::Result<void> write(const std::string& name, const std::string& text) override;
  base::Result<void> commit() override { return {}; }
  [[nodiscard]] const std::map<std::string, std::string>& files() const { return m_files; }

 private:
  std::map<std::string, std::string> m_files;
};

}  // namespace outyard::exchange
