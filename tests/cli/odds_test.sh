#!/usr/bin/env bash
# The odds of an example over four real years and forty made ones, worked out again with python3.
set -u
program=$1
source=$2
command -v python3 >/dev/null || { echo "python3 is missing: skipped" >&2; exit 77; }
cd "$source" || exit 1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failed=0
python3 tests/cli/forty_years.py tests/odds/seattle.days.csv >"$folder/forty.csv" || failed=1
# Hundreds of replays of forty years: the plain build's test, not the sanitizers'.
if [ -z "${BASINWRIGHT_SLOW_BUILD:-}" ]; then
  python3 tests/cli/start_weeks.py "$program" "$source" "$folder/forty.csv" || failed=1
fi

expect() { # status, words that must be printed, arguments...
  local status=$1 words=$2 got
  shift 2
  got=$(timeout 300 "$program" "$@" 2>&1)
  local was=$?
  [ "$was" = "$status" ] || { echo "status $was, not $status: basinwright $*" >&2; failed=1; }
  case $got in *"$words"*) ;; *) echo "no \"$words\": basinwright $*" >&2; failed=1 ;; esac
}
days=tests/odds/seattle.days.csv
job=examples/plain-pool.json
# A year is no count of thousands.
expect 0 "  2015  " odds $job --years $days --today 2027-01-04
expect 0 "P90 is withheld" odds $job --years $days --today 2027-01-04
expect 0 "Allow for (met in 8 of 10 of 4 past years)" jobsheet $job --years $days --today 2027-01-04
expect 0 "Full again, aim for" quote $job --years $days --today 2027-01-04
expect 2 "--years is required" odds $job
expect 2 "is no day of the calendar" odds $job --years $days --by 2027-02-30
# Years that end before the job does are no years.
head -200 $days >"$folder/half.csv"
expect 3 "No year of the weather given covers" odds $job --years "$folder/half.csv" --start 2027-06-07 --today 2027-01-04
printf 'date,temp_max_c,temp_min_c\n2020-01-01,9,2\n' >"$folder/dry.csv"
expect 1 "missing-column" odds $job --years "$folder/dry.csv"
printf 'date,temp_max_c,temp_min_c,rain_mm\n2020-01-02,9,2,0\n2020-01-01,9,2,0\n' >"$folder/back.csv"
expect 1 "not-in-order" odds $job --years "$folder/back.csv"
exit $failed
