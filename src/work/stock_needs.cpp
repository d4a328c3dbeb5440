#include "stock_needs.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "wetout/files/job_file.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

class Needs {
 public:
  explicit Needs(std::string coat) : coat_(std::move(coat)) {}

  void take(const std::string& material, MaterialUnit unit, std::int64_t quantity) {
    if (quantity == 0) return;
    const auto found = std::find_if(goods_.begin(), goods_.end(), [&](const CoatGoods& one) {
      return one.material == material && one.unit == unit;
    });
    if (found == goods_.end()) {
      goods_.push_back({coat_, material, unit, quantity});
    } else {
      found->quantity += quantity;
    }
  }

  std::vector<CoatGoods>& goods() { return goods_; }

 private:
  std::string coat_;
  std::vector<CoatGoods> goods_;
};

// Poured first the resin, last the hardener, additives between them.
void take_batch(Needs& needs, const laminate::Batch& batch) {
  if (batch.pours.empty()) return;
  needs.take(batch.pours.front().what, MaterialUnit::milligram, batch.part_a.count());
  needs.take(batch.pours.back().what, MaterialUnit::milligram, batch.part_b.count());
  for (const laminate::AdditiveAmount& additive : batch.additives) {
    needs.take(additive.material, MaterialUnit::milligram, additive.mass.count());
  }
}

}  // namespace

base::Result<std::vector<CoatGoods>> goods_of_plan(const StoredPlan& stored) {
  const laminate::Plan& plan = stored.document.plan;
  std::vector<laminate::CoatSpec> specs;
  if (std::any_of(plan.coats.begin(), plan.coats.end(), [](const laminate::CoatNeed& coat) {
        return coat.kind == laminate::CoatKind::install;
      })) {
    auto job = job_of(stored);
    if (!job) return tl::unexpected(job.error());
    specs = std::move(job->coats);
  }
  std::vector<CoatGoods> all;
  for (const laminate::CoatNeed& coat : plan.coats) {
    Needs needs(coat.id);
    for (const laminate::PlyNeed& ply : plan.plies) {
      if (ply.coat != coat.id) continue;
      constexpr double micrometres = 1e6;
      needs.take(ply.cloth, MaterialUnit::micrometre,
                 std::llround(units::in_metres(ply.cut_length) * micrometres));
    }
    for (const laminate::Batch& batch : coat.batches) take_batch(needs, batch);
    for (const laminate::CoatSpec& spec : specs) {
      if (spec.id == coat.id && spec.install) {
        needs.take(spec.install->part, MaterialUnit::piece, spec.install->count);
      }
    }
    std::move(needs.goods().begin(), needs.goods().end(), std::back_inserter(all));
  }
  return all;
}

}  // namespace wetout::work
