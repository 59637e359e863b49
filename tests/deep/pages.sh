#!/usr/bin/env bash
# Every page of every example in a real browser; PDF and PNG of each stay in FOLDER to be looked at.
#   tests/deep/pages.sh build/basinwright . FOLDER [EXAMPLE...]
# Wants chromium, poppler-utils, node and npm; brings the packages of tests/deep/npm into FOLDER.
set -euo pipefail
program=$(realpath "$1") source=$(realpath "$2")
mkdir -p "$3" && cd "$3"
shift 3
for tool in chromium pdftoppm node npm; do
  command -v "$tool" >/dev/null || { echo "SKIPPED: $tool is not installed" >&2; exit 77; }
done
. "$source/tests/deep/npm.sh"
bring_packages "$source"
dry="$source/examples/plain-pool.weather.csv"
pages=()
page() { # example, paper, name, arguments...
  local file=$PWD/$1.$3.$2.html paper=$2
  shift 3
  "$program" "$@" --format html --paper "$paper" --quiet --output "$file" || [ $? = 3 ]
  pages+=("$file")
}
for example in "$source"/examples/*.json; do
  grep -q '"basinwright_rates"' "$example" && continue
  name=$(basename "$example" .json)
  [ $# = 0 ] || [[ " $* " == *" $name "* ]] || continue
  given=(--today 2027-01-04)
  [ -f "$source/examples/$name.rates.json" ] && given+=(--rates "$source/examples/$name.rates.json")
  weather=()
  [ -f "$source/examples/$name.weather.csv" ] && weather=(--weather "$source/examples/$name.weather.csv")
  log=$name.log
  rm -f "$log"
  "$program" record "$example" "${given[@]}" --log "$log" --now 2027-12-30T18:00 started task=drain at=2027-05-03T08:30 --quiet >/dev/null
  "$program" record "$example" "${given[@]}" --log "$log" --now 2027-12-30T18:00 finished task=drain at=2027-05-03T15:00 --quiet >/dev/null
  for paper in A4 letter; do
    for command in jobsheet quote takeoff checklist handover explain; do
      page "$name" $paper $command $command "$example" "${given[@]}" "${weather[@]}"
    done
    page "$name" $paper formula explain "$example" quantities.kits "${given[@]}"
    page "$name" $paper compare compare "$example" --set /coating/coats=3 "${given[@]}"
    page "$name" $paper odds odds "$example" --years "$dry" "${given[@]}"
    for command in replan today coating-record; do
      page "$name" $paper $command $command "$example" --log "$log" --now 2027-05-03T18:00 "${given[@]}" "${weather[@]}"
    done
  done
done
status=0
node "$source/tests/deep/pages.mjs" "$PWD" "${pages[@]}" || status=1
for page in "${pages[@]}"; do
  pdf=${page%.html}.pdf
  # ISO 216 and ANSI Y14.1, in points; sheets that lie across have them the other way round.
  wanted='595|596|841|842'
  [[ $page == *letter* ]] && wanted='612|792'
  sizes=$(pdfinfo -l 999 "$pdf" | sed -n 's/^Page.*size: *\([0-9]*\)[0-9.]* x \([0-9]*\).*/\1\n\2/p' | sort -u)
  echo "$sizes" | grep -vqE "^($wanted|594)$" && { echo "wrong $pdf: pages of $sizes pt" >&2; status=1; }
  pdftoppm -r 60 -png "$pdf" "${pdf%.pdf}"
done
for drawing in takeoff jobsheet; do
  for example in "$source"/examples/*.json; do
    grep -q '"basinwright_rates"' "$example" && continue
    name=$(basename "$example" .json) svg=$(basename "$example" .json).$drawing.svg
    given=(--today 2027-01-04)
    [ -f "$source/examples/$name.rates.json" ] && given+=(--rates "$source/examples/$name.rates.json")
    "$program" $drawing "$example" "${given[@]}" --format svg --quiet --output "$svg" || [ $? = 3 ]
    xmllint --noout --nonet "$svg" || { echo "wrong $svg" >&2; status=1; }
  done
done
exit $status
