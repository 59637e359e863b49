#!/usr/bin/env bash
# Atomic weights and molar masses against an outside table; skipped, and says so, where it is absent.
set -u
program=$1
source=$2
python=/usr/bin/python3
reference=$(dirname "$program")/tests/basinwright_reference
if ! $python -c 'import periodictable' 2>/dev/null; then
  echo "SKIPPED: the outside check of atomic weights needs the package python3-periodictable" >&2
  exit 77
fi
exec timeout 300 $python "$source/tests/cli/outside_weights.py" "$reference"
