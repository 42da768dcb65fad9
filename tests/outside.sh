#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Installs the library as a user would and builds the programs of tests/consumer with it: in C, on Windows, for a small
# machine without Boost, with another standard library, in both exception modes. All print the same dilution. What this
# machine has no compiler or emulator for is left out and named.
#   tests/outside.sh [<folder for what is built>]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source=$PWD
work=${1:-build/outside}
mkdir -p "$work"
work=$(cd "$work" && pwd)
prefix=$work/installed
consumer=$source/tests/consumer

passed=0
left_out=()
dilution='^add [0-9.]+ kg of water: [0-9.]+ L$'

has() { command -v "$1" >/dev/null; }

# ran <name> <command>...: the program's first line must be the dilution of the first program
expected=
ran() {
    local name=$1 line
    shift
    line=$("$@" 2>"$work/errors" | head -n 1 | tr -d '\r') || true
    if [[ ! $line =~ $dilution ]] || [[ -n $expected && $line != "$expected" ]]; then
        printf 'outside.sh: %s printed "%s" instead of "%s"\n' "$name" "$line" "$expected" >&2
        cat "$work/errors" >&2
        exit 1
    fi
    expected=$line
    passed=$((passed + 1))
    printf '  %-44s %s\n' "$name" "$line"
}

echo "Installing"
cmake -S . -B "$work/build" -DCMAKE_BUILD_TYPE=RelWithDebInfo -DAQUETH_PROGRAMS=OFF >"$work/log"
cmake --build "$work/build" --parallel 2 >>"$work/log"
rm -rf "$prefix"
cmake --install "$work/build" --prefix "$prefix" --strip >>"$work/log"
if has abidiff; then
    tests/abi.sh "$work/build/src/c/libaqueth.so"
else
    left_out+=("comparison of the binary interface")
fi
export PKG_CONFIG_PATH=$prefix/lib/pkgconfig:$prefix/share/pkgconfig

echo "Programs from the installed package alone"
cd "$work"
g++ -std=c++20 "$consumer/dilution_typed.cpp" -I"$prefix/include" -o typed
ran "C++, typed" ./typed

gcc -std=c89 -pedantic -Wall -Wextra -Werror "$consumer/dilution.c" -I"$prefix/include" -L"$prefix/lib" -laqueth -o c
ran "C89, shared library" env LD_LIBRARY_PATH="$prefix/lib" ./c

if has pkg-config; then
    # shellcheck disable=SC2046  # flags are separate words
    gcc "$consumer/dilution.c" $(pkg-config --cflags --libs libaqueth) -o c
    ran "C, by pkg-config" env LD_LIBRARY_PATH="$prefix/lib" ./c
    # shellcheck disable=SC2046
    g++ -std=c++20 "$consumer/dilution_typed.cpp" $(pkg-config --cflags aqueth) -o typed
    ran "C++, by pkg-config" ./typed
else
    left_out+=("pkg-config")
fi

# Whoever links first must not take the other's error handling away.
g++ -std=c++20 -fno-exceptions -c "$consumer/exception_modes_off.cpp" -I"$prefix/include" -o off.o
g++ -std=c++20 -c "$consumer/exception_modes.cpp" -I"$prefix/include" -o on.o
for order in "off.o on.o" "on.o off.o"; do
    # shellcheck disable=SC2086
    g++ $order -o modes
    ./modes | grep -q '^caught: density: temperature 99 ' || {
        echo "outside.sh: no exception where $order are linked" >&2
        exit 1
    }
    passed=$((passed + 1))
    printf '  %-44s %s\n' "both exception modes, $order" "caught"
done

# The same headers under the number of a later version.
rm -rf later
cp -r "$prefix/include" later
sed -i 's/^\(#define AQUETH_VERSION_MINOR\) .*/\1 99/' later/aqueth/version.hpp
g++ -std=c++20 -DOTHER -c "$consumer/two_versions.cpp" -Ilater -o later.o
g++ -std=c++20 -c "$consumer/two_versions.cpp" -I"$prefix/include" -o now.o
g++ later.o now.o -o versions
versions=$(./versions)
[[ $versions =~ ^([0-9.]+)\ and\ ([0-9.]+):\ same && ${BASH_REMATCH[1]} != "${BASH_REMATCH[2]}" ]] || {
    echo "outside.sh: two versions in one program: $versions" >&2
    exit 1
}
passed=$((passed + 1))
printf '  %-44s %s\n' "two versions in one program" "$versions"

for boost in ON OFF; do
    cmake -S "$consumer/plain" -B "plain_$boost" -DCMAKE_PREFIX_PATH="$prefix" --no-warn-unused-cli -DCMAKE_DISABLE_FIND_PACKAGE_Boost=$boost >log
    cmake --build "plain_$boost" >>log
done
ran "CMake, component plain, Boost not searched for" plain_ON/dilution
cmake -S "$consumer/plain" -B plain_source -DAQUETH_SOURCE="$source" --no-warn-unused-cli -DCMAKE_DISABLE_FIND_PACKAGE_Boost=ON >log
cmake --build plain_source >>log
ran "CMake, a copy of the sources, plain" plain_source/dilution

mkdir -p one_typed/aqueth one_plain/aqueth/plain
"$source/cmake/one_header.sh" aqueth/aqueth.hpp >one_typed/aqueth/aqueth.hpp
g++ -std=c++20 -Wall -Wextra -Werror "$source/src/examples/ten_lines.cpp" -Ione_typed -o one_typed/ten_lines
./one_typed/ten_lines | grep -q '^mass of water  *1.602 kg$'
passed=$((passed + 1))
printf '  %-44s %s\n' "C++, everything as one header" "1.602 kg"
"$source/cmake/one_header.sh" aqueth/plain/plain.hpp >one_plain/aqueth/plain/plain.hpp
g++ -std=c++20 -Wall -Wextra -Werror "$consumer/dilution_plain.cpp" -Ione_plain -o plain
ran "C++, the plain floor as one header" ./plain

if has clang++ && clang++ -std=c++20 -stdlib=libc++ -fsyntax-only -include vector -x c++ /dev/null 2>/dev/null; then
    clang++ -std=c++20 -stdlib=libc++ "$consumer/dilution_typed.cpp" -I"$prefix/include" -o libcxx
    ran "C++, libc++" ./libcxx
else
    left_out+=("libc++")
fi

if has arm-linux-gnueabihf-g++ && has qemu-arm; then
    cmake -S "$consumer/plain" -B arm -DCMAKE_TOOLCHAIN_FILE="$consumer/arm.cmake" -DCMAKE_PREFIX_PATH="$prefix" >log
    cmake --build arm >>log
    ran "32-bit ARM by a toolchain file, no Boost" qemu-arm arm/dilution
    arm-linux-gnueabihf-g++ -std=c++20 -static -fno-exceptions -fno-rtti -DSCALAR=float "$consumer/dilution_plain.cpp" \
        -I"$prefix/include" -o arm_float
    qemu-arm ./arm_float | grep -E -q "$dilution" || exit 1
    # The C interface with its vectors. Boost's headers are the same for every machine.
    mkdir -p boost
    ln -sfn /usr/include/boost boost/boost
    arm-linux-gnueabihf-g++ -std=c++20 -O1 -Wno-psabi -static -c "$source"/src/c/{aqueth,functions,run}.cpp -I"$prefix/include" -Iboost
    arm-linux-gnueabihf-gcc -std=c99 -c "$source/tests/vectors/check_vectors.c" -I"$prefix/include"
    arm-linux-gnueabihf-g++ -static aqueth.o functions.o run.o check_vectors.o -o arm_vectors
    printf '  %-44s ' "32-bit ARM, vectors"
    qemu-arm ./arm_vectors "$source/tests/vectors/vectors.tsv"
else
    left_out+=("32-bit ARM")
fi

if has x86_64-w64-mingw32-g++-posix; then
    mkdir -p boost
    ln -sfn /usr/include/boost boost/boost
    export WINEDEBUG=-all WINEPREFIX=$work/wine
    for order in FIRST LAST; do
        for kind in plain typed; do
            x86_64-w64-mingw32-g++-posix -std=c++20 -DWINDOWS_HEADER_$order -static "$consumer/dilution_$kind.cpp" \
                -I"$prefix/include" -Iboost -o "$kind.exe"
            if has wine; then
                ran "Windows, $kind, windows.h $order" wine "$kind.exe"
            else
                passed=$((passed + 1))
            fi
        done
    done
    # The C interface from its sources.
    mkdir -p windows_c
    (cd windows_c &&
        x86_64-w64-mingw32-g++-posix -std=c++20 -O1 -c "$source"/src/c/*.cpp -I"$prefix/include" -I../boost &&
        x86_64-w64-mingw32-gcc-posix -c "$consumer/dilution.c" -I"$prefix/include")
    x86_64-w64-mingw32-g++-posix -static windows_c/*.o -o c.exe
    has wine && ran "Windows, C" wine c.exe
    has wine || left_out+=("wine: programs for Windows are compiled, not run")
else
    left_out+=("Windows")
fi

echo "$passed programs built and run${left_out[*]:+; left out for lack of tools: ${left_out[*]}}"
