// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/schema.h"

#include <QSqlQuery>
#include <QVariant>
#include <map>

#include "core/base/text.h"
#include "core/storage/database.h"
#include "core/storage/migrations.h"
#include "tests/core/storage/storage_fixture.h"

namespace outyard::storage {
namespace {

using apiary::ColumnSpec;
using apiary::ColumnType;

/// The schema of the migrations against apiary::tableSpecs(), column by column, and what its
/// checks do against what the descriptions say.
struct SchemaTest : StorageFixture {
  std::unique_ptr<Database> database;
  void SetUp() override {
    database = std::move(Database::open(file(), Database::Mode::Write).value());
    ASSERT_TRUE(migrate(*database, 0, shippedMigrations()).ok());
    ASSERT_TRUE(database->exec(QStringLiteral("PRAGMA foreign_keys = OFF")).ok());
  }
  std::vector<std::vector<QString>> all(const QString& sql, int columns) {
    std::vector<std::vector<QString>> out;
    auto query = std::move(database->prepare(sql).value());
    EXPECT_TRUE(database->run(query).ok()) << sql.toStdString();
    while (query.next()) {
      std::vector<QString> row;
      for (int i = 0; i < columns; ++i) row.push_back(query.value(i).toString());
      out.push_back(row);
    }
    return out;
  }
  bool accepts(const std::string& table, const std::map<std::string, std::string>& literals) {
    std::string names, values;
    for (const auto& [name, literal] : literals) {
      names += (names.empty() ? "" : ", ") + ("\"" + name + "\"");
      values += (values.empty() ? "" : ", ") + literal;
    }
    const std::string sql = "INSERT INTO \"" + table + "\" (" + names + ") VALUES (" + values + ")";
    const bool ok = database->exec(QString::fromStdString(sql)).ok();
    if (ok) {
      EXPECT_TRUE(database->exec(QString::fromStdString("DELETE FROM \"" + table + "\"")).ok());
    }
    return ok;
  }
};

std::string numeral(double v, ColumnType type) {
  std::string s = base::shortest(v);
  if (type == ColumnType::Real && s.find('.') == std::string::npos) s += ".0";
  return s;
}

std::string goodLiteral(const ColumnSpec& c) {
  switch (c.type) {
    case ColumnType::Text:
      return "'x'";
    case ColumnType::Date:
      return "'2026-04-25'";
    case ColumnType::Time:
      return "'23:59'";
    case ColumnType::Flag:
      return "1";
    case ColumnType::Code:
      return "'" + std::string(c.codes.back()) + "'";
    default:
      return numeral(c.max, c.type);
  }
}

std::vector<std::string> badLiterals(const ColumnSpec& c) {
  switch (c.type) {
    case ColumnType::Text:
      return {"x'00'"};  // STRICT: bytes are no text
    case ColumnType::Date:
      return {"'25.4.2026'", "'2026-4-25'", "20260425"};
    case ColumnType::Time:
      return {"'9:05'", "'nine'"};
    case ColumnType::Flag:
      return {"2", "'yes'"};
    case ColumnType::Code:
      return {"'no_such_code'", "0"};
    default:
      return {numeral(c.max + 1, c.type), numeral(c.min - 1, c.type), "'many'"};
  }
}

TEST_F(SchemaTest, TablesAndColumnsAgree) {
  const auto tables =
      all(QStringLiteral("SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND "
                         "name NOT LIKE 'sqlite_%'"),
          2);
  EXPECT_EQ(tables.size(), apiary::tableSpecs().size());
  for (const auto& t : tables) {
    EXPECT_NE(apiary::findTable(t[0].toStdString()), nullptr) << t[0].toStdString();
    EXPECT_EQ(t[1].toStdString(), "1") << t[0].toStdString() << " is STRICT";
  }
  for (const auto& spec : apiary::tableSpecs()) {
    const auto columns = all(QStringLiteral("SELECT name, type, \"notnull\", pk FROM "
                                            "pragma_table_info('%1') ORDER BY cid")
                                 .arg(QString::fromStdString(spec.name)),
                             4);
    ASSERT_EQ(columns.size(), spec.columns.size()) << spec.name;
    int key = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const ColumnSpec& c = spec.columns[i];
      SCOPED_TRACE(spec.name + "." + c.name);
      EXPECT_EQ(columns[i][0].toStdString(), c.name);
      const std::string type = c.type == ColumnType::Real ? "REAL"
                               : c.type == ColumnType::Integer || c.type == ColumnType::Flag
                                   ? "INTEGER"
                                   : "TEXT";
      EXPECT_EQ(columns[i][1].toStdString(), type);
      // A key column that may be missing holds '' instead of NULL.
      EXPECT_EQ(columns[i][2].toStdString(), c.required || c.key ? "1" : "0");
      EXPECT_EQ(columns[i][3].toInt(), c.key ? ++key : 0);
    }
  }
}

TEST_F(SchemaTest, ChecksRefuseWhatTheDescriptionsRefuse) {
  for (const auto& spec : apiary::tableSpecs()) {
    std::map<std::string, std::string> bare, full;
    for (const auto& c : spec.columns) {
      full[c.name] = goodLiteral(c);
      if (c.required) bare[c.name] = goodLiteral(c);
    }
    EXPECT_TRUE(accepts(spec.name, full)) << spec.name;
    EXPECT_TRUE(accepts(spec.name, bare)) << spec.name;
    for (const auto& c : spec.columns) {
      SCOPED_TRACE(spec.name + "." + c.name);
      if (c.required) {
        auto without = full;
        without[c.name] = "NULL";
        EXPECT_FALSE(accepts(spec.name, without));
      }
      for (const std::string& bad : badLiterals(c)) {
        auto row = full;
        row[c.name] = bad;
        EXPECT_FALSE(accepts(spec.name, row)) << bad;
      }
      for (const auto& code : c.codes) {
        auto row = full;
        row[c.name] = "'" + std::string(code) + "'";
        EXPECT_TRUE(accepts(spec.name, row)) << code;
      }
      if (c.type == ColumnType::Integer || c.type == ColumnType::Real) {
        auto row = full;
        row[c.name] = numeral(c.min, c.type);
        EXPECT_TRUE(accepts(spec.name, row)) << "the lower bound";
      }
    }
  }
}

TEST_F(SchemaTest, PragmasHold) {
  EXPECT_EQ(database->value(QStringLiteral("PRAGMA journal_mode")).value().toStdString(), "delete");
  EXPECT_EQ(database->value(QStringLiteral("PRAGMA synchronous")).value().toStdString(), "2");
  auto other = std::move(Database::open(file("b"), Database::Mode::Write).value());
  EXPECT_EQ(other->value(QStringLiteral("PRAGMA foreign_keys")).value().toStdString(), "1");
}

TEST_F(SchemaTest, StatementsEndAtTheLinesEnd) {
  EXPECT_EQ(statementsOf(QStringLiteral("-- a; b\nA\n  B;\n\nC;\n")).size(), 2);
  EXPECT_THROW(statementsOf(QStringLiteral("A\n")), std::logic_error);
}

}  // namespace
}  // namespace outyard::storage
