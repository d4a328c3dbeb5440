# cmake -C .cmake/debug.cmake -S . -B <dir>
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
