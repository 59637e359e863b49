#!/usr/bin/env bash
# The calendar of every example, read by python3-icalendar, libical and ical.js: all three find the same.
#   tests/deep/calendars.sh build/basinwright . FOLDER [EXAMPLE...]
# Wants python3-icalendar, libical-dev, node and npm; brings the packages of tests/deep/npm into FOLDER. CFLAGS and LDFLAGS reach the compiler.
set -euo pipefail
program=$(realpath "$1") source=$(realpath "$2")
mkdir -p "$3" && cd "$3"
shift 3
skip() { echo "SKIPPED: $*" >&2; exit 77; }
/usr/bin/python3 -c 'import icalendar' 2>/dev/null || skip "python3-icalendar is not installed"
command -v npm >/dev/null || skip "npm is not installed"
# shellcheck disable=SC2086  # Flags are words.
cc ${CFLAGS:-} -o calendar_back "$source/tests/deep/calendar_back.c" ${LDFLAGS:-} -lical 2>cc.log || skip "libical-dev is not installed"
. "$source/tests/deep/npm.sh"
bring_packages "$source"
status=0 entries=0
for example in "$source"/examples/*.json; do
  grep -q '"basinwright_rates"' "$example" && continue
  name=$(basename "$example" .json)
  [ $# = 0 ] || [[ " $* " == *" $name "* ]] || continue
  given=(--today 2027-01-04 --quiet)
  [ -f "$source/examples/$name.rates.json" ] && given+=(--rates "$source/examples/$name.rates.json")
  [ -f "$source/examples/$name.weather.csv" ] && given+=(--weather "$source/examples/$name.weather.csv")
  for command in jobsheet checklist; do
    "$program" $command "$example" "${given[@]}" --format ics --output "$name.ics" || [ $? = 3 ]
    /usr/bin/python3 "$source/tests/render/calendar_back.py" "$name.ics" >one
    ./calendar_back "$name.ics" >two
    node "$source/tests/deep/calendar_back.mjs" "$PWD" "$name.ics" >three
    entries=$((entries + $(grep -c 'UID' one)))
    cmp one two && cmp one three || { echo "wrong $name $command" >&2; status=1; }
  done
done
echo "entries $entries"
exit $status
