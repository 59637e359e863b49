"""Whether the schemas say what the reader says. Source: the JSON Schema drafts 07 and 2020-12 as python3-jsonschema
checks them. Usage: schema.py PROGRAM SOURCE WORK"""
import copy, glob, json, os, subprocess, sys
import jsonschema

program, source, work = sys.argv[1:4]
deep = len(sys.argv) > 4  # By hand: three times as many mistakes.
KINDS = {"07": jsonschema.Draft7Validator, "2020-12": jsonschema.Draft202012Validator}
# The codes of tests/errors that a schema can say; the rest hang on units, on other keys or on geometry.
SAID = {"missing-key", "negative", "not-a-choice", "not-a-measure", "not-finite", "not-positive",
        "unknown-key", "wrong-type"}
failed = []


def schema(subject, draft):
    path = os.path.join(work, subject + draft + ".json")
    subprocess.run([program, "schema", subject, "--draft", draft, "--output", path], check=True)
    return json.load(open(path, encoding="utf-8"))


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


class Both:
    """One subject in both drafts, which must agree."""

    def __init__(self, subject):
        self.subject = subject
        self.validators = []
        for draft, kind in KINDS.items():
            made = schema(subject, draft)
            kind.check_schema(made)
            self.validators.append(kind(made))

    def takes(self, value, name):
        verdicts = [v.is_valid(value) for v in self.validators]
        if verdicts[0] != verdicts[1]:
            failed.append(f"{name}: the drafts differ")
        return verdicts[1]

    def why(self, value):
        error = jsonschema.exceptions.best_match(self.validators[1].iter_errors(value))
        return f"/{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}" if error else ""


jobs, rates, logs, crews = Both("job"), Both("rates"), Both("log"), Both("crews")


def good(both, value, name):
    if not both.takes(value, name):
        failed.append(f"{name}: refused at {both.why(value)}")


def sound_files():
    count = 0
    for path in glob.glob(source + "/examples/*.json") + glob.glob(source + "/tests/readers/*.json") + \
            [source + "/src/readers/demonstration_rates.json"]:
        if ".weather." in path:
            continue
        name = os.path.basename(path)
        good(rates if "rates" in name else crews if "crews" in name else jobs, read(path), path)
        count += 1
    good(crews, read(source + "/examples/season/crews.json"), "the example season's crews")
    for row in read(source + "/tests/reference/shells.json")["rows"]:
        good(jobs, {"pool": row["pool"]}, str(row["name"] if "name" in row else row["pool"])[:60])
        count += 1
    for line in LOG:
        good(logs, line, str(line))
    return count


LOG = [{"at": "2027-05-03T08:30", "event": "started", "task": "drain", "by": "M. Sample"},
       {"at": "2027-05-03T09:00", "event": "reading", "air": "18 C", "shell": 16, "humidity": "70 %", "ph": 7.2,
        "wet_film": "200 um"},
       {"at": "2027-05-03T09:00", "event": "mix", "kits": 2, "batch_a": "A1", "part_b": "standard"}]


def unsound_files():
    for path in sorted(glob.glob(source + "/tests/errors/*")):
        name = os.path.basename(path)
        code = name.split(".")[0]
        if ".weather." in name or not name.endswith((".json", ".log")):
            continue
        try:
            values = [json.loads(l) for l in open(path) if l.strip()] if name.endswith(".log") else [read(path)]
        except ValueError:
            continue  # Not JSON at all.
        both = logs if name.endswith(".log") else rates if name.endswith(".rates.json") else jobs
        taken = all([both.takes(v, name) for v in values])
        if code in SAID and taken:
            failed.append(f"{name}: taken by the schema")


def places(value, at=()):
    """Every place in a value."""
    yield at
    if isinstance(value, dict):
        for key in value:
            yield from places(value[key], at + (key,))
    elif isinstance(value, list):
        for i, item in enumerate(value):
            yield from places(item, at + (i,))


def mistakes(value):
    """The value with one mistake of shape each: another type at a place, or a key too many."""
    for at in places(value):
        if not at or at[-1] == "$schema":
            continue
        changed = copy.deepcopy(value)
        parent = changed
        for key in at[:-1]:
            parent = parent[key]
        was = parent[at[-1]]
        parent[at[-1]] = 7 if isinstance(was, (dict, list, bool)) else True
        yield at, changed
        if isinstance(was, dict):
            other = copy.deepcopy(value)
            parent = other
            for key in at:
                parent = parent[key]
            parent["no such key"] = 1
            yield at + ("no such key",), other


def reader_refuses(values):
    """Which of the job files the program has problems with, in one batch."""
    lines = "".join(json.dumps(v) + "\n" for v in values)
    done = subprocess.run([program, "batch", "-", "--today", "2027-01-04"], input=lines, capture_output=True, text=True)
    rows = [json.loads(l) for l in done.stdout.splitlines()]
    assert len(rows) == len(values), (len(rows), len(values), done.stderr[-500:])
    return [row["status"] in ("problems", 1) for row in rows]


def mistaken_crews():
    """Each mistake of shape in a crews file is refused by the schema as by the reader; every fourth is tried."""
    made = list(mistakes(read(source + "/tests/readers/full-crews.json")))[::4]
    jobs_of_it = []
    for name, job in (("a-1.json", {"job": {"number": "A-1"}}), ("a-2.json", {})):
        jobs_of_it.append(os.path.join(work, name))
        with open(jobs_of_it[-1], "w", encoding="utf-8") as file:
            json.dump(job, file)  # No pool: nothing is booked, all problems are told.
    path = os.path.join(work, "crews.json")
    for at, value in made:
        with open(path, "w", encoding="utf-8") as file:
            json.dump(value, file)
        done = subprocess.run([program, "batch", "--programme", "--crews", path, *jobs_of_it],
                              capture_output=True, text=True)
        by_reader = any(line.startswith(path) and "error" in line for line in done.stderr.splitlines())
        if crews.takes(value, str(at)) == by_reader:
            failed.append(f"crews file, {at}: schema and reader differ: {done.stderr[:300]}")
    return len(made)


def mistaken_jobs():
    made = list(mistakes(read(source + "/tests/readers/full-job.json")))[:: 3 if deep else 9]
    refused = reader_refuses([value for _, value in made])
    for (at, value), by_reader in zip(made, refused):
        by_schema = not jobs.takes(value, str(at))
        if by_schema != by_reader:
            failed.append(f"{at}: the schema {'refuses' if by_schema else 'takes'} what the reader does not agree on")
    return len(made)


files = sound_files()
unsound_files()
made = mistaken_jobs() + mistaken_crews()
assert files > 30 and made > 50, (files, made)
print(f"{files} sound files, {made} mistakes: {len(failed)} failed")
print("\n".join(failed[:40]))
sys.exit(bool(failed))
