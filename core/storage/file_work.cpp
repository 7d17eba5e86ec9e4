// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/file_work.h"

#include <unistd.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <QSqlQuery>
#include <QVariant>
#include <filesystem>
#include <map>
#include <system_error>

#include "core/apiary/schema.h"

namespace outyard::storage {
namespace {

using base::message;

QString sqlText(const std::string& text) {
  QString s = QString::fromStdString(text);
  s.replace(QLatin1Char('\''), QStringLiteral("''"));
  return QLatin1Char('\'') + s + QLatin1Char('\'');
}

/// Nothing is trusted to be on the disk before the disk says so.
bool flushed(const std::string& path) {
  QFile file(QString::fromStdString(path));
  return file.open(QIODevice::ReadWrite) && ::fsync(file.handle()) == 0;
}

base::Result<void> writeSum(const std::string& path) {
  QFile file(QString::fromStdString(path));
  QCryptographicHash hash(QCryptographicHash::Sha256);
  if (!file.open(QIODevice::ReadOnly) || !hash.addData(&file)) {
    return base::fail(message("storage.copy_failed", path));
  }
  // QSaveFile notices a full disk, a plain file does not.
  QSaveFile sum(QString::fromStdString(path) + QStringLiteral(".sha256"));
  const QByteArray line = hash.result().toHex() + "  " +
                          QFileInfo(QString::fromStdString(path)).fileName().toUtf8() + "\n";
  if (!sum.open(QIODevice::WriteOnly) || sum.write(line) != line.size() || !sum.commit()) {
    return base::fail(message("storage.copy_failed", path));
  }
  return {};
}

/// All text values of a query's first columns, row by row.
base::Result<std::vector<std::vector<std::string>>> texts(Database& database, const QString& sql,
                                                          int columns) {
  auto query = database.prepare(sql);
  if (!query) return query.failure();
  if (auto r = database.run(*query); !r) return r.failure();
  std::vector<std::vector<std::string>> out;
  while (query->next()) {
    std::vector<std::string> row;
    for (int i = 0; i < columns; ++i) row.push_back(query->value(i).toString().toStdString());
    out.push_back(std::move(row));
  }
  return out;
}

void add(std::vector<base::Message>& out, const base::Failure& failure) {
  out.insert(out.end(), failure.messages.begin(), failure.messages.end());
}

}  // namespace

base::Result<void> copyTo(Database& database, const std::string& to) {
  const std::string temporary = to + ".part";
  std::error_code error;
  std::filesystem::remove(temporary, error);
  auto copied = database.exec(QStringLiteral("VACUUM INTO ") + sqlText(temporary));
  if (!copied || !flushed(temporary)) {
    std::filesystem::remove(temporary, error);
    return base::fail(message("storage.copy_failed", to));
  }
  std::filesystem::rename(temporary, to, error);
  if (error) {
    std::filesystem::remove(temporary, error);
    return base::fail(message("storage.copy_failed", to));
  }
  return {};
}

base::Result<std::string> copyBefore(Database& database, int newVersion, const std::string& date) {
  const std::filesystem::path file(database.path());
  const std::string stem = file.stem().string() + "-before-v" + std::to_string(newVersion) + '-';
  std::filesystem::path copy;
  std::error_code error;
  for (int n = 1; copy.empty() || std::filesystem::exists(copy, error); ++n) {
    const std::string number = n == 1 ? "" : "-" + std::to_string(n);
    copy = file.parent_path() / (stem + date + number + file.extension().string());
  }
  if (auto r = copyTo(database, copy.string()); !r) return r.failure();
  if (auto r = writeSum(copy.string()); !r) return r.failure();
  return copy.string();
}

std::vector<base::Message> inspect(Database& database) {
  std::vector<base::Message> out;
  const auto pages = texts(database, QStringLiteral("PRAGMA integrity_check"), 1);
  if (!pages) {
    add(out, pages.failure());
    return out;
  }
  for (const auto& row : *pages) {
    if (row[0] != "ok") out.push_back(message("storage.damaged", database.path(), row[0]));
  }
  const auto broken = texts(database, QStringLiteral("PRAGMA foreign_key_check"), 3);
  if (!broken) {
    add(out, broken.failure());
    return out;
  }
  std::map<std::pair<std::string, std::string>, int> references;
  for (const auto& row : *broken) ++references[{row[0], row[2]}];
  for (const auto& [tables, count] : references) {
    out.push_back(message("storage.broken_reference", tables.first, tables.second, count));
  }
  for (const auto& spec : apiary::tableSpecs()) {
    const auto columns =
        texts(database,
              QStringLiteral("SELECT name FROM pragma_table_info(%1)").arg(sqlText(spec.name)), 1);
    if (!columns) {
      add(out, columns.failure());
      return out;
    }
    if (columns->empty()) {
      out.push_back(message("storage.table_missing", spec.name));
      continue;
    }
    for (const auto& c : spec.columns) {
      bool there = false;
      for (const auto& row : *columns) there = there || row[0] == c.name;
      if (!there) out.push_back(message("storage.column_missing", spec.name, c.name));
    }
  }
  return out;
}

}  // namespace outyard::storage
