# SPDX-License-Identifier: BSL-1.0
# cmake -DPROGRAM=... -DARGUMENTS=a|b -DFILE=... [-DWRITE=ON] -P run_fit.cmake
# Runs a fitting program; writes its output to the file, or without WRITE requires that the file already equals it.
string(REPLACE "|" ";" arguments "${ARGUMENTS}")
execute_process(COMMAND ${PROGRAM} ${arguments} OUTPUT_VARIABLE printed RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "${PROGRAM} ${arguments}: exit status ${status}")
endif()
if(WRITE)
  file(WRITE ${FILE} "${printed}")
  return()
endif()
file(READ ${FILE} stored)
if(NOT stored STREQUAL printed)
  message(FATAL_ERROR "${FILE} is not what ${PROGRAM} prints: build the target fit, look at the difference")
endif()
