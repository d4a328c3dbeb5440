#include "wetout/climate/weather.hpp"

#include <gtest/gtest.h>

namespace wetout::climate {
namespace {

TEST(WeatherKind, HasAWordForEach) {
  EXPECT_EQ(to_string(WeatherKind::table), "csv");
  EXPECT_EQ(to_string(WeatherKind::epw), "epw");
  EXPECT_EQ(to_string(WeatherKind::nws), "nws");
  EXPECT_EQ(to_string(WeatherKind::hourly_arrays), "hourly-arrays");
}

}  // namespace
}  // namespace wetout::climate
