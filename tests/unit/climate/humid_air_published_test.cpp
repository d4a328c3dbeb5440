// Every line of tests/published/humid_air.csv and humid_air_psychrolib.csv.
#include <gtest/gtest.h>

#include <fstream>
#include <functional>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "wetout/climate/humid_air.hpp"

namespace wetout::climate {
namespace {

using units::Temperature;

struct Published {
  std::string name, what;
  double a, b, c, expected, tolerance;
  std::string source;
};

std::vector<Published> published(const std::string& file) {
  std::ifstream stream(WETOUT_PUBLISHED "/" + file);
  std::vector<Published> values;
  const auto number = [](const std::string& text) { return text.empty() ? 0.0 : std::stod(text); };
  for (std::string line; std::getline(stream, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream fields(line);
    std::vector<std::string> cells;
    for (std::string cell; std::getline(fields, cell, ',');) cells.push_back(cell);
    values.push_back({cells.at(0), cells.at(1), number(cells.at(2)), number(cells.at(3)),
                      number(cells.at(4)), std::stod(cells.at(5)), std::stod(cells.at(7)),
                      cells.at(9)});
  }
  return values;
}

Temperature c(double celsius) { return Temperature::celsius(celsius); }

const std::map<std::string, std::function<double(const Published&)>> computed{
    {"saturation_pressure", [](const Published& p) { return saturation_pressure_pa(c(p.a)); }},
    {"dew_point",
     [](const Published& p) {
       return air_from_humidity(c(p.a), p.b / 100.0).value().dew_point.in_celsius();
     }},
    {"humidity",
     [](const Published& p) {
       return 100.0 * air_from_dew_point(c(p.a), c(p.b)).value().relative_humidity_share;
     }},
    {"wet_bulb",
     [](const Published& p) { return wet_bulb(c(p.a), p.b / 100.0, p.c).value().in_celsius(); }},
    {"humidity_from_wet_bulb",
     [](const Published& p) {
       return 100.0 * air_from_wet_bulb(c(p.a), c(p.b), p.c).value().relative_humidity_share;
     }},
    {"dew_point_from_wet_bulb",
     [](const Published& p) {
       return air_from_wet_bulb(c(p.a), c(p.b), p.c).value().dew_point.in_celsius();
     }},
};

void expect_all(const std::string& file, std::size_t at_least) {
  const std::vector<Published> values = published(file);
  EXPECT_GE(values.size(), at_least) << file;
  std::set<std::string> names;
  for (const Published& p : values) {
    EXPECT_TRUE(names.insert(p.name).second) << p.name << " stands twice";
    ASSERT_TRUE(computed.contains(p.what)) << p.name << ": " << p.what;
    EXPECT_NEAR(computed.at(p.what)(p), p.expected, p.tolerance) << p.name << ", " << p.source;
  }
}

TEST(Published, ValuesOfHumidAirAreMet) { expect_all("humid_air.csv", 30); }

TEST(Published, ValuesOfPsychroLibAreMet) { expect_all("humid_air_psychrolib.csv", 50); }

}  // namespace
}  // namespace wetout::climate
