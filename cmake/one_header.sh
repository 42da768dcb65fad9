#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Writes a header of the library and all of aqueth's that it includes as one file, for a release or a project that
# copies its dependencies:
#   cmake/one_header.sh aqueth/aqueth.hpp > aqueth.hpp
#   cmake/one_header.sh aqueth/plain/plain.hpp > aqueth_plain.hpp
set -euo pipefail
include=$(dirname "${BASH_SOURCE[0]}")/../include
if (($# != 1)) || [[ ! -f $include/$1 ]]; then
    echo "usage: one_header.sh aqueth/<header>.hpp" >&2
    exit 2
fi
version=$(sed -n 's/^#define AQUETH_VERSION_[A-Z]* //p' "$include/aqueth/version.hpp" | paste -sd.)
cat <<END
// SPDX-License-Identifier: BSL-1.0
// aqueth $version in one header, made from $1. Not to be edited.
$(sed 's|^|// |; s| $||' "$include/../LICENSE")
#pragma once
END
awk -v include="$include" '
function put(name,    path, line) {
    if (name in seen) return
    seen[name] = 1
    path = include "/" name
    while ((getline line < path) > 0) {
        if (line ~ /^#include <aqueth\//) {
            sub(/^#include </, "", line)
            sub(/>.*$/, "", line)
            put(line)
        } else if (line !~ /^#pragma once/ && line !~ /^\/\/ SPDX-License-Identifier/) {
            print line
        }
    }
    close(path)
}
BEGIN { put(ARGV[1]) }' "$1"
