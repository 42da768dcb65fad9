# SPDX-License-Identifier: BSL-1.0
# Warnings for our own sources, which have none with g++ 12 and clang 14.
if(CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang" AND NOT CMAKE_CXX_COMPILER_FRONTEND_VARIANT STREQUAL "MSVC")
  add_compile_options(
    -Wall -Wextra -Wpedantic
    -Wconversion -Wsign-conversion
    -Wshadow -Wold-style-cast -Wcast-qual -Wcast-align
    -Wnon-virtual-dtor -Woverloaded-virtual -Wextra-semi
    -Wformat=2 -Wundef -Wunused
  )
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    add_compile_options(-Wduplicated-cond -Wduplicated-branches -Wlogical-op -Wuseless-cast
                        -Wdouble-promotion)  # clang means double to long double by it too, which is harmless
  endif()
  if(AQUETH_WARNINGS_AS_ERRORS)
    add_compile_options(-Werror)
  endif()
endif()
