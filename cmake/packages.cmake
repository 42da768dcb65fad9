# SPDX-License-Identifier: BSL-1.0
# Debian packages, made by `cpack -G DEB` in a build directory: libaqueth-dev (headers),
# libaqueth0 (the shared library for C), python3-aqueth and aqueth. Configure with
# -DCMAKE_INSTALL_PREFIX=/usr, which also decides the directory of libraries. tests/packages.sh checks the packages.
set(CPACK_PACKAGE_NAME aqueth)
set(CPACK_PACKAGE_VENDOR "aqueth developers")
set(CPACK_PACKAGE_CONTACT "aqueth developers <developers@aqueth.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES TRUE)
set(CPACK_COMPONENTS_ALL dev)
set(CPACK_COMPONENTS_GROUPING IGNORE)
set(CPACK_DEB_COMPONENT_INSTALL TRUE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS TRUE)
# Programs linked with the library need this version of it or a later one.
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS TRUE)
set(CPACK_DEBIAN_PACKAGE_GENERATE_SHLIBS_POLICY ">=")

# Every Debian package has its licence and its changelog.
string(TIMESTAMP date "%a, %d %b %Y %H:%M:%S +0000" UTC)
file(WRITE "${PROJECT_BINARY_DIR}/debian/changelog"
    "aqueth (${PROJECT_VERSION}) unstable; urgency=medium\n\n  * See CHANGELOG.md of the sources.\n\n"
    " -- ${CPACK_PACKAGE_CONTACT}  ${date}\n")
execute_process(COMMAND gzip -9 -n -f "${PROJECT_BINARY_DIR}/debian/changelog")
# aqueth_document_package(<component> <package>)
function(aqueth_document_package component package)
  install(FILES "${PROJECT_SOURCE_DIR}/LICENSE" DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/${package}" RENAME copyright
          COMPONENT ${component} EXCLUDE_FROM_ALL)
  install(FILES "${PROJECT_BINARY_DIR}/debian/changelog.gz" DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/${package}"
          COMPONENT ${component} EXCLUDE_FROM_ALL)
endfunction()

set(CPACK_DEBIAN_DEV_PACKAGE_NAME libaqueth-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_ARCHITECTURE all)
set(CPACK_DEBIAN_DEV_PACKAGE_RECOMMENDS libboost-dev)
set(CPACK_COMPONENT_DEV_DESCRIPTION "${PROJECT_DESCRIPTION}: headers and link library")
aqueth_document_package(dev libaqueth-dev)

if(AQUETH_C)
  list(APPEND CPACK_COMPONENTS_ALL lib)
  set(CPACK_DEBIAN_LIB_PACKAGE_NAME libaqueth${PROJECT_VERSION_MAJOR})
  set(CPACK_DEBIAN_LIB_PACKAGE_SECTION libs)
  aqueth_document_package(lib libaqueth${PROJECT_VERSION_MAJOR})
  set(CPACK_COMPONENT_LIB_DESCRIPTION "${PROJECT_DESCRIPTION}: shared library for C")
  # The development package holds the link to the library, so it is of the library's architecture.
  unset(CPACK_DEBIAN_DEV_PACKAGE_ARCHITECTURE)
  set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libaqueth${PROJECT_VERSION_MAJOR} (= ${PROJECT_VERSION})")
endif()
if(AQUETH_PYTHON)
  find_package(Python3 COMPONENTS Interpreter)
endif()
if(AQUETH_PYTHON AND Python3_FOUND)
  list(APPEND CPACK_COMPONENTS_ALL python)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_NAME python3-aqueth)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_SECTION python)
  set(CPACK_COMPONENT_PYTHON_DESCRIPTION "${PROJECT_DESCRIPTION}: module for Python")
  # The module is compiled for one version of Python.
  math(EXPR next_minor "${Python3_VERSION_MINOR} + 1")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_DEPENDS
      "python3 (>= 3.${Python3_VERSION_MINOR}), python3 (<< 3.${next_minor}), python3-numpy")
  set(CPACK_DEBIAN_PYTHON_PACKAGE_SUGGESTS "python3-pandas, python3-distributed")
endif()
if(TARGET aqueth_sqlite)
  list(APPEND CPACK_COMPONENTS_ALL sqlite)
  set(CPACK_DEBIAN_SQLITE_PACKAGE_NAME sqlite-aqueth)
  set(CPACK_DEBIAN_SQLITE_PACKAGE_SECTION database)
  set(CPACK_DEBIAN_SQLITE_PACKAGE_DEPENDS "libsqlite3-0 (>= 3.31)")
  set(CPACK_DEBIAN_SQLITE_PACKAGE_RECOMMENDS sqlite3)
  set(CPACK_COMPONENT_SQLITE_DESCRIPTION "${PROJECT_DESCRIPTION}: loadable extension for SQLite")
endif()
if(AQUETH_PROGRAMS)
  list(APPEND CPACK_COMPONENTS_ALL programs)
  set(CPACK_DEBIAN_PROGRAMS_PACKAGE_NAME aqueth)
  set(CPACK_DEBIAN_PROGRAMS_PACKAGE_SECTION science)
  set(CPACK_DEBIAN_PROGRAMS_PACKAGE_SUGGESTS "gnuplot-nox, bash-completion")
  aqueth_document_package(programs aqueth)
  set(CPACK_COMPONENT_PROGRAMS_DESCRIPTION "${PROJECT_DESCRIPTION}: program for the distiller")
endif()

include(CPack)
