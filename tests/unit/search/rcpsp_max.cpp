#include "rcpsp_max.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace wetout::search::test {
namespace {

std::ifstream open(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return in;
}

int number(std::istream& in) {
  std::string word;
  in >> word;
  if (!word.empty() && word.front() == '[') word = word.substr(1, word.find(']') - 1);
  return std::stoi(word);
}

}  // namespace

std::filesystem::path test_data() {
  if (const char* given = std::getenv("WETOUT_TEST_DATA")) return given;
  return WETOUT_TEST_DATA;
}

std::vector<Instance> published_instances(const std::filesystem::path& folder) {
  std::ifstream in = open(folder / "optimum.csv");
  std::string line;
  std::getline(in, line);
  std::vector<Instance> all;
  while (std::getline(in, line)) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    std::istringstream cells(line);
    std::string set;
    std::string name;
    std::string optimum;
    std::getline(cells, set, ',');
    std::getline(cells, name, ',');
    std::getline(cells, optimum, ',');
    std::optional<int> makespan;
    if (optimum != "unsat") makespan = std::stoi(optimum);
    all.push_back({set + "/" + name, folder / set / name, makespan});
  }
  return all;
}

Problem read_instance(const std::filesystem::path& file) {
  std::ifstream in = open(file);
  const int activities = number(in) + 2;
  const int resources = number(in);
  number(in);
  number(in);
  Problem problem;
  problem.ops.resize(static_cast<std::size_t>(activities));
  Slot horizon = 1;
  for (int i = 0; i < activities; ++i) {
    number(in);
    number(in);
    std::vector<int> successors(static_cast<std::size_t>(number(in)));
    for (int& successor : successors) successor = number(in);
    Slot longest = 0;
    for (const int successor : successors) {
      Lag& lag = problem.lags.emplace_back();
      lag.from = {i, at_start};
      lag.to = {successor, at_start};
      const Slot least = number(in);
      lag.min = least;
      longest = std::max(longest, least);
    }
    horizon += longest;
  }
  for (int k = 0; k < resources; ++k) problem.resources.push_back({std::to_string(k), 0, -1});
  for (int i = 0; i < activities; ++i) {
    number(in);
    number(in);
    const Slot duration = number(in);
    horizon += duration;
    problem.ops[static_cast<std::size_t>(i)].id = std::to_string(i);
    problem.ops[static_cast<std::size_t>(i)].attended = duration;
    for (int k = 0; k < resources; ++k) {
      if (const int amount = number(in); amount > 0) {
        problem.holds.push_back({k, amount, {i, at_start}, {i, at_end}, {}});
      }
    }
  }
  for (Resource& resource : problem.resources) resource.count = number(in);
  problem.horizon = horizon;
  problem.ops.front().allowed = Bits(horizon);
  problem.ops.front().allowed.set(0);
  return problem;
}

Objective makespan() { return {{LastEnd{}}}; }

}  // namespace wetout::search::test
