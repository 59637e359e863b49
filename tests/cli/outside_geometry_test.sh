#!/usr/bin/env bash
# The reference shells against an outside geometry library; skipped, and says so, where it is absent.
set -u
program=$1
source=$2
python=/usr/bin/python3
if ! $python -c 'import shapely' 2>/dev/null; then
  echo "SKIPPED: the outside geometry check needs the package python3-shapely" >&2
  exit 77
fi
exec timeout 300 $python "$source/tests/cli/outside_geometry.py" "$program" "$source/tests/reference/shells.json"
