#!/usr/bin/env bash
# The take-off as a user meets it: sections, both unit systems, flotation with its exit status, and
# an explanation of every number it prints.
set -u
program=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
status() { # wanted, arguments...
  local wanted=$1
  shift
  timeout 60 "$program" "$@" >out 2>err </dev/null
  local got=$?
  [ $got -eq "$wanted" ] || fail "status $got, not $wanted: $* ($(head -n 1 err))"
}
job() { # groundwater below the rim
  cat <<J
{
  "job": { "start": "2027-06-07" },
  "site": { "groundwater": { "below_rim": "$1" } },
  "pool": {
    "outline": { "kind": "rectangle", "length": 5.4, "width": 4.4 },
    "floor": { "kind": "constant", "depth": 1.7 },
    "features": [{ "kind": "straight_steps", "wall": 3, "from": 1, "width": 2, "treads": [0.3], "depths": [0.8] }],
    "cove_radius": 0.1, "wall_thickness": 0.3, "slab_thickness": 0.3,
    "adjust": [{ "name": "niche", "area": -0.5 }]
  },
  "surfaces": [{ "where": "deep end", "coating": "none" }, { "coating": "epoxy", "acetone_test": "untouched" }],
  "condition": { "lead_test": "clear" },
  "coating": { "sections": [{ "name": "deep end", "to": 3 }, { "name": "shallow end", "to": 0 }] }
}
J
}
# A textbook tank of 6 x 5 x 2 m outside: factor 0.80 with water at the rim.
job "0 m" >floats.json
for command in jobsheet takeoff; do
  status 3 "$command" floats.json --today 2027-01-04
  grep -q 'STOP at Drain' out || fail "$command does not say where it stops"
  grep -q '0\.80' out || fail "$command does not show the factor"
  tr '\n' ' ' <out | grep -q 'licensed *engineer' || fail "$command names nobody who decides"
  tr '\n' ' ' <out | grep -q 'total weight of the empty *shell' || fail "$command names no convention"
done
job "0.5 m" >holds.json
status 0 takeoff holds.json
grep -q 'hold point' out || fail "1.07 is no hold point"
status 0 jobsheet holds.json --today 2027-01-04
tr -s ' \n' ' ' <out | grep -q 'Hold: groundwater' || fail "no hold point at draining"
job "3 m" >clear.json
status 0 takeoff clear.json
grep -q 'no lift' out || fail "dry ground lifts"

status 0 takeoff clear.json --units both
grep -q 'Metric  *US' out || fail "no pair of columns"
grep -Eq 'Plan area +23\.8 m² +255\.8 ft²' out || fail "23.76 m2 are not 255.8 ft2 (1 ft = 0.3048 m)"
/usr/bin/python3 -c 'assert all(len(l.rstrip("\n")) <= 80 for l in open("out", encoding="utf-8"))' ||
  fail "a line is longer than 80 columns"
status 2 jobsheet clear.json --units both
status 0 takeoff clear.json --units both --format csv
grep -q '^plan_area_m2,23\.76' out || fail "no totals in the CSV"
grep -q '^deep end,pool,' out || fail "no sections in the CSV"
grep -q 'wall_area_ft2' out || fail "no US sections in the CSV"
status 0 takeoff clear.json --format markdown
grep -q '| deep end ' out || fail "no table of sections in Markdown"

status 0 takeoff clear.json --format json
cp out page.json
status 0 explain clear.json --format json
/usr/bin/python3 - <<'P' || fail "not every number of the take-off is explained"
import json, math
page = json.load(open("page.json"))["takeoff"]
keys = {q["key"] for q in json.load(open("out"))["explain"]["quantities"]}
given = {"takeoff.tape_tolerance"}  # an input, not a result
numbers = {"takeoff." + k for k, v in page.items() if isinstance(v, (int, float))} - given
missing = sorted(numbers - keys)
missing += [f"takeoff.parts.{i}.painted_area_m2" for i in range(len(page["parts"]))
            if f"takeoff.parts.{i}.painted_area_m2" not in keys]
if missing: raise SystemExit(f"no explanation: {missing}")
parts = page["parts"]
assert [p["section"] for p in parts] == ["deep end", "shallow end"]
for part in parts:
    surfaces = sum(part[k] for k in ("wall_area_m2", "floor_area_m2", "tread_area_m2", "riser_area_m2",
                                     "cove_area_change_m2", "named_area_m2"))
    assert math.isclose(surfaces, part["painted_area_m2"], rel_tol=1e-12)
assert math.isclose(sum(p["painted_area_m2"] for p in parts), page["painted_area_m2"], rel_tol=1e-12)
sections = page["sections"]
assert sections["cuts_m"] == [3.0]
assert sections["areas_deep_to_shallow_m2"] == [p["painted_area_m2"] for p in parts]
assert page["painted_area_low_m2"] < page["painted_area_m2"] < page["painted_area_high_m2"]
P
status 0 explain clear.json takeoff.water_volume_m3
grep -q 'length x width x mean depth' out || fail "no handbook volume beside the exact one"
grep -Eq '\+[0-9.]+ %' out || fail "the short cut does not say by how much it misses"
status 0 explain clear.json takeoff.painted_area_low_m2
grep -q 'tape-tolerance' out || fail "the tolerance has no source"

# An unknown section, with its place and the nearest name.
sed 's/"where": "deep end"/"where": "deep ende"/' clear.json >unknown.json
status 1 takeoff unknown.json
grep -q 'unknown.json:11:27: error\[not-a-choice\]' err || fail "no place for an unknown section: $(head -n 1 err)"
grep -q 'Did you mean "deep end"' err || fail "no nearest section"
exit $failed
