// Fits film and cup to what a data sheet prints (docs/models/film.md, cup.md). Which line fixes
// what: film gel the speed, a second temperature the activation energy, the mixing ratio the heat,
// the pot life one lever of the cup; every other film time stands as printed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"

namespace wetout::resin {

/// A printed time against the model's. What the fit makes true is marked as closure.
struct Residual {
  std::string key;  ///< a milestone's word, or "pot_life"
  units::Temperature air;
  std::optional<units::Mass> mass;  ///< of a pot life
  units::Duration printed;          ///< the middle of a range; of a pot life the lower end
  units::Duration model;
  bool closure = false;
};

/// How the pot life was met.
struct PotLifeFit {
  units::Mass mass;
  units::Temperature air;
  units::Duration printed;
  units::Duration shortest, longest;  ///< what the lever reaches
  units::Duration used;
};

struct Calibration {
  Cure cure;
  /// From second temperatures alone, before the usual value is weighed in; null without any.
  std::optional<double> sheet_energy_kj_mol;
  std::optional<PotLifeFit> pot_life;  ///< null where the sheet prints none
  std::vector<Residual> residuals;
  base::Notices notices;  ///< subject: the resin's id
  /// Lines of the sheet that would better it, as the shop file names them: "gel", "tg" ...
  std::vector<std::string> missing;
  /// Names of the defaults the fit rests on, and of those among them that cups hang on (a test
  /// moves each).
  std::vector<std::string> assumed, cup_assumed;
};

/// An epoxy's sheet. Problems: "resin.no_time" (neither pot life, film gel nor tack-free),
/// "sheet.order" (a milestone before the one it must follow, also between temperatures),
/// "sheet.time" (a time that is not above 0), "cure.polyester" (no conversion for those).
/// `cache` spares the cups of the fit; the result is the same without it.
base::Result<Calibration> calibrate(const Product& product, const Defaults& defaults,
                                    AnswerCache* cache = nullptr);

}  // namespace wetout::resin
