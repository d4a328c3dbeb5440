#include <gtest/gtest.h>

#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::time {
namespace {

using namespace std::chrono_literals;

template <class T>
std::string code_of(const base::Result<T>& result) {
  return result ? "(read)" : result.error().at(0).code;
}

TEST(ReadDate, TakesYearMonthDay) {
  EXPECT_EQ(*read_date("2026-06-14"), 2026y / 6 / 14);
  EXPECT_EQ(*read_date("2028-02-29"), 2028y / 2 / 29);
  EXPECT_EQ(print(*read_date("2026-06-14")), "2026-06-14");
}

TEST(ReadDate, RefusesDaysThatDoNotExist) {
  for (const char* text :
       {"2026-02-29", "2100-02-29", "2026-06-31", "2026-13-01", "2026-00-10", "2026-06-00",
        "0000-06-01", "2026-6-14", "14.06.2026", "2026-06-14x", "2026-06-14 18:30", "", "today"}) {
    EXPECT_EQ(code_of(read_date(text)), "date.bad") << text;
  }
  EXPECT_EQ(read_date("2100-02-29").error().at(0).message, "2100-02 has 28 days");
  EXPECT_EQ(read_date("2026-06-31").error().at(0).message, "2026-06 has 30 days");
}

TEST(ReadDateRange, TakesARangeOrOneDay) {
  EXPECT_EQ(*read_date_range("2026-07-03/2026-07-05"), (DateRange{2026y / 7 / 3, 2026y / 7 / 5}));
  EXPECT_EQ(*read_date_range("2026-06-21"), (DateRange{2026y / 6 / 21, 2026y / 6 / 21}));
  EXPECT_EQ(*read_date_range("2026-06-21 / 2026-06-21"),
            (DateRange{2026y / 6 / 21, 2026y / 6 / 21}));
}

TEST(ReadDateRange, RefusesBackwardsAndHalfRanges) {
  const base::Result<DateRange> range = read_date_range("2026-07-05/2026-07-03");
  EXPECT_EQ(code_of(range), "date.bad");
  EXPECT_EQ(range.error().at(0).hint, "write \"2026-07-03/2026-07-05\"");
  for (const char* text : {"2026-07-05/", "/2026-07-05", "2026-07-03/2026-07-05/2026-07-06",
                           "2026-07-03-2026-07-05", "2026-02-29/2026-03-01", ""}) {
    EXPECT_EQ(code_of(read_date_range(text)), "date.bad") << text;
  }
}

TEST(ReadDaySpan, IsMinutesFromMidnight) {
  EXPECT_EQ(*read_day_span("18:00-22:00"), (DaySpan{18h, 22h}));
  EXPECT_EQ(*read_day_span("8:30 - 12:15"), (DaySpan{8h + 30min, 12h + 15min}));
  EXPECT_EQ(*read_day_span("18:00–24:00"), (DaySpan{18h, 24h}));
  EXPECT_EQ(*read_day_span("00:00 to 24:00"), (DaySpan{0h, 24h}));
  EXPECT_EQ(print(*read_day_span("8:05-24:00")), "08:05-24:00");
}

TEST(ReadDaySpan, RefusesWhatIsNoSpan) {
  for (const char* text :
       {"22:00-18:00", "18:00-18:00", "24:00-24:00", "18:00-24:01", "18:00-25:00", "18:60-19:00",
        "18:00", "18:00-", "-22:00", "18-22", "18:00-22:00x", "6pm-10pm", "", "018:00-22:00",
        "18:00-22:000", "18:00 22:00"}) {
    EXPECT_EQ(code_of(read_day_span(text)), "span.bad") << text;
  }
  EXPECT_NE(read_day_span("22:00-06:00").error().at(0).hint.find("two spans"), std::string::npos);
}

}  // namespace
}  // namespace wetout::time
