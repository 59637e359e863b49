#!/usr/bin/env bash
# The site log on disk: what was told as kept is kept, whoever else writes and whatever is killed.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
appends=${APPENDS:-120}
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
status() { # wanted, arguments...
  local wanted=$1
  shift
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $* ($(head -n 1 err))"
}
now="--now 2027-06-30T18:00"

status 0 record "$job" --log site.log $now started task=drain at=2027-05-03T08:30 by="M. Sample"
grep -q '^recorded as line 1: {"at": "2027-05-03T08:30", "event": "started", "task": "drain", "by": "M. Sample"}$' out ||
  fail "no acknowledgement: $(cat out)"
status 0 record "$job" --log site.log $now reading air="18 C" shell="16 C" humidity="70 %" at=2027-05-03T09:00
status 1 record "$job" --log site.log $now finished task=drain at=2027-05-03T08:00
grep -q 'impossible-entry' err || fail "finished before started is not refused"
grep -q 'see also: site.log:1:1\|site.log:1:1' err || fail "the entry it contradicts is not shown"
status 1 record "$job" --log site.log $now started task=coat1 at=2027-05-04T08:00
grep -q 'Did you mean "coat-1"' err || fail "no nearest task"
status 1 record "$job" --log site.log --now 2027-05-03T09:00 note text=later at=2027-05-03T09:01
status 1 record "$job" --log site.log $now reading air=warm
status 2 record "$job" --log site.log $now note hello
status 2 record "$job" $now note text=hello
status 4 record "$job" --log missing/site.log $now note text=hello
status 4 record "$job" --log "$work" $now note text=hello
[ "$(wc -l <site.log)" -eq 2 ] || fail "a refused entry was written"
status 0 record "$job" --log two.log $now started task=drain at=2027-05-03T08:30
status 0 record "$job" --log two.log $now finished task=drain at=2027-05-03T14:30
status 1 record "$job" --log two.log $now started task=drain at=2027-05-03T15:00

# A broken rule is kept, with a warning; not with --strict.
status 0 record "$job" --log site.log $now mix task=coat-1 batch_a=A7 at=2027-05-20T08:00
status 0 record "$job" --log site.log $now mix task=coat-1 batch_a=A8 at=2027-05-20T08:30
grep -q 'warning: .*batch A8, after batch A7' err || fail "two batches are not told: $(cat err)"
[ "$(wc -l <site.log)" -eq 4 ] || fail "an entry that breaks a rule was lost"
status 1 record "$job" --log site.log $now --strict mix task=coat-1 batch_a=A9 at=2027-05-20T08:40
[ "$(wc -l <site.log)" -eq 4 ] || fail "--strict kept a warned entry"

# Bare aggregate is primed; a kit of the primer is no kit of the coating (3.5 L each where no sheet says otherwise).
primed="$source/examples/freeform-southern-summer.json"
for kit in 1 2; do
  status 0 record "$primed" --log primed.log --now 2027-12-30T18:00 mix task=prime batch_a=P1 at=2027-12-06T07:0$kit
done
status 0 record "$primed" --log primed.log --now 2027-12-30T18:00 mix task=coat-1 batch_a=C1 at=2027-12-07T07:00
status 0 jobsheet "$primed" --today 2027-01-04 --format json
cp out sheet.json
status 0 coating-record "$primed" --log primed.log --now 2027-12-30T18:00 --today 2027-01-04 --format json
/usr/bin/python3 - <<'P' || fail "kits of primer and coating in the record"
import json
quantities = json.load(open("sheet.json"))["quantities"]
record = json.load(open("out"))
planned = {row["task"]: row["kits_planned"] for row in record["coats"]}
primer = quantities["primer"]["kits"]
assert primer > 0 and planned["prime"] == primer, planned
used = {row["what"]: (row["used"], row["planned"]) for row in record["used"]}
coats = sum(coat["kits"] for coat in quantities["coats"])
assert used["Primer: kits"] == (2, primer) and used["Kits"] == (1, coats), used
assert used["Litres of primer"] == (7.0, 3.5 * primer) and used["Litres of paint"] == (3.5, 3.5 * coats), used
P

# A torn last line is told and mended, at every length.
cp site.log whole.log
for cut in 1 20 60; do
  { cat whole.log; tail -n 1 whole.log | head -c $cut; } >site.log
  status 0 record "$job" --log site.log $now note text=after at=2027-05-20T09:00
  grep -q 'warning\[torn-line\]' err || fail "a torn line is not told"
  { cat whole.log; echo '{"at": "2027-05-20T09:00", "event": "note", "text": "after"}'; } | cmp -s - site.log ||
    fail "a torn line of $cut bytes is not mended"
done

# Two writers lose nothing, each line whole.
rm site.log
writer() { for i in $(seq $((appends / 4))); do echo "{\"event\": \"note\", \"text\": \"$1 $i\"}"; done |
  "$program" record "$job" --log site.log $now - >"$1.out" 2>&1; }
writer left & writer right & wait
[ "$(wc -l <site.log)" -eq $((appends / 4 * 2)) ] || fail "two writers: $(wc -l <site.log) lines"
for w in left right; do
  for i in $(seq $((appends / 4))); do
    [ "$(grep -c "\"text\": \"$w $i\"}" site.log)" -eq 1 ] || fail "$w $i is lost or twice"
  done
done

# kill -9 at random moments: nothing that was acknowledged is lost. APPENDS=1000 for the long run.
rm site.log
: >acknowledged
RANDOM=7
n=0
while [ $n -lt "$appends" ]; do
  for i in $(seq 40); do echo "{\"event\": \"note\", \"text\": \"entry $((n + i))\"}"; done |
    "$program" record "$job" --log site.log $now - >>acknowledged 2>/dev/null &
  writer=$!
  # A slow build takes a while to begin.
  if [ "${BASINWRIGHT_SLOW_BUILD:-0}" = 1 ]; then sleep "0.$((RANDOM % 80 + 15))"; else sleep "0.0$((RANDOM % 90 + 10))"; fi
  kill -9 $writer 2>/dev/null
  wait $writer 2>/dev/null
  n=$((n + 40))
done
sed -n 's/^recorded as line [0-9]*: //p' acknowledged | grep '}$' | while read -r line; do
  grep -qxF "$line" site.log || { echo "FAILED: lost $line" >&2; exit 1; }
done || failed=1
grep -q recorded acknowledged || fail "nothing was acknowledged before the kill"
status 0 record "$job" --log site.log $now note text=end
# Files that cannot be written to are told, and what is there stays.
ln -s /dev/full full.log
status 4 record "$job" --log full.log $now note text=x
exit $failed
