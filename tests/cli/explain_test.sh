#!/usr/bin/env bash
# Any number of the job sheet by its path or the name of its row, and beside it in the job pack.
# Usage: explain_test.sh PROGRAM SOURCE
set -u
program=$1 source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
job="$source/examples/plain-pool.json"
fail() { printf 'explain_test: %s\n' "$*" >&2; exit 1; }
explain() { "$program" explain "$job" "$@" --today 2027-01-04 2>err; }

explain purchases.coating.left_over >by_name || fail "a row is not found by its name: $(cat err)"
explain purchases.3.left_over >by_place || fail "a row is not found by its place"
sed 's/purchases.coating/purchases.3/g' by_name | diff <(sed 1,4d by_place) <(sed 's/purchases.coating/purchases.3/g' by_name | sed 1,4d) \
  || fail "name and place tell something else"
grep -q 'count_1 \* size_1 - need' by_name || fail "what is left is not packs less need"
grep -q 'packs/coating\|demonstration' by_name || fail "no place of the pack in the rate book"

explain programme.tasks.coat_2.start >date || fail "no date of the programme"
grep -q 'recoat window' date || fail "a date does not say what binds it"
grep -q 'Mon 10 May 2027 11:00' date || fail "a date does not say what it follows"
explain hire.sump_pump.days | tr -s ' \n' '  ' | grep -q 'Mon 3 May' || fail "days hired are not named"

explain >list || fail "no list"
for key in takeoff.painted_area_m2 consumables.roller_cover.count labour.abrade.person_hours price.lines.materials.amount mixing.painters_needed refill.hours; do
  grep -q -- "$key" list || fail "$key is not in the list"
done
# Money is explained to the smallest coin and in its currency (ISO 4217), as the page has it: euro by default, a rate book's dollar,
# and the yen, which has no smaller coin.
sed 's/"USD"/"JPY"/; s/\([0-9]\)\.[0-9][0-9]"/\1"/g' "$source/examples/l-shape-us.rates.json" >yen.rates.json
sed 's/"4.90"/"490"/' "$source/examples/l-shape-us.json" >yen.json
python3 - "$program" "$source/examples" <<'P' || fail "money is not explained as the page has it"
import json, re, subprocess, sys
program, examples = sys.argv[1:]
def page(command, job, *more):
    out = subprocess.run([program, command, job, "--format", "json", "--today", "2027-01-04", "--quiet", *more],
                         capture_output=True, text=True)
    assert out.returncode in (0, 3), out.stderr
    return json.loads(out.stdout)
def money(value, path=""):
    if isinstance(value, dict):
        for name, each in value.items(): yield from money(each, f"{path}.{name}")
    elif isinstance(value, list):
        for place, each in enumerate(value): yield from money(each, f"{path}.{place}")
    elif isinstance(value, str) and re.fullmatch(r"-?[0-9]+(\.[0-9]{2})?", value): yield path[1:], value
for job, currency, rates in ((f"{examples}/plain-pool.json", "EUR", []), ("yen.json", "JPY", ["--rates", "yen.rates.json"]),
                             (f"{examples}/l-shape-us.json", "USD", ["--rates", f"{examples}/l-shape-us.rates.json"])):
    shown = {q["key"]: q["shown"] for q in page("explain", job, *rates)["explain"]["quantities"]}
    both = {key: value for key, value in money(page("jobsheet", job, *rates)) if key in shown}
    assert len(both) > 60 and "price.total" in both, len(both)
    wrong = [(key, shown[key], value) for key, value in both.items() if shown[key] != f"{value} {currency}"]
    assert not wrong, wrong[:5]
P
explain purchases.coatin.left_over && fail "a misspelt row is accepted"

"$program" jobsheet "$job" --today 2027-01-04 --format html --output pack.html || fail "no job pack"
python3 - <<'P' || fail "the fold-outs of the job pack"
import re, sys
page = open("pack.html").read()
ids = re.findall(r' id="([^"]+)"', page)
links = re.findall(r'href="#(how-[^"]+)"', page)
assert len(ids) == len(set(ids)), [i for i in ids if ids.count(i) > 1][:5]
assert not set(links) - set(ids), sorted(set(links) - set(ids))[:5]
assert page.count('<details class="how">') > 300, page.count('<details class="how">')
for key in ("purchases.3.total", "consumables.0.count", "labour.2.total", "programme.tasks.3.start", "price.lines.0.amount"):
    assert f"how-{key}" in ids, key
P
