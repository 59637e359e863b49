#!/usr/bin/env bash
# Long runs against outside programs: money against Python's decimal, packs against GLPK, the chance
# of running short against exact fractions. Results and dates stand in docs/deep-runs.md.
# Usage: oracles.sh BUILD [MONEY_CASES [PACK_CASES [CHANCE_CASES]]]
set -euo pipefail
build=$1
run() { # program, test, cases
  echo "$(date -u +%F) $1, $3 cases: $2"
  BASINWRIGHT_ORACLE_CASES=$3 "$build/tests/$1" "$2" | tail -n 2
}
run test_money "money agrees with the decimal module of Python" "${2:-1000000}"
run test_purchase "the cheapest packs agree with an integer-programming solver" "${3:-5000}"
run test_coverage "the chance of running short agrees with exact fractions" "${4:-100000}"
