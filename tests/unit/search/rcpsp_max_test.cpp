// Published optima. Instances: ProGen/max sets j10 and ubo10 (Schwindt; Kolisch, Schwindt and
// Sprecher 1999), the first 24 of each; optima as collected with them in optimum.csv.
#include "rcpsp_max.hpp"

#include <gtest/gtest.h>

#include "wetout/search/solve.hpp"

namespace wetout::search::test {
namespace {

TEST(RcpspMax, EveryPublishedOptimumIsFoundAndProved) {
  const auto folder = test_data() / "rcpsp-max";
  if (!std::filesystem::exists(test_data())) {
    GTEST_SKIP() << "no test data at " << test_data() << " (set WETOUT_TEST_DATA)";
  }
  const auto instances = published_instances(folder);
  ASSERT_EQ(instances.size(), 48U);
  for (const Instance& instance : instances) {
    SCOPED_TRACE(instance.name);
    const Problem problem = read_instance(instance.file);
    const Answer answer = solve(problem, makespan());
    EXPECT_EQ(answer.effort.engine, Engine::general);
    if (!instance.makespan) {
      EXPECT_EQ(answer.state, State::infeasible);
      continue;
    }
    ASSERT_EQ(answer.state, State::proved);
    EXPECT_EQ(answer.value, Value{*instance.makespan});
    EXPECT_EQ(broken_rules(problem, answer.schedule), std::vector<std::string>{});
  }
}

}  // namespace
}  // namespace wetout::search::test
