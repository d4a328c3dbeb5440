# Installs into an empty prefix, then configures, builds and runs the consumer against it.
file(REMOVE_RECURSE ${WORK})
foreach(step
        "--install;${BUILD};--prefix;${WORK}/prefix"
        "-S;${SOURCE};-B;${WORK}/build;-G;Ninja;-DCMAKE_PREFIX_PATH=${WORK}/prefix"
        "--build;${WORK}/build")
  execute_process(COMMAND ${CMAKE_COMMAND} ${step} RESULT_VARIABLE failed OUTPUT_VARIABLE said
                  ERROR_VARIABLE said)
  if(failed)
    message(FATAL_ERROR "${step}\n${said}")
  endif()
endforeach()
execute_process(COMMAND ${WORK}/build/consumer RESULT_VARIABLE failed)
if(failed)
  message(FATAL_ERROR "the consumer ran and failed: ${failed}")
endif()
