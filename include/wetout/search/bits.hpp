// A fixed-size set of slots.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace wetout::search {

/// Index on the caller's time grid. The caller owns its meaning; 0 is the first start.
using Slot = std::int32_t;

/// A set of slots 0 .. size-1. Reading outside the size is a broken promise of the caller and not
/// checked: this is the inner loop of the search.
class Bits {
 public:
  Bits() = default;
  explicit Bits(Slot size, bool filled = false);

  [[nodiscard]] Slot size() const { return size_; }
  [[nodiscard]] bool test(Slot slot) const {
    return (words_[word(slot)] >> (static_cast<unsigned>(slot) & 63U) & 1U) != 0;
  }
  void set(Slot slot) { words_[word(slot)] |= bit(slot); }
  void reset(Slot slot) { words_[word(slot)] &= ~bit(slot); }
  /// Adds every slot in [from, to), as far as it is inside the size.
  void set_range(Slot from, Slot to);
  /// Takes out every slot in [from, to), as far as it is inside the size.
  void clear_range(Slot from, Slot to);
  /// Takes out every slot before `from`.
  void clear_before(Slot from);
  /// Takes out every slot from `from` on.
  void clear_from(Slot from);

  [[nodiscard]] bool none() const { return next(0) < 0; }
  [[nodiscard]] Slot count() const;
  /// The first slot at or after `from` (which may be anything), or -1.
  [[nodiscard]] Slot next(Slot from) const;
  /// The last slot at or before `from` (which may be anything), or -1.
  [[nodiscard]] Slot previous(Slot from) const;
  /// True when both hold a common slot at or after `from`. Sizes must be equal.
  [[nodiscard]] bool meets(const Bits& other, Slot from = 0) const;
  /// True when every slot of `other` at or after `from` is here too. Sizes must be equal.
  [[nodiscard]] bool covers(const Bits& other, Slot from = 0) const;

  Bits& operator&=(const Bits& other);
  Bits& operator|=(const Bits& other);
  friend bool operator==(const Bits&, const Bits&) = default;

 private:
  static std::size_t word(Slot slot) { return static_cast<std::size_t>(slot) >> 6U; }
  static std::uint64_t bit(Slot slot) {
    return std::uint64_t{1} << (static_cast<unsigned>(slot) & 63U);
  }

  std::vector<std::uint64_t> words_;
  Slot size_ = 0;
};

}  // namespace wetout::search
