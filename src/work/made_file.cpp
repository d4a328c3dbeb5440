#include "made_file.hpp"

#include <utility>

namespace wetout::work {
namespace {

namespace fs = std::filesystem;

base::Result<void> as_typed(base::Result<void> result, const fs::path& typed) {
  if (result) return result;
  base::Problems problems = std::move(result.error());
  for (base::Problem& problem : problems) problem.file = typed.string();
  return base::fail(std::move(problems));
}

}  // namespace

base::Result<void> may_make(const Workshop& workshop, const fs::path& typed,
                            const files::Made& made) {
  return as_typed(files::may_make(workshop.here / typed, made), typed);
}

base::Result<void> make_file(const Workshop& workshop, const fs::path& typed,
                             std::string_view bytes, const files::Made& made) {
  if (workshop.dry_run) return may_make(workshop, typed, made);
  return as_typed(files::write_made(workshop.here / typed, bytes, made), typed);
}

}  // namespace wetout::work
