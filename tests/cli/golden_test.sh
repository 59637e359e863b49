#!/usr/bin/env bash
# Pages of the examples against what was read line by line and accepted. UPDATE_GOLDENS=1 rewrites them.
set -u
program=$1
source=$2
failed=0
cd "$source" || exit 1
check() { # name, arguments...
  local golden="tests/golden/$1" got
  shift
  got=$(timeout 60 "$program" "$@" --quiet 2>&1)
  if [ "${UPDATE_GOLDENS:-}" = 1 ]; then
    printf '%s\n' "$got" >"$golden"
  elif ! diff -u "$golden" <(printf '%s\n' "$got") >&2; then
    echo "differs from $golden: basinwright $*" >&2
    failed=1
  fi
}
for example in examples/*.json; do
  grep -q '"basinwright_rates"' "$example" && continue
  name=$(basename "$example" .json)
  rates=()
  [ -f "examples/$name.rates.json" ] && rates=(--rates "examples/$name.rates.json")
  check "$name.txt" jobsheet "$example" --today 2027-01-04 "${rates[@]}"
  check "$name.json" jobsheet "$example" --today 2027-01-04 --format json "${rates[@]}"
  check "$name.md" jobsheet "$example" --today 2027-01-04 --format markdown "${rates[@]}"
  if [ -f "examples/$name.weather.csv" ]; then
    sky=(--weather "examples/$name.weather.csv")
    check "$name.weather.txt" jobsheet "$example" --today 2027-01-04 "${rates[@]}" "${sky[@]}"
    check "$name.weather.json" jobsheet "$example" --today 2027-01-04 --format json "${rates[@]}" "${sky[@]}"
    check "$name.weather.md" jobsheet "$example" --today 2027-01-04 --format markdown "${rates[@]}" "${sky[@]}"
  fi
  check "$name.takeoff.txt" takeoff "$example" --units us "${rates[@]}"
  check "$name.quote.txt" quote "$example" --today 2027-01-04 "${rates[@]}"
  check "$name.checklist.txt" checklist "$example" --today 2027-01-04 "${rates[@]}"
  check "$name.handover.txt" handover "$example" --today 2027-01-04 "${rates[@]}"
  check "$name.ics" jobsheet "$example" --today 2027-01-04 --format ics "${rates[@]}"
  coats=3
  [ "$name" = l-shape-us ] && coats=2 # it has three as it stands
  check "$name.compare.txt" compare "$example" --set "/coating/coats=$coats" --today 2027-01-04 "${rates[@]}"
  check "$name.explain.txt" explain "$example" quantities.kits --today 2027-01-04 "${rates[@]}"
done
# One page each as a browser gets it, and the programme's drawing over a weather file.
plain=examples/plain-pool.json
check plain-pool.quote.html quote "$plain" --today 2027-01-04 --format html
check plain-pool.programme.svg jobsheet "$plain" --today 2027-01-04 --format svg --weather examples/plain-pool.weather.csv
# What the README shows is what the program prints: every line of its excerpt stands in the golden.
while IFS= read -r line; do
  [ "$line" = "..." ] && continue
  grep -qxF -- "$line" tests/golden/plain-pool.txt || { echo "README shows a line the program does not print: $line" >&2; failed=1; }
done < <(awk '/^```text$/ {inside = 1; next} /^```$/ {inside = 0} inside' README.md)
exit $failed
