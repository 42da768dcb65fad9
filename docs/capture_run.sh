#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# capture_run.sh <file> <folder of the programs> <expected status> <shown line> <command line>
# Runs the command line and writes to the file what somebody at a terminal would see, with a long command line broken
# before its options.
set -euo pipefail

file=$1 programs=$2 expected=$3 shown=$4 line=$5
export XDG_CONFIG_HOME=/nonexistent # no settings of the person who builds the pages
unset AQUETH_SETTINGS
status=0
printed=$(PATH="$programs:$PATH" LC_ALL=C.UTF-8 bash -c "$line" 2>&1) || status=$?
if [[ $status -ne $expected ]]; then
    printf 'exit status %s, not %s: %s\n%s\n' "$status" "$expected" "$line" "$printed" >&2
    exit 1
fi
if ((${#shown} > 95)); then
    shown=${shown// --/ \\$'\n'      --}
fi
printf '$ %s\n%s\n' "$shown" "$printed" >"$file"
