#!/usr/bin/env bash
# Every page of every example in a real browser; PDF and PNG of each stay in FOLDER to be looked at.
#   tests/deep/pages.sh build/basinwright . FOLDER
# Wants chromium, poppler-utils, node and npm; brings html-validate, axe-core and puppeteer-core into FOLDER.
set -euo pipefail
program=$(realpath "$1") source=$(realpath "$2")
mkdir -p "$3" && cd "$3"
for tool in chromium pdftoppm node npm; do
  command -v "$tool" >/dev/null || { echo "SKIPPED: $tool is not installed" >&2; exit 77; }
done
[ -d node_modules/axe-core ] || npm install --no-audit --no-fund html-validate axe-core puppeteer-core >/dev/null
pages=()
for example in "$source"/examples/*.json; do
  grep -q '"basinwright_rates"' "$example" && continue
  name=$(basename "$example" .json)
  rates=()
  [ -f "$source/examples/$name.rates.json" ] && rates=(--rates "$source/examples/$name.rates.json")
  weather=()
  [ -f "$source/examples/$name.weather.csv" ] && weather=(--weather "$source/examples/$name.weather.csv")
  for paper in A4 letter; do
    for command in jobsheet quote takeoff checklist handover; do
      page=$PWD/$name.$command.$paper.html
      "$program" "$command" "$example" --today 2027-01-04 --format html --paper $paper --quiet "${rates[@]}" "${weather[@]}" \
        --output "$page" || [ $? = 3 ]
      pages+=("$page")
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
exit $status
