#include "wetout/files/weather_file.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <fstream>
#include <stdexcept>
#include <string>

namespace wetout::files {
namespace {

namespace fs = std::filesystem;

class TempFolder {
 public:
  TempFolder() {
    std::string name = (fs::temp_directory_path() / "wetout-weather-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  ~TempFolder() { fs::remove_all(path_); }
  fs::path put(const char* name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
    return path_ / name;
  }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

constexpr const char* two_hours =
    "time,air [C]\n2026-06-13T00:00:00Z,18.5\n2026-06-13T01:00:00Z,18.0\n";

TEST(WeatherFile, IsReadUnderItsName) {
  const TempFolder folder;
  const fs::path file = folder.put("forecast.csv", two_hours);
  const auto weather = read_weather(file);
  ASSERT_TRUE(weather);
  EXPECT_EQ(weather->source, file.string());
  ASSERT_EQ(weather->points.size(), 2U);
  EXPECT_DOUBLE_EQ(weather->points[0].air.in_celsius(), 18.5);
}

TEST(WeatherFile, SaysWhatIsWrongWithTheFile) {
  const TempFolder folder;
  folder.put("forecast.csv", two_hours);
  const auto missing = read_weather(folder.path() / "forecas.csv");
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error().front().code, "file.missing");
  EXPECT_NE(missing.error().front().hint.find("forecast.csv"), std::string::npos);
  const auto nothing_near = read_weather(folder.path() / "x");
  EXPECT_EQ(nothing_near.error().front().hint, "") << "\"wetout new\" makes no weather";
  EXPECT_EQ(read_weather(folder.path()).error().front().code, "file.folder");
  EXPECT_EQ(read_weather("/dev/null").error().front().code, "file.special");
  EXPECT_EQ(read_weather(folder.put("bad.csv", "when,where\n1,2\n")).error().front().file,
            (folder.path() / "bad.csv").string());
}

TEST(WeatherFile, MayBeLargerThanAJobFile) {
  const TempFolder folder;
  const std::string padded = two_hours + std::string(std::size_t{5} << 20, '\n');
  const auto weather = read_weather(folder.put("long.csv", padded));
  EXPECT_TRUE(weather || weather.error().front().code != "file.too_big");
  const fs::path huge = folder.put("huge.csv", two_hours);
  fs::resize_file(huge, std::uintmax_t{33} << 20);
  const auto refused = read_weather(huge);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().code, "file.too_big");
  EXPECT_EQ(refused.error().front().expected, "at most 32 MiB");
}

}  // namespace
}  // namespace wetout::files
