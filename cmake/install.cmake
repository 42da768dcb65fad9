# SPDX-License-Identifier: BSL-1.0
# Installs the headers, the package that find_package(aqueth) finds, the files that pkg-config reads, and the programs;
# `cpack -G DEB` makes Debian packages of the same parts.
include(CMakePackageConfigHelpers)

# The headers are the same for every machine, and so is their package.
set(package_dir ${CMAKE_INSTALL_DATADIR}/cmake/aqueth)

install(DIRECTORY include/aqueth DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT dev FILES_MATCHING PATTERN "*.h*")
install(TARGETS aqueth aqueth_plain EXPORT aqueth-targets)
install(EXPORT aqueth-targets NAMESPACE aqueth:: DESTINATION ${package_dir} COMPONENT dev)
configure_package_config_file(cmake/aqueth-config.cmake.in aqueth-config.cmake INSTALL_DESTINATION ${package_dir}
                              PATH_VARS CMAKE_INSTALL_LIBDIR)
# While the major number is 0, a new minor version may change the interface.
write_basic_package_version_file(aqueth-config-version.cmake COMPATIBILITY SameMinorVersion ARCH_INDEPENDENT)
install(FILES ${PROJECT_BINARY_DIR}/aqueth-config.cmake ${PROJECT_BINARY_DIR}/aqueth-config-version.cmake
        DESTINATION ${package_dir} COMPONENT dev)
install(FILES LICENSE CHANGELOG.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT dev)

configure_file(cmake/aqueth.pc.in aqueth.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/aqueth.pc DESTINATION ${CMAKE_INSTALL_DATADIR}/pkgconfig COMPONENT dev)
