#!/usr/bin/env bash
# Every command of the manual, the tutorial and the README, run as it is printed; and their pictures, made again.
# UPDATE_GOLDENS=1 keeps the pictures.
set -u
if [ -n "${BASINWRIGHT_SLOW_BUILD:-}" ]; then
  echo "skipped: the plain build runs every command of the manual"
  exit 77
fi
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }

# The commands in the fenced blocks of a page.
commands() { awk '/^```sh$/ { inside = 1; next } /^```$/ { inside = 0 } inside' "$1"; }

# Runs a page's commands in a folder of its own; today's no-go and a stop are results.
run_page() {
  local page=$1 name
  name=$(basename "$page" .md)
  mkdir "$work/$name" && cd "$work/$name" || exit 1
  cp "$source/examples/plain-pool.weather.csv" hours.csv
  cp "$source/src/readers/demonstration_rates.json" rates.json
  cp "$source/tests/odds/seattle.days.csv" years.csv
  commands "$page" | grep -v 'apt-get\|cmake' | sed 's|^build/||' >commands.sh
  [ "$(grep -c '^basinwright' commands.sh)" -ge "$2" ] || fail "$name has few commands"
  {
    printf 'basinwright() { timeout 120 "%s" "$@" >out 2>err </dev/stdin; local got=$?\n' "$program"
    printf '  case $got in 0 | 3) ;; *) echo "FAILED: %s: status $got: basinwright $*: $(head -n 2 err)"; failed=1 ;; esac; }\n' "$name"
    printf 'failed=0\n'
    cat commands.sh
    printf 'exit $failed\n'
  } >run.sh
  bash run.sh </dev/null || failed=1
}
picture() { # made, kept
  if [ "${UPDATE_GOLDENS:-}" = 1 ]; then cp "$1" "$source/docs/$2"; fi
  cmp -s "$1" "$source/docs/$2" || fail "docs/$2 is not what the program draws"
}

run_page "$source/docs/manual.md" 25
run_page "$source/docs/tutorial.md" 15
picture tutorial-plan.svg tutorial-plan.svg
picture tutorial-programme.svg tutorial-programme.svg
run_page "$source/README.md" 2
"$program" takeoff "$source/examples/plain-pool.json" --format svg >plan.svg
picture plan.svg plan.svg
# Every command has a row in the README and a line in the manual.
for command in $("$program" --help | sed -n '/^Subcommands:/,$p' | awk '/^  [a-z]/ { print $1 }'); do
  grep -q "^| .*\`basinwright $command\b" "$source/README.md" || fail "the README has no row for $command"
  grep -q "^basinwright $command\b" "$source/docs/manual.md" || fail "the manual never runs $command"
done
exit $failed
