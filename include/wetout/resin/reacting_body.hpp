// A body that reacts, conducts its heat and loses it at its faces (docs/models/cup.md): finite
// volumes on a grid that is the product of two chains of cells, and Strang splitting of reaction
// and conduction. Conduction is exact: the two directions are taken one after the other in their
// own modes. The splitting is balanced (speth2013): the reaction's part of a step carries about
// what the body loses, so that a thin layer that loses heat as fast as it makes it is not
// misjudged.
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/kinetics.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::resin {

/// One direction of a grid: cells with a heat capacity, joined by conductances, the ends joined to
/// the air. Per unit of the other direction, so that only quotients matter.
struct Chain {
  std::vector<double> capacity;     ///< of each cell
  std::vector<double> conductance;  ///< one more: [0] and [n] lead out of the two ends
};

enum class Shape { slab, cylinder, sphere };

inline constexpr double fixed_at_air = std::numeric_limits<double>::infinity();
inline constexpr double insulated = 0.0;

/// `cells` of equal width from the middle (insulated) to `half_width_m`, which loses `h` W/(m² K).
Chain from_middle(Shape shape, double half_width_m, std::size_t cells, double conductivity_w_mk,
                  double capacity_j_m3k, double h);

/// A slab with two different faces.
Chain across(double width_m, std::size_t cells, double conductivity_w_mk, double capacity_j_m3k,
             double h_low, double h_high);

/// What reacts: nothing turns to glass, as on the film's clock.
struct Reactant {
  ConversionCurve curve;
  Kinetics kinetics;
  double full_rise_kelvin = 0.0;  ///< heat of reaction over heat capacity
};

/// Which cells of each line of the first chain are resin.
struct ResinCells {
  std::size_t from = 0;
  std::size_t until = std::numeric_limits<std::size_t>::max();  ///< not included
};

class ReactingBody {
 public:
  /// What is not resin, at first as warm as the air, stores and conducts.
  ReactingBody(const Reactant& reactant, const Chain& first, const Chain& second,
               units::Temperature air, units::Temperature start, ResinCells resin = {});

  /// Goes on by `dt_s`; the largest change of temperature of a cell, in kelvin.
  double step(double dt_s);
  /// Longer steps than this are not stable: twice the time in which it loses its warmth.
  [[nodiscard]] double longest_step_s() const { return 2.0 / loss_per_s_; }
  /// Takes back the last step. Only once.
  void undo();

  [[nodiscard]] double hottest_rate_kelvin_per_s() const;
  /// Of one cell, the first chain's running fastest.
  [[nodiscard]] double cell_kelvin(std::size_t cell) const { return air_ + now_.warmer[cell]; }

  // At the middle: on the axis of the first chain, half way along the second, extrapolated from the
  // cells around it.
  [[nodiscard]] double middle_kelvin() const { return air_ + middle(now_.warmer); }
  [[nodiscard]] double middle_conversion() const { return middle(now_.conversion); }
  /// What the middle is warmer by than without reaction.
  [[nodiscard]] double own_rise_kelvin() const;
  /// The furthest of all cells and the middle.
  [[nodiscard]] double furthest_conversion() const;
  [[nodiscard]] double mean_kelvin() const { return air_ + mean(now_.warmer); }
  [[nodiscard]] double mean_conversion() const { return mean(now_.conversion); }

  // Of the whole body, in kelvin of its mean temperature: full_rise x mean conversion = stored +
  // lost. What was lost is summed from the faces, not from the other two.
  [[nodiscard]] double stored_kelvin() const { return mean(now_.warmer) - start_warmth_; }
  [[nodiscard]] double lost_kelvin() const { return now_.lost; }

 private:
  // One direction, ready for use.
  struct Direction {
    std::vector<double> capacity;
    std::vector<double> fading;              // of each mode, 1/s
    std::vector<double> to_modes, to_cells;  // matrices by rows; the first direction's transposed
    std::vector<double> even;                // an even warmth of 1 K in modes
    double low_loss, high_loss;              // W/K of the end faces
    double loss_per_s;  // of the mean warmth, evenly heated and steady; 0 when insulated
    Direction(const Chain& chain, bool transposed);
    [[nodiscard]] std::size_t size() const { return capacity.size(); }
  };
  struct State {
    std::vector<double> warmer;  // than the air, K
    std::vector<double> modes;   // the same in modes
    std::vector<double> reduced_time;
    std::vector<double> conversion;
    double lost = 0.0;
    double time = 0.0;
  };

  [[nodiscard]] bool reacts(std::size_t cell) const {
    const std::size_t in_line = cell % first_.size();
    return in_line >= resin_.from && in_line < resin_.until;
  }
  void react(double dt, double flow);
  void find_inert_middle();
  void prepare(double dt);
  void fade(double flow);
  void to_modes();
  void to_cells();
  [[nodiscard]] double face_loss() const;
  [[nodiscard]] double middle(const std::vector<double>& v) const;
  [[nodiscard]] double mean(const std::vector<double>& v) const;

  const Reactant& reactant_;
  Direction first_, second_;
  ResinCells resin_;
  double air_, start_;
  double start_warmth_ = 0.0;  // of the whole, above the air
  double e_over_r_, inverse_reference_;
  double loss_per_s_;      // of its mean warmth, evenly heated and steady
  double capacity_ = 0.0;  // of the whole body
  State now_, before_;
  std::vector<double> slowness_;      // of each mode of the whole, s; infinite where it never fades
  std::vector<double> inert_middle_;  // what each mode of the start gives the middle
  double prepared_for_ = 0.0;
  std::vector<double> first_left_, second_left_;  // of the modes of each direction after that time
  std::vector<double> left_, fed_;                // of the modes of the whole; 1 K/s fed in evenly
  std::vector<double> work_;
};

}  // namespace wetout::resin
