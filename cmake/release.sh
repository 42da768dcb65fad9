#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Makes all files of a release, from a commit without changes, into build/release_files/<version>:
#   cmake/release.sh [--trial]
# 1. The version has its dated section in CHANGELOG.md, with "Numbers that moved".
# 2. .ci/run passes, and the sizes of tests/sizes.sh meet their goals.
# 3. Source archive, one-header files, Debian packages (tried in a clean root), documentation with its tag file, report
#    of sizes, and the checksums of them all.
# It tags nothing and sends nothing; it prints the commands for that. A trial leaves out the gate and the documentation,
# and accepts an unfinished changelog and missed goals.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
gate=yes
if [[ ${1:-} == --trial ]]; then
    gate=
elif (($# > 0)); then
    echo "usage: cmake/release.sh [--trial]" >&2
    exit 2
fi
fail() { printf 'release.sh: %s\n' "$1" >&2; exit 1; }
step() { printf '\n=== %s (%s s)\n' "$1" "$SECONDS"; }

step "Version and changelog"
version=$(sed -n 's/^#define AQUETH_VERSION_[A-Z]* //p' include/aqueth/version.hpp | paste -sd.)
[[ $version =~ ^[0-9]+\.[0-9]+\.[0-9]+$ ]] || fail "include/aqueth/version.hpp gives the version '$version'"
[[ -z $(git status --porcelain) ]] || fail "there are changes that are not committed"
! git rev-parse --quiet --verify "refs/tags/v$version" >/dev/null || fail "v$version is released already"
section=$(awk -v version="$version" '/^## /{ inside = $2 == version } inside' CHANGELOG.md)
[[ -n $section ]] || fail "CHANGELOG.md has no section '## $version'"
grep -q '^## .* ([0-9]\{4\}-[0-9][0-9]-[0-9][0-9])$' <<<"$section" || {
    [[ -z $gate ]] || fail "the section of $version in CHANGELOG.md has no date: '$(head -n 1 <<<"$section")'"
    echo "no date yet: $(head -n 1 <<<"$section")"
}
grep -q 'Numbers that moved' <<<"$section" || {
    [[ -z $gate ]] || fail "the section of $version in CHANGELOG.md does not say which numbers moved"
    echo "does not say which numbers moved"
}
recipe=cmake/packaging/vcpkg/vcpkg.json
grep -q "\"version\": \"$version\"" "$recipe" || fail "$recipe has another version"

if [[ -n $gate ]]; then
    step "The gate"
    .ci/run
fi

files=$PWD/build/release_files/$version
rm -rf "$files"
mkdir -p "$files"

step "Sizes"
tests/sizes.sh >"$files/size_report.txt" || { [[ -z $gate ]] || fail "a goal is missed: $files/size_report.txt"; }

step "Source archive"
git archive --format=tar.gz --prefix="aqueth-$version/" --output="$files/aqueth-$version.tar.gz" HEAD

step "One-header files"
cmake/one_header.sh aqueth/aqueth.hpp >"$files/aqueth.hpp"
cmake/one_header.sh aqueth/plain/plain.hpp >"$files/aqueth_plain.hpp"
for header in aqueth aqueth_plain; do
    echo "#include \"$header.hpp\"" | g++ -std=c++20 -Wall -Wextra -Werror -fsyntax-only -I"$files" -x c++ - ||
        fail "$header.hpp does not compile"
done

step "Debian packages"
tests/packages.sh build/packages $(command -v debootstrap >/dev/null && echo --clean-root)
cp build/packages/*.deb "$files"

if [[ -n $gate ]]; then
    step "Documentation"  # which the gate has built
    cp build/main/docs/aqueth.tag "$files"
    tar --create --gzip --file="$files/aqueth-$version-docs.tar.gz" --directory=build/main/docs \
        --sort=name --mtime="@$(git log -1 --format=%ct)" --owner=0 --group=0 --numeric-owner html
fi

step "Checksums"
(cd "$files" && sha256sum -- * >SHA256SUMS)
cat "$files/SHA256SUMS"
echo "SHA512 of the source archive, for the recipes: $(sha512sum <"$files/aqueth-$version.tar.gz" | cut -d' ' -f1)"
cat <<END

Release $version is in $files. To publish it:
  cp $files/size_report.txt docs/
  git tag v$version && git push origin v$version
END
