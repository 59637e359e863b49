#!/usr/bin/env bash
# The program as a user meets it: exit statuses, channels, files whole or not at all, closed readers.
set -u
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
status() { # wanted, arguments...
  local wanted=$1
  shift
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $* ($(head -n 1 err))"
}

status 0 jobsheet "$job" --today 2027-01-04
grep -q '^Total ' out || fail "the total does not stand on the last lines"
[ ! -s err ] || fail "a clean job prints on standard error: $(head -n 1 err)"
status 0 "$job" --today 2027-01-04
status 0 --units us "$job" --today 2027-01-04
status 0 takeoff "$job"
status 0 check "$job"
[ ! -s out ] || fail "check prints on a clean job"
status 0 explain "$job"
status 0 explain "$job" quantities.etch.acid_l
grep -q 'area' out || fail "explain shows no inputs"
status 2 explain "$job" quantities.etch.acid_kg
grep -q 'quantities.etch.acid_l' err || fail "explain suggests nothing"
status 0
grep -q 'Try:' out || fail "no arguments show no examples"
status 0 --help
status 0 jobsheet --help
status 0 --version

status 2 jobshet "$job"
grep -q 'jobsheet' err || fail "a mistyped command is not suggested"
status 2 jobsheet
status 2 jobsheet "$job" --format pdf
status 2 jobsheet "$job" --start 2027-02-30
status 4 jobsheet missing.json
status 4 jobsheet "$work"
printf '{"pool": 3,\n "poool": 1}' >bad.json
status 1 jobsheet bad.json
grep -q 'bad.json:2:2: error\[unknown-key\]' err || fail "no place for an unknown key"
[ ! -s out ] || fail "a bad file leaves something on standard output"
status 1 check bad.json
grep -q 'error\[' out || fail "check does not print problems on standard output"
status 1 check bad.json --diagnostics json
/usr/bin/python3 -c 'import json,sys; [json.loads(l) for l in open("out")]' || fail "diagnostics are not JSON lines"

sed 's/"coating": "epoxy"/"coating": "other"/; s/"untouched"/"not_done"/' "$job" >stop.json
status 3 jobsheet stop.json --today 2027-01-04
grep -q 'STOP' out || fail "a stop is not said"
status 3 jobsheet stop.json --today 2027-01-04 --format json
/usr/bin/python3 - <<'P' || fail "a stopped sheet has no stop in its JSON"
import json
d = json.load(open("out"))
assert d["route"]["stop"]["step"] == "coating-test"
assert d["programme"]["feasible"] is False
P

status 0 jobsheet "$job" --today 2027-01-04 --output sheet.txt
[ -s sheet.txt ] || fail "--output wrote nothing"
[ ! -s out ] || fail "--output also printed"
cp "$job" mine.json
status 2 jobsheet mine.json --output mine.json
cmp -s "$job" mine.json || fail "an input was written over"
# The density table ends at 40 %: stronger acid is the user's mistake, not our fault.
for acid in 0 41 60; do
  printf '{"currency":"EUR","labour":{"hour":"1"},"chemicals":{"acid":{"strength":"%s %%"}}}' $acid >acid.json
  status 1 jobsheet "$job" --rates acid.json --today 2027-01-04
done
mkdir folder
status 4 jobsheet "$job" --today 2027-01-04 --output folder
status 4 jobsheet "$job" --today 2027-01-04 --output missing/sheet.txt
[ "$(ls -A folder)" = "" ] || fail "a failed write left something behind"

timeout 60 "$program" jobsheet - --today 2027-01-04 <"$job" >out 2>err || fail "standard input is not read"
if [ -w /dev/full ]; then
  timeout 60 "$program" jobsheet "$job" --today 2027-01-04 >/dev/full 2>err
  [ $? -eq 4 ] || fail "a full disk is not noticed"
fi
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 >&- 2>err
[ $? -eq 4 ] || fail "a closed standard output is not noticed"
set -o pipefail
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 2>err | head -n 1 >/dev/null
[ $? -eq 0 ] || fail "a reader that leaves early is taken for an error"
set +o pipefail

# No way to a network: not one function that opens a socket. The sanitizers bring some of their own.
if [ "${BASINWRIGHT_SLOW_BUILD:-0}" = 0 ] && command -v nm >/dev/null; then
  nm -D --undefined-only "$program" >asked
  grep -q ' malloc\| _Znwm' asked || fail "nm lists nothing"
  grep -E ' (socket|connect|bind|getaddrinfo|gethostby[a-z]*|send|sendto|recv|recvfrom)(@|$)' asked && fail "the program can reach a network"
fi

# The same bytes whatever the surroundings.
timeout 60 "$program" jobsheet "$job" --today 2027-01-04 >one 2>/dev/null
(umask 077; LC_ALL=C TZ=Pacific/Auckland timeout 60 "$program" jobsheet "$job" --today 2027-01-04 >two 2>/dev/null)
cmp -s one two || fail "locale, time zone or umask change the output"
exit $failed
