#!/usr/bin/env python3
"""By hand: each number and measure of a full job and rate book made tiny, vast or nothing, one at a time, and planned.

    hostile_values.py PROGRAM SOURCE

Each must be refused or planned (statuses 0, 1, 3), with no number that is none on the sheet, within a minute.
"""
import collections
import copy
import json
import pathlib
import re
import subprocess
import sys
import tempfile

TEXTS = ("1e-308", "0.000000001", "0", "1000000", "1000000000", "1e308")
NUMBERS = (1e-308, 1e-9, 0, 10**6, 1e9, 1e308)


def leaves(node, at=()):
    if isinstance(node, dict):
        for key, value in node.items():
            yield from leaves(value, at + (key,))
    elif isinstance(node, list):
        for place, value in enumerate(node):
            yield from leaves(value, at + (place,))
    else:
        yield at, node


def variants(value):
    if isinstance(value, bool) or value is None:
        return []
    if isinstance(value, (int, float)):
        return NUMBERS
    measure = re.match(r"^-?[\d.]+(.*)$", value)
    if not measure or re.match(r"^\d{4}-\d\d", value):
        return []
    return [number + measure.group(1) for number in TEXTS]


def put(file, at, value):
    file = copy.deepcopy(file)
    node = file
    for key in at[:-1]:
        node = node[key]
    node[at[-1]] = value
    return file


def main():
    program, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    job = json.loads((source / "tests/readers/full-job.json").read_text())
    job["pool"] = json.loads((source / "examples/plain-pool.json").read_text())["pool"]
    rates = json.loads((source / "tests/readers/full-rates.json").read_text())
    ends, wrongs = collections.Counter(), 0
    cases = [(at, value, put(job, at, value), rates) for at, old in leaves(job) for value in variants(old)]
    cases += [(at, value, job, put(rates, at, value)) for at, old in leaves(rates) for value in variants(old)]
    with tempfile.TemporaryDirectory() as folder:
        book = pathlib.Path(folder) / "rates.json"
        command = [program, "jobsheet", "-", "--today", "2027-01-04", "--rates", book, "--quiet"]
        for at, value, job_file, rate_file in cases:
            book.write_text(json.dumps(rate_file))
            try:
                run = subprocess.run(command, input=json.dumps(job_file), capture_output=True, text=True, timeout=60, check=False)
            except subprocess.TimeoutExpired:
                run = subprocess.CompletedProcess(command, "hangs", "", "")
            ends[run.returncode] += 1
            if run.returncode not in (0, 1, 3) or re.search(r"\b(nan|inf)\b", run.stdout):
                wrongs += 1
                print("wrong", "/".join(map(str, at)), value, run.returncode, run.stderr[:200], flush=True)
    print(f"{len(cases)} values, by status {dict(ends)}, {wrongs} wrong")
    sys.exit(wrongs > 0)


main()
