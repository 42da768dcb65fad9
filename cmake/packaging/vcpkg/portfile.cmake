# SPDX-License-Identifier: BSL-1.0
# A port for vcpkg. UNTESTED: the tool was not at hand when it was written. Fill in the address and the checksum of the
# source archive, which cmake/release.sh prints, then: vcpkg install aqueth --overlay-ports=<folder of this file>/..
vcpkg_download_distfile(archive
    URLS "https://example.invalid/aqueth-${VERSION}.tar.gz"
    FILENAME "aqueth-${VERSION}.tar.gz"
    SHA512 0)
vcpkg_extract_source_archive(source ARCHIVE "${archive}")

if("c" IN_LIST FEATURES)
  vcpkg_check_linkage(ONLY_DYNAMIC_LIBRARY)
else()
  set(VCPKG_BUILD_TYPE release)  # headers only
endif()
vcpkg_check_features(OUT_FEATURE_OPTIONS options FEATURES typed AQUETH_TYPED c AQUETH_C)
vcpkg_cmake_configure(SOURCE_PATH "${source}"
    OPTIONS ${options} -DAQUETH_PROGRAMS=OFF -DAQUETH_INSTALL=ON -DAQUETH_WARNINGS_AS_ERRORS=OFF)
vcpkg_cmake_install()
vcpkg_cmake_config_fixup(CONFIG_PATH share/cmake/aqueth)
vcpkg_fixup_pkgconfig()
if("c" IN_LIST FEATURES)
  vcpkg_copy_pdbs()
else()
  file(REMOVE_RECURSE "${CURRENT_PACKAGES_DIR}/debug" "${CURRENT_PACKAGES_DIR}/lib")
endif()
file(REMOVE_RECURSE "${CURRENT_PACKAGES_DIR}/debug/include" "${CURRENT_PACKAGES_DIR}/debug/share")
vcpkg_install_copyright(FILE_LIST "${source}/LICENSE")
