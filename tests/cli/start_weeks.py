#!/usr/bin/env python3
"""The table and the picture of docs/odds.md, and a check of every number in them.

Usage: start_weeks.py PROGRAM SOURCE FORTY [--write]
  PROGRAM  basinwright     SOURCE  the source folder     FORTY  what forty_years.py prints

Ranks, intervals and shares are worked out again here with fractions and whole numbers only, from
the dates of the single years: rank ceil(n p) (Hyndman and Fan 1996, definition 1), binomial ranks
around it, Wilson's interval (1927). Ends with 1 and says what differs.
"""
import datetime
import json
import math
import subprocess
import sys
from fractions import Fraction

WEEKS = 10
JOB = "examples/plain-pool.json"
FIRST = datetime.date(2027, 5, 3)
PROMISED = "2027-07-15"
LATER = "9999"
failures = []


def expect(what, got, wanted):
    if got != wanted:
        failures.append("%s: %r, expected %r" % (what, got, wanted))


def run(program, years, *more):
    done = subprocess.run([program, "odds", JOB, "--years", years, "--today", "2027-01-04", "--format", "json", *more],
                          stdout=subprocess.PIPE, check=True)
    return json.loads(done.stdout)["odds"]


def tails(n, p):
    """P(B = k) for k = 0..n, exactly."""
    return [math.comb(n, k) * p**k * (1 - p)**(n - k) for k in range(n + 1)]


def ranks(n, p):
    ways = tails(n, p)
    tail = Fraction(1, 20)
    low = max((l for l in range(1, n + 1) if sum(ways[:l]) <= tail), default=None)
    high = min((u for u in range(1, n + 1) if sum(ways[u:]) <= tail), default=None)
    held = sum(ways[(low or 0):(high or n + 1)])
    return math.ceil(n * p), low, high, held


def wilson(k, n):
    z = 1.959963984540054
    centre = (k / n + z * z / (2 * n)) / (1 + z * z / n)
    half = z / (1 + z * z / n) * math.sqrt(k / n * (1 - k / n) / n + z * z / (4 * n * n))
    return centre - half, centre + half


def day(text):
    return text[:10] if text else LATER


def check_quantiles(odds, name):
    rows = odds["by_year"]
    n = len(rows)
    expect(name + " years", odds["years"], n)
    for row in odds["quantiles"]:
        key = {"start": "start", "refill": "refill_done"}[row["event"]]
        if row["plan"] == "foresight":
            if row["event"] == "start":
                continue  # not in the table of years
            key += "_foresight"
        ordered = sorted(day(r[key]) for r in rows)
        rank, low, high, held = ranks(n, Fraction(int(row["quantile"][1:]), 100))
        where = "%s %s %s %s" % (name, row["event"], row["plan"], row["quantile"])
        expect(where + " rank", row["rank"], rank)
        expect(where, day(row["date"]), ordered[rank - 1])
        expect(where + " low", day(row["low"]), ordered[low - 1] if low else LATER)
        expect(where + " high", day(row["high"]), ordered[high - 1] if high else LATER)
        if abs(row["coverage"] - float(held)) > 1e-12:
            failures.append(where + " coverage")
    expect(name + " P90 shown", any(r["quantile"] == "P90" for r in odds["quantiles"]), n >= 10)
    ready = sum(day(r["refill_done"]) <= PROMISED for r in rows)
    if abs(odds["ready"] - ready / n) > 1e-12:
        failures.append(name + " ready")
    # No foreman is earlier than one who knows the weather.
    for row in rows:
        if (row["refill_done"] or LATER) < (row["refill_done_foresight"] or LATER):
            failures.append("%s %s: the foreman beats perfect foresight" % (name, row["year"]))


def week_rows(program, years, odds, name):
    """Each week of the table again as a replay of its own."""
    out = []
    for week in odds["weeks"]:
        alone = run(program, years, "--start", week["start"])
        dates = sorted(day(r["refill_done_foresight"]) for r in alone["by_year"])
        n = len(dates)
        expect("%s %s years" % (name, week["start"]), week["years"], n)
        for p, key in ((Fraction(1, 2), "p50"), (Fraction(4, 5), "p80")):
            expect("%s %s %s" % (name, week["start"], key), day(week[key]), dates[math.ceil(n * p) - 1])
        start = datetime.date.fromisoformat(week["start"])
        def length(key):
            return None if week[key] is None else (datetime.date.fromisoformat(week[key]) - start).days
        foreman = [r for r in alone["quantiles"] if (r["event"], r["plan"], r["quantile"]) == ("refill", "foreman", "P80")]
        late = foreman[0]["date"]
        out.append((start, length("p50"), length("p80"),
                    None if late is None else (datetime.date.fromisoformat(late) - start).days))
    best = min(w["days_to_p80"] for w in odds["weeks"] if w["days_to_p80"] is not None)
    expect(name + " best", [w["days_to_p80"] for w in odds["weeks"] if w["best"]], [best])
    return out


def shown(days):
    return "later" if days is None else str(days)


def table(four, forty):
    lines = ["| start | P50, 4 years | P80, 4 years | P80, 3-day forecast | P50, 40 years | P80, 40 years | P80, 3-day forecast |",
             "| --- | ---: | ---: | ---: | ---: | ---: | ---: |"]
    for a, b in zip(four, forty):
        cells = ["%d %s" % (a[0].day, a[0].strftime("%B"))] + [shown(x) for x in a[1:] + b[1:]]
        lines.append("| " + " | ".join(cells) + " |")
    return "\n".join(lines)


def picture(forty):
    wide, left, top, step, bar = 640, 120, 50, 28, 16
    most = max(x for row in forty for x in row[1:] if x is not None)
    scale = (wide - left - 60) / most
    out = ['<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" role="img" font-family="sans-serif" font-size="13">'
           % (wide, top + step * len(forty) + 20),
           "<title>Days from the start until the pool is full again, by start week</title>",
           "<desc>Bars to the P50 of forty made years, hatched on to the P80 with perfect foresight; a line at the P80 with a three-day forecast.</desc>",
           '<defs><pattern id="h" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M0 6 6 0" stroke="#1d4e6b"/></pattern></defs>',
           '<text x="%d" y="20">solid: P50 · hatched: to P80 · line: P80 with a three-day forecast (days)</text>' % 8]
    for i, (start, p50, p80, late) in enumerate(forty):
        y = top + step * i
        out.append('<text x="8" y="%d">%d %s</text>' % (y + 13, start.day, start.strftime("%B")))
        if p50 is not None:
            out.append('<rect x="%d" y="%d" width="%.1f" height="%d" fill="#1d4e6b"/>' % (left, y, p50 * scale, bar))
        if p80 is not None:
            out.append('<rect x="%.1f" y="%d" width="%.1f" height="%d" fill="url(#h)" stroke="#1d4e6b"/>'
                       % (left + p50 * scale, y, (p80 - p50) * scale, bar))
        if late is not None:
            x = left + late * scale
            out.append('<path d="M%.1f %dv%d" stroke="#8a1c1c" stroke-width="3"/>' % (x, y - 2, bar + 4))
            out.append('<text x="%.1f" y="%d">%d</text>' % (x + 6, y + 13, late))
    return "\n".join(out + ["</svg>", ""])


def main():
    program, source, forty_file = sys.argv[1:4]
    results = []
    for name, years in (("four", "tests/odds/seattle.days.csv"), ("forty", forty_file)):
        odds = run(program, years, "--weeks", str(WEEKS), "--by", PROMISED)
        check_quantiles(odds, name)
        results.append(week_rows(program, years, odds, name))
    words, drawing = table(*results), picture(results[1])
    page, svg = source + "/docs/odds.md", source + "/docs/start-weeks.svg"
    if "--write" in sys.argv:
        print(words)
        with open(svg, "w", encoding="utf-8") as file:
            file.write(drawing)
    else:
        with open(page, encoding="utf-8") as file:
            if words not in file.read():
                failures.append("docs/odds.md has another table:\n" + words)
        with open(svg, encoding="utf-8") as file:
            expect("docs/start-weeks.svg", file.read(), drawing)
    for failure in failures:
        print(failure, file=sys.stderr)
    return 1 if failures else 0


sys.exit(main())
