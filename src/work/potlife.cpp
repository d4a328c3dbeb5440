#include "wetout/work/potlife.hpp"

#include <utility>

#include "one_resin.hpp"
#include "potlife_answer.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {

base::Result<PotLifeAnswer> pot_life(const Workshop& workshop, const PotLifeRequest& request) {
  const auto resin = find_resin(workshop, request.resin);
  if (!resin) return tl::unexpected(resin.error());
  files::AnswerStore cache(workshop.cache);
  auto document = potlife_answer(resin->shop.shop, resin->product(), request, {}, &cache);
  if (!document) return base::fail(in_sheet(document.error(), *resin));
  document->program = program();
  document->made = time::rfc3339(resin->now, resin->zone);
  return PotLifeAnswer{std::move(*document), resin->shop.units,
                       minutes_of_day(resin->now, resin->zone)};
}

}  // namespace wetout::work
