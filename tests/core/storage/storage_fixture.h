// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>

#include "core/session/session.h"
#include "core/storage/sqlite_store.h"
#include "tests/support/season_builder.h"

namespace outyard::storage {

/// A folder of its own, and a season file in it that holds the small season.
struct StorageFixture : testing::Test {
  QTemporaryDir folder;
  base::SeededIds ids{4711};
  base::FixedClock clock{tests::day("2026-12-31"), "2026-12-31T18:00:00Z"};

  [[nodiscard]] std::string file(const char* name = "season.outyard") const {
    return folder.path().toStdString() + "/" + name;
  }
  static apiary::ChangeList asChanges(const apiary::Season& season) {
    apiary::ChangeList out;
    for (auto& row : tests::allRows(season)) {
      out.push_back({row.table, apiary::rowKey(row), std::nullopt, row});
    }
    return out;
  }
  std::unique_ptr<SqliteStore> made(const apiary::Season& season) {
    auto store = std::move(create(file()).value());
    EXPECT_TRUE(store->commit(asChanges(season)).ok());
    return store;
  }
  static std::string bytes(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  static void write(const std::string& path, const std::string& content) {
    std::ofstream out(path, std::ios::binary);
    out << content;
  }
};

}  // namespace outyard::storage
