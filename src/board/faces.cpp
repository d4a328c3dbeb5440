#include "faces.hpp"

#include <algorithm>
#include <cmath>

#include "strip.hpp"

namespace wetout::board {
namespace {

// The section's quarter at x, less what the notch takes; the same all along is tabled once.
class Quarters {
 public:
  explicit Quarters(const Form& form) : form_(form) {}
  const Quarter& at(const Frame& frame, double notch) {
    if (notch > 0.0) {
      own_ = quarter_outside(frame.e, place_at(frame.e, std::min(1.0, notch / frame.half_width)));
      return own_;
    }
    if (form_.constant_rail()) return *form_.constant_rail();
    own_ = whole_quarter(frame.e);
    return own_;
  }

 private:
  const Form& form_;
  Quarter own_;
};

// The part of a cut end's wall on one side of the apex.
double end_wall(const Form& form, const Closure& end, double x, Face face) {
  if (!end.cut()) return 0.0;
  const Frame frame = form.frame(x);
  return 2.0 * end.half_width * frame.side(face).height * section_area(frame.e);
}

// The notch's wall on one side of the apex and of the centre line, per unit of x.
double notch_wall(const Form& form, const Frame& frame, Face face, double notch) {
  if (notch <= 0.0) return 0.0;
  const double c = notch / frame.half_width;
  const double s = c < 1.0 ? section_point(frame.e, c).far : 0.0;
  return frame.side(face).height * s * std::hypot(1.0, form.tail().half_width / form.tail().notch);
}

Estimate half_face(const Form& form, const Frame& frame, Face face, const Quarter& quarter,
                   double notch) {
  Estimate strip = face_strip(frame, face, quarter);
  const double wall = notch_wall(form, frame, face, notch);
  strip += {wall, wall};
  return strip;
}

void add(Estimate& sum, Estimate value, double fine, double coarse) {
  sum += {value.fine * fine, value.coarse * coarse};
}
void add(Estimate& sum, double value, double fine, double coarse) {
  sum += {value * fine, value * coarse};
}

double root(double a, double b) { return std::sqrt(a * a + b * b); }

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
  Quarters quarters(form);
  const double constant_area = form.constant_rail() ? section_area(form.rail_e(0.0)) : 0.0;
  for (const Panel& panel : form.panels(0.0, form.length())) {
    at_points(panel, [&](double x, double fine, double coarse) {
      const Frame f = form.frame(x);
      const double notch = form.notch(x);
      const Quarter& quarter = quarters.at(f, notch);
      add(sum.deck, half_face(form, f, Face::deck, quarter, notch), 2.0 * fine, 2.0 * coarse);
      add(sum.bottom, half_face(form, f, Face::bottom, quarter, notch), 2.0 * fine, 2.0 * coarse);
      // Of the section: two quarters above the apex and two below.
      const double box = 2.0 * f.half_width * (f.deck.height + f.bottom.height);
      if (notch > 0.0) {
        add(sum.volume, quarter.area() * box, fine, coarse);
      } else {
        add(sum.volume, box * (form.constant_rail() ? constant_area : section_area(f.e)), fine,
            coarse);
      }
      add(sum.planform, 2.0 * (f.half_width - notch), fine, coarse);
      add(sum.perimeter, 2.0 * root(1.0, f.half_width_slope), fine, coarse);
      add(sum.deck_length, root(1.0, centre_slope(f, Face::deck)), fine, coarse);
      add(sum.bottom_length, root(1.0, centre_slope(f, Face::bottom)), fine, coarse);
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
  Quarters quarters(form);
  for (const Panel& panel : form.panels(from, to)) {
    at_points(panel, [&](double x, double fine, double coarse) {
      const Frame f = form.frame(x);
      const double notch = form.notch(x);
      add(sum, half_face(form, f, face, quarters.at(f, notch), notch), 2.0 * fine, 2.0 * coarse);
    });
  }
  return sum;
}

Estimate centred_area(const Form& form, Face face, double from, double to, double width) {
  enum Branch { to_apex, on_flat, on_rail, in_notch };
  Quarters quarters(form);
  const auto probe = [&](double x) -> Probe {
    const Frame f = form.frame(x);
    const Place outer = place_at_girth(f, face, 0.5 * width);
    Estimate strip = face_strip(f, face, quarters.at(f, form.notch(x)));
    if (outer.rail && outer.near == 0.0) return {strip * 2.0, to_apex};
    strip += face_strip(f, face, quarter_outside(f.e, outer)) * -1.0;
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
  return 2.0 * girth_strip(frame, face, Quarters(form).at(frame, 0.0)).fine;
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
      add(sum, root(1.0, centre_slope(form.frame(x), face)), fine, coarse);
    });
  }
  return sum.fine;
}

}  // namespace wetout::board
