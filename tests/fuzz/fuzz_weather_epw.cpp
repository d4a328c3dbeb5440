#include <cstddef>
#include <cstdint>
#include <string_view>

#include "readers.hpp"
#include "weather_rules.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wetout;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  fuzz::check_answer(climate::read_epw(text, fuzz::source_name));
  return 0;
}
