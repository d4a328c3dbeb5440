#include "wetout/resin/ratio.hpp"

#include "wetout/base/check.hpp"

namespace wetout::resin {
namespace {

double from_volume(const Product& product) {
  return (product.by_volume->b / product.by_volume->a) * (product.density_b / product.density_a);
}

}  // namespace

Parts printed_parts(const Product& product) {
  if (product.by_mass) return *product.by_mass;
  base::promise(product.by_volume.has_value(), "a resin without parts got past the reader");
  return *product.by_volume;
}

double hardener_per_resin(const Product& product) {
  if (product.by_mass) return product.by_mass->b / product.by_mass->a;
  base::promise(product.by_volume.has_value(), "a resin without parts got past the reader");
  return from_volume(product);
}

double parts_clash(const Product& product) {
  if (!product.by_mass || !product.by_volume) return 0.0;
  return from_volume(product) / hardener_per_resin(product) - 1.0;
}

}  // namespace wetout::resin
