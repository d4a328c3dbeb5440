// An output stream on a file descriptor that remembers why a write failed.
#pragma once

#include <array>
#include <ostream>
#include <streambuf>

namespace wetout::cli {

class FdBuffer : public std::streambuf {
 public:
  explicit FdBuffer(int descriptor);
  FdBuffer(const FdBuffer&) = delete;
  FdBuffer& operator=(const FdBuffer&) = delete;
  ~FdBuffer() override;

  /// errno of the first write that failed; 0 when none did. Nothing is written after it.
  [[nodiscard]] int error() const { return error_; }

 protected:
  int_type overflow(int_type c) override;
  int sync() override;

 private:
  bool drain();

  int descriptor_;
  int error_ = 0;
  std::array<char, 16384> buffer_;
};

}  // namespace wetout::cli
