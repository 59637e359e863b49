#!/usr/bin/env python3
"""No memory from an allocation of a job sheet on, for every STEP-th of them (1, by hand: each one).

    failing_allocations.py PROGRAM SOURCE FOLDER STEP

The failing run must end with the words of "out of memory" and status 70 (4 where a file could not be written), leave
the old file as it was and nothing beside it, or come through with the very sheet. Before the program's own start only
the loader and the language's reserve for exceptions allocate, and those may end as they like. Needs cc and Linux.
"""
import collections
import os
import pathlib
import shutil
import subprocess
import sys

START = 20  # Allocations of the loader and the language before the program begins.


def good(n, status, said, file, left):
    if left != 0:
        return False
    if status in (4, 70):
        return file == "old" and (said == "memory" or n < START)
    if status == 0:
        return file == "right"
    return n < START and file == "old"


def prepared(work, right):
    shutil.rmtree(work, ignore_errors=True)
    for name in ("child", "parent"):
        (work / name).mkdir(parents=True)
    (work / "right").write_bytes(right)
    (work / "old").write_bytes(b"old")
    (work / "parent/sheet.txt").write_bytes(b"old")


def main():
    program, source, work = (pathlib.Path(path).resolve() for path in sys.argv[1:4])
    command = [str(program), "jobsheet", str(source / "examples/plain-pool.json"), "--today", "2027-01-04"]
    right = subprocess.run(command, capture_output=True, check=True).stdout
    prepared(work, right)
    library = work / "failing.so"
    c = source / "tests/cli/failing_allocations.c"
    subprocess.run(["cc", "-shared", "-fPIC", "-O1", "-fno-builtin", "-Wall", "-o", library, c], check=True)
    environment = {**os.environ, "LD_PRELOAD": str(library), "TRY_ALLOCATIONS": str(work), "TRY_EVERY": sys.argv[4]}
    subprocess.run([*command, "--output", "sheet.txt"], cwd=work / "parent", env=environment, check=True)
    ends, wrongs, last = collections.Counter(), 0, 0
    for line in (work / "report").read_text(encoding="utf-8", errors="replace").splitlines():
        n, status, said, file, left, words = (line + " ").split(" ", 5)
        last = int(n)
        ends[int(status)] += 1
        if not good(last, int(status), said, file, int(left)):
            wrongs += 1
            print("wrong:", line)
    if (work / "parent/sheet.txt").read_bytes() != right:
        wrongs += 1
        print("wrong: the run that lost no memory gave another sheet")
    tried = sum(ends.values())
    print(f"{tried} of {last} allocations failed in turn, by status: {dict(sorted(ends.items()))}; {wrongs} wrong")
    if ends[70] < 0.9 * tried or last < 1000:
        sys.exit("the memory did not run out as it should")
    sys.exit(wrongs > 0)


main()
