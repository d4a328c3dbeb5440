#include "registry.hpp"
#include "wetout/report/mix_document.hpp"
#include "wetout/work/mix.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_mix(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  const auto card = parsed.has("--resin")
                        ? work::mix_free(shop, {.resin = parsed.needed("--resin"),
                                                .mass = parsed.mass("--mass").value(),
                                                .choices = mixing_choices(parsed)})
                        : work::mix_coat(shop, {.job = parsed.needed("JOB"),
                                                .coat = parsed.needed("COAT"),
                                                .batch = parsed.count("--batch"),
                                                .mass = parsed.mass("--mass"),
                                                .choices = mixing_choices(parsed)});
  if (!card) return fail(context, card.error());
  if (context.json) {
    context.out << report::to_json(card->document);
  } else {
    context.out << report::to_text(card->document, units_of(context, card->units), card->now_clock);
  }
  return exit_done;
}

}  // namespace wetout::cli
