// The page for users (docs/formats/weather.md) promises only what is so.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "weather_texts.hpp"

namespace wetout::climate::test {
namespace {

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  EXPECT_TRUE(in) << "cannot read " << file;
  return {std::istreambuf_iterator<char>(in), {}};
}

const std::filesystem::path page = WEATHER_PAGE;
const std::filesystem::path sources = CLIMATE_SOURCES;

TEST(WeatherPage, ShowsOnlyExamplesThatAreRead) {
  const std::string text = text_of(page);
  int examples = 0;
  for (const std::string fence : {"```csv\n", "```json\n"}) {
    std::size_t from = 0;
    while ((from = text.find(fence, from)) != std::string::npos) {
      from += fence.size();
      const std::string example = text.substr(from, text.find("```", from) - from);
      SCOPED_TRACE(example);
      EXPECT_GE(read(example).points.size(), 2U);
      ++examples;
    }
  }
  EXPECT_EQ(examples, 4);
}

TEST(WeatherPage, NamesEveryCode) {
  const auto codes_in = [](const std::string& text, const std::regex& code) {
    std::set<std::string> out;
    for (std::sregex_iterator it(text.begin(), text.end(), code), end; it != end; ++it) {
      out.insert((*it)[1]);
    }
    return out;
  };
  std::set<std::string> used;
  for (const auto& file : std::filesystem::directory_iterator(sources)) {
    if (file.path().extension() != ".cpp" && file.path().extension() != ".hpp") continue;
    used.merge(codes_in(text_of(file), std::regex("\"((?:weather|json)\\.(?!hpp)[a-z0-9_]+)\"")));
  }
  EXPECT_GT(used.size(), 30U);
  EXPECT_EQ(codes_in(text_of(page), std::regex("`((?:weather|json)\\.[a-z0-9_]+)`")), used);
}

TEST(WeatherPage, NamesEveryColumnAsItIsRead) {
  const std::string text = text_of(page);
  // Rows of the table of columns: | column | names | units |
  const std::size_t from = text.find("| time (required) |");
  ASSERT_NE(from, std::string::npos);
  const std::string table = text.substr(from, text.find("\n\n", from) - from);
  const std::regex in_backticks("`([^`]+)`");
  int names = 0;
  std::size_t at = 0;
  while (at < table.size()) {
    const std::string row = table.substr(at, table.find('\n', at) - at);
    at += row.size() + 1;
    const std::size_t second = row.find('|', 1);
    const std::size_t third = row.find('|', second + 1);
    const std::string name_cell = row.substr(second, third - second);
    const std::string unit_cell = row.substr(third);
    std::smatch unit;
    const bool has_unit = std::regex_search(unit_cell, unit, in_backticks);
    for (std::sregex_iterator it(name_cell.begin(), name_cell.end(), in_backticks), end; it != end;
         ++it) {
      const std::string name = (*it)[1];
      SCOPED_TRACE(name);
      ++names;
      const bool is_time = row.starts_with("| time");
      const bool is_air = row.starts_with("| air");
      const std::string column = is_time ? name : name + " [" + unit[1].str() + "]";
      ASSERT_TRUE(is_time || has_unit);
      const Weather weather =
          read((is_time ? column : std::string("time")) + "," + (is_air ? column : "air [C]") +
               "," + (is_time || is_air ? "other" : column) +
               "\n2026-06-14T10:00Z,5.5,4.5\n2026-06-14T11:00Z,5.5,4.5\n");
      const WeatherPoint& p = weather.points[0];
      const bool third_is_read = p.dew_point || p.relative_humidity || p.wind_m_s || p.sun_w_m2;
      EXPECT_EQ(third_is_read, !is_time && !is_air);
    }
  }
  EXPECT_EQ(names, 27);
}

}  // namespace
}  // namespace wetout::climate::test
