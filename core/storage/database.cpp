// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/database.h"

#include <QSqlError>
#include <QVariant>
#include <atomic>

#include "core/base/log.h"

namespace outyard::storage {
namespace {

using base::message;

// Result codes of sqlite.org/rescode.html; an extended code carries the plain one in its low byte.
constexpr int kBusy = 5, kLocked = 6, kReadOnly = 8, kCorrupt = 11, kFull = 13, kCantOpen = 14,
              kConstraint = 19, kNotADatabase = 26;

QString nextName() {
  static std::atomic<int> counter{0};
  return QStringLiteral("season-%1").arg(++counter);
}

}  // namespace

base::Failure Database::failed(const QSqlError& error) const {
  const int code = error.nativeErrorCode().toInt();
  base::log("storage: error " + std::to_string(code));
  const std::string text = error.databaseText().toStdString();
  switch (code & 0xFF) {
    case kBusy:
    case kLocked:
      return base::fail(message("storage.held_by_other", m_path));
    case kReadOnly:
      return base::fail(message("storage.read_only", m_path));
    case kCorrupt:
    case kNotADatabase:
      return base::fail(message("storage.damaged", m_path, text));
    case kFull:
      return base::fail(message("storage.disk_full", m_path));
    case kCantOpen:
      return base::fail(message("storage.cannot_open", m_path));
    case kConstraint:
      return base::fail(message("storage.row_refused", text));
    default:
      return base::fail(message("storage.disk_refused", m_path, text));
  }
}

base::Result<std::unique_ptr<Database>> Database::open(const std::string& path, Mode mode) {
  std::unique_ptr<Database> database(new Database(path, mode, nextName()));
  if (auto ready = database->setUp(); !ready) return ready.failure();
  return database;
}

base::Result<void> Database::setUp() {
  QSqlDatabase connection = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), m_name);
  if (!connection.isValid()) return base::fail(message("storage.no_driver"));
  connection.setDatabaseName(QString::fromStdString(m_path));
  QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=300");
  if (readOnly()) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
  connection.setConnectOptions(options);
  if (!connection.open()) return failed(connection.lastError());
  // Off by default, and silently without effect in a library built without it: read back.
  if (auto r = exec(QStringLiteral("PRAGMA foreign_keys = ON")); !r) return r;
  const auto keys = value(QStringLiteral("PRAGMA foreign_keys"));
  if (!keys) return keys.failure();
  if (*keys != QStringLiteral("1")) return base::fail(message("storage.no_foreign_keys"));
  if (readOnly()) return exec(QStringLiteral("PRAGMA query_only = ON"));
  // Held alone from here on: a second program that wrote in between would be overwritten, or its
  // rows missed, since the season is read once. Readers are kept out too.
  if (auto r = exec(QStringLiteral("PRAGMA locking_mode = EXCLUSIVE")); !r) return r;
  if (auto r = exec(QStringLiteral("BEGIN EXCLUSIVE")); !r) return r;
  if (auto r = exec(QStringLiteral("COMMIT")); !r) return r;
  // A document file: it is mailed, synchronised and copied, so there is no side file when closed.
  if (auto r = exec(QStringLiteral("PRAGMA journal_mode = DELETE")); !r) return r;
  return exec(QStringLiteral("PRAGMA synchronous = FULL"));
}

Database::~Database() {
  {
    QSqlDatabase connection = QSqlDatabase::database(m_name, false);
    connection.close();
  }
  QSqlDatabase::removeDatabase(m_name);
}

base::Result<void> Database::exec(const QString& sql) {
  QSqlQuery query(QSqlDatabase::database(m_name, false));
  if (!query.exec(sql)) return failed(query.lastError());
  return {};
}

base::Result<QSqlQuery> Database::prepare(const QString& sql) {
  QSqlQuery query(QSqlDatabase::database(m_name, false));
  query.setForwardOnly(true);
  if (!query.prepare(sql)) return failed(query.lastError());
  return query;
}

base::Result<void> Database::run(QSqlQuery& query) {
  if (!query.exec()) return failed(query.lastError());
  return {};
}

base::Result<QString> Database::value(const QString& sql) {
  auto query = prepare(sql);
  if (!query) return query.failure();
  if (auto r = run(*query); !r) return r.failure();
  if (!query->next()) return QString();
  return query->value(0).toString();
}

Database::Transaction::~Transaction() {
  if (m_open) static_cast<void>(m_database.exec(QStringLiteral("ROLLBACK")));
}

base::Result<void> Database::Transaction::begin() {
  auto begun = m_database.exec(QStringLiteral("BEGIN IMMEDIATE"));
  m_open = begun.ok();
  return begun;
}

base::Result<void> Database::Transaction::commit() {
  auto done = m_database.exec(QStringLiteral("COMMIT"));
  // A commit that was refused (a full disk, a broken reference) leaves the transaction open.
  if (done) m_open = false;
  return done;
}

}  // namespace outyard::storage
