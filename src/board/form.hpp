// The shape of a checked board as functions of x: outline, thickness, rocker, rail.
#pragma once

#include <cmath>
#include <optional>
#include <vector>

#include "curve.hpp"
#include "quadrature.hpp"
#include "section.hpp"
#include "wetout/board/hull.hpp"
#include "wetout/board/spec.hpp"

namespace wetout::board {

/// Upper or lower side of the apex: z = apex + sign * height * s.
struct Side {
  double height = 0.0;
  double height_slope = 0.0;
};

/// Everything about the cross-section at one x; `_slope` is the derivative by x.
struct Frame {
  double half_width, half_width_slope;
  double apex, apex_slope;  ///< height of the apex over the rocker's bar
  Side deck, bottom;
  double e, e_slope;  ///< 2/n of the rail

  [[nodiscard]] const Side& side(Face face) const { return face == Face::deck ? deck : bottom; }
};

inline double sign_of(Face face) { return face == Face::deck ? 1.0 : -1.0; }

/// How the outline closes at the tail or the nose.
struct Closure {
  double half_width = 0.0;  ///< of the cut; of the prongs' tips for a swallow; else 0
  double notch = 0.0;       ///< depth of the swallow's notch; else 0
  int fold = 1;  ///< power of the panel that takes its root singularity away; 1: there is none

  [[nodiscard]] bool cut() const { return half_width > 0.0 && notch == 0.0; }
};

/// Thickness where the board was not measured: a straight line through the two stations next to
/// the tip, at least half of the nearer one and not above it.
inline constexpr double least_tip_share = 0.5;

class Form {
 public:
  /// `spec` has passed check().
  explicit Form(const Spec& spec);

  [[nodiscard]] double length() const { return length_; }
  [[nodiscard]] double wide_point() const { return wide_point_; }
  [[nodiscard]] bool tip_thickness_assumed() const { return tip_thickness_assumed_; }
  [[nodiscard]] const Closure& tail() const { return tail_; }
  [[nodiscard]] const Closure& nose() const { return nose_; }

  [[nodiscard]] double half_width(double x) const {
    if (x <= 0.0) return tail_.half_width;
    return x < length_ ? std::fmax(0.0, width_.value(x)) : nose_.half_width;
  }
  [[nodiscard]] Jet outline(double x) const { return width_.at(x); }
  [[nodiscard]] double thickness(double x) const { return thickness_.value(x); }
  [[nodiscard]] double rocker(double x) const { return rocker_jet(x).value; }
  [[nodiscard]] Frame frame(double x) const { return frame(x, width_.at(x)); }
  /// When the outline at x is known already.
  [[nodiscard]] Frame frame(double x, const Jet& width) const;

  /// Half-width of the swallow's notch at x; 0 outside it.
  [[nodiscard]] double notch(double x) const {
    return x < tail_.notch ? tail_.half_width * (1.0 - x / tail_.notch) : 0.0;
  }

  /// The same rail all along: its quarter is tabled once.
  [[nodiscard]] const std::optional<Quarter>& constant_rail() const { return constant_rail_; }
  [[nodiscard]] double rail_e(double x) const { return rail_e_.value(x); }

  /// Panels over [from, to], broken where the shape has a kink in some derivative, but for boards
  /// of very many stations.
  [[nodiscard]] std::vector<Panel> panels(double from, double to) const {
    return part_of(panels_, from, to);
  }
  /// Fewer of them: for bands, where each point costs a walk.
  [[nodiscard]] std::vector<Panel> few_panels(double from, double to) const {
    return part_of(few_panels_, from, to);
  }
  /// Stations of every kind in order, ends included.
  [[nodiscard]] const std::vector<double>& breaks() const { return breaks_; }

 private:
  void make_width(const Spec& spec);
  void make_drawn_width(const Spec& spec);
  void make_thickness(const Spec& spec);
  void make_rocker(const Spec& spec);
  void make_rail(const Spec& spec);
  void make_breaks(const Spec& spec);
  [[nodiscard]] static Closure closure(const End& end, double half_width);
  [[nodiscard]] std::vector<Panel> make_panels(std::size_t most) const;
  [[nodiscard]] static std::vector<Panel> part_of(const std::vector<Panel>& panels, double from,
                                                  double to);
  [[nodiscard]] Jet rocker_jet(double x) const;
  [[nodiscard]] Jet bent_x(double x) const;

  double length_ = 0.0;
  double wide_point_ = 0.0;
  bool tip_thickness_assumed_ = false;
  Closure tail_, nose_;
  Curve width_;  // half-width
  Curve thickness_;
  Curve rocker_;  // over bent_x
  bool bent_tail_ = false, bent_nose_ = false;
  Curve rail_share_;
  Curve rail_e_;
  std::optional<Quarter> constant_rail_;
  std::vector<double> breaks_;
  double notch_leaves_rail_ = 0.0;  // where a swallow's notch does
  std::vector<Panel> panels_, few_panels_;
};

}  // namespace wetout::board
