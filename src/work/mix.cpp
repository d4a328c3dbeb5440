#include "wetout/work/mix.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "job_and_shop.hpp"
#include "planned_job.hpp"
#include "wetout/base/words.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

namespace fs = std::filesystem;

int minutes_of_day(time::Instant now, const time::Zone& zone) {
  using namespace std::chrono;
  const auto wall = zone.wall(now);
  return static_cast<int>(duration_cast<minutes>(wall - floor<days>(wall)).count());
}

// A coat's own dose of catalyst, so that all of it gels alike.
std::optional<double> dose_of(const PlannedJob& source, const report::MixDocument& document) {
  for (const resin::Product& product : source.files.shop.shop.resins) {
    if (product.id == document.resin && product.chemistry == resin::Chemistry::polyester) {
      return document.ratio.b / document.ratio.a;
    }
  }
  return std::nullopt;
}

// The asked mass in place of the batches of a plan.
base::Result<void> put_mass(const Workshop& workshop, const laminate::Shop& shop,
                            const laminate::LooseMix& wanted, report::MixDocument& document) {
  files::AnswerStore cups(workshop.cache);
  auto loose = laminate::mix(shop, wanted, laminate::defaults(), &cups);
  if (!loose) return tl::unexpected(loose.error());
  document.asked = units::Milligrams::nearest(wanted.mass);
  document.ratio = loose->ratio;
  document.batch_count = static_cast<int>(loose->batches.size());
  document.batches = std::move(loose->batches);
  document.notices = std::move(loose->notices);
  return {};
}

base::Result<std::string> resin_named(const laminate::Shop& shop, std::string_view typed) {
  std::vector<std::string> ids;
  for (const resin::Product& product : shop.resins) ids.push_back(product.id);
  const auto found = base::matches(typed, ids);
  if (found.size() == 1) return ids[found.front()];
  std::string list;
  for (const std::string& id : ids) list += (list.empty() ? "" : ", ") + id;
  const auto near = base::nearest(base::slug(typed), ids);
  return base::fail(
      {.code = found.empty() ? "reference.resin" : "reference.ambiguous",
       .message = found.empty() ? "the shop has no such resin" : "several resins begin so",
       .key = "--resin",
       .found = std::string(typed),
       .expected = list,
       .hint = near ? "did you mean \"" + *near + "\"?" : ""});
}

base::Result<std::optional<std::string>> cup_named(const laminate::Shop& shop,
                                                   const std::optional<std::string>& typed) {
  if (!typed) return std::optional<std::string>();
  std::string list;
  for (const resin::Cup& cup : shop.cups) {
    if (cup.id == *typed) return typed;
    list += (list.empty() ? "" : ", ") + cup.id;
  }
  return base::fail({.code = "reference.cup",
                     .message = "the shop has no such cup",
                     .key = "--cup",
                     .found = *typed,
                     .expected = list.empty() ? "a [[cup]] in the shop file" : list});
}

}  // namespace

base::Result<MixCard> mix_coat(const Workshop& workshop, const MixCoatRequest& request) {
  auto source = planned_job(workshop, request.job, request.choices);
  if (!source) return tl::unexpected(source.error());
  auto document = report::mix_document(source->document, request.coat, request.batch);
  if (!document) return tl::unexpected(document.error());
  const auto zone = time::Zone::named(source->files.shop.time_zone);
  if (!zone) return tl::unexpected(zone.error());
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());
  if (request.mass) {
    const auto& coats = source->document.plan.coats;
    const auto coat = std::find_if(coats.begin(), coats.end(), [&](const auto& one) {
      return document->coat && one.id == *document->coat;
    });
    const MixingChoices& day = request.choices;
    if (auto put = put_mass(
            workshop, source->files.shop.shop,
            {.resin = document->resin,
             .mass = *request.mass,
             .additives = coat == coats.end() ? std::vector<laminate::Additive>{} : coat->additives,
             .air = source->document.plan.air,
             .resin_temp = day.resin_temp,
             .cup = day.cup,
             .dose = dose_of(*source, *document)},
            *document);
        !put) {
      return tl::unexpected(put.error());
    }
  }
  document->program = program();
  document->made = time::rfc3339(*now, *zone);
  return MixCard{std::move(*document), source->files.shop.units, minutes_of_day(*now, *zone)};
}

base::Result<MixCard> mix_free(const Workshop& workshop, const MixFreeRequest& request) {
  const auto shop_path = find_shop(workshop, workshop.here / "x");
  if (!shop_path) {
    base::Problems problems = shop_path.error();
    for (base::Problem& problem : problems) {
      problem.file.clear();
      problem.message = "there is no shop file here";
    }
    return base::fail(std::move(problems));
  }
  const auto shop = files::read_shop(*shop_path);
  if (!shop) return tl::unexpected(shop.error());
  const auto resin = resin_named(shop->shop, request.resin);
  if (!resin) return tl::unexpected(resin.error());
  const auto product = std::find_if(shop->shop.resins.begin(), shop->shop.resins.end(),
                                    [&](const auto& one) { return one.id == *resin; });
  const auto cup = cup_named(shop->shop, request.choices.cup);
  if (!cup) return tl::unexpected(cup.error());
  const auto zone = time::Zone::named(shop->time_zone);
  if (!zone) return tl::unexpected(zone.error());
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());
  MixCard card;
  card.units = shop->units;
  card.now_clock = minutes_of_day(*now, *zone);
  card.document.program = program();
  card.document.made = time::rfc3339(*now, *zone);
  card.document.resin = *resin;
  card.document.cautions = laminate::mixing_cautions(product->chemistry);
  if (auto put = put_mass(workshop, shop->shop,
                          {.resin = *resin,
                           .mass = request.mass,
                           .additives = {},
                           .air = request.choices.air.value_or(shop->shop.air),
                           .resin_temp = request.choices.resin_temp,
                           .cup = *cup,
                           .dose = std::nullopt},
                          card.document);
      !put) {
    return tl::unexpected(put.error());
  }
  return card;
}

}  // namespace wetout::work
