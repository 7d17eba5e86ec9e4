// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_many.h"

#include <glpk.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <memory>
#include <set>
#include <stdexcept>
#include <string>
#include <thread>
#include <tuple>

namespace outyard::planning {
namespace {

/// Rounds of prices; some ten are enough for a few shared limits.
constexpr int kMostRounds = 40;
/// The bound is good enough when it is so near to what the yards' plans can be mixed to.
constexpr double kNearEnough = 1e-3;
/// Nodes of the search in one yard at one set of prices, by its columns, as a node costs more in a
/// larger yard. Where they are not enough the bound is wider and still holds.
int nodesFor(std::size_t columns) {
  return std::clamp(150000 / static_cast<int>(columns), 40, 200);
}
/// Nodes of the search for the best mix.
constexpr int kMixNodes = 20000;

struct FreeProblem {
  void operator()(glp_prob* p) const { glp_delete_prob(p); }
};

/// A plan of one yard: its columns by the part's numbers.
struct YardPlan {
  std::size_t yard = 0;
  std::vector<int> columns;
  std::int64_t worth = 0;
  std::vector<std::int64_t> uses;  ///< by shared row
  bool operator<(const YardPlan& o) const {
    return std::tie(yard, columns) < std::tie(o.yard, o.columns);
  }
};

struct MixWatch {
  base::Progress* progress = nullptr;
  int nodesLeft = kMixNodes;
};
void watchMix(glp_tree* tree, void* info) {
  auto& w = *static_cast<MixWatch*>(info);
  if (glp_ios_reason(tree) != GLP_ISELECT) return;
  if (--w.nodesLeft < 0 || w.progress->cancelled()) glp_ios_terminate(tree);
}

class Mixture {
 public:
  Mixture(const Programme& part, std::vector<std::vector<int>> yards)
      : m_part(part), m_yards(std::move(yards)), m_price(0) {
    for (std::size_t r = 0; r < part.rows.size(); ++r) {
      if (part.rows[r].shared) m_shared.push_back(r);
    }
    m_price.assign(m_shared.size(), 0);
    m_use.assign(part.net.size(), std::vector<std::int64_t>(m_shared.size(), 0));
    for (std::size_t k = 0; k < m_shared.size(); ++k) {
      for (const auto& [col, c] : part.rows[m_shared[k]].terms) {
        m_use[static_cast<std::size_t>(col)][k] += c;
      }
    }
    for (const auto& columns : m_yards) m_locals.push_back(partOf(part, columns));
    makeMaster();
  }

  /// Splits a plan of the whole into plans of the yards.
  void add(const std::vector<char>& chosen) {
    for (std::size_t y = 0; y < m_yards.size(); ++y) {
      std::vector<int> columns;
      for (const int c : m_yards[y]) {
        if (chosen[static_cast<std::size_t>(c)]) columns.push_back(c);
      }
      addPlan(y, std::move(columns));
    }
  }

  /// False: a yard could not be proven, or stopped.
  bool work(base::Progress& progress) {
    for (int round = 0; round < kMostRounds; ++round) {
      progress.report(static_cast<double>(round) / kMostRounds);
      if (!price()) return false;
      bool fresh = false;
      double dual = 0;
      for (std::size_t k = 0; k < m_shared.size(); ++k) {
        dual += m_price[k] * static_cast<double>(m_part.rows[m_shared[k]].atMost);
      }
      for (std::size_t y = 0; const auto& answer : bestOfAll(progress)) {
        if (!answer) return false;
        dual += static_cast<double>(answer->bound);
        if (!answer->chosen.empty() && addPlan(y, columnsOf(y, answer->chosen))) fresh = true;
        ++y;
      }
      m_bound = std::min(m_bound, dual);
      if (!fresh || m_bound - m_mixed <= kNearEnough * std::abs(m_bound)) break;
    }
    return true;
  }

  /// The best mix of whole plans; empty when none was found.
  std::vector<char> best(base::Progress& progress) {
    glp_prob* lp = m_lp.get();
    for (int j = 1; j <= glp_get_num_cols(lp); ++j) glp_set_col_kind(lp, j, GLP_BV);
    simplex();
    MixWatch watch;
    watch.progress = &progress;
    glp_iocp how;
    glp_init_iocp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.mir_cuts = GLP_ON;
    how.gmi_cuts = GLP_ON;
    how.mip_gap = 1e-5;
    how.cb_func = watchMix;
    how.cb_info = &watch;
    glp_intopt(lp, &how);
    const int status = glp_mip_status(lp);
    if (progress.cancelled() || (status != GLP_OPT && status != GLP_FEAS)) return {};
    std::vector<char> chosen(m_part.net.size(), 0);
    for (std::size_t j = 0; j < m_plans.size(); ++j) {
      if (glp_mip_col_val(lp, static_cast<int>(j) + 1) < 0.5) continue;
      for (const int c : m_plans[j].columns) chosen[static_cast<std::size_t>(c)] = 1;
    }
    return chosen;
  }

  [[nodiscard]] std::int64_t bound() const {
    return static_cast<std::int64_t>(std::floor(m_bound)) + 1;
  }

 private:
  void makeMaster() {
    glp_prob* lp = m_lp.get();
    glp_set_obj_dir(lp, GLP_MAX);
    glp_add_rows(lp, static_cast<int>(m_shared.size() + m_yards.size()));
    int at = 0;
    for (const std::size_t r : m_shared) {
      glp_set_row_bnds(lp, ++at, GLP_UP, 0, static_cast<double>(m_part.rows[r].atMost) / kUnits);
    }
    for (std::size_t y = 0; y < m_yards.size(); ++y) glp_set_row_bnds(lp, ++at, GLP_FX, 1, 1);
  }

  bool addPlan(std::size_t yard, std::vector<int> columns) {
    YardPlan plan{yard, std::move(columns), 0, std::vector<std::int64_t>(m_shared.size(), 0)};
    if (!m_known.insert(plan).second) return false;
    std::vector<int> index{0};
    std::vector<double> value{0};
    for (const int c : plan.columns) {
      plan.worth += m_part.net[static_cast<std::size_t>(c)];
      for (std::size_t k = 0; k < m_shared.size(); ++k) {
        plan.uses[k] += m_use[static_cast<std::size_t>(c)][k];
      }
    }
    for (std::size_t k = 0; k < m_shared.size(); ++k) {
      if (plan.uses[k] == 0) continue;
      index.push_back(static_cast<int>(k) + 1);
      value.push_back(static_cast<double>(plan.uses[k]) / kUnits);
    }
    index.push_back(static_cast<int>(m_shared.size() + yard) + 1);
    value.push_back(1);
    glp_prob* lp = m_lp.get();
    const int j = glp_add_cols(lp, 1);
    glp_set_col_bnds(lp, j, GLP_LO, 0, 0);
    glp_set_obj_coef(lp, j, static_cast<double>(plan.worth) / kUnits);
    glp_set_mat_col(lp, j, static_cast<int>(index.size()) - 1, index.data(), value.data());
    m_plans.push_back(std::move(plan));
    return true;
  }

  void simplex() {
    glp_smcp how;
    glp_init_smcp(&how);
    how.msg_lev = GLP_MSG_OFF;
    if (glp_simplex(m_lp.get(), &how) != 0) {
      glp_std_basis(m_lp.get());
      if (const int code = glp_simplex(m_lp.get(), &how); code != 0) {
        throw std::runtime_error("the solver gave up: code " + std::to_string(code));
      }
    }
  }

  /// Prices of what is shared, from the best mix of shares of the plans so far.
  bool price() {
    simplex();
    if (glp_get_status(m_lp.get()) != GLP_OPT) return false;
    m_mixed = glp_get_obj_val(m_lp.get()) * kUnits;
    for (std::size_t k = 0; k < m_shared.size(); ++k) {
      m_price[k] = std::max(0.0, glp_get_row_dual(m_lp.get(), static_cast<int>(k) + 1));
    }
    return true;
  }

  [[nodiscard]] std::vector<int> columnsOf(std::size_t yard,
                                           const std::vector<char>& chosen) const {
    std::vector<int> columns;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
      if (chosen[i]) columns.push_back(m_yards[yard][i]);
    }
    return columns;
  }

  /// The best plan of a yard at these prices, and what none of its plans is worth more than.
  [[nodiscard]] std::optional<PartAnswer> bestAt(std::size_t yard) const {
    Programme local = m_locals[yard];
    for (std::size_t i = 0; i < local.net.size(); ++i) {
      const auto& uses = m_use[static_cast<std::size_t>(m_yards[yard][i])];
      double paid = 0;
      for (std::size_t k = 0; k < m_shared.size(); ++k) {
        paid += m_price[k] * static_cast<double>(uses[k]);
      }
      // Rounded in the option's favour, so that the bound holds.
      local.net[i] = static_cast<std::int64_t>(std::ceil(static_cast<double>(local.net[i]) - paid));
    }
    base::Progress quiet;
    const int nodes = nodesFor(local.net.size());
    PartAnswer answer = solvePart(std::move(local), quiet, nodes);
    if (answer.end == PartAnswer::End::Infeasible) return std::nullopt;
    return answer;
  }

  /// By yard. Worked out on all processors; what comes of it does not depend on their number.
  std::vector<std::optional<PartAnswer>> bestOfAll(base::Progress& progress) const {
    std::vector<std::optional<PartAnswer>> answers(m_yards.size());
    std::atomic<std::size_t> next{0};
    const auto some = [&] {
      readySolver();
      for (std::size_t y = next++; y < answers.size() && !progress.cancelled(); y = next++) {
        answers[y] = bestAt(y);
      }
    };
    std::vector<std::jthread> pool;
    const unsigned threads = std::clamp(std::thread::hardware_concurrency(), 1U, 8U);
    for (unsigned t = 1; t < threads; ++t) pool.emplace_back(some);
    some();
    pool.clear();
    return answers;
  }

  const Programme& m_part;
  std::vector<std::vector<int>> m_yards;
  std::vector<std::size_t> m_shared;  ///< rows of the part
  std::vector<double> m_price;
  std::vector<std::vector<std::int64_t>> m_use;  ///< by column, by shared row
  std::vector<Programme> m_locals;
  std::set<YardPlan> m_known;
  std::vector<YardPlan> m_plans;  ///< by column of the master, in its order
  std::unique_ptr<glp_prob, FreeProblem> m_lp{glp_create_prob()};
  double m_bound = std::numeric_limits<double>::max(), m_mixed = 0;
};

}  // namespace

std::vector<std::vector<int>> yardsOf(const Programme& part) {
  Programme apart = part;
  std::erase_if(apart.rows, [](const ProgrammeRow& r) { return r.shared; });
  return components(apart);
}

std::optional<PartAnswer> solveByPrices(const Programme& part, base::Progress& progress) {
  auto yards = yardsOf(part);
  if (yards.size() < 2) return std::nullopt;
  // Two plans to begin with, by net alone and by worth; drives that nothing needs fall away again.
  std::vector<double> drives;
  for (const int g : part.group) drives.push_back(g < 0 ? 1 : 0);
  const auto idle = rounded(part, drives);
  if (!idle) return std::nullopt;
  Mixture mixture(part, std::move(yards));
  mixture.add(*idle);
  const auto most = *std::max_element(part.net.begin(), part.net.end());
  std::vector<double> byWorth;
  for (std::size_t i = 0; i < part.net.size(); ++i) {
    const double share =
        most > 0 ? static_cast<double>(part.net[i]) / static_cast<double>(most) : 0.0;
    byWorth.push_back(part.group[i] < 0 ? 1 : std::max(0.0, share));
  }
  if (const auto greedy = rounded(part, byWorth)) mixture.add(*greedy);
  const bool priced = mixture.work(progress);
  if (progress.cancelled()) return PartAnswer{PartAnswer::End::Cancelled, {}, 0};
  if (!priced) return std::nullopt;
  PartAnswer out;
  out.chosen = mixture.best(progress);
  if (progress.cancelled()) return PartAnswer{PartAnswer::End::Cancelled, {}, 0};
  if (out.chosen.empty() || !holds(part, out.chosen)) return std::nullopt;
  const std::int64_t value = worth(part, out.chosen);
  out.bound = std::max(value, mixture.bound());
  // A unit of rounding is no gap.
  if (out.bound - value <= 1) out.bound = value;
  out.end = out.bound == value ? PartAnswer::End::Optimal : PartAnswer::End::Stopped;
  return out;
}

}  // namespace outyard::planning
