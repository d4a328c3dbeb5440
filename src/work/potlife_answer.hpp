// Potlife without files and clock.
#pragma once

#include <array>

#include "wetout/laminate/shop.hpp"
#include "wetout/report/potlife_document.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/work/potlife.hpp"

namespace wetout::work {

/// Of a table.
inline constexpr std::array table_airs_c = {15.0, 20.0, 25.0, 30.0, 35.0};

/// All but program and made. `air` where the request names none. Keys of problems: arguments of
/// the command, or lines of a data sheet ("gel").
base::Result<report::PotLifeDocument> potlife_answer(const laminate::Shop& shop,
                                                     const resin::Product& product,
                                                     const PotLifeRequest& request,
                                                     const resin::Defaults& defaults,
                                                     resin::AnswerCache* cache);

}  // namespace wetout::work
