# SPDX-License-Identifier: BSL-1.0
# The outside project of this folder, built as its owner would: against the installed package, against the
# sources, and against sources that CMake would fetch.

# aqueth_add_consumer_test(<name> <CMake option>...)
function(aqueth_add_consumer_test name)
  set(build ${CMAKE_CURRENT_BINARY_DIR}/consumer/${name})
  add_test(NAME consumer.${name} COMMAND ${CMAKE_CTEST_COMMAND}
      --build-and-test ${CMAKE_CURRENT_SOURCE_DIR}/consumer ${build}
      --build-generator ${CMAKE_GENERATOR}
      --build-options -DCMAKE_CXX_COMPILER=${CMAKE_CXX_COMPILER} ${ARGN}
      --test-command ${build}/cellar_book)
  set_tests_properties(consumer.${name} PROPERTIES
      PASS_REGULAR_EXPRESSION "aqueth ${PROJECT_VERSION}: [0-9.]+ L at 20 degC, [0-9.]+ L of pure alcohol")
endfunction()

set(prefix ${CMAKE_CURRENT_BINARY_DIR}/consumer/prefix)
add_test(NAME consumer.install COMMAND ${CMAKE_COMMAND} --install ${PROJECT_BINARY_DIR} --prefix ${prefix})
set_tests_properties(consumer.install PROPERTIES FIXTURES_SETUP installed)

aqueth_add_consumer_test(find_package -DCMAKE_PREFIX_PATH=${prefix})
set_tests_properties(consumer.find_package PROPERTIES FIXTURES_REQUIRED installed)
aqueth_add_consumer_test(add_subdirectory -DAQUETH_SOURCE=${PROJECT_SOURCE_DIR})
aqueth_add_consumer_test(fetch_content -DAQUETH_FETCH=ON -DFETCHCONTENT_FULLY_DISCONNECTED=ON
    -DFETCHCONTENT_SOURCE_DIR_AQUETH=${PROJECT_SOURCE_DIR})
