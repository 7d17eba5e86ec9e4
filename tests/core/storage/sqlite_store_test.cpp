// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/sqlite_store.h"

#include <gmock/gmock.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <iostream>

#include "core/storage/migrations.h"
#include "tests/core/storage/storage_fixture.h"
#include "tests/support/random_verbs.h"

namespace outyard::storage {
namespace {

using apiary::ColumnType;
using apiary::TableId;
using apiary::Value;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using tests::allRows;
using tests::keysOf;

struct SqliteStoreTest : StorageFixture {};

std::vector<apiary::Row> rowsIn(const std::string& path) {
  auto store = std::move(open(path).value());
  return allRows(store->load().value());
}

TEST_F(SqliteStoreTest, MakesAnEmptySeasonAndNeverOverwrites) {
  {
    auto store = create(file());
    ASSERT_TRUE(store.ok());
    EXPECT_THAT(allRows((*store)->load().value()), IsEmpty());
    EXPECT_FALSE((*store)->readOnly());
  }
  const std::string before = bytes(file());
  EXPECT_THAT(keysOf(create(file())), ElementsAre("storage.already_there"));
  EXPECT_EQ(bytes(file()), before);
  // Offsets of the header: sqlite.org/fileformat2.html, section 1.3.
  EXPECT_EQ(before.substr(68, 4), "OYRD");
  EXPECT_EQ(before.substr(60, 4), std::string("\0\0\0\2", 4));
  EXPECT_THAT(keysOf(create(file("no/such/folder/x.outyard"))),
              ElementsAre("storage.cannot_create"));
  EXPECT_THAT(checkFile(file()), IsEmpty());
}

TEST_F(SqliteStoreTest, KeepsTheSeasonRowForRow) {
  const auto season = tests::smallSeason();
  made(season).reset();
  EXPECT_EQ(rowsIn(file()), allRows(season));
  EXPECT_FALSE(std::filesystem::exists(file("season.outyard-journal"))) << "closed: one file";
}

/// A value that the column can hold, different from row to row.
Value sampleOf(const apiary::ColumnSpec& c, int n, std::string id) {
  switch (c.type) {
    case ColumnType::Text:
      return id;
    case ColumnType::Integer:
      return static_cast<std::int64_t>(c.min) + n;
    case ColumnType::Real:
      return c.min + (c.max - c.min) * (n == 0 ? 1.0 / 3.0 : 0.7071067811865476);
    case ColumnType::Date:
      return std::string(n == 0 ? "2026-02-28" : "2026-03-01");
    case ColumnType::Time:
      return std::string("09:05");
    case ColumnType::Flag:
      return std::int64_t{n};
    case ColumnType::Code:
      return std::string(c.codes[static_cast<std::size_t>(n) % c.codes.size()]);
  }
  return {};
}

TEST_F(SqliteStoreTest, RoundTripOfEveryTableWithAllColumnsFilled) {
  // Every reference of row n names row n of its table; the second row supersedes the first.
  apiary::ChangeList all;
  for (const auto& spec : apiary::tableSpecs()) {
    for (int n = 0; n < 2; ++n) {
      const std::string number = std::to_string(n);
      apiary::Row row{spec.id, {}};
      for (const auto& c : spec.columns) {
        std::string id = c.name + "-" + number + " \xC3\xA9 'x' \"y\"";
        if (c.name == "other_hive" || c.name == "donor_hive") id.replace(0, c.name.size(), "hive");
        if (c.name == "other_yard") id.replace(0, c.name.size(), "yard");
        if (c.name == "record" || c.name == "inspection") id = "record-" + number;
        if (c.name == "supersedes") id = "record-" + std::to_string(1 - n);
        // A record that counts has no void, rather than void = 0.
        row.values.push_back(sampleOf(c, c.name == "void" ? 1 : n, id));
      }
      all.push_back({spec.id, apiary::rowKey(row), std::nullopt, row});
    }
  }
  {
    auto store = std::move(create(file()).value());
    ASSERT_THAT(keysOf(store->commit(all)), IsEmpty());
  }
  auto store = std::move(open(file()).value());
  const auto season = store->load().value();
  for (const auto& change : all) {
    EXPECT_EQ(season.row(change.table, change.key), change.after)
        << apiary::tableSpec(change.table).name;
  }
  EXPECT_EQ(allRows(season).size(), all.size());
  EXPECT_THAT(checkFile(file()), IsEmpty());
  // Each of them can be changed to a bare row, and taken out.
  apiary::ChangeList bare, gone;
  for (const auto& change : all) {
    apiary::Row row = *change.after;
    const auto& columns = apiary::tableSpec(change.table).columns;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (!columns[i].required && !columns[i].key) row.values[i] = {};
    }
    bare.push_back({change.table, change.key, change.after, row});
    gone.push_back({change.table, change.key, row, std::nullopt});
  }
  ASSERT_THAT(keysOf(store->commit(bare)), IsEmpty());
  const auto emptied = store->load().value();
  for (const auto& change : bare) {
    EXPECT_EQ(emptied.row(change.table, change.key), change.after) << "not recorded is not zero";
  }
  ASSERT_THAT(keysOf(store->commit(gone)), IsEmpty());
  EXPECT_THAT(allRows(store->load().value()), IsEmpty());
}

TEST_F(SqliteStoreTest, WeatherWithAndWithoutAnIssueDay) {
  auto store = made(tests::smallSeason());
  apiary::WeatherDay w;
  w.yard = base::YardId{"TR"};
  w.date = tests::day("2026-04-25");
  const auto add = [&](const apiary::WeatherDay& day) {
    const auto row = apiary::toRow(day);
    return store->commit({{row.table, apiary::rowKey(row), std::nullopt, row}});
  };
  EXPECT_TRUE(add(w).ok());
  EXPECT_THAT(keysOf(add(w)), ElementsAre("storage.row_refused")) << "the same day twice";
  w.kind = apiary::WeatherKind::Forecast;
  w.issued = tests::day("2026-04-23");
  EXPECT_TRUE(add(w).ok());
  const auto season = store->load().value();
  ASSERT_EQ(season.table<apiary::WeatherDay>().size(), 2u);
  int without = 0;
  for (const auto& [key, day] : season.table<apiary::WeatherDay>()) without += day.issued ? 0 : 1;
  EXPECT_EQ(without, 1);
}

TEST_F(SqliteStoreTest, UndoAllIsTheStartAndRedoAllIsTheEnd) {
  const std::uint64_t seed = 20260425;
  std::cout << "seed " << seed << '\n';
  auto own = made(tests::smallSeason());
  auto session = std::move(session::Session::open(std::move(own), ids, clock).value());
  const auto start = allRows(session->season());
  const auto inFile = [&] {  // through a copy: the file itself is held
    EXPECT_TRUE(saveCopy(file(), file("copy.outyard")).ok());
    return rowsIn(file("copy.outyard"));
  };
  tests::RandomVerbs verbs(seed);
  int done = 0;
  for (int i = 0; i < 500; ++i) done += session->execute(*verbs.next(session->season())).ok();
  EXPECT_GT(done, 100) << "too few verbs passed their checks to say anything";
  const auto end = allRows(session->season());
  EXPECT_EQ(inFile(), end);
  while (session->canUndo()) ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(allRows(session->season()), start);
  EXPECT_EQ(inFile(), start);
  while (session->canRedo()) ASSERT_TRUE(session->redo().ok());
  EXPECT_EQ(allRows(session->season()), end);
  EXPECT_EQ(inFile(), end);
  EXPECT_THAT(checkFile(file()), IsEmpty());
}

TEST_F(SqliteStoreTest, ARefusedRowLeavesAllOthersUnwritten) {
  const auto season = tests::smallSeason();
  auto store = made(season);
  apiary::Yard good;
  good.yard = base::YardId{"GOOD"};
  apiary::Hive orphan;
  orphan.hive = base::HiveId{"X"};
  orphan.yard = base::YardId{"NOWHERE"};
  const auto add = [](const auto& r) {
    const auto row = apiary::toRow(r);
    return apiary::Change{row.table, apiary::rowKey(row), std::nullopt, row};
  };
  EXPECT_THAT(keysOf(store->commit({add(good), add(orphan)})), ElementsAre("storage.row_refused"));
  good.latitude = 91;
  EXPECT_THAT(keysOf(store->commit({add(good)})), ElementsAre("storage.row_refused"));
  // A row that is not there any more was changed by somebody else.
  auto row = add(good).after;
  EXPECT_THAT(keysOf(store->commit({{TableId::Yards, "GOOD", row, std::nullopt}})),
              ElementsAre("storage.changed_by_other"));
  EXPECT_EQ(allRows(store->load().value()), allRows(season));
}

TEST_F(SqliteStoreTest, AFullDiskChangesNothing) {
  const auto season = tests::smallSeason();
  auto session = std::move(session::Session::open(made(season), ids, clock).value());
  const auto before = allRows(session->season());
  rlimit old{};
  ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &old), 0);
  auto* const handler = std::signal(SIGXFSZ, SIG_IGN);
  const rlimit small{std::filesystem::file_size(file()), old.rlim_max};
  ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
  std::vector<session::InspectionEntry> many(400);
  for (auto& e : many) {
    e.inspection.hive = base::HiveId{"TR-01"};
    e.inspection.date = tests::day("2026-04-25");
    e.inspection.notes = std::string(1000, 'n');
  }
  const auto done = session->execute(*session::recordInspections(many));
  ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &old), 0);
  std::signal(SIGXFSZ, handler);
  ASSERT_FALSE(done.ok());
  EXPECT_EQ(allRows(session->season()), before);
  EXPECT_FALSE(session->canUndo());
  // The store works on when there is room again.
  EXPECT_TRUE(session->execute(*session::recordInspections(many)).ok());
  session.reset();
  EXPECT_EQ(rowsIn(file()).size(), before.size() + many.size());
}

TEST_F(SqliteStoreTest, RefusesWhatIsNoSeasonFile) {
  write(file("text.outyard"), "hive,yard\nTR-01,TR\n" + std::string(200, 'x'));
  EXPECT_THAT(keysOf(open(file("text.outyard"))), ElementsAre("storage.not_a_season"));
  write(file("empty.outyard"), "");
  EXPECT_THAT(keysOf(open(file("empty.outyard"))), ElementsAre("storage.empty_file"));
  EXPECT_THAT(keysOf(open(file("typo.outyard"))), ElementsAre("storage.no_such_file"));
  EXPECT_FALSE(std::filesystem::exists(file("typo.outyard"))) << "a mistyped path makes no file";
  EXPECT_THAT(keysOf(open(folder.path().toStdString())), ElementsAre("storage.not_a_file"));
  made(tests::smallSeason()).reset();
  const std::string good = bytes(file());
  write(file("cut.outyard"), good.substr(0, good.size() / 2));
  EXPECT_THAT(keysOf(open(file("cut.outyard"))), ElementsAre("storage.cut_short"));
  write(file("stub.outyard"), good.substr(0, 60));
  EXPECT_THAT(keysOf(open(file("stub.outyard"))), ElementsAre("storage.cut_short"));
  std::string other = good;
  other.replace(68, 4, "ABCD");
  write(file("other.outyard"), other);
  EXPECT_THAT(keysOf(open(file("other.outyard"))), ElementsAre("storage.not_a_season"));
  std::string newer = good;
  newer[63] = 99;
  write(file("newer.outyard"), newer);
  const auto refused = open(file("newer.outyard"));
  ASSERT_THAT(keysOf(refused), ElementsAre("storage.newer_version"));
  EXPECT_EQ(std::get<std::int64_t>(refused.failure().messages[0].args.at(1)), 99);
  EXPECT_EQ(bytes(file("newer.outyard")), newer) << "left as it was";
  ASSERT_EQ(checkFile(file("newer.outyard")).size(), 1u);
}

TEST_F(SqliteStoreTest, ADamagedFileIsSaidToBeDamaged) {
  made(tests::smallSeason()).reset();
  std::string bad = bytes(file());
  // Every table page but the first is overwritten.
  for (std::size_t i = 4096; i < bad.size(); i += 512) bad.replace(i, 64, std::string(64, '\xFF'));
  write(file("bad.outyard"), bad);
  EXPECT_THAT(keysOf(open(file("bad.outyard"))), ElementsAre("storage.damaged"));
  EXPECT_FALSE(checkFile(file("bad.outyard")).empty());
}

TEST_F(SqliteStoreTest, OnlyOneHoldsTheFile) {
  auto store = made(tests::smallSeason());
  EXPECT_THAT(keysOf(open(file())), ElementsAre("storage.held_here"));
  // Another program: one that reads the file with the system's own database tool or ours.
  const std::string other = "python3 -c \"import sqlite3; c = sqlite3.connect('" + file() +
                            "', timeout=0.2); c.execute('select count(*) from yards')\" "
                            "2>/dev/null";
  EXPECT_NE(std::system(other.c_str()), 0) << "kept out while open";
  store.reset();
  EXPECT_EQ(std::system(other.c_str()), 0) << "free when closed";
}

TEST_F(SqliteStoreTest, ASecondOpenerGetsASentence) {
  made(tests::smallSeason()).reset();
  // The other program holds the file for as long as its input is open.
  const std::string command = "python3 -c \"import sqlite3,sys; c = sqlite3.connect('" + file() +
                              "', isolation_level=None); c.execute('begin exclusive'); "
                              "open('" +
                              file("ready") + "', 'w').close(); sys.stdin.read()\"";
  FILE* other = popen(command.c_str(), "w");
  ASSERT_NE(other, nullptr);
  for (int i = 0; i < 500 && !std::filesystem::exists(file("ready")); ++i) usleep(10000);
  ASSERT_TRUE(std::filesystem::exists(file("ready")));
  EXPECT_THAT(keysOf(open(file())), ElementsAre("storage.held_by_other"));
  pclose(other);
  EXPECT_TRUE(open(file()).ok());
}

TEST_F(SqliteStoreTest, SaveAsWritesAWholeCopy) {
  const auto season = tests::smallSeason();
  auto store = made(season);
  write(file("copy.outyard"), "an older file");
  ASSERT_TRUE(saveCopy(file(), file("copy.outyard")).ok()) << "while it is open";
  EXPECT_EQ(rowsIn(file("copy.outyard")), allRows(season));
  EXPECT_THAT(keysOf(saveCopy(file(), file())), ElementsAre("storage.copy_onto_itself"));
  EXPECT_THAT(keysOf(saveCopy(file(), file("none/x.outyard"))), ElementsAre("storage.copy_failed"));
  auto second = std::move(open(file("copy.outyard")).value());
  EXPECT_THAT(keysOf(saveCopy(file(), file("copy.outyard"))), ElementsAre("storage.held_here"));
  store.reset();
  ASSERT_TRUE(saveCopy(file(), file("later.outyard")).ok()) << "and when it is closed";
  EXPECT_EQ(rowsIn(file("later.outyard")), allRows(season));
  for (const auto& entry : std::filesystem::directory_iterator(folder.path().toStdString())) {
    EXPECT_NE(entry.path().extension(), ".part");
  }
}

TEST_F(SqliteStoreTest, AReadOnlyFolderCanBeLookedAt) {
  if (geteuid() == 0) GTEST_SKIP() << "the superuser may write everywhere";
  const auto season = tests::smallSeason();
  made(season).reset();
  namespace fs = std::filesystem;
  const auto allowed = fs::perms::owner_read | fs::perms::owner_exec;
  fs::permissions(folder.path().toStdString(), allowed);
  {
    auto store = open(file());
    ASSERT_TRUE(store.ok());
    EXPECT_TRUE((*store)->readOnly());
    EXPECT_EQ(allRows((*store)->load().value()), allRows(season));
    EXPECT_THAT(keysOf((*store)->commit(asChanges(season))), ElementsAre("storage.read_only"));
    EXPECT_THAT(checkFile(file()), IsEmpty());
    EXPECT_THAT(keysOf(create(file("new.outyard"))), ElementsAre("storage.cannot_create"));
  }
  fs::permissions(folder.path().toStdString(), allowed | fs::perms::owner_write);
}

// One small file of every released schema, as the program of that day wrote it.
TEST_F(SqliteStoreTest, FilesOfEveryReleasedSchemaOpen) {
  const std::size_t released = shippedMigrations().size();
  for (std::size_t version = 1; version <= released; ++version) {
    const std::string name = "schema_" + std::to_string(version) + ".outyard";
    SCOPED_TRACE(name);
    const std::string kept = std::string(OUTYARD_SOURCE_DIR "/tests/data/") + name;
    ASSERT_TRUE(std::filesystem::exists(kept)) << "keep a file of each schema that is released";
    write(file(name.c_str()), bytes(kept));
    EXPECT_EQ(rowsIn(file(name.c_str())), allRows(tests::smallSeason()));
    EXPECT_THAT(checkFile(file(name.c_str())), IsEmpty());
  }
}

TEST_F(SqliteStoreTest, AMigrationMakesADatedCopyFirst) {
  const auto season = tests::smallSeason();
  made(season).reset();
  OpenOptions options;
  options.clock = &clock;
  options.migrations = shippedMigrations();
  options.migrations.push_back(
      QStringLiteral("-- a later schema\nALTER TABLE \"yards\"\n"
                     "  ADD COLUMN \"colour\" TEXT;\n"));
  {
    const auto store = open(file(), options);
    ASSERT_TRUE(store.ok());
    ASSERT_TRUE((*store)->copyBeforeMigration());
    EXPECT_EQ(*(*store)->copyBeforeMigration(), file("season-before-v3-2026-12-31.outyard"));
    EXPECT_EQ(allRows((*store)->load().value()), allRows(season));
  }
  EXPECT_EQ(bytes(file()).substr(60, 4), std::string("\0\0\0\3", 4));
  EXPECT_THAT(keysOf(open(file())), ElementsAre("storage.newer_version"));
  const std::string copy = file("season-before-v3-2026-12-31.outyard");
  EXPECT_EQ(rowsIn(copy), allRows(season));
  EXPECT_THAT(bytes(copy + ".sha256"), HasSubstr("season-before-v3-2026-12-31.outyard"));
  EXPECT_EQ(bytes(copy + ".sha256").find(' '), 64u);
}

TEST_F(SqliteStoreTest, AFailedMigrationLeavesTheOldSchema) {
  const auto season = tests::smallSeason();
  made(season).reset();
  OpenOptions options;
  options.clock = &clock;
  options.migrations = shippedMigrations();
  options.migrations.push_back(
      QStringLiteral("CREATE TABLE \"extra\" (\"a\" TEXT) STRICT;\n"
                     "ALTER TABLE \"no_such_table\" ADD \"b\" TEXT;\n"));
  EXPECT_FALSE(open(file(), options).ok());
  EXPECT_EQ(rowsIn(file()), allRows(season)) << "the version before opens as it was";
}

}  // namespace
}  // namespace outyard::storage
