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

# Where the sun is known the programme shows the nights: the day's light by the sunrise equation (centre of the sun 0.833 degrees
# under the horizon) at 51.5 degrees north, its declination from 23.44 degrees and the days since the solstice.
sed 's|"tap_flow"|"latitude": 51.5, "longitude": 0, "utc_offset": 0, "tap_flow"|' "$job" >sun.json
status 0 jobsheet sun.json --today 2027-01-04 --format svg
/usr/bin/python3 - <<'P' || fail "the nights of the programme are wrong"
import math, re
boxes = [tuple(map(float, found)) for found in re.findall(r'class="night" d="M([\d.]+) [\d.]+L([\d.]+) ', open("out").read())]
assert "pattern id=\"sheet-shade\"" in open("out").read() and len(boxes) > 20 and len(boxes) % 2 == 0, boxes
width = boxes[2][0] - boxes[0][0]
for day in range(len(boxes) // 2):
    (dawn_from, dawn), (dusk, dusk_to) = boxes[2 * day:2 * day + 2]
    assert abs(dusk_to - dawn_from - width) < 0.01, (day, width)
    since = 123 + day - 80  # from 20 March to 3 May, the first day
    declination = math.asin(math.sin(math.radians(23.44)) * math.sin(2 * math.pi * since / 365.25))
    north = math.radians(51.5)
    half = math.acos((math.sin(math.radians(-0.833)) - math.sin(north) * math.sin(declination)) /
                     (math.cos(north) * math.cos(declination)))
    light = (dusk - dawn) / width * 24
    assert abs(light - math.degrees(half) / 7.5) < 0.15, (day, light, math.degrees(half) / 7.5)
    # Noon of the sun within the quarter hour that the equation of time comes to in May.
    assert abs((dawn + dusk) / 2 - dawn_from - width / 2) / width * 24 < 0.1, (day, dawn, dusk)
P
status 0 jobsheet "$job" --today 2027-01-04 --format svg
grep -q 'class="night"' out && fail "nights without a place on the earth"
status 2 quote "$job" --format svg
status 2 explain "$job" --format svg
status 2 takeoff "$job" --format svg --paper A5
if [ -x /usr/bin/xmllint ]; then
  /usr/bin/xmllint --nonet --noout first.svg || fail "xmllint refuses the drawing"
else
  echo "SKIPPED: xmllint is not installed, so the drawing is not parsed" >&2
fi
exit $failed
