#include "token.hpp"

#include <random>

namespace wetout::cli {

std::string random_token() {
  constexpr std::string_view digits = "0123456789abcdef";
  constexpr int words = 4;
  std::random_device source;
  std::string token;
  for (int i = 0; i < words; ++i) {
    const std::random_device::result_type word = source();
    for (int shift = 28; shift >= 0; shift -= 4) token += digits[(word >> shift) & 0xfU];
  }
  return token;
}

}  // namespace wetout::cli
