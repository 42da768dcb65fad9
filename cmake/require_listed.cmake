# SPDX-License-Identifier: BSL-1.0
# A source that lies in the tree but in no list would never be built, run or installed, and nobody would notice.

# aqueth_require_listed(<pattern> <file>...): stops if a file below this directory fits the pattern and is not listed.
function(aqueth_require_listed pattern)
  file(GLOB_RECURSE found RELATIVE "${CMAKE_CURRENT_SOURCE_DIR}" CONFIGURE_DEPENDS "${pattern}")
  list(REMOVE_ITEM found ${ARGN})
  if(found)
    list(JOIN found ", " found)
    message(FATAL_ERROR "not listed in ${CMAKE_CURRENT_SOURCE_DIR}/CMakeLists.txt: ${found}")
  endif()
endfunction()

# aqueth_require_built(<pattern>...): stops if a file that fits is not a source of one of this directory's targets.
function(aqueth_require_built)
  get_property(targets DIRECTORY PROPERTY BUILDSYSTEM_TARGETS)
  set(listed "")
  foreach(target IN LISTS targets)
    get_target_property(sources ${target} SOURCES)
    if(sources)
      list(APPEND listed ${sources})
    endif()
  endforeach()
  file(GLOB found RELATIVE "${CMAKE_CURRENT_SOURCE_DIR}" CONFIGURE_DEPENDS ${ARGN})
  list(REMOVE_ITEM found ${listed})
  if(found)
    list(JOIN found ", " found)
    message(FATAL_ERROR "not listed in ${CMAKE_CURRENT_SOURCE_DIR}/CMakeLists.txt: ${found}")
  endif()
endfunction()
