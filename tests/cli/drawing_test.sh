#!/usr/bin/env bash
# The drawing as a user asks for it: which commands draw, on which paper, and what is refused.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
status() { # wanted, arguments...
  local wanted=$1
  shift
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $* ($(head -n 1 err))"
}

status 0 takeoff "$job" --today 2027-01-04 --format svg
grep -q '^<?xml' out || fail "no SVG on standard output"
grep -q 'viewBox="0 0 210.000 297.000"' out || fail "not A4 when no paper is named"
grep -q 'BW-0001' out || fail "no job number on the drawing"
grep -q 'class="outline"' out || fail "no outline"
cp out first.svg
status 0 takeoff "$job" --today 2027-01-04 --format svg --paper A4 --output second.svg
cmp -s first.svg second.svg || fail "the same drawing twice has other bytes"
status 0 takeoff "$job" --today 2027-01-04 --format svg --paper letter --units us
grep -q 'viewBox="0 0 215.900 279.400"' out || fail "letter is not letter"
grep -q '29 ft 6 in' out || fail "9 m are not 29 ft 6 in"
status 0 takeoff "$job" --today 2027-01-04
grep -q '^Drawing' out || fail "the text page does not say what the drawing shows"
status 0 takeoff "$job" --today 2027-01-04 --format json
grep -qi 'drawing' out && fail "the drawing stands in the JSON"
status 0 jobsheet "$job" --today 2027-01-04 --format svg
grep -q 'viewBox="0 0 297.000 210.000"' out || fail "the programme does not lie across A4"
status 2 quote "$job" --format svg
status 2 explain "$job" --format svg
status 2 takeoff "$job" --format svg --paper A5
if [ -x /usr/bin/xmllint ]; then
  /usr/bin/xmllint --nonet --noout first.svg || fail "xmllint refuses the drawing"
else
  echo "SKIPPED: xmllint is not installed, so the drawing is not parsed" >&2
fi
exit $failed
