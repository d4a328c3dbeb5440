// Project scheduling with minimum and maximum time lags (RCPSP/max): published instances.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/search/objective.hpp"

namespace wetout::search::test {

struct Instance {
  std::string name;
  std::filesystem::path file;
  std::optional<int> makespan;  ///< nothing: published as infeasible
};

/// Where test data lie: environment variable WETOUT_TEST_DATA, else what CMake was told, else
/// beside the checkout.
std::filesystem::path test_data();

/// The instances of optimum.csv; throws when the file is not readable.
std::vector<Instance> published_instances(const std::filesystem::path& folder);

/// One instance in ProGen/max layout.
Problem read_instance(const std::filesystem::path& file);

/// The end of the last activity, nothing else.
Objective makespan();

}  // namespace wetout::search::test
