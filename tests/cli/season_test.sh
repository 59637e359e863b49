#!/usr/bin/env bash
# A season as a user books it: pages, calendars, what is wrong with a crews file.
set -u
program=$1
source=$2
cd "$source" || exit 1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failed=0

expect() { # status, words that must be printed, arguments...
  local status=$1 words=$2 got
  shift 2
  got=$(timeout 300 "$program" "$@" 2>&1)
  local was=$?
  [ "$was" = "$status" ] || { echo "status $was, not $status: basinwright $*" >&2; failed=1; }
  case $got in *"$words"*) ;; *) echo "no \"$words\": basinwright $*" >&2; failed=1 ;; esac
}
jobs="examples/season/jobs/s-01.json examples/season/jobs/s-03.json"
season="batch --programme --today 2027-03-15"

# All problems of the file at once, each with its place and what to do.
cat >"$folder/bad.json" <<'BAD'
{ "crews": [{ "name": "North", "painters": 4, "people": 3 }, { "name": "North" }],
  "travel": { "usual": "soon" },
  "jobs": [{ "job": "S-99", "priority": 12 }, { "job": "S-01", "crew": "Nort", "promise": "2027-05-01" }] }
BAD
for words in "bad.json:1:" "more painters than people" "two crews \"North\"" "\"soon\"" "\"S-99\" is no job of this season" \
  "\"Nort\" is no crew of this file" "Did you mean \"North\"" "unknown-key"; do
  expect 1 "$words" $season --crews "$folder/bad.json" $jobs
done
expect 4 "none.json" $season --crews "$folder/none.json" $jobs
expect 2 "requires" batch --programme $jobs
expect 2 "with --programme any page" batch --format html $jobs
expect 2 "takes a job and a file" $season --crews "$folder/bad.json" --log S-01 $jobs
[ "$failed" = 0 ] || exit 1

# Booking is the plain build's test: sanitizers would take minutes for it.
[ -z "${BASINWRIGHT_SLOW_BUILD:-}" ] || exit 0
cat >"$folder/crews.json" <<'CREWS'
{ "crews": [{ "name": "North", "people": 3, "painters": 2 }],
  "jobs": [{ "job": "S-01", "promised": "2027-03-30" }, { "job": "s-03.json", "promised": "2027-06-30" }] }
CREWS
run="$season --crews $folder/crews.json --output-dir $folder/out"
expect 0 "1 of 2 jobs late" $run $jobs
one=$("$program" $run --format json $jobs | sha256sum)
two=$("$program" $run --format json $jobs | sha256sum)
[ "$one" = "$two" ] || { echo "two runs differ" >&2; failed=1; }
[ -s "$folder/out/1-North.ics" ] && [ -s "$folder/out/season.svg" ] || { echo "files are missing" >&2; failed=1; }
grep -q "BEGIN:VEVENT" "$folder/out/1-North.ics" || { echo "a calendar without entries" >&2; failed=1; }
# Nobody is in two places at once: read back from the table by python, not by the program.
if command -v python3 >/dev/null; then
  "$program" $run --format json $jobs | python3 -c '
import json, sys
days = json.load(sys.stdin)["days"]
assert days
for a in days:
    for b in days:
        if a is not b and a["crew"] == b["crew"] and a["job"] != b["job"]:
            assert a["to"] <= b["from"] or b["to"] <= a["from"], (a, b)
' || { echo "a crew is in two places at once" >&2; failed=1; }
fi
# Jobs that have begun, and past years.
if [ -x /usr/bin/python3 ]; then
  /usr/bin/python3 tests/cli/season.py "$program" "$source" >&2 || failed=1
else
  echo "skipped: python3 is not installed, so no season with logs or years is read" >&2
fi
exit $failed
