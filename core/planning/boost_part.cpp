// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_part.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <stdexcept>

namespace outyard::planning {
namespace {

/// Rows with at most so many different coefficients get whole-number counts (see load).
constexpr std::size_t kFewCoefficients = 4;

/// GLPK keeps one environment a thread; it goes with the thread.
struct Environment {
  Environment() { glp_term_out(GLP_OFF); }
  ~Environment() { glp_free_env(); }
  Environment(const Environment&) = delete;
  Environment& operator=(const Environment&) = delete;
};
struct FreeProblem {
  void operator()(glp_prob* p) const { glp_delete_prob(p); }
};
using Lp = std::unique_ptr<glp_prob, FreeProblem>;

using Counts = std::vector<std::vector<int>>;

struct Watch {
  base::Progress* progress = nullptr;
  int nodesLeft = kMostNodes;
  bool cancelled = false, stopped = false;
  double bound = 0;                   ///< the best that is still possible
  int firstCount = 1, lastCount = 0;  ///< columns that count others
  const Programme* large = nullptr;   ///< given where a first plan is to come from rounding
  const Counts* counts = nullptr;
};

/// Offers GLPK the plan that rounding the relaxed solution of this node gives.
void offerRounded(glp_tree* tree, const Watch& w) {
  glp_prob* lp = glp_ios_get_prob(tree);
  std::vector<double> shares;
  for (std::size_t i = 0; i < w.large->net.size(); ++i) {
    shares.push_back(glp_get_col_prim(lp, static_cast<int>(i) + 1));
  }
  const auto plan = rounded(*w.large, shares);
  if (!plan) return;
  std::vector<double> x{0};
  for (const char c : *plan) x.push_back(c ? 1 : 0);
  for (const auto& columns : *w.counts) {
    double sum = 0;
    for (const int c : columns) sum += x[static_cast<std::size_t>(c)];
    x.push_back(sum);
  }
  glp_ios_heur_sol(tree, x.data());
}

/// Called by GLPK at every node.
void watchTree(glp_tree* tree, void* info) {
  auto& w = *static_cast<Watch*>(info);
  if (glp_ios_reason(tree) == GLP_IHEUR && w.large) offerRounded(tree, w);
  if (glp_ios_reason(tree) == GLP_IBRANCH) {
    // Counts first: "three stacks or four" decides more than one colony's option.
    for (int j = w.firstCount; j <= w.lastCount; ++j) {
      if (!glp_ios_can_branch(tree, j)) continue;
      glp_ios_branch_upon(tree, j, GLP_NO_BRNCH);
      return;
    }
  }
  if (glp_ios_reason(tree) != GLP_ISELECT) return;
  if (w.progress->cancelled()) {
    w.cancelled = true;
    glp_ios_terminate(tree);
    return;
  }
  const int best = glp_ios_best_node(tree);
  if (best != 0) w.bound = std::min(w.bound, glp_ios_node_bound(tree, best));
  if (--w.nodesLeft >= 0) return;
  w.stopped = true;
  glp_ios_terminate(tree);
}

/// One part of the programme for GLPK, with the numbers of rows and columns from 1.
class Part {
 public:
  explicit Part(Programme programme) : m_local(std::move(programme)) {}
  using End = PartAnswer::End;
  End solve(Watch& watch);
  [[nodiscard]] const std::vector<char>& chosen() const { return m_chosen; }
  [[nodiscard]] std::int64_t bound() const { return m_bound; }

 private:
  void load(Watch& watch);
  int addCount(const std::vector<int>& columns);
  void forbidChoice();
  Programme m_local;
  Lp m_lp{glp_create_prob()};
  Counts m_counts;
  std::vector<char> m_chosen;
  std::int64_t m_bound = 0;
};

/// A column that equals the number of chosen among the given ones (GLPK's numbers).
int Part::addCount(const std::vector<int>& columns) {
  glp_prob* lp = m_lp.get();
  const int count = glp_add_cols(lp, 1);
  glp_set_col_kind(lp, count, GLP_IV);
  glp_set_col_bnds(lp, count, GLP_DB, 0, static_cast<double>(columns.size()));
  std::vector<int> index{0, count};
  std::vector<double> value{0, -1};
  for (const int c : columns) {
    index.push_back(c);
    value.push_back(1);
  }
  const int row = glp_add_rows(lp, 1);
  glp_set_row_bnds(lp, row, GLP_FX, 0, 0);
  glp_set_mat_row(lp, row, static_cast<int>(index.size()) - 1, index.data(), value.data());
  m_counts.push_back(columns);
  return count;
}

/// Rows of few different coefficients (hours of a stack, hours of a comb) are written over the
/// counts of options with each. Branching on those counts proves in some ten nodes what branching
/// on single options does not in thousands.
void Part::load(Watch& watch) {
  glp_prob* lp = m_lp.get();
  glp_erase_prob(lp);
  glp_set_obj_dir(lp, GLP_MAX);
  const int n = static_cast<int>(m_local.net.size());
  glp_add_cols(lp, n);
  for (int j = 0; j < n; ++j) {
    const auto i = static_cast<std::size_t>(j);
    glp_set_col_kind(lp, j + 1, GLP_BV);
    glp_set_obj_coef(lp, j + 1, static_cast<double>(m_local.net[i]));
    if (m_local.fixed[i] == Fixed::In) glp_set_col_bnds(lp, j + 1, GLP_FX, 1, 1);
    if (m_local.fixed[i] == Fixed::Out) glp_set_col_bnds(lp, j + 1, GLP_FX, 0, 0);
  }
  watch.firstCount = n + 1;
  watch.lastCount = n;
  m_counts.clear();
  for (const auto& row : m_local.rows) {
    std::map<std::int64_t, std::vector<int>> byCoefficient;
    for (const auto& [col, c] : row.terms) byCoefficient[c].push_back(col + 1);
    const bool counted =
        !row.exactly && byCoefficient.size() > 1 && byCoefficient.size() <= kFewCoefficients;
    std::vector<int> index{0};
    std::vector<double> value{0};
    for (const auto& [c, columns] : byCoefficient) {
      std::vector<int> over = columns;
      if (counted && columns.size() > 1) {
        watch.lastCount = addCount(columns);
        over = {watch.lastCount};
      }
      for (const int col : over) {
        index.push_back(col);
        value.push_back(static_cast<double>(c) / kUnits);
      }
    }
    const int at = glp_add_rows(lp, 1);
    const double top = static_cast<double>(row.atMost) / kUnits;
    glp_set_row_bnds(lp, at, row.exactly ? GLP_FX : GLP_UP, top, top);
    glp_set_mat_row(lp, at, static_cast<int>(index.size()) - 1, index.data(), value.data());
  }
}

/// Takes out the present choice and nothing else.
void Part::forbidChoice() {
  ProgrammeRow row;
  for (std::size_t i = 0; i < m_chosen.size(); ++i) {
    row.terms.emplace_back(static_cast<int>(i), m_chosen[i] ? inUnits(1) : inUnits(-1));
    row.atMost += m_chosen[i] ? inUnits(1) : 0;
  }
  row.atMost -= inUnits(1);
  m_local.rows.push_back(std::move(row));
}

Part::End Part::solve(Watch& watch) {
  for (;;) {
    load(watch);
    glp_smcp relaxed;
    glp_init_smcp(&relaxed);
    relaxed.msg_lev = GLP_MSG_OFF;
    const int first = glp_simplex(m_lp.get(), &relaxed);
    if (first != 0) throw std::runtime_error("the solver gave up: code " + std::to_string(first));
    if (glp_get_status(m_lp.get()) != GLP_OPT) return End::Infeasible;
    glp_iocp how;
    glp_init_iocp(&how);
    how.msg_lev = GLP_MSG_OFF;
    // Without GLPK's presolver: the columns keep their numbers for the branching above, and
    // programmeOf has left out the rows that do nothing.
    how.presolve = GLP_OFF;
    how.clq_cuts = GLP_ON;
    how.mir_cuts = GLP_ON;
    // The objective is whole millionths: a wider tolerance would cut off a better plan.
    how.tol_obj = 1e-12;
    if (static_cast<int>(m_local.net.size()) > kManyColumns) {
      how.mip_gap = kManyGap;
      watch.large = &m_local;
      watch.counts = &m_counts;
    }
    how.cb_func = watchTree;
    how.cb_info = &watch;
    watch.bound = glp_get_obj_val(m_lp.get());  // of the relaxation
    const int code = glp_intopt(m_lp.get(), &how);
    if (watch.cancelled) return End::Cancelled;
    if (code == GLP_EMIPGAP) watch.stopped = true;
    if (code != 0 && code != GLP_ESTOP && code != GLP_EMIPGAP) {
      throw std::runtime_error("the solver gave up: code " + std::to_string(code));
    }
    const int status = glp_mip_status(m_lp.get());
    if (status == GLP_NOFEAS) return End::Infeasible;
    if (status != GLP_OPT && status != GLP_FEAS) {
      m_bound = static_cast<std::int64_t>(std::floor(watch.bound + 1));
      return End::Stopped;
    }
    m_chosen.assign(m_local.net.size(), 0);
    for (std::size_t j = 0; j < m_chosen.size(); ++j) {
      m_chosen[j] = glp_mip_col_val(m_lp.get(), static_cast<int>(j) + 1) > 0.5 ? 1 : 0;
    }
    // Our own check in whole numbers: the solver's tolerance may let a limit be passed by a hair.
    if (!holds(m_local, m_chosen)) {
      forbidChoice();
      m_chosen.clear();
      continue;
    }
    const std::int64_t value = worth(m_local, m_chosen);
    const bool proven = status == GLP_OPT && !watch.stopped;
    m_bound =
        proven ? value : std::max(value, static_cast<std::int64_t>(std::floor(watch.bound + 1)));
    return proven ? End::Optimal : End::Stopped;
  }
}

}  // namespace

void readySolver() {
  thread_local Environment environment;
  static_cast<void>(environment);
}

Programme partOf(const Programme& programme, const std::vector<int>& columns) {
  Programme local;
  std::vector<int> at(programme.net.size(), -1);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const auto c = static_cast<std::size_t>(columns[i]);
    at[c] = static_cast<int>(i);
    local.net.push_back(programme.net[c]);
    local.fixed.push_back(programme.fixed[c]);
    local.group.push_back(programme.group[c]);
  }
  for (const auto& row : programme.rows) {
    ProgrammeRow mine{{}, row.atMost, row.exactly, row.shared};
    for (const auto& [col, c] : row.terms) {
      if (const int now = at[static_cast<std::size_t>(col)]; now >= 0) {
        mine.terms.emplace_back(now, c);
      }
    }
    if (!mine.terms.empty()) local.rows.push_back(std::move(mine));
  }
  return local;
}

PartAnswer solvePart(Programme programme, base::Progress& progress, int nodes) {
  Watch watch;
  watch.progress = &progress;
  watch.nodesLeft = nodes;
  Part part(std::move(programme));
  const PartAnswer::End end = part.solve(watch);
  return {end, part.chosen(), part.bound()};
}

}  // namespace outyard::planning
