#!/usr/bin/env bash
# --weather as a user meets it: which commands take it, how often, and what a bad file does.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
example="$source/examples/plain-pool.weather.csv"
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
status() { # wanted, arguments...
  local wanted=$1
  shift
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $* ($(head -n 1 err))"
}

status 0 check "$job" --weather "$example"
[ ! -s out ] || fail "check finds something in the example: $(head -n 1 out)"
status 0 check --weather "$example" "$job"
for command in jobsheet takeoff explain; do
  timeout 60 "$program" $command "$job" --today 2027-01-04 --weather "$example" >out 2>err
  [ $? -ne 2 ] || fail "$command does not take --weather"
  ! grep -q 'our fault' err || fail "$command fails with the example: $(cat err)"
done

# Two files, both read: the problem of the second has its place and its line.
printf 'time,air_temp_c,rh_pct,rain_mm\n2027-05-03T08:00,14,60,0\n2027-05-03T09:00,mild,60,0\n' >bad.csv
status 1 check "$job" --weather "$example" --weather bad.csv
grep -q '^bad.csv:3:18: error\[not-a-number\]' out || fail "no place in the second weather file"
grep -q '^2027-05-03T09:00,mild,60,0$' out || fail "the line of the second weather file is not shown"
status 1 jobsheet "$job" --today 2027-01-04 --weather bad.csv
[ ! -s out ] || fail "a bad weather file leaves something on standard output"
printf '{"pool": 3}' >bad.json
status 1 check bad.json --weather bad.csv
grep -q '^bad.json:' out || fail "the job's problems are lost beside the weather's"
grep -q '^bad.csv:' out || fail "the weather's problems are lost beside the job's"

# A gap is a warning, and an error when warnings are.
printf 'time,air_temp_c,rh_pct,rain_mm\n2027-05-03T08:00,14,60,0\n2027-05-03T12:00,14,60,0\n' >gap.csv
status 0 check "$job" --weather gap.csv
grep -q 'gap.csv:3:1: warning\[missing-hours\]' out || fail "a gap is not said"
status 1 check "$job" --weather gap.csv --strict
status 0 check "$job" --weather gap.csv --quiet
[ ! -s out ] || fail "--quiet still warns"

timeout 60 "$program" check "$job" --weather - <gap.csv >out 2>err
grep -q '^standard input:3:1: ' out || fail "weather is not read from standard input"
status 4 check "$job" --weather missing.csv
status 4 check "$job" --weather "$work"
status 2 check "$job" --weather
cp "$example" mine.csv
status 2 jobsheet "$job" --today 2027-01-04 --weather mine.csv --output mine.csv
cmp -s "$example" mine.csv || fail "an input was written over"
exit $failed
