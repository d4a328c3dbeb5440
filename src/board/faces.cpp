#include "faces.hpp"

#include <algorithm>
#include <cmath>

#include "strip.hpp"

namespace wetout::board {
namespace {

// The rail's points at x: tabled once when it is the same all along.
class Rails {
 public:
  explicit Rails(const Form& form) : form_(form) {}
  const HalfQuarter& at(double e) {
    if (form_.constant_rail()) return *form_.constant_rail();
    own_ = half_quarter(e);
    return own_;
  }

 private:
  const Form& form_;
  HalfQuarter own_;
};

// The part of a cut end's wall on one side of the apex.
double end_wall(const Form& form, const Closure& end, double x, Face face) {
  if (!end.cut()) return 0.0;
  const Frame frame = form.frame(x);
  return 2.0 * end.half_width * frame.side(face).height * section_area(frame.e);
}

// Length of the notch's edge per unit of x.
double notch_stretch(const Form& form) {
  return std::hypot(1.0, form.tail().half_width / form.tail().notch);
}

// One side of a face per unit of x where the notch cuts it, the notch's wall included.
Estimate notched_strip(const Form& form, const Frame& frame, Face face, double inner) {
  Estimate strip = face_strip_outside(frame, face, place_at(frame.e, inner));
  const double s = inner < 1.0 ? section_point(frame.e, inner).far : 0.0;
  const double wall = frame.side(face).height * s * notch_stretch(form);
  strip += {wall, wall};
  return strip;
}

void add(Estimate& sum, Estimate value, double fine, double coarse) {
  sum += {value.fine * fine, value.coarse * coarse};
}
void add(Estimate& sum, double value, double fine, double coarse) {
  sum += {value * fine, value * coarse};
}

double centre_slope(const Frame& frame, Face face) {
  return frame.apex_slope + sign_of(face) * frame.side(face).height_slope;
}

Totals ends(const Form& form) {
  Totals sum;
  for (const auto& [end, x] :
       {std::pair(form.tail(), 0.0), std::pair(form.nose(), form.length())}) {
    const double deck = end_wall(form, end, x, Face::deck);
    const double bottom = end_wall(form, end, x, Face::bottom);
    const double edge =
        2.0 * (end.notch > 0.0 ? std::hypot(end.notch, end.half_width) : end.half_width);
    sum.deck += {deck, deck};
    sum.bottom += {bottom, bottom};
    sum.perimeter += {edge, edge};
  }
  return sum;
}

}  // namespace

Totals totals(const Form& form) {
  Totals sum = ends(form);
  Rails rails(form);
  const double constant_area = form.constant_rail() ? section_area(form.rail_e(0.0)) : 0.0;
  for (const Panel& panel : form.panels(0.0, form.length())) {
    at_points(panel, [&](double x, double fine, double coarse) {
      const Frame f = form.frame(x);
      const double notch = form.notch(x);
      const double thickness = f.deck.height + f.bottom.height;
      if (notch > 0.0) {
        const double inner = std::min(1.0, notch / f.half_width);
        add(sum.deck, notched_strip(form, f, Face::deck, inner), 2.0 * fine, 2.0 * coarse);
        add(sum.bottom, notched_strip(form, f, Face::bottom, inner), 2.0 * fine, 2.0 * coarse);
        add(sum.volume, quarter_outside(f.e, inner) * (2.0 * f.half_width * thickness), fine,
            coarse);
      } else {
        const HalfQuarter& half = rails.at(f.e);
        add(sum.deck, face_strip(f, Face::deck, half), 2.0 * fine, 2.0 * coarse);
        add(sum.bottom, face_strip(f, Face::bottom, half), 2.0 * fine, 2.0 * coarse);
        const double area = form.constant_rail() ? constant_area : section_area(f.e);
        add(sum.volume, 2.0 * f.half_width * thickness * area, fine, coarse);
      }
      add(sum.planform, 2.0 * (f.half_width - notch), fine, coarse);
      add(sum.perimeter, 2.0 * std::hypot(1.0, f.half_width_slope), fine, coarse);
      add(sum.deck_length, std::hypot(1.0, centre_slope(f, Face::deck)), fine, coarse);
      add(sum.bottom_length, std::hypot(1.0, centre_slope(f, Face::bottom)), fine, coarse);
    });
  }
  return sum;
}

Estimate face_area(const Form& form, Face face, double from, double to) {
  Estimate sum;
  if (from <= 0.0) {
    const double wall = end_wall(form, form.tail(), 0.0, face);
    sum += {wall, wall};
  }
  if (to >= form.length()) {
    const double wall = end_wall(form, form.nose(), form.length(), face);
    sum += {wall, wall};
  }
  Rails rails(form);
  for (const Panel& panel : form.panels(from, to)) {
    at_points(panel, [&](double x, double fine, double coarse) {
      const Frame f = form.frame(x);
      const double notch = form.notch(x);
      const Estimate strip = notch > 0.0
                                 ? notched_strip(form, f, face, std::min(1.0, notch / f.half_width))
                                 : face_strip(f, face, rails.at(f.e));
      add(sum, strip, 2.0 * fine, 2.0 * coarse);
    });
  }
  return sum;
}

Estimate centred_area(const Form& form, Face face, double from, double to, double width) {
  enum Branch { to_apex, on_flat, on_rail, in_notch };
  const auto probe = [&](double x) -> Probe {
    const Frame f = form.frame(x);
    const double inner = std::min(1.0, form.notch(x) / f.half_width);
    const Place outer = place_at_girth(f, face, 0.5 * width);
    Estimate strip = face_strip_outside(f, face, place_at(f.e, inner));
    if (outer.rail && outer.near == 0.0) return {strip * 2.0, to_apex};
    strip += face_strip_outside(f, face, outer) * -1.0;
    if (strip.fine < 0.0) return {{}, in_notch};
    return {strip * 2.0, outer.rail ? on_rail : on_flat};
  };
  Estimate sum;
  for (const Panel& panel : form.panels(from, to))
    sum += integrate_branches(gauss_kronrod(), panel, probe);
  return sum;
}

double girth(const Form& form, Face face, double x) {
  const Frame frame = form.frame(x);
  if (!(frame.half_width > 0.0)) return 2.0 * frame.side(face).height;
  return 2.0 * girth_quarter(frame, face, Rails(form).at(frame.e)).fine;
}

double max_girth(const Form& form, Face face, double from, double to) {
  // The girth has one wide place on any board worth the name: the best of many, then refined.
  constexpr int places = 48;
  const auto at = [&](int i) { return from + (to - from) * i / places; };
  int best = 0;
  double most = 0.0;
  for (int i = 0; i <= places; ++i) {
    const double g = girth(form, face, at(i));
    if (g > most) {
      most = g;
      best = i;
    }
  }
  double low = at(std::max(0, best - 1));
  double high = at(std::min(places, best + 1));
  constexpr double golden = 0.6180339887498949;
  for (int i = 0; i < 24; ++i) {
    const double left = high - golden * (high - low);
    const double right = low + golden * (high - low);
    const double left_girth = girth(form, face, left);
    const double right_girth = girth(form, face, right);
    most = std::max({most, left_girth, right_girth});
    (left_girth > right_girth ? high : low) = left_girth > right_girth ? right : left;
  }
  return most;
}

double centre_length(const Form& form, Face face, double from, double to) {
  Estimate sum;
  for (const Panel& panel : form.panels(from, to)) {
    at_points(panel, [&](double x, double fine, double coarse) {
      add(sum, std::hypot(1.0, centre_slope(form.frame(x), face)), fine, coarse);
    });
  }
  return sum.fine;
}

}  // namespace wetout::board
