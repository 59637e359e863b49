#!/usr/bin/env bash
# The JSON Schemas against an outside validator, on every file the project has and on mistakes made of them.
set -u
if ! /usr/bin/python3 -c 'import jsonschema; jsonschema.Draft202012Validator' 2>/dev/null; then
  echo "skipped: python3-jsonschema is not installed"
  exit 77
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
exec timeout 300 /usr/bin/python3 "$(dirname "$0")/schema.py" "$1" "$2" "$work"
