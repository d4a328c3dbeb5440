#include "work_context.hpp"

#include "wetout/work/jobs.hpp"
#include "wetout/work/names.hpp"

namespace wetout::cli {

work::Workshop workshop(const Parsed& parsed, Context& context) {
  work::Workshop shop;
  shop.here = context.current_folder;
  shop.shop = context.shop;
  shop.usual_shop = configured_shop(context);
  shop.log = log_path(parsed, context);
  // A folder named by hand may be a slip of the hand; our own data folder is ours to make.
  shop.make_log_folder = !parsed.has("--log") && !context.environment.log;
  shop.now = [&parsed, &context](const time::Zone& zone) { return now(parsed, context, zone); };
  if (const auto& folder = context.environment.cache_folder) shop.cache = *folder / "cups";
  shop.dry_run = context.dry_run;
  shop.sink = sink(context);
  return shop;
}

work::MixingChoices mixing_choices(const Parsed& parsed) {
  return {parsed.temperature("--air"), parsed.temperature("--resin-temp"), parsed.text("--cup")};
}

units::System units_of(const Context& context, units::System shop) {
  return context.units.value_or(shop);
}

std::vector<std::string> names_for_completion(NameKind kind, const std::vector<std::string>& before,
                                              const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  switch (kind) {
    case NameKind::jobs:
      return work::job_names(shop);
    case NameKind::coats:
      return before.empty() ? std::vector<std::string>{} : work::coat_names(shop, before.back());
    case NameKind::steps:
      return before.empty() ? std::vector<std::string>{} : work::step_names(shop, before.back());
    case NameKind::cups:
      return work::cup_names(shop);
    case NameKind::resins:
      return work::resin_names(shop);
    case NameKind::materials:
      return work::material_names(shop);
  }
  return {};
}

}  // namespace wetout::cli
