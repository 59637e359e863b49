#!/usr/bin/env bash
# The stream form as a plain filter: shards of a stream, put together again, come to what the whole
# stream comes to; with GNU parallel as docs/batch.md has it, and as the map step of any engine.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
PATH="$(dirname "$program"):$PATH"

/usr/bin/python3 "$source/tests/bench/job_stream.py" 11 5 >jobs.ndjson
sed -i '4s/"floor"/"flor"/' jobs.ndjson

# What a line comes to without where it stood: places count within a shard.
told() { sed -E 's/"job":"[^"]*",//; s/"problem_line":[0-9]+/"problem_line":0/; s/,"digest":"[0-9a-f]+"//' "$@"; }

basinwright batch - --today 2027-01-04 --quiet <jobs.ndjson >whole.ndjson
[ $? -eq 1 ] || fail "a job with problems among the good ones is not status 1"
told whole.ndjson >whole

# The map step: a line in, a line out, in order; bad jobs are results and no reason to try again.
map='basinwright batch - --today 2027-01-04 --quiet; case $? in 0|1|3) exit 0 ;; *) exit 1 ;; esac'
split -n l/3 jobs.ndjson shard.
for shard in shard.??; do
  sh -c "$map" <"$shard" >"$shard.out" || fail "the map step of $shard failed"
  [ "$(wc -l <"$shard")" -eq "$(wc -l <"$shard.out")" ] || fail "$shard: not a line for each"
done
told shard.??.out | cmp -s - whole || fail "the shards together differ from the whole"
sh -c "$map" </dev/null >empty || fail "an empty shard fails"
[ ! -s empty ] || fail "an empty shard has results"
sh -c "${map/--quiet/--rates missing.json}" <jobs.ndjson >/dev/null 2>&1 && fail "a fault of the set-up passes for a result"

if ! command -v parallel >/dev/null; then
  echo "SKIPPED the part with GNU parallel: it is not installed" >&2
  [ $failed -eq 0 ] && exit 77
  exit 1
fi
parallel --will-cite --keep-order --pipepart --block 4k -a jobs.ndjson "$map" >spread.ndjson ||
  fail "GNU parallel tells a failure"
told spread.ndjson | cmp -s - whole || fail "spread by GNU parallel the results differ"
exit $failed
