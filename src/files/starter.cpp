#include "wetout/files/starter.hpp"

#include <array>
#include <fstream>
#include <string>
#include <system_error>
#include <utility>

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

base::Problem unwritable(const fs::path& path, const std::string& why) {
  return {.code = "file.unwritable",
          .message = "cannot be written: " + why,
          .file = path.string(),
          .hint = "choose a folder you may write in: wetout new DIR"};
}

base::Result<void> write(const fs::path& path, std::string_view text) {
  std::ofstream out(path, std::ios::binary);
  out.write(text.data(), static_cast<std::streamsize>(text.size()));
  out.close();
  if (!out) return base::fail(unwritable(path, "the disk is full or the folder is read-only"));
  return {};
}

}  // namespace

base::Result<Starter> write_starter(const fs::path& folder, bool dry_run) {
  const Starter starter{folder / "shop.toml", folder / "board.toml"};
  std::error_code error;
  base::Problems problems;
  for (const fs::path& path : {starter.shop, starter.job}) {
    if (!fs::exists(fs::symlink_status(path, error))) continue;
    problems.push_back({.code = "file.exists",
                        .message = "is there already; nothing was written",
                        .file = path.string(),
                        .hint = "choose another folder: wetout new DIR"});
  }
  if (!problems.empty()) return base::fail(std::move(problems));
  if (dry_run) return starter;
  if (!folder.empty()) {
    fs::create_directories(folder, error);
    if (error) return base::fail(unwritable(folder, error.message()));
  }
  if (auto done = write(starter.shop, starter_shop()); !done) return tl::unexpected(done.error());
  if (auto done = write(starter.job, starter_job()); !done) return tl::unexpected(done.error());
  return starter;
}

bool is_shop_file(const fs::path& path) {
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return false;
  std::ifstream in(path, std::ios::binary);
  constexpr std::array<std::string_view, 5> tables = {"[shop]", "[[resin]]", "[[cloth]]",
                                                      "[[material]]", "[room]"};
  std::string line;
  for (int n = 0; n < 1000 && std::getline(in, line); ++n) {
    if (line.rfind("[board", 0) == 0 || line.rfind("[[coat", 0) == 0) return false;
    for (const std::string_view table : tables) {
      if (line.rfind(table, 0) == 0) return true;
    }
  }
  return false;
}

}  // namespace wetout::files
