# cpack -G DEB in the build folder: wetout (program, manual, completion) and libwetout-dev. What the
# program links is asked of dpkg-shlibdeps.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME wetout)
set(CPACK_PACKAGE_CONTACT "The wetout developers <wetout@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)

set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
    "Cloth, resin, batches, pot lives, schedules and books of a shop that glasses\nfoam-cored boards: the program, its manual and its completion.")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME wetout)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS tzdata)

set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION
    "The C++20 library of wetout: headers, static libraries, CMake package.")
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libwetout-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS
    "libsqlitecpp-dev, libsqlite3-dev, libhowardhinnant-date-dev, libtomlplusplus-dev, nlohmann-json3-dev, libexpected-dev, libboost-dev, libeigen3-dev, libcairo2-dev, libpugixml-dev, libdxflib-dev, libcli11-dev, libfmt-dev, pkg-config")
include(CPack)
