// What happens to films of one resin, for every start of the grid (docs/models/film.md,
// polyester.md).
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/calibrate.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/grid.hpp"
#include "wetout/schedule/steps.hpp"
#include "wetout/time/history.hpp"

namespace wetout::schedule {

/// Times in seconds after the film's start; `never` where a milestone is not reached.
inline constexpr double never = 1e12;
using FilmSpans = resin::PerMilestone<double>;

/// What a sheet does not print comes from the film's gel: see FilmSource.
class FilmSource {
 public:
  /// Of an epoxy or a polyester (the middle of its doses). Where the sheet prints no recoat window,
  /// there is none: recoat_from is handle, recoat_until the film's start. Tack-free, sandable and
  /// full cure that are not printed are multiples of gel.
  /// Problems: those of resin::calibrate() and resin::polyester_gel().
  static base::Result<FilmSource> of(const resin::Product& product, const resin::Defaults& defaults,
                                     const StepDefaults& steps, resin::AnswerCache* cache);

  [[nodiscard]] const resin::Product& product() const { return product_; }
  /// Of an epoxy: with what was filled in.
  [[nodiscard]] const std::optional<resin::Calibration>& calibration() const {
    return calibration_;
  }
  [[nodiscard]] const base::Notices& notices() const { return notices_; }
  /// Of a polyester: gel over time of each milestone, and the gel at a temperature.
  [[nodiscard]] const resin::PerMilestone<double>& multiples() const { return multiples_; }
  [[nodiscard]] double gel_s(units::Temperature air) const;
  /// False where the sheet prints no window for the next coat.
  [[nodiscard]] bool has_window() const { return has_window_; }

  /// `air_kelvin`: of the room; beyond its ends the end values hold. `starts` in rising order.
  [[nodiscard]] std::vector<FilmSpans> spans(const time::History& air_kelvin,
                                             std::span<const time::Instant> starts) const;
  /// The same where only some of an epoxy's starts come into question (`followed`): of the others
  /// gel, tack-free and what the sheet prints of the window and handling, of none full cure.
  [[nodiscard]] std::vector<FilmSpans> spans(const time::History& air_kelvin,
                                             std::span<const time::Instant> starts,
                                             const std::vector<bool>& followed) const;

 private:
  resin::Product product_;
  resin::Defaults defaults_;
  std::optional<resin::Calibration> calibration_;
  std::vector<FilmSpans> by_gel(const time::History& air,
                                std::span<const time::Instant> starts) const;
  std::vector<FilmSpans> told(const std::vector<resin::FilmTimes>& films) const;
  void put_in_order(FilmSpans& spans) const;

  double dose_ = 0.0;
  resin::PerMilestone<double> multiples_;
  bool has_window_ = true;
  base::Notices notices_;
};

/// Of every slot from 0 to `slots`, each seconds after the grid's origin.
struct FilmTable {
  std::vector<FilmSpans> at;
};
FilmTable film_table(const FilmSource& source, const time::History& air_kelvin, const Grid& grid,
                     Slot slots);
/// `followed`: of each slot whether a film may begin there, as in FilmSource::spans().
FilmTable film_table(const FilmSource& source, const time::History& air_kelvin, const Grid& grid,
                     const std::vector<bool>& followed);

}  // namespace wetout::schedule
