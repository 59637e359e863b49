#!/usr/bin/env python3
"""Writes a random weather file with python's own csv or json, and what stands in it.

Usage: weather_oracle.py csv|json SEED FILE; prints one line an hour:
hours since 1970, then air C, humidity %, dew point C, rain mm, wind m/s (- where unknown).
"""
import csv
import datetime
import json
import random
import sys

EPOCH = datetime.datetime(1970, 1, 1)
NAMES = ["air_temp_c", "rh_pct", "dew_point_c", "rain_mm", "wind_ms"]


def number(draw, low, high):
    return None if draw.random() < 0.1 else round(draw.uniform(low, high), draw.randrange(4))


def hours(draw):
    start = datetime.datetime(2027, 1, 1) + datetime.timedelta(hours=draw.randrange(9000))
    out = []
    for i in range(draw.randrange(1, 60)):
        air = number(draw, -20, 45)
        dew = None if air is None else number(draw, -60, min(air, 40))
        rest = [number(draw, 0, 40), number(draw, 0, 30)]
        out.append((start + datetime.timedelta(hours=i), [air, number(draw, 0, 100), dew] + rest))
    return out


def show(rows):
    for time, values in rows:
        count = int((time - EPOCH).total_seconds()) // 3600
        print(count, *("-" if v is None else repr(float(v)) for v in values))


def write_csv(draw, path):
    rows = hours(draw)
    order = list(range(len(NAMES)))
    draw.shuffle(order)
    place = draw.randrange(len(NAMES) + 1)
    quoting = draw.choice([csv.QUOTE_ALL, csv.QUOTE_MINIMAL, csv.QUOTE_NONNUMERIC])
    with open(path, "w", newline="", encoding=draw.choice(["utf-8", "utf-8-sig"])) as file:
        writer = csv.writer(file, quoting=quoting, lineterminator=draw.choice(["\n", "\r\n"]))
        for time, values in [("time", NAMES)] + [(t.isoformat(), v) for t, v in rows]:
            cells = [values[i] for i in order]
            cells.insert(place, time)
            writer.writerow(["" if c is None else c for c in cells])
    show(rows)


def scaled(rows, column, factor, shift=0.0):
    return [None if v[column] is None else v[column] * factor + shift for _, v in rows]


def write_json(draw, path):
    rows = hours(draw)
    if draw.random() < 0.5:
        degree, rain_unit, temperature, rain_factor = "\u00b0C", "mm", (1.0, 0.0), 1.0
        wind_unit, wind_factor = draw.choice([("km/h", 3.6), ("m/s", 1.0)])
    else:
        degree, rain_unit, temperature, rain_factor = "\u00b0F", "inch", (1.8, 32.0), 1 / 25.4
        wind_unit, wind_factor = draw.choice([("mp/h", 1 / 0.44704), ("kn", 3600 / 1852)])
    # The rain of an hour is stamped at its end.
    rain = [None] + scaled(rows, 3, rain_factor)[:-1]
    rows[-1][1][3] = None
    lists = {
        "time": [t.isoformat(timespec="minutes") for t, _ in rows],
        "temperature_2m": scaled(rows, 0, *temperature),
        "relative_humidity_2m": scaled(rows, 1, 1.0),
        "dew_point_2m": scaled(rows, 2, *temperature),
        "precipitation": rain,
        "wind_speed_10m": scaled(rows, 4, wind_factor),
    }
    units = dict(zip(lists, ["iso8601", degree, "%", degree, rain_unit, wind_unit]))
    with open(path, "w", encoding="utf-8") as file:
        json.dump(
            {"hourly": lists, "hourly_units": units, "utc_offset_seconds": 0},
            file,
            ensure_ascii=draw.random() < 0.5,
            indent=draw.choice([None, 2]),
        )
    show(rows)


(write_csv if sys.argv[1] == "csv" else write_json)(random.Random(int(sys.argv[2])), sys.argv[3])
