#include "check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "form.hpp"
#include "profile.hpp"

namespace wetout::board {
namespace {

// A board longer than this is a slip of the pen. Lengths below a micrometre are zero.
constexpr double longest_m = 100.0;
constexpr double shortest_m = 1e-6;
// Widths read off a tape may be this far from growing and shrinking steadily.
constexpr double tape_m = 1e-3;
// Stations nearer than this are one station.
constexpr double same_place_m = 1e-6;

std::string in_mm(double metres) { return fmt::format("{:.5g} mm", metres * 1e3); }
std::string item(std::string_view list, std::size_t i) { return fmt::format("{}[{}]", list, i); }

base::Problem problem(std::string code, std::string key, std::string message, std::string found,
                      std::string expected, std::string hint = {}) {
  base::Problem p;
  p.code = std::move(code);
  p.key = std::move(key);
  p.message = std::move(message);
  p.found = std::move(found);
  p.expected = std::move(expected);
  p.hint = std::move(hint);
  return p;
}

// Only where the tail is wider than the board in front of it.
bool notch_cuts_rail(const Form& form) {
  const double depth = form.tail().notch;
  constexpr int places = 64;
  for (int i = 1; depth > 0.0 && i < places; ++i) {
    const double x = depth * i / places;
    if (form.notch(x) > form.half_width(x) + tape_m) return true;
  }
  return false;
}

class Checker {
 public:
  explicit Checker(const Spec& spec) : spec_(spec), length_(spec.length.si()) {}

  base::Problems run() {
    length();
    width();
    drawn();
    thickness();
    rocker();
    rail();
    mass();
    return std::move(problems_);
  }

 private:
  void add(std::string code, std::string key, std::string message, std::string found = {},
           std::string expected = {}, std::string hint = {}) {
    problems_.push_back(problem(std::move(code), std::move(key), std::move(message),
                                std::move(found), std::move(expected), std::move(hint)));
  }

  // A length that must be above zero, or may be zero, and of a size that makes sense.
  bool sensible(double value, bool may_be_zero, const std::string& code, const std::string& key,
                std::string_view what) {
    if (!std::isfinite(value)) {
      add(code, key, fmt::format("the {} is not a number", what), {}, "a length such as \"20 in\"");
    } else if (value < 0.0) {
      add(code, key, fmt::format("the {} is negative", what), in_mm(value), "a length above zero");
    } else if (value < shortest_m && !may_be_zero) {
      add(code, key, fmt::format("the {} is zero", what), in_mm(value), "a length above zero");
    } else if (value > longest_m) {
      add(code, key, fmt::format("the {} is out of all proportion for a board", what), in_mm(value),
          fmt::format("at most {:g} m", longest_m), "is the unit right?");
    } else {
      return true;
    }
    return false;
  }

  void length() { length_good_ = sensible(length_, false, "board.length", "length", "length"); }

  // Stations inside the board and in order, each once.
  template <class List>
  bool in_order(const List& list, std::string_view name) {
    bool good = true;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const double x = list[i].from_tail.si();
      if (!std::isfinite(x) || x < -same_place_m || (length_good_ && x > length_ + same_place_m)) {
        add("board.station_outside", item(name, i),
            fmt::format("this {} station does not lie on the board", name),
            std::isfinite(x) ? in_mm(x) + " from the tail" : std::string("no number"),
            length_good_ ? "between 0 and " + in_mm(length_) : std::string());
        good = false;
      } else if (i > 0 && std::isfinite(list[i - 1].from_tail.si())) {
        const double before = list[i - 1].from_tail.si();
        if (std::abs(x - before) <= same_place_m) {
          add("board.station_twice", item(name, i),
              fmt::format("there are two {} stations at this place", name),
              in_mm(x) + " from the tail", "one");
          good = false;
        } else if (x < before) {
          out_of_order(name, i, x, before);
          good = false;
        }
      }
    }
    return good && length_good_;
  }

  void out_of_order(std::string_view name, std::size_t i, double x, double before) {
    if (name == "width" && spec_.wide_point &&
        (spec_.wide_point->si() == x || spec_.wide_point->si() == before)) {
      add("board.wide_point", "wide_point",
          "the wide point lies beyond the measuring point next to it",
          in_mm(spec_.wide_point->si()) + " from the tail",
          "between the measuring points near the tail and near the nose");
      return;
    }
    add("board.station_order", item(name, i),
        fmt::format("the {} stations are not in order from tail to nose", name),
        fmt::format("{} after {}", in_mm(x), in_mm(before)), "rising distances from the tail");
  }

  bool at(double x, double place) const { return std::abs(x - place) <= same_place_m; }

  void width() {
    const std::vector<At>& list = spec_.width;
    if (list.size() < 2 || !at(list.front().from_tail.si(), 0.0) ||
        (length_good_ && !at(list.back().from_tail.si(), length_))) {
      if (list.size() < 2 || in_order(list, "width")) {
        add("board.width_at_ends", "width", "the width at the tail and at the nose is needed",
            fmt::format("{} stations", list.size()),
            "stations at 0 and at the board's length; 0 wide where the outline closes");
      }
      return;
    }
    bool good = in_order(list, "width");
    double widest = 0.0;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const bool tip = i == 0 || i + 1 == list.size();
      const double w = list[i].value.si();
      good = sensible(w, tip, "board.width", item("width", i), "width") && good;
      widest = std::max(widest, w);
    }
    if (!good) return;
    if (widest < shortest_m) {
      add("board.width", "width", "the board has no width", in_mm(widest), "a width above zero");
      return;
    }
    ends();
    wide_point(widest);
  }

  void ends() {
    end("tail", spec_.tail, spec_.width.front().value.si(), 0);
    end("nose", spec_.nose, spec_.width.back().value.si(), spec_.width.size() - 1);
    if (spec_.nose.shape == EndShape::swallow) {
      add("board.notch", "nose", "a nose has no notch", "swallow", "round, point or square");
    }
    if (spec_.tail.shape != EndShape::swallow) return;
    const double depth = spec_.tail.depth.si();
    if (!sensible(depth, false, "board.notch", "tail.depth", "depth of the notch")) return;
    if (depth > 0.5 * length_) {
      add("board.notch", "tail.depth", "the notch is deeper than half of the board", in_mm(depth),
          "less than " + in_mm(0.5 * length_));
    }
  }

  void end(std::string_view name, const End& shape, double width, std::size_t i) {
    if ((shape.shape == EndShape::square || shape.shape == EndShape::swallow) &&
        width < shortest_m) {
      add("board.end_width", item("width", i),
          fmt::format("a {} {} has a width",
                      name == "tail" && shape.shape == EndShape::swallow ? "swallow" : "square",
                      name),
          in_mm(width), "the width of the cut, or another shape of the end");
    }
    if (shape.shape != EndShape::swallow && shape.depth.si() != 0.0) {
      add("board.notch", fmt::format("{}.depth", name), "only a swallow has a notch",
          in_mm(shape.depth.si()), "no depth");
    }
  }

  // Index of the station that stands at the wide point.
  std::optional<std::size_t> named_station(double widest) {
    const double x = spec_.wide_point->si();
    if (!std::isfinite(x) || x <= 0.0 || x >= length_) {
      add("board.wide_point", "wide_point", "the wide point does not lie on the board",
          std::isfinite(x) ? in_mm(x) + " from the tail" : std::string("no number"),
          "between 0 and " + in_mm(length_));
      return std::nullopt;
    }
    for (std::size_t i = 0; i < spec_.width.size(); ++i) {
      if (!at(spec_.width[i].from_tail.si(), x)) continue;
      if (spec_.width[i].value.si() < widest - tape_m) {
        add("board.wide_point", "wide_point", "the board is wider elsewhere than at its wide point",
            in_mm(spec_.width[i].value.si()), in_mm(widest) + " or more");
        return std::nullopt;
      }
      return i;
    }
    add("board.wide_point", "wide_point", "no width is given at the wide point",
        in_mm(x) + " from the tail", "a width station there");
    return std::nullopt;
  }

  void wide_point(double widest) {
    std::vector<double> w;
    for (const At& s : spec_.width) w.push_back(s.value.si());
    auto [first, last] = summit(w);
    if (spec_.wide_point) {
      const auto named = named_station(widest);
      if (!named) return;
      first = std::min(first, *named);
      last = std::max(last, *named);
    }
    // Any dip is measured against the widest station passed on the way to the wide point.
    double most = w.front();
    for (std::size_t i = 1; i <= first; ++i) {
      if (w[i] < most - tape_m) not_steady(i, w[i], most, "tail");
      most = std::max(most, w[i]);
    }
    most = w.back();
    for (std::size_t i = w.size() - 1; i-- > last;) {
      if (w[i] < most - tape_m) not_steady(i, w[i], most, "nose");
      most = std::max(most, w[i]);
    }
  }

  void not_steady(std::size_t i, double width, double most, std::string_view end) {
    add("board.width_steady", item("width", i),
        fmt::format("the board is narrower here than nearer to the {}: its width must grow to one "
                    "wide point and then shrink",
                    end),
        in_mm(width), in_mm(most) + " or more");
  }

  void drawn() {
    if (!spec_.drawn) return;
    const std::vector<Knot>& knots = spec_.drawn->knots;
    const std::size_t roots = spec_.drawn->tail_roots + spec_.drawn->nose_roots;
    bool good = knots.size() >= 2 && roots < knots.size() &&
                at(knots.front().from_tail.si(), 0.0) &&
                (!length_good_ || at(knots.back().from_tail.si(), length_)) &&
                std::isfinite(spec_.drawn->tail_radius.si() + spec_.drawn->nose_radius.si());
    for (std::size_t i = 0; i < knots.size(); ++i) {
      const Knot& k = knots[i];
      good = good && std::isfinite(k.slope_behind) && std::isfinite(k.slope_ahead) &&
             k.half_width.si() >= 0.0 && k.half_width.si() <= longest_m &&
             (i == 0 || k.from_tail > knots[i - 1].from_tail);
    }
    if (!good) {
      add("board.drawn", "outline", "the drawn outline is no row of places from tail to nose", {},
          "knots in order, the first at the tail and the last at the nose");
    }
  }

  void thickness() {
    const std::vector<At>& list = spec_.thickness;
    if (list.empty()) {
      add("board.thickness", "thickness", "no thickness is given", {},
          "a thickness at one station or more");
      return;
    }
    in_order(list, "thickness");
    for (std::size_t i = 0; i < list.size(); ++i) {
      const bool tip = may_close(list[i].from_tail.si());
      sensible(list[i].value.si(), tip, "board.thickness", item("thickness", i), "thickness");
    }
    if (list.size() == 1 && list[0].value.si() == 0.0)
      add("board.thickness", "thickness", "the board has no thickness");
  }

  // Thickness may be zero at a tip where the outline closes too.
  bool may_close(double x) const {
    if (spec_.width.empty()) return false;
    return (at(x, 0.0) && spec_.width.front().value.si() == 0.0) ||
           (at(x, length_) && spec_.width.back().value.si() == 0.0);
  }

  void rocker() {
    in_order(spec_.rocker, "rocker");
    for (std::size_t i = 0; i < spec_.rocker.size(); ++i) {
      const double z = spec_.rocker[i].value.si();
      if (!std::isfinite(z)) {
        add("board.rocker", item("rocker", i), "the rocker is not a number", {},
            "a height such as \"2 in\"");
      } else if (length_good_ && std::abs(z) > length_) {
        add("board.rocker", item("rocker", i), "the rocker is higher than the board is long",
            in_mm(z), {}, "is the unit right?");
      }
    }
  }

  void rail() {
    if (spec_.rail.empty()) {
      add("board.rail", "rail", "no rail is given", {}, "a rail such as 60/40, medium");
      return;
    }
    in_order(spec_.rail, "rail");
    for (std::size_t i = 0; i < spec_.rail.size(); ++i) {
      const Rail& rail = spec_.rail[i].rail;
      if (!(rail.apex_share > 0.0 && rail.apex_share < 1.0)) {
        add("board.rail_share", item("rail", i),
            "the apex must lie between the bottom and the deck",
            fmt::format("{:g}", rail.apex_share),
            "a share of the thickness below the apex, between 0 and 1 (0.4 for 60/40)");
      }
      if (!(rail.exponent >= 2.0)) {
        add("board.rail_exponent", item("rail", i),
            "the exponent of the rail is below that of an ellipse",
            fmt::format("{:g}", rail.exponent), "2 (soft) or more");
      }
    }
  }

  void mass() {
    positive(spec_.core_weight, "core_weight", "weight of the core", false);
    positive(spec_.foam_density, "foam_density", "density of the foam", false);
    positive(spec_.stringer_weight, "stringer_weight", "weight of the stringer", true);
  }

  template <class Q>
  void positive(const std::optional<Q>& value, const std::string& key, std::string_view what,
                bool may_be_zero) {
    if (!value) return;
    const double v = value->si();
    if (std::isfinite(v) && (v > 0.0 || (may_be_zero && v == 0.0))) return;
    add("board.mass", key, fmt::format("the {} is not above zero", what), {}, "more than zero");
  }

  const Spec& spec_;
  double length_;
  bool length_good_ = false;
  base::Problems problems_;
};

}  // namespace

base::Problems check(const Spec& spec) { return Checker(spec).run(); }

base::Problems check(const Spec& spec, const Form& form) {
  base::Problems problems;
  for (std::size_t i = 0; i < spec.thickness.size(); ++i) {
    const double x = spec.thickness[i].from_tail.si();
    const double t = spec.thickness[i].value.si();
    // Where an outline closes it gets narrower than thick, rightly, within about a thickness.
    if (x <= t || form.length() - x <= t) continue;
    const double width = 2.0 * form.half_width(x);
    if (t <= width * (1.0 + 1e-9)) continue;
    problems.push_back(problem("board.thicker_than_wide", item("thickness", i),
                               "the board is thicker than it is wide here", in_mm(t),
                               "at most the width, " + in_mm(width),
                               "are width and thickness exchanged?"));
  }
  if (notch_cuts_rail(form)) {
    problems.push_back(problem("board.notch", "tail.depth",
                               "the notch cuts through the outline in front of the tail",
                               in_mm(form.tail().notch), "a shallower notch"));
  }
  return problems;
}

}  // namespace wetout::board
