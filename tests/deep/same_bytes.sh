#!/usr/bin/env bash
# The same bytes from every build: same_bytes.sh PROGRAM PROGRAM... (by other compilers, -O0 and -O3).
# Each page of each example in each format, and the first program under other locales, time zones,
# masks, folders and thread counts.
set -u
source=$(realpath "$(dirname "$0")/../..")
first=$(realpath "$1")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0

pages() { # program, folder
  local program=$1 to=$2 page format name
  mkdir -p "$to"
  for job in "$source"/examples/*.json; do
    case $job in *.rates.json) continue ;; esac
    name=$(basename "$job" .json)
    local rates=()
    [ -e "$source/examples/$name.rates.json" ] && rates=(--rates "$source/examples/$name.rates.json")
    for page in jobsheet quote takeoff checklist handover; do
      for format in text markdown html json csv svg ics; do
        "$program" $page "$job" "${rates[@]}" --today 2027-01-04 --format $format >"$to/$name.$page.$format" 2>&1 </dev/null
      done
    done
    "$program" jobsheet "$job" "${rates[@]}" --units us --today 2027-01-04 >"$to/$name.us" 2>&1 </dev/null
    "$program" explain "$job" "${rates[@]}" >"$to/$name.explain" 2>&1 </dev/null
  done
  for file in "$source"/tests/errors/*.json; do
    "$program" check "$file" >"$to/$(basename "$file").check" 2>&1 </dev/null
  done
  "$program" jobsheet "$source/examples/plain-pool.json" --weather "$source/examples/plain-pool.weather.csv" \
    --today 2027-01-04 >"$to/weather" 2>&1 </dev/null
  "$program" batch "$source"/examples/*[!s].json --today 2027-01-04 --jobs "${JOBS:-1}" >"$to/batch" 2>/dev/null </dev/null
}

same() { # what
  diff -rq "$work/one" "$work/other" || { echo "DIFFERS: $1" >&2; failed=1; }
  rm -rf "$work/other"
}

pages "$first" "$work/one"
echo "$(find "$work/one" -type f | wc -l) pages"
shift
for program in "$@"; do
  pages "$(realpath "$program")" "$work/other"
  same "$program"
done
(umask 077; cd /; LC_ALL=C TZ=Pacific/Auckland JOBS=2 pages "$first" "$work/other")
same "locale C, another time zone, mask, folder, two threads"
LC_ALL=C.UTF-8 LANG=de_DE.UTF-8 TZ=America/St_Johns JOBS=7 COLUMNS=80 pages "$first" "$work/other"
same "another locale, seven threads"
exit $failed
