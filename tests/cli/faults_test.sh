#!/usr/bin/env bash
# What goes wrong outside the program: no memory, no right to write, pipes, and being killed in the
# middle of a write. A file is then the old one or the new one, never half of one.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'chmod -R u+rwx "$work"; rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }

# Pipes by name are read and written as they stand, never replaced by a file.
mkfifo in out
cat "$job" >in &
timeout 60 "$program" jobsheet in --today 2027-01-04 >sheet 2>err || fail "a pipe by name is not read: $(cat err)"
wait
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 >same 2>err
cmp -s sheet same || fail "a pipe by name gives another sheet"
timeout 60 cat out >through &
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 --output out >/dev/null 2>err </dev/null || fail "no way into a pipe"
wait
[ -p out ] || fail "a pipe by name is written over"
cmp -s through same || fail "a pipe by name gets another sheet"

# A folder that may not be written to. Root may write anywhere, so go by another name.
mkdir closed
chmod 755 "$work"
chmod 555 closed
as_nobody=()
if [ "$(id -u)" -eq 0 ]; then
  as_nobody=(setpriv --reuid=65534 --regid=65534 --clear-groups)
fi
if "${as_nobody[@]}" test -x "$program" 2>/dev/null && ! "${as_nobody[@]}" touch closed/probe 2>/dev/null; then
  "${as_nobody[@]}" timeout 60 "$program" jobsheet - --today 2027-01-04 --output closed/sheet.txt <"$job" >seen 2>err
  [ $? -eq 4 ] || fail "a closed folder gives no status 4"
  grep -q 'closed' err || fail "a closed folder is not named: $(cat err)"
  [ -z "$(ls -A closed)" ] || fail "something was left in a closed folder"
else
  echo "skipped: no user without rights to try a closed folder with"
fi

# Killed at any moment of a write.
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 --units us >new 2>/dev/null
mkdir kept
rounds=60
[ "${BASINWRIGHT_SLOW_BUILD:-0}" = 1 ] && rounds=8
for i in $(seq $rounds); do
  cp same kept/sheet.txt
  "$program" jobsheet "$job" --today 2027-01-04 --units us --output kept/sheet.txt 2>/dev/null &
  writer=$!
  # Spread over the twelve milliseconds that a run takes, and a little beyond.
  sleep "0.0$(printf '%02d' $((i % 20)))"
  kill -9 $writer 2>/dev/null
  wait $writer 2>/dev/null
  cmp -s kept/sheet.txt same || cmp -s kept/sheet.txt new || fail "half a file after a kill"
done

# No memory from some allocation on: an end that is said, with a status of its own and no half output.
# The sanitizers bring an allocator of their own; what counts coverage allocates after the end of the program.
if [ "${BASINWRIGHT_SLOW_BUILD:-0}" = 1 ] || ! command -v cc >/dev/null || ! command -v python3 >/dev/null ||
  grep -q libgcov "$program"; then
  echo "skipped: no allocator to replace, counters of coverage, no cc or no python3"
  exit $failed
fi
python3 "$source/tests/cli/failing_allocations.py" "$program" "$source" "$work/allocations" 151 || fail "without memory"
exit $failed
