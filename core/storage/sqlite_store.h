// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/message.h"
#include "core/session/store.h"

namespace outyard::storage {

class Database;
class Worker;

/// What opening may be told; everything has a default.
struct OpenOptions {
  /// For the date in the name of the copy made before a migration; the system's when null.
  const base::Clock* clock = nullptr;
  /// In place of the program's own migrations (tests of later schemas).
  std::vector<QString> migrations{};
};

/// A season file: one SQLite database in DELETE mode, held alone while it is open. The connection
/// lives on a thread of its own; load and commit post the work there and wait.
class SqliteStore final : public session::SeasonStore {
 public:
  ~SqliteStore() override;
  base::Result<apiary::Season> load() override;
  base::Result<void> commit(const apiary::ChangeList& changes) override;

  [[nodiscard]] const std::string& path() const { return m_path; }
  /// The file or its folder cannot be written: everything can be looked at, commits are refused.
  [[nodiscard]] bool readOnly() const { return m_readOnly; }
  /// The copy made before the schema was brought up to date, when one was made.
  [[nodiscard]] const std::optional<std::string>& copyBeforeMigration() const { return m_copy; }

 private:
  friend class Opener;
  SqliteStore(std::string path, std::unique_ptr<Worker> worker);

  std::string m_path;
  std::string m_key;  ///< in the list of open files
  std::unique_ptr<Worker> m_worker;
  std::unique_ptr<Database> m_database;  ///< touched on the worker's thread only
  bool m_readOnly = false;
  std::optional<std::string> m_copy;
};

/// A new, empty season file. Refuses to overwrite; leaves nothing behind when it fails.
base::Result<std::unique_ptr<SqliteStore>> create(const std::string& path);
/// Opens a season file: refused for anything else, for files of a newer program, for damaged ones
/// and for one that another program or window holds. An older schema is brought up to date after
/// a dated copy (with its SHA-256 beside it) was made.
base::Result<std::unique_ptr<SqliteStore>> open(const std::string& path,
                                                const OpenOptions& options = {});
/// Save as: a whole, compact copy, written beside its place and then put there in one step. `path`
/// may be open in this program. A file at `to` is replaced; one that is open is not.
base::Result<void> saveCopy(const std::string& path, const std::string& to);
/// What is wrong with the file: structure, every page, references and schema. Empty = nothing.
/// `path` may be open in this program.
std::vector<base::Message> checkFile(const std::string& path);

}  // namespace outyard::storage
