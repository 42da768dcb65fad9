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

# aqueth_require_floors(<header>...): stops if a header includes another that is not before it in the list. The list
# goes through the house from the ground up, so this holds the rule that includes point down only.
function(aqueth_require_floors)
  set(below "")
  foreach(header IN LISTS ARGN)
    file(STRINGS "${header}" lines REGEX "^#include <aqueth/")
    foreach(line IN LISTS lines)
      string(REGEX REPLACE "^#include <([^>]+)>.*" "include/\\1" included "${line}")
      if(NOT included IN_LIST below)
        message(FATAL_ERROR "${header} includes ${included}, which is not listed before it: includes point down only")
      endif()
    endforeach()
    list(APPEND below "${header}")
  endforeach()
endfunction()

# aqueth_require_real(<header>...): stops if a header has a template whose scalar T may be an integer, in which formulas
# compute silently and wrongly. Told by the name: a scalar is called T, and is declared `real T`.
function(aqueth_require_real)
  foreach(header IN LISTS ARGN)
    file(STRINGS "${header}" lines REGEX "template <(.*, )?(class|typename) T[,>]")
    if(lines AND NOT header MATCHES "/real.hpp$")
      message(FATAL_ERROR "${header} takes any scalar, integers too: write `numeric::real T` in ${lines}")
    endif()
  endforeach()
endfunction()

# aqueth_require_codes(<header>...): stops if a header refuses an argument by its words instead of its code.
function(aqueth_require_codes)
  foreach(header IN LISTS ARGN)
    file(READ "${header}" text)
    if(text MATCHES "(require_range|range_error)\\([ \n]*[a-z:\"][^,\"]*\"?,[ \n]*(\"|[A-Za-z_:.<>]*name[,(])")
      message(FATAL_ERROR "${header} refuses an argument without its code (argument.hpp): ${CMAKE_MATCH_0}")
    endif()
  endforeach()
endfunction()
