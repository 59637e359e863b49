#!/usr/bin/env bash
# Throws new bytes at every reader: run.sh BASINWRIGHT_FUZZ SECONDS [TARGET...]
#
# Seeds are the kept findings, the examples and the broken files of the tests. What breaks a promise
# is left in ./findings and belongs, made small, in tests/fuzz/kept.
set -u
program=$(realpath "$1")
seconds=$2
shift 2
source=$(realpath "$(dirname "$0")/../..")
targets=("$@")
[ ${#targets[@]} -gt 0 ] || targets=(job rates weather-json weather-csv weather-epw weather-tmy3 site-log command-line measures)
mkdir -p findings
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Keys, choices and units are the words a random byte would take years to find.
/usr/bin/python3 - "$source" >"$work/words" <<'P'
import re, sys
words = set()
for name in ("docs/jobfile.md", "tests/readers/full-job.json", "tests/readers/full-rates.json"):
    text = open(f"{sys.argv[1]}/{name}", encoding="utf-8").read()
    words |= set(re.findall(r"[`\"]([A-Za-z0-9_ %./-]{2,40})[`\"]", text))
for word in sorted(words):
    print('"' + word.replace("\\", "\\\\") + '"')
P

seeds() { # target
  mkdir -p "$work/$1"
  cp "$source/tests/fuzz/kept/$1/"* "$work/$1/" 2>/dev/null
  case $1 in
    job) cp "$source"/examples/[!.]*.json "$source"/tests/errors/*.json "$source/tests/readers/full-job.json" "$work/$1/"
      rm -f "$work/$1/"*rates.json ;;
    rates) cp "$source"/examples/*.rates.json "$source"/tests/errors/*.rates.json "$source"/tests/readers/*rates.json \
      "$source/src/readers/demonstration_rates.json" "$work/$1/" ;;
    weather-csv) cp "$source"/tests/errors/*.weather.csv "$work/$1/" ;;
    site-log) cp "$source"/tests/errors/*.site.log "$work/$1/" ;;
  esac
}

throw() { # target
  seeds "$1"
  BASINWRIGHT_FUZZ=$1 "$program" "$work/$1" -dict="$work/words" -max_total_time="$seconds" -timeout=60 \
    -rss_limit_mb=4096 -max_len=65536 -artifact_prefix="findings/$1-" -print_final_stats=1 >"$work/$1.log" 2>&1
  local got=$?
  local runs
  runs=$(grep -o 'number_of_executed_units: [0-9]*' "$work/$1.log" | grep -o '[0-9]*$')
  echo "$1: ${runs:-no} runs, status $got"
  [ $got -eq 0 ] || { grep -v "^ *#" "$work/$1.log" | tail -n 20; return 1; }
}

# Two at a time.
failed=0
while [ ${#targets[@]} -gt 0 ]; do
  throw "${targets[0]}" &
  first=$!
  second=
  if [ ${#targets[@]} -gt 1 ]; then
    throw "${targets[1]}" &
    second=$!
  fi
  wait $first || failed=1
  [ -z "$second" ] || wait $second || failed=1
  targets=("${targets[@]:2}")
done
exit $failed
