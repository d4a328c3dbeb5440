// An outside solver: small problems as time-indexed integer programs in GLPK (libglpk-dev, for
// tests only). One binary per operation and start, one per option; rows for lags, places and room
// modes; terms minimised one after the other, each held at its best while the next is minimised.
#include <glpk.h>
#include <gtest/gtest.h>

#include <map>
#include <optional>

#include "random_problem.hpp"
#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

using Row = std::map<int, double>;  // column -> factor

class TimeIndexed {
 public:
  explicit TimeIndexed(const Problem& problem) : p_(problem), lp_(glp_create_prob()) {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(lp_, GLP_MIN);
    for (const Group& group : p_.groups) {
      options_.emplace_back();
      for (int o = 0; o < group.options; ++o) options_.back().push_back(binary());
    }
    starts_.resize(p_.ops.size());
    for (std::size_t i = 0; i < p_.ops.size(); ++i) {
      for (Slot s = 0; s < p_.horizon; ++s) starts_[i].push_back(allowed(i, s) ? binary() : 0);
    }
    rows();
  }
  TimeIndexed(const TimeIndexed&) = delete;
  TimeIndexed& operator=(const TimeIndexed&) = delete;
  ~TimeIndexed() { glp_delete_prob(lp_); }

  /// Last end, then sum of starts; nothing when there is no schedule.
  std::optional<Value> solve() {
    const int last = glp_add_cols(lp_, 1);
    glp_set_col_bnds(lp_, last, GLP_LO, 0.0, 0.0);
    Row sum;
    for (std::size_t i = 0; i < p_.ops.size(); ++i) {
      Row row{{last, -1.0}};
      for (Slot s = 0; s < p_.horizon; ++s) {
        if (starts_[i][u(s)] == 0) continue;
        row[starts_[i][u(s)]] = time({static_cast<int>(i), at_end}, s);
        sum[starts_[i][u(s)]] = s;
      }
      at_most(row, 0.0);
    }
    Value value;
    for (const Row& objective : {Row{{last, 1.0}}, sum}) {
      for (int c = 1; c <= glp_get_num_cols(lp_); ++c) glp_set_obj_coef(lp_, c, 0.0);
      for (const auto& [column, factor] : objective) glp_set_obj_coef(lp_, column, factor);
      glp_iocp parameters;
      glp_init_iocp(&parameters);
      parameters.presolve = GLP_ON;
      if (glp_intopt(lp_, &parameters) != 0 || glp_mip_status(lp_) != GLP_OPT) return std::nullopt;
      value.push_back(static_cast<std::int64_t>(glp_mip_obj_val(lp_) + 0.5));
      at_most(objective, static_cast<double>(value.back()) + 0.5);
    }
    return value;
  }

 private:
  int binary() {
    const int column = glp_add_cols(lp_, 1);
    glp_set_col_kind(lp_, column, GLP_BV);
    return column;
  }

  void row(const Row& entries, int type, double bound) {
    const int index = glp_add_rows(lp_, 1);
    glp_set_row_bnds(lp_, index, type, bound, bound);
    std::vector<int> columns = {0};
    std::vector<double> factors = {0.0};
    for (const auto& [column, factor] : entries) {
      columns.push_back(column);
      factors.push_back(factor);
    }
    glp_set_mat_row(lp_, index, static_cast<int>(entries.size()), columns.data(), factors.data());
  }
  void at_most(const Row& entries, double bound) { row(entries, GLP_UP, bound); }

  [[nodiscard]] Slot look(const Map& map, Slot s) const {
    return map.index() == 0 ? s + std::get<0>(map) : std::get<1>(map).at[u(s)];
  }
  [[nodiscard]] Slot time(EventRef e, Slot s) const {
    if (e.event == at_start) return s;
    const Operation& op = p_.ops[u(e.op)];
    return look(e.event == at_end ? op.attended : op.events[u(e.event)].at, s);
  }

  [[nodiscard]] bool allowed(std::size_t i, Slot s) const {
    const Operation& op = p_.ops[i];
    if (op.allowed.size() > 0 && !op.allowed.test(s)) return false;
    if (op.calendar < 0) return true;
    for (const auto& [a, b] : p_.calendars[u(op.calendar)].spans) {
      if (a <= s && std::max(s + 1, look(op.attended, s)) <= b) return true;
    }
    return false;
  }

  /// Adds 1 to the right-hand side unless the option is chosen: rows "... <= bound + slack".
  double relax(Option when, Row& entries, double by) const {
    if (when.group < 0) return 0.0;
    entries[options_[u(when.group)][u(when.option)]] += by;
    return by;
  }

  void rows() {
    for (std::size_t g = 0; g < p_.groups.size(); ++g) {
      Row sum;
      for (const int column : options_[g]) sum[column] = 1.0;
      exactly_when(sum, p_.groups[g].when);
    }
    for (std::size_t i = 0; i < p_.ops.size(); ++i) {
      Row sum;
      for (const int column : starts_[i]) {
        if (column != 0) sum[column] = 1.0;
      }
      exactly_when(sum, p_.ops[i].when);
    }
    for (const Lag& lag : p_.lags) add(lag);
    for (std::size_t r = 0; r < p_.resources.size(); ++r) resource(static_cast<int>(r));
    for (const RoomMode& a : p_.modes) {
      for (const RoomMode& b : p_.modes) {
        if (a.mode < b.mode) apart(a, b);
      }
    }
  }

  /// sum = 1 when `when` is chosen, else 0.
  void exactly_when(Row sum, Option when) {
    double right = 1.0;
    if (when.group >= 0) {
      sum[options_[u(when.group)][u(when.option)]] -= 1.0;
      right = 0.0;
    }
    row(sum, GLP_FX, right);
  }

  /// x + y <= 1 for two starts, where both options are chosen.
  void not_both(int x, int y, Option first, Option second) {
    if (x == 0 || y == 0) return;
    Row entries;
    entries[x] += 1.0;
    if (y != x) entries[y] += 1.0;
    double bound = x == y ? 0.0 : 1.0;
    bound += relax(first, entries, 1.0);
    bound += relax(second, entries, 1.0);
    at_most(entries, bound);
  }

  void add(const Lag& lag) {
    for (Slot s = 0; s < p_.horizon; ++s) {
      for (Slot t = 0; t < p_.horizon; ++t) {
        if (lag.from.op == lag.to.op && s != t) continue;
        const auto bound = [&](const Map& m) {
          return m.index() == 0 ? time(lag.from, s) + std::get<0>(m) : std::get<1>(m).at[u(s)];
        };
        const bool fits = (!lag.min || time(lag.to, t) >= bound(*lag.min)) &&
                          (!lag.max || time(lag.to, t) <= bound(*lag.max));
        if (!fits)
          not_both(starts_[u(lag.from.op)][u(s)], starts_[u(lag.to.op)][u(t)], lag.when, {});
      }
    }
  }

  /// Holds with an option of their own count only when it is chosen; then start and option are
  /// joined by a column of their own.
  int joined(int start, Option when) {
    if (when.group < 0) return start;
    const int option = options_[u(when.group)][u(when.option)];
    const auto [entry, fresh] = joined_.try_emplace({start, option}, 0);
    if (fresh) {
      entry->second = binary();
      at_most({{start, 1.0}, {option, 1.0}, {entry->second, -1.0}}, 1.0);
    }
    return entry->second;
  }

  void resource(int r) {
    for (Slot slot = 0; slot < 4 * p_.horizon; ++slot) {
      Row used;
      for (const Hold& hold : p_.holds) {
        if (hold.resource != r) continue;
        for (Slot s = 0; s < p_.horizon; ++s) {
          const int start = starts_[u(hold.from.op)][u(s)];
          if (start == 0 || time(hold.from, s) > slot || slot >= time(hold.to, s)) continue;
          used[joined(start, hold.when)] += hold.amount;
        }
      }
      if (!used.empty()) at_most(used, p_.resources[u(r)].count);
    }
  }

  void apart(const RoomMode& a, const RoomMode& b) {
    for (Slot s = 0; s < p_.horizon; ++s) {
      for (Slot t = 0; t < p_.horizon; ++t) {
        if (a.from.op == b.from.op && s != t) continue;
        const Slot a_from = time(a.from, s);
        const Slot a_to = time(a.to, s) + a.after;
        const Slot b_from = time(b.from, t);
        const Slot b_to = time(b.to, t) + b.after;
        if (a_from >= a_to || b_from >= b_to || a_from >= b_to || b_from >= a_to) continue;
        not_both(starts_[u(a.from.op)][u(s)], starts_[u(b.from.op)][u(t)], a.when, b.when);
      }
    }
  }

  const Problem& p_;
  glp_prob* lp_;
  std::vector<std::vector<int>> options_;
  std::vector<std::vector<int>> starts_;  ///< 0: not allowed
  std::map<std::pair<int, int>, int> joined_;
};

TEST(Glpk, AgreesOnSmallProblemsOfBothKinds) {
  int feasible = 0;
  int infeasible = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const bool chain = seed % 2 == 0;
    const Problem problem =
        random_problem(random, {.ops = 5, .horizon = 13, .chain = chain, .plain = true});
    TimeIndexed model(problem);
    const auto expected = model.solve();
    const Answer answer = solve(problem, {{LastEnd{}, Sum{}}});
    if (!expected) {
      ++infeasible;
      EXPECT_EQ(answer.state, State::infeasible);
      continue;
    }
    ++feasible;
    ASSERT_EQ(answer.state, State::proved);
    EXPECT_EQ(answer.value, *expected);
  }
  EXPECT_GT(feasible, 60);
  EXPECT_GT(infeasible, 20);
}

}  // namespace
}  // namespace wetout::search::test
