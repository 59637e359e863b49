#!/usr/bin/env python3
"""Makes a season of invented pools: job files, a crews file and hours of a wet spring.

Usage: make_example_season.py FOLDER [POOLS CREWS]
Without numbers it makes examples/season: twelve pools, two crews. Everything is made up from a
fixed seed: names, pools, promises and weather. The weather is a wet spring: a daily wave of air
round a mean that rises through the season, wet days that like company, about one in five, damp mornings.
"""
import datetime
import json
import math
import pathlib
import random
import sys

FIRST = datetime.date(2027, 3, 29)
STREETS = ["Alder", "Bracken", "Clover", "Dune", "Elder", "Fern", "Gorse", "Heron", "Ivy", "Juniper",
           "Kestrel", "Linden"]


def pool(draw, i):
    length = 6 + draw.randrange(0, 9) * 0.5
    width = round(length * 0.5 * 2) / 2
    return {"outline": {"kind": "rectangle", "length": f"{length:g} m", "width": f"{width:g} m"},
            "floor": {"kind": "breaks",
                      "points": [[f"{length / 3:.1f} m", "1.2 m"], [f"{length * 0.75:.1f} m", "1.9 m"]]},
            "rim_to_paint": "150 mm", "rim_to_water": "120 mm"}


def job(draw, i, start):
    street = STREETS[i % len(STREETS)]
    return {"basinwright": 1,
            "job": {"number": f"S-{i + 1:02d}", "start": start.isoformat(),
                    "client": {"name": f"Household {street} {i + 1}", "address": f"{i + 1} {street} Way"},
                    "contractor": {"name": "Example Pool Painting", "address": "3 Yard Lane",
                                   "registration": "EX-001", "insurance": "Sample Mutual 0001"}},
            "site": {"tap_flow": "30 L/min",
                     "mean_temperatures": {"3": "9 C", "4": "12 C", "5": "16 C", "6": "19 C", "7": "21 C"}},
            "pool": pool(draw, i),
            "surfaces": [{"where": "all", "substrate": "render", "coating": "epoxy",
                          "acetone_test": "untouched", "tested_on": "2027-03-08", "places": "floor, deep wall"}],
            "condition": {"oils": "normal", "lead_test": "clear"},
            "coating": {"coats": 2, "colour": draw.choice(["white", "pale blue"])}}


def weather(draw, days):
    """Hours as a table; a shower is one unbroken stretch."""
    lines = ["time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct"]
    anomaly, wet = 0.0, False
    for d in range(days):
        day = FIRST + datetime.timedelta(days=d)
        anomaly = 0.7 * anomaly + draw.gauss(0, 1.5)
        mean = 13.5 + 8.5 * d / 100 + anomaly
        wet = draw.random() < (0.4 if wet else 0.15)
        start, length = draw.randrange(0, 20), draw.randrange(2, 9)
        swing = 2.5 if wet else 5.5
        dew = mean - (4.0 if wet else 7.5) + draw.gauss(0, 0.6)
        for h in range(24):
            air = mean + swing * math.sin((h - 9) * math.pi / 12)
            rain = round(draw.uniform(0.3, 2.5), 1) if wet and start <= h < start + length else 0.0
            point = min(dew, air - (0.6 if rain else 1.0))
            humidity = 100 * math.exp(17.62 * point / (243.12 + point) - 17.62 * air / (243.12 + air))
            lines.append(f"{day.isoformat()}T{h:02d}:00,{air:.1f},{humidity:.0f},{point:.1f},{rain:.1f},"
                         f"{draw.uniform(1.5, 5):.1f},{85 if wet else 40}")
    return "\n".join(lines) + "\n"


def crews(draw, pools, count):
    named = [{"name": name, "people": 3, "painters": 2} for name in ("North", "South")]
    if count > 2:
        named = [{"name": f"Crew {c + 1}", "people": 3, "painters": 2} for c in range(count)]
    else:
        named[1]["people"] = 4
        named[1]["painters"] = 3
        named[1]["closed"] = ["2027-04-23"]
    jobs = []
    for i in range(pools):
        start = i * 5 // count
        promised = FIRST + datetime.timedelta(days=30 + 3 * start // 2 + draw.randrange(-6, 10))
        entry = {"job": f"S-{i + 1:02d}", "promised": promised.isoformat()}
        if draw.random() < 0.25:
            entry["priority"] = draw.randrange(2, 4)
        jobs.append(entry)
    if pools == 12:
        jobs[4]["not_before"] = "2027-04-26"
        jobs[7]["materials"] = "2027-05-17"
    return {"basinwright": 1, "crews": named,
            "travel": {"usual": "30 min",
                       "between": [{"from": "S-01", "to": "S-02", "time": "5 min"},
                                   {"from": "S-03", "to": "S-10", "time": "1 h"}]},
            "jobs": jobs}


def write(path, value):
    path.write_text(json.dumps(value, indent=2) + "\n", encoding="utf-8")


def main():
    folder = pathlib.Path(sys.argv[1])
    pools, count = (int(sys.argv[2]), int(sys.argv[3])) if len(sys.argv) > 3 else (12, 2)
    (folder / "jobs").mkdir(parents=True, exist_ok=True)
    draw = random.Random(2027)
    for i in range(pools):
        write(folder / "jobs" / f"s-{i + 1:02d}.json", job(draw, i, FIRST))
    write(folder / "crews.json", crews(draw, pools, count))
    (folder / "wet-spring.csv").write_text(weather(draw, 110), encoding="utf-8")


main()
