// Promises that our own code makes to itself. They stay on in release builds.
#pragma once

#include <string_view>

namespace wetout::base {

/// Throws std::logic_error: a bug in wetout, never the user's doing.
[[noreturn]] void broken_promise(std::string_view what);

inline void promise(bool holds, std::string_view what) {
  if (!holds) broken_promise(what);
}

}  // namespace wetout::base
