#!/usr/bin/env bash
# `new`: every outline it knows in both unit systems, what it refuses, and the questions on a terminal.
set -u
exec timeout 300 /usr/bin/python3 "$(dirname "$0")/new.py" "$1" "$2"
