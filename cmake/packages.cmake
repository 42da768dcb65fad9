# SPDX-License-Identifier: BSL-1.0
# Debian packages, made by `cpack -G DEB` in a build directory: libaqueth-dev (headers),
# libaqueth0 (the shared library for C) and aqueth-programs.
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

set(CPACK_DEBIAN_DEV_PACKAGE_NAME libaqueth-dev)
set(CPACK_DEBIAN_DEV_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEV_PACKAGE_ARCHITECTURE all)
set(CPACK_DEBIAN_DEV_PACKAGE_RECOMMENDS libboost-dev)
set(CPACK_COMPONENT_DEV_DESCRIPTION "${PROJECT_DESCRIPTION}: headers for C++")

if(AQUETH_C)
  list(APPEND CPACK_COMPONENTS_ALL lib)
  set(CPACK_DEBIAN_LIB_PACKAGE_NAME libaqueth${PROJECT_VERSION_MAJOR})
  set(CPACK_DEBIAN_LIB_PACKAGE_SECTION libs)
  set(CPACK_COMPONENT_LIB_DESCRIPTION "${PROJECT_DESCRIPTION}: shared library for C")
  # The development package holds the link to the library, so it is of the library's architecture.
  unset(CPACK_DEBIAN_DEV_PACKAGE_ARCHITECTURE)
  set(CPACK_DEBIAN_DEV_PACKAGE_DEPENDS "libaqueth${PROJECT_VERSION_MAJOR} (= ${PROJECT_VERSION})")
endif()
if(AQUETH_PROGRAMS)
  list(APPEND CPACK_COMPONENTS_ALL programs)
  set(CPACK_DEBIAN_PROGRAMS_PACKAGE_NAME aqueth-programs)
  set(CPACK_DEBIAN_PROGRAMS_PACKAGE_SECTION science)
  set(CPACK_COMPONENT_PROGRAMS_DESCRIPTION "${PROJECT_DESCRIPTION}: programs for the distiller")
endif()

include(CPack)
