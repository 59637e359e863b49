#!/usr/bin/env bash
# Throws new bytes at every reader: run.sh BASINWRIGHT_FUZZ SECONDS [TARGET...]
#
# SECONDS of the processor a target, so that a busy machine takes longer and does no less. Targets run two
# at a time, or AT_ONCE=1. Seeds are the kept findings, the examples and the broken files of the tests;
# CORPUS=FOLDER keeps what grew from them and goes on from there. What breaks a promise is left in
# ./findings and belongs, made small, in tests/fuzz/kept.
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
corpus=${CORPUS:-$work/grown}

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

spent() { # process: whole seconds of the processor so far
  local stat
  read -r stat 2>/dev/null <"/proc/$1/stat" || return 1
  # After the name in brackets: state, then ten fields, then the ticks outside and inside the kernel.
  # shellcheck disable=SC2086  # Fields are words.
  set -- ${stat##*) }
  echo $(((${12} + ${13}) / ticks))
}

throw() { # target
  seeds "$1"
  mkdir -p "$corpus/$1"
  # One input may be long in coming on a starved machine: only hours count as hung.
  BASINWRIGHT_FUZZ=$1 "$program" "$corpus/$1" "$work/$1" -dict="$work/words" -timeout=3600 -report_slow_units=3600 -rss_limit_mb=4096 \
    -max_len=65536 -artifact_prefix="findings/$1-" -print_final_stats=1 >"$work/$1.log" 2>&1 &
  local fuzzer=$! now=0 got runs
  while now=$(spent $fuzzer) && [ "$now" -lt "$seconds" ]; do sleep 1; done
  kill -USR1 $fuzzer 2>/dev/null  # Ends after the input at hand, with status 0.
  wait $fuzzer
  got=$?
  runs=$(grep -o 'number_of_executed_units: [0-9]*' "$work/$1.log" | grep -o '[0-9]*$')
  echo "$(date -u +%F) $1: ${now:-?} of $seconds s, ${runs:-no} runs, $(find "$corpus/$1" -type f | wc -l) inputs, status $got"
  [ $got -eq 0 ] || { grep -v "^ *#" "$work/$1.log" | tail -n 30; return 1; }
}

ticks=$(getconf CLK_TCK)
failed=0
while [ ${#targets[@]} -gt 0 ]; do
  running=()
  for target in "${targets[@]:0:${AT_ONCE:-2}}"; do
    throw "$target" &
    running+=($!)
  done
  for process in "${running[@]}"; do wait "$process" || failed=1; done
  targets=("${targets[@]:${AT_ONCE:-2}}")
done
exit $failed
