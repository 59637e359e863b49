#!/usr/bin/env python3
"""One table of what the program costs beside what it is measured against, side by side in one run.

    ratios.py BASINWRIGHT SOURCE_DIR BUILD_DIR [--only PARTS] [--short]

`cmake --build build --target bench` runs all of it, some minutes long: a batch of 100,000 jobs, the memory of a million.
`--short` takes 2,000 and 10,000, of which the batch is dearer: what jobs share has to be found first. Seconds are of
the processor, user and system, of all threads: they bear other work on the machine better than the clock does. Nothing
is asserted: another machine, another figure; the ratios mean more. What is not installed (jq, LibreOffice Calc,
MiniZinc with Gecode) is said and left out.
"""
import argparse
import importlib.util
import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parent))
import job_stream
import workbook

THREADS = 2
TODAY = ["--today", "2027-01-04"]
table = []


def row(what, ours, against, theirs, wanted, unit="s"):
    """What both took; a wanted ratio in words."""
    table.append((what, ours, against, theirs, wanted, unit))
    print(f"  {what}: {ours:.4g} {unit}; {against}: {theirs:.4g} {unit}", flush=True)


def skip(what, why):
    print(f"  {what}: skipped, {why}", flush=True)


def timed(command, stdin=None, allowed=(0,)):
    """Seconds of the processor of one run."""
    with open(stdin or os.devnull, "rb") as given:
        child = subprocess.Popen(command, stdin=given, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in allowed:
        sys.exit(f"{command[0]} ended with {child.returncode}: {' '.join(map(str, command))}")
    return usage.ru_utime + usage.ru_stime


# A process counts what it held before it became another program, so that the one that starts ours must be small itself.
STARTER = """
import os, sys
child = os.fork()
if child == 0:
    os.dup2(os.open(sys.argv[1], os.O_RDONLY), 0)
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    os.execv(sys.argv[2], sys.argv[2:])
print(os.wait4(child, 0)[2].ru_maxrss)
"""


def most_kilobytes(command, stdin):
    """The most memory of one run."""
    started = subprocess.run([sys.executable, "-S", "-c", STARTER, stdin, *command], check=True, capture_output=True)
    return int(started.stdout)


def cold_start(a):
    job = f"{a.source}/examples/plain-pool.json"
    ours, theirs = [], []
    for _ in range(40):  # One after the other, so that both see the same machine.
        ours.append(timed([a.program, "jobsheet", job, *TODAY]))
        if a.jq:
            theirs.append(timed(["jq", ".", job]))
    if not a.jq:
        return skip("cold start", "jq is not installed")
    middle = lambda times: sorted(times)[len(times) // 2]
    row("cold start of jobsheet", middle(ours), "jq . of the same file", middle(theirs), "<= 0.6")


def batch(a, jobs):
    best = lambda run: min(run() for _ in range(3))
    weather = f"{a.source}/examples/plain-pool.weather.csv"
    command = [a.program, "batch", "-", "--jobs", str(THREADS), "--quiet", *TODAY]
    parse = best(lambda: timed([f"{a.build}/tests/bench_parse", jobs, str(THREADS)]))
    plain = best(lambda: timed(command, jobs, (0, 3)))
    under = best(lambda: timed([*command, "--weather", weather], jobs, (0, 3)))
    dom = f"nlohmann DOM of the same bytes, {THREADS} threads"
    wanted = "" if a.short else "<= 10"
    row(f"batch of {a.jobs} jobs by the calendar", plain, dom, parse, wanted)
    row(f"batch of {a.jobs} jobs under weather", under, dom, parse, wanted)
    if a.jq:
        row(f"batch of {a.jobs} jobs under weather", under, "jq -c . of the same bytes",
            best(lambda: timed(["jq", "-c", ".", jobs])), "")
    return under / a.jobs


def spreadsheet(a, folder, each):
    if not shutil.which("soffice"):
        return skip("workbook", "LibreOffice Calc is not installed")
    weather = f"{a.source}/examples/plain-pool.weather.csv"
    jobs = workbook.jobs(1000)
    books = [pathlib.Path(folder, f"{n}.fods") for n in range(len(jobs))]
    for book, job in zip(books, jobs):
        book.write_text(workbook.text([job], weather), encoding="utf-8")
    together = pathlib.Path(folder, "quotes.fods")
    together.write_text(workbook.text(jobs, weather), encoding="utf-8")

    def recalculated(files):
        took = 0.0
        for first in range(0, len(files), 200):  # One run stops, without a word, after some 250.
            took += timed(["soffice", f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "csv",
                           "--outdir", folder, *map(str, files[first:first + 200])])
        for file in files:
            last = file.with_suffix(".csv").read_text(encoding="utf-8").strip().splitlines()[-1]
            if not float(last.split(",")[-1]) > 0 or "#" in last or "Err" in last:
                sys.exit(f"{file.name} was not calculated: {last}")
        return took / len(jobs)

    recalculated([together])  # The first run makes its profile.
    # What a contractor has: a file for each client. 200 are handed to one run, so that it starts but five times.
    row("a quote in batch", each, "one of 1,000 recalculated workbooks, LibreOffice started five times", recalculated(books),
        "<= 0.02")
    row("a quote in batch", each, "one of 1,000 rows in one recalculated workbook", recalculated([together]), "")


def constraints(a, folder):
    if not shutil.which("minizinc"):
        return skip("programme", "MiniZinc is not installed")
    deep = pathlib.Path(a.source, "tests/deep/schedules_by_constraints.py")
    spec = importlib.util.spec_from_file_location("schedules_by_constraints", deep)
    solver = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(solver)
    rows, theirs, number = [], 0.0, 0
    while len(rows) < 4 and number < 20:
        one = solver.row(random.Random(number), number)
        number += 1
        before = os.times()
        expected = solver.solved(one)
        after = os.times()
        took = after.children_user + after.children_system - before.children_user - before.children_system
        if expected is None or expected["status"] != "optimal":
            continue
        one["expected"] = expected
        rows.append(one)
        theirs += took
    path = pathlib.Path(folder, "rows.json")
    path.write_text(json.dumps({"subject": "schedules", "tolerance": 0, "rows": rows}))
    ours = subprocess.run([f"{a.build}/tests/bench_programme", str(path)], capture_output=True, text=True)
    if ours.returncode:
        sys.exit(f"bench_programme: {ours.stdout}{ours.stderr}")
    row(f"programme of {len(rows)} rows, same optimum", float(ours.stdout),
        "MiniZinc with Gecode, start-up included", theirs, "<= 0.001")


def memory(a, folder):
    few, many = pathlib.Path(folder, "few.ndjson"), pathlib.Path(folder, "many.ndjson")
    count = 10_000 if a.short else 1_000_000
    for path, jobs in ((few, 1000), (many, count)):
        with open(path, "w", encoding="utf-8") as out:
            job_stream.write(jobs, 3, out)
    command = [a.program, "batch", "-", "--jobs", str(THREADS), "--quiet", *TODAY]
    row(f"most memory for {count:,} jobs", most_kilobytes(command, many) / 1024, "for 1,000 jobs",
        most_kilobytes(command, few) / 1024, "<= 1.1", "MiB")


def replay(a):
    out = subprocess.run([f"{a.build}/tests/bench_replay"], check=True, capture_output=True, text=True).stdout
    row("replay of 40 years of one job, gates known", float(re.search(r"([0-9.]+) ms with foresight", out)[1]),
        "gates of those years", float(re.search(r"gates ([0-9.]+) ms", out)[1]), "<= 10 ms", "ms")


def main():
    options = argparse.ArgumentParser()
    for name in ("program", "source", "build"):
        options.add_argument(name)
    options.add_argument("--short", action="store_true")
    options.add_argument("--only", default="start,batch,workbook,programme,replay,memory")
    a = options.parse_args()
    a.jobs = 2_000 if a.short else 100_000
    a.jq = shutil.which("jq")
    only = a.only.split(",")
    with tempfile.TemporaryDirectory() as folder:
        jobs = f"{folder}/jobs.ndjson"
        with open(jobs, "w", encoding="utf-8") as out:
            job_stream.write(a.jobs, 1, out)
        if "start" in only:
            cold_start(a)
        each = batch(a, jobs) if "batch" in only or "workbook" in only else 0.0
        if "workbook" in only:
            spreadsheet(a, folder, each)
        if "programme" in only:
            constraints(a, folder)
        if "replay" in only:
            replay(a)
        if "memory" in only:
            memory(a, folder)
    print("\n| ours | took | against | took | ratio | wanted |\n| --- | --- | --- | --- | --- | --- |")
    for what, ours, against, theirs, wanted, unit in table:
        print(f"| {what} | {ours:.3g} {unit} | {against} | {theirs:.3g} {unit} | {ours / theirs:.3g} | {wanted} |")


if __name__ == "__main__":
    main()
