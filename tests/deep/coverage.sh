#!/usr/bin/env bash
# By hand: which lines and branches of src the tests run. Builds with g++ -O0 and counters, runs everything ctest
# knows, and fails under 95 % of the lines or 85 % of the branches; what is excused stands in docs/reliability.md.
#   tests/deep/coverage.sh BUILD_TO_MAKE    (gcovr of Debian; half an hour on two idle cores once it is built)
set -euo pipefail
source=$(realpath "$(dirname "$0")/../..")
build=$1
command -v gcovr >/dev/null || { echo "SKIPPED: gcovr is not installed" >&2; exit 77; }
# Counting by atoms: `batch` runs on threads.
CXX=g++ cmake -S "$source" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O0 \
  -DCMAKE_CXX_FLAGS="--coverage -fprofile-update=atomic" >/dev/null
cmake --build "$build" --target basinwright_tests
find "$build" -name '*.gcda' -delete
# A test program in one process: one process a case would do little but write counts.
find "$build/tests" -maxdepth 1 -name 'test_*' -type f -executable -print0 |
  xargs -0 -P 2 -I{} sh -c 'timeout 3000 "$1" >"$1.said" 2>&1 || echo "FAILED: $1" >&2' - {}
ctest --test-dir "$build" --no-tests=error --timeout 3000 -j2 -R '^(cli|fuzz|reference):' >"$build/ctest.log" ||
  tail -n 30 "$build/ctest.log"
# The rooms alone: what a test program compiles is no part of src.
gcovr --root "$source" --filter "$source/src/" --filter "$source/include/" --exclude-throw-branches \
  --exclude-unreachable-branches --json "$build/coverage.json" --txt "$build/coverage.txt" --print-summary \
  --fail-under-line 95 --fail-under-branch 85 "$build/CMakeFiles"
