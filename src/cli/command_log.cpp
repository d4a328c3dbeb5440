#include "registry.hpp"
#include "wetout/report/log_document.hpp"
#include "wetout/work/house.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_log(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  const std::string_view action = parsed.subcommand();
  const auto document = action == "check"     ? work::log_check(shop)
                        : action == "backup"  ? work::log_backup(shop, parsed.needed("FILE"))
                        : action == "restore" ? work::log_restore(shop, parsed.needed("FILE"))
                                              : work::log_info(shop);
  if (!document) return fail(context, document.error());
  context.out << (context.json ? report::to_json(*document) : report::to_text(*document));
  return document->sound.value_or(true) ? exit_done : exit_environment;
}

}  // namespace wetout::cli
