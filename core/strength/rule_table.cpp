// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/rule_table.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "core/base/text.h"

namespace outyard::strength {

extern const char* const kVerdictRulesText;

namespace {

using apiary::Disease;
using Number = std::optional<double>;

template <class T>
Number known(const std::optional<T>& value) {
  return value ? Number(static_cast<double>(*value)) : std::nullopt;
}
Number yes(bool holds) {
  return holds ? 1 : 0;
}

struct Fact {
  std::string_view name;
  Number (*of)(const Evidence&);
};
// A plain fact holds when its number is above nought; compared ones need to be known.
constexpr std::array kFacts{
    Fact{"always", [](const Evidence&) { return yes(true); }},
    Fact{"never_seen", [](const Evidence& e) { return yes(!e.lastSeen); }},
    Fact{"forgotten", [](const Evidence& e) { return yes(e.forgotten); }},
    Fact{"fresh", [](const Evidence& e) { return yes(e.fresh); }},
    Fact{"foul_brood",
         [](const Evidence& e) {
           return yes(e.disease == Disease::SuspectAfb || e.disease == Disease::SuspectEfb);
         }},
    Fact{"nosema", [](const Evidence& e) { return yes(e.disease == Disease::Nosema); }},
    Fact{"other_sickness", [](const Evidence& e) { return yes(e.disease == Disease::Other); }},
    Fact{"seams", [](const Evidence& e) { return e.seams; }},
    Fact{"seams_known", [](const Evidence& e) { return yes(e.seams.has_value()); }},
    Fact{"seams_or_none", [](const Evidence& e) { return Number(e.seams.value_or(0)); }},
    Fact{"seams_or_at_least",
         [](const Evidence& e) { return Number(e.seams.value_or(e.seamsAtLeast.value_or(0))); }},
    Fact{"eggs", [](const Evidence& e) { return yes(e.eggs == true); }},
    Fact{"no_eggs", [](const Evidence& e) { return yes(e.eggs == false); }},
    Fact{"no_brood", [](const Evidence& e) { return yes(e.anyBrood == false); }},
    Fact{"pattern", [](const Evidence& e) { return known(e.pattern); }},
    Fact{"pattern_known", [](const Evidence& e) { return yes(e.pattern.has_value()); }},
    Fact{"cover", [](const Evidence& e) { return e.cover; }},
    Fact{"cover_known", [](const Evidence& e) { return yes(e.cover.has_value()); }},
    Fact{"drone_brood", [](const Evidence& e) { return known(e.droneBrood); }},
    Fact{"drones_of_sealed", [](const Evidence& e) { return e.droneShare; }},
    Fact{"queen_seen", [](const Evidence& e) { return yes(e.queenSeen == true); }},
    Fact{"queen_not_seen", [](const Evidence& e) { return yes(e.queenSeen == false); }},
    Fact{"queen_lost", [](const Evidence& e) { return yes(e.queenLost.has_value()); }},
    Fact{"queen_due", [](const Evidence& e) { return yes(e.queenDue.has_value()); }},
    Fact{"known_queenless", [](const Evidence& e) { return yes(e.knownQueenless); }},
    // From the last day on which a laying queen was certain to the last look.
    Fact{"days_since_queen",
         [](const Evidence& e) -> Number {
           if (!e.queenKnown || !e.lastSeen) return std::nullopt;
           return *e.lastSeen - *e.queenKnown;
         }},
    Fact{"brood_season", [](const Evidence& e) { return yes(e.calendar.broodSeason()); }},
    Fact{"days_since_pollen",
         [](const Evidence& e) { return Number(e.calendar.today - e.calendar.firstPollen); }},
};

/// A figure's place in VerdictRules.
struct Member {
  std::string_view name;
  double VerdictRules::*member;
};
constexpr std::array kMembers{
    Member{"fresh_days", &VerdictRules::freshDays},
    Member{"forgotten_days", &VerdictRules::forgottenDays},
    Member{"too_small_seams", &VerdictRules::tooSmallSeams},
    Member{"small_seams", &VerdictRules::smallSeams},
    Member{"strong_seams", &VerdictRules::strongSeams},
    Member{"scattered_pattern", &VerdictRules::scatteredPattern},
    Member{"compact_pattern", &VerdictRules::compactPattern},
    Member{"brood_fills", &VerdictRules::broodFills},
    Member{"brood_little", &VerdictRules::broodLittle},
    Member{"little_brood_seams", &VerdictRules::littleBroodSeams},
    Member{"main_season_days", &VerdictRules::mainSeasonDays},
    Member{"drone_share", &VerdictRules::droneShare},
    Member{"queenless_long_days", &VerdictRules::queenlessLongDays},
    Member{"disease_days", &VerdictRules::diseaseDays},
    Member{"wash_days", &VerdictRules::washDays},
    Member{"mites_spring", &VerdictRules::mitesSpring},
    Member{"mites_summer", &VerdictRules::mitesSummer},
    Member{"mites_autumn", &VerdictRules::mitesAutumn},
    Member{"split_days", &VerdictRules::splitDays},
    Member{"cell_days", &VerdictRules::cellDays},
    Member{"introduced_days", &VerdictRules::introducedDays},
    Member{"swarm_days", &VerdictRules::swarmDays},
    Member{"swarmed_days", &VerdictRules::swarmedDays},
};
double VerdictRules::*memberOf(std::string_view name) {
  for (const Member& m : kMembers) {
    if (m.name == name) return m.member;
  }
  return nullptr;
}

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}
std::vector<std::string_view> split(std::string_view text, char at) {
  std::vector<std::string_view> out;
  for (;;) {
    const auto end = text.find(at);
    out.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return out;
    text.remove_prefix(end + 1);
  }
}

/// Fields with commas are quoted, no line breaks inside.
std::vector<std::string> fieldsOf(std::string_view line) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  return out;
}

[[noreturn]] void wrong(const std::string& where, const std::string& what) {
  throw std::logic_error("verdict_rules.csv: " + where + ": " + what);
}
double numberIn(const std::string& text, const std::string& where) {
  const auto v = base::parseNumber(text);
  if (!v) wrong(where, "not a number: " + text);
  return *v;
}

}  // namespace

std::vector<std::string_view> evidenceFacts() {
  std::vector<std::string_view> out;
  for (const Fact& f : kFacts) out.push_back(f.name);
  return out;
}

const RuleTable& RuleTable::shipped() {
  static const RuleTable table(kVerdictRulesText);
  return table;
}

RuleTable::RuleTable(std::string_view text) {
  constexpr std::size_t kCells = 8;
  std::vector<std::vector<std::string>> rows;
  for (const std::string_view line : split(text, '\n')) {
    if (line.empty()) continue;
    rows.push_back(fieldsOf(line));
    if (rows.back().size() != kCells) wrong(std::string(line), "eight columns expected");
  }
  if (rows.empty() || rows[0][0] != "kind") wrong("first line", "the head line is missing");
  m_texts.reserve(3 * rows.size());
  std::size_t figures = 0;
  for (std::size_t k = 1; k < rows.size(); ++k) {
    const auto& cell = rows[k];
    const std::string& name = cell[1];
    if (cell[7].empty()) wrong(name, "no source");
    if (cell[0] == "figure") {
      const auto member = memberOf(name);
      if (!member) wrong(name, "no such figure");
      m_figures.*member = numberIn(cell[2], name);
      const auto keep = [&](const std::string& s) {
        return std::string_view(m_texts.emplace_back(s));
      };
      const std::string_view kept = keep(name), unit = keep(cell[5]), source = keep(cell[7]);
      m_specs.push_back(
          {kept, member, numberIn(cell[3], name), numberIn(cell[4], name), unit, source});
      ++figures;
      continue;
    }
    Compiled compiled;
    const bool verdict = cell[0] == "verdict";
    if (verdict) {
      const auto code = apiary::parseCode<apiary::VerdictCode>(name);
      if (!code) wrong(name, "no such verdict");
      compiled.verdict = *code;
    } else if (cell[0] != "finding") {
      wrong(name, "no such kind: " + cell[0]);
    }
    for (const std::string_view alternative : split(cell[6], '|')) {
      auto& terms = compiled.alternatives.emplace_back();
      for (const std::string_view term : split(alternative, '&')) {
        terms.push_back(termOf(term, name));
      }
    }
    m_rules.push_back({name, verdict, cell[6], cell[7]});
    m_compiled.push_back(std::move(compiled));
  }
  if (figures != kMembers.size()) wrong("figures", "some are missing or stand twice");
  if (m_rules.empty() || m_rules.back().holds != "always") {
    wrong("last line", "the last verdict must hold always");
  }
}

RuleTable::Term RuleTable::termOf(std::string_view text, const std::string& where) const {
  Term term;
  if (text.starts_with('!')) {
    term.negated = true;
    text = trimmed(text.substr(1));
  }
  std::string_view left = text, right;
  const auto at = text.find_first_of("<>");
  if (at != std::string_view::npos) {
    const bool less = text[at] == '<', equal = text.substr(at + 1).starts_with('=');
    term.compare = less ? (equal ? Compare::LessOrEqual : Compare::Less)
                        : (equal ? Compare::GreaterOrEqual : Compare::Greater);
    left = trimmed(text.substr(0, at));
    right = trimmed(text.substr(at + (equal ? 2 : 1)));
    term.figure = memberOf(right);
    if (!term.figure) term.number = numberIn(std::string(right), where);
  }
  for (std::size_t k = 0; k < kFacts.size(); ++k) {
    if (kFacts[k].name == left) term.fact = static_cast<int>(k);
  }
  for (std::size_t k = 0; k < m_rules.size() && term.fact < 0; ++k) {
    if (!m_rules[k].verdict && m_rules[k].name == left) term.finding = static_cast<int>(k);
  }
  if (term.fact < 0 && (term.finding < 0 || term.compare != Compare::None)) {
    wrong(where, "no such fact or earlier finding: " + std::string(left));
  }
  return term;
}

bool RuleTable::holds(std::size_t rule, const Evidence& e, const VerdictRules& figures,
                      std::vector<signed char>& known) const {
  if (known[rule] >= 0) return known[rule] > 0;
  const auto fulfilled = [&](const Term& t) {
    if (t.finding >= 0) {
      return holds(static_cast<std::size_t>(t.finding), e, figures, known) != t.negated;
    }
    const Number value = kFacts[static_cast<std::size_t>(t.fact)].of(e);
    const double bound = t.figure ? figures.*t.figure : t.number;
    bool ok = false;
    switch (t.compare) {
      case Compare::None:
        ok = value.value_or(0) > 0;
        break;
      case Compare::Less:
        ok = value && *value < bound;
        break;
      case Compare::LessOrEqual:
        ok = value && *value <= bound;
        break;
      case Compare::Greater:
        ok = value && *value > bound;
        break;
      case Compare::GreaterOrEqual:
        ok = value && *value >= bound;
        break;
    }
    return ok != t.negated;
  };
  const auto& alternatives = m_compiled[rule].alternatives;
  const bool ok = std::any_of(alternatives.begin(), alternatives.end(), [&](const auto& terms) {
    return std::all_of(terms.begin(), terms.end(), fulfilled);
  });
  known[rule] = ok ? 1 : 0;
  return ok;
}

bool RuleTable::holds(std::string_view rule, const Evidence& evidence,
                      const VerdictRules& figures) const {
  std::vector<signed char> known(m_rules.size(), -1);
  for (std::size_t k = 0; k < m_rules.size(); ++k) {
    if (m_rules[k].name == rule) return holds(k, evidence, figures, known);
  }
  throw std::logic_error("no rule of the name " + std::string(rule));
}

apiary::VerdictCode RuleTable::verdictOf(const Evidence& evidence,
                                         const VerdictRules& figures) const {
  std::vector<signed char> known(m_rules.size(), -1);
  for (std::size_t k = 0; k < m_rules.size(); ++k) {
    if (m_rules[k].verdict && holds(k, evidence, figures, known)) return m_compiled[k].verdict;
  }
  throw std::logic_error("the last verdict holds always");
}

}  // namespace outyard::strength
