#!/usr/bin/env bash
# Re-plans from real log files: sections, halves of them, lost windows, an expired etch, the calendar (replan.py says how).
set -u
[ -x /usr/bin/python3 ] || { echo "SKIPPED: python3 is not installed" >&2; exit 77; }
exec /usr/bin/python3 "$2/tests/cli/replan.py" "$1" "$2"
