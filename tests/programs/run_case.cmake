# SPDX-License-Identifier: BSL-1.0
# cmake -DPROGRAMS=<folder> -DLINE=<command line> -DSTATUS=<n> -DOUT=<regex> -DERR=<regex> -P run_case.cmake
# Runs a command line in a shell that finds aqueth. Beside status and regular expressions it demands:
#   status 0: nothing on standard error, and JSON if that was asked for;
#   else: nothing on standard output, and on standard error one line that begins with aqueth and the task.
set(ENV{PATH} "${PROGRAMS}:$ENV{PATH}")
set(ENV{XDG_CONFIG_HOME} /nonexistent)  # no settings of the person who runs the tests
unset(ENV{AQUETH_SETTINGS})
execute_process(COMMAND bash -c "${LINE}" OUTPUT_VARIABLE out ERROR_VARIABLE err RESULT_VARIABLE status)

function(fail what)
  message(FATAL_ERROR
      "${LINE}\n--- ${what}\n--- status ${status}, standard output:\n${out}\n--- standard error:\n${err}")
endfunction()

if(NOT status STREQUAL STATUS)
  fail("the status should be ${STATUS}")
endif()
if(STATUS EQUAL 0)
  if(NOT err STREQUAL "")
    fail("standard error should be empty")
  endif()
  if(LINE MATCHES "--json[^|]*$")  # what is printed, not what another command read
    string(JSON type ERROR_VARIABLE not_json TYPE "${out}")
    if(NOT type STREQUAL OBJECT)
      fail("standard output should be JSON: ${not_json}")
    endif()
  endif()
else()
  if(NOT out STREQUAL "")
    fail("standard output should be empty")
  endif()
  if(NOT err MATCHES "^(aqueth( [a-z_]+)?|[a-z_]+[.]sh|usage): [^\n]+\n$")
    fail("standard error should be one line by the program")
  endif()
endif()
if(NOT out MATCHES "${OUT}")
  fail("standard output should match: ${OUT}")
endif()
if(NOT err MATCHES "${ERR}")
  fail("standard error should match: ${ERR}")
endif()
