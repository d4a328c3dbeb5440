// The front door: whatever is not another layout is taken for a CSV.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "weather_rules.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wetout;
  static const climate::WeatherOptions options{
      .zone = time::Zone::named("America/Los_Angeles").value()};
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  fuzz::check_answer(climate::read_weather(text, fuzz::source_name, options));
  return 0;
}
