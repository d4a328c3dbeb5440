#include "outline.hpp"

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

double off_chord(Vec a, Vec b, Vec p) {
  const Vec along = b - a, to = p - a;
  const double chord = length(along);
  return chord == 0.0 ? length(to) : std::abs(cross(along, to)) / chord;
}

class Tracer {
 public:
  Tracer(const Form& form, double tolerance) : form_(form), tolerance_(tolerance) {}

  // The rail from tail to nose, y >= 0.
  std::vector<Vec> rail() {
    const std::vector<double>& breaks = form_.breaks();
    points_ = {point(breaks.front())};
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
      const double width = breaks[i + 1] - breaks[i];
      Panel panel{.origin = breaks[i], .reach = width};
      if (i == 0) panel.power = form_.tail().fold;
      if (i + 2 == breaks.size() && form_.nose().fold > 1)
        panel = {.origin = breaks[i + 1], .reach = -width, .power = form_.nose().fold};
      const bool backwards = panel.reach < 0.0;
      trace(panel, backwards ? 1.0 : 0.0, backwards ? 0.0 : 1.0, 0);
    }
    return std::move(points_);
  }

 private:
  Vec point(double x) const { return {x, form_.half_width(x)}; }

  // Adds what lies after u = a up to u = b.
  void trace(const Panel& panel, double a, double b, int depth) {
    const Vec start = points_.back();
    const Vec stop = point(panel.x(b));
    double off = 0.0;
    for (const double share : {0.25, 0.5, 0.75})
      off = std::max(off, off_chord(start, stop, point(panel.x(a + share * (b - a)))));
    // Of a chord the three places see at least three quarters of the largest gap.
    if (depth < 24 && (off > 0.7 * tolerance_ || depth < 1)) {
      const double middle = 0.5 * (a + b);
      trace(panel, a, middle, depth + 1);
      trace(panel, middle, b, depth + 1);
      return;
    }
    points_.push_back(stop);
  }

  const Form& form_;
  double tolerance_;
  std::vector<Vec> points_;
};

}  // namespace

std::vector<Vec> outline_polygon(const Form& form, double tolerance) {
  const std::vector<Vec> rail = Tracer(form, tolerance).rail();
  std::vector<Vec> polygon;
  polygon.reserve(2 * rail.size() + 1);
  for (const Vec p : rail) polygon.push_back({p.x, -p.y});
  const bool closed_nose = rail.back().y == 0.0;
  const bool closed_tail = rail.front().y == 0.0;
  for (std::size_t i = rail.size() - (closed_nose ? 1 : 0); i-- > (closed_tail ? 1U : 0U);)
    polygon.push_back(rail[i]);
  if (form.tail().notch > 0.0) polygon.push_back({form.tail().notch, 0.0});
  return polygon;
}

}  // namespace wetout::board
