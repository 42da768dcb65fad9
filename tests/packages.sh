#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Makes the Debian packages, checks them, installs them in a root of their own and uses them there: C and C++ programs by
# pkg-config and CMake, and the program aqueth. The root sees neither the sources nor the network.
#   tests/packages.sh [<build directory>] [--clean-root]
# The build directory (build/packages) may be one that holds the program already. The root is this machine's own file
# system under a layer that is thrown away; with --clean-root it is a Debian with compilers, man and zsh and nothing else,
# made by debootstrap (minutes, network) in build/clean_root, and kept there. Where the system lets no layer be mounted, as in
# some containers, the packages are unpacked in a directory instead and used from there.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source=$PWD
build=$source/build/packages
clean=
for argument; do
    case $argument in
        --clean-root) clean=yes ;;
        -*) echo "usage: tests/packages.sh [<build directory>] [--clean-root]" >&2; exit 2 ;;
        *) mkdir -p "$argument"; build=$(cd "$argument" && pwd) ;;
    esac
done
fail() { printf 'packages.sh: %s\n' "$1" >&2; exit 1; }

echo "Building the packages in $build"
former_prefix=$(sed -n 's/^CMAKE_INSTALL_PREFIX:PATH=//p' "$build/CMakeCache.txt" 2>/dev/null || true)
generator=()
[[ -f $build/CMakeCache.txt ]] || ! command -v ninja >/dev/null || generator=(-G Ninja -DCMAKE_BUILD_TYPE=Release)
mkdir -p "$build"
{
    cmake -S . -B "$build" "${generator[@]}" -DCMAKE_INSTALL_PREFIX=/usr -DAQUETH_C=ON -DAQUETH_PROGRAMS=ON
    cmake --build "$build" --parallel "$(nproc)"
} >"$build/packages.log" || fail "the build failed: $build/packages.log"
rm -f "$build"/*.deb
(cd "$build" && cpack -G DEB) >>"$build/packages.log" 2>&1 || fail "cpack failed: $build/packages.log"
[[ -z $former_prefix ]] || cmake "$build" -DCMAKE_INSTALL_PREFIX="$former_prefix" >>"$build/packages.log"
version=$(sed -n 's/^#define AQUETH_VERSION_[A-Z]* //p' include/aqueth/version.hpp | paste -sd.)
major=${version%%.*}
architecture=$(dpkg --print-architecture)

# --- what the packages say of themselves ------------------------------------------------------------------------------
field() { dpkg-deb --field "$build/$1_${version}_$architecture.deb" "$2"; }
# needs <package> <field> <extended regular expression>
needs() { field "$1" "$2" | grep -E -q -- "$3" || fail "$1 has $2: '$(field "$1" "$2")', without $3"; }
packages=("libaqueth$major" libaqueth-dev aqueth)
for package in "${packages[@]}"; do
    deb=$build/${package}_${version}_$architecture.deb
    [[ -f $deb ]] || fail "no package $deb"
    files=$(dpkg-deb --contents "$deb")
    grep -q "/usr/share/doc/$package/copyright$" <<<"$files" || fail "$package has no licence"
    ! grep -E -v ' \./(usr/.*)?$|->' <<<"$files" || fail "$package has files outside /usr"
    ! grep -E -v '^.{10} root/root' <<<"$files" || fail "$package has files that do not belong to root"
    ! grep -E '^.{5}w|^.{8}w' <<<"$(grep -v '^l' <<<"$files")" || fail "$package has files that others may change"
done
needs "libaqueth$major" Depends 'libc6 \('
needs libaqueth-dev Depends "^libaqueth$major \(= $version\)$"
needs libaqueth-dev Recommends libboost-dev
needs aqueth Depends 'libfmt9'
! field aqueth Depends | grep -q libaqueth || fail "the programs link the library for C"
twice=$(for package in "${packages[@]}"; do
    dpkg-deb --contents "$build/${package}_${version}_$architecture.deb" | awk '!/\/$/ { print $6 }'
done | sort | uniq -d)
[[ -z $twice ]] || fail "in two packages: $twice"
if command -v lintian >/dev/null; then
    # The library is installed by ldconfig.
    lintian --allow-root --fail-on error --suppress-tags lacks-ldconfig-trigger --tag-display-limit 3 \
        --display-level error "$build"/*.deb || fail "lintian"
else
    echo "lintian is not here: left out"
fi

# --- a root of its own --------------------------------------------------------------------------------------------------
lower=/
kind="this machine's system under a layer of its own"
if [[ -n $clean ]]; then
    lower=$source/build/clean_root
    if [[ ! -f $lower/complete ]]; then
        ((EUID == 0)) || fail "debootstrap needs root"
        rm -rf "$lower"
        debootstrap --variant=minbase \
            --include=g++,cmake,make,pkg-config,libboost-dev,libfmt9,man-db,bash-completion,zsh \
            bookworm "$lower" >"$build/debootstrap.log" || fail "debootstrap: $build/debootstrap.log"
        touch "$lower/complete"
    fi
    kind="a Debian of debootstrap"
fi

room=$build/root
rm -rf "$room"
mkdir -p "$room/bring"
cp "$build"/*.deb "$room/bring"
cp -r tests/consumer "$room/bring/consumer"
cp tests/programs/rows_of_readings.sh src/programs/settings_example.toml "$room/bring"
cat >"$room/bring/inside.sh" <<'INSIDE'
set -euo pipefail
version=$1 unpacked=${2:-}
export HOME=/tmp PATH=/usr/sbin:/usr/bin:/sbin:/bin LC_ALL=C.UTF-8
unset PKG_CONFIG_PATH CMAKE_PREFIX_PATH LD_LIBRARY_PATH
fail() { printf 'packages.sh: in the root: %s\n' "$1" >&2; exit 1; }
said() { # said <name> <extended regular expression> <command>...
    local name=$1 expected=$2 line
    shift 2
    line=$("$@" 2>&1 | head -n 1) || true
    grep -E -q -- "$expected" <<<"$line" || fail "$name printed '$line'"
    printf '  %-44s %s\n' "$name" "$line"
}
dilution='^add 3\.[0-9]+ kg of water: [67]\.[0-9]+ L$'
named_so() { find /usr /etc /var -xdev -name '*aqueth*' ! -path '/var/lib/dpkg/*' ! -path '/var/log/*' ! -path '/var/cache/man/*' | sort; }
before=$(named_so)
[[ ! -e /usr/include/aqueth && ! -e /usr/local/include/aqueth ]] || fail "aqueth is there before it is installed"
cd "$(dirname "${BASH_SOURCE[0]}")"
if [[ -z $unpacked ]]; then
    dpkg --path-include="/usr/share/man/*" --install ./*.deb >dpkg.log 2>&1 || fail "dpkg: $(cat dpkg.log)"
else
    for deb in ./*.deb; do dpkg-deb --extract "$deb" "$unpacked"; done
    libraries=$(dirname "$(ls "$unpacked"/usr/lib/*/libaqueth.so)")
    export PATH=$unpacked/usr/bin:$PATH CMAKE_PREFIX_PATH=$unpacked/usr LD_LIBRARY_PATH=$libraries
    export PKG_CONFIG_PATH=$unpacked/usr/share/pkgconfig:$libraries/pkgconfig
fi

gcc -std=c89 -pedantic -Wall -Werror consumer/dilution.c $(pkg-config --cflags --libs libaqueth) -o c
said "C, pkg-config" "$dilution" ./c
g++ -std=c++20 consumer/dilution_typed.cpp $(pkg-config --cflags aqueth) -o typed
said "C++, pkg-config" "$dilution" ./typed
[[ $(pkg-config --modversion aqueth) == "$version" ]] || fail "pkg-config says $(pkg-config --modversion aqueth)"

mkdir all && cat >all/CMakeLists.txt <<'CMAKE'
cmake_minimum_required(VERSION 3.16)
project(all C CXX)
find_package(aqueth 0.1 REQUIRED COMPONENTS typed c)
add_executable(typed ../consumer/dilution_typed.cpp)
target_link_libraries(typed aqueth::aqueth)
add_executable(c ../consumer/dilution.c)
target_link_libraries(c aqueth::c)
CMAKE
for project in all consumer/plain; do
    cmake -S $project -B built/$project >cmake.log 2>&1 && cmake --build built/$project >>cmake.log 2>&1 ||
        fail "CMake: $(cat cmake.log)"
done
said "C++, find_package" "$dilution" built/all/typed
said "C, find_package" "$dilution" built/all/c
said "C++, find_package, component plain" "$dilution" built/consumer/plain/dilution

said "dilute_spirit" 'water' aqueth dilute_spirit --amount '3.50 L' --strength '80 %vol' --temperature '20 C' --target '42 %vol' \
    --water-temperature '15 C'
program=$unpacked/usr/bin/aqueth
! ldd "$program" | grep 'not found' || fail "$program lacks a library"
[[ $(command -v aqueth) == "$program" && $(aqueth --version) == "aqueth $version" ]] || fail "another aqueth is found"
mapfile -t tasks < <(aqueth help | sed -n 's/^  \([a-z]*_[a-z_]*\)  .*/\1/p' | grep -v '^write_')
((${#tasks[@]} > 15)) || fail "aqueth help lists ${#tasks[@]} tasks"
for task in "${tasks[@]}"; do
    aqueth "$task" --help >/dev/null || fail "aqueth $task --help"
done

# Manual pages and completion, as an installed system finds them.
manual=$unpacked/usr/share/man
for page in aqueth "${tasks[@]/#/aqueth-}"; do
    [[ -s $manual/man1/$page.1.gz ]] || fail "no manual page $page"
    if command -v man >/dev/null; then
        MANPATH=$manual man -P cat "$page" >page 2>&1 || fail "man $page: $(cat page)"
        grep -q '^CAUTIONS' page || fail "man $page has no cautions"
    fi
done
if command -v man >/dev/null; then
    said "man aqueth" '^aqueth\(1\)' env MANPATH="$manual" man -P cat aqueth
    said "man aqueth-correct_reading" '^aqueth-correct_reading\(1\)' env MANPATH="$manual" man -P cat aqueth-correct_reading
else
    echo "  man is not here: the pages are only looked for"
fi

export AQUETH_SETTINGS=$PWD/settings_example.toml
bash_file=$unpacked/usr/share/bash-completion/completions/aqueth
completed() { # completed <word>...: what bash offers for the last word
    bash -uc 'source "$1"; shift; eval "$(complete -p aqueth | sed "s/.*-F \([^ ]*\).*/offer() { \1; }/")"
        COMP_WORDS=("$@") COMP_CWORD=$(($# - 1)); offer aqueth "${!#}"; echo "${COMPREPLY[@]}"' bash "$bash_file" "$@"
}
said "bash completes a task" '^correct_reading$' completed aqueth corr
said "bash completes an option" '^--temperature$' completed aqueth correct_reading --te
said "bash completes a value" '^borosilicate$' completed aqueth correct-reading --glass b
said "bash completes an instrument of the settings" '^no7 proof$' completed aqueth correct_reading --stem ''
said "bash completes a file" '^settings_example[.]toml$' completed aqueth correct_reading --settings settings_e
said "bash completes the task of many" '^correct_reading$' completed aqueth many corr
said "bash completes its options" '^--glass$' completed aqueth many correct_reading --rows rows.csv --gl
if [[ -z $unpacked && -f /usr/share/bash-completion/bash_completion ]]; then
    # As an interactive shell finds it: by the name of the command.
    said "bash-completion finds the file" '_aqueth aqueth$' bash -c '
        source /usr/share/bash-completion/bash_completion; _completion_loader aqueth; complete -p aqueth'
fi
zsh_file=$unpacked/usr/share/zsh/vendor-completions/_aqueth
[[ -s $zsh_file ]] || fail "no completion for zsh"
if command -v zsh >/dev/null; then
    zsh -n "$zsh_file" || fail "zsh does not read $zsh_file"
    cat >zsh_asks <<'ZSH'
# zsh_asks <folder of _aqueth or nothing> <line>: what zsh offers at the end of a line, in a terminal of its own
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PS1= PS2= RPS1=; TERM=dumb; [[ -z '$1' ]] || fpath=('$1' \$fpath); autoload -Uz compinit; compinit -u -d ./zcompdump"
zpty -w shell "zstyle ':completion:*' list-separator '|'; LISTMAX=10000; COLUMNS=200; bindkey '^X' list-choices; print rea''dy"
zpty -r shell said '*ready*'
zpty -n -w shell "$2"$'\t\x18'
sleep 1
zpty -n -w shell $'\x15print en''d\n'
zpty -r shell said '*end*end*' || zpty -r shell said
print -r -- "${said//$'\r'/}" | tr '\n' ' ' | sed 's/\x1b[^a-zA-Z]*[a-zA-Z]//g; s/\a//g'
print
ZSH
    asked() { timeout 30 zsh -f zsh_asks "${unpacked:+$(dirname "$zsh_file")}" "$1" | grep -E -o -m 1 -- "$2" | head -n 1; }
    said "zsh completes a task" '^aqueth correct_reading ' asked "aqueth corr" 'aqueth correct_reading '
fi
unset AQUETH_SETTINGS

# A million rows, and the start of a task. The times are printed, not judged: they depend on the machine.
processor_time() { # processor_time <command>...: in seconds
    local TIMEFORMAT='%U %S' time
    time=$({ time "$@" >/dev/null 2>&1; } 2>&1)
    awk '{ print $1 + $2 }' <<<"$time"
}
starts() { for _ in {1..100}; do "$@"; done; }
bash rows_of_readings.sh 1000000 >rows.csv
seconds=$(processor_time aqueth many correct_reading --rows rows.csv --out answered.csv)
refused=$(awk -F, 'NR > 1 && !/,$/' answered.csv | wc -l)
[[ $refused == 10 && $(wc -l <answered.csv) == 1000001 ]] || fail "of a million rows with ten bad ones, $refused are refused"
printf '  %-44s %s\n' "a million rows, ten refused" "$seconds s"
for task in "correct_reading --reading 84%vol --temperature 31C" --version help \
    "correct_reading --reading 84%vol --temperature 31C --stem no7 --settings settings_example.toml"; do
    # shellcheck disable=SC2086
    milliseconds=$(processor_time starts aqueth $task | awk '{ print $1 * 10 }')
    printf '  %-44s %s\n' "aqueth ${task:0:36}" "$milliseconds ms"
done

[[ -z $unpacked ]] || exit 0
dpkg --purge aqueth libaqueth-dev >dpkg.log 2>&1 || fail "dpkg: $(cat dpkg.log)"
said "C, with the development package removed" "$dilution" ./c
dpkg --purge libaqueth"${version%%.*}" >dpkg.log 2>&1 || fail "dpkg: $(cat dpkg.log)"
left=$(comm -13 <(echo "$before") <(named_so))
[[ -z $left ]] || fail "files are left behind: $left"
INSIDE

as_root=()
((EUID == 0)) || as_root=(--map-root-user)
layered() { # layered <script> <argument>...: in name spaces of its own, with $root the layered root
    unshare "${as_root[@]}" --mount --net bash -euc '
        room=$1 lower=$2 source=$3 script=$4
        shift 4
        mkdir -p "$room/layer"
        mount -t tmpfs layer "$room/layer"
        root=$room/layer/root
        mkdir "$room/layer/upper" "$room/layer/work" "$root"
        mount -t overlay overlay -o "lowerdir=$lower,upperdir=$room/layer/upper,workdir=$room/layer/work" "$root"
        cp -r "$room/bring" "$root/bring"
        mount --rbind /dev "$root/dev"
        mount --rbind /proc "$root/proc"
        mount -t tmpfs tmp "$root/tmp"
        [[ ! -d $root$source ]] || mount -t tmpfs hidden "$root$source"
        eval "$script"
    ' bash "$room" "$lower" "$source" "$@"
}
if layered true 2>"$build/layer.log"; then
    echo "Using them in a root of their own: $kind"
    layered 'chroot "$root" bash /bring/inside.sh "$1"' "$version"
elif [[ -n $clean ]]; then
    fail "no layer can be mounted over the clean root: $(cat "$build/layer.log")"
else
    echo "Using them unpacked in a directory, because no layer can be mounted: $(tail -n 1 "$build/layer.log")"
    mkdir "$room/unpacked"
    bash "$room/bring/inside.sh" "$version" "$room/unpacked"
fi
rm -rf "$room"
echo "The packages of version $version are installed and work ($SECONDS s)"
