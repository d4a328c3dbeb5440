// The files a new shop starts with, commented, that work as they are.
#pragma once

#include <filesystem>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace wetout::files {

std::string_view starter_shop();
std::string_view starter_job();

struct Starter {
  std::filesystem::path shop;
  std::filesystem::path job;
};

/// Writes shop.toml and board.toml into `folder`, which is made if need be. With `dry_run` it only
/// looks. Problems: "file.exists" (nothing is written), "file.unwritable".
base::Result<Starter> write_starter(const std::filesystem::path& folder, bool dry_run);

/// A shop file by its tables, not by its name. False for what cannot be read.
bool is_shop_file(const std::filesystem::path& path);

}  // namespace wetout::files
