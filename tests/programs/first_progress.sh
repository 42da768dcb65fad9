#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# first_progress.sh <extended regular expression> <command line>
# Prints the first line that matches of what a command shows on a terminal, then ends the command: its whole work would
# take minutes under a sanitizer. Ends with status 1 if no line matches.
set -eu
shown=$(mktemp)
SHELL=/bin/bash script --quiet --flush --command "$2" "$shown" </dev/null &>/dev/null &
command=$!
trap 'kill "$command" 2>/dev/null || true; wait "$command" 2>/dev/null || true; rm "$shown"' EXIT
# Behind the line that script(1) writes first.
first() { tail --lines=+2 "$shown" | tr '\r' '\n' | grep --extended-regexp --max-count 1 -- "$1"; }
until first "$1"; do
    if ! kill -0 "$command" 2>/dev/null; then
        first "$1" # it may have come in the meantime
        exit
    fi
    sleep 0.05
done
