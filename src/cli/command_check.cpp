#include <algorithm>
#include <filesystem>

#include "registry.hpp"
#include "wetout/report/check_document.hpp"
#include "wetout/work/house.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_check(const Parsed& parsed, Context& context) {
  const std::vector<std::string>& names = parsed.all("FILE");
  const auto document = work::check_files(
      workshop(parsed, context), std::vector<std::filesystem::path>(names.begin(), names.end()));
  if (!document) return fail(context, document.error());
  context.out << (context.json ? report::to_json(*document)
                               : report::to_text(*document, units_of(context, units::System::us)));
  const bool bad = std::any_of(document->files.begin(), document->files.end(),
                               [](const auto& file) { return !file.problems.empty(); });
  return bad ? exit_input : exit_done;
}

}  // namespace wetout::cli
