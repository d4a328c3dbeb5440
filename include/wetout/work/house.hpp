// `check`, `new`, `log`: looking after files and log.
#pragma once

#include <filesystem>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/check_document.hpp"
#include "wetout/report/log_document.hpp"
#include "wetout/report/new_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// Each file by itself; a job file also against its shop, up to a plan that is thrown away.
base::Result<report::CheckDocument> check_files(const Workshop& workshop,
                                                const std::vector<std::filesystem::path>& files);

/// Writes shop.toml and board.toml into a folder (made if need be). Problem "file.exists": nothing
/// is overwritten and nothing written.
base::Result<report::NewDocument> new_files(const Workshop& workshop,
                                            const std::filesystem::path& folder);

base::Result<report::LogDocument> log_info(const Workshop& workshop);
base::Result<report::LogDocument> log_check(const Workshop& workshop);
base::Result<report::LogDocument> log_backup(const Workshop& workshop,
                                             const std::filesystem::path& to);
base::Result<report::LogDocument> log_restore(const Workshop& workshop,
                                              const std::filesystem::path& from);

}  // namespace wetout::work
