#include <cstddef>
#include <cstdint>
#include <string_view>

#include "json.hpp"
#include "weather_rules.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wetout;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  climate::Findings findings(fuzz::source_name);
  if (const auto json = climate::parse_json(text, findings)) {
    fuzz::check_answer(climate::read_nws(*json, fuzz::source_name));
  } else {
    fuzz::check_answer(base::fail(findings.take()));
  }
  return 0;
}
