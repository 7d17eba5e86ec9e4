// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_json.h"

#include <gtest/gtest.h>

#include <cctype>
#include <map>
#include <memory>
#include <stdexcept>

#include "tests/core/planning/problem_maker.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

/// A plain reader of JSON (RFC 8259) that throws on anything else.
struct Json {
  enum class Kind { Null, Number, Text, List, Object } kind = Kind::Null;
  double number = 0;
  std::string text;
  std::vector<Json> list;
  std::map<std::string, Json> object;
  const Json& operator[](const std::string& key) const { return object.at(key); }
  [[nodiscard]] bool has(const std::string& key) const { return object.contains(key); }
};

class Reader {
 public:
  explicit Reader(const std::string& s) : m_s(s) {}
  Json all() {
    Json j = value();
    blank();
    if (m_at != m_s.size()) throw std::runtime_error("text after the end");
    return j;
  }

 private:
  void blank() {
    while (m_at < m_s.size() && std::isspace(static_cast<unsigned char>(m_s[m_at]))) ++m_at;
  }
  char next() {
    blank();
    return m_s.at(m_at);
  }
  void take(char c) {
    if (next() != c) throw std::runtime_error(std::string("expected ") + c);
    ++m_at;
  }
  std::string string() {
    take('"');
    std::string out;
    while (m_s.at(m_at) != '"') {
      const char c = m_s[m_at++];
      if (static_cast<unsigned char>(c) < 0x20) throw std::runtime_error("bare control character");
      if (c != '\\') {
        out += c;
        continue;
      }
      const char e = m_s.at(m_at++);
      if (e == 'n') {
        out += '\n';
      } else if (e == 't') {
        out += '\t';
      } else if (e == 'u') {
        out += static_cast<char>(std::stoi(m_s.substr(m_at, 4), nullptr, 16));
        m_at += 4;
      } else if (e == '"' || e == '\\') {
        out += e;
      } else {
        throw std::runtime_error("unknown escape");
      }
    }
    ++m_at;
    return out;
  }
  Json value() {
    Json j;
    const char c = next();
    if (c == '{') {
      j.kind = Json::Kind::Object;
      take('{');
      if (next() == '}') return ++m_at, j;
      do {
        const std::string key = string();
        take(':');
        if (!j.object.emplace(key, value()).second) throw std::runtime_error("key twice: " + key);
      } while (next() == ',' && ++m_at);
      take('}');
    } else if (c == '[') {
      j.kind = Json::Kind::List;
      take('[');
      if (next() == ']') return ++m_at, j;
      do {
        j.list.push_back(value());
      } while (next() == ',' && ++m_at);
      take(']');
    } else if (c == '"') {
      j.kind = Json::Kind::Text;
      blank();
      j.text = string();
    } else if (m_s.compare(m_at, 4, "null") == 0) {
      m_at += 4;
    } else {
      j.kind = Json::Kind::Number;
      std::size_t used = 0;
      j.number = std::stod(m_s.substr(m_at, 40), &used);
      if (used == 0) throw std::runtime_error("no number");
      m_at += used;
    }
    return j;
  }
  const std::string& m_s;
  std::size_t m_at = 0;
};

std::string key(const base::Message& m) {
  return m.key;
}

std::vector<std::string> textsOf(const Json& j) {
  std::vector<std::string> out;
  for (const auto& t : j.list) out.push_back(t.text);
  return out;
}

/// The problem again from nothing but the JSON: what a stranger with another solver has.
BoostProblem rebuilt(const Json& j) {
  BoostProblem p;
  p.request.pins = textsOf(j["pins"]);
  p.request.forbids = textsOf(j["forbids"]);
  for (const auto& o : j["options"].list) {
    BoostOption b;
    b.id = o["id"].text;
    if (o["method"].text != "visit") b.colony = base::ColonyId(o["colony"].text);
    if (!o["donor_colony"].text.empty()) b.donorColony = base::ColonyId(o["donor_colony"].text);
    b.net = o["net"].number;
    EXPECT_NEAR(b.net, o["benefit"].number - o["donor_cost"].number - o["other_cost"].number, 1e-9);
    for (const auto& [item, n] : o["uses"].object) {
      if (item == "hours") {
        b.hours = n.number;
      } else {
        b.gear[item] = static_cast<int>(n.number);
      }
    }
    b.takes = {o["takes"]["bees"].number, o["takes"]["brood_frames"].number,
               static_cast<int>(o["takes"]["stack"].number)};
    p.options.push_back(b);
  }
  for (const auto& [item, n] : j["limits"]["gear"].object) {
    p.gear[item] = static_cast<int>(n.number);
  }
  if (j["limits"]["hours"].kind == Json::Kind::Number) p.hours = j["limits"]["hours"].number;
  for (const auto& [colony, d] : j["limits"]["donors"].object) {
    p.donors[colony] = {d["bees"].number, d["brood_frames"].number,
                        static_cast<int>(d["stack"].number)};
  }
  for (const auto& r : j["rules"].list) {
    BoostRule rule{
        base::message("planning.rule.one", ""), textsOf(r["ids"]), {}, r["at_most"].number};
    if (r.has("coefs")) {
      for (const auto& c : r["coefs"].list) rule.coefs.push_back(c.number);
    }
    p.rules.push_back(rule);
  }
  return p;
}

TEST(BoostJson, AStrangerFindsTheSameOptimum) {
  base::Progress quiet;
  const int count = testing::howMany(500);
  for (int i = 0; i < count; ++i) {
    const auto seed = static_cast<std::uint64_t>(7000 + i);
    SCOPED_TRACE("seed " + std::to_string(seed));
    const auto plan = solveBoost(testing::randomProblem(seed, {}), quiet);
    ASSERT_TRUE(plan.ok());
    const std::string text = boostJson(*plan, key);
    const Json j = Reader(text).all();
    EXPECT_EQ(j["status"].text, "optimal");
    EXPECT_EQ(j["gap"].number, 0);
    const BoostPlan tried = solveBoostByTrying(rebuilt(j));
    EXPECT_NEAR(tried.objective, j["objective"].number, 1e-9);
    EXPECT_EQ(textsOf(j["chosen"]), plan->chosen);
  }
}

TEST(BoostJson, HoldsTheFieldsOfTheContract) {
  testing::SpringYard yard("TR");
  yard.small("TR-01").strong("TR-02").queenless("TR-03").warm("2026-04-25");
  yard.gear("excluder", "truck", "2026-04-20", 4);
  yard.addYard("MB").small("MB-01", 2, "2026-04-01");
  auto request = testing::springRequest({"TR", "MB"});
  request.forbids = {"unite:TR-03:TR-02:1"};
  const BoostPlan plan = testing::planOf(yard.season(), request);
  const std::string text = boostJson(plan, key);
  const Json j = Reader(text).all();
  for (const char* name :
       {"format", "unit", "status", "bound", "gap", "pins", "forbids", "yards", "date", "target",
        "objective", "options", "limits", "rules", "chosen", "barred"}) {
    EXPECT_TRUE(j.has(name)) << name;
  }
  EXPECT_EQ(j["format"].number, 1);
  EXPECT_EQ(j["basis"].text, "strength_now");
  EXPECT_EQ(j["date"].text, "2026-04-25");
  EXPECT_EQ(textsOf(j["yards"]), (std::vector<std::string>{"TR", "MB"}));
  bool visit = false, stack = false;
  for (const auto& o : j["options"].list) {
    for (const char* name : {"id", "colony", "hive", "method", "donor_colony", "donor_hive",
                             "benefit", "donor_cost", "other_cost", "net", "uses", "takes"}) {
      EXPECT_TRUE(o.has(name)) << name;
    }
    EXPECT_TRUE(o["uses"].has("hours"));
    visit = visit || (o["method"].text == "visit" && o["id"].text == "visit:TR");
    stack = stack || o["method"].text == "stack";
  }
  EXPECT_TRUE(visit);
  EXPECT_TRUE(stack);
  EXPECT_EQ(j["limits"]["gear"]["excluder"].number, 4);
  EXPECT_EQ(j["limits"]["hours"].kind, Json::Kind::Null);
  EXPECT_EQ(j["limits"]["donors"]["TR-02"]["stack"].number, 1);
  EXPECT_FALSE(j["barred"].list.empty());
  for (const auto& b : j["barred"].list) EXPECT_FALSE(b["why"].text.empty());
  EXPECT_NEAR(solveBoostByTrying(rebuilt(j)).objective, plan.objective, 1e-9);
}

TEST(BoostJson, SaysWhatCountedAsUsable) {
  testing::SpringYard yard("TR");
  yard.small("TR-01").strong("TR-02").warm("2026-04-25").set("boost.usable_seams", "5.5");
  base::Progress quiet;
  const auto problem = makeForecastProblem(yard.season(), testing::springRequest({"TR"}), 1, quiet);
  const Json j = Reader(boostJson(*solveBoost(problem.value(), quiet), key)).all();
  EXPECT_EQ(j["basis"].text, "forecast");
  EXPECT_EQ(j["usable"]["seams"].number, 5.5);
  EXPECT_EQ(j["usable"]["brood_combs"].number, 4);
}

TEST(BoostJson, OddNamesAreEscaped) {
  base::Progress quiet;
  BoostProblem p;
  p.request.date = p.target = *base::Date::parse("2026-04-25");
  const std::string odd = "a \"b\" \\ c\n\x01 \xC3\xA9";
  BoostOption o;
  o.colony = base::ColonyId(odd);
  o.hive = base::HiveId(odd);
  o.id = "leave:" + odd + "::0";
  p.options.push_back(o);
  const auto plan = solveBoost(p, quiet);
  const Json j = Reader(boostJson(*plan, key)).all();
  EXPECT_EQ(j["options"].list.at(0)["colony"].text, odd);
}

}  // namespace
}  // namespace outyard::planning
