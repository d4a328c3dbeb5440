// Where messages go. The library never prints; a program passes a sink in.
#pragma once

#include <functional>
#include <string_view>

namespace wetout::base {

enum class Level { error, warn, info, debug };

using Sink = std::function<void(Level, std::string_view)>;

/// Drops everything: the default of every function that takes a sink.
inline void drop(Level /*level*/, std::string_view /*text*/) {}

}  // namespace wetout::base
