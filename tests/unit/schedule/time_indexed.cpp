#include "time_indexed.hpp"

#include <glpk.h>

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

#include "rules.hpp"

namespace wetout::schedule::sample {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

using Row = std::map<int, double>;  // column -> factor

struct Column {
  int board = 0, step = 0;
  Slot start = 0;
  int person = 0;
  int index = 0;
};

class TimeIndexed {
 public:
  explicit TimeIndexed(const Setting& setting)
      : s_(setting), rules_(setting), lp_(glp_create_prob()) {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(lp_, GLP_MIN);
  }
  TimeIndexed(const TimeIndexed&) = delete;
  TimeIndexed& operator=(const TimeIndexed&) = delete;
  ~TimeIndexed() { glp_delete_prob(lp_); }

  std::optional<std::int64_t> least() {
    for (int b = 0; u(b) < s_.boards.size(); ++b) columns(b);
    for (int b = 0; u(b) < s_.boards.size(); ++b) board(b);
    shared();
    room();
    glp_iocp parameters;
    glp_init_iocp(&parameters);
    parameters.presolve = GLP_ON;
    if (glp_intopt(lp_, &parameters) != 0 || glp_mip_status(lp_) != GLP_OPT) return std::nullopt;
    return static_cast<std::int64_t>(glp_mip_obj_val(lp_) + 0.5);
  }

 private:
  int column(int kind, double cost = 0.0) {
    const int index = glp_add_cols(lp_, 1);
    if (kind == GLP_BV) {
      glp_set_col_kind(lp_, index, GLP_BV);
    } else {
      glp_set_col_bnds(lp_, index, GLP_LO, 0.0, 0.0);
    }
    glp_set_obj_coef(lp_, index, cost);
    return index;
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

  void columns(int b) {
    auto& options = options_.emplace_back();
    for (const int decided : rules_.decided(b)) {
      auto& both = options.emplace_back();
      if (decided < 0) both = {column(GLP_BV), column(GLP_BV)};
    }
    for (const int i : rules_.open(b)) {
      for (Slot slot = s_.begin; slot < s_.grid.slots; ++slot) {
        if (!rules_.may_start(b, i, slot)) continue;
        for (int p = 0; u(p) < s_.people.size(); ++p) {
          if (rules_.is_there(p, b, i, slot)) all_.push_back({b, i, slot, p, column(GLP_BV)});
        }
      }
    }
    finish_.push_back(column(GLP_CV, 1.0));
  }

  template <class F>
  void for_starts(int b, int i, F f) const {
    for (const Column& one : all_) {
      if (one.board == b && one.step == i) f(one);
    }
  }
  /// Adds what makes a row hold of itself where an option is not chosen; false: it never is.
  bool relax(int b, When when, Row& entries, double& bound) const {
    if (when.group < 0) return true;
    const int decided = rules_.decided(b)[u(when.group)];
    if (decided >= 0) return decided == when.option;
    entries[options_[u(b)][u(when.group)][u(when.option)]] += 1.0;
    bound += 1.0;
    return true;
  }

  // --- one board

  void board(int b) {
    for (const auto& both : options_[u(b)]) {
      if (!both.empty()) row({{both[0], 1.0}, {both[1], 1.0}}, GLP_FX, 1.0);
    }
    for (const int i : rules_.open(b)) {
      Row once, end{{finish_[u(b)], -1.0}};
      for_starts(b, i, [&](const Column& one) {
        once[one.index] = 1.0;
        end[one.index] = rules_.attended(b, i, one.start).to / s_.grid.step_s();
      });
      const When when = rules_.step(b, i).when;
      const bool choice = when.group >= 0 && rules_.decided(b)[u(when.group)] < 0;
      if (choice) once[options_[u(b)][u(when.group)][u(when.option)]] -= 1.0;
      row(once, GLP_FX, choice ? 0.0 : 1.0);
      at_most(end, 0.0);
    }
    for (const Link& link : s_.boards[u(b)].steps.links) this->link(b, link);
  }

  void link(int b, const Link& link) {
    if (!rules_.is_to_come(b, link.to)) return;
    const auto row_of = [&](const Column* from, Slot from_slot) {
      Row entries;
      double bound = from != nullptr ? 1.0 : 0.0;
      if (from != nullptr) entries[from->index] = 1.0;
      bool some = false;
      for_starts(b, link.to, [&](const Column& to) {
        if (rules_.keeps(b, link, from_slot, to.start)) return;
        entries[to.index] = 1.0;
        some = true;
      });
      if (some && relax(b, link.when, entries, bound)) at_most(entries, bound);
    };
    if (rules_.fact(b, link.from)) return row_of(nullptr, 0);
    for_starts(b, link.from, [&](const Column& from) { row_of(&from, from.start); });
  }

  // --- people, boards, stands, racks

  [[nodiscard]] bool covers(const Stretch& stretch, Slot slot) const {
    const double at = slot * s_.grid.step_s();
    return stretch.from < at + s_.grid.step_s() && at < stretch.to && stretch.from <= at;
  }

  void shared() {
    // Films hold their places beyond the last start.
    for (Slot slot = s_.begin; slot < s_.grid.slots + 60; ++slot) {
      for (int p = 0; u(p) < s_.people.size(); ++p) {
        busy(slot, [&](const Column& one) { return one.person == p; });
      }
      for (int b = 0; u(b) < s_.boards.size(); ++b) {
        busy(slot, [&](const Column& one) { return one.board == b; });
      }
      stands(slot);
      racks(slot);
    }
  }
  template <class F>
  void busy(Slot slot, F is_of) {
    Row entries;
    for (const Column& one : all_) {
      if (is_of(one) && covers(rules_.attended(one.board, one.step, one.start), slot)) {
        entries[one.index] = 1.0;
      }
    }
    if (entries.size() > 1) at_most(entries, 1.0);
  }
  void stands(Slot slot) {
    int taken = 0;
    for (int b = 0; u(b) < s_.boards.size(); ++b) {
      for (const int wet : s_.boards[u(b)].steps.wets) {
        const bool there = rules_.fact(b, wet) && covers(rules_.on_stand(b, wet, 0), slot);
        taken += there ? 1 : 0;
      }
    }
    Row entries;
    for (const Column& one : all_) {
      if (covers(rules_.on_stand(one.board, one.step, one.start), slot)) entries[one.index] = 1.0;
    }
    if (!entries.empty()) at_most(entries, std::max(0, s_.stands - taken));
  }
  // In a rack is what has been handled and not been poured over since.
  void racks(Slot slot) {
    if (!s_.racks) return;
    Row lying;
    int at_first = 0;
    for (int b = 0; u(b) < s_.boards.size(); ++b) {
      const auto& wets = s_.boards[u(b)].steps.wets;
      for (std::size_t k = 0; k + 1 < wets.size(); ++k) {
        if (!rules_.is_to_come(b, wets[k + 1])) continue;
        Row entries;
        double bound = 0.0;
        if (rules_.fact(b, wets[k])) {
          const double handle = rules_.moment(b, wets[k], Moment::handle, 0);
          if (handle <= slot * s_.grid.step_s()) bound = -1.0;
          if (handle <= s_.begin * s_.grid.step_s()) ++at_first;
        }
        for_starts(b, wets[k], [&](const Column& one) {
          const double handle = rules_.moment(b, wets[k], Moment::handle, one.start);
          if (handle <= slot * s_.grid.step_s()) entries[one.index] += 1.0;
        });
        for_starts(b, wets[k + 1], [&](const Column& one) {
          if (one.start <= slot) entries[one.index] -= 1.0;
        });
        const int here = column(GLP_CV);
        entries[here] = -1.0;
        at_most(entries, bound);
        lying[here] = 1.0;
      }
    }
    if (!lying.empty()) at_most(lying, std::max(*s_.racks, at_first));
  }

  // --- the room

  void room() {
    for (const Column& wet : all_) {
      const Stretch clean = rules_.clean(wet.board, wet.step, wet.start);
      for (int b = 0; u(b) < s_.boards.size(); ++b) {
        for (int i = 0; u(i) < s_.boards[u(b)].steps.steps.size(); ++i) {
          if (rules_.fact(b, i) && clean.meets(rules_.dusty(b, i, 0)))
            at_most({{wet.index, 1.0}}, 0);
          Row entries{{wet.index, 1.0}};
          for_starts(b, i, [&](const Column& one) {
            if (clean.meets(rules_.dusty(b, i, one.start))) entries[one.index] = 1.0;
          });
          if (entries.size() > 1) at_most(entries, 1.0);
        }
      }
    }
    for (int b = 0; u(b) < s_.boards.size(); ++b) {
      for (const int wet : s_.boards[u(b)].steps.wets) {
        if (!rules_.fact(b, wet)) continue;
        const Stretch clean = rules_.clean(b, wet, 0);
        for (const Column& one : all_) {
          if (clean.meets(rules_.dusty(one.board, one.step, one.start))) {
            at_most({{one.index, 1.0}}, 0.0);
          }
        }
      }
    }
  }

  const Setting& s_;
  Rules rules_;
  glp_prob* lp_;
  std::vector<Column> all_;
  std::vector<std::vector<std::vector<int>>> options_;  // of each group of each board, if open
  std::vector<int> finish_;                             // of each board
};

}  // namespace

std::optional<std::int64_t> least_total(const Setting& setting) {
  return TimeIndexed(setting).least();
}

}  // namespace wetout::schedule::sample
