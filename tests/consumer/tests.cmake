# SPDX-License-Identifier: BSL-1.0
# The outside projects of this folder, built as their owners would: against the installed package and against the
# sources. tests/outside.sh builds more of them, for other machines.

# aqueth_add_consumer_test(<name> <folder> <program> <what it prints> [<CMake option>...])
function(aqueth_add_consumer_test name folder program printed)
  set(build ${CMAKE_CURRENT_BINARY_DIR}/consumer/${name})
  add_test(NAME consumer.${name} COMMAND ${CMAKE_CTEST_COMMAND}
      --build-and-test ${CMAKE_CURRENT_SOURCE_DIR}/consumer/${folder} ${build}
      --build-generator ${CMAKE_GENERATOR}
      --build-options -DCMAKE_C_COMPILER=${CMAKE_C_COMPILER} -DCMAKE_CXX_COMPILER=${CMAKE_CXX_COMPILER} ${ARGN}
      --test-command ${build}/${program})
  set_tests_properties(consumer.${name} PROPERTIES PASS_REGULAR_EXPRESSION "${printed}")
endfunction()

set(prefix ${CMAKE_CURRENT_BINARY_DIR}/consumer/prefix)
add_test(NAME consumer.install COMMAND ${CMAKE_COMMAND} --install ${PROJECT_BINARY_DIR} --prefix ${prefix})
set_tests_properties(consumer.install PROPERTIES FIXTURES_SETUP installed)

set(litres "aqueth ${PROJECT_VERSION}: [0-9.]+ L at 20 degC, [0-9.]+ L of pure alcohol")
aqueth_add_consumer_test(find_package . cellar_book ${litres} -DCMAKE_PREFIX_PATH=${prefix})
aqueth_add_consumer_test(add_subdirectory . cellar_book ${litres} -DAQUETH_SOURCE=${PROJECT_SOURCE_DIR})
aqueth_add_consumer_test(fetch_content . cellar_book ${litres}
    -DAQUETH_FETCHED=ON -DFETCHCONTENT_SOURCE_DIR_AQUETH=${PROJECT_SOURCE_DIR})

set(dilution "add [0-9.]+ kg of water: [0-9.]+ L")
aqueth_add_consumer_test(plain plain dilution ${dilution} -DCMAKE_PREFIX_PATH=${prefix}
    -DCMAKE_DISABLE_FIND_PACKAGE_Boost=ON)
set_tests_properties(consumer.find_package consumer.plain PROPERTIES FIXTURES_REQUIRED installed)
if(AQUETH_C)
  aqueth_add_consumer_test(c c dilution ${dilution} -DCMAKE_PREFIX_PATH=${prefix})
  set_tests_properties(consumer.c PROPERTIES FIXTURES_REQUIRED installed)
endif()
