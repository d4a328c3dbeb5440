# wetout_module(<name> SOURCES <files in src/<name>> LINK <public libraries> PRIVATE <libraries>)
# One static library per module: wetout_<name>, exported as wetout::<name>.

add_library(wetout_warnings INTERFACE)
target_compile_options(
  wetout_warnings
  INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Wold-style-cast
            $<$<BOOL:${WETOUT_WERROR}>:-Werror>)
# gcc 12 and 13 see an overlap in "text" + std::string where there is none (GCC bug 105651).
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 14)
  target_compile_options(wetout_warnings INTERFACE -Wno-restrict)
endif()
if(WETOUT_SANITIZE)
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all
                      -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
endif()

function(wetout_module name)
  cmake_parse_arguments(ARG "" "" "SOURCES;LINK;PRIVATE" ${ARGN})
  add_library(wetout_${name} STATIC ${ARG_SOURCES})
  add_library(wetout::${name} ALIAS wetout_${name})
  set_target_properties(wetout_${name} PROPERTIES EXPORT_NAME ${name})
  target_compile_features(wetout_${name} PUBLIC cxx_std_20)
  set_target_properties(wetout_${name} PROPERTIES CXX_EXTENSIONS OFF)
  target_include_directories(
    wetout_${name} PUBLIC $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/include>
                          $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
  target_link_libraries(wetout_${name} PUBLIC ${ARG_LINK} PRIVATE ${ARG_PRIVATE}
                                                                  $<BUILD_INTERFACE:wetout_warnings>)
endfunction()
