#include "geos.hpp"

#include <geos_c.h>

#include <stdexcept>

namespace wetout::board {

struct PlanPolygon::Impl {
  GEOSContextHandle_t context = GEOS_init_r();
  GEOSGeometry* polygon = nullptr;

  Impl() = default;
  Impl(const Impl&) = delete;
  Impl& operator=(const Impl&) = delete;
  ~Impl() {
    if (polygon) GEOSGeom_destroy_r(context, polygon);
    GEOS_finish_r(context);
  }
};

PlanPolygon::PlanPolygon(const std::vector<Hull::Point>& points) : impl_(std::make_unique<Impl>()) {
  const auto n = static_cast<unsigned>(points.size());
  GEOSCoordSequence* ring = GEOSCoordSeq_create_r(impl_->context, n + 1, 2);
  for (unsigned i = 0; i <= n; ++i) {
    const Hull::Point& p = points[i % n];
    GEOSCoordSeq_setXY_r(impl_->context, ring, i, p.x.si(), p.y.si());
  }
  impl_->polygon = GEOSGeom_createPolygon_r(
      impl_->context, GEOSGeom_createLinearRing_r(impl_->context, ring), nullptr, 0);
  if (!impl_->polygon) throw std::runtime_error("GEOS made no polygon");
}

PlanPolygon::~PlanPolygon() = default;

bool PlanPolygon::valid() const { return GEOSisValid_r(impl_->context, impl_->polygon) == 1; }

double PlanPolygon::area() const {
  double value = 0.0;
  if (GEOSArea_r(impl_->context, impl_->polygon, &value) != 1)
    throw std::runtime_error("GEOS area");
  return value;
}

double PlanPolygon::length() const {
  double value = 0.0;
  if (GEOSLength_r(impl_->context, impl_->polygon, &value) != 1)
    throw std::runtime_error("GEOS length");
  return value;
}

double PlanPolygon::buffered(double distance) const {
  constexpr int segments_of_a_quarter = 200;
  GEOSGeometry* grown =
      GEOSBuffer_r(impl_->context, impl_->polygon, distance, segments_of_a_quarter);
  if (!grown) throw std::runtime_error("GEOS buffer");
  double value = 0.0;
  GEOSArea_r(impl_->context, grown, &value);
  GEOSGeom_destroy_r(impl_->context, grown);
  return value;
}

}  // namespace wetout::board
