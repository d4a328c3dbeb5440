// Cure without files and clock.
#pragma once

#include <optional>

#include "wetout/report/cure_document.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/time/history.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/work/cure.hpp"

namespace wetout::work {

struct CureQuestion {
  const resin::Product& product;
  const time::History& air_kelvin;
  time::Instant start;
  bool start_named = false;
  std::optional<time::Instant> known_until;  ///< of the air; nothing: for ever
  std::optional<WarmBoxChoice> warm_box;
  time::Zone zone;
};

/// All but program, made, and where the air comes from. Keys of problems: arguments of the command,
/// or lines of a data sheet ("gel").
base::Result<report::CureDocument> cure_answer(const CureQuestion& question,
                                               const resin::Defaults& defaults,
                                               resin::AnswerCache* cache);

}  // namespace wetout::work
