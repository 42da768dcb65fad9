#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# The binary interface of libaqueth may grow, but a program linked with an older version must run on. Compares a library
# built with -g with the reference of src/c: abi.xml (functions and types, by abidw) and abi_names.txt (names and order
# of arguments, numbers of codes). Also: no symbol but aqueth's own is visible.
#   tests/abi.sh <libaqueth.so>             1 if something was removed, changed, or added and not accepted
#   tests/abi.sh <libaqueth.so> --accept    writes additions into the reference
# A removal or a change needs a new major version: raise it, delete the two files, and run with --accept.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
if (($# < 1)) || [[ ! -f $1 ]] || [[ ${2:---accept} != --accept ]]; then
    echo "usage: tests/abi.sh <libaqueth.so built with -g> [--accept]" >&2
    exit 2
fi
library=$1 accept=${2:-}
reference=$root/src/c/abi.xml names=$root/src/c/abi_names.txt

if [[ $(uname --machine) != x86_64 ]]; then
    echo "abi.sh: the reference is that of x86-64; not checked on $(uname --machine)" >&2
    exit 0
fi
work=$(mktemp --directory)
trap 'rm -rf "$work"' EXIT

fail() { printf 'abi.sh: %s\n' "$1" >&2; exit 1; }

foreign=$(nm --dynamic --defined-only "$library" | awk '{ print $NF }' | grep -v -E '^aqueth_[a-z0-9_]+@@|^AQUETH_[0-9.]+' || true)
[[ -z $foreign ]] || fail "visible symbols that are not aqueth's: $(head -n 5 <<<"$foreign" | paste -sd' ')"
readelf --sections --wide "$library" | grep -q '\.debug_info' || fail "$library has no debug information; compile with -g"

# One prototype, code or numbered member of a structure a line, without comments and line breaks.
perl -0777 -ne '
    s{/\*.*?\*/}{}gs; s/^#.*(\\\n.*)*//gm; s/\s+/ /g;
    while (/typedef enum \w+ \{(.*?)\}/g) { print map { s/^ | $//gr . "\n" } grep /\S/, split /,/, $1 }
    while (/typedef struct \w+ \{(.*?)\} (\w+)/g) { my $n = 0; print map { sprintf "%s member %02d:%s\n", $2, ++$n, s/ $//r } grep /\S/, split /;/, $1 }
    while (/AQUETH_API ([^;]*);/g) { print "$1\n" }
' "$root/include/aqueth/c.h" | LC_ALL=C sort >"$work/names"
(($(wc -l <"$work/names") > 100)) || fail "found no functions in c.h"

# Only types that c.h defines count: what a handle points to is the library's own affair.
mkdir "$work/public"
cp "$root/include/aqueth/c.h" "$work/public"
describe() {
    abidw --headers-dir "$work/public" --drop-private-types --exported-interfaces-only --no-corpus-path \
        --no-comp-dir-path --no-show-locs --no-elf-needed "$library"
}
write() {
    describe >"$reference"
    cp "$work/names" "$names"
}
if [[ ! -f $reference && -n $accept ]]; then
    write
    echo "abi.sh: a new reference of $(wc -l <"$names") functions and codes"
    exit 0
fi
[[ -f $reference && -f $names ]] || fail "no reference: run with --accept"

describe >"$work/library.xml"
compare() { abidiff "$@" "$reference" "$work/library.xml"; }
lost=$(LC_ALL=C comm -23 "$names" "$work/names")
[[ -z $lost ]] || fail "removed or changed since the reference:"$'\n'"$lost"
# A structure that tells its size may grow at its end; the numbered members have shown that nothing else happened.
cat >"$work/growth" <<'GROWTH'
[suppress_type]
type_kind = struct
name_regexp = ^aqueth_
GROWTH
compare --no-added-syms --suppressions "$work/growth" >"$work/changes" || fail "functions or types changed:"$'\n'"$(cat "$work/changes")"

new=$(LC_ALL=C comm -13 "$names" "$work/names")
if [[ -n $new ]] || ! compare >"$work/changes"; then
    [[ -n $accept ]] || fail "added, and not accepted yet; run: tests/abi.sh $library --accept"$'\n'"$new"
    write
    echo "abi.sh: accepted $(wc -l <<<"$new") additions"
fi
echo "abi.sh: $(grep -c '(' "$names") functions, as in the reference"
