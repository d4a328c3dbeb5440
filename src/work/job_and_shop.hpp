// A job file with its shop, and the plan they make together.
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/files/job_file.hpp"
#include "wetout/files/shop_file.hpp"
#include "wetout/laminate/make_plan.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct JobAndShop {
  files::JobFile job;
  files::ShopFile shop;
  /// What was learned from records and stands in `shop` in place of defaults: "key value" a line.
  std::string learned = {};
  std::map<std::string, double, std::less<>> margins = {};  ///< by coat, as learned
};

/// `--shop`, else shop.toml beside the job file or in a folder above it, else the usual one.
/// Problem "shop.missing" says where it was looked for. The path is as short as it can be named.
base::Result<std::filesystem::path> find_shop(const Workshop& workshop,
                                              const std::filesystem::path& beside);

/// Where FILE|JOB is expected: ends in .toml or holds a slash.
bool is_file_argument(std::string_view argument);

/// As short as a path can be named from where the user stands.
std::filesystem::path shown(const Workshop& workshop, const std::filesystem::path& absolute);

/// Reads both; problems of both are reported together.
base::Result<JobAndShop> read_job_and_shop(const Workshop& workshop,
                                           const std::filesystem::path& job);

/// The plan; problems point into the file they belong to.
base::Result<laminate::Plan> plan_of(const Workshop& workshop, const JobAndShop& both,
                                     const MixingChoices& choices);

/// Puts file, line and the written value on problems with keys of either file.
base::Problems locate(base::Problems problems, const JobAndShop& both);

/// The choices as kept beside a plan, one "key value" a line, and read back.
std::string to_text(const MixingChoices& choices);
MixingChoices choices_from(std::string_view text);

}  // namespace wetout::work
