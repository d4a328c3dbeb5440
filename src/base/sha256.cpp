#include "wetout/base/sha256.hpp"

#include <bit>
#include <cstddef>

namespace wetout::base {
namespace {

using State = std::array<std::uint32_t, 8>;

// FIPS 180-4, section 4.2.2.
constexpr std::array<std::uint32_t, 64> k = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

std::uint32_t byte_at(const char* p, int i) { return static_cast<unsigned char>(p[i]); }

// Section 6.2.2, one block of 64 bytes.
void digest_block(State& h, const char* block) {
  std::array<std::uint32_t, 64> w{};
  for (std::size_t t = 0; t < 16; ++t) {
    const char* p = block + 4 * t;
    w[t] = byte_at(p, 0) << 24 | byte_at(p, 1) << 16 | byte_at(p, 2) << 8 | byte_at(p, 3);
  }
  for (std::size_t t = 16; t < 64; ++t) {
    const std::uint32_t a = w[t - 15];
    const std::uint32_t b = w[t - 2];
    w[t] = (std::rotr(b, 17) ^ std::rotr(b, 19) ^ b >> 10) + w[t - 7] +
           (std::rotr(a, 7) ^ std::rotr(a, 18) ^ a >> 3) + w[t - 16];
  }
  State s = h;
  for (std::size_t t = 0; t < 64; ++t) {
    const std::uint32_t e = s[4];
    const std::uint32_t a = s[0];
    const std::uint32_t t1 = s[7] + (std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25)) +
                             ((e & s[5]) ^ (~e & s[6])) + k[t] + w[t];
    const std::uint32_t t2 = (std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22)) +
                             ((a & s[1]) ^ (a & s[2]) ^ (s[1] & s[2]));
    s = {t1 + t2, s[0], s[1], s[2], s[3] + t1, s[4], s[5], s[6]};
  }
  for (std::size_t i = 0; i < 8; ++i) h[i] += s[i];
}

}  // namespace

Digest sha256(std::string_view data) {
  State h = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
             0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  const std::uint64_t bits = std::uint64_t{data.size()} * 8;
  while (data.size() >= 64) {
    digest_block(h, data.data());
    data.remove_prefix(64);
  }
  // Padding, section 5.1.1: a one bit, zeros, the length in bits as 64 bits big-endian.
  std::string tail(data);
  tail += '\x80';
  while (tail.size() % 64 != 56) tail += '\0';
  for (int shift = 56; shift >= 0; shift -= 8) tail += static_cast<char>(bits >> shift & 0xff);
  for (std::size_t at = 0; at < tail.size(); at += 64) digest_block(h, tail.data() + at);

  Digest out{};
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = static_cast<std::uint8_t>(h[i / 4] >> (24 - 8 * (i % 4)) & 0xff);
  }
  return out;
}

std::string hex(const Digest& digest) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out;
  for (const std::uint8_t byte : digest) {
    out += digits[byte >> 4];
    out += digits[byte & 0xf];
  }
  return out;
}

}  // namespace wetout::base
