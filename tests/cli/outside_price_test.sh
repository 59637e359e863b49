#!/usr/bin/env bash
# Three examples priced again from the tape up, by hand formulas and exact decimals.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python=/usr/bin/python3
if ! $python -c 'import decimal' 2>/dev/null; then
  echo "SKIPPED: the outside price needs python3" >&2
  exit 77
fi
timeout 120 $python "$source/tests/cli/outside_price.py" "$program" "$source" || exit 1
# It can tell: a day more on site is found.
mkdir -p "$work/tests/cli" && cp -r "$source/examples" "$work" && mkdir -p "$work/src" && cp -r "$source/src/readers" "$work/src"
sed 's/^plain-pool,days,7/plain-pool,days,8/' "$source/tests/cli/outside_price.csv" >"$work/tests/cli/outside_price.csv"
if timeout 120 $python "$source/tests/cli/outside_price.py" "$program" "$work" >/dev/null; then
  echo "FAILED: a wrong day on site goes unnoticed" >&2
  exit 1
fi
