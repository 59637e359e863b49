#!/usr/bin/env bash
# By hand: which lines and branches of src the tests run. Builds with g++ -O0 and counters, runs everything ctest
# knows, and fails under 95 % of the lines or 85 % of the branches; what is excused stands in docs/reliability.md.
#   tests/deep/coverage.sh BUILD_TO_MAKE    (gcovr of Debian; some ten minutes of the processor)
set -euo pipefail
source=$(realpath "$(dirname "$0")/../..")
build=$1
command -v gcovr >/dev/null || { echo "SKIPPED: gcovr is not installed" >&2; exit 77; }
# Counting by atoms: `batch` runs on threads.
CXX=g++ cmake -S "$source" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O0 \
  -DCMAKE_CXX_FLAGS="--coverage -fprofile-update=atomic" >/dev/null
cmake --build "$build" --target basinwright_tests
find "$build" -name '*.gcda' -delete
ctest --test-dir "$build" --no-tests=error --timeout 6000 -j2 -E "${LEFT_OUT:-^$}" >"$build/ctest.log" || tail -n 30 "$build/ctest.log"
# The rooms alone: what a test program compiles is no part of src.
gcovr --root "$source" --filter "$source/src/" --filter "$source/include/" --exclude-throw-branches \
  --exclude-unreachable-branches --json "$build/coverage.json" --txt "$build/coverage.txt" --print-summary \
  --fail-under-line 95 --fail-under-branch 85 "$build/CMakeFiles"
