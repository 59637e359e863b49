#!/usr/bin/env bash
# By hand, after files came or went: each file of src and tests stands alone, with what it includes itself and with every
# warning an error, names that hide others among them. A build compiles the files of a room together and would not see that.
#   tests/deep/each_alone.sh FOLDER_TO_MAKE    (clang, ninja; half an hour of the processor)
set -euo pipefail
source=$(realpath "$(dirname "$0")/../..")
build=$1
CC=clang CXX=clang++ cmake -S "$source" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DBASINWRIGHT_TOGETHER=OFF \
  -DBASINWRIGHT_PRECOMPILE=OFF -DBASINWRIGHT_WERROR=ON >/dev/null
/usr/bin/python3 - "$build/compile_commands.json" <<'P' | tr '\n' '\0' | xargs -0 -P 2 -I{} bash -c "{}"
import json, re, sys
for entry in json.load(open(sys.argv[1], encoding="utf-8")):
    if "/generated/" not in entry["file"]:
        command = re.sub(r"^\S*ccache | -o \S+", "", entry["command"])
        print(f"cd {entry['directory']} && {command} -fsyntax-only")
P
