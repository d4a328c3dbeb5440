#include "fd_stream.hpp"

#include <unistd.h>

#include <cerrno>

namespace wetout::cli {

FdBuffer::FdBuffer(int descriptor) : descriptor_(descriptor) {
  setp(buffer_.data(), buffer_.data() + buffer_.size());
}

FdBuffer::~FdBuffer() { drain(); }

bool FdBuffer::drain() {
  const char* at = pbase();
  while (error_ == 0 && at < pptr()) {
    const ssize_t written = ::write(descriptor_, at, static_cast<std::size_t>(pptr() - at));
    if (written >= 0) {
      at += written;
    } else if (errno != EINTR) {
      error_ = errno;
    }
  }
  setp(buffer_.data(), buffer_.data() + buffer_.size());
  return error_ == 0;
}

FdBuffer::int_type FdBuffer::overflow(int_type c) {
  if (!drain()) return traits_type::eof();
  if (!traits_type::eq_int_type(c, traits_type::eof())) sputc(traits_type::to_char_type(c));
  return traits_type::not_eof(c);
}

int FdBuffer::sync() { return drain() ? 0 : -1; }

}  // namespace wetout::cli
