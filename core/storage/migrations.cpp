// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/migrations.h"

#include <QFile>
#include <stdexcept>

#include "core/base/log.h"
#include "core/storage/file_header.h"

namespace outyard::storage {

std::vector<QString> shippedMigrations() {
  std::vector<QString> out;
  while (true) {
    const QString name = QStringLiteral(":/migrations/%1.sql")
                             .arg(static_cast<int>(out.size()) + 1, 4, 10, QLatin1Char('0'));
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly)) break;
    out.push_back(QString::fromUtf8(file.readAll()));
  }
  if (out.empty()) throw std::logic_error("the program was built without its migrations");
  return out;
}

QStringList statementsOf(const QString& migration) {
  QStringList out;
  QString statement;
  const QStringList lines = migration.split(QLatin1Char('\n'));
  for (const QString& line : lines) {
    const QString text = line.trimmed();
    if (text.isEmpty() || text.startsWith(QStringLiteral("--"))) continue;
    statement += line + QLatin1Char('\n');
    if (text.endsWith(QLatin1Char(';'))) {
      statement.chop(2);  // the semicolon and the line's end
      out.push_back(statement);
      statement.clear();
    }
  }
  if (!statement.isEmpty()) throw std::logic_error("a migration ends inside a statement");
  return out;
}

base::Result<void> migrate(Database& database, int from, const std::vector<QString>& migrations) {
  for (std::size_t i = static_cast<std::size_t>(from); i < migrations.size(); ++i) {
    Database::Transaction transaction(database);
    if (auto r = transaction.begin(); !r) return r;
    for (const QString& statement : statementsOf(migrations[i])) {
      if (auto r = database.exec(statement); !r) return r;
    }
    const auto set = [&](const QString& pragma, qint64 number) {
      return database.exec(QStringLiteral("PRAGMA %1 = %2").arg(pragma).arg(number));
    };
    if (auto r = set(QStringLiteral("application_id"), kApplicationId); !r) return r;
    if (auto r = set(QStringLiteral("user_version"), static_cast<qint64>(i) + 1); !r) return r;
    if (auto r = transaction.commit(); !r) return r;
    base::log("storage: schema is now version " + std::to_string(i + 1));
  }
  return {};
}

}  // namespace outyard::storage
