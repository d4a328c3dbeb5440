# cmake --install: library, headers and package files (component development), and the program.
set(installed wetout)
foreach(module IN LISTS WETOUT_MODULES)
  if(TARGET wetout_${module} AND NOT module STREQUAL cli)
    list(APPEND installed wetout_${module})
  endif()
endforeach()
install(TARGETS ${installed} EXPORT wetoutTargets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
                                                          COMPONENT development)
install(TARGETS wetout_program RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
install(FILES ${PROJECT_SOURCE_DIR}/README.md ${PROJECT_SOURCE_DIR}/docs/CHANGELOG.md
        DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/wetout DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
        COMPONENT development PATTERN cli EXCLUDE)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/wetout)
install(EXPORT wetoutTargets NAMESPACE wetout:: DESTINATION ${package_dir} COMPONENT development)
configure_package_config_file(.cmake/wetoutConfig.cmake.in wetoutConfig.cmake
                              INSTALL_DESTINATION ${package_dir})
write_basic_package_version_file(wetoutConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/wetoutConfig.cmake
              ${PROJECT_BINARY_DIR}/wetoutConfigVersion.cmake DESTINATION ${package_dir}
        COMPONENT development)
