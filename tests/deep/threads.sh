#!/usr/bin/env bash
# `batch` on several threads under a race detector: ThreadSanitizer on a build of its own, and Helgrind
# on the ordinary program. Results and dates stand in docs/deep-runs.md.
# Usage: threads.sh SOURCE [BUILD_TO_MAKE [PROGRAM]]; without PROGRAM no Helgrind
set -euo pipefail
source=$1
build=${2:-/tmp/basinwright-threads}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
/usr/bin/python3 "$source/tests/bench/job_stream.py" 60 7 >"$work/jobs.ndjson"
weather="$source/examples/plain-pool.weather.csv"
run() { # command...: 0 and 3 are statuses of jobs
  "$@" >"$work/out" 2>"$work/err" || [ $? -eq 3 ] || { cat "$work/err"; return 1; }
}

if [ -n "${3:-}" ]; then
  head -n 8 "$work/jobs.ndjson" >"$work/few.ndjson"
  run valgrind --tool=helgrind --error-exitcode=99 "$3" batch "$work/few.ndjson" --today 2027-01-04 --jobs 3
  run valgrind --tool=helgrind --error-exitcode=99 "$3" batch "$work/few.ndjson" --today 2027-01-04 --jobs 3 \
    --weather "$weather"
  echo "Helgrind: nothing"
fi
CC=clang CXX=clang++ cmake -S "$source" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release \
  -DBASINWRIGHT_SANITIZE=thread -DBASINWRIGHT_TESTS=OFF >/dev/null
cmake --build "$build" --target basinwright
run "$build/basinwright" batch "$work/jobs.ndjson" --today 2027-01-04 --jobs 8
run "$build/basinwright" batch "$work/jobs.ndjson" --today 2027-01-04 --jobs 8 --weather "$weather"
run "$build/basinwright" batch "$work/jobs.ndjson" --today 2027-01-04 --jobs 8 --output-dir "$work/sheets" \
  --document quote
echo "ThreadSanitizer: nothing"
