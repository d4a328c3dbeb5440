#include "wetout/board/hull.hpp"

#include <algorithm>
#include <cmath>

#include "band.hpp"
#include "check.hpp"
#include "faces.hpp"
#include "form.hpp"
#include "outline.hpp"
#include "rail_line.hpp"
#include "wetout/base/check.hpp"

namespace wetout::board {

using units::Area;
using units::Length;

namespace {

// Rounding of the sums themselves, so that an error is never given as zero.
constexpr double rounding = 1e-12;

Measured measured(Estimate e) {
  return {Area::from_si(e.fine), Area::from_si(e.error() + rounding * std::abs(e.fine))};
}

}  // namespace

struct Hull::Model {
  Form form;

  double on_board(Length x) const { return std::clamp(x.si(), 0.0, form.length()); }
};

Hull::Hull(std::unique_ptr<Model> model) : model_(std::move(model)) {}
Hull::Hull(const Hull& other) : model_(std::make_unique<Model>(*other.model_)) {}
Hull::Hull(Hull&&) noexcept = default;
Hull& Hull::operator=(const Hull& other) {
  if (this != &other) model_ = std::make_unique<Model>(*other.model_);
  return *this;
}
Hull& Hull::operator=(Hull&&) noexcept = default;
Hull::~Hull() = default;

base::Result<Hull> Hull::make(const Spec& spec) {
  if (base::Problems problems = check(spec); !problems.empty())
    return base::fail(std::move(problems));
  auto model = std::make_unique<Model>(Model{Form(spec)});
  if (base::Problems problems = check(spec, model->form); !problems.empty())
    return base::fail(std::move(problems));
  return Hull(std::move(model));
}

Length Hull::length() const { return Length::from_si(model_->form.length()); }
bool Hull::tip_thickness_assumed() const { return model_->form.tip_thickness_assumed(); }

Length Hull::width(Length x) const {
  return Length::from_si(2.0 * model_->form.half_width(model_->on_board(x)));
}
Length Hull::thickness(Length x) const {
  return Length::from_si(model_->form.thickness(model_->on_board(x)));
}
Length Hull::rocker(Length x) const {
  return Length::from_si(model_->form.rocker(model_->on_board(x)));
}
Length Hull::wide_point() const { return Length::from_si(model_->form.wide_point()); }
Length Hull::max_width() const { return width(wide_point()); }

Length Hull::girth(Face face, Length x) const {
  return Length::from_si(board::girth(model_->form, face, model_->on_board(x)));
}
Length Hull::max_girth(Face face, Length from, Length to) const {
  return Length::from_si(
      board::max_girth(model_->form, face, model_->on_board(from), model_->on_board(to)));
}
Length Hull::surface_length(Face face, Length from, Length to) const {
  return Length::from_si(
      centre_length(model_->form, face, model_->on_board(from), model_->on_board(to)));
}
Length Hull::edge_length(Length from, Length to) const {
  const double a = model_->on_board(from);
  const double b = model_->on_board(to);
  return Length::from_si(b > a ? board::edge_length(model_->form, a, b) : 0.0);
}

Surfaces Hull::surfaces() const {
  const Totals t = totals(model_->form);
  return {.planform = measured(t.planform),
          .deck = measured(t.deck),
          .bottom = measured(t.bottom),
          .perimeter = Length::from_si(t.perimeter.fine),
          .volume = units::Volume::from_si(t.volume.fine),
          .deck_length = Length::from_si(t.deck_length.fine),
          .bottom_length = Length::from_si(t.bottom_length.fine)};
}

Measured Hull::patch_area(const Patch& patch) const {
  const double from = model_->on_board(patch.from_tail);
  const double to = model_->on_board(patch.to);
  if (to <= from) return {};
  if (!patch.width) return measured(face_area(model_->form, patch.face, from, to));
  const double width = patch.width->si();
  if (!(width > 0.0)) return {};
  return measured(centred_area(model_->form, patch.face, from, to, width));
}

base::Result<Measured> Hull::band_area(Face face, Length reach, Length from, Length to) const {
  if (!std::isfinite(reach.si()) || reach < Length{}) {
    return base::fail({.code = "board.lap_not_a_length",
                       .message = "the lap is not a length",
                       .key = "lap",
                       .expected = "zero or more, such as \"2 in\""});
  }
  const Length half = girth(face, wide_point()) / 2.0;
  if (reach >= half) {
    return base::fail(
        {.code = "board.lap_too_wide",
         .message = "the lap is wider than the other face: it would meet itself in the middle",
         .key = "lap",
         .expected = "less than half of the face's width over the surface at the wide point"});
  }
  return measured(board::band_area(model_->form, face, reach.si(), model_->on_board(from),
                                   model_->on_board(to)));
}

Area Hull::strip_area(Length reach, Length from, Length to) const {
  const double a = model_->on_board(from);
  const double b = model_->on_board(to);
  if (b <= a) return {};
  const double l = std::max(0.0, reach.si());
  return Area::from_si(apex_length(model_->form, a, b) * l +
                       0.5 * turning(model_->form, a, b) * l * l);
}

std::vector<Hull::Point> Hull::outline(Length tolerance) const {
  base::promise(tolerance > Length{}, "an outline needs a tolerance above zero");
  std::vector<Point> points;
  for (const Vec p : outline_polygon(model_->form, tolerance.si()))
    points.push_back({Length::from_si(p.x), Length::from_si(p.y)});
  return points;
}

std::vector<Hull::Bezier> Hull::rail_beziers() const {
  std::vector<Bezier> line;
  for (const Cubic& cubic : rail_cubics(model_->form)) {
    Bezier piece;
    for (std::size_t i = 0; i < 4; ++i) {
      piece.p[i] = {Length::from_si(cubic.p[i].x), Length::from_si(cubic.p[i].y)};
    }
    line.push_back(piece);
  }
  return line;
}

std::vector<Hull::Bulge> Hull::rail_arcs() const {
  std::vector<Bulge> line;
  for (const ArcStart& arc : arcs_along(rail_cubics(model_->form))) {
    line.push_back({{Length::from_si(arc.at.x), Length::from_si(arc.at.y)}, arc.bulge});
  }
  return line;
}

Length Hull::notch() const { return Length::from_si(model_->form.tail().notch); }

std::optional<units::Mass> core_mass(const Spec& spec, units::Volume volume) {
  if (spec.core_weight) return spec.core_weight;
  if (!spec.foam_density) return std::nullopt;
  return *spec.foam_density * volume + spec.stringer_weight.value_or(units::Mass{});
}

}  // namespace wetout::board
