// What is kept of a schedule in the log.
#include <gtest/gtest.h>

#include "schedule_shop.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/report/schedule_document.hpp"

namespace wetout::work {
namespace {

using report::ScheduleDocument;
using testing::ScheduleShop;

constexpr const char* monday = "2026-06-15 12:00";

TEST(ScheduleKept, IsAllThatWasTold) {
  ScheduleShop shop;
  const ScheduleDocument told = shop.document(monday);
  ASSERT_FALSE(told.cautions.empty());
  ASSERT_FALSE(told.assumptions.empty());
  const auto kept = joblog::Log::open(shop.workshop(monday).log).last_schedule("pip");
  ASSERT_TRUE(kept.has_value());
  EXPECT_EQ(kept->body, report::to_json(told));
}

}  // namespace
}  // namespace wetout::work
