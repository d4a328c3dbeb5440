# cmake -C .cmake/asan+ubsan.cmake -S . -B <dir>
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(WETOUT_SANITIZE ON CACHE BOOL "")
