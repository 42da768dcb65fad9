# SPDX-License-Identifier: BSL-1.0
# cmake -DPROGRAMS=<folder> -DTASK=<name> [-DSETTINGS=<file>] -P run_example.cmake
# Runs the example of a task's --help; the answer must have the line that stands below it there. With a settings file,
# which changes answers, the task must only answer.
set(ENV{PATH} "${PROGRAMS}:$ENV{PATH}")
set(ENV{XDG_CONFIG_HOME} /nonexistent)  # no settings of the person who runs the tests
set(ENV{AQUETH_SETTINGS} "${SETTINGS}")
execute_process(COMMAND bash -c "aqueth ${TASK} --help" OUTPUT_VARIABLE help COMMAND_ERROR_IS_FATAL ANY)
if(NOT help MATCHES "\n  [$] (([^\n]*[\\]\n)*[^\n]*)\n  ([^\n]+)\n")
  message(FATAL_ERROR "no example in:\n${help}")
endif()
set(line "${CMAKE_MATCH_1}")
set(answer "${CMAKE_MATCH_3}")
execute_process(COMMAND bash -c "${line}" OUTPUT_VARIABLE out COMMAND_ERROR_IS_FATAL ANY)
if(SETTINGS)
  return()
endif()
string(FIND "${out}" "${answer}\n" at)
if(NOT at EQUAL 0)
  message(FATAL_ERROR "${line}\n--- should begin with:\n${answer}\n--- but says:\n${out}")
endif()
