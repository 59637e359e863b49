#!/usr/bin/env bash
# Slips of the hand: each gets the nearest right word. And what is printed to try can be tried as it stands.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
cp "$source/examples/plain-pool.json" pool.json
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
meant() { # status, what is suggested, words...
  local wanted=$1 text=$2
  shift 2
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $*"
  cat out err | grep -qF -- "$text" || fail "$* does not say: $text ($(cat out err | head -n 3))"
}
changed() { sed "s|$1|$2|" pool.json >changed.json; cmp -s pool.json changed.json && fail "nothing to change: $1"; }

meant 2 'Did you mean "jobsheet"?' jobshet pool.json
meant 2 'Did you mean "schema"?' shema
meant 2 'Did you mean "--weather"?' jobsheet pool.json --wether hours.csv
meant 2 'Did you mean "--output"?' takeoff pool.json --ouput=plan.svg
meant 2 'Did you mean "markdown"?' jobsheet pool.json --format markdwon
meant 2 'Did you mean "letter"?' jobsheet pool.json --paper=leter
meant 2 'Did you mean "--output my-pool.json"?' new my-pool.json
meant 2 'Did you mean "--output basinwright.1"?' man-page --quiet basinwright.1
meant 2 'not "svg"' quote pool.json --format svg
meant 2 'quantities.etch.acid_l' explain pool.json quantities.etch.acid_kg
meant 2 'purchases.coating.left_over' explain pool.json purchases.coatng.left_over
meant 2 'labour.degrease.total' explain pool.json labour.degrese.total
changed '"tap_flow"' '"tapflow"'
meant 1 'Did you mean "tap_flow"?' check changed.json
changed '"untouched"' '"untuched"'
meant 1 'Did you mean "untouched"?' check changed.json
changed '"9 m"' '"9 metrs"'
meant 1 'did you mean metre?' check changed.json
changed '"25 L/min"' '"25 L/mn"'
meant 1 'did you mean min?' check changed.json
changed '"120 mm"' '"120 mmm"'
meant 1 'did you mean mm?' check changed.json
name=$(/usr/bin/python3 -c "
import json
print(next(iter(json.load(open('$source/src/readers/demonstration_rates.json'))['coating_systems'])))")
changed '"coats": 2' "\"coats\": 2, \"system\": \"${name%?}x\""
meant 1 "Did you mean \"$name\"?" check changed.json

[ -n "${BASINWRIGHT_SLOW_BUILD:-}" ] && exit $failed

# Every example of every help, run where its files are: in the plain build.
rm -f changed.json out err pool.json
timeout 60 "$program" >first
[ "$(grep -c '^  basinwright' first)" -eq 3 ] || fail "not three examples to try: $(cat first)"
head -n 3 first | grep -q '^Try:$' || fail "the first thing printed is not what to try"
"$program" --help | head -n 5 | grep -q '^Try:$' || fail "--help does not lead with examples"
cp "$source/src/readers/demonstration_rates.json" rates.json
cp "$source/examples/pool-and-spa.json" spa.json
cp "$source/examples/plain-pool.weather.csv" hours.csv
cp "$source/tests/odds/seattle.days.csv" years.csv
: >site.log
for command in "" $("$program" --help | sed -n '/^Subcommands:/,$p' | awk '/^  [a-z]/ { print $1 }'); do
  "$program" $command --help | sed -n 's/^  basinwright /basinwright /p' | head -n 3
done >examples
cat first | sed -n 's/^  basinwright /basinwright /p' | cat - examples >all
[ "$(wc -l <all)" -gt 20 ] || fail "few examples: $(wc -l <all)"
basinwright() { timeout 120 "$program" "$@"; }
while read -r line; do
  eval "$line --quiet" >out 2>err </dev/null
  got=$?
  case $got in
    0 | 3) ;;
    2) grep -q 'quiet\|is there already' err || fail "status 2: $line: $(head -n 2 err)" ;;
    *) fail "status $got: $line: $(head -n 2 err)" ;;
  esac
done <all
exit $failed
