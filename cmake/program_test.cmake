# SPDX-License-Identifier: BSL-1.0
# aqueth_add_program_test(<name> <program> [ARGS <argument>...] [STATUS <n>] [OUTPUT <regex>] [ERROR <regex>])
# Runs a program and demands the promise every program makes:
# - success (STATUS 0, the default): something on standard output, matching OUTPUT if given; nothing on standard error;
# - bad input (STATUS 2): one line on standard error, matching ERROR if given; nothing on standard output.
# An empty argument or one with a semicolon cannot be passed.
#
# Also the script that does it: cmake -DPROGRAM=... -DARGUMENTS=... -DSTATUS=... -DOUTPUT=... -DERROR=... -P <this file>
if(NOT CMAKE_SCRIPT_MODE_FILE STREQUAL CMAKE_CURRENT_LIST_FILE)
  function(aqueth_add_program_test name program)
    cmake_parse_arguments(PARSE_ARGV 2 arg "" "STATUS;OUTPUT;ERROR" "ARGS")
    if(DEFINED arg_UNPARSED_ARGUMENTS)
      message(FATAL_ERROR "aqueth_add_program_test(${name}): what is ${arg_UNPARSED_ARGUMENTS}?")
    endif()
    if(NOT DEFINED arg_STATUS)
      set(arg_STATUS 0)
    endif()
    add_test(NAME program.${program}.${name} COMMAND ${CMAKE_COMMAND}
        -DPROGRAM=$<TARGET_FILE:${program}> "-DARGUMENTS=${arg_ARGS}" -DSTATUS=${arg_STATUS}
        "-DOUTPUT=${arg_OUTPUT}" "-DERROR=${arg_ERROR}"
        -P ${CMAKE_CURRENT_FUNCTION_LIST_FILE})
  endfunction()
  return()
endif()

execute_process(COMMAND ${PROGRAM} ${ARGUMENTS} RESULT_VARIABLE status OUTPUT_VARIABLE output ERROR_VARIABLE error)

set(faults "")
if(NOT status STREQUAL STATUS)
  list(APPEND faults "exit status ${status}, not ${STATUS}")
endif()
if(STATUS EQUAL 0)
  if(output STREQUAL "")
    list(APPEND faults "nothing on standard output")
  endif()
  if(NOT error STREQUAL "")
    list(APPEND faults "something on standard error")
  endif()
else()
  if(NOT output STREQUAL "")
    list(APPEND faults "something on standard output")
  endif()
  if(NOT error MATCHES "^[^\n]+\n$")
    list(APPEND faults "not one line on standard error")
  endif()
endif()
if(NOT output MATCHES "${OUTPUT}")
  list(APPEND faults "standard output does not match ${OUTPUT}")
endif()
if(NOT error MATCHES "${ERROR}")
  list(APPEND faults "standard error does not match ${ERROR}")
endif()

if(faults)
  list(JOIN faults "\n  " faults)
  message(FATAL_ERROR "${PROGRAM} ${ARGUMENTS}\n  ${faults}\nstandard output:\n${output}\nstandard error:\n${error}")
endif()
