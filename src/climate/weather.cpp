#include "wetout/climate/weather.hpp"

#include "wetout/base/check.hpp"

namespace wetout::climate {

std::string_view to_string(WeatherKind kind) {
  switch (kind) {
    case WeatherKind::table:
      return "csv";
    case WeatherKind::epw:
      return "epw";
    case WeatherKind::nws:
      return "nws";
    case WeatherKind::hourly_arrays:
      return "hourly-arrays";
  }
  base::broken_promise("a kind of weather without a name");
}

}  // namespace wetout::climate
