// How long a batch lasts: the cup's clock and, once it is spread, the film's (docs/models/cup.md).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/conversion_curve.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/resin/product.hpp"

namespace wetout::resin {

struct PotLifeRequest {
  units::Mass mass;
  units::Temperature air;
  units::Temperature resin;                   ///< as mixed
  std::optional<Cup> cup;                     ///< unknown: as high as wide
  std::optional<units::Duration> pour_after;  ///< poured out and spread then
};

/// What a batch poured out in time still has as a film. Times from mixing.
struct Poured {
  units::Duration after;
  double conversion = 0.0;         ///< of the whole, when poured
  units::Temperature temperature;  ///< likewise
  units::Duration spread_within;   ///< the film has come to a part of gel conversion
  units::Duration gel;             ///< of the film
};

/// Times from mixing.
struct PotLife {
  PotLifeRequest asked;
  units::Duration use_within;
  bool by_rise = false;  ///< ended by its own heat; else by a part of gel conversion
  units::Duration gel;
  std::optional<units::Temperature> peak;  ///< of the middle; null where it runs away
  std::optional<units::Duration> peak_at;  ///< of no meaning to the minute
  bool runs_away = false;                  ///< above 200 C
  units::Temperature followed_peak;        ///< of the middle, also where it means nothing
  bool cooling_matters = false;            ///< the times hang on how the cup loses heat
  std::optional<Poured> poured;  ///< null unless asked for, or when it is unusable by then
  base::Notices notices;         ///< subject: the resin's id
};

/// One fitted resin, made ready once for many questions.
class PotLives {
 public:
  explicit PotLives(const Cure& cure);

  /// As pot_life().
  [[nodiscard]] base::Result<PotLife> of(const PotLifeRequest& request,
                                         AnswerCache* cache = nullptr) const;
  /// As film_open().
  [[nodiscard]] units::Duration film_open(units::Temperature air) const;

 private:
  Cure cure_;
  ConversionCurve curve_;
};

/// Problems: "cup.beyond_sense" (air outside 0 to 40 C, resin outside 0 to 50 C, mass below 1 g),
/// "cup.too_small" (more than the cup holds).
/// Gel and use within 0.1 % of the limit of fine grids.
base::Result<PotLife> pot_life(const Cure& cure, const PotLifeRequest& request,
                               AnswerCache* cache = nullptr);

/// Masses by temperatures, resin as warm as the air; masses outermost. Problems as above, of the
/// first that has one.
base::Result<std::vector<PotLife>> pot_life_table(const Cure& cure,
                                                  std::span<const units::Mass> masses,
                                                  std::span<const units::Temperature> airs,
                                                  const std::optional<Cup>& cup,
                                                  AnswerCache* cache = nullptr);

/// The largest batch of the request's cup and temperatures that can be worked for `workable`, to
/// half a per cent, but not above `most`; null where even 20 g go off before. The request's mass is
/// not looked at. Where more mass lasts longer (cold resin in warm air), the largest such that all
/// smaller ones last long enough too is not sought: the largest that does.
base::Result<std::optional<units::Mass>> largest_batch(const Cure& cure,
                                                       const PotLifeRequest& request,
                                                       units::Duration workable, units::Mass most,
                                                       AnswerCache* cache = nullptr);

/// A film spread at once, without a cup before: until it has come to a part of gel conversion. The
/// earlier end of a printed range of gel counts.
units::Duration film_open(const Cure& cure, units::Temperature air);

}  // namespace wetout::resin
