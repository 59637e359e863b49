#!/usr/bin/env bash
# Every page in every format: the same numbers, hostile names whole and harmless (documents.py says how).
set -u
[ -x /usr/bin/python3 ] || { echo "SKIPPED: python3 is not installed" >&2; exit 77; }
exec /usr/bin/python3 "$2/tests/cli/documents.py" "$1" "$2"
