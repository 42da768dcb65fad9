#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# deb.sh <cpack> <build> <folder>: makes the Debian package of the module, shows its fields, unpacks it in <folder>/root.
set -euo pipefail
cpack=$1 build=$2 folder=$3
rm -rf "$folder"
mkdir -p "$folder"
"$cpack" -G DEB --config "$build/CPackConfig.cmake" -B "$folder" -D CPACK_COMPONENTS_ALL=python
dpkg-deb --info "$folder"/python3-aqueth_*.deb
dpkg-deb --extract "$folder"/python3-aqueth_*.deb "$folder/root"
dpkg-deb --field "$folder"/python3-aqueth_*.deb Depends | grep --quiet python3-numpy
