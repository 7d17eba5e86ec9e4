// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QSqlDatabase>
#include <QSqlQuery>
#include <QString>
#include <memory>
#include <string>

#include "core/base/result.h"

namespace outyard::storage {

/// Owns one connection: its pragmas, transactions and the log of what failed. Lives and dies on
/// the thread that opened it.
class Database {
 public:
  enum class Mode {
    Write,  ///< held alone until closed; made if it is not there
    Read    ///< for files and folders that cannot be written
  };
  static base::Result<std::unique_ptr<Database>> open(const std::string& path, Mode mode);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  [[nodiscard]] const std::string& path() const { return m_path; }
  [[nodiscard]] bool readOnly() const { return m_mode == Mode::Read; }

  base::Result<void> exec(const QString& sql);
  /// The statement ready for its values.
  base::Result<QSqlQuery> prepare(const QString& sql);
  /// Runs a prepared statement.
  base::Result<void> run(QSqlQuery& query);
  /// The first value of the first row.
  base::Result<QString> value(const QString& sql);

  /// Rolled back unless committed.
  class Transaction {
   public:
    explicit Transaction(Database& database) : m_database(database) {}
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    base::Result<void> begin();
    base::Result<void> commit();

   private:
    Database& m_database;
    bool m_open = false;
  };

 private:
  Database(std::string path, Mode mode, QString name)
      : m_path(std::move(path)), m_mode(mode), m_name(std::move(name)) {}
  base::Result<void> setUp();
  base::Failure failed(const QSqlError& error) const;

  std::string m_path;
  Mode m_mode;
  QString m_name;
};

}  // namespace outyard::storage
