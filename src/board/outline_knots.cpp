#include "outline_knots.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace wetout::board {
namespace {

constexpr double within = 2e-7;      // metres
constexpr double least_step = 1e-6;  // of the length
constexpr double steep = 0.5;        // a slope above which the square is followed instead
constexpr double nothing = 0.5e-3;   // half-width of an end that runs out
constexpr double usual_root = 0.25, most_root = 0.4;  // of the length, from an end
constexpr int most_halvings = 24;

struct Value {
  double y = 0.0, behind = 0.0, ahead = 0.0;
};

class Mean {
 public:
  Mean(const Sides& sides, double length) : sides_(sides), length_(length) {
    // Above the centre line or below it.
    for (const Side& side : sides.list) {
      double sum = 0.0;
      for (int i = 1; i < 8; ++i) sum += side.at(length * i / 8.0, true).y - sides.axis;
      sign_.push_back(sum >= 0.0 ? 1.0 : -1.0);
    }
  }

  [[nodiscard]] Value at(double x) const {
    Value mean;
    const auto share = 1.0 / static_cast<double>(sides_.list.size());
    for (std::size_t i = 0; i < sides_.list.size(); ++i) {
      const Side::Value behind = sides_.list[i].at(x, false), ahead = sides_.list[i].at(x, true);
      mean.y += share * sign_[i] * (ahead.y - sides_.axis);
      mean.behind += share * sign_[i] * behind.slope;
      mean.ahead += share * sign_[i] * ahead.slope;
    }
    return mean;
  }

  [[nodiscard]] double uneven(double x) const {
    if (sides_.list.size() < 2) return 0.0;
    const auto half = [&](std::size_t i) {
      return sign_[i] * (sides_.list[i].at(x, true).y - sides_.axis);
    };
    return std::abs(half(0) - half(1));
  }

 private:
  const Sides& sides_;
  double length_;
  std::vector<double> sign_;
};

// Between two knots: the cubic that meets both.
double hermite(double u, double step, double y0, double s0, double y1, double s1) {
  const double v = 1.0 - u;
  return v * v * (1.0 + 2.0 * u) * y0 + u * u * (1.0 + 2.0 * v) * y1 +
         u * v * step * (v * s0 - u * s1);
}

class Fitter {
 public:
  Fitter(const Sides& sides, double length, const Uncut& ends)
      : sides_(sides), mean_(sides, length), length_(length), ends_(ends) {}

  base::Result<Knots> run() {
    std::vector<double> places{0.0, length_};
    for (const Side& side : sides_.list) {
      for (const Cubic& piece : side.pieces()) places.push_back(piece.p[0].x);
    }
    std::sort(places.begin(), places.end());
    std::vector<double> kept{0.0};
    for (const double x : places) {
      if (x - kept.back() > least_step * length_ && x < length_ * (1.0 - least_step))
        kept.push_back(x);
    }
    kept.push_back(length_);
    tip_radius(false);
    tip_radius(true);
    // Where the half-width rises like a root: from a round tip to where it has become level.
    root_until_ = tail_root_ ? level_from(kept, false) : 0.0;
    root_from_ = nose_root_ ? level_from(kept, true) : length_;
    for (std::size_t i = 0; i + 1 < kept.size(); ++i) {
      add(kept[i]);
      halve(kept[i], kept[i + 1], 0);
    }
    add(length_);
    finish();
    if (wrong_) return base::fail(*wrong_);
    return std::move(out_);
  }

 private:
  void tip_radius(bool nose) {
    if (nose ? !ends_.nose : !ends_.tail) return;
    double sum = 0.0;
    for (const Side& side : sides_.list) {
      const auto radius = side.tip_radius(nose, sides_.axis);
      if (!radius) return;
      sum += *radius;
    }
    const double radius = sum / static_cast<double>(sides_.list.size());
    (nose ? out_.drawn.nose_radius : out_.drawn.tail_radius) = units::metres(radius);
    (nose ? nose_root_ : tail_root_) = true;
  }

  // The first place, seen from an end, where the outline is no longer steep.
  [[nodiscard]] double level_from(const std::vector<double>& places, bool nose) const {
    for (std::size_t i = 1; i + 1 < places.size(); ++i) {
      const double x = places[nose ? places.size() - 1 - i : i];
      if (std::abs(x - (nose ? length_ : 0.0)) > most_root * length_) break;
      const Value v = mean_.at(x);
      if (std::abs(nose ? v.behind : v.ahead) <= steep) return x;
    }
    return (nose ? 1.0 - usual_root : usual_root) * length_;
  }

  [[nodiscard]] bool is_root(double from, double to) const {
    return to <= root_until_ + 1e-12 || from >= root_from_ - 1e-12;
  }

  // Half-width, or its square, and how it grows, at a place seen from inside an interval.
  struct Side01 {
    double value, slope;
  };
  [[nodiscard]] Side01 seen(double x, bool ahead, bool root) const {
    const Value v = mean_.at(x);
    if (!root)
      return {x <= 0.0 && ends_.tail && v.y < nothing ? 0.0 : v.y, ahead ? v.ahead : v.behind};
    if (x <= 0.0) return {0.0, 2.0 * out_.drawn.tail_radius.si()};
    if (x >= length_) return {0.0, -2.0 * out_.drawn.nose_radius.si()};
    return {v.y * v.y, 2.0 * v.y * (ahead ? v.ahead : v.behind)};
  }

  void halve(double from, double to, int depth) {
    // The border between the two ways of following is a knot.
    for (const double border : {root_until_, root_from_}) {
      if (border > from + least_step * length_ && border < to - least_step * length_) {
        halve(from, border, depth);
        add(border);
        halve(border, to, depth);
        return;
      }
    }
    const bool root = is_root(from, to);
    const Side01 a = seen(from, true, root), b = seen(to, false, root);
    bool good = true;
    for (const double u : {0.2, 0.5, 0.8}) {
      const double step = to - from;
      double y = hermite(u, step, a.value, a.slope, b.value, b.slope);
      if (root) y = std::sqrt(std::max(0.0, y));
      good = good && std::abs(y - mean_.at(from + u * step).y) <= within;
    }
    if (good || depth >= most_halvings || to - from <= 2.0 * least_step * length_) return;
    const double middle = 0.5 * (from + to);
    halve(from, middle, depth + 1);
    add(middle);
    halve(middle, to, depth + 1);
  }

  void add(double x) {
    Value v = mean_.at(x);
    if ((x <= 0.0 && ends_.tail) || (x >= length_ && ends_.nose)) {
      if (v.y < nothing) v.y = 0.0;
    }
    if (v.y < 0.0 && !wrong_) {
      wrong_ =
          base::Problem{.code = "outline.doubles_back",
                        .message = fmt::format(
                            "the outline crosses the centre line {:.0f} mm from the tail", x * 1e3),
                        .expected = "a rail on each side of the centre line"};
    }
    out_.widest = std::max(out_.widest, v.y);
    out_.uneven = std::max(out_.uneven, mean_.uneven(x));
    const auto finite = [](double slope) { return std::clamp(slope, -1e6, 1e6); };
    out_.drawn.knots.push_back(
        {units::metres(x), units::metres(std::max(0.0, v.y)), finite(v.behind), finite(v.ahead)});
  }

  void finish() {
    const auto& knots = out_.drawn.knots;
    for (std::size_t i = 0; i + 1 < knots.size(); ++i) {
      const double from = knots[i].from_tail.si(), to = knots[i + 1].from_tail.si();
      if (tail_root_ && to <= root_until_ + 1e-12) ++out_.drawn.tail_roots;
      if (nose_root_ && from >= root_from_ - 1e-12) ++out_.drawn.nose_roots;
    }
  }

  const Sides& sides_;
  Mean mean_;
  double length_;
  Uncut ends_;
  bool tail_root_ = false, nose_root_ = false;
  double root_until_ = 0.0, root_from_ = 0.0;
  Knots out_;
  std::optional<base::Problem> wrong_;
};

}  // namespace

base::Result<Knots> knots_of(const Sides& sides, double length, const Uncut& ends) {
  return Fitter(sides, length, ends).run();
}

}  // namespace wetout::board
