# wetout_test(<module> SOURCES <files> LINK <libraries>): one test program per module; its cases
# appear in ctest as unit.<module>.<Topic>.<StatesAFact>.
function(wetout_test module)
  cmake_parse_arguments(ARG "" "" "SOURCES;LINK" ${ARGN})
  add_executable(unit_${module} ${ARG_SOURCES})
  target_compile_features(unit_${module} PRIVATE cxx_std_20)
  target_link_libraries(unit_${module} PRIVATE wetout_${module} ${ARG_LINK} GTest::gtest_main
                                               wetout_warnings)
  # Test code takes longer to compile than to run; what it tests is optimised as ever.
  target_compile_options(unit_${module} PRIVATE $<$<CONFIG:Release>:-O0>)
  gtest_discover_tests(unit_${module} TEST_PREFIX unit.${module}. PROPERTIES LABELS unit
                       DISCOVERY_TIMEOUT 60)
endfunction()
