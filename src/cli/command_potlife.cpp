#include "registry.hpp"
#include "wetout/report/potlife_document.hpp"
#include "wetout/work/potlife.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_potlife(const Parsed& parsed, Context& context) {
  const auto answer =
      work::pot_life(workshop(parsed, context), {.resin = parsed.needed("RESIN"),
                                                 .mass = parsed.mass("--mass"),
                                                 .choices = mixing_choices(parsed),
                                                 .pour_after = parsed.duration("--pour-after"),
                                                 .workable = parsed.duration("--workable"),
                                                 .table = parsed.flag("--table")});
  if (!answer) return fail(context, answer.error());
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units),
                                   answer->now_clock);
  }
  return exit_done;
}

}  // namespace wetout::cli
