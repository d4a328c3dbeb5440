// The page for users (docs/formats/quantities.md) promises only what is read.
#include <gtest/gtest.h>

#include <fstream>
#include <functional>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "refusal.hpp"
#include "wetout/units/read.hpp"

namespace wetout::units {
namespace {

std::vector<std::string> split(const std::string& text, char mark) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, mark);) out.push_back(part);
  return out;
}

std::string trimmed(std::string text) {
  text.erase(0, text.find_first_not_of(' '));
  return text.erase(text.find_last_not_of(' ') + 1);
}

// What stands between backticks.
std::vector<std::string> examples(const std::string& cell) {
  std::vector<std::string> out;
  const std::vector<std::string> parts = split(cell, '`');
  for (std::size_t i = 1; i < parts.size(); i += 2) out.push_back(parts[i]);
  return out;
}

template <class T>
std::function<std::string(const std::string&)> with(base::Result<T> (*read)(std::string_view)) {
  return [read](const std::string& text) { return code_of(read(text)); };
}

TEST(PageForUsers, ShowsOnlyWhatIsRead) {
  const std::map<std::string, std::function<std::string(const std::string&)>> readers = {
      {"length", with(read_length)},
      {"area", with(read_area)},
      {"volume", with(read_volume)},
      {"mass", with(read_mass)},
      {"cloth weight", with(read_areal_weight)},
      {"density", with(read_density)},
      {"mass per length", with(read_linear_weight)},
      {"time", with(read_duration)},
      {"range of times", with(read_duration_range)},
      {"time per area", with(read_pace)},
      {"temperature", with(read_temperature)},
      {"temperature difference", with(read_temp_delta)},
      {"share", with(read_percent)},
      {"money",
       [](const std::string& text) {
         return text.ends_with("/h") ? code_of(read_money_per_hour(text))
                                     : code_of(read_money(text));
       }},
  };
  std::ifstream page(QUANTITIES_PAGE);
  ASSERT_TRUE(page) << QUANTITIES_PAGE;
  std::map<std::string, std::size_t> seen;
  bool in_table = false;
  for (std::string line; std::getline(page, line);) {
    if (line.starts_with("## ")) in_table = line == "## What is read";
    const std::vector<std::string> cells = split(line, '|');
    if (!in_table || cells.size() < 3) continue;
    const auto reader = readers.find(trimmed(cells[1]));
    if (reader == readers.end()) continue;
    for (const std::string& example : examples(cells[2])) {
      EXPECT_EQ(reader->second(example), "(read)") << reader->first << ": " << example;
      ++seen[reader->first];
    }
  }
  for (const auto& [name, read] : readers) EXPECT_GT(seen[name], 0U) << name;
}

}  // namespace
}  // namespace wetout::units
