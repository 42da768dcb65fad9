# SPDX-License-Identifier: BSL-1.0
# aqueth_read_version(<variable>): the version as include/aqueth/version.hpp states it.

set(aqueth_version_header "${CMAKE_CURRENT_LIST_DIR}/../include/aqueth/version.hpp")

function(aqueth_read_version variable)
  set(header "${aqueth_version_header}")
  file(READ "${header}" text)
  set(numbers "")
  foreach(part IN ITEMS MAJOR MINOR PATCH)
    if(NOT text MATCHES "\n#define AQUETH_VERSION_${part} ([0-9]+)\n")
      message(FATAL_ERROR "no line '#define AQUETH_VERSION_${part} <number>' in ${header}")
    endif()
    list(APPEND numbers ${CMAKE_MATCH_1})
  endforeach()
  list(JOIN numbers "." version)
  set(${variable} "${version}" PARENT_SCOPE)
endfunction()
