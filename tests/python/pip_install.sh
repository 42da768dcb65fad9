#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# pip_install.sh <python> <sources> <folder>: installs the module into <folder>/installed, from a copy of the sources
# and without a network.
set -euo pipefail
python=$1 sources=$2 folder=$3
rm -rf "$folder"
mkdir -p "$folder/sources/src"
cp -r "$sources/include" "$folder/sources/"
cp -r "$sources/src/c" "$sources/src/python" "$folder/sources/src/"
"$python" -m pip install --no-build-isolation --no-index --no-deps --quiet --target "$folder/installed" "$folder/sources/src/python"
ls "$folder/installed"
