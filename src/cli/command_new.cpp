#include "registry.hpp"
#include "wetout/report/new_document.hpp"
#include "wetout/work/house.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_new(const Parsed& parsed, Context& context) {
  const auto document = work::new_files(workshop(parsed, context), parsed.text("DIR").value_or(""));
  if (!document) return fail(context, document.error());
  context.out << (context.json ? report::to_json(*document) : report::to_text(*document));
  return exit_done;
}

}  // namespace wetout::cli
