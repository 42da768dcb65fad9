#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# check_symbols.sh <nm> <image>...: fails if an image holds heap, stdio, exceptions, run-time types or constructors.
set -euo pipefail

nm=$1
shift
forbidden=' (_?malloc|_?free|_?realloc|_?calloc|_?sbrk|_?abort|[a-z_]*printf|[a-z_]*puts|fwrite|_write|__sinit|__sfp)(_r)?$| _?_(Zn[wa]|Zd[la]|ZTI|ZTS|ZTV|GLOBAL__sub_I)|__cxa_|_Unwind_|__gxx_personality'
for image in "$@"; do
    symbols=$("$nm" "$image")
    if ! grep --quiet ' main$' <<<"$symbols"; then
        echo "$image: no symbol main, so this checks nothing" >&2
        exit 1
    fi
    if grep --extended-regexp "$forbidden" <<<"$symbols" >&2; then
        echo "$image holds what firmware of ours does without" >&2
        exit 1
    fi
done
