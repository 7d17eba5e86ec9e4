// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/sqlite_store.h"

#include <QDate>
#include <QFile>
#include <QFileInfo>
#include <exception>
#include <map>
#include <mutex>

#include "core/base/log.h"
#include "core/storage/database.h"
#include "core/storage/file_header.h"
#include "core/storage/file_work.h"
#include "core/storage/migrations.h"
#include "core/storage/rows.h"
#include "core/storage/worker.h"

namespace outyard::storage {
namespace {

using base::message;

/// One and the same text for one and the same file.
std::string keyOf(const std::string& path) {
  const QFileInfo info(QString::fromStdString(path));
  const QString canonical = info.canonicalFilePath();
  return (canonical.isEmpty() ? info.absoluteFilePath() : canonical).toStdString();
}

struct OpenFile {
  Worker* worker = nullptr;
  Database* database = nullptr;
};

/// The files that this program has open. Needed because a look at such a file by any other handle
/// would drop the locks of the connection (POSIX), and because the connection keeps others out.
class OpenFiles {
 public:
  static OpenFiles& instance() {
    static OpenFiles files;
    return files;
  }
  void add(const std::string& key, OpenFile file) {
    const std::lock_guard lock(m_mutex);
    m_files[key] = file;
  }
  void remove(const std::string& key) {
    const std::lock_guard lock(m_mutex);
    m_files.erase(key);
  }
  [[nodiscard]] bool holds(const std::string& key) {
    const std::lock_guard lock(m_mutex);
    return m_files.contains(key);
  }
  /// Runs the work on the file's own thread; nullopt when the file is not open. The list stays
  /// locked, so that the file cannot be closed meanwhile.
  template <class F>
  auto on(const std::string& key, F work) -> std::optional<decltype(work(*OpenFile{}.database))> {
    const std::lock_guard lock(m_mutex);
    const auto it = m_files.find(key);
    if (it == m_files.end()) return std::nullopt;
    const OpenFile file = it->second;
    return file.worker->run([&] { return work(*file.database); });
  }

 private:
  std::mutex m_mutex;
  std::map<std::string, OpenFile> m_files;
};

base::Result<void> quickCheck(Database& database) {
  const auto found = database.value(QStringLiteral("PRAGMA quick_check(1)"));
  if (!found) return found.failure();
  if (*found == QStringLiteral("ok")) return {};
  return base::fail(message("storage.damaged", database.path(), found->toStdString()));
}

bool writable(const std::string& path) {
  const QFileInfo info(QString::fromStdString(path));
  // Without a writable folder there is no place for the rollback journal.
  return info.isWritable() && QFileInfo(info.absolutePath()).isWritable();
}

std::string dateOf(const OpenOptions& options) {
  if (options.clock) return options.clock->today().iso();
  return QDate::currentDate().toString(Qt::ISODate).toStdString();
}

}  // namespace

/// Opening in steps; what it made is dropped when a step fails.
class Opener {
 public:
  explicit Opener(const std::string& path)
      : m_store(new SqliteStore(path, std::make_unique<Worker>())) {}

  base::Result<std::unique_ptr<SqliteStore>> open(int version, const OpenOptions& options) {
    const auto migrations = options.migrations.empty() ? shippedMigrations() : options.migrations;
    const int newest = static_cast<int>(migrations.size());
    if (version > newest) {
      return base::fail(message("storage.newer_version", m_store->m_path, version, newest));
    }
    const bool write = writable(m_store->m_path);
    if (!write && version < newest) {
      return base::fail(message("storage.old_and_read_only", m_store->m_path));
    }
    SqliteStore& store = *m_store;
    auto ready = store.m_worker->run([&]() -> base::Result<void> {
      auto database =
          Database::open(store.m_path, write ? Database::Mode::Write : Database::Mode::Read);
      if (!database) return database.failure();
      store.m_database = std::move(*database);
      if (version > 0) {
        if (auto r = quickCheck(*store.m_database); !r) return r;
        if (version < newest) {
          auto copy = copyBefore(*store.m_database, newest, dateOf(options));
          if (!copy) return copy.failure();
          store.m_copy = *copy;
        }
      }
      return migrate(*store.m_database, version, migrations);
    });
    if (!ready) return ready.failure();
    store.m_readOnly = !write;
    store.m_key = keyOf(store.m_path);
    OpenFiles::instance().add(store.m_key, {store.m_worker.get(), store.m_database.get()});
    return std::move(m_store);
  }

 private:
  std::unique_ptr<SqliteStore> m_store;
};

SqliteStore::SqliteStore(std::string path, std::unique_ptr<Worker> worker)
    : m_path(std::move(path)), m_worker(std::move(worker)) {}

SqliteStore::~SqliteStore() {
  if (!m_key.empty()) OpenFiles::instance().remove(m_key);
  m_worker->run([this] { m_database.reset(); });
}

base::Result<apiary::Season> SqliteStore::load() {
  return m_worker->run([this] { return readSeason(*m_database); });
}

base::Result<void> SqliteStore::commit(const apiary::ChangeList& changes) {
  if (m_readOnly) return base::fail(message("storage.read_only", m_path));
  return m_worker->run([&]() -> base::Result<void> {
    Database::Transaction transaction(*m_database);
    if (auto r = transaction.begin(); !r) return r;
    if (auto r = writeChanges(*m_database, changes); !r) return r;
    return transaction.commit();
  });
}

base::Result<std::unique_ptr<SqliteStore>> create(const std::string& path) {
  const QString name = QString::fromStdString(path);
  if (QFileInfo::exists(name)) return base::fail(message("storage.already_there", path));
  {
    // Claims the name: nobody else's file can come between the question and the writing.
    QFile claim(name);
    if (!claim.open(QIODevice::WriteOnly | QIODevice::NewOnly)) {
      return base::fail(message("storage.cannot_create", path));
    }
  }
  auto store = Opener(path).open(0, {});
  if (!store) {
    QFile::remove(name);
    QFile::remove(name + QStringLiteral("-journal"));
  }
  return store;
}

base::Result<std::unique_ptr<SqliteStore>> open(const std::string& path,
                                                const OpenOptions& options) {
  if (OpenFiles::instance().holds(keyOf(path))) {
    return base::fail(message("storage.held_here", path));
  }
  const auto header = readHeader(path);
  if (!header) return header.failure();
  if (header->userVersion < 1) return base::fail(message("storage.not_a_season", path));
  return Opener(path).open(header->userVersion, options);
}

base::Result<void> saveCopy(const std::string& path, const std::string& to) {
  if (keyOf(path) == keyOf(to)) return base::fail(message("storage.copy_onto_itself", to));
  if (OpenFiles::instance().holds(keyOf(to))) {
    return base::fail(message("storage.held_here", to));
  }
  const auto copy = [&](Database& database) { return copyTo(database, to); };
  if (auto done = OpenFiles::instance().on(keyOf(path), copy)) return *done;
  auto store = open(path);
  if (!store) return store.failure();
  return OpenFiles::instance().on(keyOf(path), copy).value();
}

std::vector<base::Message> checkFile(const std::string& path) {
  if (auto found = OpenFiles::instance().on(keyOf(path), inspect)) return *found;
  const auto header = readHeader(path);
  if (!header) return header.failure().messages;
  const int newest = static_cast<int>(shippedMigrations().size());
  if (header->userVersion > newest) {
    return {message("storage.newer_version", path, header->userVersion, newest)};
  }
  auto database = Database::open(path, Database::Mode::Read);
  if (!database) return database.failure().messages;
  return inspect(**database);
}

}  // namespace outyard::storage
