# SPDX-License-Identifier: BSL-1.0
# The packed tarball, installed as its user would, in a project that knows nothing of the sources; and the page.
set(consumer ${CMAKE_CURRENT_BINARY_DIR}/consumer)
set(consumer_source ${CMAKE_CURRENT_LIST_DIR})
set(vectors ${PROJECT_SOURCE_DIR}/tests/vectors/vectors.tsv ${tables})

add_test(NAME javascript.copy COMMAND ${CMAKE_COMMAND} -E copy_directory ${consumer_source} ${consumer})
set_tests_properties(javascript.copy PROPERTIES FIXTURES_SETUP javascript_copied)
add_test(NAME javascript.install
    COMMAND ${AQUETH_NPM} install --offline --no-audit --no-fund --no-save ${tarball} WORKING_DIRECTORY ${consumer})
set_tests_properties(javascript.install PROPERTIES FIXTURES_REQUIRED javascript_copied FIXTURES_SETUP javascript_installed)

function(aqueth_add_javascript_test name)
  add_test(NAME javascript.${name} COMMAND ${ARGN} WORKING_DIRECTORY ${consumer})
  set_tests_properties(javascript.${name} PROPERTIES FIXTURES_REQUIRED javascript_installed)
endfunction()

aqueth_add_javascript_test(node ${AQUETH_NODE} in_node.mjs ${vectors})
aqueth_add_javascript_test(size ${AQUETH_NODE} size.mjs ${tarball} node_modules/aqueth/aqueth.js ${page})
aqueth_add_javascript_test(documented ${AQUETH_NODE} documented.mjs ${PROJECT_SOURCE_DIR}/docs/javascript.md ${PROJECT_SOURCE_DIR}/src/wasm/README.md)
aqueth_add_javascript_test(speed ${AQUETH_NODE} speed.mjs)
set_tests_properties(javascript.speed PROPERTIES RUN_SERIAL ON)
if(AQUETH_TSC)
  aqueth_add_javascript_test(declarations ${AQUETH_TSC} --strict --noEmit --target es2022 --lib es2022,dom
      --module node16 --moduleResolution node16 consumer.ts)
else()
  message(WARNING "Test of the TypeScript declarations skipped: no tsc. cmake/setup_debian.sh javascript installs it.")
endif()
if(AQUETH_CHROMIUM)
  aqueth_add_javascript_test(chromium ${AQUETH_NODE} in_chromium.mjs ${AQUETH_CHROMIUM} ${vectors})
  aqueth_add_javascript_test(page ${AQUETH_NODE} page.mjs ${AQUETH_CHROMIUM} ${page} ${CMAKE_CURRENT_BINARY_DIR}
      ${PROJECT_SOURCE_DIR}/tables/gay_lussac_mouillage.csv)
else()
  message(WARNING "Tests in a browser skipped: no chromium. cmake/setup_debian.sh javascript installs it.")
endif()
