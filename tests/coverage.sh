#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Prints which lines and branches of include/ the tests reach, and stops below 95 % of the lines:
#   cmake --workflow --preset coverage && tests/coverage.sh
# Branches that only throw, and branches of the compiler, are left out.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
gcovr --root . --filter include/ --exclude-throw-branches --exclude-unreachable-branches --print-summary \
    --fail-under-line 95 build/coverage
