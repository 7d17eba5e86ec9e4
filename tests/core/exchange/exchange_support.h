// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <string>

#include "core/apiary/season.h"
#include "core/exchange/tables.h"

namespace outyard::exchange::testing {

using Files = std::map<std::string, std::string>;

inline base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

inline ImportResult planned(const apiary::Season& season, const Files& files) {
  base::Progress quiet;
  return planImport(season, MemorySource(files), day("2026-04-25"), quiet);
}

/// The fault as "file:line: column key"; the key of a wrapped message is the inner one.
inline std::string shown(const ImportFault& f) {
  const base::Message* m = &f.what;
  while (m->key == "exchange.at_character" || m->key == "exchange.season_row") {
    m = &std::get<base::Message>(m->args.at(1));
  }
  return placeText(f) + " " + m->key;
}

inline std::string allFaults(const ImportResult& r) {
  std::string out;
  for (const auto& f : r.faults) out += shown(f) + "\n";
  return out;
}

/// Imports or fails the test.
inline apiary::Season imported(const Files& files, apiary::Season season = {}) {
  const ImportResult r = planned(season, files);
  EXPECT_TRUE(r.ok()) << allFaults(r);
  season.apply(r.changes);
  return season;
}

inline Files exported(const apiary::Season& season) {
  MemorySink sink;
  base::Progress quiet;
  EXPECT_TRUE(exportTables(season, sink, quiet).ok());
  return sink.files();
}

inline Files folder(const std::filesystem::path& path) {
  const FolderSource source(path);
  Files out;
  const auto names = source.list();
  if (!names) return out;
  for (const auto& name : *names) out[name] = source.read(name).value();
  return out;
}

inline const std::filesystem::path& brokenTables() {
  static const std::filesystem::path path =
      std::filesystem::path(OUTYARD_SOURCE_DIR) / "tests/data/broken_tables";
  return path;
}

}  // namespace outyard::exchange::testing
