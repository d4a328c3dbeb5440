// Reads tests/published/cure.csv: lines starting with # are remarks.
#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace wetout::resin {

struct PublishedValue {
  std::string name, what;
  double input, expected;
  std::string unit;
  double tolerance;
  std::string source;
};

inline std::vector<PublishedValue> published_cure() {
  std::ifstream file(WETOUT_PUBLISHED "/cure.csv");
  std::vector<PublishedValue> values;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream fields(line);
    std::vector<std::string> cells;
    for (std::string cell; std::getline(fields, cell, ',');) cells.push_back(cell);
    values.push_back({cells.at(0), cells.at(1), std::stod(cells.at(2)), std::stod(cells.at(3)),
                      cells.at(4), std::stod(cells.at(5)), cells.at(7)});
  }
  return values;
}

}  // namespace wetout::resin
