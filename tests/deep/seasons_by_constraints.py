#!/usr/bin/env python3
"""Small random seasons, solved by a constraint solver and compared with ours.

    seasons_by_constraints.py TEST_SEASON COUNT [FIRST]

TEST_SEASON is the test program of the room; its hidden case "seasons as data" writes each season with what our search
finds. Needs `minizinc` with Gecode (Debian packages of these names). Seasons that the solver does not prove in a minute
are left out and counted.
"""
import json
import os
import pathlib
import subprocess
import sys
import tempfile

MODEL = pathlib.Path(__file__).with_name("seasons_by_constraints.mzn")
SECONDS = 60


def listed(value):
    if isinstance(value, list):
        return "[" + ",".join(listed(v) for v in value) + "]"
    return str(value).lower() if isinstance(value, bool) else str(value)


def flat(value):
    return [w for v in value for w in flat(v)] if isinstance(value, list) else [value]


def data(season):
    """Arrays of several dimensions with the sizes of the model."""
    sizes = {"can": "1..J,1..C", "slots": "1..J,1..C,1..A", "kind": "1..J,1..A", "lag_min": "1..J,1..N",
             "lag_max": "1..J,1..N", "calendar": "1..J,1..A", "open": "1..J,1..C,1..3,0..H-1", "price": "1..J,1..C",
             "recoat_min": "1..J,1..K", "recoat_max": "1..J,1..K", "travel": "1..J,1..J", "full": "0..H-1"}
    lines = []
    for key, value in season.items():
        if key in sizes:
            text = f"array{sizes[key].count(',') + 1}d({sizes[key]},{listed(flat(value))})"
            lines.append(f"{key} = {text};")
        else:
            lines.append(f"{key} = {listed(value)};")
    return "\n".join(lines) + "\n"


def ask(season):
    with tempfile.NamedTemporaryFile("w", suffix=".dzn") as file:
        file.write(data(season))
        file.flush()
        run = subprocess.run(["minizinc", "--solver", "gecode", "--time-limit", str(SECONDS * 1000), MODEL, file.name],
                             capture_output=True, text=True)
    if "==========" not in run.stdout:
        if run.returncode != 0 or "rror" in run.stderr:
            sys.exit(run.stdout + run.stderr)
        return None
    return int(run.stdout.split("value=")[-1].split()[0])


def main():
    program, count = sys.argv[1], int(sys.argv[2])
    first = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "seasons.jsonl")
        subprocess.run([program, "seasons as data"], check=True, stdout=subprocess.DEVNULL,
                       env={**os.environ, "SEASONS": path, "COUNT": str(count), "FIRST": str(first)})
        with open(path, encoding="utf-8") as file:
            seasons = [json.loads(line) for line in file]
    wrong = unproven = ours_proven = late = unbooked = 0
    for done, season in enumerate(seasons):
        if done % 20 == 0:
            print(f"{done} of {len(seasons)}, {wrong} wrong, {unproven} not proven", file=sys.stderr, flush=True)
        ours, bound, optimal, number = (season.pop(k) for k in ("ours", "bound", "optimal", "number"))
        best = ask(season)
        if best is None:
            unproven += 1
            continue
        ours_proven += optimal
        late += best % 1000000 >= 10000
        unbooked += best >= 1000000
        if ours < best or bound > best or (optimal and ours != best):
            wrong += 1
            print(f"season {number}: ours {ours}, bound {bound}, proven {optimal}; the solver finds {best}")
    print(f"{len(seasons)} seasons: {wrong} wrong, {unproven} not proven by the solver in time, {ours_proven} proven by us, "
          f"{late} with a job late, {unbooked} with one that has no dates")
    return 1 if wrong or not seasons else 0


sys.exit(main())
