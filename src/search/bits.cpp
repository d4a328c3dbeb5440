#include "wetout/search/bits.hpp"

#include <algorithm>

namespace wetout::search {

Bits::Bits(Slot size, bool filled)
    : words_((static_cast<std::size_t>(size) + 63) / 64, filled ? ~std::uint64_t{0} : 0),
      size_(size) {
  if (filled) clear_from(size);
}

void Bits::set_range(Slot from, Slot to) {
  from = std::max(from, Slot{0});
  to = std::min(to, size_);
  for (Slot slot = from; slot < to;) {
    if ((slot & 63) == 0 && slot + 64 <= to) {
      words_[word(slot)] = ~std::uint64_t{0};
      slot += 64;
    } else {
      set(slot++);
    }
  }
}

void Bits::clear_range(Slot from, Slot to) {
  from = std::max(from, Slot{0});
  to = std::min(to, size_);
  for (Slot slot = from; slot < to;) {
    if ((slot & 63) == 0 && slot + 64 <= to) {
      words_[word(slot)] = 0;
      slot += 64;
    } else {
      reset(slot++);
    }
  }
}

void Bits::clear_before(Slot from) {
  if (from <= 0) return;
  if (from >= size_) {
    std::fill(words_.begin(), words_.end(), 0);
    return;
  }
  std::fill_n(words_.begin(), word(from), 0);
  words_[word(from)] &= ~(bit(from) - 1);
}

void Bits::clear_from(Slot from) {
  from = std::max(from, Slot{0});
  if (word(from) >= words_.size()) return;
  words_[word(from)] &= bit(from) - 1;
  std::fill(words_.begin() + static_cast<std::ptrdiff_t>(word(from)) + 1, words_.end(), 0);
}

Slot Bits::count() const {
  Slot sum = 0;
  for (const std::uint64_t w : words_) sum += std::popcount(w);
  return sum;
}

Slot Bits::next(Slot from) const {
  if (from >= size_) return -1;
  from = std::max(from, Slot{0});
  std::size_t at = word(from);
  std::uint64_t w = words_[at] & ~(bit(from) - 1);
  while (w == 0) {
    if (++at == words_.size()) return -1;
    w = words_[at];
  }
  return static_cast<Slot>(at * 64) + std::countr_zero(w);
}

Slot Bits::previous(Slot from) const {
  if (from < 0 || size_ == 0) return -1;
  from = std::min(from, size_ - 1);
  std::size_t at = word(from);
  const std::uint64_t last = bit(from);
  std::uint64_t w = words_[at] & (last | (last - 1));
  while (w == 0) {
    if (at-- == 0) return -1;
    w = words_[at];
  }
  return static_cast<Slot>(at * 64) + 63 - std::countl_zero(w);
}

bool Bits::meets(const Bits& other, Slot from) const {
  if (from >= size_) return false;
  from = std::max(from, Slot{0});
  std::uint64_t mask = ~(bit(from) - 1);
  for (std::size_t at = word(from); at < words_.size(); ++at, mask = ~std::uint64_t{0}) {
    if ((words_[at] & other.words_[at] & mask) != 0) return true;
  }
  return false;
}

bool Bits::covers(const Bits& other, Slot from) const {
  if (from >= size_) return true;
  from = std::max(from, Slot{0});
  std::uint64_t mask = ~(bit(from) - 1);
  for (std::size_t at = word(from); at < words_.size(); ++at, mask = ~std::uint64_t{0}) {
    if ((other.words_[at] & ~words_[at] & mask) != 0) return false;
  }
  return true;
}

Bits& Bits::operator&=(const Bits& other) {
  for (std::size_t at = 0; at < words_.size(); ++at) words_[at] &= other.words_[at];
  return *this;
}

Bits& Bits::operator|=(const Bits& other) {
  for (std::size_t at = 0; at < words_.size(); ++at) words_[at] |= other.words_[at];
  return *this;
}

}  // namespace wetout::search
