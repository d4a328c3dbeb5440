#include "environment.hpp"

#include <string_view>

namespace wetout::cli {
namespace {

namespace fs = std::filesystem;

}  // namespace

Environment read_environment(const std::function<const char*(const char*)>& get) {
  const auto text = [&](const char* name) -> std::optional<std::string> {
    const char* value = get(name);
    if (value == nullptr || *value == '\0') return std::nullopt;
    return value;
  };
  const auto folder = [&](const char* name, const char* below_home) -> std::optional<fs::path> {
    if (const auto own = text(name); own && fs::path(*own).is_absolute()) {
      return fs::path(*own) / "wetout";
    }
    if (const auto home = text("HOME")) return fs::path(*home) / below_home / "wetout";
    return std::nullopt;
  };
  Environment out;
  out.shop = text("WETOUT_SHOP");
  out.log = text("WETOUT_LOG");
  out.config_folder = folder("XDG_CONFIG_HOME", ".config");
  out.data_folder = folder("XDG_DATA_HOME", ".local/share");
  out.cache_folder = folder("XDG_CACHE_HOME", ".cache");
  out.plain = text("NO_COLOR").has_value() || text("TERM").value_or("") == "dumb";
  return out;
}

}  // namespace wetout::cli
