// What the world around the process says, read once at the start; everything below is pure.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace wetout::cli {

struct Environment {
  std::optional<std::string> shop = {};                     ///< WETOUT_SHOP
  std::optional<std::string> log = {};                      ///< WETOUT_LOG
  std::optional<std::filesystem::path> config_folder = {};  ///< of wetout, by the XDG rules
  std::optional<std::filesystem::path> data_folder = {};    ///< of wetout, by the XDG rules
  std::optional<std::filesystem::path> cache_folder = {};   ///< of wetout, by the XDG rules
  bool plain = false;  ///< NO_COLOR is set and not empty, or the terminal is a dumb one
};

/// `get` is std::getenv or a stand-in. An empty variable counts as not set, and so does an XDG
/// folder that is not absolute (XDG Base Directory Specification 0.8).
Environment read_environment(const std::function<const char*(const char*)>& get);

}  // namespace wetout::cli
