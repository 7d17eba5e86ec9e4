// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/rows.h"

#include <QSqlError>
#include <QStringList>
#include <QVariant>
#include <exception>
#include <map>

#include "core/apiary/validate.h"

namespace outyard::storage {
namespace {

using apiary::Change;
using apiary::ColumnSpec;
using apiary::ColumnType;
using apiary::Row;
using apiary::TableSpec;
using apiary::Value;
using base::message;

enum class Statement { Insert, Update, Remove };

QString quoted(const std::string& name) {
  return QLatin1Char('"') + QString::fromStdString(name) + QLatin1Char('"');
}

bool keyMayBeMissing(const ColumnSpec& column) {
  return column.key && !column.required;
}

QVariant toSql(const ColumnSpec& column, const Value& value) {
  if (const auto* s = std::get_if<std::string>(&value)) return QString::fromStdString(*s);
  if (const auto* i = std::get_if<std::int64_t>(&value)) {
    if (column.type == ColumnType::Real) return static_cast<double>(*i);
    return static_cast<qlonglong>(*i);
  }
  if (const auto* d = std::get_if<double>(&value)) return *d;
  if (keyMayBeMissing(column)) return QStringLiteral("");
  return {};
}

Value fromSql(const ColumnSpec& column, const QVariant& value) {
  if (value.isNull()) return {};
  switch (column.type) {
    case ColumnType::Integer:
    case ColumnType::Flag:
      return static_cast<std::int64_t>(value.toLongLong());
    case ColumnType::Real:
      return value.toDouble();
    default: {
      const std::string text = value.toString().toStdString();
      return text.empty() ? Value{} : Value{text};
    }
  }
}

QString textOf(const TableSpec& spec, Statement statement) {
  QStringList names, marks, sets, keys;
  for (const ColumnSpec& c : spec.columns) {
    names << quoted(c.name);
    marks << QStringLiteral("?");
    // A key never changes; named in SET, every update would look for rows that refer to it.
    if (!c.key) sets << quoted(c.name) + QStringLiteral(" = ?");
    if (c.key) keys << quoted(c.name) + QStringLiteral(" = ?");
  }
  const QString comma = QStringLiteral(", ");
  const QString where = QStringLiteral(" WHERE ") + keys.join(QStringLiteral(" AND "));
  switch (statement) {
    case Statement::Insert:
      return QStringLiteral("INSERT INTO %1 (%2) VALUES (%3)")
          .arg(quoted(spec.name), names.join(comma), marks.join(comma));
    case Statement::Update:
      return QStringLiteral("UPDATE %1 SET %2").arg(quoted(spec.name), sets.join(comma)) + where;
    case Statement::Remove:
      break;
  }
  return QStringLiteral("DELETE FROM %1").arg(quoted(spec.name)) + where;
}

void bind(QSqlQuery& query, const TableSpec& spec, const Change& change) {
  int at = 0;
  const auto add = [&](const Row& row, bool keys, bool others) {
    for (std::size_t i = 0; i < spec.columns.size(); ++i) {
      const bool wanted = spec.columns[i].key ? keys : others;
      if (wanted) query.bindValue(at++, toSql(spec.columns[i], row.values[i]));
    }
  };
  if (change.after) add(*change.after, !change.before, true);
  if (change.before) add(*change.before, true, false);
}

}  // namespace

base::Result<apiary::Season> readSeason(Database& database) {
  apiary::ChangeList changes;
  for (const TableSpec& spec : apiary::tableSpecs()) {
    QStringList names;
    for (const ColumnSpec& c : spec.columns) names << quoted(c.name);
    auto query = database.prepare(QStringLiteral("SELECT %1 FROM %2")
                                      .arg(names.join(QStringLiteral(", ")), quoted(spec.name)));
    if (!query) return query.failure();
    if (auto r = database.run(*query); !r) return r.failure();
    while (query->next()) {
      Row row{spec.id, {}};
      row.values.reserve(spec.columns.size());
      for (std::size_t i = 0; i < spec.columns.size(); ++i) {
        row.values.push_back(fromSql(spec.columns[i], query->value(static_cast<int>(i))));
      }
      std::string key = apiary::rowKey(row);
      changes.push_back({spec.id, std::move(key), std::nullopt, std::move(row)});
    }
    if (query->lastError().isValid()) {
      return base::fail(message("storage.damaged", database.path(),
                                query->lastError().databaseText().toStdString()));
    }
  }
  apiary::Season season;
  try {
    season.apply(changes);
  } catch (const std::exception&) {
    // A value that the tables' checks let through and the season cannot hold (30 February).
    for (const Change& c : changes) {
      for (const auto& fault : apiary::checkRow(*c.after)) {
        return base::fail(message("storage.bad_row", apiary::tableSpec(c.table).name, c.key,
                                  fault.column, fault.what));
      }
    }
    throw;
  }
  return season;
}

base::Result<void> writeChanges(Database& database, const apiary::ChangeList& changes) {
  std::map<std::pair<apiary::TableId, Statement>, QSqlQuery> ready;
  for (const Change& c : changes) {
    const TableSpec& spec = apiary::tableSpec(c.table);
    if (!c.before && !c.after) continue;
    const Statement kind = !c.before  ? Statement::Insert
                           : !c.after ? Statement::Remove
                                      : Statement::Update;
    auto it = ready.find({c.table, kind});
    if (it == ready.end()) {
      auto query = database.prepare(textOf(spec, kind));
      if (!query) return query.failure();
      it = ready.emplace(std::pair{c.table, kind}, std::move(*query)).first;
    }
    QSqlQuery& query = it->second;
    bind(query, spec, c);
    if (auto r = database.run(query); !r) return r;
    if (query.numRowsAffected() != 1) {
      return base::fail(message("storage.changed_by_other", database.path(), spec.name));
    }
  }
  return {};
}

}  // namespace outyard::storage
