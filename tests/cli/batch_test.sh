#!/usr/bin/env bash
# Many jobs in one run: order, threads, bad jobs among good ones, documents, interruption and taking up again.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
batch() { # wanted status, arguments...
  local wanted=$1
  shift
  timeout 120 "$program" batch "$@" --today 2027-01-04 >out 2>err
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: batch $* ($(head -n 1 err))"
}

# A stream of forty jobs: some that cannot be read, one that must stop, blank lines between.
/usr/bin/python3 - "$job" >jobs.ndjson <<'P'
import json, sys
job = json.load(open(sys.argv[1]))
for i in range(40):
    job["job"]["number"] = f"N-{i}"
    job["pool"]["outline"]["length"] = f"{8 + i * 0.1:.1f} m"
    if i == 5:
        print('{"pool": 3')
    elif i == 11:
        bad = dict(job, colour="green")
        print(json.dumps(bad))
    elif i == 17:
        stop = json.loads(json.dumps(job))
        for s in stop["surfaces"]:
            s["substrate"] = "fibreglass"
        print(json.dumps(stop))
    else:
        print(json.dumps(job))
    if i % 9 == 0:
        print()
P

batch 1 - --jobs 1 <jobs.ndjson
mv out one
grep -q '40 jobs: 37 planned, 1 stopped or without dates, 2 with problems' err || fail "no true summary: $(cat err)"
# Under sanitizers each run takes forty times as long: fewer of the same kind.
threads="2 3 8" rounds="1 2 3 4 5"
[ -n "${BASINWRIGHT_SLOW_BUILD:-}" ] && threads=3 rounds=3
for n in $threads; do
  batch 1 - --jobs $n <jobs.ndjson
  cmp -s one out || fail "$n threads print other bytes than one"
done
batch 1 - --format csv --jobs 3 <jobs.ndjson
mv out one.csv
/usr/bin/python3 - "$program" "$job" <<'P' || fail "the result lines are not what they should be"
import csv, json, subprocess, sys
lines = [json.loads(line) for line in open("one", encoding="utf-8")]
rows = list(csv.DictReader(open("one.csv", newline="", encoding="utf-8")))
assert len(lines) == len(rows) == 40
for line, row in zip(lines, rows):
    assert list(line) == list(row)
    for key, value in line.items():
        if key != "digest":
            assert row[key] == ("" if value is None else str(value)), (key, row[key], value)
# The order is the stream's, and the line its own: blank ones count.
numbers = [int(line["job"].split()[1]) for line in lines]
assert numbers == sorted(numbers) and numbers[0] == 1 and numbers[1] == 3
assert [line["status"] for line in lines if line["status"]] == [1, 1, 3]
bad = lines[5]
assert bad["problem_line"] == numbers[5] and bad["problem"].startswith("syntax"), bad
assert "colour" in lines[11]["problem"]
assert "fibreglass" in lines[17]["problem"].lower() and lines[17]["total"] is None
# What a job comes to alone, it comes to in a batch.
alone = json.loads(subprocess.run([sys.argv[1], "jobsheet", sys.argv[2], "--today", "2027-01-04",
                                   "--format", "json"], capture_output=True, check=True).stdout)
together = json.loads(subprocess.run([sys.argv[1], "batch", sys.argv[2], "--today", "2027-01-04"],
                                     capture_output=True, check=True).stdout)
assert together["total"] == alone["price"]["total"] and together["currency"] == alone["price"]["currency"]
assert together["kits"] == alone["quantities"]["kits"]
assert together["start"] == alone["programme"]["start"]
assert together["refill_done"] == alone["programme"]["refill_done"]
P

# Weather that is shared: each job as it would be alone, at any number of threads.
weather="$source/examples/plain-pool.weather.csv"
sed -n '1,4p' jobs.ndjson >few.ndjson
batch 0 few.ndjson --weather "$weather" --jobs 1
mv out dry
batch 0 few.ndjson --weather "$weather" --jobs 3
cmp -s dry out || fail "under weather 3 threads print other bytes than one"
"$program" jobsheet "$job" --today 2027-01-04 --weather "$weather" --format json >alone.json
batch 0 "$job" --weather "$weather"
/usr/bin/python3 - <<'P' || fail "under weather a job comes to something else than alone"
import json
alone, line = json.load(open("alone.json")), json.load(open("out"))
assert line["start"] == alone["programme"]["start"] and line["refill_done"] == alone["programme"]["refill_done"]
assert line["total"] == alone["price"]["total"] and alone["programme"]["weather"] != "none"
P

# The first bad job ends it, at the same line with any number of threads.
batch 1 - --fail-fast <jobs.ndjson
[ "$(wc -l <out)" -eq 6 ] || fail "fail-fast prints $(wc -l <out) lines, not 6"
mv out fast
batch 1 - --fail-fast --jobs 4 <jobs.ndjson
cmp -s fast out || fail "fail-fast depends on the threads"

# Folders by name, rate books left out; statuses in their order.
mkdir -p folder/inner
for n in b a c; do cp "$job" "folder/$n.json"; done
cp "$source/examples/l-shape-us.rates.json" folder/z.rates.json
batch 0 folder
[ "$(grep -o 'folder/[a-z]*.json' out | tr '\n' ' ')" = "folder/a.json folder/b.json folder/c.json " ] ||
  fail "a folder is not read by name: $(cat out)"
batch 4 folder missing.json
batch 4 missing.json jobs.ndjson
batch 3 "$source"/tests/cli/../../examples/plain-pool.json - <<<"$(sed -n '/fibreglass/p' jobs.ndjson)"
batch 2
batch 2 folder --jobs 0
batch 2 folder --resume
batch 2 folder --format text
printf '{"currency": 3}' >bad.rates.json
batch 1 folder --rates bad.rates.json
[ ! -s out ] || fail "a bad rate book does not end a batch before it starts"

# Documents keep to their folder whatever the file is called.
mkdir names
cp "$job" 'names/..%2F..%2Fetc.json'
cp "$job" $'names/a b\n; rm -rf x.json'
cp "$job" 'names/-.json'
cp "$job" 'names/über.json'
batch 0 names --output-dir made --document takeoff --jobs 2
[ "$(ls made | wc -l)" -eq 5 ] || fail "not four documents and the results: $(ls made)"
ls made | LC_ALL=C grep -vqE '^([0-9]{6}-[A-Za-z0-9._-]+\.txt|results\.ndjson)$' && fail "an unsafe name: $(ls made)"
[ "$(find . -newer names -name '*etc*' ! -path './names/*' ! -path './made/*' | wc -l)" -eq 0 ] || fail "a name left the folder"
batch 0 folder --output-dir sheets --document-format json --format csv
"$program" jobsheet folder/b.json --today 2027-01-04 --format json | cmp -s - sheets/000002-b.json ||
  fail "a document of a batch differs from the same alone"

# Interrupted: what stands is kept, what is torn or changed is done again, the end is the same.
batch 1 jobs.ndjson --output whole.ndjson
cmp -s whole.ndjson one && fail "a named stream names no file"
head -c 5000 whole.ndjson >again.ndjson.part
batch 1 jobs.ndjson --output again.ndjson --resume
cmp -s whole.ndjson again.ndjson || fail "a resumed run ends otherwise"
grep -qE '; [1-9][0-9]* of them done before' err || fail "nothing was passed over: $(cat err)"
[ ! -e again.ndjson.part ] || fail "a part is left behind"
batch 1 jobs.ndjson --output again.ndjson --resume
grep -q '40 of them done before' err || fail "a finished run is done again: $(cat err)"
sed -i '20s/"m"/"m"/; 20s/deck/yard/; 22s/N-/M-/' jobs.ndjson
batch 1 jobs.ndjson --output fresh.ndjson
batch 1 jobs.ndjson --output again.ndjson --resume
cmp -s fresh.ndjson again.ndjson || fail "a changed job is not done again"
batch 1 jobs.ndjson --output csv.csv --format csv
head -c 3000 csv.csv >more.csv.part
batch 1 jobs.ndjson --output more.csv --format csv --resume
cmp -s csv.csv more.csv || fail "a resumed table ends otherwise"
rm sheets/000003-c.json
batch 0 folder --output-dir sheets --document-format json --format csv --resume
[ -s sheets/000003-c.json ] || fail "a document that was lost is not made again"
for i in $rounds; do
  rm -f cut.ndjson*
  "$program" batch jobs.ndjson jobs.ndjson jobs.ndjson --today 2027-01-04 --output cut.ndjson --quiet 2>/dev/null &
  sleep 0.0$i
  kill -9 $! 2>/dev/null
  wait $! 2>/dev/null
  batch 1 jobs.ndjson jobs.ndjson jobs.ndjson --output cut.ndjson --resume
  [ "$(wc -l <cut.ndjson)" -eq 120 ] || fail "killed and resumed: $(wc -l <cut.ndjson) lines, not 120"
done

# On a terminal it says how far it is; a job that comes late shows rate and time left.
mkfifo late.json
(sleep 0.5; cat "$job") >late.json &
/usr/bin/python3 - "$program" "$job" >told <<'P' || fail "no run on a terminal"
import os, pty, subprocess, sys
ours, its = pty.openpty()
run = subprocess.Popen([sys.argv[1], "batch", sys.argv[2], "late.json", sys.argv[2], sys.argv[2], "--jobs", "1",
                        "--today", "2027-01-04"], stdout=subprocess.DEVNULL, stderr=its)
os.close(its)
said = b""
try:
    while piece := os.read(ours, 4096):
        said += piece
except OSError:
    pass
print(said.decode())
sys.exit(run.wait())
P
grep -qE '[1-4] of 4 jobs, [0-9]+ a second, [0-9]+ s left' told || fail "no progress on a terminal: $(cat told)"
grep -q 'a second' err && fail "progress without a terminal"

# Lines of any length, about the size that is read at once; the last without an end; a NUL; one that is too long.
/usr/bin/python3 - "$program" "$job" <<'P' || fail "lines of some length are read otherwise"
import json, subprocess, sys
job = json.dumps(json.load(open(sys.argv[2])))
block = 1 << 16
lengths = [block + d - len(job) for d in (-2, -1, 0, 1)] + [2 * block - 1, 3 * block + 5, 0, 1]
lines = [job + " " * n for n in lengths]
def run(data):
    got = subprocess.run([sys.argv[1], "batch", "-", "--today", "2027-01-04", "--quiet"], input=data, capture_output=True)
    return [json.loads(line) for line in got.stdout.splitlines()]
for end in ("\n", "\r\n", "\n \n\n"):
    for last in (end, ""):
        out = run((end.join(lines) + last).encode())
        assert [r["number"] for r in out] == [out[0]["number"]] * len(lines), (end, last, len(out))
        assert len({r["total"] for r in out}) == 1 and out[0]["total"], out[0]
        step = 3 if len(end) > 2 else 1
        assert [r["job"] for r in out] == [f"line {1 + step * i}" for i in range(len(lines))], [r["job"] for r in out]
out = run((job + "\n" + job[:300] + "\0" + job[300:] + "\n" + job + " " * (17 << 20) + "\n" + job).encode())
assert [r["status"] for r in out] == [out[0]["status"], 1, 1, out[0]["status"]], [r["status"] for r in out]
assert "NUL" in out[1]["problem"] and "16 MiB" in out[2]["problem"], (out[1]["problem"], out[2]["problem"])
P

# In the middle of a slow pipe a job's line comes while the next job is awaited.
mkfifo slow
for n in 1 3; do
  timeout 120 "$program" batch - --jobs $n --quiet --today 2027-01-04 <slow >came &
  running=$!
  exec 3>slow
  wanted=0
  for lines in 1,1p 2,4p 7,7p; do
    grep . jobs.ndjson | sed -n "$lines" >few
    cat few >&3
    wanted=$((wanted + $(wc -l <few)))
    for _ in $(seq 600); do
      [ "$(wc -l <came)" -ge $wanted ] && break
      sleep 0.1
    done
    [ "$(wc -l <came)" -eq $wanted ] || fail "$n threads: $(wc -l <came) lines of $wanted jobs while more are awaited"
  done
  exec 3>&-
  wait $running
  [ "$(wc -l <came)" -eq $wanted ] || fail "$n threads: not $wanted lines at the end"
done

# Its reader gone, a slow pipe ends with the next result, not with the last job.
mkfifo jobs_come
(
  timeout 60 "$program" batch - --jobs 2 --today 2027-01-04 <jobs_come 2>/dev/null | head -n 1 >first
  exit "${PIPESTATUS[0]}"
) &
running=$!
exec 3>jobs_come
grep . jobs.ndjson | head -n 1 >few
cat few >&3
for _ in $(seq 600); do
  [ -s first ] && break
  sleep 0.1
done
(
  trap '' PIPE
  for _ in $(seq 300); do
    cat few >&3 2>/dev/null || break
    kill -0 $running 2>/dev/null || break
    sleep 0.1
  done
)
wait $running || fail "a slow pipe whose reader has left goes on, or ends with an error: $?"
exec 3>&-

# Readers that leave, disks that are full.
"$program" batch - --today 2027-01-04 <jobs.ndjson 2>/dev/null | head -n 1 >/dev/null
[ "${PIPESTATUS[0]}" -le 1 ] || fail "a reader that leaves is an error: ${PIPESTATUS[0]}"
if [ -e /dev/full ]; then
  "$program" batch "$job" --today 2027-01-04 >/dev/full 2>err
  [ $? -eq 4 ] || fail "a full disk is not status 4"
fi
batch 4 folder --output no-such-folder/x.ndjson
exit $failed
