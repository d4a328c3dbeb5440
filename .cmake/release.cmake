# cmake -C .cmake/release.cmake -S . -B <dir>
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
