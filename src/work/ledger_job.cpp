#include "ledger_job.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "ledger_work.hpp"
#include "stock_coat_facts.hpp"
#include "stock_needs.hpp"
#include "stock_shop.hpp"
#include "stored_plan.hpp"
#include "wetout/schedule/step_word.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

// Coat (empty: of none) and material; of the coats of the plan in its order, others after them.
class Rows {
 public:
  explicit Rows(std::string currency) : currency_(std::move(currency)) {}

  report::PlanVsActual& row(const std::string& coat, const std::string& material,
                            MaterialUnit unit) {
    const auto found = std::find_if(rows_.begin(), rows_.end(), [&](const auto& one) {
      return one.coat.value_or("") == coat && one.material == material &&
             one.used.unit == unit_of(unit);
    });
    if (found != rows_.end()) return *found;
    report::PlanVsActual row;
    if (!coat.empty()) row.coat = coat;
    row.material = material;
    row.used.unit = unit_of(unit);
    row.cost.currency = currency_;
    // Behind the others of its coat.
    const auto last = std::find_if(rows_.rbegin(), rows_.rend(),
                                   [&](const auto& one) { return one.coat.value_or("") == coat; });
    return *rows_.insert(last == rows_.rend() ? rows_.end() : last.base(), std::move(row));
  }

  std::vector<report::PlanVsActual> take() { return std::move(rows_); }

 private:
  std::string currency_;
  std::vector<report::PlanVsActual> rows_;
};

std::string coat_of(const std::string& step) {
  const auto name = schedule::read_step_name(step);
  return name ? name->coat : std::string();
}

// What the plan reckoned for each material, shared among the coats to the last minor unit.
void plan_costs(const laminate::Totals& totals, const std::vector<CoatGoods>& goods, Rows& rows) {
  for (const laminate::MaterialTotal& total : totals.materials) {
    if (!total.cost) continue;
    std::vector<const CoatGoods*> of_it;
    std::vector<std::int64_t> weights;
    for (const CoatGoods& one : goods) {
      if (one.material != total.material) continue;
      of_it.push_back(&one);
      weights.push_back(one.quantity);
    }
    if (of_it.empty()) continue;
    const auto shares = joblog::split_price(total.cost->minor, weights);
    for (std::size_t i = 0; i < of_it.size(); ++i) {
      rows.row(of_it[i]->coat, total.material, of_it[i]->unit).planned_cost =
          units::Money{shares[i], total.cost->currency};
    }
  }
}

class Telling {
 public:
  Telling(const LedgerShop& shop, const std::string& slug, report::LedgerDocument& document)
      : shop_(shop),
        slug_(slug),
        document_(document),
        currency_(shop.context.currency),
        rows_(shop.context.currency) {
    sums_.goods.currency = sums_.labour.currency = sums_.all.currency = currency_;
  }

  void run() {
    const joblog::JobRow job = shop_.log.job(slug_).value();
    document_.job = report::LedgerJob{job.slug, job.name, std::nullopt};
    const auto events = shop_.log.events(slug_);
    if (job.revisions > 0) plan(events);
    const joblog::JobCost cost = shop_.log.job_cost(slug_).value_or(joblog::JobCost{});
    goods(cost);
    work(cost, events);
    sums_.all.minor = sums_.goods.minor + sums_.labour.minor;
    document_.cost = sums_;
    document_.plan_vs_actual = rows_.take();
    not_taken();
  }

 private:
  void plan(const std::vector<joblog::EventRow>& events) {
    const auto stored = stored_plan(shop_.log, slug_, std::nullopt);
    const auto goods = stored
                           ? goods_of_plan(*stored)
                           : base::Result<std::vector<CoatGoods>>(tl::unexpected(stored.error()));
    if (!goods) {
      document_.notices.push_back({.code = "ledger.plan_unread",
                                   .text = "its plan cannot be read any more: plan it again",
                                   .subject = slug_});
      return;
    }
    const laminate::Plan& plan = stored->document.plan;
    document_.job->revision = stored->document.job.revision;
    for (const CoatGoods& need : *goods) {
      rows_.row(need.coat, need.material, need.unit).planned = amount_of(need.quantity, need.unit);
    }
    if (plan.totals.cost && plan.totals.cost->currency == currency_) {
      plan_costs(plan.totals, *goods, rows_);
      sums_.planned_goods = plan.totals.cost;
    }
    mixed(coat_facts(events, plan));
  }

  void mixed(const std::map<std::string, CoatFacts>& facts) {
    units::Milligrams all, lost;
    for (const auto& [coat, fact] : facts) {
      all += fact.mixed_in_all;
      lost += fact.left + fact.spilled;
      for (const auto& [material, quantity] : fact.mixed) {
        rows_.row(coat, material, MaterialUnit::milligram).recorded =
            amount_of(quantity, MaterialUnit::milligram);
      }
    }
    if (all.count() > 0) sums_.waste_share = lost.in_grams() / all.in_grams();
  }

  void goods(const joblog::JobCost& cost) {
    for (const joblog::JobGoods& one : cost.goods) {
      report::PlanVsActual& row =
          rows_.row(coat_of(one.step), one.material.slug, one.material.unit);
      row.used.count += one.quantity;
      row.cost.minor += one.minor;
    }
    sums_.goods.minor = cost.goods_minor;
  }

  void work(const joblog::JobCost& cost, const std::vector<joblog::EventRow>& events) {
    sums_.labour.minor = cost.work_minor;
    sums_.minutes = cost.minutes;
    for (const joblog::JobWork& one : cost.work) {
      report::StepWork work;
      if (!one.step.empty()) work.step = one.step;
      work.minutes = one.minutes;
      if (!currency_.empty()) work.cost = units::Money{one.minor, currency_};
      work.booked = true;
      document_.work.push_back(std::move(work));
    }
    bool unpaid = false;
    for (const WorkedStep& one : worked_steps(events, cost.work)) {
      const auto paid = wages(shop_, one.minutes);
      document_.work.push_back({one.step, one.minutes, paid, false});
      sums_.minutes += one.minutes;
      if (paid) sums_.labour.minor += paid->minor;
      unpaid = unpaid || !paid;
    }
    if (!unpaid) return;
    document_.notices.push_back(
        {.code = "ledger.no_wage",
         .text = shop_.other_wage
                     ? "labour in the shop file is in another currency: work costs nothing here"
                     : "the shop file gives no labour in [costs]: work costs nothing here"});
  }

  void not_taken() {
    std::vector<std::string> told;
    for (const report::PlanVsActual& row : document_.plan_vs_actual) {
      if (!row.recorded || row.recorded->count == 0 || row.used.count != 0) continue;
      const std::string& coat = row.coat.value();
      if (std::find(told.begin(), told.end(), coat) != told.end()) continue;
      told.push_back(coat);
      document_.notices.push_back(
          {.code = "ledger.not_taken",
           .text = "what was mixed was not taken from stock, so it is not in the cost",
           .subject = coat});
    }
  }

  const LedgerShop& shop_;
  const std::string& slug_;
  report::LedgerDocument& document_;
  std::string currency_;
  report::JobSums sums_;
  Rows rows_;
};

}  // namespace

void tell_job(const LedgerShop& shop, const std::string& slug, report::LedgerDocument& document) {
  Telling(shop, slug, document).run();
}

}  // namespace wetout::work
