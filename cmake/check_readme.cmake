# SPDX-License-Identifier: BSL-1.0
# cmake -DREADME=... -DPROGRAM=... -DPRINTED=... -P check_readme.cmake
# The README shows a program and its output. Both must equal the compiled source and the actual output. The README shows
# the part of the source between the two lines "// [program]".
file(READ "${README}" readme)
file(READ "${PROGRAM}" program)
file(READ "${PRINTED}" printed)
if(NOT program MATCHES "// \\[program\\]\n(.*)// \\[program\\]\n")
  message(FATAL_ERROR "no part between two lines '// [program]' in ${PROGRAM}")
endif()
foreach(text IN ITEMS "${CMAKE_MATCH_1}" "${printed}")
  string(FIND "${readme}" "${text}" position)
  if(position EQUAL -1)
    message(FATAL_ERROR "${README} does not show, word for word:\n${text}")
  endif()
endforeach()
