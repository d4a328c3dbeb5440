// When a film of a resin that is started at an instant gels and is tack-free.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/limits.hpp"
#include "wetout/time/history.hpp"

namespace wetout::work {

struct OpenFilms {
  std::vector<schedule::OpenFilm> films;  ///< one for each start
  std::vector<std::string> assumed;       ///< names of defaults of resins
  base::Notices notices;                  ///< subject: the resin's id
};

/// Both count from the end of wet-out. A sheet without tack-free: gel times
/// Defaults::tack_free_of_gel. A polyester has the middle of its doses. `starts` in rising order.
/// Problems: those of resin::calibrate() and resin::polyester_times().
base::Result<OpenFilms> open_films(const resin::Product& product, const time::History& air_kelvin,
                                   std::span<const time::Instant> starts, units::Duration wet_out,
                                   const resin::Defaults& defaults, resin::AnswerCache* cache);

}  // namespace wetout::work
