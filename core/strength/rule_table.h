// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/codes.h"
#include "core/strength/evidence.h"
#include "core/strength/verdict_rules.h"

/// The evidence rules of the judgement, read from the table resources/verdict_rules.csv.
///
/// A rule holds when one of its alternatives (`|`) holds, an alternative when all its terms (`&`)
/// hold. A term is a fact of the evidence or an earlier finding, with `!` for not, or a fact that
/// is a number, compared (`<`, `<=`, `>`, `>=`) with a figure of the table or a number. What is not
/// recorded fulfils no comparison, so `!pattern >= compact_pattern` holds without a pattern too.
namespace outyard::strength {

/// One rule in words of the table, for who shows it.
struct EvidenceRule {
  std::string name;  ///< of the finding, or the code of the verdict
  bool verdict = false;
  std::string holds, source;
};

class RuleTable {
 public:
  /// Reads a table. Throws std::logic_error naming the row and what is wrong: the shipped table is
  /// part of the program.
  explicit RuleTable(std::string_view text);
  /// The table that is compiled in.
  static const RuleTable& shipped();

  [[nodiscard]] const VerdictRules& figures() const { return m_figures; }
  [[nodiscard]] std::span<const RuleSpec> specs() const { return m_specs; }
  /// Findings and verdicts in the order in which they are read.
  [[nodiscard]] std::span<const EvidenceRule> rules() const { return m_rules; }
  /// The first verdict that holds with these figures.
  [[nodiscard]] apiary::VerdictCode verdictOf(const Evidence& evidence,
                                              const VerdictRules& figures) const;
  /// Whether a finding or the (first) verdict of the name holds by itself; throws on another name.
  [[nodiscard]] bool holds(std::string_view rule, const Evidence& evidence,
                           const VerdictRules& figures) const;

 private:
  enum class Compare { None, Less, LessOrEqual, Greater, GreaterOrEqual };
  struct Term {
    bool negated = false;
    int finding = -1;  ///< index of an earlier rule, or a fact
    int fact = -1;
    Compare compare = Compare::None;
    double VerdictRules::*figure = nullptr;
    double number = 0;
  };
  using Alternative = std::vector<Term>;
  struct Compiled {
    std::vector<Alternative> alternatives;
    apiary::VerdictCode verdict{};
  };
  Term termOf(std::string_view text, const std::string& where) const;
  [[nodiscard]] bool holds(std::size_t rule, const Evidence& e, const VerdictRules& figures,
                           std::vector<signed char>& known) const;

  VerdictRules m_figures{};
  std::vector<std::string> m_texts;  ///< that the specs point into; never grows after reading
  std::vector<RuleSpec> m_specs;
  std::vector<EvidenceRule> m_rules;
  std::vector<Compiled> m_compiled;
};

/// Every fact that a rule may ask for, for the help and the tests.
std::vector<std::string_view> evidenceFacts();

}  // namespace outyard::strength
