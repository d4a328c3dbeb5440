#include "pours.hpp"

#include "lookup.hpp"
#include "wetout/resin/ratio.hpp"

namespace wetout::laminate {
namespace {

using units::Milligrams;

// Each pour's reading is the one before plus what is added.
class RunningTotal {
 public:
  void pour(std::vector<Pour>& pours, const std::string& what, Milligrams add,
            std::optional<units::Density> density) {
    Pour pour{.what = what, .add = add, .reads = {}, .add_volume = {}, .reads_volume = {}};
    mass_ += add;
    pour.reads = mass_;
    if (density) {
      pour.add_volume = add.mass() / *density;
      if (volume_) *volume_ += *pour.add_volume;
    } else {
      volume_.reset();  // from here on the sum is not known
    }
    pour.reads_volume = volume_;
    pours.push_back(std::move(pour));
  }

 private:
  Milligrams mass_;
  std::optional<units::Volume> volume_ = units::Volume{};
};

}  // namespace

resin::WeighRequest weigh_request(const Shop& shop, const resin::Product& product,
                                  const std::vector<Additive>& additives,
                                  const resin::Defaults& settings) {
  resin::WeighRequest request;
  request.hardener_per_resin = resin::hardener_per_resin(product);
  request.tolerance = product.tolerance.value_or(settings.ratio_tolerance.value);
  for (const Additive& additive : additives) request.additive_shares.push_back(additive.share);
  request.step = Milligrams::nearest(shop.scale_step);
  request.raise_limit = settings.raise_limit.value;
  return request;
}

Batch batch_of(const Shop& shop, const resin::Product& product,
               const std::vector<Additive>& additives, const resin::Weighed& weighed) {
  Batch batch;
  batch.mix = weighed.total;
  batch.part_a = weighed.part_a;
  batch.part_b = weighed.part_b;
  batch.part_a_volume = weighed.part_a.mass() / product.density_a;
  batch.part_b_volume = weighed.part_b.mass() / product.density_b;
  batch.off_ratio = weighed.off_ratio;
  RunningTotal total;
  total.pour(batch.pours, product.part_a, weighed.part_a, product.density_a);
  for (std::size_t i = 0; i < additives.size(); ++i) {
    const std::string& id = additives[i].material;
    batch.additives.push_back({id, weighed.additives[i]});
    total.pour(batch.pours, id, weighed.additives[i], get(shop.materials, id).density);
  }
  total.pour(batch.pours, product.part_b, weighed.part_b, product.density_b);
  return batch;
}

Ratio ratio_of(const resin::Product& product, const resin::Defaults& settings) {
  const resin::Parts parts = resin::printed_parts(product);
  return {parts.by, parts.a, parts.b, product.tolerance.value_or(settings.ratio_tolerance.value)};
}

}  // namespace wetout::laminate
