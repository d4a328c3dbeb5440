// Polyester: gel from the sheet's table of catalyst dose and temperature, the rest as multiples of
// gel (docs/models/polyester.md). No conversion, no cup.
#pragma once

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/film.hpp"
#include "wetout/resin/product.hpp"

namespace wetout::resin {

/// "polyester.no_cup": gel times are those of a small sample.
base::Notice small_sample_notice(const std::string& resin);
/// "polyester.beyond_table" where temperatures lie outside those that the sheet prints.
std::optional<base::Notice> beyond_table(const Product& product, units::Temperature coldest,
                                         units::Temperature warmest);

/// Gel time of a film. Between printed temperatures the logarithm of the time is straight in 1/T,
/// between printed doses in the logarithm of the dose; beyond them it goes on as between the last
/// two, or by the usual energy and power where there is only one.
///
/// Problems: "polyester.light_cured" (such resins are refused), "polyester.no_table" (neither
/// catalyst nor gel lines), "polyester.dose" (outside the sheet's range).
base::Result<units::Duration> polyester_gel(const Product& product, double dose,
                                            units::Temperature air, const Defaults& defaults);

/// The (geometric) middle of the sheet's range of doses, else of those its table prints; 1 % where
/// it names none.
double middle_dose(const Product& product);

struct Dose {
  double share = 0.0;     ///< of the resin, by mass
  units::Duration gel;    ///< with it
  base::Notices notices;  ///< "polyester.dose_end": the range ends before the wish
};

/// The dose inside the sheet's range with which a film gels nearest to `wanted`, at that air.
/// Problems as above.
base::Result<Dose> dose_for(const Product& product, units::Temperature air, units::Duration wanted,
                            const Defaults& defaults);

/// Milestones in changing air: each comes when the sum of dt/gel(T) has grown to its multiple.
/// Multiples are the sheet's times over the gel it prints (with the dose in the middle of its
/// range) at the same temperature. Laminating resin is recoated from firm gel until 72 h, waxed
/// from sandable on, where the sheet prints nothing else. `air_kelvin` as for Film. Problems as
/// above.
base::Result<FilmTimes> polyester_times(const Product& product, double dose,
                                        const time::History& air_kelvin, time::Instant start,
                                        const Defaults& defaults);

}  // namespace wetout::resin
