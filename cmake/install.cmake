# SPDX-License-Identifier: BSL-1.0
# Installs the headers and the package that find_package(aqueth) finds.
include(CMakePackageConfigHelpers)

# Headers only, so the package is the same for every machine.
set(package_dir ${CMAKE_INSTALL_DATADIR}/cmake/aqueth)

install(TARGETS aqueth EXPORT aqueth-targets FILE_SET HEADERS)
install(EXPORT aqueth-targets NAMESPACE aqueth:: DESTINATION ${package_dir})
configure_package_config_file(cmake/aqueth-config.cmake.in aqueth-config.cmake INSTALL_DESTINATION ${package_dir})
# While the major number is 0, a new minor version may change the interface.
write_basic_package_version_file(aqueth-config-version.cmake COMPATIBILITY SameMinorVersion ARCH_INDEPENDENT)
install(FILES ${PROJECT_BINARY_DIR}/aqueth-config.cmake ${PROJECT_BINARY_DIR}/aqueth-config-version.cmake
        DESTINATION ${package_dir})
install(FILES LICENSE CHANGELOG.md TYPE DOC)
