// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>
#include <optional>
#include <regex>
#include <set>

#include "tests/architecture/source_tree.h"

namespace outyard::architecture {
namespace {

using Rooms = std::set<std::string>;

/// Who may include whom, apart from itself. A room that is not here is a fault: give it a line.
const std::map<std::string, Rooms>& includeTable() {
  static const Rooms kPure{"core/base", "core/apiary", "core/strength", "core/forecast",
                           "core/planning"};
  static const Rooms kCoreForUi{"core/base",     "core/apiary", "core/strength", "core/forecast",
                                "core/planning", "core/sheet",  "core/session",  "core/exchange"};
  const auto with = [](Rooms rooms, const Rooms& more) {
    rooms.insert(more.begin(), more.end());
    return rooms;
  };
  static const Rooms kTools = with(kCoreForUi, {"ui/adapt", "ui/print", "ui/widgets"});
  static const std::map<std::string, Rooms> kTable{
      {"core/base", {}},
      {"core/apiary", {"core/base"}},
      {"core/strength", {"core/base", "core/apiary"}},
      {"core/forecast", {"core/base", "core/apiary", "core/strength"}},
      {"core/planning", {"core/base", "core/apiary", "core/strength", "core/forecast"}},
      {"core/sheet", kPure},
      {"core/session", kPure},
      {"core/storage", {"core/base", "core/apiary", "core/session"}},
      {"core/exchange", {"core/base", "core/apiary", "core/planning", "core/session"}},
      {"ui/adapt", kCoreForUi},
      {"ui/print", with(kCoreForUi, {"ui/adapt"})},
      {"ui/widgets", with(kCoreForUi, {"ui/adapt", "ui/print"})},
      {"ui/charts", kTools},
      {"ui/desk", kTools},
      {"ui/yards", with(kTools, {"ui/charts"})},
      {"ui/hive", with(kTools, {"ui/charts"})},
      {"ui/pairs", kTools},
      {"ui/entry", kTools},
      {"ui/calendar", kTools},
      {"ui/rounds", kTools},
      {"ui/main_window", with(kTools, {"ui/charts", "ui/desk", "ui/yards", "ui/hive", "ui/pairs",
                                       "ui/entry", "ui/calendar", "ui/rounds"})},
  };
  return kTable;
}

const Rooms kPlaces{"ui/desk", "ui/yards", "ui/hive", "ui/pairs", "ui/calendar", "ui/rounds"};

struct Include {
  std::string from, file;  // room and file that includes
  std::string what;        // between the quotes or angle brackets
  bool quoted = true;
  std::size_t line = 0;
};

std::string roomOf(const std::string& path) {
  if (path.rfind("app/", 0) == 0) return "app";
  const auto first = path.find('/');
  const auto second = first == std::string::npos ? first : path.find('/', first + 1);
  return second == std::string::npos ? path.substr(0, first) : path.substr(0, second);
}

std::vector<Include> includesOf(const std::vector<std::string>& folders) {
  static const std::regex kInclude(R"re(#\s*include\s*(["<])([^">]+)[">])re");
  std::vector<Include> out;
  for (const auto& file : filesBelow(folders, {".h", ".cpp", ".cc", ".inc"})) {
    const std::string text = withoutComments(textOf(file));
    const std::string name = nameOf(file);
    for (std::sregex_iterator it(text.begin(), text.end(), kInclude), end; it != end; ++it) {
      out.push_back({roomOf(name), name, (*it)[2].str(), (*it)[1] == "\"",
                     lineOf(text, static_cast<std::size_t>(it->position()))});
    }
  }
  return out;
}

std::string at(const Include& i) {
  return i.file + ":" + std::to_string(i.line) + ": includes " + i.what;
}

/// What is wrong with one include, or nullopt.
std::optional<std::string> faultOf(const Include& i) {
  if (!i.quoted || i.from == "app") return std::nullopt;
  // What the Meta-Object Compiler makes stands beside its source.
  if (i.what.size() > 4 && i.what.substr(i.what.size() - 4) == ".moc") return std::nullopt;
  if (i.what.find('/') == std::string::npos) return "not from the root of the tree";
  const std::string target = roomOf(i.what);
  if (target == "app") return "nothing includes app";
  const auto& table = includeTable();
  const auto row = table.find(i.from);
  if (row == table.end()) return "room " + i.from + " has no line in the table";
  if (target == i.from) return std::nullopt;
  if (!row->second.contains(target)) return i.from + " may not include " + target;
  if (i.from == "core/storage" && target == "core/session" && i.what != "core/session/store.h") {
    return "storage knows only the store interface of session";
  }
  return std::nullopt;
}

TEST(IncludeTable, EveryIncludeIsAllowed) {
  const auto includes = includesOf({"core", "ui", "app"});
  ASSERT_GT(includes.size(), 100u);
  for (const auto& i : includes) {
    const auto fault = faultOf(i);
    EXPECT_FALSE(fault) << at(i) << ": " << fault.value_or("");
  }
}

TEST(IncludeTable, EveryIncludedFileStands) {
  for (const auto& i : includesOf({"core", "ui", "app", "tests"})) {
    if (!i.quoted || i.what.find('/') == std::string::npos) continue;
    EXPECT_TRUE(fs::exists(sourceRoot() / i.what)) << at(i);
  }
}

TEST(IncludeTable, PureRoomsKnowNoQt) {
  const std::regex qt("(Q[A-Za-z].*|Qt[A-Z].*/.*|qt.*)");
  for (const auto& i : includesOf({"core"})) {
    if (i.from == "core/storage" || i.quoted) continue;
    EXPECT_FALSE(std::regex_match(i.what, qt)) << at(i);
  }
}

TEST(IncludeTable, QtClassesAreIncludedNotModules) {
  const std::regex module("Qt(Core|Gui|Widgets|Sql|Svg|Charts|PrintSupport|Test)(/.*)?");
  for (const auto& i : includesOf({"core", "ui", "app", "tests"})) {
    EXPECT_FALSE(std::regex_match(i.what, module)) << at(i);
  }
}

// The rules themselves, on includes that are wrong: a table that lets everything through fails.
TEST(IncludeTable, FindsWrongIncludes) {
  const auto fault = [](const char* from, const char* what) {
    return faultOf({from, std::string(from) + "/x.cpp", what, true, 1}).has_value();
  };
  EXPECT_TRUE(fault("core/base", "core/apiary/state.h"));
  EXPECT_TRUE(fault("core/strength", "core/planning/boost.h"));
  EXPECT_TRUE(fault("core/sheet", "core/session/session.h"));
  EXPECT_TRUE(fault("core/planning", "ui/adapt/words.h"));
  EXPECT_TRUE(fault("core/storage", "core/session/session.h"));
  EXPECT_TRUE(fault("ui/widgets", "core/storage/file_store.h"));
  EXPECT_TRUE(fault("ui/adapt", "ui/widgets/dialogs.h"));
  EXPECT_TRUE(fault("ui/main_window", "app/verbs.h"));
  EXPECT_TRUE(fault("ui/nowhere", "core/base/date.h"));
  EXPECT_TRUE(fault("core/apiary", "state.h"));
  for (const auto& place : kPlaces) {
    for (const auto& other : kPlaces) {
      EXPECT_EQ(fault(place.c_str(), (other + "/place.h").c_str()), place != other)
          << place << " and " << other;
    }
  }
  EXPECT_FALSE(fault("core/storage", "core/session/store.h"));
  EXPECT_FALSE(fault("ui/main_window", "ui/pairs/place.h"));
}

// The link lines of CMake and the table are two views of the same arrows: no room links upwards.
TEST(IncludeTable, EveryRoomOfCMakeHasALine) {
  for (const std::string top : {"core", "ui"}) {
    for (const auto& entry : fs::directory_iterator(sourceRoot() / top)) {
      if (!entry.is_directory()) continue;
      EXPECT_TRUE(includeTable().contains(top + "/" + entry.path().filename().string()))
          << entry.path().filename();
    }
  }
}

}  // namespace
}  // namespace outyard::architecture
