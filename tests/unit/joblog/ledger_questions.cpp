#include "ledger_questions.hpp"

#include <map>
#include <set>
#include <tuple>
#include <vector>

namespace wetout::joblog::testing {
namespace {

using Key = std::vector<std::string>;
using Sums = std::map<Key, Flow>;

struct Line {
  EntryRow entry;  // without its lines
  MovementRow line;
};

void add(Sums& sums, const Key& key, std::int64_t quantity, std::int64_t minor) {
  Flow& flow = sums[key];
  flow.quantity += quantity;
  flow.minor += minor;
}

Sums without_zeros(Sums sums) {
  std::erase_if(sums, [](const auto& one) { return one.second == Flow(); });
  return sums;
}

// +1 into the account, -1 out of it.
int sign(const MovementRow& line, Account account) {
  return line.target == account ? 1 : line.source == account ? -1 : 0;
}

std::string month_name(const Date& day) {
  return std::to_string(static_cast<int>(day.year())) + "-" +
         std::to_string(static_cast<unsigned>(day.month()));
}

class Asker {
 public:
  explicit Asker(const Log& log) : log_(log) {
    for (const EntryRow& entry : log.entries()) {
      for (const MovementRow& line : entry.lines) lines_.push_back({entry, line});
    }
    for (const auto& job : log.jobs(true)) jobs_.push_back(job.slug);
  }

  std::string wrong() {
    compare("stock", stock_asked(Lots::all), stock_summed(), false);
    compare("open stock", stock_asked(Lots::open), stock_summed(), true);
    for (const std::string& job : jobs_) {
      compare("cost of " + job, cost_asked(job), cost_summed(job), true);
      compare("materials of " + job, materials_asked(job), materials_summed(job), true);
      compare("months of " + job, months_asked(job), months_summed(job), true);
    }
    compare("boards", boards_asked(), boards_summed(), true);
    compare("materials", materials_asked({}), materials_summed({}), true);
    compare("months", months_asked({}), months_summed({}), true);
    compare("jobs", jobs_asked(), jobs_summed(), true);
    conserved();
    return wrong_;
  }

 private:
  void compare(const std::string& what, Sums asked, Sums summed, bool drop_zeros) {
    if (drop_zeros) {
      asked = without_zeros(std::move(asked));
      summed = without_zeros(std::move(summed));
    }
    if (asked != summed) wrong_ += what + " differs; ";
  }

  Sums stock_asked(Lots which) {
    Sums sums;
    for (const MaterialStock& material : log_.stock(which)) {
      Flow whole;
      for (const LotStock& lot : material.lots) {
        add(sums, {material.material.slug, lot.label}, lot.quantity, lot.minor);
        whole.quantity += lot.quantity;
        whole.minor += lot.minor;
      }
      const auto one = log_.stock_of(material.material.slug, which);
      if (Flow{material.quantity, material.minor} != whole ||
          Flow{one->quantity, one->minor} != whole || one->lots.size() != material.lots.size()) {
        wrong_ += "stock of " + material.material.slug + " does not add up; ";
      }
    }
    return sums;
  }
  Sums stock_summed() {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (line.material.empty()) continue;
      const int to = sign(line, Account::stock);
      add(sums, {line.material, line.lot}, to * line.quantity, to * line.minor);
    }
    return sums;
  }

  Sums cost_asked(const std::string& job) {
    Sums sums;
    const auto cost = log_.job_cost(job);
    JobCost summed;
    for (const JobGoods& goods : cost->goods) {
      add(sums, {goods.step, goods.material.slug, goods.lot}, goods.quantity, goods.minor);
      summed.goods_minor += goods.minor;
    }
    for (const JobWork& work : cost->work) {
      add(sums, {work.step, "", ""}, work.minutes, work.minor);
      summed.work_minor += work.minor;
      summed.minutes += work.minutes;
    }
    if (summed.goods_minor != cost->goods_minor || summed.work_minor != cost->work_minor ||
        summed.minutes != cost->minutes) {
      wrong_ += "cost of " + job + " does not add up; ";
    }
    return sums;
  }
  Sums cost_summed(const std::string& job) {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (line.job_slug != job) continue;
      const int to = sign(line, Account::board);
      add(sums, {line.step, line.material, line.lot}, to * line.quantity, to * line.minor);
    }
    return sums;
  }

  Sums boards_asked() {
    Sums sums;
    for (const MaterialStock& material : log_.stock(Lots::all)) {
      for (const LotStock& lot : material.lots) {
        for (const LotInJob& job : log_.boards_with(material.material.slug, lot.label)) {
          add(sums, {material.material.slug, lot.label, job.job_slug}, job.quantity, job.minor);
        }
      }
    }
    return sums;
  }
  Sums boards_summed() {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (line.material.empty() || line.job_slug.empty()) continue;
      const int to = sign(line, Account::board);
      add(sums, {line.material, line.lot, line.job_slug}, to * line.quantity, to * line.minor);
    }
    return sums;
  }

  Sums materials_asked(const std::optional<std::string>& job) {
    Sums sums;
    for (const MaterialTotals& totals : log_.material_totals(job)) {
      const std::string& slug = totals.material.slug;
      const std::pair<const char*, Flow> flows[] = {{"received", totals.received},
                                                    {"used", totals.used},
                                                    {"wasted", totals.wasted},
                                                    {"adjusted", totals.adjusted},
                                                    {"on hand", totals.on_hand}};
      for (const auto& [what, flow] : flows) add(sums, {slug, what}, flow.quantity, flow.minor);
    }
    return sums;
  }
  Sums materials_summed(const std::optional<std::string>& job) {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (line.material.empty() || (job && line.job_slug != *job)) continue;
      const std::pair<const char*, int> flows[] = {{"received", -sign(line, Account::supplier)},
                                                   {"used", sign(line, Account::board)},
                                                   {"wasted", sign(line, Account::waste)},
                                                   {"adjusted", -sign(line, Account::adjustment)},
                                                   {"on hand", sign(line, Account::stock)}};
      for (const auto& [what, to] : flows) {
        add(sums, {line.material, what}, to * line.quantity, to * line.minor);
      }
    }
    return sums;
  }

  Sums months_asked(const std::optional<std::string>& job) {
    Sums sums;
    for (const MonthTotals& totals : log_.month_totals(job)) {
      const std::string month = month_name(totals.month / std::chrono::day(1));
      add(sums, {month, "received"}, 0, totals.received_minor);
      add(sums, {month, "used"}, 0, totals.used_minor);
      add(sums, {month, "wasted"}, 0, totals.wasted_minor);
      add(sums, {month, "adjusted"}, 0, totals.adjusted_minor);
      add(sums, {month, "work"}, totals.minutes, totals.work_minor);
    }
    return sums;
  }
  Sums months_summed(const std::optional<std::string>& job) {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (job && line.job_slug != *job) continue;
      const std::string month = month_name(entry.on);
      if (line.material.empty()) {
        const int to = -sign(line, Account::labour);
        add(sums, {month, "work"}, to * line.quantity, to * line.minor);
        continue;
      }
      add(sums, {month, "received"}, 0, -sign(line, Account::supplier) * line.minor);
      add(sums, {month, "used"}, 0, sign(line, Account::board) * line.minor);
      add(sums, {month, "wasted"}, 0, sign(line, Account::waste) * line.minor);
      add(sums, {month, "adjusted"}, 0, -sign(line, Account::adjustment) * line.minor);
    }
    return sums;
  }

  Sums jobs_asked() {
    Sums sums;
    for (const JobTotals& totals : log_.job_totals()) {
      add(sums, {totals.slug, "goods"}, 0, totals.goods_minor);
      add(sums, {totals.slug, "work"}, totals.minutes, totals.work_minor);
    }
    return sums;
  }
  Sums jobs_summed() {
    Sums sums;
    for (const auto& [entry, line] : lines_) {
      if (line.job_slug.empty()) continue;
      const int to = sign(line, Account::board);
      const bool is_work = line.material.empty();
      add(sums, {line.job_slug, is_work ? "work" : "goods"}, is_work ? to * line.quantity : 0,
          to * line.minor);
    }
    return sums;
  }

  // What came from suppliers and counts, and the work, is in stock, boards and waste.
  void conserved() {
    std::int64_t stock = 0;
    for (const MaterialStock& material : log_.stock()) stock += material.minor;
    std::int64_t boards = 0;
    std::int64_t work = 0;
    for (const JobTotals& job : log_.job_totals()) {
      boards += job.goods_minor + job.work_minor;
      work += job.work_minor;
    }
    std::int64_t received = 0;
    std::int64_t wasted = 0;
    for (const MaterialTotals& totals : log_.material_totals()) {
      received += totals.received.minor + totals.adjusted.minor;
      wasted += totals.wasted.minor;
      if (totals.on_hand.quantity != totals.received.quantity - totals.used.quantity -
                                         totals.wasted.quantity + totals.adjusted.quantity ||
          totals.on_hand.quantity != log_.stock_of(totals.material.slug)->quantity) {
        wrong_ += "goods of " + totals.material.slug + " are made or lost; ";
      }
    }
    if (received + work != stock + boards + wasted) wrong_ += "money is made or lost; ";
  }

  const Log& log_;
  std::vector<Line> lines_ = {};
  std::vector<std::string> jobs_ = {};
  std::string wrong_ = {};
};

}  // namespace

std::string wrong_answers(const Log& log) { return Asker(log).wrong(); }

}  // namespace wetout::joblog::testing
