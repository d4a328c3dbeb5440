// Several programs at one ledger at the same time, each answer lost once: everything is booked
// once, numbers have no gaps, goods and money are conserved.
#include <gtest/gtest.h>

#include <set>
#include <sstream>

#include "ledger_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"
#include "writers.hpp"

namespace wetout::joblog {
namespace {

using testing::mass;

TEST(LedgerProcesses, BookEverythingOnce) {
  constexpr int writers = 2;
  constexpr int rounds = 40;
  constexpr std::int64_t bought_mg = 1'000'000;
  constexpr std::int64_t used_mg = 700'000;
  const testing::TempFolder folder;
  const auto path = folder / "log.db";
  Log::open(path, testing::patient()).save_plan(testing::sample_plan(1, "sandpiper"));
  const auto lines = testing::run_writers(writers, [&](int writer, const auto& say) {
    Log log = Log::open(path, testing::patient());
    for (int n = 0; n < rounds; ++n) {
      const std::string name = std::to_string(writer) + ":" + std::to_string(n);
      const NewEntry bought = testing::receipt(
          "buy " + name, {{.material = mass("resin-a"), .quantity = bought_mg, .cost_minor = 777}});
      const NewEntry used =
          testing::use("use " + name, "sandpiper", "", {{mass("resin-a"), used_mg}});
      for (const NewEntry& entry : {bought, used}) {
        const std::int64_t number = testing::book(log, entry).number;
        const Booked again = testing::book(log, entry);
        say(std::to_string(number) + " " + std::to_string(again.number) + " " +
            std::to_string(again.already ? 1 : 0));
      }
    }
  });
  constexpr int entries = 2 * writers * rounds;
  ASSERT_EQ(lines.size(), static_cast<std::size_t>(entries));
  std::set<std::int64_t> numbers;
  for (const std::string& line : lines) {
    std::istringstream words(line);
    std::int64_t number = 0;
    std::int64_t again = 0;
    int already = 0;
    ASSERT_TRUE(words >> number >> again >> already) << line;
    EXPECT_EQ(again, number);
    EXPECT_EQ(already, 1);
    EXPECT_TRUE(numbers.insert(number).second) << "given twice";
  }
  EXPECT_EQ(*numbers.begin(), 1);
  EXPECT_EQ(*numbers.rbegin(), entries);
  const Log log = Log::open(path);
  EXPECT_TRUE(check(path).empty());
  const auto stock = log.stock_of("resin-a", Lots::all);
  ASSERT_TRUE(stock);
  EXPECT_EQ(stock->lots.size(), static_cast<std::size_t>(writers * rounds));
  EXPECT_EQ(stock->quantity, writers * rounds * (bought_mg - used_mg));
  EXPECT_EQ(stock->minor + log.job_cost("sandpiper")->goods_minor, writers * rounds * 777);
}

}  // namespace
}  // namespace wetout::joblog
