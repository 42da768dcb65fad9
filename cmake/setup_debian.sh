#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Installs what aqueth needs from Debian 12 (or a newer relative of it), as root or through sudo:
#   cmake/setup_debian.sh [demo|test|bindings|javascript|firmware|all]
# demo: to build and run the program (only drawing needs gnuplot as well); test: gnuplot and the tests as well;
# bindings: Python and SQLite; javascript: the npm package, the page and a browser; firmware: compiler (2 GB) and
# emulator for a microcontroller; all: demo and test,
# clang, benchmarks, documentation, formatting, coverage, compilers and emulators for other processors and Windows, and
# the checks of packages.
# tests/outside.sh runs programs for Windows if wine is there; before a release install wine, debootstrap, lintian and the profile firmware.
# Installed packages stay as they are; if nothing is missing, the script uses neither the network nor sudo.
set -euo pipefail

demo=(g++ cmake ninja-build libboost-dev libcli11-dev libeigen3-dev libfmt-dev nlohmann-json3-dev
    libtomlplusplus-dev)
test=(libgtest-dev gnuplot-nox python3 python3-jsonschema groff-base libtbb-dev)
bindings=(python3-dev python3-numpy python3-setuptools python3-wheel python3-pip python3-pandas python3-distributed mypy dpkg-dev file
    libsqlite3-dev sqlite3)
firmware=(gcc-arm-none-eabi libnewlib-arm-none-eabi libstdc++-arm-none-eabi-newlib qemu-system-arm)
all=(clang clang-format doxygen libbenchmark-dev gcovr g++-i686-linux-gnu g++-s390x-linux-gnu qemu-user
    pkg-config python3 libc++-dev libc++abi-dev g++-arm-linux-gnueabihf g++-mingw-w64-x86-64-posix abigail-tools)

javascript=(clang-14 lld binaryen wasi-libc libc++-14-dev-wasm32 libc++abi-14-dev-wasm32 libclang-rt-14-dev-wasm32 python3
    node-typescript chromium)
command -v npm >/dev/null || javascript+=(nodejs npm) # a newer Node of the machine brings its own npm

profile=${1:-all}
case $profile in
    demo) wanted=("${demo[@]}") ;;
    test) wanted=("${demo[@]}" "${test[@]}") ;;
    bindings) wanted=("${demo[@]}" "${bindings[@]}") ;;
    javascript) wanted=("${demo[@]}" "${javascript[@]}") ;;
    firmware) wanted=("${demo[@]}" "${firmware[@]}") ;;
    all) wanted=("${demo[@]}" "${test[@]}" "${all[@]}") ;;
    *)
        echo "setup_debian.sh: unknown profile '$profile': demo, test, bindings, javascript, firmware or all" >&2
        exit 2
        ;;
esac

if ! command -v apt-get >/dev/null; then
    echo "setup_debian.sh: this is no Debian; please install by other means: ${wanted[*]}" >&2
    exit 1
fi

missing=()
for package in "${wanted[@]}"; do
    status=$(dpkg-query --show --showformat '${db:Status-Status}' "$package" 2>/dev/null || true)
    [[ $status == installed* ]] || missing+=("$package")
done
if ((${#missing[@]} == 0)); then
    exit 0
fi

as_root=()
if ((EUID != 0)); then
    if ! command -v sudo >/dev/null; then
        echo "setup_debian.sh: neither root nor sudo; ask an administrator to install: ${missing[*]}" >&2
        exit 1
    fi
    as_root=(sudo)
fi

echo "setup_debian.sh: installing ${missing[*]}"
"${as_root[@]}" apt-get update -q -o Acquire::Retries=3
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -q -y --no-install-recommends -o Acquire::Retries=3 "${missing[@]}"
