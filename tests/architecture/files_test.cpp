// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>

#include "tests/architecture/source_tree.h"

namespace outyard::architecture {
namespace {

constexpr std::size_t kMostLines = 500;
/// Longer files, each with the reason why it is not cut.
const std::map<std::string, std::string>& longFiles() {
  static const std::map<std::string, std::string> kList{};
  return kList;
}

const std::vector<std::string> kFolders{"app", "core", "ui", "resources", "tests", "sample", ".ci"};

std::vector<fs::path> sources() {
  auto out = filesBelow(kFolders, {".cpp", ".h", ".cc", ".inc", ".py", ".sh", ".sql"});
  for (const auto& folder : kFolders) {
    if (!fs::exists(sourceRoot() / folder)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(sourceRoot() / folder)) {
      const std::string name = entry.path().filename().string();
      if (name == "CMakeLists.txt" || (name == "run" && entry.is_regular_file())) {
        out.push_back(entry.path());
      }
    }
  }
  out.push_back(sourceRoot() / "CMakeLists.txt");
  return out;
}

std::string firstLines(const std::string& text, int lines) {
  std::size_t at = 0;
  for (int i = 0; i < lines && at != std::string::npos; ++i) {
    at = text.find('\n', at);
    if (at != std::string::npos) ++at;
  }
  return text.substr(0, at);
}

TEST(Files, EverySourceNamesItsLicence) {
  // Put together from two parts, so that this line is not taken for one.
  const std::string wanted = std::string("SPDX-License-") + "Identifier: GPL-3.0-or-later";
  const auto all = sources();
  ASSERT_GT(all.size(), 50u);
  for (const auto& file : all) {
    EXPECT_NE(firstLines(textOf(file), 3).find(wanted), std::string::npos) << nameOf(file);
  }
  EXPECT_NE(textOf(sourceRoot() / "resources/licence/GPL-3.0.txt").find("Version 3, 29 June 2007"),
            std::string::npos);
}

TEST(Files, NoneIsTooLong) {
  for (const auto& file : sources()) {
    const std::string text = textOf(file);
    const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
    const bool excepted = longFiles().contains(nameOf(file));
    if (excepted) {
      EXPECT_GT(lines, kMostLines) << nameOf(file) << ": needs no exception any more";
    } else {
      EXPECT_LE(lines, kMostLines) << nameOf(file) << ": cut it by what it is about";
    }
  }
}

TEST(Files, NoUnfinishedMarks) {
  const std::regex marks(std::string("\\b(TO") + "DO|FIX" + "ME|XX" + "X|HA" + "CK)\\b|not impl" +
                         "emented|place" + "holder (text|value|data|code)");
  for (const auto& file : sources()) {
    const std::string text = textOf(file);
    std::smatch match;
    EXPECT_FALSE(std::regex_search(text, match, marks))
        << nameOf(file) << ":" << lineOf(text, static_cast<std::size_t>(match.position())) << ": "
        << match.str();
  }
}

TEST(Files, NoPathOfOneMachine) {
  const std::regex path(std::string("(^|[^a-z.$}])/(wo") + "rk|ho" + "me|t" + "mp|ro" + "ot)/");
  for (const auto& file : sources()) {
    const std::string text = textOf(file);
    std::smatch match;
    EXPECT_FALSE(std::regex_search(text, match, path))
        << nameOf(file) << ":" << lineOf(text, static_cast<std::size_t>(match.position())) << ": "
        << match.str();
  }
}

TEST(Files, NamesAreSnakeCase) {
  const std::regex good("[a-z0-9_]+(\\.[a-z0-9]+)?");
  for (const auto& file :
       filesBelow({"app", "core", "ui", "tests", "sample"}, {".cpp", ".h", ".cc", ".py", ".csv"})) {
    EXPECT_TRUE(std::regex_match(file.filename().string(), good)) << nameOf(file);
  }
}

TEST(Files, TopLevelIsAsLaidOut) {
  const std::set<std::string> wanted{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "app",
                                     "core",           "ui",        "resources",     "tests",
                                     "sample"};
  std::set<std::string> found;
  for (const auto& entry : fs::directory_iterator(sourceRoot())) {
    const std::string name = entry.path().filename().string();
    // Dot files apart; build folders are not part of the tree (see .gitignore).
    if (name.front() == '.' || name.rfind("build", 0) == 0) continue;
    found.insert(name);
  }
  EXPECT_EQ(found, wanted);
  for (const char* needed : {"app/run", "tests/run", ".ci/run", "sample/generate.py"}) {
    EXPECT_TRUE(fs::exists(sourceRoot() / needed)) << needed;
  }
}

}  // namespace
}  // namespace outyard::architecture
