#!/usr/bin/env python3
"""By hand: no memory from the n-th allocation of a whole job sheet on, for each n in turn (the check tries sixty).

    allocations.py PROGRAM SOURCE FOLDER [FIRST [LAST]]

Each run must end with the words of "out of memory" and status 70 (4 where a file could not be written) and leave the
old file as it was, or come through with the very sheet. Before the program's own start only the loader and the
language's reserve for exceptions allocate, and those may end as they like. Needs cc.
"""
import collections
import os
import pathlib
import subprocess
import sys

START = 50  # Allocations of the loader and the language before the program begins; tests/cli/faults_test.sh has the same.


def main():
    program, source, work = (pathlib.Path(path).resolve() for path in sys.argv[1:4])
    work.mkdir(parents=True, exist_ok=True)
    library = work / "nth.so"
    subprocess.run(["cc", "-shared", "-fPIC", "-O1", "-o", library, source / "tests/cli/nth_allocation.c", "-ldl"], check=True)
    sheet, errors = work / "sheet.txt", work / "errors"
    command = [str(program), "jobsheet", str(source / "examples/plain-pool.json"), "--today", "2027-01-04"]
    right = subprocess.run(command, capture_output=True, check=True).stdout
    environment = {**os.environ, "LD_PRELOAD": str(library), "COUNT_ALLOCATIONS": str(work / "count")}
    into = [*command, "--output", str(sheet)]
    subprocess.run(into, env=environment, check=True)
    last = int((work / "count").read_text())
    del environment["COUNT_ALLOCATIONS"]
    first = int(sys.argv[4]) if len(sys.argv) > 4 else 1
    last = min(last, int(sys.argv[5])) if len(sys.argv) > 5 else last
    ends, wrongs = collections.Counter(), 0
    sheet.write_bytes(b"old")
    for n in range(first, last + 1):
        environment["NTH_ALLOCATION"] = str(n)
        write = os.O_WRONLY | os.O_CREAT | os.O_TRUNC
        child = os.posix_spawn(into[0], into, environment, file_actions=[
            (os.POSIX_SPAWN_OPEN, 0, "/dev/null", os.O_RDONLY, 0), (os.POSIX_SPAWN_OPEN, 1, "/dev/null", write, 0),
            (os.POSIX_SPAWN_OPEN, 2, str(errors), write, 0o644)])
        status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        ends[status] += 1
        now = sheet.read_bytes()
        said = errors.read_bytes()
        good = (now == b"old" and b"memory" in said) if status in (4, 70) else status == 0 and now == right
        if not good and not (n < START and now == b"old"):
            wrongs += 1
            print("wrong", n, status, said[:200], "the file changed" if now not in (b"old", right) else "", flush=True)
        if now != b"old":
            sheet.write_bytes(b"old")
    print(f"allocations {first} to {last} in turn, by status: {dict(sorted(ends.items()))}; {wrongs} wrong")
    left = sorted(path.name for path in work.iterdir())
    print("left behind:", left)
    sys.exit(wrongs > 0)


main()
