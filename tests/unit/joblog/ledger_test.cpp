// Booking goods and work, one entry at a time.
#include <gtest/gtest.h>

#include <stdexcept>

#include "ledger_samples.hpp"
#include "support.hpp"

namespace wetout::joblog {
namespace {

using testing::book;
using testing::count;
using testing::labour;
using testing::ledger;
using testing::length;
using testing::lines;
using testing::mass;
using testing::pieces;
using testing::receipt;
using testing::refusal;
using testing::reversal;
using testing::stock;
using testing::use;
using testing::waste;

std::int64_t board_cost(const Log& log, const std::string& job = "sandpiper") {
  return log.job_cost(job)->goods_minor;
}

// Accounting Principles: A Business Perspective, exhibits 50-53 (published-values 10.2): 690.00 of
// goods in six lots, 60 of 80 units sold; first in, first out leaves 179.00 in stock, 511.00 sold.
TEST(Ledger, IsTheTextbooksFirstInFirstOut) {
  const std::pair<std::int64_t, std::int64_t> purchases[] = {{10, 800}, {10, 850}, {20, 840},
                                                             {10, 900}, {20, 880}, {10, 910}};
  for (const std::vector<std::int64_t>& sales :
       {std::vector<std::int64_t>{60}, {10, 10, 10, 10, 10, 10}, {1, 29, 7, 23}}) {
    Log log = ledger();
    int n = 0;
    for (const auto& [units, price] : purchases) {
      book(log, receipt("r" + std::to_string(n), {{pieces("box"), units, units * price}}, n));
      ++n;
    }
    EXPECT_EQ(log.stock_of("box")->minor, 69'000);
    for (const std::int64_t units : sales) {
      book(log, use("u" + std::to_string(++n), "sandpiper", "fins/wet", {{pieces("box"), units}}));
    }
    EXPECT_EQ(board_cost(log), 51'100);
    EXPECT_EQ(log.stock_of("box")->minor, 17'900);
    EXPECT_EQ(stock(log), "box 2026-06-05 10@8800, 2026-06-06 10@9100");
  }
}

}  // namespace
}  // namespace wetout::joblog
