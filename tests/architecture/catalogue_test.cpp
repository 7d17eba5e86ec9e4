// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>

#include "tests/architecture/source_tree.h"

namespace outyard::architecture {
namespace {

struct Call {
  std::string where;
  std::vector<std::string> keys;  // literals in the first argument
  int arguments = 0;              // after the key
  bool open = false;              // arguments are a pack or cannot be counted
};

struct Literal {
  std::string text;
  std::size_t end = 0;  // after the closing quote
};

Literal literalAt(const std::string& text, std::size_t quote) {
  Literal out;
  std::size_t i = quote + 1;
  for (; i < text.size() && text[i] != '"'; ++i) {
    if (text[i] == '\\' && i + 1 < text.size()) ++i;
    out.text += text[i];
  }
  out.end = i + 1;
  return out;
}

/// Reads the arguments from after the opening bracket to its closing one.
Call callAt(const std::string& text, std::size_t begin) {
  Call call;
  int depth = 0, argument = 0;
  bool any = false;
  for (std::size_t i = begin; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"') {
      const Literal l = literalAt(text, i);
      if (argument == 0) call.keys.push_back(l.text);
      any = true;
      i = l.end - 1;
    } else if (c == '\'') {
      i += text[i + 1] == '\\' ? 3 : 2;
    } else if (c == '(' || c == '{' || c == '[') {
      ++depth;
    } else if ((c == ')' || c == '}' || c == ']') && depth-- == 0) {
      break;
    } else if (c == ',' && depth == 0) {
      ++argument;
    } else if (c == '.' && text.compare(i, 3, "...") == 0) {
      call.open = true;
    } else if (!std::isspace(static_cast<unsigned char>(c))) {
      any = true;
    }
  }
  call.arguments = any ? argument : 0;
  return call;
}

std::vector<Call> messageCalls() {
  static const std::regex kCall(R"re((^|[^A-Za-z0-9_.>])message\()re");
  std::vector<Call> out;
  for (const auto& file : filesBelow({"core", "app", "ui"}, {".cpp", ".h"})) {
    const std::string name = nameOf(file);
    if (name == "core/base/message.h") continue;
    const std::string text = withoutComments(textOf(file));
    for (std::sregex_iterator it(text.begin(), text.end(), kCall), end; it != end; ++it) {
      const auto at = static_cast<std::size_t>(it->position() + it->length());
      Call call = callAt(text, at);
      call.where = name + ":" + std::to_string(lineOf(text, at));
      out.push_back(std::move(call));
    }
  }
  return out;
}

/// Key -> English text, from the sources of the catalogue.
std::map<std::string, std::string> catalogue(std::vector<std::string>* twice = nullptr) {
  static const std::regex kEntry(R"re(\{\s*"([a-z0-9_]+(?:\.[a-z0-9_]+)+)"\s*,)re");
  std::map<std::string, std::string> out;
  for (const auto& file : filesBelow({"ui/adapt"}, {".cpp"})) {
    if (file.filename().string().rfind("catalogue_", 0) != 0) continue;
    const std::string text = withoutComments(textOf(file));
    for (std::sregex_iterator it(text.begin(), text.end(), kEntry), end; it != end; ++it) {
      std::string words;
      std::size_t i = static_cast<std::size_t>(it->position() + it->length());
      while (i < text.size() && text[i] != '}') {
        if (text[i] != '"') {
          ++i;
          continue;
        }
        const Literal l = literalAt(text, i);
        if (l.text != "Messages") words += l.text;
        i = l.end;
      }
      const std::string key = (*it)[1].str();
      if (!out.emplace(key, words).second && twice) twice->push_back(nameOf(file) + ": " + key);
    }
  }
  return out;
}

int mostPlace(const std::string& text) {
  int most = 0;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    if (text[i] == '%' && text[i + 1] >= '1' && text[i + 1] <= '9') {
      most = std::max(most, text[i + 1] - '0');
    }
  }
  return most;
}

/// Files whose keys stand in a table of their own instead of in the call.
const std::set<std::string> kKeysInTables{"core/planning/boost_accept.cpp"};

TEST(Catalogue, EveryKeyHasText) {
  const auto words = catalogue();
  const auto calls = messageCalls();
  ASSERT_GT(words.size(), 50u);
  ASSERT_GT(calls.size(), 50u);
  for (const auto& call : calls) {
    const bool inTable = kKeysInTables.contains(call.where.substr(0, call.where.find(':')));
    EXPECT_TRUE(inTable || !call.keys.empty()) << call.where << ": the key is not a literal";
    for (const auto& key : call.keys) {
      EXPECT_TRUE(words.contains(key)) << call.where << ": no text for " << key;
    }
  }
}

// Also what looks like a key and stands in a table: its first word is that of the room's own keys.
TEST(Catalogue, EveryLiteralThatLooksLikeAKeyHasText) {
  static const std::regex kKey(R"re([a-z_]+(\.[a-z0-9_]+)+)re");
  const auto words = catalogue();
  int seen = 0;
  for (const auto& file : filesBelow({"core/planning"}, {".cpp", ".h"})) {
    const std::string text = withoutComments(textOf(file));
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] != '"' || (i > 0 && text[i - 1] == '\'')) continue;
      const Literal l = literalAt(text, i);
      i = l.end - 1;
      if (!std::regex_match(l.text, kKey) || l.text.rfind("planning.", 0) != 0) continue;
      ++seen;
      EXPECT_TRUE(words.contains(l.text)) << nameOf(file) << ": no text for " << l.text;
    }
  }
  EXPECT_GT(seen, 50);
}

TEST(Catalogue, NoTextAsksForMoreThanItGets) {
  const auto words = catalogue();
  for (const auto& call : messageCalls()) {
    if (call.open) continue;
    for (const auto& key : call.keys) {
      const auto entry = words.find(key);
      if (entry == words.end()) continue;
      EXPECT_LE(mostPlace(entry->second), call.arguments) << call.where << ": " << key;
    }
  }
}

TEST(Catalogue, NoKeyStandsTwiceAndNoTextIsEmpty) {
  std::vector<std::string> twice;
  for (const auto& [key, text] : catalogue(&twice)) EXPECT_FALSE(text.empty()) << key;
  for (const auto& where : twice) ADD_FAILURE() << "twice: " << where;
}

TEST(Catalogue, ReadsCallsAsTheyStand) {
  const std::string text = R"re(("a.key", f(1, 2), std::string{"x, y"}))re";
  const Call call = callAt(text, 1);
  EXPECT_EQ(call.keys, std::vector<std::string>{"a.key"});
  EXPECT_EQ(call.arguments, 2);
  const Call chosen = callAt("(late ? \"a.one\" : \"a.two\")", 1);
  EXPECT_EQ(chosen.keys.size(), 2u);
  EXPECT_EQ(chosen.arguments, 0);
  EXPECT_EQ(mostPlace("%2 before %1 and %%"), 2);
}

}  // namespace
}  // namespace outyard::architecture
