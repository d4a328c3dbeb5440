// The shop file: what is in the shop and what the data sheets print (docs/formats/shop.md).
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/files/job_file.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {

/// Everything the file may say. Keys that only later parts of a plan use (room, hours, people,
/// resources, weather) are read and checked here and kept as they were checked.
struct ShopFile {
  Source source;
  std::string time_zone;  ///< IANA name
  units::System units = units::System::us;
  laminate::Shop shop;
};

base::Result<ShopFile> read_shop(const std::filesystem::path& path);
base::Result<ShopFile> parse_shop(std::string text, std::string name);

}  // namespace wetout::files
