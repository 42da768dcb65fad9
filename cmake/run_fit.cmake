# SPDX-License-Identifier: BSL-1.0
# cmake -DPROGRAM=... -DTABLE=... -DHEADER=... [-DWRITE=ON] -P run_fit.cmake
# Runs a fitting program; writes what it prints to the header, or without WRITE demands that the header already says so.
execute_process(COMMAND ${PROGRAM} ${TABLE} OUTPUT_VARIABLE printed RESULT_VARIABLE status)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "${PROGRAM} ${TABLE}: exit status ${status}")
endif()
if(WRITE)
  file(WRITE ${HEADER} "${printed}")
  return()
endif()
file(READ ${HEADER} stored)
if(NOT stored STREQUAL printed)
  message(FATAL_ERROR "${HEADER} is not what ${PROGRAM} makes of ${TABLE}: build the target fit, look at the difference")
endif()
